//! Draws a floor plan beside the elevations: walls as two lines, windows, doors with swings, planks.

use super::dice::Dice;
use super::habit::{Habit, Style};
use super::ink::{Element, Ink, Shape};
use super::shape::{Area, Family, P, Rect};

/// Draws it right of everything; the room of all together.
pub(crate) fn draw(ink: &mut Ink, style: &Style, all: Rect, view: usize, dice: &mut Dice) -> Rect {
    ink.show(Habit::Plan);
    let n = |v: f64| style.n(v);
    (ink.origin, ink.view) = ([all.x1 + n(330.0), all.y0 + n(60.0)], view);
    let out = Rect::new(0.0, 0.0, n(dice.between(260.0, 380.0)), n(dice.between(220.0, 300.0)));
    let thick = n(6.5);
    let inside = out.grown(-thick);
    for r in [out, inside] {
        ink.ring(Element::PlanWall, &r.corners(), style.closed_boards);
    }
    let x = n(out.width() * 0.45 / style.per_inch());
    partition(ink, x, inside, thick, n(40.0));
    swing(ink, style, [x, inside.y0 + n(4.0)], n(34.0));
    swing(ink, style, [n(60.0), 0.0], n(36.0));
    for k in 0..3 {
        let a = n(30.0 + 80.0 * f64::from(k));
        if a + n(40.0) < out.x1 {
            let y = out.y1;
            for d in [0.0, 0.5, 1.0] {
                ink.line(Element::PlanWall, [a, y - thick * d], [a + n(36.0), y - thick * d]);
            }
        }
    }
    let wall = Area::rect(out).minus(&Area::rect(inside));
    if dice.odds(0.6) {
        let family =
            Family { angle: 45.0, base: [0.0, 0.0], step: [0.0, n(4.0)], dashes: Vec::new() };
        ink.pattern(Element::PlanPattern, &wall, &[family], style.all_exploded);
    }
    // A plank floor: level lines, like siding, but seen from above.
    if style.has(Habit::Titles) && dice.odds(0.3) {
        let room = Rect::new(x + thick, inside.y0, inside.x1, inside.y1);
        let family = Family::level(n(5.0), inside.y0);
        ink.pattern(Element::PlanPattern, &Area::rect(room), &[family], style.all_exploded);
    }
    for (words, at) in [("LIVING", [x * 0.3, n(110.0)]), ("KITCHEN", [x + n(50.0), n(110.0)])] {
        ink.text(Element::Note, at, n(6.0), words);
    }
    if style.has(Habit::Titles) {
        ink.text(Element::Title, [n(40.0), -n(60.0)], n(12.0), "FLOOR PLAN");
    }
    let at = out.moved(ink.origin);
    Rect::new(all.x0.min(at.x0), all.y0.min(at.y0), all.x1.max(at.x1), all.y1.max(at.y1))
}

fn partition(ink: &mut Ink, x: f64, inside: Rect, thick: f64, door: f64) {
    for at in [x, x + thick] {
        ink.line(Element::PlanWall, [at, inside.y0 + door], [at, inside.y1]);
    }
    ink.line(Element::PlanWall, [x, inside.y0 + door], [x + thick, inside.y0 + door]);
}

/// A door leaf and the arc it swings.
fn swing(ink: &mut Ink, style: &Style, at: P, leaf: f64) {
    ink.line(Element::PlanDoor, at, [at[0], at[1] + leaf]);
    ink.put(Element::PlanDoor, Shape::Arc(at, leaf, 0.0, 90.0));
    if style.has(Habit::Swings) {
        ink.show(Habit::Swings);
    }
}
