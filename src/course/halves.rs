//! Reuse of ripped halves: where all that is cut from one panel needs its lower part alone, and all
//! that is cut from another its upper part, both come from one panel, ripped along its length.
//!
//! A panel with a lock and a nail hem has one place for everything: its lower part, with the lock, ends
//! where the lower pieces are ripped; its upper part, with the hem, begins where the upper pieces are
//! cut. A board has neither: any two strips that its width holds, head laps in.

use std::collections::{BTreeMap, BTreeSet};

use super::halves_waiting::HalvesWaiting;
use super::problem::{CutHouse, longest_free};
use crate::geom::tol::SAME;
use crate::job::Job;
use crate::job::siding::system::RipHalves;
use crate::layout::course::LaidCourse;
use crate::layout::piece::{Panel, Piece};
use crate::model::half::Half;
use crate::model::ids::PanelId;

/// What of a panel's height its pieces need, over its butt edge.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Strip {
    low: f64,
    high: f64,
}

/// Lets panels that need only their lower or upper part share one. Never more panels than before, and no more
/// offcuts that wait than may, walls being sided in `order`.
pub fn reuse(made: &mut CutHouse, order: &[usize], job: &Job) {
    let strips = strips(made, job);
    let mut waiting = HalvesWaiting::new(made, order, job);
    let pairs = pairs(&made.panels, &strips, &mut waiting, job);
    if pairs.is_empty() {
        return;
    }
    let mut goes: BTreeMap<PanelId, PanelId> = BTreeMap::new();
    for (lower, upper) in &pairs {
        goes.insert(made.panels[*upper].id.clone(), made.panels[*lower].id.clone());
    }
    let kept: BTreeSet<PanelId> = goes.values().cloned().collect();
    let named = names(&made.panels, &goes);
    for p in made.courses.iter_mut().flatten().flat_map(|c| &mut c.runs).flat_map(|r| &mut r.pieces)
    {
        let now = goes.get(&p.panel);
        p.half = match (now, kept.contains(&p.panel)) {
            (Some(_), _) => Some(Half::Upper),
            (None, true) => Some(Half::Lower),
            (None, false) => None,
        };
        let id = now.unwrap_or(&p.panel);
        p.panel = named.get(id).cloned().unwrap_or_else(|| id.clone());
    }
    let pieces = pieces(&made.courses);
    let mut on: BTreeMap<PanelId, Vec<&Piece>> = BTreeMap::new();
    for p in pieces.values().map(|(_, p)| *p) {
        on.entry(p.panel.clone()).or_default().push(p);
    }
    let stays = |p: &&Panel| !goes.contains_key(&p.id);
    let panels = made.panels.iter().filter(stays).map(|panel| {
        let id = named.get(&panel.id).cloned().unwrap_or_else(|| panel.id.clone());
        let mut mine = on.remove(&id).unwrap_or_default();
        mine.sort_by(|a, b| a.start.total_cmp(&b.start));
        let offcut = longest_free(&mine, [0.0, panel.stock], job.seams.kerf);
        mine.sort_by(|a, b| a.half.cmp(&b.half).then(a.start.total_cmp(&b.start)));
        let marks = mine.iter().map(|p| p.mark.clone()).collect();
        Panel { id, stock: panel.stock, pieces: marks, offcut, at_hand: None }
    });
    let panels = panels.collect();
    made.panels = panels;
}

/// Pieces by mark, with the course each is in.
fn pieces(courses: &[Vec<LaidCourse>]) -> BTreeMap<&str, (&LaidCourse, &Piece)> {
    let all = courses.iter().flatten();
    all.flat_map(|c| c.runs.iter().flat_map(|r| &r.pieces).map(move |p| (p.mark.as_str(), (c, p))))
        .collect()
}

/// What each panel's pieces need of its height.
fn strips(made: &CutHouse, job: &Job) -> Vec<Strip> {
    let pieces = pieces(&made.courses);
    let none = Strip { low: f64::INFINITY, high: f64::NEG_INFINITY };
    made.panels
        .iter()
        .map(|panel| {
            let mine = panel.pieces.iter().filter_map(|m| pieces.get(m.as_str()));
            mine.map(|(c, p)| needed(c, p, job))
                .fold(none, |a, b| Strip { low: a.low.min(b.low), high: a.high.max(b.high) })
        })
        .collect()
}

