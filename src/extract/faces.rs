//! Walls of a view: outlines, what is bare or hidden in them, and faults of outlines.

use super::cut_sides::cut_sides;
use super::edges::{Beside, edges};
use super::frame::ViewFrame;
use super::hidden::{hidden, meet, touches, within};
use super::limits::NOISE;
use super::openings::{cased, obstacles, openings, report_outside};
use super::outline::Outline;
use super::ways::hatch;
use super::ways::recess::{self, FoundOpening};
use super::{limits, parts, zones};
use crate::finding::house::HouseFinding;
use crate::finding::{Finding, Findings};
use crate::geom::boolean::{difference, intersection, union_all};
use crate::geom::polygon::{Polygon, bounds, sides, total_area};
use crate::geom::sliver::without_slivers;
use crate::geom::tol::{LEVEL, SAME};
use crate::geom::vocabulary::{Point, Rect};
use crate::model::house::{
    DrawnObstacle, DrawnOpening, DrawnWall, DrawnZone, HiddenBy, OpeningKind, WallWay,
};
use crate::model::linework::Role;
use crate::origin::{Origin, round_place};

/// The walls of a view with everything on them.
pub(crate) fn walls(
    local: &ViewFrame,
    outlines: Vec<Outline>,
    findings: &mut Findings,
) -> (Vec<DrawnWall>, Vec<DrawnZone>) {
    let (outlines, mut every) = settled(local, outlines, openings(local));
    // A flat surround stands round the opening; the channel goes round the surround.
    let surround = local.job.trim.surround;
    if surround > 0.0 {
        let door = |k| matches!(k, OpeningKind::Door | OpeningKind::OverheadDoor);
        every.iter_mut().for_each(|o| o.outline = cased(&o.outline, surround, door(o.kind)));
    }
    let mut bare: Vec<Polygon> = zones::bare(local);
    bare.extend(outlines.iter().flat_map(|o| o.trimmings.bare.iter().cloned()));
    let roofs: Vec<Polygon> = loops(local, Role::Roof);
    let zones = zones::areas(local, &outlines, &every, &roofs);
    let frame = outlines.iter().map(Outline::frame).reduce(|a, b| a.union(b)).unwrap_or_default();
    let bands = parts::bands(local, frame, loops(local, Role::Band));
    let mut bands = parts::seated(bands, &outlines);
    bands.extend(outlines.iter().flat_map(|o| o.trimmings.boards.iter().cloned()));
    let channels: Vec<(Point, Point)> =
        outlines.iter().flat_map(|o| o.trimmings.channels.iter().copied()).collect();
    let (lines, gap) = (parts::joints(local), local.job.trim.movement_gap);
    let off = [(HiddenBy::NotSided, &bare), (HiddenBy::Roof, &roofs), (HiddenBy::Band, &bands)];
    let on_walls = OnWalls { off: &off, lines: &lines, openings: &every };
    let mut found: Vec<DrawnWall> =
        outlines.into_iter().filter_map(|o| bare_wall(local, o, &on_walls, findings)).collect();
    report_overlaps(local, &found, findings);
    give_openings(local, &mut found, every, findings);
    give_obstacles(local, &mut found, obstacles(local), findings);
    let full: Vec<_> = found.iter().filter_map(|w| limits::too_many_holes(local, w)).collect();
    if !full.is_empty() {
        full.into_iter().for_each(|n| findings.push(n));
        return (Vec::new(), Vec::new());
    }
    let hiding = Hiding { bare: &bare, roofs: &roofs, bands: &bands, channels: &channels, gap };
    for wall in &mut found {
        give_edges(local, wall, &hiding, findings);
    }
    (found, zones)
}

/// What lies on the walls of a view before they are known.
struct OnWalls<'a> {
    /// What is not sided: stone, roofs, bands.
    off: &'a [(HiddenBy, &'a Vec<Polygon>)],
    /// Movement joints.
    lines: &'a [(f64, f64, f64)],
    openings: &'a [DrawnOpening],
}

