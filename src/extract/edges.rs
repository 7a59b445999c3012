//! What each side of a wall is: corner, eave, rake, base, lower roof, the edge of a bare area.

use super::frame::ViewFrame;
use crate::clean::{Destination, clean};
use crate::finding::house::HouseFinding;
use crate::finding::{Finding, Findings};
use crate::geom::polygon::{Polygon, sides};
use crate::geom::tol::{BESIDE, SAME, level, plumb, upright};
use crate::geom::vocabulary::{Point, Rect};
use crate::model::house::{DrawnEdge, EdgeKind};
use crate::model::linework::Role;

/// How far inside its wall an inside-corner line may be drawn, inches: part of the convention.
pub(super) const CORNER_REACH: f64 = 6.0;
/// How far from a corner's foot its tag may stand, inches: part of the convention.
const TAG_REACH: f64 = 18.0;

/// What stands along the sides of a wall.
pub(super) struct Beside<'a> {
    /// What is not sided.
    pub(super) bare: &'a [Polygon],
    pub(super) roofs: &'a [Polygon],
    /// Upright sides that are no corners.
    pub(super) channels: &'a [(Point, Point)],
    /// Whether the outline was given, not drawn: then a side that leans as a corner may is meant so.
    pub(super) given: bool,
}

impl Beside<'_> {
    fn is_channel(&self, from: Point, to: Point) -> bool {
        let middle = from.midpoint(to);
        self.channels.iter().any(|(a, b)| on_segment(middle, *a, *b))
    }
}

/// The sides of a wall's faces, each named.
pub(super) fn edges(
    local: &ViewFrame,
    outline: &[Point],
    faces: &[Polygon],
    beside: &Beside,
    findings: &mut Findings,
) -> Vec<DrawnEdge> {
    let boxed = |shapes: &[Polygon]| -> Vec<(Rect, Polygon)> {
        let reach = |s: &Polygon| s.bounds().inflate(BESIDE, BESIDE);
        shapes.iter().map(|s| (reach(s), s.clone())).collect()
    };
    let (bare, roofs) = (boxed(beside.bare), boxed(beside.roofs));
    let mut out = Vec::new();
    let foot = outline.iter().map(|p| p.y).fold(f64::INFINITY, f64::min);
    for ring in faces.iter().flat_map(Polygon::rings) {
        for (from, to) in straightened(ring) {
            let rise = to - from;
            let stands = if beside.given { upright(rise.x, rise.y) } else { plumb(rise.x) };
            let kind = kind(local, (from, to), stands, &bare, &roofs);
            let pitch = (!level(rise.y) && !stands).then(|| (12.0 * rise.y / rise.x).abs());
            let leaning = rise.x.abs() > SAME && rise.y.abs() > SAME && pitch.is_none();
            let leaning = leaning && (plumb(rise.x) || level(rise.y));
            if leaning {
                let (lean, length) = (rise.x.abs().min(rise.y.abs()), rise.hypot());
                let finding = Finding::new(HouseFinding::SideLeans { lean, length });
                findings.push(finding.at(local.source(from)).on(&local.view.name));
            }
            let tag = if stands { tag(local, from, to, foot) } else { None };
            // A tag is drawn at a corner, whatever stands beside it.
            let cut = kind == EdgeKind::OutsideCorner && tag.is_none();
            let kind = if cut && beside.is_channel(from, to) { EdgeKind::Abutment } else { kind };
            out.push(DrawnEdge { kind, from, to, pitch, tag });
        }
    }
    out
}

/// The sides of a ring, consecutive ones in one line joined.
pub(super) fn straightened(ring: &[Point]) -> Vec<(Point, Point)> {
    let n = ring.len();
    let turns = |i: usize| {
        let (a, b, c) = (ring[(i + n - 1) % n], ring[i], ring[(i + 1) % n]);
        let (u, v) = (b - a, c - b);
        u.cross(v).abs() > 1e-3 * u.hypot().max(1.0) * v.hypot().max(1.0) || u.dot(v) < 0.0
    };
    let corners: Vec<Point> = (0..n).filter(|i| turns(*i)).map(|i| ring[i]).collect();
    sides(&corners).collect()
}

