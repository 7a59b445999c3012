//! How the marks of a wall's pieces begin.

use std::collections::BTreeMap;

use crate::model::house::House;
use crate::model::receiver::Field;
use crate::typeface;

/// Most letters of an elevation's name in a mark.
const MOST_LETTERS: usize = 3;

/// Letters of the sides that elevations are named after: the same on every job, whatever other elevations
/// there are, so that a crew reads the marks without a key. Common practice, no source.
const SIDES: [(&str, &str); 13] = [
    ("FRONT", "F"),
    ("REAR", "RE"),
    ("BACK", "B"),
    ("LEFT", "L"),
    ("RIGHT", "RI"),
    ("NORTHEAST", "NE"),
    ("NORTHWEST", "NW"),
    ("SOUTHEAST", "SE"),
    ("SOUTHWEST", "SW"),
    ("NORTH", "N"),
    ("SOUTH", "S"),
    ("EAST", "E"),
    ("WEST", "W"),
];

/// The beginnings of piece marks, field by field: letters of the elevation, and the wall's number. Marks of a zone's set differ from the house's.
pub fn beginnings(house: &House, fields: &[Field]) -> Vec<String> {
    let letters = elevation_letters(house);
    let set = house.zone.map_or(String::new(), |z| format!("Z{}", z + 1));
    fields.iter().map(|f| format!("{set}{}{}", letters[f.elevation], f.wall + 1)).collect()
}

/// The letters of each elevation: those of the side it is named after; else the fewest that tell it apart;
/// its number where no letters do. A letter that sheets cannot draw tells nothing, and one that is read
/// from the right turns the figures after it round.
fn elevation_letters(house: &House) -> Vec<String> {
    let plain = |name: &str| name.to_uppercase().chars().filter(|c| tells_apart(*c)).collect();
    let names: Vec<String> = house.elevations.iter().map(|e| plain(&e.name)).collect();
    let mut sides: BTreeMap<&str, usize> = BTreeMap::new();
    let side_of: Vec<Option<&str>> = house.elevations.iter().map(|e| side(&e.name)).collect();
    for letters in side_of.iter().flatten() {
        *sides.entry(letters).or_default() += 1;
    }
    let mut shared: BTreeMap<String, usize> = BTreeMap::new();
    for start in names.iter().flat_map(|n| starts(n)) {
        *shared.entry(start).or_default() += 1;
    }
    let own = |(i, name): (usize, &String)| {
        if let Some(letters) = side_of[i].filter(|l| sides.get(l) == Some(&1)) {
            return letters.to_owned();
        }
        let free = |s: &String| shared.get(s) == Some(&1) && !sides.contains_key(s.as_str());
        starts(name).into_iter().find(free).unwrap_or_else(|| format!("E{}-", i + 1))
    };
    names.iter().enumerate().map(own).collect()
}

/// The letters of the one side that a name has among its words, or of two that make one: `North-East`.
fn side(name: &str) -> Option<&'static str> {
    let upper = name.to_uppercase();
    let words: Vec<&str> = upper.split(|c: char| !c.is_alphanumeric()).collect();
    let of = |word: &str| SIDES.iter().find(|(w, _)| *w == word).map(|(_, letters)| *letters);
    let both = words.windows(2).find_map(|w| of(&w.concat()));
    let mut single = words.iter().filter_map(|w| of(w));
    match (both, single.next(), single.next()) {
        (Some(both), ..) => Some(both),
        (None, Some(one), None) => Some(one),
        _ => None,
    }
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
    fn a_side_has_the_same_letters_on_every_job() {
        let alone = ["Front", "Rear", "Left", "RIGHT ELEVATION", "Elevation - North"];
        let own = ["F", "RE", "L", "RI", "N"];
        for (name, own) in alone.iter().zip(own) {
            assert_eq!(letters(&[name]), [own]);
        }
        assert_eq!(letters(&alone), own);
        assert_eq!(letters(&["North-East", "North", "southwest"]), ["NE", "N", "SW"]);
        // Two of one side, or two sides in one name, are told apart as other names are.
        assert_eq!(letters(&["Front", "Garage front"]), ["FR", "G"]);
        assert_eq!(letters(&["Left and right of court", "Barn"]), ["L", "B"]);
        // Letters of a side are no other elevation's.
        assert_eq!(letters(&["Barn", "Back"]), ["BAR", "B"]);
    }

    #[test]
    fn as_few_letters_as_tell_other_elevations_apart() {
        assert_eq!(letters(&["Court", "Alley"]), ["C", "A"]);
        // No three letters tell these apart: numbers do.
        assert_eq!(letters(&["North 1", "North 2", "***"]), ["E1-", "E2-", "E3-"]);
    }

    #[test]
    fn only_letters_that_sheets_draw_in_their_order_are_in_marks() {
        assert_eq!(letters(&["正面図", "背面図 East", "Βορράς"]), ["E1-", "E", "Β"]);
        assert_eq!(letters(&["חזית צפון", "الواجهة B", "\u{e000}"]), ["E1-", "B", "E3-"]);
    }
}
