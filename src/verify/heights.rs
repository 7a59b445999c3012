//! Courses level across the house; areas; clearance to grade.

use super::NEAR;
use super::{Rule, butt, course_at, same};
use crate::geom::tol::SAME;
use crate::geom::vocabulary::Xy;
use crate::layout::Layout;
use crate::layout::verified::RuleCheck;
use crate::layout::wall::LaidElevation;
use crate::model::house::EdgeKind;

pub(super) fn check(layout: &Layout) -> [RuleCheck; 3] {
    [levels(layout), areas(layout), grade(layout)]
}

fn levels(layout: &Layout) -> RuleCheck {
    let mut rule = Rule::default();
    let limits = layout.job.product.limits();
    let evened = layout.story_pole.evened.windows(2).map(|p| p[1] - p[0]);
    let beyond = std::iter::once(layout.job.product.exposure);
    for height in evened.chain(beyond) {
        rule.case(height >= limits.0 - NEAR && height <= limits.1 + NEAR, || {
            format!("a course of {height:.4}, beyond the limits {} and {}", limits.0, limits.1)
        });
    }
    for (_, w) in layout.walls() {
        let up = w.courses.windows(2).all(|p| p[0].index < p[1].index);
        rule.case(up, || format!("{}: its courses do not go up one by one", w.id));
        for c in &w.courses {
            let bottom = butt(layout, c.index);
            rule.case(same(c.bottom, bottom) && same(c.top, butt(layout, c.index + 1)), || {
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
pub(super) fn grade_at(e: &LaidElevation, x: f64) -> Option<f64> {
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

/// Panels keep clear of grade all along their lowest sides, and starts are not raised by more than
/// a course beyond that.
fn grade(layout: &Layout) -> RuleCheck {
    let mut rule = Rule::default();
    let clear = layout.job.courses.clear_of_grade;
    for (e, w) in layout.walls() {
        let lowest = w.outline.iter().map(|p| p[1]).fold(f64::INFINITY, f64::min);
        // Sides that run right have the field above them.
        for s in w.edges.iter().filter(|s| s.opening.is_none() && s.to[0] > s.from[0] + SAME) {
            let (a, b) = (s.from, s.to);
            let at = |x: f64| a[1] + (x - a[0]) / (b[0] - a[0]) * (b[1] - a[1]);
            // A step itself stands within a sixteenth of where the clearance ends.
            let eighth = 0.125f64.min((b[0] - a[0]) / 4.0);
            let inside = e.grade.iter().map(|g| g[0]).filter(|x| *x > a[0] && *x < b[0]);
            let ends = [a[0] + eighth, b[0] - eighth];
            let under = ends.into_iter().chain(inside);
            let Some(least) = under.filter_map(|x| Some(at(x) - grade_at(e, x)?)).reduce(f64::min)
            else {
                continue;
            };
            let place = || format!("{}, {}", e.name, w.id);
            rule.case(least >= clear - NEAR, || {
                format!("{}: panels stand {least:.2} over grade, {clear} are needed", place())
            });
            let y = a[1];
            let start = s.kind == EdgeKind::Base && same(a[1], b[1]);
            let exposure = y - butt(layout, course_at(layout, y - 0.02));
            let lower = y - exposure >= lowest - 0.01 && y > layout.datum + 0.01;
            let wasted = start && lower && least - exposure >= clear + NEAR;
            rule.case(!wasted, || {
                format!("{}: the start at {y:.2} could be a course lower", place())
            });
        }
    }
    rule.done("starts keep clear of grade in whole courses")
}
