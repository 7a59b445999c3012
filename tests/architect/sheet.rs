//! Draws a whole sheet: views in their places, a floor plan beside, the border with its title block.

use super::design::{self, Sizes};
use super::dice::Dice;
use super::facade;
use super::habit::{Habit, Style};
use super::house::{Top, View};
use super::ink::{Element, Ink};
use super::shape::{P, Rect};

/// Titles by office.
const TITLES: [[&str; 4]; 4] = [
    ["FRONT ELEVATION", "RIGHT SIDE ELEVATION", "REAR ELEVATION", "LEFT SIDE ELEVATION"],
    ["SOUTH ELEVATION", "EAST ELEVATION", "NORTH ELEVATION", "WEST ELEVATION"],
    ["South Elevation", "East Elevation", "North Elevation", "West Elevation"],
    ["ANSICHT S\u{dc}D", "ANSICHT OST", "ANSICHT NORD", "ANSICHT WEST"],
];

/// A view and where its zero stands.
pub(crate) struct Placed {
    pub(crate) view: View,
    pub(crate) at: P,
}

/// The title of the view at a place of the order.
fn titled(style: &Style, k: usize) -> String {
    TITLES[words(style)][k % 4].to_owned()
}

/// German is for metric offices.
fn words(style: &Style) -> usize {
    match style.words {
        3 if !style.has(Habit::Metric) => 0,
        w => w,
    }
}

fn partial(style: &Style, title: &str) -> String {
    match words(style) {
        3 => format!("TEIL{title}"),
        2 => format!("Partial {title}"),
        _ => format!("PARTIAL {title}"),
    }
}

/// Draws everything; the views with their places, and where the plan is.
pub(crate) fn draw(ink: &mut Ink, style: &Style, dice: &mut Dice) -> (Vec<Placed>, Sizes) {
    let sizes = Sizes::of(style, dice);
    let count = if style.has(Habit::Views) { dice.pick(&[2, 2, 3, 4]) } else { 1 };
    let mut views: Vec<View> =
        (0..count).map(|k| design::view(style, &sizes, titled(style, k), dice)).collect();
    if style.has(Habit::Partial) {
        // The view with most to show is drawn in part again.
        let most = (0..count).max_by_key(|k| views[*k].planes.len()).unwrap_or(0);
        if views[most].planes.len() > 1 {
            let again = partial(style, &views[most].title);
            views.push(design::part(&views[most], most, again, 0));
            ink.show(Habit::Partial);
        }
    }
    let placed = places(style, views, dice);
    for (k, p) in placed.iter().enumerate() {
        (ink.origin, ink.view) = (p.at, k);
        facade::draw(ink, style, &p.view, sizes.pitch, dice);
        show(ink, &p.view);
    }
    if placed.iter().filter(|p| p.view.part_of.is_none()).count() > 1 {
        ink.show(Habit::Views);
    }
    let mut all = whole(&placed);
    if style.has(Habit::Plan) {
        all = super::plan::draw(ink, style, all, placed.len(), dice);
    }
    if style.has(Habit::Border) {
        border(ink, style, all, placed.len() + 1);
    }
    (placed, sizes)
}

fn show(ink: &mut Ink, view: &View) {
    if view.planes.len() > 1 {
        ink.show(Habit::Planes);
    }
    if view.planes.iter().any(|p| matches!(p.top, Top::Gable { .. })) {
        ink.show(Habit::Gables);
    }
    if view.floors.len() > 2 {
        ink.show(Habit::Stories);
    }
}

/// Views in a row, or in rows of two.
fn places(style: &Style, views: Vec<View>, dice: &mut Dice) -> Vec<Placed> {
    let in_row = if views.len() > 2 && dice.odds(0.5) { 2 } else { views.len() };
    let gap = style.n(dice.between(190.0, 320.0));
    let start = if dice.odds(0.5) { [0.0, 0.0] } else { [style.n(1440.0), style.n(-960.0)] };
    let (mut x, mut y, mut high) = (start[0], start[1], 0.0_f64);
    let mut out = Vec::new();
    for (k, view) in views.into_iter().enumerate() {
        if k > 0 && k % in_row == 0 {
            (x, y) = (start[0], y - high - style.n(240.0));
            high = 0.0;
        }
        let r = view.room;
        // Rows share one ground line, feet at one height.
        let at = [x - r.x0, y];
        x += r.width() + gap;
        high = high.max(r.height() + style.n(90.0));
        out.push(Placed { view, at });
    }
    out
}

/// The room of all views with their annotations.
fn whole(placed: &[Placed]) -> Rect {
    placed
        .iter()
        .map(|p| p.view.room.moved(p.at))
        .fold(Rect::new(f64::MAX, f64::MAX, f64::MIN, f64::MIN), |a, b| {
            Rect::new(a.x0.min(b.x0), a.y0.min(b.y0), a.x1.max(b.x1), a.y1.max(b.y1))
        })
}

/// A border of two lines and a title block at its right, with lines and words.
fn border(ink: &mut Ink, style: &Style, all: Rect, view: usize) {
    ink.show(Habit::Border);
    (ink.origin, ink.view) = ([0.0, 0.0], view);
    let n = |v: f64| style.n(v);
    let inner =
        Rect::new(all.x0 - n(150.0), all.y0 - n(170.0), all.x1 + n(420.0), all.y1 + n(130.0));
    ink.ring(Element::Border, &inner.grown(n(24.0)).corners(), true);
    ink.ring(Element::Border, &inner.corners(), style.closed_boards);
    let x = inner.x1 - n(150.0);
    ink.line(Element::Border, [x, inner.y0], [x, inner.y1]);
    let words = ["RESIDENCE", "ELEVATIONS", "DATE", "SCALE", "SHEET", "A-201"];
    for (i, w) in words.iter().enumerate() {
        let y = inner.y0 + n(40.0 * (i + 1) as f64);
        ink.line(Element::Border, [x, y], [inner.x1, y]);
        ink.text(Element::Border, [x + n(6.0), y - n(24.0)], n(12.0), w);
    }
}
