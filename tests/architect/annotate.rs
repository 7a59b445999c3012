//! Draws what is written over and beside a view: grid lines, levels, section marks, notes,
//! dimensions, titles.

use super::dice::Dice;
use super::habit::{Habit, Style};
use super::house::View;
use super::ink::{Block, Element, Entity, Ink, Shape};
use super::shape::P;

/// What notes say.
const NOTES: [&str; 4] = ["LAP SIDING", "1x CORNER BOARD, TYP.", "ASPHALT SHINGLES", "ALIGN HEADS"];

pub(crate) fn view(ink: &mut Ink, style: &Style, view: &View, dice: &mut Dice) {
    if style.has(Habit::Grid) {
        grid(ink, style, view, dice);
    }
    if style.has(Habit::Marks) {
        marks(ink, style, view, dice);
    }
    if style.has(Habit::Dimensions) {
        dimensions(ink, style, view);
    }
    if style.has(Habit::Titles) {
        title(ink, style, view);
    }
}

/// Grid lines go through the whole view, a bubble over each.
fn grid(ink: &mut Ink, style: &Style, view: &View, dice: &mut Dice) {
    ink.show(Habit::Grid);
    let r = style.n(9.0);
    let top = view.room.y1 + style.n(30.0);
    let foot = view.room.y0 - style.n(20.0);
    let mut at: Vec<f64> = view.planes.iter().map(|p| p.x0 + style.n(4.0)).collect();
    let last = &view.planes[view.planes.len() - 1];
    at.push(last.x1 - style.n(4.0));
    at.push(last.x0 + style.n((last.x1 - last.x0) / style.per_inch() * dice.between(0.3, 0.7)));
    at.sort_by(f64::total_cmp);
    for (i, x) in at.iter().enumerate() {
        ink.put(Element::Grid, Shape::Dashed([*x, foot], [*x, top]));
        ink.put(Element::GridTag, Shape::Circle([*x, top + r], r));
        let name = char::from(b'A' + i as u8).to_string();
        let high = style.n(8.0);
        ink.text(Element::GridTag, [*x - high * 0.4, top + r - high / 2.0], high, &name);
    }
}

/// Floor levels across, a section mark, notes with leaders.
fn marks(ink: &mut Ink, style: &Style, view: &View, dice: &mut Dice) {
    ink.show(Habit::Marks);
    let (x0, x1) = (view.room.x0 - style.n(30.0), view.room.x1 + style.n(40.0));
    for (i, y) in view.floors.iter().enumerate() {
        ink.put(Element::Level, Shape::Dashed([x0, *y], [x1, *y]));
        let (high, c) = (style.n(5.0), [x1 + style.n(5.0), *y]);
        ink.put(Element::Level, Shape::Circle(c, style.n(5.0)));
        let words = if i + 1 == view.floors.len() {
            "T.O. PLATE".to_owned()
        } else {
            format!("FLOOR {}", i + 1)
        };
        ink.text(Element::Level, [x1 - style.n(36.0), y + style.n(1.5)], high, &words);
    }
    // A section mark: a line through the view, a circle and a filled arrow at its head.
    let p = &view.planes[0];
    let x = p.x0 + style.n((p.x1 - p.x0) / style.per_inch() * dice.between(0.2, 0.8));
    let top = view.room.y1 + style.n(24.0);
    ink.line(Element::Mark, [x, view.room.y0 - style.n(16.0)], [x, top]);
    let r = style.n(8.0);
    ink.put(Element::Mark, Shape::Circle([x, top + r], r));
    ink.put(
        Element::Mark,
        Shape::Fill([[x + r, top + r], [x + r * 1.8, top + r], [x + r * 0.7, top + r * 1.9]]),
    );
    ink.text(Element::Mark, [x - r * 0.4, top + r * 0.6], r * 0.8, "1");
    // Notes beside the view, their leaders with arrows on what they are about.
    for (i, words) in NOTES.iter().enumerate().take(dice.count(1, 4)) {
        let y = view.room.y0 + style.n(70.0 + 26.0 * i as f64);
        let at = [view.room.x1 + style.n(60.0), y];
        let last = &view.planes[view.planes.len() - 1];
        let to = [last.x1 - style.n(20.0 + 9.0 * i as f64), y - style.n(12.0)];
        ink.path(Element::Note, &[to, [at[0] - style.n(14.0), y], at]);
        let h = style.n(2.0);
        ink.put(
            Element::Note,
            Shape::Fill([to, [to[0] + h * 2.0, to[1] + h * 1.2], [to[0] + h * 2.0, to[1]]]),
        );
        ink.put(Element::Note, Shape::Notes { at, high: style.n(5.0), words: (*words).to_owned() });
    }
}

fn dimensions(ink: &mut Ink, style: &Style, view: &View) {
    ink.show(Habit::Dimensions);
    let x = view.room.x0 - style.n(24.0);
    for w in view.floors.windows(2) {
        dimension(
            ink,
            style,
            [view.planes[0].x0, w[0]],
            [view.planes[0].x0, w[1]],
            [x, w[0]],
            true,
        );
    }
    let y = view.room.y0 - style.n(44.0);
    for p in &view.planes {
        dimension(ink, style, [p.x0, p.foot], [p.x1, p.foot], [p.x0, y], false);
    }
}

fn dimension(ink: &mut Ink, style: &Style, from: P, to: P, line: P, upright: bool) {
    let name = format!("*D{}", ink.blocks.len());
    let foot = |p: P| if upright { [line[0], p[1]] } else { [p[0], line[1]] };
    let (a, b) = (foot(from), foot(to));
    let t = style.n(3.0);
    let tick = |p: P| Shape::Line([p[0] - t, p[1] - t], [p[0] + t, p[1] + t]);
    let size = if upright { b[1] - a[1] } else { b[0] - a[0] };
    let words = written(style, size);
    let middle = [(a[0] + b[0]) / 2.0, (a[1] + b[1]) / 2.0 + t];
    let picture = [
        Shape::Line(from, a),
        Shape::Line(to, b),
        Shape::Line(a, b),
        tick(a),
        tick(b),
        Shape::Notes { at: middle, high: style.n(5.0), words },
    ];
    let view = ink.view;
    let entities = picture
        .into_iter()
        .map(|s| Entity { element: Element::Dimension, view, shape: ink.shape(s) })
        .collect();
    ink.blocks.push(Block { name: name.clone(), entities });
    ink.put(Element::Dimension, Shape::Dimension { from, to, line: b, upright, block: name });
}

/// A length as it is lettered.
fn written(style: &Style, size: f64) -> String {
    if !style.has(Habit::Metric) {
        return format!("{}'-{}\"", (size / 12.0).floor(), size % 12.0);
    }
    match style.unit.word {
        "m" => format!("{:.2}", size / 1000.0),
        _ => format!("{size:.0}"),
    }
}

fn title(ink: &mut Ink, style: &Style, view: &View) {
    ink.show(Habit::Titles);
    let (a, y) = (view.room.x0 + style.n(60.0), view.room.y0 - style.n(78.0));
    ink.text(Element::Title, [a, y], style.n(12.0), &view.title);
    let wide = style.n(12.0) * view.title.chars().count() as f64;
    ink.line(Element::Title, [a, y - style.n(4.0)], [a + wide, y - style.n(4.0)]);
    let scale = if style.has(Habit::Metric) { "1:50" } else { "SCALE: 1/4\" = 1'-0\"" };
    ink.text(Element::Title, [a, y - style.n(14.0)], style.n(6.0), scale);
}
