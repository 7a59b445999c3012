//! Courses level across the house; areas; clearance to grade.

use super::course_lines::{butt, course_at};
use super::grade::{BESIDE, grade_at, is_pocket};
use super::named;
use super::rule::{Cases, found};
use super::tolerance::{NEAR, same};
use crate::geom::tol::SAME;
use crate::geom::vocabulary::Xy;
use crate::layout::breach::wall::{CourseBreach, FieldBreach};
use crate::layout::laid::LaidHouse;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::{Inches, SquareFeet};
use crate::layout::violation::Subject;
use crate::layout::wall::{LaidEdge, LaidElevation, LaidWall};
use crate::model::house::EdgeKind;

pub(super) fn check(layout: &LaidHouse) -> [RuleCheck; 3] {
    [levels(layout), areas(layout), grade(layout)]
}

fn levels(layout: &LaidHouse) -> RuleCheck {
    let mut rule = Cases::new(Rule::CourseLevels);
    let limits = layout.job.product.limits();
    let evened = layout.story_pole.evened.windows(2).map(|p| p[1] - p[0]);
    let beyond = std::iter::once((None, layout.job.product.exposure));
    for (course, height) in (0..).map(Some).zip(evened).chain(beyond) {
        rule.case(height >= limits.0 - NEAR && height <= limits.1 + NEAR, || {
            let v = found(Subject::House, CourseBreach::Exposure { course });
            v.measured(Inches(height)).between(Inches(limits.0), Inches(limits.1))
        });
    }
    for (e, w) in layout.walls() {
        let down = w.courses.windows(2).find(|p| p[0].index >= p[1].index);
        rule.case(down.is_none(), || {
            let x = named::middle(&w.outline)[0];
            let at = down.and_then(|p| named::place(&e.name, [x, p[1].bottom]));
            found(named::wall(&w.id), CourseBreach::Order).at(at)
        });
        for c in &w.courses {
            let lines = [
                (c.bottom, butt(layout, c.index), CourseBreach::ButtLine),
                (c.top, butt(layout, c.index + 1), CourseBreach::TopLine),
            ];
            let off = lines.into_iter().find(|(has, line, _)| !same(*has, *line));
            rule.checked += 1;
            if let Some((has, line, breach)) = off {
                let at = named::place(&e.name, [named::middle(&w.outline)[0], has]);
                let v = found(named::course(&w.id, c.index), breach).at(at);
                rule.breaks(v.measured(Inches(has)).exactly(Inches(line)));
            }
        }
    }
    rule.done()
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

fn areas(layout: &LaidHouse) -> RuleCheck {
    let mut rule = Cases::new(Rule::WallAreas);
    for (e, w) in layout.walls() {
        let openings: f64 = w.openings.iter().map(|o| ring_area(&o.outline)).sum();
        let (gross, most) = (w.gross_area, ring_area(&w.outline));
        // What gets no siding is told apart.
        let net = w.net_area + w.bare_area();
        rule.case(gross <= most + 0.01 && gross >= 0.0, || {
            let v = found(named::wall(&w.id), FieldBreach::GrossArea).at(named::at_wall(e, w));
            v.measured(SquareFeet(gross)).between(SquareFeet(0.0), SquareFeet(most))
        });
        // Openings that overlap each other count once; so net may be more than the difference.
        rule.case(net >= gross - openings - 0.01 && net <= gross + 0.01, || {
            let v = found(named::wall(&w.id), FieldBreach::NetArea).at(named::at_wall(e, w));
            v.measured(SquareFeet(net)).between(SquareFeet(gross - openings), SquareFeet(gross))
        });
    }
    rule.done()
}

/// Panels keep clear of grade all along their lowest sides, and starts are not raised by more than
/// a course beyond that.
fn grade(layout: &LaidHouse) -> RuleCheck {
    let mut rule = Cases::new(Rule::GradeClearance);
    for (e, w) in layout.walls() {
        // Sides that run right have the field above them.
        for s in w.edges.iter().filter(|s| s.opening.is_none() && s.to[0] > s.from[0] + SAME) {
            if let Some(least) = clearance(e, s) {
                over_grade(&mut rule, layout, (e, w), s, least);
            }
        }
    }
    rule.done()
}

/// Where along a side grade comes nearest to it, and how near.
fn clearance(e: &LaidElevation, s: &LaidEdge) -> Option<(Xy, f64)> {
    let (a, b) = (s.from, s.to);
    let at = |x: f64| a[1] + (x - a[0]) / (b[0] - a[0]) * (b[1] - a[1]);
    // A step itself stands within a sixteenth of where the clearance ends.
    let eighth = 0.125f64.min((b[0] - a[0]) / 4.0);
    // Where grade stands plumb, as at a retaining wall, it is as high as on either hand.
    let inside = e.grade.iter().map(|g| g[0]).filter(|x| *x > a[0] && *x < b[0]);
    let inside = inside.flat_map(|x| [x - BESIDE, x + BESIDE]);
    let under = [a[0] + eighth, b[0] - eighth].into_iter().chain(inside);
    let clear = under.filter_map(|x| Some(([x, at(x)], at(x) - grade_at(e, x)?)));
    clear.reduce(|one, next| if next.1 < one.1 { next } else { one })
}

/// Whether a side lies over what stands in a corner beneath it: from the drawn corner to where siding ends.
fn over_post(w: &LaidWall, s: &LaidEdge) -> bool {
    let corner = |k: EdgeKind| matches!(k, EdgeKind::OutsideCorner | EdgeKind::InsideCorner);
    let meets = |p: Xy, q: Xy| (p[0] - q[0]).abs() <= NEAR && (p[1] - q[1]).abs() <= NEAR;
    let ends_at = |p: Xy| {
        let below = |c: &LaidEdge| c.from[1].min(c.to[1]) < p[1] - NEAR;
        let here = |c: &LaidEdge| meets(c.from, p) || meets(c.to, p);
        w.edges.iter().any(|c| corner(c.kind) && here(c) && below(c))
    };
    let drawn = |p: Xy| w.outline.iter().any(|q| meets(*q, p));
    (ends_at(s.from) && drawn(s.to)) || (ends_at(s.to) && drawn(s.from))
}

/// Whether the wall itself ends at a side, as over a lower part of the house: nothing is left under it.
fn drawn_there(w: &LaidWall, s: &LaidEdge) -> bool {
    let x = named::midway(s.from, s.to)[0];
    let next = w.outline.iter().cycle().skip(1);
    w.outline.iter().zip(next).any(|(a, b)| {
        let level = (a[1] - s.from[1]).abs() <= NEAR && (b[1] - s.from[1]).abs() <= NEAR;
        level && a[0].min(b[0]) <= x && x <= a[0].max(b[0])
    })
}

fn over_grade(
    rule: &mut Cases,
    layout: &LaidHouse,
    (e, w): (&LaidElevation, &LaidWall),
    s: &LaidEdge,
    (nearest, least): (Xy, f64),
) {
    let clear = layout.job.courses.clear_of_grade;
    let lowest = w.outline.iter().map(|p| p[1]).fold(f64::INFINITY, f64::min);
    rule.case(least >= clear - NEAR, || {
        let at = named::place(&e.name, nearest);
        let v = found(named::wall(&w.id), CourseBreach::NearGrade).at(at);
        v.measured(Inches(least)).at_least(Inches(clear))
    });
    let y = s.from[1];
    let start = s.kind == EdgeKind::Base && same(s.from[1], s.to[1]);
    let exposure = y - butt(layout, course_at(layout, y - 0.02));
    let lower = y - exposure >= lowest - 0.01 && y > layout.datum + 0.01;
    let wasted = start
        && lower
        && !drawn_there(w, s)
        && !over_post(w, s)
        && least - exposure >= clear + NEAR;
    // Beside a step there may be room under it for no piece.
    let x = named::midway(s.from, s.to)[0];
    let wasted = wasted && !is_pocket(layout, (e, w), (y - exposure, y), x);
    rule.case(!wasted, || {
        let at = named::place(&e.name, named::midway(s.from, s.to));
        let v = found(named::wall(&w.id), CourseBreach::StartTooHigh).at(at);
        v.measured(Inches(least)).at_most(Inches(clear + exposure))
    });
}
