//! Draws a view: walls, boards, siding, roofs, stone, grade.

use super::dice::Dice;
use super::habit::{Habit, Style, Version};
use super::house::{BoardKind, Plane, Top, View};
use super::ink::{Element, Ink, Shape};
use super::shape::{Area, Family, P, Rect, bounds};
use super::{annotate, slits, windows};

/// Draws one view at the ink's origin.
pub(crate) fn draw(ink: &mut Ink, style: &Style, view: &View, pitch: f64, dice: &mut Dice) {
    for plane in &view.planes {
        outline(ink, plane);
        boards(ink, style, plane);
        siding(ink, style, plane, pitch, dice);
        masonry(ink, style, plane, &view.cellar);
        roof(ink, style, plane, &view.skylights);
        for o in &plane.openings {
            windows::opening(ink, style, o, dice);
        }
        note_plane(ink, plane);
    }
    for r in &view.skylights {
        windows::skylight(ink, style, *r);
    }
    for r in &view.cellar {
        windows::small(ink, style, *r);
    }
    grade(ink, style, view, dice);
    annotate::view(ink, style, view, dice);
}

/// Habits that this plane in fact shows.
fn note_plane(ink: &mut Ink, plane: &Plane) {
    for b in &plane.boards {
        ink.show(match b.kind {
            BoardKind::Corner => Habit::CornerBoards,
            BoardKind::Band => Habit::Bands,
            BoardKind::Frieze => Habit::Friezes,
            BoardKind::WaterTable => continue,
        });
    }
    if plane.openings.iter().any(|o| o.outer != o.unit) {
        ink.show(Habit::Casings);
    }
    if matches!(plane.top, Top::Gable { .. }) {
        ink.show(Habit::Gables);
    }
    if plane.porch.is_some() {
        ink.show(Habit::Porch);
    }
    let siding = plane.siding.bounds();
    let straddles = |o: &super::house::Opening| {
        let meets = |a: &Area| !Area::rect(o.outer.grown(0.25)).within(a).is_empty();
        let band = plane.boards.iter().filter(|b| b.kind == BoardKind::Band);
        o.outer.y0 < siding.y0 - 1.0 && plane.stone > 0.0
            || band.map(|b| &b.area).any(|a| meets(a) && o.outer.height() > 0.0)
    };
    if plane.openings.iter().any(straddles) {
        ink.show(Habit::Straddling);
    }
}

fn outline(ink: &mut Ink, plane: &Plane) {
    let o = &plane.outline;
    // Corners from the ground up; the foot; the rest is drawn with the roof.
    ink.line(Element::Wall, [plane.x0, plane.foot], [plane.x0, plane.soffit]);
    ink.line(Element::Wall, [plane.x1, plane.foot], [plane.x1, plane.soffit]);
    ink.line(Element::Wall, o[0], o[1]);
    if plane.stone > 0.0 {
        let doors = plane.openings.iter().map(|o| Area::rect(o.outer));
        let taken = doors.fold(Area::none(), |a, d| a.and(&d));
        let thin = Rect::new(plane.x0, plane.stone - 0.5, plane.x1, plane.stone + 0.5);
        for part in Area::rect(thin).minus(&taken).parts() {
            let b = part.bounds();
            ink.line(Element::Stone, [b.x0, plane.stone], [b.x1, plane.stone]);
        }
    }
}

fn boards(ink: &mut Ink, style: &Style, plane: &Plane) {
    for b in &plane.boards {
        for part in b.area.parts() {
            for ring in part.rings() {
                ink.ring(Element::Trim, &ring, style.closed_boards);
            }
        }
    }
}

