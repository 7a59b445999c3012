//! From a wall to the field panels go on.

use super::corners::WallCorners;
use super::covers::covered;
use super::sides::{Clear, edges};
use super::steps::steps;
use crate::geom::boolean::{difference, intersection, union_all};
use crate::geom::polygon::Polygon;
use crate::geom::sliver::{between, without_slivers};
use crate::geom::tol::{LEVEL, SAME, snap};
use crate::geom::vocabulary::{Point, Vec2};
use crate::job::set_backs::SetBacks;
use crate::job::siding::system::ClearanceRule;
use crate::job::{CourseRules, TrimRules};
use crate::model::course::StoryPole;
use crate::model::filler::DrawnFiller;
use crate::model::house::{DrawnEdge, DrawnWall, EdgeKind, House};
use crate::model::receiver::{BareBy, BarePart, Field, FieldEdge, Receiver};

/// The field of one wall: its faces less openings, less the clearance over lower roofs, less what
/// corner posts and friezes take, less the whole courses that would stand too near to grade.
///
/// `elevation` and `wall` are indices into the house; an index out of range gives an empty field.
pub fn field(
    house: &House,
    elevation: usize,
    wall: usize,
    pole: &StoryPole,
    (rules, trim, keep, set_backs): (&CourseRules, &TrimRules, ClearanceRule, SetBacks),
) -> Field {
    let Some(on) = house.elevations.get(elevation) else { return Field::default() };
    let Some(of) = on.walls.get(wall) else { return Field::default() };
    let mut off: Vec<Polygon> =
        of.openings.iter().map(|o| Polygon::simple(o.outline.clone()).wound()).collect();
    // A door drawn on a wall's foot leaves no strip under it.
    let strips: Vec<Polygon> = of.faces.iter().flat_map(|f| between(&off, f)).collect();
    off.extend(strips);
    let open = difference(&of.faces, &union_all(&off));
    let roofs = of.edges.iter().filter(|e| e.kind == EdgeKind::LowerRoof);
    let roofs = roofs.filter_map(|e| raised(e.from, e.to, keep.roof));
    let roofs = union_all(&roofs.collect::<Vec<_>>());
    let mut bare = vec![BarePart { by: BareBy::OverRoof, shapes: intersection(&open, &roofs) }];
    // Where courses are left out posts stop too.
    let over_roofs = difference(&open, &roofs);
    let stepped = union_all(&steps(&over_roofs, &on.grade, rules, pole));
    bare.push(BarePart { by: BareBy::NearGrade, shapes: intersection(&over_roofs, &stepped) });
    bare.retain(|b| !b.shapes.is_empty());
    off.extend(roofs);
    let corners = WallCorners::of(house, of, set_backs);
    let (taken, mut moved) = covered(of, trim, &corners);
    off.extend(taken);
    let (over, raised_sides) = over_ledges(of, keep.ledge);
    off.extend(over);
    moved.extend(raised_sides);
    let fillers: Vec<Polygon> = of.fillers.iter().map(DrawnFiller::shape).collect();
    if !fillers.is_empty() {
        bare.push(BarePart { by: BareBy::Filler, shapes: union_all(&fillers) });
        off.extend(fillers);
        moved.extend(of.fillers.iter().filter(|f| f.opening.is_none()).flat_map(sides_of));
    }
    let clear = difference(&of.faces, &union_all(&off));
    let shapes = if stepped.is_empty() { clear } else { difference(&clear, &stepped) };
    // What clearances and friezes end at may stand on a course line but for drawing noise.
    let place = |q: Point| Point::new(snap(q.x), pole.settled(snap(q.y)));
    let placed = |shapes: &[Polygon]| shapes.iter().map(|p| p.map(place)).collect();
    let shapes = without_slivers(placed(&shapes));
    bare.iter_mut().for_each(|b| b.shapes = placed(&b.shapes));
    let clear = Clear { of_roof: keep.roof, of_notches: rules.notch_clearance };
    let edges = if moved.is_empty() {
        edges(of, &shapes, pole, (clear, trim))
    } else {
        let mut shown = of.clone();
        shown.edges.extend(moved);
        let mut edges = edges(&shown, &shapes, pole, (clear, trim));
        edges.iter_mut().filter(|e| past_its_corner(e, of)).for_each(|e| {
            (e.kind, e.receiver) = (EdgeKind::Abutment, Receiver::JChannel);
        });
        edges
    };
    Field { elevation, wall, shapes, edges, bare }
}

