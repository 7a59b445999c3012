//! Courses level across the house; areas; clearance to grade.

use super::{Rule, same};
use crate::model::house::EdgeKind;
use crate::model::layout::{Elevation, Layout, RuleCheck, Xy};

pub(super) fn check(layout: &Layout) -> [RuleCheck; 3] {
    [levels(layout), areas(layout), grade(layout)]
}

fn levels(layout: &Layout) -> RuleCheck {
    let mut rule = Rule::default();
    let exposure = layout.job.product.exposure;
    for (_, w) in layout.walls() {
        for c in &w.courses {
            let bottom = layout.datum + f64::from(c.index) * exposure;
            rule.case(same(c.bottom, bottom) && same(c.top, bottom + exposure), || {
                format!(
                    "{}, course {}: butt line at {:.4}, not {:.4}",
                    w.id,
                    c.index + 1,
                    c.bottom,
                    bottom
                )
            });
        }
    }
    rule.done("a course is at one level on every wall")
}

/// Area by the shoelace rule, square feet.
fn ring_area(ring: &[Xy]) -> f64 {
    let twice: f64 = (0..ring.len())
        .map(|i| {
            let (a, b) = (ring[i], ring[(i + 1) % ring.len()]);
            a[0] * b[1] - b[0] * a[1]
        })
        .sum();
    (twice / 2.0).abs() / 144.0
}

fn areas(layout: &Layout) -> RuleCheck {
    let mut rule = Rule::default();
    for (_, w) in layout.walls() {
        let openings: f64 = w.openings.iter().map(|o| ring_area(&o.outline)).sum();
        rule.case(w.gross_area <= ring_area(&w.outline) + 0.01 && w.gross_area >= 0.0, || {
            format!("{}: gross area {:.3} is more than its outline's", w.id, w.gross_area)
        });
        // Openings that overlap each other count once; so net may be more than the difference.
        rule.case(
            w.net_area >= w.gross_area - openings - 0.01 && w.net_area <= w.gross_area + 0.01,
            || {
                format!(
                    "{}: net area {:.3} is not gross {:.3} less openings {:.3}",
                    w.id, w.net_area, w.gross_area, openings
                )
            },
        );
    }
    rule.done("net area is gross area less openings")
}

/// Height of grade at `x`, level beyond its ends.
fn grade_at(e: &Elevation, x: f64) -> Option<f64> {
    let (first, last) = (e.grade.first()?, e.grade.last()?);
    if x <= first[0] {
        return Some(first[1]);
    }
    if x >= last[0] {
        return Some(last[1]);
    }
    let pair = e.grade.windows(2).find(|p| p[0][0] <= x && x <= p[1][0] && p[1][0] > p[0][0])?;
    Some(pair[0][1] + (x - pair[0][0]) / (pair[1][0] - pair[0][0]) * (pair[1][1] - pair[0][1]))
}

/// Starts keep clear of grade, and are not raised by more than a course beyond that.
fn grade(layout: &Layout) -> RuleCheck {
    let mut rule = Rule::default();
    let (clear, exposure) = (layout.job.courses.clear_of_grade, layout.job.product.exposure);
    for (e, w) in layout.walls() {
        let lowest = w.outline.iter().map(|p| p[1]).fold(f64::INFINITY, f64::min);
        for edge in w.edges.iter().filter(|s| s.kind == EdgeKind::Base && same(s.from[1], s.to[1]))
        {
            let (a, b, y) =
                (edge.from[0].min(edge.to[0]), edge.from[0].max(edge.to[0]), edge.from[1]);
            let inside = e.grade.iter().map(|g| g[0]).filter(|x| *x > a && *x < b);
            // The step itself stands within a sixteenth of where the clearance ends.
            let eighth = 0.125f64.min((b - a) / 4.0);
            let highest = [a + eighth, b - eighth]
                .into_iter()
                .chain(inside)
                .filter_map(|x| grade_at(e, x))
                .reduce(f64::max);
            let Some(highest) = highest else { continue };
            rule.case(y >= highest + clear - 0.05, || {
                format!("{}, {}: the start at {y:.2} is nearer than {clear} in to grade at {highest:.2}", e.name, w.id)
            });
            let wasted = y > lowest + 0.01
                && y - exposure >= highest + clear + 0.05
                && y - exposure >= lowest - 0.01;
            rule.case(!wasted || y <= layout.datum + 0.01, || {
                format!("{}, {}: the start at {y:.2} could be a course lower", e.name, w.id)
            });
        }
    }
    rule.done("starts keep clear of grade in whole courses")
}
