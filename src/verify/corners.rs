//! Corners: every upright corner side belongs to one, and courses meet there (`LayoutFact::OneDatum`,
//! `LayoutFact::CornersAgree`).

use std::collections::BTreeSet;

use super::corner_sides::{ends_over, hand, has_room, lies, place_at, set_back};
use super::named;
use super::rule::{Cases, count, found};
use super::tolerance::{NEAR, same};
use crate::geom::tol::SAME;
use crate::layout::breach::trim::CornerBreach;
use crate::layout::by_wall::ByWall;
use crate::layout::course::LaidCourse;
use crate::layout::laid::LaidHouse;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::{Figure, Place};
use crate::layout::wall::{LaidEdge, LaidWall};
use crate::model::corner::{Corner, CornerSide, Hand, Pairing};

/// Sides shorter than this are looked at by no rule, inches.
const LEAST: f64 = 1.0;
/// A strip lower than this at the end of the height two walls share may be left out as too thin,
/// inches.
const SLIVER: f64 = 0.5;

pub(super) fn check(layout: &LaidHouse, at: &ByWall) -> [RuleCheck; 2] {
    let mut once = Cases::new(Rule::CornerSides);
    let mut meet = Cases::new(Rule::CornerCourses);
    for (e, w) in layout.walls() {
        for s in w.edges.iter().filter(|s| height(s) >= LEAST) {
            let Some(hand) = hand(s) else { continue };
            let n = at.sides(&w.id).iter().filter(|(c, k)| lies(layout, w, s, (c, k))).count();
            once.case(n == 1, || {
                let place = named::place(&e.name, named::midway(s.from, s.to));
                let v = found(named::wall(&w.id), CornerBreach::SideCorners { hand }).at(place);
                v.measured(count(n)).exactly(count(1))
            });
        }
    }
    let mut met: BTreeSet<&str> = BTreeSet::new();
    for c in &layout.corners {
        whole(&mut once, at, c, !met.insert(&c.id));
        courses(&mut meet, layout, at, c);
    }
    [once.done(), meet.done()]
}

fn height(s: &LaidEdge) -> f64 {
    (s.to[1] - s.from[1]).abs()
}

/// Where a corner's side stands, half way up.
fn at_side(k: &CornerSide) -> Option<Place> {
    named::place(&k.elevation, [k.x, (k.low + k.high) / 2.0])
}

/// A corner names walls that stand, reaches as far as they do, and turns round to another elevation
/// where it has more than one wall.
fn whole(rule: &mut Cases, at: &ByWall, c: &Corner, twice: bool) {
    let subject = || named::corner(&c.id);
    let first = || c.sides.first().and_then(at_side);
    rule.case(!twice && !c.sides.is_empty(), || {
        let breach = if twice { CornerBreach::NamedTwice } else { CornerBreach::Bare };
        found(subject(), breach).at(first())
    });
    for k in &c.sides {
        let stands = at.walls(&k.wall).iter().any(|(e, _)| e.name == k.elevation);
        rule.case(stands, || {
            found(subject(), CornerBreach::WallUnknown).with(named::wall(&k.wall)).at(at_side(k))
        });
    }
    let low = c.sides.iter().map(|k| k.low).fold(f64::INFINITY, f64::min);
    let high = c.sides.iter().map(|k| k.high).fold(f64::NEG_INFINITY, f64::max);
    rule.case(same(low, c.low) && same(high, c.high), || {
        let walls = named::span(low, high);
        found(subject(), CornerBreach::Height { said: [c.low, c.high], walls }).at(first())
    });
    let round = c.sides.iter().skip(1).any(|k| k.elevation != c.sides[0].elevation);
    // Two walls of one elevation may meet at an angle: the right side of one at the left side of the other.
    let met = |k: &CornerSide, o: &CornerSide| k.side != o.side && (k.x - o.x).abs() < NEAR;
    let neighbors = c.by == Pairing::Neighbor && c.sides.windows(2).any(|p| met(&p[0], &p[1]));
    rule.case(round || neighbors || c.sides.len() < 2, || {
        found(subject(), CornerBreach::OneElevation).at(first())
    });
}

/// A wall's side at a corner: heights its field reaches there, and the butt lines that end there,
/// each with its side.
struct Shown<'a> {
    /// With the wall and its side.
    reach: Vec<(f64, f64, &'a LaidWall, &'a CornerSide)>,
    lines: Vec<(f64, &'a CornerSide)>,
}

fn shown<'a>(
    layout: &LaidHouse,
    at: &'a ByWall,
    c: &'a Corner,
    here: &dyn Fn(&CornerSide) -> bool,
) -> Shown<'a> {
    let mut out = Shown { reach: Vec::new(), lines: Vec::new() };
    for k in c.sides.iter().filter(|k| here(k)) {
        for (_, w) in at.walls(&k.wall) {
            let mine = w.edges.iter().filter(|s| lies(layout, w, s, (c, k)));
            out.reach.extend(mine.map(|s| {
                let (low, high) = (s.from[1].min(s.to[1]), s.from[1].max(s.to[1]));
                (low.max(k.low), high.min(k.high), *w, k)
            }));
            let ends = |course: &&LaidCourse| {
                let [foot, head] = [course.bottom, course.top].map(|y| place_at(w, k, y));
                let near = NEAR + (foot - head).abs() + set_back(layout, c, k);
                course.runs.iter().any(|r| {
                    let x = if k.side == Hand::Left { r.x0 } else { r.x1 };
                    (x - (foot + head) / 2.0).abs() < near
                })
            };
            out.lines.extend(w.courses.iter().filter(ends).map(|c| (c.bottom, k)));
        }
    }
    out
}

/// Every butt line that reaches the corner on one wall, at a height where the other wall has room for
/// siding there too, is a butt line of the other.
fn courses(rule: &mut Cases, layout: &LaidHouse, at: &ByWall, c: &Corner) {
    let Some(first) = c.sides.first() else { return };
    let one = shown(layout, at, c, &|k| k.elevation == first.elevation);
    let two = shown(layout, at, c, &|k| k.elevation != first.elevation);
    for (a, b) in [(&one, &two), (&two, &one)] {
        for (y, k) in &a.lines {
            // Under a sill siding ends the clearance lower: where that is below the line, none stands on it.
            let cut = layout.job.courses.notch_clearance;
            let inside = |s: &Shown| {
                s.reach.iter().any(|(low, high, w, k)| {
                    *y > low + SAME
                        && *y < high - SLIVER
                        && has_room(layout, w, (c, k), *y)
                        && !ends_over(layout, w, (c, k), (*y, cut))
                })
            };
            if inside(a) && inside(b) {
                rule.case(b.lines.iter().any(|(z, _)| same(*y, *z)), || {
                    let v = found(named::corner(&c.id), CornerBreach::ButtLine);
                    let v = v.with(named::wall(&k.wall)).measured(Figure::Inches(*y));
                    v.at(named::place(&k.elevation, [k.x, *y]))
                });
            }
        }
    }
}
