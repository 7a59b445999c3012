//! Layer names: by element, by pen, by view, or all on one.

use super::habit::{Layering, Style};
use super::ink::{Element, Entity};

/// Names by element: of the national standard, in words, in German.
fn named(element: Element, set: usize) -> &'static str {
    let [standard, words, german] = match element {
        Element::Wall => ["A-WALL", "Walls", "WAND"],
        Element::Siding => ["A-WALL-PATT", "Siding", "SCHRAFFUR"],
        Element::Trim => ["A-DETL-MEDM", "Trim", "LEISTEN"],
        Element::Window => ["A-GLAZ", "Windows", "FENSTER"],
        Element::WindowTag => ["A-GLAZ-IDEN", "Window-IDEN", "FENSTER-NR"],
        Element::Door => ["A-DOOR", "Doors", "T\u{dc}REN"],
        Element::DoorTag => ["A-DOOR-IDEN", "Door-IDEN", "T\u{dc}R-NR"],
        Element::Roof => ["A-ROOF", "Roof", "DACH"],
        Element::RoofPattern => ["A-ROOF-PATT", "Roof hatch", "DACH-SCHRAFFUR"],
        Element::Stone => ["A-WALL-STON", "Stone", "NATURSTEIN"],
        Element::StonePattern => ["A-WALL-PATT", "Stone hatch", "SCHRAFFUR"],
        Element::Grade => ["C-TOPO", "Grade", "GEL\u{c4}NDE"],
        Element::GradePattern => ["C-TOPO", "Grade hatch", "GEL\u{c4}NDE"],
        Element::Grid => ["S-GRID", "Grid", "ACHSEN"],
        Element::GridTag => ["S-GRID-IDEN", "Grid-IDEN", "ACHSEN-NR"],
        Element::Level => ["A-FLOR-LEVL", "Levels", "H\u{d6}HEN"],
        Element::Mark => ["G-ANNO-SYMB", "Symbols", "SYMBOLE"],
        Element::Note => ["A-ANNO-NOTE", "Notes", "TEXT"],
        Element::Dimension => ["A-ANNO-DIMS", "Dims", "BEMASSUNG"],
        Element::Border => ["G-ANNO-TTLB", "Titleblock", "PLANKOPF"],
        Element::Title => ["A-ANNO-TTLB", "Titles", "TITEL"],
        Element::PlanWall => ["A-WALL-FULL", "Plan walls", "GRUNDRISS"],
        Element::PlanPattern => ["A-FLOR-PATT", "Plan hatch", "GRUNDRISS-SCHRAFFUR"],
        Element::PlanDoor => ["A-DOOR", "Plan doors", "GRUNDRISS-T\u{dc}REN"],
    };
    match set {
        1 => words,
        3 => german,
        _ => standard,
    }
}

/// The pen a thing is drawn with: thin for patterns, heavy for walls.
fn pen(element: Element) -> usize {
    match element {
        Element::Siding
        | Element::RoofPattern
        | Element::StonePattern
        | Element::GradePattern
        | Element::PlanPattern => 1,
        Element::Window | Element::Door | Element::PlanDoor | Element::Trim => 2,
        Element::Wall
        | Element::Roof
        | Element::Stone
        | Element::Grade
        | Element::PlanWall
        | Element::Border => 3,
        Element::Grid | Element::Level | Element::Dimension | Element::Mark => 4,
        _ => 5,
    }
}

/// The colors of pens.
const COLORS: [i16; 6] = [7, 8, 3, 7, 1, 2];

/// The layer of an entity, and its own color where it does not take its layer's.
pub(crate) fn layer(style: &Style, views: &[String], entity: &Entity) -> (String, Option<i16>) {
    let colored = style.words.is_multiple_of(2).then(|| COLORS[pen(entity.element)]);
    match style.layering {
        Layering::Element => {
            let set = if style.words == 3 && style.per_inch() == 1.0 { 0 } else { style.words };
            let name = named(entity.element, set);
            let bound = if set == 2 { "residence$0$" } else { "" };
            (format!("{bound}{name}"), None)
        }
        Layering::Pen => {
            let k = pen(entity.element);
            let name = if style.words < 2 { format!("{k}") } else { format!("PEN-0{k}") };
            (name, None)
        }
        Layering::View => {
            let name = match views.get(entity.view) {
                Some(v) => v.to_uppercase().replace(' ', "-"),
                None if entity.view == views.len() => "PLAN".to_owned(),
                None => "SHEET".to_owned(),
            };
            (name, colored)
        }
        Layering::One => {
            let name = if style.words < 2 { "0" } else { "ELEVATIONS" };
            (name.to_owned(), colored)
        }
    }
}

/// The color of a layer.
pub(crate) fn color(style: &Style, name: &str) -> i16 {
    let digit = name.chars().last().and_then(|c| c.to_digit(10));
    match (style.layering, digit) {
        (Layering::Pen, Some(k)) => COLORS[k as usize % 6],
        _ => 7,
    }
}
