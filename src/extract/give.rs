//! Openings and fixtures to the walls they lie in.

use super::cut_sides::cut_sides;
use super::frame::ViewFrame;
use super::given;
use super::hidden::meet;
use super::ink::Ink;
use super::limits::NOISE;
use super::openings::{NARROW, report_outside};
use super::ways::recess;
use crate::finding::house::HouseFinding;
use crate::finding::{Finding, Findings};
use crate::geom::boolean::intersection;
use crate::geom::polygon::{Polygon, bounds, total_area};
use crate::geom::tol::{LEVEL, SAME};
use crate::geom::vocabulary::{Point, Rect};
use crate::model::house::{DrawnObstacle, DrawnOpening, DrawnWall, OpeningKind, WallWay};
use crate::origin::Origin;

/// Each opening goes to the wall it lies in; one outside every wall is told.
pub(super) fn give_openings(
    local: &ViewFrame,
    walls: &mut [DrawnWall],
    openings: Vec<DrawnOpening>,
    findings: &mut Findings,
) {
    let wholes: Vec<[Polygon; 1]> =
        walls.iter().map(|w| [Polygon::simple(w.outline.clone())]).collect();
    let boxes: Vec<Rect> = wholes.iter().map(|w| w[0].bounds()).collect();
    let drawn = walls.iter().all(|w| w.way == WallWay::Hatch);
    let mut off: Vec<(Origin, Point)> = Vec::new();
    for opening in openings {
        let shape = [Polygon::simple(opening.outline.clone()).wound()];
        let b = shape[0].bounds();
        let best = (0..walls.len())
            .filter(|i| meet(b, boxes[*i]))
            .map(|i| (i, total_area(&intersection(&shape, &wholes[i]))))
            .max_by(|a, b| a.1.total_cmp(&b.1));
        let (area, at) = (total_area(&shape), local.source(b.center()));
        let stands = |(i, inside): &(usize, f64)| {
            let edge_on = || drawn && *inside < area / 2.0 && is_edge_on(&shape, &wholes[*i]);
            *inside > 0.02 * area && !edge_on()
        };
        let Some((i, inside)) = best.filter(stands) else {
            off.push((opening.origin, at));
            continue;
        };
        let wall = &mut walls[i];
        let frame = bounds(&wall.outline).unwrap_or_default();
        let (left, right, _, head) = opening.sides();
        let over = (frame.x0 - left).max(right - frame.x1).max(head - frame.y1);
        if inside < area - NOISE && over > 1.0 {
            let finding = Finding::new(HouseFinding::OpeningStraddles { past: over });
            findings.push(finding.about(&opening.origin).at(at).on(&local.view.name));
        }
        let opening = door_by_place(local, opening, frame.y0);
        // Openings stand in what is left of the wall; one wholly in a bare area concerns no panel.
        // A band across one leaves two parts: panels stop at both.
        let kept = intersection(&shape, &wall.faces);
        if total_area(&kept) > area - SAME {
            wall.openings.push(opening);
            continue;
        }
        // Every part counts, however small: what is left out would be sided on paper. One thinner than
        // what reads as level is what drawing noise leaves beside a bare area.
        let thin = |p: &Polygon| p.bounds().width() <= LEVEL || p.bounds().height() <= LEVEL;
        for part in kept.into_iter().filter(|p| !thin(p)) {
            let mut mine = DrawnOpening { outline: part.outer, ..opening.clone() };
            mine.cut = cut_sides(&opening, &mine);
            wall.openings.push(mine);
        }
    }
    report_outside(local, drawn, off, findings);
    walls.iter_mut().for_each(|w| ordered(&mut w.openings));
}

/// Sets openings in order from left to right, each once.
fn ordered(openings: &mut Vec<DrawnOpening>) {
    openings.sort_by(|a, b| {
        let (a, b) = (a.sides(), b.sides());
        a.0.total_cmp(&b.0).then(a.2.total_cmp(&b.2))
    });
    without_twins(openings);
}

/// Takes out openings that are all of another once both are cut at the wall's edge: a leaf in its casing.
fn without_twins(openings: &mut Vec<DrawnOpening>) {
    let shape = |o: &DrawnOpening| [Polygon::simple(o.outline.clone()).wound()];
    let boxes: Vec<Rect> =
        openings.iter().map(|o| bounds(&o.outline).unwrap_or_default()).collect();
    let within = |i: usize, j: usize| {
        let (a, b) = (boxes[i].inflate(-LEVEL, -LEVEL), boxes[j]);
        b.union(a) == b && {
            let (one, other) = (shape(&openings[i]), shape(&openings[j]));
            let whole = total_area(&one) - total_area(&intersection(&one, &other)) <= SAME;
            let smaller = total_area(&one) < total_area(&other) - SAME;
            whole && (smaller || (j < i && total_area(&one) <= total_area(&other) + SAME))
        }
    };
    let keep: Vec<bool> =
        (0..openings.len()).map(|i| !(0..openings.len()).any(|j| j != i && within(i, j))).collect();
    let mut kept = keep.into_iter();
    openings.retain(|_| kept.next().unwrap_or(true));
}

/// Whether only a strip of an opening lies in a wall: a window of the wall round the corner, seen edge on.
fn is_edge_on(shape: &[Polygon], wall: &[Polygon]) -> bool {
    let strip = |p: &Polygon| p.bounds().width().min(p.bounds().height()) < NARROW;
    intersection(shape, wall).iter().all(strip)
}

/// A glass door is no higher than this, inches: 6 ft 8 in to 8 ft and its frame (common practice, no source).
const GLASS_DOOR: f64 = 98.0;

/// A window that stands on the wall's foot and is a man's height is a door: many offices draw both
/// on one layer. One as wide as an overhead door and parted into lights is a glass door, a higher one stays a
/// window.
fn door_by_place(local: &ViewFrame, mut o: DrawnOpening, foot: f64) -> DrawnOpening {
    let b = bounds(&o.outline).unwrap_or_default();
    if given::keeps_kind(&o) || b.y0 - foot > 1.0 {
        return o;
    }
    let lights = || Ink::of(local.lines, local.view).is_in_lights(b + local.origin.to_vec2());
    o.kind = match (recess::by_size(b, foot), o.kind) {
        (OpeningKind::OverheadDoor, named @ OpeningKind::OverheadDoor) => named,
        (OpeningKind::OverheadDoor, _) if lights() && b.height() <= GLASS_DOOR => OpeningKind::Door,
        (OpeningKind::OverheadDoor, drawn) if lights() => drawn,
        (by_size, _) => by_size,
    };
    o
}

/// Each fixture goes to the wall it lies on; one outside every wall is told.
pub(super) fn give_obstacles(
    local: &ViewFrame,
    walls: &mut [DrawnWall],
    obstacles: Vec<DrawnObstacle>,
    findings: &mut Findings,
) {
    for o in obstacles {
        let Some(b) = bounds(&o.outline) else { continue };
        match walls.iter_mut().find(|w| w.faces.iter().any(|f| f.contains(b.center()))) {
            Some(w) => w.obstacles.push(o),
            None => {
                let finding = Finding::new(HouseFinding::FixtureOutside {}).about(&o.origin);
                findings.push(finding.at(local.source(b.center())).on(&local.view.name));
            }
        }
    }
}
