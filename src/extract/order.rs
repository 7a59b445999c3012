//! Elevations in wrap order, and names for walls, openings and fixtures.

use std::collections::{BTreeMap, BTreeSet};

use super::facing::{self, Facing, WRAPS};
use crate::clean::{Destination, clean};
use crate::model::house::{DrawnElevation, House, OpeningKind};

/// The elevations in wrap order if their names tell it, else as they stand.
pub(super) fn wrapped(mut elevations: Vec<DrawnElevation>) -> House {
    // A name of two sides, such as that of a corner, tells no place.
    let place = |e: &DrawnElevation, wrap: &[Facing; 4]| {
        let named = facing::named(&e.name);
        let mut places = named.iter().filter_map(|f| wrap.iter().position(|w| w == f));
        let first = places.next();
        first.filter(|_| places.next().is_none())
    };
    for wrap in &WRAPS {
        let places: Vec<Option<usize>> = elevations.iter().map(|e| place(e, wrap)).collect();
        let mut known: Vec<usize> = places.iter().flatten().copied().collect();
        known.sort_unstable();
        known.dedup();
        if known.len() == elevations.len() && elevations.len() > 1 {
            elevations.sort_by_key(|e| place(e, wrap));
            return House { facings: known, elevations, ..House::default() };
        }
    }
    House { elevations, ..House::default() }
}

/// Gives ids: `front-1`, `front-W1`, `front-D1`, `front-M1`.
pub(super) fn name_walls(house: &mut House) {
    let mut taken = Taken::default();
    for e in &mut house.elevations {
        let slug = slug(&e.name, &mut taken);
        for (i, z) in e.zones.iter_mut().enumerate() {
            z.id = format!("{slug}-Z{}", i + 1).into();
        }
        let (mut w, mut d, mut v, mut m) = (0, 0, 0, 0);
        for (i, wall) in e.walls.iter_mut().enumerate() {
            wall.id = format!("{slug}-{}", i + 1).into();
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
