//! Seams: factory ends meet, runs add up, stagger, shortest piece.

use std::collections::BTreeMap;

use super::{Rule, same};
use crate::geom::tol::CUT;
use crate::geom::vocabulary::Xy;
use crate::layout::Layout;
use crate::layout::course::LaidRun;
use crate::layout::piece::{EndCut, Piece};
use crate::layout::verified::RuleCheck;

pub(super) fn check(layout: &Layout) -> [RuleCheck; 6] {
    [
        spans(layout),
        factory(layout),
        places(layout),
        stagger(layout),
        shortest(layout),
        fixtures(layout),
    ]
}

fn runs(layout: &Layout) -> impl Iterator<Item = &LaidRun> {
    layout.walls().flat_map(|(_, w)| &w.courses).flat_map(|c| &c.runs)
}

fn is_fixed(run: &LaidRun, i: usize) -> bool {
    run.seams.get(i).is_some_and(|s| run.fixed.iter().any(|f| same(*f, *s)))
}

/// Pieces and laps sum to the run less its end gaps.
fn spans(layout: &Layout) -> RuleCheck {
    let mut rule = Rule::default();
    let lap = layout.job.lap();
    for r in runs(layout) {
        let sum: f64 = r.pieces.iter().map(|p| p.length).sum();
        let laps = r.pieces.len().saturating_sub(1) as f64 * lap;
        let cover = r.x1 - r.x0 - 2.0 * r.gap;
        rule.case(!r.pieces.is_empty() && same(sum - laps, cover), || {
            format!(
                "run {}: pieces less laps make {:.4}, the run takes {:.4}",
                r.id,
                sum - laps,
                cover
            )
        });
        rule.case(same(r.gap, layout.job.end_gap()), || {
            format!("run {}: end gap {:.4}", r.id, r.gap)
        });
        for p in &r.pieces {
            rule.case(same(p.length, p.end - p.start) && same(p.length, p.x1 - p.x0), || {
                format!(
                    "piece {}: {:.4} long, cut {:.4}, on the wall {:.4}",
                    p.mark,
                    p.length,
                    p.end - p.start,
                    p.x1 - p.x0
                )
            });
        }
    }
    rule.done("pieces and laps fill each run less its gaps")
}

fn factory(layout: &Layout) -> RuleCheck {
    let mut rule = Rule::default();
    let boards = layout.job.siding().joints.is_on_studs();
    let mut by: BTreeMap<&str, f64> = BTreeMap::new();
    for q in &layout.panels {
        by.entry(&q.id).or_insert(q.stock);
    }
    let stock = |p: &Piece| by.get(p.panel.as_str()).copied().unwrap_or(0.0);
    for r in runs(layout) {
        // Cut ends of boards may meet.
        let seams = r.pieces.windows(2).enumerate();
        for (_, pair) in seams.filter(|(i, _)| !(boards || is_fixed(r, *i))) {
            let (a, b) = (&pair[0], &pair[1]);
            let ends = same(a.end, stock(a)) && same(b.start, 0.0);
            let told = a.ends[1].cut == EndCut::Factory && b.ends[0].cut == EndCut::Factory;
            rule.case(ends && told, || {
                format!("run {}: {} and {} do not meet with factory ends", r.id, a.mark, b.mark)
            });
        }
        for p in &r.pieces {
            let left = p.ends[0].cut != EndCut::Factory || same(p.start, 0.0);
            let right = p.ends[1].cut != EndCut::Factory || same(p.end, stock(p));
            rule.case(left && right, || {
                format!("piece {} claims a factory end it does not have", p.mark)
            });
        }
    }
    rule.done(if boards {
        "a factory end is one as the board left the mill"
    } else {
        "a seam joins two factory ends"
    })
}

fn places(layout: &Layout) -> RuleCheck {
    let mut rule = Rule::default();
    let lap = layout.job.lap();
    for r in runs(layout) {
        rule.case(r.seams.len() + 1 == r.pieces.len(), || {
            format!("run {}: {} seams for {} pieces", r.id, r.seams.len(), r.pieces.len())
        });
        for (pair, s) in r.pieces.windows(2).zip(&r.seams) {
            let (end, start) = (pair[0].x1, pair[1].x0);
            rule.case(same(end - start, lap) && same((end + start) / 2.0, *s), || {
                format!("run {}: the lap at {s:.4} runs from {start:.4} to {end:.4}", r.id)
            });
        }
    }
    rule.done("seams stand at the middle of their laps")
}

