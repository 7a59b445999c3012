//! Walls that stand at an angle to their elevation: an elevation shows its projection, so they are
//! drawn too short (`LayoutFact::AngledWallsShort`). At the true width the job gives, such a wall
//! becomes an elevation of its own; its way back to the source shrinks it again to where it is drawn.

use crate::finding::corners::{AngledFault, CornerFinding};
use crate::finding::{Finding, Findings};
use crate::geom::boolean::intersection;
use crate::geom::polygon::{Polygon, bounds, total_area};
use crate::geom::tol::{LEVEL, SAME, level, snap};
use crate::geom::vocabulary::{Affine, Point, Rect};
use crate::job::{AngledWall, Job};
use crate::model::corner::Corner;
use crate::model::house::{Backdrop, DrawnElevation, DrawnWall, DrawnZone, House};
use crate::model::ids::WallId;

/// How far outside the wall lines of the source still belong to it, inches drawn.
const ROUND: f64 = 2.0;

/// Takes every angled wall of the job out of its elevation and gives it one of its own.
pub(super) fn widen(house: &mut House, job: &Job, findings: &mut Findings) {
    for a in &job.angled {
        let place = house
            .elevations
            .iter()
            .enumerate()
            .find_map(|(e, on)| on.walls.iter().position(|w| w.id == a.wall).map(|w| (e, w)));
        let Some((e, w)) = place else {
            unknown(house, &a.wall, findings);
            continue;
        };
        let frame = bounds(&house.elevations[e].walls[w].outline).unwrap_or_default();
        if a.width < frame.width() - SAME {
            let wall = WallId::from(a.wall.as_str());
            let kind = CornerFinding::AngledNarrow { wall, given: a.width, drawn: frame.width() };
            findings.push(Finding::new(kind).on(&house.elevations[e].name));
            continue;
        }
        let outline = Polygon::simple(house.elevations[e].walls[w].outline.clone()).wound();
        let zones = match zones_on(&mut house.elevations[e].zones, &outline) {
            Ok(zones) => zones,
            Err(zone) => {
                let wall = WallId::from(a.wall.as_str());
                let finding = Finding::new(CornerFinding::AngledZone { wall, zone });
                findings.push(finding.on(&house.elevations[e].name));
                continue;
            }
        };
        let wall = house.elevations[e].walls.remove(w);
        let round = job.drawing.casing + job.trim.surround;
        let sizes = Sizes { frame, round, gap: job.trim.movement_gap };
        let made = alone(&house.elevations[e], wall, a, sizes, findings);
        moved(&mut house.corners, &a.wall, &made.name, frame, a.width);
        let k = a.width / frame.width();
        let map = |p: Point| Point::new(snap((p.x - frame.x0) * k), p.y);
        let zones = zones.into_iter().map(|z| DrawnZone {
            shapes: z.shapes.iter().map(|p| p.map(map)).collect(),
            gross: z.gross * k,
            net: z.net * k,
            ..z
        });
        house.elevations.push(DrawnElevation { zones: zones.collect(), ..made });
    }
    house.elevations.retain(|e| !e.walls.is_empty());
}

/// Takes the measured zones that lie wholly on a wall; names one that cannot go with it.
fn zones_on(zones: &mut Vec<DrawnZone>, wall: &Polygon) -> Result<Vec<DrawnZone>, String> {
    let wall = std::slice::from_ref(wall);
    let on = |z: &DrawnZone| total_area(&intersection(&z.shapes, wall));
    let stuck = |z: &&DrawnZone| on(z) > SAME && (z.laid || on(z) < z.gross - SAME);
    if let Some(z) = zones.iter().find(stuck) {
        return Err(z.zone.clone());
    }
    let (taken, left) = std::mem::take(zones).into_iter().partition(|z| on(z) > SAME);
    *zones = left;
    Ok(taken)
}

fn unknown(house: &House, wall: &str, findings: &mut Findings) {
    let all = house.elevations.iter().flat_map(|e| &e.walls);
    let walls = all.map(|w| w.id.clone()).collect();
    let (named, fault) = (wall.to_owned(), AngledFault::NoSuchWall { walls });
    findings.push(Finding::new(CornerFinding::AngledUnknown { named, fault }));
}

/// What a wall is stretched by, inches.
struct Sizes {
    /// Its box as drawn.
    frame: Rect,
    /// Casing and surround of its openings.
    round: f64,
    /// The gap at a movement joint.
    gap: f64,
}

