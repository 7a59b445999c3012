//! Pieces cut from what is at hand: room on panels that are cut already, in place of panels opened anew.

use crate::geom::tol::ROUNDING;
use crate::model::seam::{Cut, RunPlan, SeamRules};

/// Room left on a panel, inches from its left end: a saw cut off each piece beside it is taken off already.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Room {
    /// The panel's number.
    pub panel: usize,
    /// Where it begins.
    pub from: f64,
    /// Where it ends.
    pub to: f64,
}

/// Which end of a panel a piece needs as it left the works.
#[derive(Clone, Copy, PartialEq)]
enum Needs {
    /// The left one: it ends a run.
    Left,
    /// The right one: it begins a run.
    Right,
    /// Neither: it is a run by itself.
    Neither,
    /// Both.
    Whole,
}

/// A piece of a plan: its run and its place in it, what it needs and how long it is.
#[derive(Clone, Copy)]
struct Want {
    run: usize,
    piece: usize,
    needs: Needs,
    length: f64,
}

/// Cuts from the rooms whatever panels of the plan can be spared: panels from `first` on, fullest last. A panel
/// is spared only if all that it gives goes into rooms, and the plan `may` be so then. Returns the pieces that were
/// moved.
pub fn cut_from(
    runs: &mut [RunPlan],
    first: usize,
    rooms: &mut Vec<Room>,
    rules: &SeamRules,
    may: &dyn Fn(&[RunPlan]) -> bool,
) -> usize {
    let stock = rules.stock();
    let mut panels: std::collections::BTreeMap<usize, Vec<Want>> =
        std::collections::BTreeMap::new();
    for (i, run) in runs.iter().enumerate() {
        let last = run.pieces.len().saturating_sub(1);
        for (k, cut) in run.pieces.iter().enumerate().filter(|(_, c)| c.panel >= first) {
            let needs = match (k == 0, k == last) {
                (true, true) => Needs::Neither,
                (true, false) if cut.end >= stock - ROUNDING => Needs::Right,
                (false, true) if cut.start <= ROUNDING => Needs::Left,
                _ => Needs::Whole,
            };
            let length = cut.end - cut.start;
            panels.entry(cut.panel).or_default().push(Want { run: i, piece: k, needs, length });
        }
    }
    let used = |wants: &[Want]| wants.iter().map(|w| w.length).sum::<f64>();
    let mut all: Vec<Vec<Want>> = panels.into_values().collect();
    all.sort_by(|a, b| used(a).total_cmp(&used(b)));
    let mut moved = 0;
    for mut wants in all {
        wants.sort_by(|a, b| b.length.total_cmp(&a.length));
        let mut tried = rooms.clone();
        let places: Option<Vec<(Want, Room)>> =
            wants.iter().map(|w| Some((*w, placed(*w, &mut tried, stock, rules.kerf)?))).collect();
        let Some(places) = places else { continue };
        let mut before: Vec<(Want, Cut)> = Vec::new();
        for (want, at) in &places {
            let cut = &mut runs[want.run].pieces[want.piece];
            before.push((*want, *cut));
            (cut.panel, cut.start, cut.end) = (at.panel, at.from, at.to);
        }
        if may(runs) {
            *rooms = tried;
            moved += places.len();
        } else {
            before.iter().for_each(|(want, cut)| runs[want.run].pieces[want.piece] = *cut);
        }
    }
    moved
}

/// The place of a piece in the room that it leaves least of; what is left of the room stays.
fn placed(want: Want, rooms: &mut Vec<Room>, stock: f64, kerf: f64) -> Option<Room> {
    let fits = |r: &Room| {
        let end = match want.needs {
            Needs::Left => r.from <= ROUNDING,
            Needs::Right => r.to >= stock - ROUNDING,
            Needs::Neither => true,
            Needs::Whole => r.from <= ROUNDING && r.to >= stock - ROUNDING,
        };
        end && r.to - r.from >= want.length - ROUNDING
    };
    let left = |r: &Room| r.to - r.from - want.length;
    let all = rooms.iter().enumerate().filter(|(_, r)| fits(r));
    let (i, room) = all.min_by(|a, b| left(a.1).total_cmp(&left(b.1))).map(|(i, r)| (i, *r))?;
    // A factory end that it does not need is left for others.
    let right = match want.needs {
        Needs::Right => true,
        Needs::Left | Needs::Whole => false,
        Needs::Neither => room.from <= ROUNDING,
    };
    let (at, rest) = if right {
        let from = room.to - want.length;
        (Room { from, ..room }, Room { to: from - kerf, ..room })
    } else {
        let to = room.from + want.length;
        (Room { to, ..room }, Room { from: to + kerf, ..room })
    };
    rooms.remove(i);
    if rest.to - rest.from > ROUNDING {
        rooms.push(rest);
    }
    Some(at)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn run(pieces: &[(usize, f64, f64)]) -> RunPlan {
        let cut = |(panel, start, end): &(usize, f64, f64)| Cut {
            panel: *panel,
            start: *start,
            end: *end,
        };
        RunPlan { pieces: pieces.iter().map(cut).collect(), ..RunPlan::default() }
    }

    #[test]
    fn a_panel_is_spared_where_all_that_it_gives_finds_room() {
        let rules = SeamRules::usual(150.0);
        // A run of two pieces, 60 in from the right end of panel 1 and 50 in from the left end of panel 2; and a run of
        // 40 in by itself from panel 2.
        let runs = [run(&[(1, 90.0, 150.0), (2, 0.0, 50.0)]), run(&[(2, 60.0, 100.0)])];
        // Panel 0 has 60 1/8 in left at its right end: only the right-hand... the piece that begins the run goes there.
        let mut rooms = vec![Room { panel: 0, from: 89.875, to: 150.0 }];
        let mut plan = runs.clone();
        assert_eq!(cut_from(&mut plan, 1, &mut rooms, &rules, &|_| true), 1);
        assert_eq!(plan[0].pieces[0], Cut { panel: 0, start: 90.0, end: 150.0 });
        assert_eq!(plan[0].pieces[1].panel, 2);
        // 1/8 in is left less the saw cut: nothing.
        assert!(rooms.is_empty(), "{rooms:?}");
        // A room without the factory end that is needed serves nobody but a run by itself; panel 2 gives two
        // pieces, and is opened for the other one all the same.
        let mut rooms = vec![Room { panel: 0, from: 20.0, to: 110.0 }];
        let mut plan = runs.clone();
        assert_eq!(cut_from(&mut plan, 1, &mut rooms, &rules, &|_| true), 0);
        assert_eq!(plan, runs);
        // With both ends at hand neither panel is opened.
        let mut rooms = vec![
            Room { panel: 0, from: 89.875, to: 150.0 },
            Room { panel: 3, from: 0.0, to: 91.0 },
        ];
        let mut plan = runs.clone();
        assert_eq!(cut_from(&mut plan, 1, &mut rooms, &rules, &|_| true), 3);
        assert!(plan.iter().flat_map(|r| &r.pieces).all(|c| c.panel == 0 || c.panel == 3));
    }
}
