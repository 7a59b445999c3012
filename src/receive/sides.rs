//! Each side of a field matched to what it is: a side of the wall, of an opening, or of a step.

use crate::geom::curve::curved_sides;
use crate::geom::near::Near;
use crate::geom::polygon::{Polygon, sides};
use crate::geom::tol::{LEVEL, SAME, level, same};
use crate::geom::vocabulary::{Point, Rect, Vec2};
use crate::job::{InsideCorner, TopFinish, TrimRules};
use crate::model::course::StoryPole;
use crate::model::house::{DrawnEdge, DrawnWall, EdgeKind};
use crate::model::receiver::{FieldEdge, Receiver};

/// How far a field's side may lie off the drawn side it came from: clearances move it.
const REACH: f64 = 0.02;

/// Shortest part of a side that borders something else, inches: of our own choosing.
const LEAST: f64 = 0.5;

/// How far off a roof a side may lie that the clearance to it leaves, inches, where less is asked for: of
/// our own choosing.
const OVER_ROOF: f64 = 6.0;

/// Sine of the angle from which two sides do not run alike: 20 degrees, of our own choosing.
const ASKEW: f64 = 0.342;

/// How far panels keep clear, inches.
#[derive(Clone, Copy, Debug)]
pub(super) struct Clear {
    pub(super) of_roof: f64,
    /// Up and down at a cut edge.
    pub(super) of_notches: f64,
}

/// Every side of `shapes`, split where what it borders changes.
pub(super) fn edges(
    wall: &DrawnWall,
    shapes: &[Polygon],
    pole: &StoryPole,
    (clear, trim): (Clear, &TrimRules),
) -> Vec<FieldEdge> {
    let drawn = DrawnSides::of(wall);
    shapes
        .iter()
        .flat_map(Polygon::rings)
        .flat_map(|ring| sides(ring))
        .filter(|(a, b)| a.distance(*b) > SAME)
        .flat_map(|(a, b)| split(&drawn, a, b))
        .map(|(a, b)| name(wall, &drawn, (a, b), pole, (clear, trim)))
        .collect()
}

/// The drawn sides of a wall, then those of its openings, by where they lie.
struct DrawnSides {
    lines: Vec<(Point, Point)>,
    /// Which of the wall's own are corners.
    corners: Vec<bool>,
    /// The opening of each line after the wall's own, and whether the line is a chord of a curve.
    openings: Vec<(usize, bool)>,
    near: Near,
}

impl DrawnSides {
    fn of(wall: &DrawnWall) -> Self {
        let mut lines: Vec<(Point, Point)> = wall.edges.iter().map(|e| (e.from, e.to)).collect();
        let mut openings = Vec::new();
        for (i, o) in wall.openings.iter().enumerate() {
            let curved = curved_sides(&o.outline);
            lines.extend(sides(&o.outline));
            openings.extend(curved.into_iter().map(|c| (i, c)));
        }
        let near = Near::of(lines.iter().copied());
        let corner =
            |e: &DrawnEdge| matches!(e.kind, EdgeKind::OutsideCorner | EdgeKind::InsideCorner);
        DrawnSides { lines, corners: wall.edges.iter().map(corner).collect(), openings, near }
    }

    /// Lines near a box, by their place among all.
    fn about(&self, over: Rect) -> impl Iterator<Item = (usize, (Point, Point))> + '_ {
        self.near.within(over, REACH).into_iter().map(|i| (i, self.lines[i]))
    }
}