/// Siding: hatches whole, in pieces, notched or slit; or loose lines.
fn siding(ink: &mut Ink, style: &Style, plane: &Plane, pitch: f64, dice: &mut Dice) {
    let families = [Family::level(pitch, plane.phase)];
    if style.has(Habit::Exploded) {
        ink.show(Habit::Exploded);
        ink.pattern(Element::Siding, &plane.siding, &families, true);
        return;
    }
    let mut patches =
        if dice.odds(0.3) { vec![plane.siding.clone()] } else { plane.siding.parts() };
    if style.has(Habit::Pieces) {
        patches = patches.iter().flat_map(|p| pieces(p, plane)).collect();
        ink.show(Habit::Pieces);
    }
    for patch in patches {
        let shape = if style.has(Habit::Notched) {
            let (rings, slit) = slits::one_loop(&patch, style.n(1.0) / 8.0, dice.odds(0.5));
            if slit {
                ink.show(Habit::Notched);
            }
            Shape::Hatch { rings, families: families.to_vec() }
        } else {
            Shape::Hatch { rings: patch.rings(), families: families.to_vec() }
        };
        ink.put(Element::Siding, shape);
    }
}

/// A patch cut upright at the left side of its openings, as hatches are picked between lines.
fn pieces(patch: &Area, plane: &Plane) -> Vec<Area> {
    let b = patch.bounds();
    let mut at: Vec<f64> = plane.openings.iter().step_by(2).map(|o| o.outer.x0).collect();
    at.retain(|x| *x > b.x0 + 20.0 && *x < b.x1 - 20.0);
    at.sort_by(f64::total_cmp);
    at.dedup_by(|a, b| (*a - *b).abs() < 20.0);
    at.insert(0, b.x0);
    at.push(b.x1);
    let strip = |w: &[f64]| patch.within(&Area::rect(Rect::new(w[0], b.y0, w[1], b.y1)));
    at.windows(2).map(strip).filter(|a| !a.is_empty()).flat_map(|a| a.parts()).collect()
}

fn masonry(ink: &mut Ink, style: &Style, plane: &Plane, cellar: &[Rect]) {
    if plane.masonry.is_empty() {
        return;
    }
    ink.show(Habit::Stone);
    let holes = cellar.iter().fold(Area::none(), |a, r| a.and(&Area::rect(*r)));
    let area = plane.masonry.minus(&holes);
    let n = |v: f64| v * style.per_inch();
    let base = [plane.x0, plane.foot];
    let families = if style.brick {
        // Brick: bed joints, and head joints every other course.
        let head = |x: f64, y: f64| Family {
            angle: 90.0,
            base: [plane.x0 + n(x), plane.foot + n(y)],
            step: [0.0, n(8.0)],
            dashes: vec![n(2.667), -n(2.667)],
        };
        let bed = Family { base, ..Family::level(n(2.667), plane.foot) };
        vec![bed, head(0.0, 0.0), head(4.0, 2.667)]
    } else {
        // Stone: broken level and upright strokes.
        let level = |y: f64, dashes: Vec<f64>| Family {
            angle: 0.0,
            base: [plane.x0 + n(y), plane.foot + n(y)],
            step: [n(7.0), n(12.0)],
            dashes: dashes.into_iter().map(n).collect(),
        };
        let up = |x: f64| Family {
            angle: 90.0,
            base: [plane.x0 + n(x), plane.foot + n(x)],
            step: [n(6.0), n(11.0)],
            dashes: vec![n(5.0), -n(7.0)],
        };
        vec![
            level(0.0, vec![14.0, -6.0, 9.0, -3.0]),
            level(5.0, vec![11.0, -4.0, 16.0, -5.0]),
            up(3.0),
            up(8.0),
        ]
    };
    ink.pattern(Element::StonePattern, &area, &families, style.all_exploded);
}

