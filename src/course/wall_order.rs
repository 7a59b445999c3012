//! The order in which walls are sided: as the job gives it, else round the house from a corner of its back,
//! either way (common practice, no source: what a crew learns on the first wall shows least there).

use crate::job::Job;
use crate::model::house::House;
use crate::model::receiver::Field;
use crate::model::waiting::Waiting;

/// Quarter turns of the wrap order from the front to the back of a house.
const BACK: usize = 2;
/// Most elevations of which every round is tried, where names do not tell the back.
const FEW: usize = 8;

/// What may wait, and the orders to choose from: walls by their number among `fields`.
pub(super) fn waiting(house: &House, fields: &[Field], job: &Job) -> Waiting {
    Waiting {
        most: job.seams.waiting.most(),
        reach: job.seams.offcuts,
        orders: orders(house, fields, &job.work.walls),
    }
}

fn orders(house: &House, fields: &[Field], given: &[String]) -> Vec<Vec<usize>> {
    if given.is_empty() {
        return rounds(house).into_iter().map(|round| walls(house, fields, &round)).collect();
    }
    // Walls, or elevations with all of theirs, from left to right.
    let left_to_right: Vec<(usize, bool)> =
        (0..house.elevations.len()).map(|e| (e, true)).collect();
    let all = walls(house, fields, &left_to_right);
    let mut out: Vec<usize> = Vec::new();
    for name in given {
        let named = all.iter().copied().filter(|i| is_named(house, &fields[*i], name));
        let new: Vec<usize> = named.filter(|i| !out.contains(i)).collect();
        out.extend(new);
    }
    let rest: Vec<usize> = all.into_iter().filter(|i| !out.contains(i)).collect();
    out.extend(rest);
    vec![out]
}

/// Whether a wall, or the elevation it is in, has this name.
fn is_named(house: &House, field: &Field, name: &str) -> bool {
    let Some(e) = house.elevations.get(field.elevation) else { return false };
    let wall = e.walls.get(field.wall).is_some_and(|w| w.id.eq_ignore_ascii_case(name.trim()));
    wall || e.name.eq_ignore_ascii_case(name.trim())
}

/// Names of the order given that no wall and no elevation has.
pub fn unknown<'a>(house: &House, fields: &[Field], given: &'a [String]) -> Vec<&'a str> {
    let known = |name: &&String| fields.iter().any(|f| is_named(house, f, name));
    given.iter().filter(|name| !known(name)).map(String::as_str).collect()
}

/// Rounds of the house: elevations, each with whether its walls go from left to right. From a corner of the
/// back where names tell which that is, the back first or last; else from any.
fn rounds(house: &House) -> Vec<Vec<(usize, bool)>> {
    let n = house.elevations.len();
    let back: Vec<usize> = (0..n).filter(|e| house.facings.get(*e) == Some(&BACK)).collect();
    let starts: Vec<usize> = match back[..] {
        [back] => vec![back, (back + 1) % n.max(1)],
        _ if n > FEW => vec![0],
        _ => (0..n).collect(),
    };
    // Right edges meet left ones in wrap order.
    let on = |from: usize| (0..n).map(move |k| ((from + k) % n, true)).collect::<Vec<_>>();
    let mut out: Vec<Vec<(usize, bool)>> = Vec::new();
    for from in starts {
        let round = on(from);
        let reversed = round.iter().rev().map(|(e, _)| (*e, false)).collect();
        out.extend([round, reversed]);
    }
    out
}

/// The walls of elevations in order.
fn walls(house: &House, fields: &[Field], round: &[(usize, bool)]) -> Vec<usize> {
    let left = |f: &Field| {
        let wall = house.elevations.get(f.elevation).and_then(|e| e.walls.get(f.wall));
        let xs = wall.into_iter().flat_map(|w| &w.outline).map(|p| p.x);
        xs.fold(f64::INFINITY, f64::min)
    };
    let mut out = Vec::new();
    for (e, rightward) in round {
        let mut here: Vec<usize> =
            (0..fields.len()).filter(|i| fields[*i].elevation == *e).collect();
        here.sort_by(|a, b| left(&fields[*a]).total_cmp(&left(&fields[*b])).then(a.cmp(b)));
        if !rightward {
            here.reverse();
        }
        out.extend(here);
    }
    out
}
