//! Walls that stand at an angle to their elevation: an elevation shows its projection, so they are
//! drawn too short (`LayoutFact::AngledWallsShort`). At the true width the job gives, such a wall
//! becomes an elevation of its own; its way back to the source shrinks it again to where it is drawn.

use super::edges::straightened;
use super::hidden::within;
use super::parts;
use crate::finding::corners::{AngledFault, CornerFinding};
use crate::finding::{Finding, Findings};
use crate::geom::boolean::{difference, intersection, union_all};
use crate::geom::polygon::{Polygon, bounds, total_area};
use crate::geom::sliver::without_slivers;
use crate::geom::tol::{LEVEL, SAME, level, same, snap};
use crate::geom::vocabulary::{Affine, Point, Rect, Vec2};
use crate::job::{AngledWall, Job};
use crate::model::corner::Corner;
use crate::model::house::{
    Backdrop, DrawnEdge, DrawnElevation, DrawnWall, DrawnZone, EdgeKind, HiddenBy, HiddenPart,
    House, OpeningSide,
};
use crate::model::ids::WallId;

/// How far outside the wall lines of the source still belong to it, inches drawn.
const ROUND: f64 = 2.0;

/// Cosine of the angle within which two sides run one way: 6 degrees, of our own choosing.
const ALIKE: f64 = 0.995;

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
    let map = |p: &mut Point| *p = Point::new(snap(at(p.x)), p.y);
    // The gap at a movement joint is as wide as it is: what ends beside it does so still.
    let joints = wall.joints.clone();
    let ends = |x: f64, j: f64| same((x - j).abs(), gap / 2.0);
    let beside = |p: &mut Point| match joints.iter().find(|j| ends(p.x, **j)) {
        Some(j) => *p = Point::new(snap(at(*j) + (p.x - j)), p.y),
        None => map(p),
    };
    stretch(&mut wall, &map, &beside);
    for x in &mut wall.joints {
        *x = snap(at(*x));
    }
    if !wall.joints.is_empty() {
        part_anew(&mut wall, gap);
    }
    widen_openings(on, &mut wall, a, (k, round), findings);
    for name in a.openings.keys().filter(|n| wall.openings.iter().all(|o| o.id != **n)) {
        let wall = wall.id.clone();
        let (named, fault) = (name.clone(), AngledFault::NoSuchOpening { wall });
        findings.push(Finding::new(CornerFinding::AngledUnknown { named, fault }));
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

/// A wall with everything on it, point by point; `beside` for what may end at a movement joint.
fn stretch(wall: &mut DrawnWall, map: &impl Fn(&mut Point), beside: &impl Fn(&mut Point)) {
    let moved = |mut p: Point| {
        map(&mut p);
        p
    };
    wall.outline.iter_mut().for_each(map);
    let hidden = wall.hidden.iter_mut().map(|h| &mut h.shape);
    for face in wall.faces.iter_mut().chain(hidden) {
        *face = face.map(moved);
    }
    let rings =
        wall.bands.iter_mut().flat_map(|b| std::iter::once(&mut b.outer).chain(&mut b.holes));
    rings.flatten().for_each(beside);
    for edge in &mut wall.edges {
        map(&mut edge.from);
        map(&mut edge.to);
        edge.pitch = pitch(edge.to - edge.from);
    }
    wall.openings.iter_mut().for_each(|o| o.outline.iter_mut().for_each(beside));
    wall.obstacles.iter_mut().for_each(|o| o.outline.iter_mut().for_each(map));
}

/// Rise in 12 of a side that slopes.
fn pitch(rise: Vec2) -> Option<f64> {
    (!level(rise.y) && rise.x.abs() > LEVEL).then(|| (12.0 * rise.y / rise.x).abs())
}

/// Parts a stretched wall at its joints once more, since their gaps stay as they are: faces end at them
/// where the wall is as high there, under a gable too. Every side of a face is what the nearest one that
/// ran its way was.
fn part_anew(wall: &mut DrawnWall, gap: f64) {
    use EdgeKind::{Abutment, InsideCorner, OutsideCorner};
    let whole = Polygon::simple(wall.outline.clone()).wound();
    let strips: Vec<Polygon> = wall.joints.iter().map(|x| parts::strip(&whole, *x, gap)).collect();
    wall.hidden.retain(|h| h.by != HiddenBy::Joint);
    let joint = |shape| HiddenPart { by: HiddenBy::Joint, shape };
    wall.hidden.extend(within(&whole, strips.iter().cloned().map(joint).collect()));
    let off: Vec<Polygon> = wall.hidden.iter().map(|h| h.shape.clone()).chain(strips).collect();
    wall.faces = without_slivers(difference(&[whole], &union_all(&off)));
    let before = std::mem::take(&mut wall.edges);
    let sides = wall.faces.iter().flat_map(Polygon::rings).flat_map(|r| straightened(r));
    wall.edges = sides
        .filter_map(|(from, to)| {
            let at_joint = |x: &f64| same((from.x - x).abs(), gap / 2.0) && same(from.x, to.x);
            let (kind, tag) = if wall.joints.iter().any(at_joint) {
                (EdgeKind::Abutment, None)
            } else {
                let (run, middle) = (to - from, from.midpoint(to));
                let along = |e: &&DrawnEdge| {
                    let of = e.to - e.from;
                    run.dot(of) > ALIKE * run.hypot() * of.hypot()
                };
                let off = |e: &DrawnEdge| off_segment(middle, e.from, e.to);
                let was = before.iter().filter(along).min_by(|a, b| off(a).total_cmp(&off(b)))?;
                (was.kind, was.tag.clone())
            };
            let stands = matches!(kind, OutsideCorner | InsideCorner | Abutment);
            let pitch = pitch(to - from).filter(|_| !stands);
            Some(DrawnEdge { kind, from, to, pitch, tag })
        })
        .collect();
}

/// The same of a wall whose outline, openings and what hides it were moved, with its boards: bands less openings.
pub fn moved_anew(wall: &mut DrawnWall, gap: f64) {
    part_anew(wall, gap);
    if !wall.bands.is_empty() {
        parts::boards_anew(wall, gap);
    }
}

/// Distance of a place from a side.
fn off_segment(p: Point, a: Point, b: Point) -> f64 {
    let side = b - a;
    let share = (p - a).dot(side) / side.hypot2().max(SAME * SAME);
    p.distance(a + side * share.clamp(0.0, 1.0))
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
        // Casing and surround are as wide as they are: only the opening itself was drawn short. Where
        // something cuts it off, there is none.
        let (x0, x1, ..) = o.sides();
        let width = (x1 - x0).max(1.0);
        let less = |side: OpeningSide| if o.cut.contains(&side) { 0.0 } else { round * (k - 1.0) };
        let (left, right) = (less(OpeningSide::Left), less(OpeningSide::Right));
        let narrower = (1.0 - (left + right) / width).max(0.0);
        o.outline.iter_mut().for_each(|p| p.x = snap(x0 + left + (p.x - x0) * narrower));
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