/// Shapes with the boxes that what stands along them lies in.
type Boxed<'a> = &'a [(Rect, Polygon)];

fn kind(
    local: &ViewFrame,
    (from, to): (Point, Point),
    stands: bool,
    bare: Boxed,
    roofs: Boxed,
) -> EdgeKind {
    let (rise, middle) = (to - from, from.midpoint(to));
    let on =
        |shapes: Boxed| shapes.iter().any(|(b, s)| b.contains(middle) && along(&s.outer, middle));
    let roof_line = || {
        let at = middle + local.origin.to_vec2();
        local.strokes(Role::Roof).any(|s| s.points.windows(2).any(|w| on_segment(at, w[0], w[1])))
    };
    if stands {
        return if on(bare) || on(roofs) {
            EdgeKind::Abutment
        } else if is_inside_corner(local, from, to) {
            EdgeKind::InsideCorner
        } else {
            EdgeKind::OutsideCorner
        };
    }
    // The face lies on the left hand: going right it is above.
    match (rise.x > 0.0, level(rise.y)) {
        (true, true) if on(bare) => EdgeKind::BareTop,
        (true, true) if on(roofs) || roof_line() => EdgeKind::LowerRoof,
        (true, true) => EdgeKind::Base,
        (true, false) => EdgeKind::LowerRoof,
        (false, true) if on(bare) => EdgeKind::BareBottom,
        (false, true) => EdgeKind::Eave,
        (false, false) => EdgeKind::Rake,
    }
}

fn along(ring: &[Point], p: Point) -> bool {
    sides(ring).any(|(a, b)| on_segment(p, a, b))
}

fn on_segment(p: Point, a: Point, b: Point) -> bool {
    let length = a.distance(b);
    if length < SAME {
        return false;
    }
    let u = (b - a) / length;
    let t = (p - a).dot(u);
    u.cross(p - a).abs() < BESIDE && t > -BESIDE && t < length + BESIDE
}

/// An upright line on the corner layer on this side, or up to 6 in inside the wall.
fn is_inside_corner(local: &ViewFrame, from: Point, to: Point) -> bool {
    let x = (from.x + to.x) / 2.0;
    // Counter-clockwise, the left side runs down and the wall lies to its right.
    let inward = if to.y < from.y { 1.0 } else { -1.0 };
    let (low, high) = (from.y.min(to.y), from.y.max(to.y));
    local.strokes(Role::InsideCorner).any(|s| {
        local.ring(s).windows(2).any(|w| {
            let upright = plumb(w[0].x - w[1].x);
            let reach = (w[0].x - x) * inward;
            let overlap = high.min(w[0].y.max(w[1].y)) - low.max(w[0].y.min(w[1].y));
            upright
                && reach > -BESIDE
                && reach <= CORNER_REACH + BESIDE
                && overlap > 0.5 * (high - low)
        })
    })
}

/// The tag of a corner: the nearest one inside its wall, no farther sideways than the convention
/// allows, from a little under the wall's foot up to the side's top. Parts of a corner above a
/// bare area or a lower roof share the tag at its foot.
fn tag(local: &ViewFrame, from: Point, to: Point, foot: f64) -> Option<String> {
    let x = (from.x + to.x) / 2.0;
    let inward = if to.y < from.y { 1.0 } else { -1.0 };
    let top = from.y.max(to.y);
    let tags = local.view.tags(local.lines);
    tags.map(|l| (local.place(l.text.at), middle_of(l), l))
        .filter(|(p, m, _)| {
            let aside = (x - p.x).abs().min((x - (m + p.x)).abs());
            (p.x + m / 2.0 - x) * inward >= -BESIDE
                && aside <= TAG_REACH
                && p.y >= foot - TAG_REACH
                && p.y <= top
        })
        .min_by(|a, b| {
            let aside = |t: &(Point, f64, _)| (x - t.0.x - t.1 / 2.0).abs();
            aside(a).total_cmp(&aside(b))
        })
        .map(|(_, _, l)| clean(&l.text.content, Destination::Tag))
}

/// Width of a label, roughly: capitals are about 2/3 as wide as high.
fn middle_of(l: &crate::model::linework::Label) -> f64 {
    l.text.content.chars().count() as f64 * l.text.height * 2.0 / 3.0
}
