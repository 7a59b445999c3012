//! Where outlines leave a strip of wall that no siding was drawn for: under a roof whose line runs a little
//! over the wall's top, and between two walls that do not quite meet.

use crate::finding::house::{HouseFinding, ShortOf};
use crate::finding::{Finding, Findings};
use crate::geom::polygon::ring_contains;
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

/// A strip: what it lies before, how wide and long it is, and its middle.
struct Strip {
    short_of: ShortOf,
    width: f64,
    length: f64,
    middle: Point,
}

/// Asks for each side of a wall that ends so.
pub(super) fn report(house: &House, findings: &mut Findings) {
    for e in &house.elevations {
        for w in &e.walls {
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
            }
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
        let strip =
            Strip { short_of: ShortOf::Roof, width, length: high - low, middle: middle + outward };
        is_strip.then_some(strip)
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
        let strip = Strip { short_of: ShortOf::Wall, width, length: high - low, middle };
        (width > -NARROW && high - low >= LEAST).then_some(strip)
    });
    let nearest = strips.min_by(|a, b| a.width.total_cmp(&b.width));
    nearest.filter(|s| s.width > NARROW && s.width <= WIDE_BETWEEN)
}
