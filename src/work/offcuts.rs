//! Which offcuts wait at the ends of walls.

use std::collections::{BTreeMap, BTreeSet};

use crate::layout::laid::LaidHouse;
use crate::layout::piece::Piece;
use crate::model::ids::{PanelId, WallId};
use crate::model::saw::{OffcutPlan, WaitingAt};

/// On which walls, by their place in the order, the pieces of each panel are.
pub(super) struct OnWalls<'a> {
    order: &'a [WallId],
    places: BTreeMap<&'a str, usize>,
    walls: BTreeMap<&'a str, BTreeSet<usize>>,
    /// Pieces of each panel in the order they are needed: wall, course, then piece, with when each is.
    pieces: BTreeMap<&'a str, Vec<(usize, &'a Piece)>>,
    /// How many pieces have been hung before each wall of the order.
    hung: Vec<usize>,
}

impl<'a> OnWalls<'a> {
    pub(super) fn new(laid: &'a LaidHouse) -> Self {
        let order = laid.order.as_slice();
        let places: BTreeMap<&str, usize> =
            order.iter().enumerate().map(|(i, w)| (w.as_str(), i)).collect();
        let mut by_place: Vec<Vec<&Piece>> = vec![Vec::new(); order.len()];
        for (wall, _, _, piece) in laid.pieces() {
            if let Some(list) = places.get(wall.id.as_str()).and_then(|p| by_place.get_mut(*p)) {
                list.push(piece);
            }
        }
        let mut walls: BTreeMap<&str, BTreeSet<usize>> = BTreeMap::new();
        let mut pieces: BTreeMap<&str, Vec<(usize, &Piece)>> = BTreeMap::new();
        let (mut hung, mut n) = (Vec::new(), 0);
        for (place, list) in by_place.into_iter().enumerate() {
            hung.push(n);
            for piece in list {
                walls.entry(piece.panel.as_str()).or_default().insert(place);
                pieces.entry(piece.panel.as_str()).or_default().push((n, piece));
                n += 1;
            }
        }
        hung.push(n);
        OnWalls { order, places, walls, pieces, hung }
    }

    /// The place of a wall in the order.
    pub(super) fn place(&self, wall: &WallId) -> Option<usize> {
        self.places.get(wall.as_str()).copied()
    }

    /// The wall at a place of the order.
    pub(super) fn wall(&self, place: usize) -> WallId {
        self.order.get(place).cloned().unwrap_or_default()
    }

    /// The walls that a panel serves, by their place, in order.
    pub(super) fn walls_of(&self, panel: &PanelId) -> Vec<usize> {
        self.walls.get(panel.as_str()).into_iter().flatten().copied().collect()
    }

    /// How many offcuts lie about once each number of pieces is hung.
    fn lying(&self) -> Vec<i64> {
        let all = self.hung.last().copied().unwrap_or(0);
        let mut change = vec![0i64; all + 2];
        for cuts in self.pieces.values() {
            let mut before = 0;
            for (n, _) in cuts {
                let now = stretches(cuts, *n);
                change[n + 1] += now - before;
                before = now;
            }
        }
        let mut sum = 0;
        let running = change.into_iter().map(|c| {
            sum += c;
            sum
        });
        running.collect()
    }
}

/// In how many stretches what is still to be cut from a panel lies, once the piece that is the `n`th of the
/// house is hung: pieces that lie beside one another are one offcut.
fn stretches(cuts: &[(usize, &Piece)], n: usize) -> i64 {
    let mut along: Vec<&(usize, &Piece)> = cuts.iter().collect();
    along.sort_by(|a, b| {
        (a.1.half, a.1.start)
            .partial_cmp(&(b.1.half, b.1.start))
            .unwrap_or(std::cmp::Ordering::Equal)
    });
    let to_come = |c: &&(usize, &Piece)| c.0 > n;
    let joined = |a: &&(usize, &Piece), b: &&(usize, &Piece)| {
        to_come(a) == to_come(b) && a.1.half == b.1.half
    };
    let count = along.chunk_by(joined).filter(|s| to_come(&s[0])).count();
    i64::try_from(count).unwrap_or(i64::MAX)
}

/// What waits, counted from what is laid.
pub(super) fn plan(laid: &LaidHouse, on: &OnWalls) -> OffcutPlan {
    let lying = on.lying();
    let at = |n: usize| usize::try_from(lying.get(n).copied().unwrap_or(0)).unwrap_or(0);
    let at_ends = laid.order.iter().enumerate().map(|(place, wall)| {
        let (from, to) = (
            on.hung.get(place).copied().unwrap_or(0),
            on.hung.get(place + 1).copied().unwrap_or(0),
        );
        let peak = (from..=to).map(at).max().unwrap_or(0);
        WaitingAt { wall: wall.clone(), waiting: at(to), peak }
    });
    let several = |walls: &&BTreeSet<usize>| walls.len() > 1;
    let between_walls = on.walls.values().filter(several).count();
    let of_one = |(panel, cuts): (&&str, &Vec<(usize, &Piece)>)| {
        cuts.len() > 1 && on.walls.get(panel).is_some_and(|w| w.len() == 1)
    };
    OffcutPlan {
        most: laid.job.seams.waiting.most(),
        reach: laid.job.seams.offcuts,
        at_ends: at_ends.collect(),
        within_walls: on.pieces.iter().filter(|p| of_one(*p)).count(),
        between_walls,
    }
}
