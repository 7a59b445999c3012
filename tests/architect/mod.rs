//! Elevations as architects draw them, with what is true of them by construction: nothing here knows
//! how the program reads. A seed is a drawing; `habit` lists what it may show.

mod annotate;
mod design;
mod dice;
mod dxf;
mod entities;
mod facade;
mod habit;
mod house;
mod ink;
mod judge;
mod layers;
mod openings;
mod plan;
mod roofs;
pub(crate) mod run;
mod seeded;
mod shape;
mod sheet;
mod slits;
mod tags;
mod truth;
mod windows;

use std::collections::BTreeSet;

use self::dice::Dice;
use self::habit::{Habit, Layering, Style};
use self::ink::{Element, Entity, Ink, Shape};
use self::truth::Truth;

/// A drawing.
pub(crate) struct Drawing {
    pub(crate) seed: u64,
    pub(crate) dxf: String,
    pub(crate) truth: Truth,
    /// What it in fact shows.
    pub(crate) habits: BTreeSet<Habit>,
    /// All that is true of it, as a file.
    pub(crate) json: serde_json::Value,
    /// The unit it is drawn in, as a job names it.
    pub(crate) unit: &'static str,
}

/// What is drawn by a seed, before it is a file.
struct Drawn {
    style: Style,
    ink: Ink,
    placed: Vec<sheet::Placed>,
}

fn drawn(seed: u64) -> Drawn {
    let mut dice = Dice::new(seed);
    let style = Style::of(seed, &mut dice);
    let mut ink = Ink::default();
    let (placed, _) = sheet::draw(&mut ink, &style, &mut dice);
    if style.has(Habit::Dirt) {
        dirty(&mut ink, &style, &mut dice);
    }
    ink.show(match style.layering {
        Layering::Element => Habit::ByElement,
        Layering::Pen => Habit::ByPen,
        Layering::View => Habit::ByView,
        Layering::One => Habit::OneLayer,
    });
    if style.has(Habit::Metric) {
        ink.show(Habit::Metric);
    }
    // The oldest format names no unit.
    if style.has(Habit::WrongHeader) && style.version > habit::Version::R12 {
        ink.show(Habit::WrongHeader);
    }
    Drawn { style, ink, placed }
}

/// The habits that the drawing of a seed shows.
pub(crate) fn shown(seed: u64) -> BTreeSet<Habit> {
    drawn(seed).ink.shown
}

/// The drawing of a seed.
pub(crate) fn drawing(seed: u64) -> Drawing {
    let Drawn { style, ink, placed } = drawn(seed);
    let views: Vec<String> = placed.iter().map(|p| p.view.title.clone()).collect();
    let truth = Truth::of(&placed, &style);
    let json = truth.json(seed, &style, &ink);
    let unit = style.unit.word;
    Drawing { seed, dxf: dxf::written(&ink, &style, &views), truth, habits: ink.shown, json, unit }
}

/// Lines twice, lines of no length, ends a hair apart.
fn dirty(ink: &mut Ink, style: &Style, dice: &mut Dice) {
    ink.show(Habit::Dirt);
    let firm = [Element::Wall, Element::Trim, Element::Roof, Element::Window];
    let mut more: Vec<Entity> = Vec::new();
    for e in &mut ink.entities {
        if !firm.contains(&e.element) {
            continue;
        }
        if let Shape::Line(a, b) = &mut e.shape {
            if dice.odds(0.06) {
                let shape = Shape::Line(*a, *b);
                more.push(Entity { element: e.element, view: e.view, shape });
            }
            if dice.odds(0.02) {
                let shape = Shape::Line(*b, *b);
                more.push(Entity { element: e.element, view: e.view, shape });
            }
            if dice.odds(0.05) {
                a[0] += 0.00004 * style.per_inch();
            }
        }
    }
    ink.entities.extend(more);
}