fn needed(course: &LaidCourse, piece: &Piece, job: &Job) -> Strip {
    let face = course.top - course.bottom;
    let whole = face + job.product.over_face(face);
    match &piece.rip {
        None => Strip { low: 0.0, high: whole },
        // What is not ripped at its head keeps all that is over the face.
        Some(r) if r.to >= face - SAME => Strip { low: r.from, high: whole },
        Some(r) => Strip { low: r.from, high: r.to },
    }
}

/// Pairs of panels that can be one, by their place: the one whose pieces come from the lower half
/// first. As many as there can be: strips that ask most are paired first.
fn pairs(
    panels: &[Panel],
    strips: &[Strip],
    waiting: &mut HalvesWaiting,
    job: &Job,
) -> Vec<(usize, usize)> {
    let kerf = job.seams.kerf;
    let board = job.product.width.filter(|_| job.siding().rip_halves == RipHalves::WithinWidth);
    let fit = |a: usize, b: usize| {
        let alike = (panels[a].stock - panels[b].stock).abs() < SAME;
        let (p, q) = (strips[a], strips[b]);
        alike
            && match board {
                Some(width) => (p.high - p.low) + (q.high - q.low) + kerf <= width + 1e-9,
                None => p.high + kerf <= q.low + 1e-9,
            }
    };
    let asks = |i: &usize| match board {
        Some(_) => strips[*i].high - strips[*i].low,
        None => strips[*i].high,
    };
    let mut order: Vec<usize> = (0..panels.len()).filter(|i| strips[*i].high.is_finite()).collect();
    order.sort_by(|a, b| asks(b).total_cmp(&asks(a)).then(a.cmp(b)));
    let mut taken = vec![false; panels.len()];
    let mut out = Vec::new();
    for a in order.iter().copied() {
        if taken[a] {
            continue;
        }
        // What asks most of the rest and still fits: others find room more easily.
        let may = |b: &usize| *b != a && !taken[*b] && fit(a, *b) && waiting.may(a, *b);
        let other = order.iter().copied().find(may);
        if let Some(b) = other {
            waiting.share(a, b);
            (taken[a], taken[b]) = (true, true);
            out.push((a, b));
        }
    }
    out
}

/// New names of the panels that stay: the letter of each with numbers that run on.
fn names(panels: &[Panel], goes: &BTreeMap<PanelId, PanelId>) -> BTreeMap<PanelId, PanelId> {
    let mut last: BTreeMap<&str, usize> = BTreeMap::new();
    let stays = panels.iter().filter(|p| !goes.contains_key(&p.id));
    stays
        .map(|p| {
            let letter = p.id.get(..1).unwrap_or("P");
            let n = last.entry(letter).or_default();
            *n += 1;
            (p.id.clone(), format!("{letter}{n}").into())
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn panel(n: usize) -> Panel {
        Panel { id: format!("P{n}").into(), stock: 150.0, pieces: Vec::new(), offcut: 0.0 }
    }

    #[test]
    fn as_many_pairs_as_by_trying_all() {
        let mut s = 9u64;
        for _ in 0..300 {
            let mut next = |n: u64| {
                s = s.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
                ((s >> 33) % n) as f64
            };
            let job = Job::default();
            let strips: Vec<Strip> = (0..8)
                .map(|_| match next(3) as u32 {
                    0 => Strip { low: 0.0, high: 1.0 + next(7) },
                    1 => Strip { low: 1.0 + next(7), high: 9.25 },
                    _ => Strip { low: 0.0, high: 9.25 },
                })
                .collect();
            let panels: Vec<Panel> = (0..8).map(panel).collect();
            let fit = |a: &Strip, b: &Strip| a.high + job.seams.kerf <= b.low;
            fn most(left: &[Strip], fit: &dyn Fn(&Strip, &Strip) -> bool) -> usize {
                let Some((first, rest)) = left.split_first() else { return 0 };
                let mut best = most(rest, fit);
                for i in 0..rest.len() {
                    if fit(first, &rest[i]) || fit(&rest[i], first) {
                        let mut others = rest.to_vec();
                        others.remove(i);
                        best = best.max(1 + most(&others, fit));
                    }
                }
                best
            }
            let made = CutHouse { courses: Vec::new(), panels };
            // On no wall, none of them waits.
            let mut waiting = HalvesWaiting::new(&made, &[], &job);
            let found = pairs(&made.panels, &strips, &mut waiting, &job);
            assert_eq!(found.len(), most(&strips, &fit), "{strips:?}");
        }
    }
}
