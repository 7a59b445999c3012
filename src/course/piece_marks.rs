//! How the marks of a wall's pieces begin.

use std::collections::BTreeMap;

use crate::model::house::House;
use crate::model::receiver::Field;
use crate::typeface;

/// Most letters of an elevation's name in a mark.
const MOST_LETTERS: usize = 3;

/// The beginnings of piece marks, field by field: as few letters of the elevation's name as tell it
/// apart, and the wall's number. Marks of a zone's set differ from the house's.
pub fn beginnings(house: &House, fields: &[Field]) -> Vec<String> {
    let letters = elevation_letters(house);
    let set = house.zone.map_or(String::new(), |z| format!("Z{}", z + 1));
    fields.iter().map(|f| format!("{set}{}{}", letters[f.elevation], f.wall + 1)).collect()
}

/// The letters that tell each elevation apart; its number where no letters do. A letter that sheets
/// cannot draw tells nothing, and one that is read from the right turns the figures after it round.
fn elevation_letters(house: &House) -> Vec<String> {
    let plain = |name: &str| name.to_uppercase().chars().filter(|c| tells_apart(*c)).collect();
    let names: Vec<String> = house.elevations.iter().map(|e| plain(&e.name)).collect();
    let mut shared: BTreeMap<String, usize> = BTreeMap::new();
    for start in names.iter().flat_map(|n| starts(n)) {
        *shared.entry(start).or_default() += 1;
    }
    let own = |(i, name): (usize, &String)| {
        let own = starts(name).into_iter().find(|s| shared.get(s) == Some(&1));
        own.unwrap_or_else(|| format!("E{}-", i + 1))
    };
    names.iter().enumerate().map(own).collect()
}

fn tells_apart(c: char) -> bool {
    c.is_alphanumeric() && typeface::stands_in_order(c)
}

/// The first letter of a name, its first two, and so on.
fn starts(name: &str) -> Vec<String> {
    let letters: Vec<char> = name.chars().take(MOST_LETTERS).collect();
    (1..=letters.len()).map(|k| letters[..k].iter().collect()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geom::vocabulary::Affine;
    use crate::model::house::DrawnElevation;

    fn letters(names: &[&str]) -> Vec<String> {
        let elevation = |name: &&str| DrawnElevation {
            name: (*name).into(),
            to_source: Affine::IDENTITY,
            walls: vec![],
            grade: vec![],
            level_drawn: true,
            backdrop: vec![],
            texts: vec![],
            zones: vec![],
        };
        let elevations = names.iter().map(elevation).collect();
        elevation_letters(&House { elevations, ..House::default() })
    }

    #[test]
    fn as_few_letters_as_tell_elevations_apart() {
        assert_eq!(letters(&["Front", "Rear", "Left"]), ["F", "R", "L"]);
        assert_eq!(letters(&["Rear", "Right", "Front"]), ["RE", "RI", "F"]);
        // No three letters tell these apart: numbers do.
        assert_eq!(letters(&["North 1", "North 2", "***"]), ["E1-", "E2-", "E3-"]);
    }

    #[test]
    fn only_letters_that_sheets_draw_in_their_order_are_in_marks() {
        assert_eq!(letters(&["正面図", "背面図 East", "Βορράς"]), ["E1-", "E", "Β"]);
        assert_eq!(letters(&["חזית צפון", "الواجهة B", "\u{e000}"]), ["E1-", "B", "E3-"]);
    }
}
