//! Seams: factory ends meet, runs add up, stagger, shortest piece.

use std::collections::BTreeMap;

use super::named::{self, RunOn};
use super::rule::{Cases, count, found};
use super::tolerance::{SAME, same};
use crate::layout::breach::piece::{PieceBreach, RunBreach};
use crate::layout::course::LaidRun;
use crate::layout::laid::LaidHouse;
use crate::layout::piece::{EndCut, Piece};
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::Inches;
use crate::model::corner::Hand;

/// Rules that hold for panels and boards alike.
pub(super) fn check(layout: &LaidHouse) -> [RuleCheck; 4] {
    [spans(layout), factory(layout), places(layout), shortest(layout)]
}

/// Whether a fixture fixes a seam of a run.
fn is_fixed(run: &LaidRun, i: usize) -> bool {
    run.seams.get(i).is_some_and(|s| run.fixed.iter().any(|f| same(*f, *s)))
}

/// Pieces and laps sum to the run less its end gaps.
fn spans(layout: &LaidHouse) -> RuleCheck {
    let mut rule = Cases::new(Rule::RunFilled);
    let lap = layout.job.lap();
    for on in named::runs(layout) {
        let r = on.run;
        let sum: f64 = r.pieces.iter().map(|p| p.length).sum();
        let laps = r.pieces.len().saturating_sub(1) as f64 * lap;
        let cover = r.x1 - r.x0 - 2.0 * r.gap;
        rule.case(!r.pieces.is_empty() && same(sum - laps, cover), || {
            let v = found(on.subject(), RunBreach::Filled).at(on.middle());
            v.measured(Inches(sum - laps)).exactly(Inches(cover))
        });
        rule.case(same(r.gap, layout.job.end_gap()), || {
            let v = found(on.subject(), RunBreach::EndGap).at(on.at(r.x0));
            v.measured(Inches(r.gap)).exactly(Inches(layout.job.end_gap()))
        });
        for p in &r.pieces {
            let (cut, on_wall) = (p.end - p.start, p.x1 - p.x0);
            rule.case(same(p.length, cut) && same(p.length, on_wall), || {
                let v = found(named::piece(&p.mark), PieceBreach::Length { cut, on_wall });
                let needed = if same(p.length, cut) { on_wall } else { cut };
                let v = v.at(on.piece(p).middle());
                v.measured(Inches(p.length)).exactly(Inches(needed))
            });
        }
    }
    rule.done()
}

fn factory(layout: &LaidHouse) -> RuleCheck {
    let boards = layout.job.siding().joints.is_on_studs();
    let mut rule = Cases::new(if boards { Rule::BoardFactoryEnds } else { Rule::SeamFactoryEnds });
    let mut by: BTreeMap<&str, f64> = BTreeMap::new();
    for q in &layout.panels {
        by.entry(&q.id).or_insert(q.stock);
    }
    let stock = |p: &Piece| by.get(p.panel.as_str()).copied().unwrap_or(0.0);
    for on in named::runs(layout) {
        let r = on.run;
        // Cut ends of boards may meet.
        let seams = r.pieces.windows(2).enumerate();
        for (_, pair) in seams.filter(|(i, _)| !(boards || is_fixed(r, *i))) {
            let (a, b) = (&pair[0], &pair[1]);
            let ends = same(a.end, stock(a)) && same(b.start, 0.0);
            let said = a.ends[1].cut == EndCut::Factory && b.ends[0].cut == EndCut::Factory;
            rule.case(ends && said, || {
                let v = found(named::piece(&a.mark), PieceBreach::SeamEnds);
                v.with(named::piece(&b.mark)).at(on.at((a.x1 + b.x0) / 2.0))
            });
        }
        for p in &r.pieces {
            let left = p.ends[0].cut != EndCut::Factory || same(p.start, 0.0);
            let right = p.ends[1].cut != EndCut::Factory || same(p.end, stock(p));
            rule.case(left && right, || {
                let hand = if left { Hand::Right } else { Hand::Left };
                let at = on.piece(p).end(usize::from(left));
                found(named::piece(&p.mark), PieceBreach::FactoryEnd { hand }).at(at)
            });
        }
    }
    rule.done()
}

fn places(layout: &LaidHouse) -> RuleCheck {
    let mut rule = Cases::new(Rule::SeamPlaces);
    let lap = layout.job.lap();
    for on in named::runs(layout) {
        let r = on.run;
        rule.case(r.seams.len() + 1 == r.pieces.len(), || {
            let breach = RunBreach::SeamCount { pieces: r.pieces.len() };
            found(on.subject(), breach).at(on.middle()).measured(count(r.seams.len()))
        });
        for (pair, s) in r.pieces.windows(2).zip(&r.seams) {
            let (from, to) = (pair[1].x0, pair[0].x1);
            let middle = (to + from) / 2.0;
            rule.case(same(to - from, lap) && same(middle, *s), || {
                let breach = RunBreach::SeamOffLap { from, to, lap };
                let v = found(on.subject(), breach).at(on.at(*s));
                v.measured(Inches(*s)).exactly(Inches(middle))
            });
        }
    }
    rule.done()
}

/// Seams of panels in near courses keep the stagger, all along an elevation.
pub(super) fn stagger(layout: &LaidHouse) -> RuleCheck {
    let mut rule = Cases::new(Rule::SeamStagger);
    let (apart, clear) = (layout.job.seams.stagger, layout.job.seams.clear_courses as i32);
    for e in &layout.elevations {
        let runs = e.walls.iter().flat_map(|w| named::runs_of(e, w));
        let mut all: Vec<(i32, f64, bool, RunOn)> = runs
            .flat_map(|on| {
                let of_run = 0..on.run.seams.len();
                of_run.map(move |n| (on.course.index, on.run.seams[n], is_fixed(on.run, n), on))
            })
            .collect();
        all.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
        for (i, (course, seam, fixed, on)) in all.iter().enumerate() {
            let near = all[i + 1..].iter().take_while(|o| o.0 <= course + clear);
            // Two courses that one obstacle crosses have their seams where it stands.
            for (other_course, other_seam, _, other) in
                near.filter(|o| o.0 > *course && !(*fixed && o.2))
            {
                let distance = (seam - other_seam).abs();
                rule.case(distance >= apart - SAME, || {
                    let breach = RunBreach::SeamsNear {
                        seam: *seam,
                        course: *course,
                        other_seam: *other_seam,
                        other_course: *other_course,
                    };
                    let v = found(on.subject(), breach).with(other.subject()).at(on.at(*seam));
                    v.measured(Inches(distance)).at_least(Inches(apart))
                });
            }
        }
    }
    rule.done()
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

fn shortest(layout: &LaidHouse) -> RuleCheck {
    let mut rule = Cases::new(Rule::ShortestPiece);
    let least = layout.job.seams.shortest;
    for on in named::runs(layout) {
        // A part that one piece covers is as short as what stands round it leaves it.
        for p in parts(on.run).into_iter().filter(|part| part.len() > 1).flatten() {
            rule.case(p.length >= least - SAME, || {
                let at = on.piece(p).middle();
                let v = found(named::piece(&p.mark), PieceBreach::TooShort).at(at);
                v.measured(Inches(p.length)).at_least(Inches(least))
            });
        }
    }
    rule.done()
}