/// Cuts a side at the ends of the drawn sides that lie along it.
fn split(drawn: &DrawnSides, a: Point, b: Point) -> Vec<(Point, Point)> {
    let length = a.distance(b);
    let along = (b - a) / length;
    let mut cuts: Vec<f64> = drawn
        .about(Rect::from_points(a, b))
        .filter(|(_, (p, q))| lies_along(*p, *q, a, along))
        .flat_map(|(i, (p, q))| {
            // A post stands as high as its corner: what is less than its own goes to no other side.
            let least = if drawn.corners.get(i) == Some(&true) { REACH } else { LEAST };
            let inside = move |t: &f64| *t > least && *t < length - least;
            [(p - a).dot(along), (q - a).dot(along)].into_iter().filter(inside)
        })
        .collect();
    cuts.sort_by(f64::total_cmp);
    cuts.dedup_by(|x, y| (*x - *y).abs() < LEAST);
    let mut points = vec![a];
    points.extend(cuts.iter().map(|t| a + along * *t));
    points.push(b);
    points.windows(2).map(|w| (w[0], w[1])).collect()
}

fn lies_along(p: Point, q: Point, a: Point, along: Vec2) -> bool {
    along.cross(p - a).abs() < REACH && along.cross(q - a).abs() < REACH
}

fn on_segment(m: Point, p: Point, q: Point) -> bool {
    let length = p.distance(q);
    if length < SAME {
        return false;
    }
    let along = (q - p) / length;
    let t = (m - p).dot(along);
    along.cross(m - p).abs() < REACH && t > -REACH && t < length + REACH
}

/// Whether a side runs along a chord of an opening's curve.
fn chord_of(drawn: &DrawnSides, opening: usize, (from, to): (Point, Point)) -> bool {
    let (run, middle) = (to - from, from.midpoint(to));
    let own = drawn.lines.len() - drawn.openings.len();
    drawn.about(Rect::from_points(middle, middle)).any(|(i, (p, q))| {
        let chord = i.checked_sub(own).and_then(|k| drawn.openings.get(k));
        let off = run.cross(q - p).abs() / (run.hypot() * p.distance(q)).max(f64::MIN_POSITIVE);
        chord == Some(&(opening, true)) && off < ASKEW && on_segment(middle, p, q)
    })
}

fn name(
    wall: &DrawnWall,
    drawn: &DrawnSides,
    (from, to): (Point, Point),
    pole: &StoryPole,
    (clear, trim): (Clear, &TrimRules),
) -> FieldEdge {
    let middle = from.midpoint(to);
    let on = || {
        let about = drawn.about(Rect::from_points(middle, middle));
        about.filter(|(_, (p, q))| on_segment(middle, *p, *q)).map(|(i, _)| i)
    };
    let own = wall.edges.len();
    // A curve may touch a wall's foot at the middle of it; the foot does not run along it.
    let runs_along = |i: &usize| {
        let (p, q) = drawn.lines[*i];
        let (u, v) = ((to - from) / from.distance(to), (q - p) / p.distance(q).max(SAME));
        lies_along(p, q, from, u) || lies_along(from, to, p, v)
    };
    let of_opening = on().find(|i| *i >= own && runs_along(i));
    let opening = of_opening.and_then(|i| drawn.openings.get(i - own)).copied();
    // Where two sides of it lie so near, the one that runs as this one does.
    let opening = opening.map(|(o, curved)| (o, curved || chord_of(drawn, o, (from, to))));
    let rise = to - from;
    // Of two sides a hair apart, the one that bounds the field on the same hand.
    let of_wall = || on().filter_map(|i| wall.edges.get(i));
    let same_hand = |e: &&DrawnEdge| (e.to - e.from).dot(rise) > 0.0;
    let drawn = of_wall().find(same_hand).or_else(|| of_wall().next());
    let is_curved = opening.is_some_and(|(_, curved)| curved);
    let (kind, pitch, tag) = match (opening, drawn) {
        (Some(_), _) => (EdgeKind::of_opening_side(rise, is_curved), slope(rise), None),
        // The plumb end of a roof, and a step no higher than the reach to a level side, stand beside
        // what they border, not over or under it.
        (None, Some(e)) if rise.x.abs() <= SAME && lies(e) => {
            (EdgeKind::Abutment, None, e.tag.clone())
        }
        (None, Some(e)) => (e.kind, e.pitch, e.tag.clone()),
        (None, None) => {
            let over = clear.of_roof + REACH;
            (undrawn_side(wall, middle, rise, over), slope(rise), None)
        }
    };
    let receiver = match kind {
        // Undersill trim is straight: under a curve the channel alone holds the cut edge.
        EdgeKind::Sill if is_curved => Receiver::JChannel,
        _ => receiver(kind, from.y, pole, (clear, trim)),
    };
    let opening = opening.map(|(i, _)| i);
    FieldEdge { kind, receiver, from, to, opening, is_curved, pitch, tag }
}

