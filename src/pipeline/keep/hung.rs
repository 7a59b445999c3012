//! What hangs already: runs with a piece that hangs are held as they were planned, each piece that hangs from its
//! panel, the others of such a run from whatever is at hand.

use std::collections::{BTreeMap, BTreeSet};

use super::asked::{Asked, Keep};
use super::found::{Found, numbered};
use crate::course::held::{plan as held_plan, run_like};
use crate::finding::Refusal;
use crate::finding::files::{FileFinding, KeepFault};
use crate::job::built::Built;
use crate::layout::Layout;
use crate::layout::kept::KeptPiece;
use crate::model::ids::{PanelId, PieceMark};
use crate::model::seam::RunPlan;

/// Panels of pieces that are planned and do not hang have numbers from here on, each its own.
pub(super) const LOOSE: usize = 500_000;

/// Marks of the pieces that hang, by what the job says of the earlier layout; `ticked` are those of its saved ticks.
///
/// # Errors
/// `layout-not-kept` for a wall, courses or a piece that the earlier layout has not.
pub(in crate::pipeline) fn marks_hung(
    old: &Layout,
    built: &[Built],
    ticked: &[String],
) -> Result<BTreeSet<PieceMark>, Refusal> {
    let refused = |fault| Err(Refusal::new(FileFinding::LayoutNotKept { fault }));
    let known: BTreeSet<&str> = old.pieces().map(|(.., p)| p.mark.as_str()).collect();
    let mut out: BTreeSet<PieceMark> = BTreeSet::new();
    for b in built {
        for mark in &b.pieces {
            if !known.contains(mark.as_str()) {
                return refused(KeepFault::NoPiece { piece: mark.clone() });
            }
            out.insert(mark.as_str().into());
        }
        if b.wall.is_empty() {
            continue;
        }
        let wall = b.wall.clone();
        let Some((_, w)) = old.walls().find(|(_, w)| w.id.eq_ignore_ascii_case(&wall)) else {
            let walls = old.walls().map(|(_, w)| w.id.clone()).collect();
            return refused(KeepFault::NoWall { wall, walls });
        };
        // Courses are numbered from 1 on the sheets.
        let numbers: Vec<i32> = w.courses.iter().map(|c| c.index + 1).collect();
        let all = [numbers.first().copied().unwrap_or(1), numbers.last().copied().unwrap_or(1)];
        let [first, last] = match b.courses[..] {
            [] if b.pieces.is_empty() => all,
            [] => continue,
            [one] => [one, one],
            [first, .., last] => [first, last],
        };
        if first > last || first < all[0] || last > all[1] {
            return refused(KeepFault::NoCourses { wall, courses: all });
        }
        let hung = w.courses.iter().filter(|c| (first..=last).contains(&(c.index + 1)));
        let pieces = hung.flat_map(|c| &c.runs).flat_map(|r| &r.pieces);
        out.extend(pieces.map(|p| p.mark.clone()));
    }
    for mark in ticked {
        if !known.contains(mark.as_str()) {
            return refused(KeepFault::NoPiece { piece: mark.clone() });
        }
        out.insert(mark.as_str().into());
    }
    Ok(out)
}

/// The runs that hold what hangs. A piece that hangs and has no place any more is listed all the same: the check finds
/// it.
pub(super) fn held_runs(keep: &Keep, asked: &Asked, hung: &BTreeSet<PieceMark>) -> Found {
    let mut numbers: BTreeMap<PanelId, usize> = BTreeMap::new();
    let mut runs: Vec<RunPlan> = Vec::new();
    let mut marks: BTreeMap<String, Vec<PieceMark>> = BTreeMap::new();
    let mut pieces: Vec<KeptPiece> = Vec::new();
    let mut loose = LOOSE;
    for (e, on) in keep.old.elevations.iter().enumerate() {
        for (w, wall) in on.walls.iter().enumerate() {
            let same = keep.same.iter().find(|s| s.old == (e, w));
            let by = same.map_or([0.0; 2], |s| s.by);
            let field =
                same.and_then(|s| asked.fields.iter().position(|f| (f.elevation, f.wall) == s.new));
            for (c, r) in wall.courses.iter().flat_map(|c| c.runs.iter().map(move |r| (c, r))) {
                let hangs: Vec<bool> = r.pieces.iter().map(|p| hung.contains(&p.mark)).collect();
                if !hangs.contains(&true) {
                    continue;
                }
                pieces.extend(r.pieces.iter().zip(&hangs).filter(|(_, h)| **h).map(|(p, _)| {
                    KeptPiece {
                        mark: p.mark.clone(),
                        wall: wall.id.clone(),
                        panel: p.panel.clone(),
                        cut: [p.start, p.end],
                        at_hand: keep.at_hand(&p.panel),
                        x: [p.x0 + by[0], p.x1 + by[0]],
                        bottom: c.bottom + by[1],
                    }
                }));
                let planned = field.and_then(|i| run_like(c, r, asked.planned.get(i)?, by));
                let Some(planned) = planned else { continue };
                let mut number = |id: &PanelId| {
                    let next = numbers.len();
                    *numbers.entry(id.clone()).or_insert(next)
                };
                let mut plan = held_plan((r, planned), by[0], asked.job, &mut number);
                for (cut, hangs) in plan.pieces.iter_mut().zip(&hangs) {
                    if !hangs {
                        cut.panel = loose;
                        loose += 1;
                    }
                }
                marks.insert(
                    planned.id.to_string(),
                    r.pieces.iter().map(|p| p.mark.clone()).collect(),
                );
                runs.push(plan);
            }
        }
    }
    Found { walls: BTreeMap::new(), pieces, marks, ..numbered(keep, runs, (&numbers, LOOSE)) }
}
