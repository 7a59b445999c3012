//! Joints of boards: on studs, off the studs of near courses; and the bound on boards.

use std::collections::BTreeMap;

use super::claims::Claims;
use super::dual::{down, ends, off_step, up};
use super::named::{self, RunOn};
use super::rule::{Cases, count, found};
use crate::layout::breach::count::CountBreach;
use crate::layout::breach::piece::RunBreach;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::{Count, Inches};
use crate::layout::violation::Subject;
use crate::layout::wall::{LaidElevation, LaidWall};
use crate::model::seam::Dual;

/// A place is on a stud within this, inches: joints are laid to the grid.
const ON: f64 = 1.0 / 64.0;

/// Steps of an inch that the bound counts in.
const STEPS: i64 = 16;

/// Joints stand on studs; joints of panels are seams, which have rules of their own.
pub(super) fn on_studs(layout: &Claims) -> RuleCheck {
    let mut rule = Cases::new(Rule::JointsOnStuds);
    let b = &layout.job.boards;
    for (e, w) in layout.walls() {
        let left = w.outline.iter().map(|p| p[0]).fold(f64::INFINITY, f64::min);
        let off = |x: f64| {
            let along = (x - left - b.first_stud) / b.stud_spacing;
            (along - along.round()).abs() * b.stud_spacing
        };
        for on in named::runs_of(e, w) {
            // A joint needs a board on each side of it.
            let fixed = on.run.fixed.first();
            rule.case(fixed.is_none(), || {
                let at = fixed.and_then(|x| on.at(*x));
                found(on.subject(), RunBreach::JointFixed).at(at)
            });
            for s in &on.run.seams {
                rule.case(off(*s) <= ON, || {
                    let v = found(on.subject(), RunBreach::JointOffStud).at(on.at(*s));
                    v.measured(Inches(off(*s))).at_most(Inches(ON))
                });
            }
        }
    }
    rule.done()
}

/// Joints by course, each with its run.
fn joints<'a>(e: &'a LaidElevation, w: &'a LaidWall) -> BTreeMap<i32, Vec<(f64, RunOn<'a>)>> {
    let mut out: BTreeMap<i32, Vec<(f64, RunOn)>> = BTreeMap::new();
    for on in named::runs_of(e, w) {
        let of_course = out.entry(on.course.index).or_default();
        of_course.extend(on.run.seams.iter().map(|x| (*x, on)));
    }
    out
}

/// No joint stands within so many studs of one in a near course.
pub(super) fn stagger(layout: &Claims) -> RuleCheck {
    let mut rule = Cases::new(Rule::JointStagger);
    let b = &layout.job.boards;
    let apart = f64::from(b.studs_apart) * b.stud_spacing;
    let clear = layout.job.seams.clear_courses as i32;
    for (e, w) in layout.walls() {
        let all = joints(e, w);
        for (course, own) in &all {
            for (other_course, near) in all.range(course + 1..course + 1 + clear) {
                for (seam, on) in own {
                    for (other_seam, other) in near {
                        let distance = (seam - other_seam).abs();
                        rule.case(distance >= apart - ON, || {
                            let v = found(
                                on.subject(),
                                RunBreach::SeamsNear {
                                    seam: *seam,
                                    course: *course,
                                    other_seam: *other_seam,
                                    other_course: *other_course,
                                },
                            );
                            let v = v.with(other.subject()).at(on.at(*seam));
                            v.measured(Inches(distance)).at_least(Inches(apart))
                        });
                    }
                }
            }
        }
    }
    rule.done()
}

/// The length bound: what runs cover, less gaps, with a saw cut a piece.
pub(super) fn bound(layout: &Claims) -> RuleCheck {
    let mut rule = Cases::new(Rule::PanelBound);
    let seams = &layout.job.seams;
    let all = || layout.walls().flat_map(|(_, w)| &w.courses).flat_map(|c| &c.runs);
    let off_step = all().any(|r| off_step(r, STEPS));
    let least = layout.job.shortest();
    let shortest = if off_step { up(least, STEPS) + 1 } else { down(least, STEPS) } as f64;
    // Rounded the safe way: more board and more gap, less saw cut.
    let (stock, kerf) = (up(layout.first_length(), STEPS) as f64, down(seams.kerf, STEPS) as f64);
    let gap = up(-layout.job.lap(), STEPS) as f64;
    let mut sum = 0.0;
    for r in all() {
        let (from, to) = ends(r, STEPS);
        let cover = (to - from) as f64;
        sum += if cover <= stock {
            cover + kerf
        } else {
            let fewest = ((cover + gap) / (stock + gap)).ceil();
            let most = ((cover + gap) / (shortest.max(1.0) + gap)).floor().max(fewest);
            let of = |n: f64| cover - (n - 1.0) * gap + n * kerf;
            of(fewest).min(of(most))
        };
    }
    let (c, least) = (&layout.bound.certificate, (sum / (stock + kerf)).ceil());
    rule.case(c.function == Dual::Length && c.sum as f64 == sum, || {
        let of_runs = [sum as i64, (stock + kerf) as i64];
        let breach = CountBreach::Sum { said: [c.sum, c.scale], found: of_runs };
        found(Subject::House, breach)
    });
    rule.case(c.scale as f64 == stock + kerf, || {
        let v = found(Subject::House, CountBreach::PanelWorth).measured(Count(c.scale));
        v.exactly(Count((stock + kerf) as i64))
    });
    rule.case(layout.bound.panels as f64 == least, || {
        let v = found(Subject::House, CountBreach::Bound).measured(count(layout.bound.panels));
        v.exactly(Count(least as i64))
    });
    rule.done()
}