/// A wall with its faces and nothing else on it; none where nothing of it is sided, or where it cannot be used.
fn bare_wall(
    local: &ViewFrame,
    o: Outline,
    on: &OnWalls,
    findings: &mut Findings,
) -> Option<DrawnWall> {
    if let Some(note) = limits::too_much(local, &o) {
        findings.push(note);
        return None;
    }
    if let Some((p, q)) = crossing(&o.ring) {
        crossed(local, &o.origin, p, q, findings);
        return None;
    }
    let gap = local.job.trim.movement_gap;
    let whole = o.polygon();
    let joints = parts::on(&whole, on.lines, gap);
    parts::through_openings(local, &whole, &joints, on.openings, findings);
    let hidden = hidden(local, &whole, on.off, &joints);
    let near: Vec<Polygon> = hidden.iter().map(|h| h.shape.clone()).collect();
    let faces = difference(std::slice::from_ref(&whole), &union_all(&near));
    let faces = without_slivers(faces);
    let hidden = within(&whole, hidden);
    (!faces.is_empty()).then(|| DrawnWall {
        id: Default::default(),
        outline: whole.outer,
        faces,
        hidden,
        openings: Vec::new(),
        obstacles: Vec::new(),
        bands: Vec::new(),
        joints,
        fillers: Vec::new(),
        edges: Vec::new(),
        drawn_exposure: o.exposure,
        way: o.way,
        origin: o.origin,
    })
}

/// What may hide parts of a wall.
struct Hiding<'a> {
    bare: &'a [Polygon],
    roofs: &'a [Polygon],
    bands: &'a [Polygon],
    /// Upright sides that are no corners.
    channels: &'a [(Point, Point)],
    /// Width of the strip at a joint of the building.
    gap: f64,
}

/// Says of each side of a wall what it is, and which bands stand on it.
fn give_edges(local: &ViewFrame, wall: &mut DrawnWall, hiding: &Hiding, findings: &mut Findings) {
    // What only touches a wall's outline belongs to the wall beside it.
    let whole = [Polygon::simple(wall.outline.clone())];
    let hides = |shapes: &[Polygon]| -> Vec<Polygon> {
        let over = |s: &&Polygon| {
            touches(s, &whole[0])
                && total_area(&intersection(std::slice::from_ref(*s), &whole)) > NOISE
        };
        shapes.iter().filter(over).cloned().collect()
    };
    let strips: Vec<Polygon> =
        wall.joints.iter().map(|x| parts::strip(&whole[0], *x, hiding.gap)).collect();
    let mut bare = hides(hiding.bare);
    bare.extend(hiding.bands.iter().filter(|b| touches(b, &whole[0])).cloned());
    bare.extend(strips.iter().cloned());
    bare.extend(zones::border(local, &whole[0].clone().wound()));
    let beside = Beside { bare: &bare, roofs: &hides(hiding.roofs), channels: hiding.channels };
    wall.edges = edges(local, &wall.outline, &wall.faces, &beside, findings);
    wall.bands = parts::boards(wall, hiding.bands, &strips);
}

/// Outlines in the elevation's own inches, left to right, with every opening of the view: those
/// drawn, and those that hatches and loose lines show where none is drawn.
fn settled(
    local: &ViewFrame,
    outlines: Vec<Outline>,
    drawn: Vec<DrawnOpening>,
) -> (Vec<Outline>, Vec<DrawnOpening>) {
    let known: Vec<FoundOpening> = drawn
        .iter()
        .map(|o| FoundOpening {
            outline: o.outline.clone(),
            kind: o.kind,
            block: o.block.clone(),
            origin: o.origin.clone(),
        })
        .collect();
    let place = |ring: &[Point]| ring.iter().map(|p| local.place(*p)).collect::<Vec<_>>();
    let mut outlines: Vec<Outline> = outlines
        .into_iter()
        .map(|mut o| {
            o.ring = place(&o.ring);
            o.openings.iter_mut().for_each(|w| w.outline = place(&w.outline));
            o.trimmings = o.trimmings.moved(|p| local.place(p));
            if o.way == WallWay::Hatch && o.patches.is_empty() {
                hatch::settle(&mut o, &known);
            }
            o
        })
        .collect();
    outlines.sort_by(|a, b| {
        let (a, b) = (a.frame(), b.frame());
        a.x0.total_cmp(&b.x0).then(a.y0.total_cmp(&b.y0))
    });
    let found: Vec<DrawnOpening> = outlines.iter().flat_map(|o| o.openings.clone()).collect();
    // One that stands in the hole of a hatch is that hole: opening and casing.
    let told = |d: &FoundOpening| found.iter().any(|f| d.within(&f.outline));
    let alone = drawn.into_iter().zip(&known).filter(|(_, d)| !told(d)).map(|(o, _)| o);
    let every: Vec<DrawnOpening> = alone.chain(found.iter().cloned()).collect();
    (outlines, every)
}

