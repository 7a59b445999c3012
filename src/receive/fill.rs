//! Fillers: parts of walls too narrow for siding, taken out of the fields before anything is laid out.
//! Beside an opening a filler goes into its frame: the channels go round both, as an installer wraps a
//! filler board and the window with one frame. Elsewhere siding ends at it as at a bare area. So does a skirt
//! board over a level roof or ledge, up to the next course line, where less of a course than the least strip
//! would be left. Common practice, no source.

use super::faces::Faces;
use super::field;
use super::narrow::{Narrow, is_open, narrow, under_first_lines};
use crate::geom::boolean::union_all;
use crate::geom::polygon::{Polygon, is_level_rectangle};
use crate::geom::tol::SAME;
use crate::geom::vocabulary::{Point, Rect, Ring};
use crate::job::Job;
use crate::model::course::StoryPole;
use crate::model::filler::{DrawnFiller, FilledTo, FillerSide};
use crate::model::house::{DrawnWall, EdgeKind, House};
use crate::model::receiver::{Field, FieldEdge};

/// How often a filler may leave another place too narrow.
const ROUNDS: usize = 8;

/// The house with its fillers; none where there is none.
pub fn filled(house: &House, pole: &StoryPole, job: &Job) -> Option<House> {
    let faces = Faces::of_job(job);
    let rules = (&job.courses, &job.trim, job.clearances(), job.set_backs());
    let strips = (job.least_strip(), job.courses.notch_clearance);
    let mut out: Option<House> = None;
    for e in 0..house.elevations.len() {
        for w in 0..house.elevations[e].walls.len() {
            for _ in 0..ROUNDS {
                let now = out.as_ref().unwrap_or(house);
                let field = field::field(now, e, w, pole, rules);
                let mut found = narrow(&field, pole, &faces);
                if found.is_empty() {
                    found = under_first_lines(&field, pole, strips);
                }
                if found.is_empty() {
                    break;
                }
                let changed = out.get_or_insert_with(|| house.clone());
                let wall = &mut changed.elevations[e].walls[w];
                found.iter().for_each(|n| fill(wall, &field, n));
            }
        }
    }
    out
}

fn fill(wall: &mut DrawnWall, field: &Field, n: &Narrow) {
    if is_taken(wall, n.place) {
        // What is left of it is found in the next round.
        return;
    }
    let side = |i: Option<usize>| {
        let Some(e) = i.map(|i| &field.edges[i]) else {
            return FillerSide { to: FilledTo::Course, opening: None };
        };
        let opening = e.opening.and_then(|o| wall.openings.get(o)).map(|o| o.id.clone());
        FillerSide { to: filled_to(e.kind), opening }
    };
    let between = n.sides.map(side);
    let mut grown: Vec<(usize, Rect)> = n
        .sides
        .iter()
        .flatten()
        .filter_map(|i| beside_opening(wall, &field.edges[*i], n))
        .filter(|(_, r)| is_open(&field.shapes, *r) && !is_taken(wall, *r))
        .collect();
    // The frame that it lengthens least.
    grown.sort_by(|a, b| a.1.area().total_cmp(&b.1.area()));
    let taken =
        grown.into_iter().find_map(|(o, r)| Some((o, r, with(&wall.openings[o].outline, r)?)));
    let (place, opening) = match taken {
        Some((o, r, outline)) => {
            let opening = &mut wall.openings[o];
            let before = std::mem::replace(&mut opening.outline, outline);
            opening.unfilled.get_or_insert(before);
            (r, Some(opening.id.clone()))
        }
        None => (n.place, None),
    };
    wall.fillers.push(DrawnFiller { place, between, upright: n.upright, opening });
}

fn filled_to(kind: EdgeKind) -> FilledTo {
    match kind {
        EdgeKind::Jamb | EdgeKind::Head | EdgeKind::Sill => FilledTo::Opening,
        EdgeKind::OutsideCorner => FilledTo::OutsideCorner,
        EdgeKind::InsideCorner => FilledTo::InsideCorner,
        EdgeKind::Abutment => FilledTo::WallEnd,
        EdgeKind::Eave | EdgeKind::Rake => FilledTo::Eave,
        EdgeKind::BareBottom => FilledTo::BareAbove,
        EdgeKind::BareTop => FilledTo::BareBelow,
        EdgeKind::Base => FilledTo::Start,
        EdgeKind::LowerRoof => FilledTo::LowerRoof,
    }
}

/// Whether a filler of this round lies there already.
fn is_taken(wall: &DrawnWall, r: Rect) -> bool {
    wall.fillers.iter().any(|f| f.place.intersect(r).area() > SAME)
}

/// An opening that a place lies beside, and the place as high, or as wide, as the opening's own side.
fn beside_opening(wall: &DrawnWall, e: &FieldEdge, n: &Narrow) -> Option<(usize, Rect)> {
    let i = e.opening?;
    let o = wall.openings.get(i)?;
    let at = |p: &Point| if n.upright { p.x } else { p.y };
    let along = |p: &Point| if n.upright { p.y } else { p.x };
    let on = o.outline.iter().filter(|p| (at(p) - at(&e.from)).abs() <= SAME).map(along);
    let (low, high) = on.fold((f64::MAX, f64::MIN), |(a, b), v| (a.min(v), b.max(v)));
    let r = n.place;
    (low < high).then(|| {
        let place = if n.upright {
            Rect::new(r.x0, low, r.x1, high)
        } else {
            Rect::new(low, r.y0, high, r.y1)
        };
        (i, place)
    })
}

/// An outline with a rectangle beside it; none where the two make no single shape.
fn with(outline: &Ring, r: Rect) -> Option<Ring> {
    let own = crate::geom::polygon::bounds(outline)?;
    let both = own.union(r);
    if is_level_rectangle(outline) && (both.area() - own.area() - r.area()).abs() <= SAME {
        return Some(Polygon::rect(both.x0, both.y0, both.x1, both.y1).outer);
    }
    let shapes = [Polygon::simple(outline.clone()).wound(), Polygon::rect(r.x0, r.y0, r.x1, r.y1)];
    let mut one = union_all(&shapes);
    match (one.pop(), one.is_empty()) {
        (Some(p), true) if p.holes.is_empty() => Some(p.outer),
        _ => None,
    }
}