/// What panels keep clear of over ledges, and the sides they start from instead.
fn over_ledges(wall: &DrawnWall, clear: f64) -> (Vec<Polygon>, Vec<DrawnEdge>) {
    let ledges = || wall.edges.iter().filter(|e| clear > 0.0 && e.kind == EdgeKind::BareTop);
    let up = Vec2::new(0.0, clear);
    let moved = |e: &DrawnEdge| DrawnEdge {
        from: on_grid(e.from + up),
        to: on_grid(e.to + up),
        ..e.clone()
    };
    (ledges().filter_map(|e| raised(e.from, e.to, clear)).collect(), ledges().map(moved).collect())
}

fn on_grid(p: Point) -> Point {
    Point::new(snap(p.x), snap(p.y))
}

/// Whether a side stands beside a post's line and wholly past the corner's ends: under a rake the siding
/// there may reach up past the corner, and where a clearance leaves it none lower down, no post stands.
fn past_its_corner(e: &FieldEdge, wall: &DrawnWall) -> bool {
    let corner = matches!(e.kind, EdgeKind::OutsideCorner | EdgeKind::InsideCorner);
    let (low, high) = (e.from.y.min(e.to.y), e.from.y.max(e.to.y));
    let up = e.to.y > e.from.y;
    let drawn = wall.edges.iter().filter(|d| d.kind == e.kind && (d.to.y > d.from.y) == up);
    let mut heights = drawn.map(|d| (d.from.y.min(d.to.y), d.from.y.max(d.to.y)));
    corner && !heights.any(|(bottom, top)| low < top && high > bottom)
}

/// The sides at which siding ends round a filler that is in no frame: as at a bare area.
fn sides_of(f: &DrawnFiller) -> [DrawnEdge; 4] {
    let r = f.place;
    let at = |x: f64, y: f64| Point::new(x, y);
    let side = |kind: EdgeKind, from: Point, to: Point| DrawnEdge {
        kind,
        from,
        to,
        pitch: None,
        tag: None,
    };
    [
        side(EdgeKind::BareTop, at(r.x0, r.y1), at(r.x1, r.y1)),
        side(EdgeKind::BareBottom, at(r.x1, r.y0), at(r.x0, r.y0)),
        side(EdgeKind::Abutment, at(r.x1, r.y1), at(r.x1, r.y0)),
        side(EdgeKind::Abutment, at(r.x0, r.y0), at(r.x0, r.y1)),
    ]
}

/// Rise over run from which what panels keep clear of is measured sideways: no roof is so steep, from
/// memory. Over a nearly plumb side a strip measured upward would be all height and no width.
const STEEP: f64 = 4.0;

/// The strip over a roof line that panels keep clear of, measured square to the roof; the wall lies on
/// the left hand.
fn raised(a: Point, b: Point, clear: f64) -> Option<Polygon> {
    let side = b - a;
    if clear <= 0.0 || side.hypot() < SAME {
        return None;
    }
    let (square, inward) = if side.y.abs() > STEEP * side.x.abs() {
        (side.y.abs(), Vec2::new(-side.y.signum(), 0.0))
    } else {
        (side.x.abs(), Vec2::new(0.0, 1.0))
    };
    let to = inward * (clear * side.hypot() / square);
    // Along a nearly plumb side it goes on a hair: under a top a little out of level no sliver stays over its end.
    let on = if inward.y == 0.0 { side / side.hypot() * LEVEL } else { Vec2::ZERO };
    let (a, b) = (a - on, b + on);
    // Begins a little outside the line so that no sliver stays between.
    let from = inward * -0.25;
    // It ends on the grid, where what is found beside it begins: no sliver stays there either.
    let [a_end, b_end] = [on_grid(a + to), on_grid(b + to)];
    Some(Polygon::simple(vec![a + from, b + from, b_end, a_end]).wound())
}
