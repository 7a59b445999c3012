//! Places windows and doors on a plane: head to head by story, clear of one another.

use super::design::Rooms;
use super::dice::Dice;
use super::habit::{Habit, Style};
use super::house::{Kind, Opening};
use super::shape::Rect;

/// Openings of a plane, with so many doors on its first story.
pub(crate) fn placed(style: &Style, rooms: &Rooms, doors: usize, dice: &mut Dice) -> Vec<Opening> {
    let wide = rooms.x[1] - rooms.x[0];
    let slots = ((wide / style.n(76.0)).floor() as usize).max(1);
    let slot = wide / slots as f64;
    let door = (doors > 0).then(|| dice.count(0, slots - 1));
    // One window may stand across the band, in the stairs.
    let across = (rooms.band && style.has(Habit::Straddling) && slots > 1)
        .then(|| (door.unwrap_or(0) + 1) % slots);
    let mut out = Vec::new();
    for story in 0..rooms.stories {
        let height = style.n(dice.pick(&[36.0, 42.0, 48.0, 54.0]));
        for s in 0..slots {
            let middle = rooms.x[0] + (s as f64 + 0.5) * slot;
            let cell = Cell { middle, room: slot, floor: story as f64 * rooms.story };
            if across == Some(s) && story < 2 {
                if story == 0 {
                    out.push(stair(style, rooms, &cell));
                }
            } else if story == 0 && door == Some(s) {
                out.push(a_door(style, rooms, &cell, dice));
            } else if dice.odds(0.8) {
                out.push(window(style, rooms, &cell, height, dice));
            }
        }
    }
    out.extend(in_gable(style, rooms));
    out
}

/// Room for one opening.
struct Cell {
    middle: f64,
    room: f64,
    floor: f64,
}

fn cased(kind: Kind, unit: Rect, casing: f64, sashes: usize) -> Opening {
    let foot = if kind == Kind::Window { unit.y0 - casing } else { unit.y0 };
    let outer = Rect::new(unit.x0 - casing, foot, unit.x1 + casing, unit.y1 + casing);
    Opening { kind, unit, outer, sashes }
}

fn across(style: &Style, cell: &Cell, inches: f64) -> (f64, f64) {
    let wide = style.n(inches);
    let x = style.n((cell.middle - wide / 2.0) / style.per_inch());
    (x, x + wide)
}

fn window(style: &Style, rooms: &Rooms, cell: &Cell, height: f64, dice: &mut Dice) -> Opening {
    let room = (cell.room - 2.0 * rooms.casing) / style.per_inch() - 16.0;
    let sizes: Vec<f64> =
        [24.0, 30.0, 36.0, 60.0, 72.0].into_iter().filter(|w| *w <= room.max(24.0)).collect();
    let inches = dice.pick(&sizes);
    let (x0, x1) = across(style, cell, inches);
    let head = cell.floor + style.n(82.0);
    let mut o = cased(
        Kind::Window,
        Rect::new(x0, head - height, x1, head),
        rooms.casing,
        if inches >= 60.0 { 2 } else { 1 },
    );
    // A sill near the stone's top stands on it.
    if cell.floor == 0.0 && (o.outer.y0 - rooms.from).abs() < style.n(5.0) && rooms.from > 0.0 {
        o.outer.y0 = rooms.from;
        o.unit.y0 = rooms.from + rooms.casing;
    }
    o
}

fn stair(style: &Style, rooms: &Rooms, cell: &Cell) -> Opening {
    let (x0, x1) = across(style, cell, 30.0);
    let middle = rooms.story;
    let unit = Rect::new(x0, middle - style.n(34.0), x1, middle + style.n(46.0));
    cased(Kind::Window, unit, rooms.casing, 1)
}

fn a_door(style: &Style, rooms: &Rooms, cell: &Cell, dice: &mut Dice) -> Opening {
    let room = (cell.room - 2.0 * rooms.casing) / style.per_inch() - 16.0;
    let head = cell.floor + style.n(82.0);
    let (kind, inches) =
        if room >= 96.0 && dice.odds(0.6) { (Kind::Overhead, 96.0) } else { (Kind::Door, 36.0) };
    let (x0, x1) = across(style, cell, inches);
    cased(kind, Rect::new(x0, cell.floor, x1, head), rooms.casing, 1)
}

/// A small window in a gable that has room for it.
fn in_gable(style: &Style, rooms: &Rooms) -> Option<Opening> {
    let [from, peak] = rooms.gable?;
    let rise = peak - from;
    if rise < style.n(76.0) {
        return None;
    }
    let middle = (rooms.x[0] + rooms.x[1]) / 2.0;
    let cell = Cell { middle, room: style.n(40.0), floor: from };
    let (x0, x1) = across(style, &cell, 22.0);
    let y = from + style.n(8.0) + rooms.casing;
    Some(cased(Kind::Window, Rect::new(x0, y, x1, y + style.n(24.0)), rooms.casing, 1))
}
