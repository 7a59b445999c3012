//! From the house as drawn to the house as laid: what a stage leaves as it is drawn is taken over here
//! and nowhere else.

use super::course::LaidCourse;
use super::wall::{
    LaidBare, LaidEdge, LaidElevation, LaidFiller, LaidHidden, LaidObstacle, LaidOpening, LaidWall,
    LaidZone,
};
use crate::geom::boolean::{difference, intersection, union_all};
use crate::geom::polygon::{Polygon, total_area};
use crate::geom::strip::clip_band;
use crate::geom::vocabulary::{Point, Xy};
use crate::model::filler::DrawnFiller;
use crate::model::house::{
    DrawnElevation, DrawnOpening, DrawnWall, DrawnZone, HiddenBy, HiddenPart, House,
};
use crate::model::linework::Scale;
use crate::model::receiver::{BareBy, BarePart, Field, FieldEdge};
use crate::model::source::Source;

/// Square inches in a square foot.
const SQUARE_FOOT: f64 = 144.0;

/// Where a layout comes from: the file, its fingerprint and its scale.
pub(crate) fn source(name: &str, sha256: String, scale: &Scale) -> Source {
    Source {
        name: name.to_owned(),
        sha256,
        unit: scale.unit,
        unit_basis: scale.basis,
        inches_per_unit: scale.inches,
        unit_proved: scale.proved,
    }
}

/// The elevations of a house with the walls of its fields: `courses[i]` are those of `fields[i]`. Walls
/// are as they were moved to be laid, `as_drawn` as they were before.
pub(crate) fn elevations(
    house: &House,
    as_drawn: &House,
    fields: &[Field],
    courses: Vec<Vec<LaidCourse>>,
) -> Vec<LaidElevation> {
    let mut out: Vec<LaidElevation> = house.elevations.iter().map(elevation).collect();
    for (field, courses) in fields.iter().zip(courses) {
        let laid = wall(wall_of(house, field), wall_of(as_drawn, field), field, courses);
        out[field.elevation].walls.push(laid);
    }
    out
}

/// The drawn wall that a field lies on.
pub(crate) fn wall_of<'a>(house: &'a House, field: &Field) -> &'a DrawnWall {
    &house.elevations[field.elevation].walls[field.wall]
}

/// An elevation before its walls.
fn elevation(e: &DrawnElevation) -> LaidElevation {
    LaidElevation {
        name: e.name.clone(),
        to_source: e.to_source.as_coeffs(),
        grade: xys(&e.grade),
        level_assumed: !e.level_drawn,
        walls: Vec::new(),
        zones: e.zones.iter().map(zone).collect(),
    }
}

fn zone(z: &DrawnZone) -> LaidZone {
    LaidZone {
        id: z.id.clone(),
        zone: z.zone.clone(),
        cladding: z.cladding.clone(),
        laid_out: z.laid,
        outline: rings(&z.shapes),
        gross_area: z.gross / SQUARE_FOOT,
        net_area: z.net / SQUARE_FOOT,
    }
}

/// A wall with its courses; a door's sill stays where it is drawn though siding may hang lower.
fn wall(
    wall: &DrawnWall,
    as_drawn: &DrawnWall,
    field: &Field,
    courses: Vec<LaidCourse>,
) -> LaidWall {
    let both = wall.openings.iter().zip(&as_drawn.openings);
    let openings: Vec<LaidOpening> = both.map(|(o, drawn)| opening(o, drawn.sides())).collect();
    let holes = wall.openings.iter().map(|o| Polygon::simple(o.outline.clone()).wound());
    let holes = union_all(&holes.collect::<Vec<_>>());
    let unsided: Vec<Polygon> = field.bare.iter().flat_map(|b| b.shapes.clone()).collect();
    let sided = difference(&difference(&wall.faces, &holes), &union_all(&unsided));
    let mut out = LaidWall {
        id: wall.id.clone(),
        outline: xys(&wall.outline),
        drawn: if wall.outline == as_drawn.outline { Vec::new() } else { xys(&as_drawn.outline) },
        way: wall.way,
        field: rings(&field.shapes),
        hidden: wall.hidden.iter().map(hidden).collect(),
        bare: field
            .bare
            .iter()
            .map(bare)
            .chain(behind_roofs(wall, &holes))
            .chain(stops_short(wall))
            .collect(),
        gross_area: total_area(&wall.faces) / SQUARE_FOOT,
        net_area: total_area(&sided) / SQUARE_FOOT,
        gable_area: None,
        fillers: wall.fillers.iter().map(filler).collect(),
        drawn_exposure: wall.drawn_exposure,
        bands: wall.bands.iter().map(|p| xys(&p.outer)).collect(),
        joints: wall.joints.clone(),
        edges: edges(field, &openings),
        obstacles: obstacles(wall),
        openings,
        courses,
    };
    out.gable_area = out.rake_foot().map(|foot| {
        let top = out.outline.iter().map(|p| p[1]).fold(foot, f64::max);
        total_area(&clip_band(&sided, foot, top + 1.0)) / SQUARE_FOOT
    });
    out
}

