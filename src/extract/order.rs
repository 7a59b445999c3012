//! Elevations in wrap order, and names for walls, openings and fixtures.

use std::collections::{BTreeMap, BTreeSet};

use super::facing::{self, Facing, WRAPS};
use crate::clean::{Destination, clean};
use crate::model::house::{DrawnElevation, House, OpeningKind};

/// Places of elevations in the wrap order that their names tell, if they do.
fn places(names: &[&str]) -> Option<Vec<usize>> {
    // A name of two sides, such as that of a corner, tells no place.
    let place = |name: &str, wrap: &[Facing; 4]| {
        let named = facing::named(name);
        let mut places = named.iter().filter_map(|f| wrap.iter().position(|w| w == f));
        let first = places.next();
        first.filter(|_| places.next().is_none())
    };
    WRAPS.iter().find_map(|wrap| {
        let places: Vec<Option<usize>> = names.iter().map(|n| place(n, wrap)).collect();
        let known: BTreeSet<usize> = places.iter().flatten().copied().collect();
        let all = known.len() == names.len() && names.len() > 1;
        if all { places.into_iter().collect() } else { None }
    })
}

/// The elevations in wrap order if their names tell it, else as they stand.
pub(super) fn wrapped(elevations: Vec<DrawnElevation>) -> House {
    let names: Vec<&str> = elevations.iter().map(|e| e.name.as_str()).collect();
    let Some(places) = places(&names) else {
        return House { elevations, ..House::default() };
    };
    let mut by_place: Vec<(usize, DrawnElevation)> = places.into_iter().zip(elevations).collect();
    by_place.sort_by_key(|(place, _)| *place);
    let (facings, elevations) = by_place.into_iter().unzip();
    House { facings, elevations, ..House::default() }
}

/// What names of walls begin with, elevation by elevation as given: told apart in wrap order.
pub(super) fn slugs(names: &[&str]) -> Vec<String> {
    let mut order: Vec<usize> = (0..names.len()).collect();
    if let Some(places) = places(names) {
        order.sort_by_key(|i| places[*i]);
    }
    let mut taken = Taken::default();
    let mut out = vec![String::new(); names.len()];
    for i in order {
        out[i] = slug(names[i], &mut taken);
    }
    out
}

/// Gives ids: `front-W1`, `front-D1`, `front-F1`, and `front-1` to walls that have none yet.
pub(super) fn name_walls(house: &mut House) {
    let mut taken = Taken::default();
    for e in &mut house.elevations {
        let slug = slug(&e.name, &mut taken);
        for (i, z) in e.zones.iter_mut().enumerate() {
            z.id = format!("{slug}-Z{}", i + 1).into();
        }
        let (mut w, mut d, mut v, mut m) = (0, 0, 0, 0);
        for (i, wall) in e.walls.iter_mut().enumerate() {
            if wall.id.is_empty() {
                wall.id = format!("{slug}-{}", i + 1).into();
            }
            for o in &mut wall.openings {
                let (letter, n) = match o.kind {
                    OpeningKind::Window => ('W', &mut w),
                    OpeningKind::Vent => ('V', &mut v),
                    OpeningKind::Door | OpeningKind::OverheadDoor => ('D', &mut d),
                };
                *n += 1;
                o.id = format!("{slug}-{letter}{n}").into();
            }
            for o in &mut wall.obstacles {
                m += 1;
                o.id = format!("{slug}-F{m}").into();
            }
        }
    }
}

/// The name as plain lower-case words joined by dashes, `elevation` left out, told apart from
/// those taken.
fn slug(name: &str, taken: &mut Taken) -> String {
    let plain = clean(name, Destination::FileName { words: usize::MAX, letters: usize::MAX });
    let words: Vec<&str> =
        plain.split('-').filter(|w| !w.is_empty() && *w != "elevation").take(4).collect();
    let base = if words.is_empty() { "wall".to_owned() } else { words.join("-") };
    let mut out = base.clone();
    while !taken.names.insert(out.clone()) {
        let n = taken.last.entry(base.clone()).or_insert(1);
        *n += 1;
        out = format!("{base}-{n}");
    }
    out
}

/// Names given so far, with the last number each was told apart by.
#[derive(Default)]
struct Taken {
    names: BTreeSet<String>,
    last: BTreeMap<String, usize>,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn slugs_are_plain_and_distinct() {
        let mut taken = Taken::default();
        for (name, plain) in [
            ("FRONT ELEVATION", "front"),
            ("<script>", "script"),
            ("wall", "wall"),
            ("正面", "wall-2"),
            ("wall 3", "wall-3"),
            ("立面", "wall-4"),
        ] {
            assert_eq!(slug(name, &mut taken), plain);
        }
    }
}
