//! Where outlines leave a strip of wall that no siding was drawn for: under a roof whose line runs a little
//! over the wall's top, and between two walls that do not quite meet.

use crate::finding::house::{HouseFinding, ShortOf};
use crate::finding::{Finding, Findings};
use crate::geom::polygon::{Polygon, ring_contains};
use crate::geom::tol::LEVEL;
use crate::geom::vocabulary::{Point, Vec2};
use crate::model::house::{
    DrawnEdge, DrawnElevation, DrawnOpening, DrawnWall, EdgeKind, House, WallWay,
};
use crate::model::linework::Role;

/// A strip narrower than this closes behind trim, one wider is drawn so, inches: of our own choosing.
const NARROW: f64 = 1.0;
const WIDE: f64 = 24.0;
/// The same between two walls: what stands farther apart is a pier or a chimney.
const WIDE_BETWEEN: f64 = 12.0;
/// Least length of a strip that is asked about, inches: of our own choosing.
const LEAST: f64 = 12.0;
/// Least cosine of the angle between lines that run along one another: half a degree.
const ALONG: f64 = 0.99996;

/// A strip: what it lies before, how wide and long it is, its middle and its corners.
struct Strip {
    short_of: ShortOf,
    width: f64,
    length: f64,
    middle: Point,
    corners: [Point; 4],
}

/// Asks for each side of a wall that ends so, and keeps the strips with their walls.
pub(super) fn ask(house: &mut House, findings: &mut Findings) {
    for i in 0..house.elevations.len() {
        let e = &house.elevations[i];
        let mut short: Vec<Vec<Polygon>> = Vec::new();
        for w in &e.walls {
            let mut strips = Vec::new();
            for edge in &w.edges {
                let found = match edge.kind {
                    EdgeKind::Eave | EdgeKind::Rake => under_roof(e, edge),
                    EdgeKind::OutsideCorner | EdgeKind::InsideCorner => beside_wall(e, w, edge),
                    _ => None,
                };
                let Some(s) = found.filter(|s| is_open(e, s.middle)) else { continue };
                if w.way == WallWay::Hatch && is_trimmed(w, &s) {
                    continue;
                }
                let (wall, short_of) = (w.id.clone(), s.short_of);
                let (width, length) = (s.width, s.length);
                let kind = HouseFinding::SidingStopsShort { wall, short_of, width, length };
                findings.push(Finding::new(kind).on(&e.name).at(e.to_source * s.middle));
                strips.push(Polygon::simple(s.corners.to_vec()).wound());
            }
            short.push(strips);
        }
        for (w, strips) in house.elevations[i].walls.iter_mut().zip(short) {
            w.short = strips;
        }
    }
}

/// Whether drawn siding ends at trim there: at a corner board, or at the casing over an opening.
fn is_trimmed(w: &DrawnWall, s: &Strip) -> bool {
    let over = |o: &DrawnOpening| {
        let (left, right, _, head) = o.sides();
        left < s.middle.x && s.middle.x < right && (s.middle.y - head).abs() <= s.width
    };
    s.short_of == ShortOf::Wall || w.openings.iter().any(over)
}

/// Whether nothing is drawn over a place that closes it.
fn is_open(e: &DrawnElevation, at: Point) -> bool {
    let closes = |r: Option<Role>| {
        matches!(r, Some(Role::Roof | Role::Bare | Role::Band | Role::Window | Role::Door))
    };
    let drawn = e.backdrop.iter().filter(|b| b.closed && closes(b.role)).map(|b| &b.points);
    let walls = e.walls.iter().map(|w| &w.outline);
    !drawn.chain(walls).any(|ring| ring_contains(ring, at))
        && !e.zones.iter().flat_map(|z| &z.shapes).any(|s| s.contains(at))
}

/// The strip between a wall's top and the nearest roof line along it.
fn under_roof(e: &DrawnElevation, edge: &DrawnEdge) -> Option<Strip> {
    let (from, whole) = (edge.from, edge.from.distance(edge.to));
    if whole < LEAST {
        return None;
    }
    let along = (edge.to - from) / whole;
    // The wall lies on the left hand.
    let place = |p: Point| {
        let d = p - from;
        (d.dot(along), d.cross(along))
    };
    let roofs = e.backdrop.iter().filter(|b| b.role == Some(Role::Roof));
    let lines = roofs.flat_map(|b| {
        let closing = b.closed.then(|| Some((*b.points.last()?, *b.points.first()?))).flatten();
        b.points.windows(2).map(|w| (w[0], w[1])).chain(closing)
    });
    let strips = lines.filter_map(|(p, q)| {
        let run = q - p;
        if run.hypot() < LEAST || (run / run.hypot()).dot(along).abs() < ALONG {
            return None;
        }
        let ((u, out), (v, far)) = (place(p), place(q));
        let (low, high) = (u.min(v).max(0.0), u.max(v).min(whole));
        let width = (out + far) / 2.0;
        let middle = from + along * ((low + high) / 2.0);
        let outward = Vec2::new(along.y, -along.x) * (width / 2.0);
        let is_strip = high - low >= LEAST && width > -NARROW;
        // The roof line over a place along the top.
        let over = |at: f64| out + (far - out) * (at - u) / (v - u);
        let up = |at: f64| from + along * at + Vec2::new(along.y, -along.x) * over(at);
        let on = |at: f64| from + along * at;
        let corners = [on(low), on(high), up(high), up(low)];
        let (length, middle) = (high - low, middle + outward);
        is_strip.then_some(Strip { short_of: ShortOf::Roof, width, length, middle, corners })
    });
    // A roof line at the top itself closes it.
    strips
        .min_by(|a, b| a.width.total_cmp(&b.width))
        .filter(|s| s.width > NARROW && s.width <= WIDE)
}

/// The strip between a right side of a wall and the left side of another.
fn beside_wall(e: &DrawnElevation, w: &DrawnWall, edge: &DrawnEdge) -> Option<Strip> {
    let upright = |s: &DrawnEdge| {
        let corner = matches!(s.kind, EdgeKind::OutsideCorner | EdgeKind::InsideCorner);
        corner && (s.from.x - s.to.x).abs() <= LEVEL
    };
    let runs_up = |s: &DrawnEdge| s.to.y > s.from.y;
    if !upright(edge) || !runs_up(edge) {
        return None;
    }
    let others = e.walls.iter().filter(|o| o.id != w.id).flat_map(|o| &o.edges);
    let strips = others.filter(|s| upright(s) && !runs_up(s)).filter_map(|s| {
        let width = s.from.x - edge.from.x;
        let (low, high) = (edge.from.y.max(s.to.y), edge.to.y.min(s.from.y));
        let middle = Point::new(edge.from.x + width / 2.0, (low + high) / 2.0);
        let (a, b) = (edge.from.x, s.from.x);
        let corners = [(a, low), (b, low), (b, high), (a, high)].map(Point::from);
        let strip = Strip { short_of: ShortOf::Wall, width, length: high - low, middle, corners };
        (width > -NARROW && high - low >= LEAST).then_some(strip)
    });
    let nearest = strips.min_by(|a, b| a.width.total_cmp(&b.width));
    nearest.filter(|s| s.width > NARROW && s.width <= WIDE_BETWEEN)
}