fn filler(f: &DrawnFiller) -> LaidFiller {
    let r = f.place;
    let width = f.width();
    LaidFiller {
        place: [r.x0, r.y0, r.x1, r.y1],
        between: f.between.clone(),
        opening: f.opening.clone(),
        width,
        length: r.width() + r.height() - width,
    }
}

fn hidden(part: &HiddenPart) -> LaidHidden {
    LaidHidden { by: part.by, outline: rings(std::slice::from_ref(&part.shape)) }
}

fn bare(part: &BarePart) -> LaidBare {
    let area = total_area(&part.shapes) / SQUARE_FOOT;
    LaidBare { by: part.by, outline: rings(&part.shapes), area }
}

/// The part of a wall, out of its openings, that lower roofs stand in front of.
fn behind_roofs(wall: &DrawnWall, holes: &[Polygon]) -> Option<LaidBare> {
    let roofs = wall.hidden.iter().filter(|h| h.by == HiddenBy::Roof);
    let roofs = union_all(&roofs.map(|h| h.shape.clone()).collect::<Vec<_>>());
    let outline = Polygon::simple(wall.outline.clone()).wound();
    let shapes = difference(&intersection(&[outline], &roofs), holes);
    (!shapes.is_empty()).then(|| bare(&BarePart { by: BareBy::BehindRoof, shapes }))
}

/// The strips that an outline stops short by, as far as they lie outside it.
fn stops_short(wall: &DrawnWall) -> Option<LaidBare> {
    let outline = Polygon::simple(wall.outline.clone()).wound();
    let shapes = difference(&union_all(&wall.short), &[outline]);
    (!shapes.is_empty()).then(|| bare(&BarePart { by: BareBy::StopsShort, shapes }))
}

/// An opening with the sides it was drawn with: left, right, sill and head.
pub(crate) fn opening(
    drawn: &DrawnOpening,
    (left, right, sill, head): (f64, f64, f64, f64),
) -> LaidOpening {
    LaidOpening {
        id: drawn.id.clone(),
        kind: drawn.kind,
        outline: xys(&drawn.outline),
        left,
        right,
        sill,
        head,
        cut: drawn.cut.clone(),
    }
}

fn edges(field: &Field, openings: &[LaidOpening]) -> Vec<LaidEdge> {
    let edge = |e: &FieldEdge| LaidEdge {
        kind: e.kind,
        from: [e.from.x, e.from.y],
        to: [e.to.x, e.to.y],
        pitch: e.pitch,
        receiver: e.receiver,
        opening: e.opening.and_then(|i| openings.get(i)).map(|o| o.id.clone()),
        tag: e.tag.clone(),
    };
    field.edges.iter().map(edge).collect()
}

fn obstacles(wall: &DrawnWall) -> Vec<LaidObstacle> {
    let laid = wall.obstacles.iter().map(|o| LaidObstacle {
        id: o.id.clone(),
        mounting_block: o.mounting_block,
        moved: (o.moved != 0.0).then_some(o.moved),
        outline: xys(&o.outline),
    });
    laid.collect()
}

/// Outer rings and holes.
fn rings(shapes: &[Polygon]) -> Vec<Vec<Xy>> {
    shapes.iter().flat_map(|p| p.rings().map(|r| xys(r))).collect()
}

fn xys(points: &[Point]) -> Vec<Xy> {
    points.iter().map(|p| [p.x, p.y]).collect()
}