fn roof(ink: &mut Ink, style: &Style, plane: &Plane, skylights: &[Rect]) {
    match &plane.top {
        Top::Eave { fascia, roof } => {
            ink.ring(Element::Roof, &fascia.corners(), style.closed_boards);
            ink.ring(Element::Roof, roof, false);
            let holes = skylights.iter().fold(Area::none(), |a, r| a.and(&Area::rect(*r)));
            shingles(ink, style, &Area::of(roof).minus(&holes));
        }
        Top::Gable { peak, out, depth } => {
            let mid = (plane.x0 + plane.x1) / 2.0;
            let slope = (peak - plane.soffit) / (mid - plane.x0);
            let up = depth * (1.0 + slope * slope).sqrt();
            let tail = [plane.soffit - out[0] * slope, plane.soffit - out[1] * slope];
            // Rakes are parallel lines, the wall's the lowest.
            for rise in [0.0, up, up + style.n(2.0)] {
                ink.path(
                    Element::Roof,
                    &[
                        [plane.x0 - out[0], tail[0] + rise],
                        [mid, peak + rise],
                        [plane.x1 + out[1], tail[1] + rise],
                    ],
                );
            }
            for (x, y) in [(plane.x0 - out[0], tail[0]), (plane.x1 + out[1], tail[1])] {
                ink.line(Element::Roof, [x, y], [x, y + up + style.n(2.0)]);
            }
        }
    }
    if let Some(p) = &plane.porch {
        ink.ring(Element::Roof, &p.fascia.corners(), style.closed_boards);
        ink.ring(Element::Roof, &p.roof, false);
        shingles(ink, style, &Area::of(&p.roof));
    }
}

/// Shingles: level lines with butts, level lines alone, or standing seams.
fn shingles(ink: &mut Ink, style: &Style, area: &Area) {
    if !style.has(Habit::Shingles) {
        return;
    }
    ink.show(Habit::Shingles);
    let n = |v: f64| v * style.per_inch();
    let foot = area.bounds();
    let level = Family::level(n(4.5), foot.y0);
    let butts = |x: f64, y: f64| Family {
        angle: 90.0,
        base: [foot.x0 + n(x), foot.y0 + n(y)],
        step: [0.0, n(12.0)],
        dashes: vec![n(4.5), -n(4.5)],
    };
    let families = match style.shingles {
        0 => vec![level],
        1 => vec![Family {
            angle: 90.0,
            base: [foot.x0, foot.y0],
            step: [0.0, n(16.0)],
            dashes: Vec::new(),
        }],
        _ => vec![level, butts(0.0, 0.0), butts(6.0, 4.5)],
    };
    ink.pattern(Element::RoofPattern, area, &families, style.all_exploded);
}

fn grade(ink: &mut Ink, style: &Style, view: &View, dice: &mut Dice) {
    if view.grade.len() > 2 && style.version != Version::R12 && dice.odds(0.5) {
        ink.put(Element::Grade, Shape::Poly { points: view.grade.clone(), closed: false });
    } else {
        ink.path(Element::Grade, &view.grade);
    }
    // The foundation shows between the siding's foot and the ground.
    let (a, z) = (view.planes[0].x0, view.planes[view.planes.len() - 1].x1);
    for x in [a, z] {
        let y = super::design::height(&view.grade, x);
        ink.line(Element::Wall, [x, 0.0], [x, y]);
    }
    if !style.has(Habit::Grade) {
        return;
    }
    ink.show(Habit::Grade);
    let deep = style.n(28.0);
    let b = bounds(&view.grade);
    let mut ring: Vec<P> = view.grade.iter().rev().copied().collect();
    ring.push([b.x0, b.y0 - deep]);
    ring.push([b.x1, b.y0 - deep]);
    let n = |v: f64| v * style.per_inch();
    let stroke = |angle: f64, k: f64| Family {
        angle,
        base: [b.x0 + n(if angle == 0.0 { 0.0 } else { 2.0 }), b.y0 + n(k * 3.0)],
        step: [n(12.0), n(12.0)],
        dashes: vec![n(10.0), -n(14.0)],
    };
    let families: Vec<Family> =
        [0.0, 1.0, 2.0].iter().flat_map(|k| [stroke(0.0, *k), stroke(90.0, *k)]).collect();
    ink.pattern(Element::GradePattern, &Area::of(&ring), &families, style.all_exploded);
}