/// The wall's own elevation, from its left end, as wide as it is.
fn alone(
    on: &DrawnElevation,
    mut wall: DrawnWall,
    a: &AngledWall,
    Sizes { frame, round, gap }: Sizes,
    findings: &mut Findings,
) -> DrawnElevation {
    let k = a.width / frame.width();
    let at = |x: f64| (x - frame.x0) * k;
    // The gap at a movement joint is as wide as it is.
    let joints = wall.joints.clone();
    let beside = |x: f64| joints.iter().find(|j| (x - **j).abs() <= gap / 2.0 + SAME);
    let map = |p: &mut Point| {
        let x = beside(p.x).map_or(at(p.x), |j| at(*j) + (p.x - j));
        *p = Point::new(snap(x), p.y);
    };
    stretch(&mut wall, &map);
    widen_openings(on, &mut wall, a, (k, round), findings);
    for name in a.openings.keys().filter(|n| wall.openings.iter().all(|o| o.id != **n)) {
        let wall = wall.id.clone();
        let (named, fault) = (name.clone(), AngledFault::NoSuchOpening { wall });
        findings.push(Finding::new(CornerFinding::AngledUnknown { named, fault }));
    }
    for x in &mut wall.joints {
        *x = snap((*x - frame.x0) * k);
    }
    let near = frame.inflate(ROUND, ROUND);
    let backdrop = on.backdrop.iter().filter(|b| b.points.iter().all(|p| near.contains(*p)));
    let backdrop = backdrop.map(|b| {
        let mut points = b.points.clone();
        points.iter_mut().for_each(map);
        Backdrop { points, ..b.clone() }
    });
    let backdrop = backdrop.collect();
    let mut grade = on.grade.clone();
    grade.iter_mut().for_each(map);
    DrawnElevation {
        name: format!("True width of {}", wall.id).into(),
        to_source: on.to_source
            * Affine::translate((frame.x0, 0.0))
            * Affine::scale_non_uniform(1.0 / k, 1.0),
        walls: vec![wall],
        grade,
        level_drawn: on.level_drawn,
        backdrop,
        texts: Vec::new(),
        zones: Vec::new(),
    }
}

/// A wall with everything on it, point by point.
fn stretch(wall: &mut DrawnWall, map: &impl Fn(&mut Point)) {
    let moved = |mut p: Point| {
        map(&mut p);
        p
    };
    wall.outline.iter_mut().for_each(map);
    let hidden = wall.hidden.iter_mut().map(|h| &mut h.shape);
    for face in wall.faces.iter_mut().chain(&mut wall.bands).chain(hidden) {
        *face = face.map(moved);
    }
    for edge in &mut wall.edges {
        map(&mut edge.from);
        map(&mut edge.to);
        let rise = edge.to - edge.from;
        edge.pitch =
            (!level(rise.y) && rise.x.abs() > LEVEL).then(|| (12.0 * rise.y / rise.x).abs());
    }
    wall.openings.iter_mut().for_each(|o| o.outline.iter_mut().for_each(map));
    wall.obstacles.iter_mut().for_each(|o| o.outline.iter_mut().for_each(map));
}

/// Openings of a widened wall: as wide as they are, where the job says they stand.
fn widen_openings(
    on: &DrawnElevation,
    wall: &mut DrawnWall,
    a: &AngledWall,
    (k, round): (f64, f64),
    findings: &mut Findings,
) {
    for o in &mut wall.openings {
        // Casing and surround are as wide as they are: only the opening itself was drawn short.
        let (x0, x1, ..) = o.sides();
        let (middle, width) = ((x0 + x1) / 2.0, (x1 - x0).max(1.0));
        let true_width = (width - 2.0 * round * (k - 1.0)) / width;
        o.outline.iter_mut().for_each(|p| p.x = snap(middle + (p.x - middle) * true_width));
        let Some(left) = a.openings.get(o.id.as_str()) else { continue };
        let dx = snap(left - round - o.sides().0);
        o.outline.iter_mut().for_each(|p| p.x += dx);
        let (x0, x1, ..) = o.sides();
        if x0 < -SAME || x1 > a.width + SAME {
            let kind = CornerFinding::AngledOutside {
                opening: o.id.clone(),
                wall: wall.id.clone(),
                left: x0,
                right: x1,
            };
            findings.push(Finding::new(kind).on(&on.name));
        }
    }
}

/// The wall's corners stand on its own elevation now.
fn moved(corners: &mut [Corner], wall: &str, elevation: &str, frame: Rect, width: f64) {
    for side in corners.iter_mut().flat_map(|c| &mut c.sides).filter(|s| s.wall == wall) {
        side.elevation = elevation.into();
        side.x = snap((side.x - frame.x0) * width / frame.width());
    }
}