fn stagger(layout: &Layout) -> RuleCheck {
    let mut rule = Rule::default();
    if layout.job.siding().joints.is_on_studs() {
        return super::joints::stagger(layout);
    }
    let (apart, clear) = (layout.job.seams.stagger, layout.job.seams.clear_courses as i32);
    for e in &layout.elevations {
        let courses = e.walls.iter().flat_map(|w| &w.courses);
        let mut all: Vec<(i32, f64, bool)> = courses
            .flat_map(|c| c.runs.iter().map(move |r| (c.index, r)))
            .flat_map(|(i, r)| (0..r.seams.len()).map(move |n| (i, r.seams[n], is_fixed(r, n))))
            .collect();
        all.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
        for (i, (level, x, fixed)) in all.iter().enumerate() {
            let near = all[i + 1..].iter().take_while(|o| o.0 <= level + clear);
            // Two courses that one obstacle crosses have their seams where it stands.
            for (other, y, _) in near.filter(|o| o.0 > *level && !(*fixed && o.2)) {
                rule.case((x - y).abs() >= apart - super::SAME, || {
                    format!(
                        "{}: seams of courses {} and {} stand at {x:.3} and {y:.3}",
                        e.name,
                        level + 1,
                        other + 1
                    )
                });
            }
        }
    }
    rule.done("seams of near courses keep the stagger")
}

/// Between seams that fixtures fix, the pieces of each part.
fn parts(run: &LaidRun) -> Vec<Vec<&Piece>> {
    let mut out: Vec<Vec<&Piece>> = vec![Vec::new()];
    for (i, p) in run.pieces.iter().enumerate() {
        if i > 0 && is_fixed(run, i - 1) {
            out.push(Vec::new());
        }
        if let Some(part) = out.last_mut() {
            part.push(p);
        }
    }
    out
}

fn shortest(layout: &Layout) -> RuleCheck {
    let mut rule = Rule::default();
    let least = layout.job.seams.shortest;
    for r in runs(layout) {
        // A part that one piece covers is as short as what stands round it leaves it.
        for p in parts(r).into_iter().filter(|part| part.len() > 1).flatten() {
            rule.case(p.length >= least - super::SAME, || {
                format!("piece {} is {:.4} long, shorter than {least}", p.mark, p.length)
            });
        }
    }
    rule.done("no piece of a seamed run is shorter than the shortest")
}

/// A seam is kept off mounting blocks, and stands past each fixture without one (FACTS PR-11).
fn fixtures(layout: &Layout) -> RuleCheck {
    let mut rule = Rule::default();
    let (lap, past) = (layout.job.lap(), layout.job.seams.past_obstacle);
    let boards = layout.job.siding().joints.is_on_studs();
    let room = lap.abs() / 2.0 + layout.job.courses.notch_clearance - SIXTEENTH;
    for (_, w) in layout.walls().filter(|(_, w)| !w.obstacles.is_empty()) {
        for r in w.courses.iter().flat_map(|c| &c.runs) {
            let laid = bounds(r.pieces.iter().flat_map(|p| &p.outline));
            // Where a seam must stand, and where one may.
            let (mut wanted, mut lawful) = (Vec::new(), Vec::new());
            for o in &w.obstacles {
                let b = bounds(&o.outline);
                let near = b[0] < laid[2] && b[2] > laid[0] && b[1] < laid[3] && b[3] > laid[1];
                if !near {
                    continue;
                }
                if !(o.mounting_block || boards) {
                    // The first panel ends past it; its seam is half a lap back. A fixture as high
                    // as the course ends the run; where a hair is left, it may.
                    let x = b[2] + past.min(lap) - lap / 2.0;
                    let less = |by: f64| b[1] > laid[1] + by || b[3] < laid[3] - by;
                    lawful.extend(less(super::SAME).then_some(x));
                    wanted.extend(less(CUT).then_some(x));
                    continue;
                }
                for (i, s) in r.seams.iter().enumerate().filter(|(i, _)| !is_fixed(r, *i)) {
                    rule.case(*s <= b[0] - room || *s >= b[2] + room, || {
                        format!("run {}: seam {} at {s:.3} laps over {}", r.id, i + 1, o.id)
                    });
                }
            }
            for x in &wanted {
                // Nearer than a lap to the run's end, or to another such seam, there is no room.
                let stands = |s: &f64, by: f64| (s - x).abs() <= by;
                let ends = [laid[0] + lap, laid[2] - lap];
                let none = *x <= ends[0] + SIXTEENTH || *x >= ends[1] - SIXTEENTH;
                let found = r.fixed.iter().any(|s| stands(s, SIXTEENTH));
                let crowded = r.fixed.iter().any(|s| stands(s, 2.0 * lap + SIXTEENTH));
                rule.case(found || none || crowded, || {
                    format!("run {}: no seam at {x:.3}, {past} in past a fixture", r.id)
                });
            }
            for s in &r.fixed {
                let known = lawful.iter().any(|x| (s - x).abs() <= SIXTEENTH);
                rule.case(known && r.seams.contains(s), || {
                    format!("run {}: the seam at {s:.3} is fixed by nothing", r.id)
                });
            }
        }
    }
    rule.done("seams keep off mounting blocks and stand past bare fixtures")
}

/// Seams are placed in whole sixteenths.
const SIXTEENTH: f64 = 1.0 / 16.0;

/// Left, bottom, right, top.
fn bounds<'a>(points: impl IntoIterator<Item = &'a Xy>) -> [f64; 4] {
    let none = [f64::INFINITY, f64::INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY];
    points
        .into_iter()
        .fold(none, |b, p| [b[0].min(p[0]), b[1].min(p[1]), b[2].max(p[0]), b[3].max(p[1])])
}
