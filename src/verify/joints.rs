//! Joints of boards: on studs, off the studs of near courses; and the bound on boards.

use std::collections::BTreeMap;

use super::Rule;
use crate::layout::Layout;
use crate::layout::verified::RuleCheck;
use crate::layout::wall::LaidWall;
use crate::model::seam::Dual;

/// A place is on a stud within this, inches: joints are laid to the grid.
const ON: f64 = 1.0 / 64.0;

/// Joints of panels are seams: those have rules of their own.
pub(super) fn check(layout: &Layout) -> Option<RuleCheck> {
    layout.job.siding().joints.is_on_studs().then(|| on_studs(layout))
}

fn on_studs(layout: &Layout) -> RuleCheck {
    let mut rule = Rule::default();
    let b = &layout.job.boards;
    for (_, w) in layout.walls() {
        let left = w.outline.iter().map(|p| p[0]).fold(f64::INFINITY, f64::min);
        let off = |x: f64| {
            let along = (x - left - b.first_stud) / b.stud_spacing;
            (along - along.round()).abs() * b.stud_spacing
        };
        for r in w.courses.iter().flat_map(|c| &c.runs) {
            // A joint needs a board on each side of it.
            rule.case(r.fixed.is_empty(), || format!("run {}: a joint fixed by a fixture", r.id));
            for s in &r.seams {
                rule.case(off(*s) <= ON, || {
                    format!("run {}: the joint at {s:.3} is {:.3} off its stud", r.id, off(*s))
                });
            }
        }
    }
    rule.done("joints stand on studs")
}

fn joints(w: &LaidWall) -> BTreeMap<i32, Vec<f64>> {
    let mut out: BTreeMap<i32, Vec<f64>> = BTreeMap::new();
    for c in &w.courses {
        out.entry(c.index).or_default().extend(c.runs.iter().flat_map(|r| &r.seams));
    }
    out
}

/// No joint stands within so many studs of one in a near course.
pub(super) fn stagger(layout: &Layout) -> RuleCheck {
    let mut rule = Rule::default();
    let b = &layout.job.boards;
    let apart = f64::from(b.studs_apart) * b.stud_spacing;
    let clear = layout.job.seams.clear_courses as i32;
    for (_, w) in layout.walls() {
        let all = joints(w);
        for (level, own) in &all {
            for (other, near) in all.range(level + 1..level + 1 + clear) {
                for x in own {
                    for y in near {
                        rule.case((x - y).abs() >= apart - ON, || {
                            format!(
                                "{}: joints of courses {} and {} stand at {x:.3} and {y:.3}",
                                w.id,
                                level + 1,
                                other + 1
                            )
                        });
                    }
                }
            }
        }
    }
    rule.done("joints of near courses stand on different studs")
}

/// The length bound: what runs cover, less gaps, with a saw cut a piece.
pub(super) fn bound(layout: &Layout) -> RuleCheck {
    let mut rule = Rule::default();
    let seams = &layout.job.seams;
    let all = || layout.walls().flat_map(|(_, w)| &w.courses).flat_map(|c| &c.runs);
    let off_grid = all().any(|r| (r.x0 * 16.0).fract() != 0.0 || (r.x1 * 16.0).fract() != 0.0);
    let least = seams.shortest * 16.0;
    let shortest = if off_grid { least.ceil() + 1.0 } else { least.floor() };
    let (stock, kerf) = ((layout.job.product.length * 16.0).round(), (seams.kerf * 16.0).round());
    let gap = (-layout.job.lap() * 16.0).ceil();
    let mut sum = 0.0;
    for r in all() {
        let ends = ((r.x0 * 16.0).floor() / 16.0, (r.x1 * 16.0).ceil() / 16.0);
        let cover = ((ends.1 - r.gap - ends.0 - r.gap) * 16.0).floor();
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
        format!("the certificate says {}, the runs give {sum}", c.sum)
    });
    rule.case(c.scale as f64 == stock + kerf, || format!("a board is said worth {}", c.scale));
    rule.case(layout.bound.panels as f64 == least, || {
        format!("the bound is {least}, said to be {}", layout.bound.panels)
    });
    rule.done("the panel bound follows from the runs")
}