fn loops(local: &ViewFrame, role: Role) -> Vec<Polygon> {
    local
        .strokes(role)
        .filter(|s| s.closed && s.points.len() >= 3)
        .map(|s| Polygon::simple(local.ring(s)).wound())
        .collect()
}

/// Two sides of a ring that cross, by their crossing's sides' middles: the first met from the left.
fn crossing(ring: &[Point]) -> Option<(Point, Point)> {
    let all: Vec<(Point, Point)> = sides(ring).collect();
    let turn = |a: Point, b: Point, c: Point| (b - a).cross(c - a);
    let cross = |i: usize, j: usize| {
        let ((a, b), (c, d)) = (all[i], all[j]);
        let apart = a.y.max(b.y) < c.y.min(d.y) || c.y.max(d.y) < a.y.min(b.y);
        let near = i.abs_diff(j) < 2 || i.abs_diff(j) == all.len() - 1;
        !near
            && !apart
            && turn(a, b, c) * turn(a, b, d) < 0.0
            && turn(c, d, a) * turn(c, d, b) < 0.0
    };
    let (left, right) =
        (|i: usize| all[i].0.x.min(all[i].1.x), |i: usize| all[i].0.x.max(all[i].1.x));
    let mut order: Vec<usize> = (0..all.len()).collect();
    order.sort_by(|i, j| left(*i).total_cmp(&left(*j)).then(i.cmp(j)));
    let mut open: Vec<usize> = Vec::new();
    for i in order {
        open.retain(|j| right(*j) >= left(i));
        if let Some(&j) = open.iter().find(|j| cross(i, **j)) {
            let ((a, b), (c, d)) = (all[i.min(j)], all[i.max(j)]);
            return Some((a.midpoint(b), c.midpoint(d)));
        }
        open.push(i);
    }
    None
}

fn crossed(local: &ViewFrame, origin: &Origin, p: Point, q: Point, findings: &mut Findings) {
    let (p, q) = (local.source(p), local.source(q));
    // Both as they were drawn, without the grid's noise.
    let inches = local.lines.scale.inches;
    let (p, q) = (round_place(p, inches), round_place(q, inches));
    let kind = HouseFinding::WallCrosses { first: [p.x, p.y], second: [q.x, q.y] };
    findings.push(Finding::new(kind).about(origin).at(p).on(&local.view.name));
}

fn report_overlaps(local: &ViewFrame, walls: &[DrawnWall], findings: &mut Findings) {
    let mut told = 0;
    for (i, a) in walls.iter().enumerate() {
        if told >= limits::MOST_TOLD {
            return;
        }
        for b in &walls[i + 1..] {
            if !a.faces.iter().any(|x| b.faces.iter().any(|y| touches(x, y))) {
                continue;
            }
            let both = intersection(&a.faces, &b.faces);
            let area = total_area(&both);
            let Some(first) = both.first().filter(|_| area > NOISE) else { continue };
            told += 1;
            let at = local.source(first.bounds().center());
            let finding = Finding::new(HouseFinding::WallsOverlap { area: area / 144.0 });
            findings.push(finding.about(&b.origin).at(at).on(&local.view.name));
        }
    }
}

/// Each opening goes to the wall it lies in; one outside every wall is told.
fn give_openings(
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
        let area = total_area(&shape);
        let at = local.source(shape[0].bounds().center());
        let Some((i, inside)) = best.filter(|(_, inside)| *inside > 0.02 * area) else {
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
        let opening = door_by_place(opening, frame.y0);
        // Openings stand in what is left of the wall; one wholly in a bare area concerns no panel.
        // A band of stone across one leaves two parts, and panels stop at both.
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
    report_outside(local, drawn, &off, findings);
    for w in walls {
        w.openings.sort_by(|a, b| {
            let (a, b) = (a.sides(), b.sides());
            a.0.total_cmp(&b.0).then(a.2.total_cmp(&b.2))
        });
    }
}

/// A window that stands on the wall's foot and is a man's height is a door: many offices draw both
/// on one layer.
fn door_by_place(mut o: DrawnOpening, foot: f64) -> DrawnOpening {
    let b = bounds(&o.outline).unwrap_or_default();
    if o.kind == OpeningKind::Window && b.y0 - foot <= 1.0 {
        o.kind = recess::by_size(b, foot);
    }
    o
}

fn give_obstacles(
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
