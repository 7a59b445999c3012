//! Draws windows and doors: as blocks with frame, sash and panes, as blocks at 0,0, or as loose lines;
//! swings and tags over them.

use super::dice::Dice;
use super::habit::{Habit, Style};
use super::house::{Kind, Opening};
use super::ink::{Block, Element, Entity, Ink, Shape};
use super::shape::{P, Rect};

/// Lines of an opening, each a rectangle or a line.
struct Detail {
    casing: Option<Rect>,
    rings: Vec<Rect>,
    lines: Vec<(P, P)>,
    swing: Vec<(P, P)>,
}

fn detail(style: &Style, o: &Opening) -> Detail {
    let n = |v: f64| style.n(v);
    let casing = (o.outer != o.unit).then_some(o.outer);
    let mut d = Detail { casing, rings: Vec::new(), lines: Vec::new(), swing: Vec::new() };
    d.rings.push(o.unit);
    match o.kind {
        Kind::Window => sashes(style, o, &mut d),
        Kind::Door => {
            let leaf =
                Rect::new(o.unit.x0 + n(1.5), o.unit.y0, o.unit.x1 - n(1.5), o.unit.y1 - n(1.5));
            let (w, m) = (leaf.width(), leaf.middle());
            d.rings.push(leaf);
            d.rings.push(Rect::new(m[0] - w * 0.3, m[1], m[0] + w * 0.3, leaf.y1 - n(6.0)));
            d.rings.push(Rect::new(
                m[0] - w * 0.3,
                leaf.y0 + n(8.0),
                m[0] + w * 0.3,
                m[1] - n(6.0),
            ));
            d.swing =
                vec![([leaf.x0, leaf.y1], [leaf.x1, m[1]]), ([leaf.x1, m[1]], [leaf.x0, leaf.y0])];
        }
        Kind::Overhead => {
            let step = o.unit.height() / 4.0;
            for k in 1..4 {
                let y = o.unit.y0 + f64::from(k) * step;
                d.lines.push(([o.unit.x0, y], [o.unit.x1, y]));
            }
        }
    }
    d
}

fn sashes(style: &Style, o: &Opening, d: &mut Detail) {
    let n = |v: f64| style.n(v);
    let wide = o.unit.width() / o.sashes as f64;
    for s in 0..o.sashes {
        let x = o.unit.x0 + s as f64 * wide;
        let sash = Rect::new(x, o.unit.y0, x + wide, o.unit.y1).grown(-n(1.0));
        let glass = sash.grown(-n(2.0));
        d.rings.push(sash);
        d.rings.push(glass);
        let m = glass.middle();
        d.lines.push(([glass.x0, m[1]], [glass.x1, m[1]]));
        d.lines.push(([m[0], m[1]], [m[0], glass.y1]));
        d.swing.push(([glass.x0, glass.y1], [glass.x1, m[1]]));
        d.swing.push(([glass.x1, m[1]], [glass.x0, glass.y0]));
    }
}

/// Draws an opening with its swing and tag.
pub(crate) fn opening(ink: &mut Ink, style: &Style, o: &Opening, dice: &mut Dice) {
    let (element, tag) = match o.kind {
        Kind::Window => (Element::Window, Element::WindowTag),
        _ => (Element::Door, Element::DoorTag),
    };
    let d = detail(style, o);
    if style.has(Habit::Blocks) {
        ink.show(Habit::Blocks);
        block(ink, style, element, &d, o.outer, dice);
    } else {
        ink.show(Habit::LooseWindows);
        loose(ink, style, element, &d);
    }
    if style.has(Habit::Swings) && o.kind != Kind::Overhead {
        ink.show(Habit::Swings);
        for (a, b) in &d.swing {
            ink.put(element, Shape::Dashed(*a, *b));
        }
    }
    if style.has(Habit::Tags) {
        ink.show(Habit::Tags);
        label(ink, style, tag, o, dice);
    }
}