/// Whether a side is no upright one; a corner that leans is.
fn lies(e: &DrawnEdge) -> bool {
    let corner = matches!(e.kind, EdgeKind::OutsideCorner | EdgeKind::InsideCorner);
    (e.to.x - e.from.x).abs() > SAME && !corner
}

/// Rise in 12 of a sloped side.
fn slope(rise: Vec2) -> Option<f64> {
    if level(rise.y) || level(rise.x) { None } else { Some((12.0 * rise.y / rise.x).abs()) }
}

/// A side that was not drawn comes from a clearance or a step: over a lower roof if one is near
/// below, else a stepped start and its upright ends.
fn undrawn_side(wall: &DrawnWall, middle: Point, rise: Vec2, over: f64) -> EdgeKind {
    if rise.x.abs() <= SAME {
        return EdgeKind::Abutment;
    }
    let over = over.max(OVER_ROOF);
    let over_roof = wall
        .edges
        .iter()
        .any(|e| e.kind == EdgeKind::LowerRoof && away(middle, e.from, e.to) < over);
    // The end of a board along a slope bounds what is over it as a roof does.
    match (over_roof || !level(rise.y), rise.x > 0.0) {
        (true, true) => EdgeKind::LowerRoof,
        (false, true) => EdgeKind::Base,
        (_, false) => EdgeKind::BareBottom,
    }
}

/// Distance of a place from a side.
fn away(p: Point, a: Point, b: Point) -> f64 {
    let side = b - a;
    let share = if side.hypot2() > 0.0 { (p - a).dot(side) / side.hypot2() } else { 0.0 };
    p.distance(a + side * share.clamp(0.0, 1.0))
}

fn receiver(
    kind: EdgeKind,
    y: f64,
    pole: &StoryPole,
    (clear, trim): (Clear, &TrimRules),
) -> Receiver {
    match kind {
        // Only a butt edge locks into a starter; a cut one is held in finish trim
        // (TrimFact::StarterLocksFirstCourse, TrimFact::CutFirstCourse).
        EdgeKind::Base | EdgeKind::BareTop => {
            let course = pole.course_at(y);
            // A strip that no tape shows goes with the clearance: the course over it hangs whole.
            let hair = LEVEL.min(clear.of_notches);
            let whole = same(pole.butt(course), y) || pole.butt(course + 1) - y <= hair;
            if whole { Receiver::Starter } else { Receiver::FinishTrim }
        }
        EdgeKind::OutsideCorner => Receiver::OutsidePost,
        EdgeKind::InsideCorner => match trim.inside_corner {
            InsideCorner::Post => Receiver::InsidePost,
            InsideCorner::OneChannel | InsideCorner::TwoChannels => Receiver::JChannel,
        },
        // Under a frieze the cut edge is held as under any band.
        EdgeKind::Eave if trim.frieze <= 0.0 && trim.top != TopFinish::FinishTrim => {
            Receiver::TopFinish
        }
        EdgeKind::Eave | EdgeKind::BareBottom | EdgeKind::Sill => Receiver::FinishTrim,
        EdgeKind::Rake => Receiver::RakeChannel,
        EdgeKind::Abutment | EdgeKind::LowerRoof | EdgeKind::Jamb | EdgeKind::Head => {
            Receiver::JChannel
        }
    }
}