/// A casing is the carpenter's: loose casings are drawn with the trim.
fn loose(ink: &mut Ink, style: &Style, element: Element, d: &Detail) {
    if let Some(r) = d.casing {
        ink.ring(Element::Trim, &r.corners(), style.closed_boards);
    }
    for r in &d.rings {
        ink.ring(element, &r.corners(), style.closed_boards);
    }
    for (a, b) in &d.lines {
        ink.line(element, *a, *b);
    }
}

fn block(ink: &mut Ink, style: &Style, element: Element, d: &Detail, outer: Rect, dice: &mut Dice) {
    let at_zero = style.has(Habit::Absolute);
    let origin = ink.origin;
    // A block of its own place is drawn about its lower left corner.
    let shift = if at_zero { origin } else { [-outer.x0, -outer.y0] };
    let moved = |p: P| [p[0] + shift[0], p[1] + shift[1]];
    let entity = |shape: Shape| Entity { element, view: ink.view, shape };
    let mut entities: Vec<Entity> = d
        .casing
        .iter()
        .chain(&d.rings)
        .map(|r| {
            let points = r.corners().into_iter().map(moved).collect();
            entity(Shape::Poly { points, closed: true })
        })
        .collect();
    entities.extend(d.lines.iter().map(|(a, b)| entity(Shape::Line(moved(*a), moved(*b)))));
    let (name, at, mirrored) = if at_zero {
        ink.show(Habit::Absolute);
        (format!("U{:03}", ink.blocks.len()), [-origin[0], -origin[1]], false)
    } else {
        let mirrored = dice.odds(0.25);
        let at = if mirrored { [outer.x1, outer.y0] } else { [outer.x0, outer.y0] };
        let size = |v: f64| (v * 10.0).round() as i64;
        let kind = if element == Element::Window { "WIN" } else { "DR" };
        let name = format!(
            "{kind}_{}X{}_{}",
            size(outer.width()),
            size(outer.height()),
            d.rings.len() + usize::from(d.casing.is_some()) * 10
        );
        (name, at, mirrored)
    };
    if !ink.blocks.iter().any(|b| b.name == name) {
        ink.blocks.push(Block { name: name.clone(), entities });
    }
    ink.put(element, Shape::Insert { block: name, at, mirrored });
}

/// A hexagon or circle with a number, on the glass.
fn label(ink: &mut Ink, style: &Style, element: Element, o: &Opening, dice: &mut Dice) {
    let (m, r) = (o.unit.middle(), style.n(7.0));
    let number = dice.count(1, 29);
    let words = if o.kind == Kind::Window { format!("{number}") } else { format!("D{number}") };
    if dice.odds(0.5) {
        ink.put(element, Shape::Circle(m, r));
    } else {
        let corner = |k: i32| {
            let a = f64::from(k * 60).to_radians();
            [m[0] + r * a.cos(), m[1] + r * a.sin()]
        };
        let points = (0..6).map(corner).collect();
        ink.put(element, Shape::Poly { points, closed: true });
    }
    let high = style.n(4.5);
    let at = [m[0] - high * 0.4, m[1] - high / 2.0];
    if dice.odds(0.5) {
        ink.put(element, Shape::Notes { at, high, words });
    } else {
        ink.text(element, at, high, &words);
    }
}

/// A window in a roof.
pub(crate) fn skylight(ink: &mut Ink, style: &Style, r: Rect) {
    ink.show(Habit::Skylights);
    small(ink, style, r);
}

/// Frame and glass, as block or loose.
pub(crate) fn small(ink: &mut Ink, style: &Style, r: Rect) {
    let d = Detail {
        casing: None,
        rings: vec![r, r.grown(-style.n(2.0))],
        lines: Vec::new(),
        swing: Vec::new(),
    };
    if style.has(Habit::Blocks) {
        block(ink, style, Element::Window, &d, r, &mut Dice::new(7));
    } else {
        loose(ink, style, Element::Window, &d);
    }
}
