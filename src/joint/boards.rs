//! Boards that pieces are cut from, in order of where their free ends begin, so that the tightest one
//! is found without looking at all of them.

use std::collections::BTreeSet;

use crate::model::seam::SeamRules;

const NEAR: f64 = 1e-6;
/// Useless leftovers are summed in parts of an inch, so that taking back restores the sum exactly.
const PARTS: f64 = (1u64 << 32) as f64;

/// Boards opened so far.
#[derive(Clone, Debug, Default)]
pub(super) struct Boards {
    /// Where the free end of each board begins.
    free: Vec<f64>,
    /// The same with the board's number, rising: bits of figures not below 0 are ordered as they are.
    order: BTreeSet<(u64, usize)>,
    /// What is left too short to use, all together.
    useless: i64,
}

/// A piece taken from a board, to be taken back.
pub(super) struct Taken {
    pub(super) board: usize,
    /// Where the piece begins; `None` for the first piece of a board.
    before: Option<f64>,
}

impl Taken {
    pub(super) fn start(&self) -> f64 {
        self.before.unwrap_or(0.0)
    }
}

impl Boards {
    pub(super) fn len(&self) -> usize {
        self.free.len()
    }

    /// Inches left on all boards in leftovers too short to use.
    pub(super) fn useless(&self) -> f64 {
        self.useless as f64 / PARTS
    }

    /// Cuts a length from the board with the least room that holds it, or from a new one.
    pub(super) fn take(&mut self, length: f64, rules: &SeamRules) -> Taken {
        let fits = |at: f64| at + length <= rules.stock() + NEAR;
        // A little beyond what fits, for rounding.
        let bound = (rules.stock() - length + 2.0 * NEAR).max(0.0);
        let rooms = self.order.range(..=(bound.to_bits(), usize::MAX)).rev();
        let best = rooms.map(|(at, i)| (f64::from_bits(*at), *i)).find(|(at, _)| fits(*at));
        let taken = match best {
            Some((at, board)) => Taken { board, before: Some(at) },
            None => Taken { board: self.free.len(), before: None },
        };
        self.leave(&taken, rules);
        let end = taken.start() + length + rules.kerf;
        match taken.before {
            Some(_) => self.free[taken.board] = end,
            None => self.free.push(end),
        }
        self.enter(taken.board, rules);
        taken
    }

    /// Takes the last piece taken back.
    pub(super) fn back(&mut self, taken: &Taken, rules: &SeamRules) {
        let now = Taken { board: taken.board, before: self.free.get(taken.board).copied() };
        self.leave(&now, rules);
        match taken.before {
            Some(at) => {
                self.free[taken.board] = at;
                self.enter(taken.board, rules);
            }
            None => {
                self.free.pop();
            }
        }
    }

    fn leave(&mut self, taken: &Taken, rules: &SeamRules) {
        if let Some(at) = taken.before {
            self.order.remove(&(at.to_bits(), taken.board));
            self.useless -= useless(at, rules);
        }
    }

    fn enter(&mut self, board: usize, rules: &SeamRules) {
        let at = self.free[board];
        self.order.insert((at.to_bits(), board));
        self.useless += useless(at, rules);
    }
}

/// What is left of a board whose free end begins at `at`, if that is too short to use.
fn useless(at: f64, rules: &SeamRules) -> i64 {
    let left = (rules.stock() - at - rules.kerf).max(0.0);
    if left < rules.shortest { (left * PARTS).round() as i64 } else { 0 }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::seam::{Effort, StockWeight};

    fn rules() -> SeamRules {
        SeamRules {
            steps: 16,
            stocks: vec![StockWeight::single(192.0, 1)],
            lap: -0.125,
            gap: 0.125,
            kerf: 0.125,
            shortest: 16.0,
            stagger: 0.0,
            clear_courses: 1,
            jamb: 6.0,
            seam_short_runs: false,
            effort: Effort::Brief,
            seed: 1,
        }
    }

    /// The tightest board by looking at all.
    fn plainly(free: &mut Vec<f64>, length: f64, rules: &SeamRules) -> (usize, f64) {
        let fits = |at: &f64| at + length <= rules.stock() + NEAR;
        let best = (0..free.len())
            .filter(|i| fits(&free[*i]))
            .max_by(|a, b| free[*a].total_cmp(&free[*b]));
        let board = best.unwrap_or_else(|| {
            free.push(0.0);
            free.len() - 1
        });
        let start = free[board];
        free[board] = start + length + rules.kerf;
        (board, start)
    }

    #[test]
    fn boards_are_those_found_by_looking_at_all() {
        let rules = rules();
        let (mut boards, mut free) = (Boards::default(), Vec::new());
        let mut s = 1u64;
        for n in 0..3000 {
            s = s.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
            // Many of one length, some that no board holds twice, one too long.
            let length = match s >> 60 {
                0..8 => 4.0 * ((s >> 33) % 48 + 1) as f64,
                8..15 => ((s >> 33) % 3000 + 1) as f64 / 16.0,
                _ => 192.0 + ((s >> 33) % 2) as f64,
            };
            if n % 3 == 0 {
                let before = (boards.len(), boards.useless());
                let tried: Vec<Taken> =
                    [length, 30.0, length / 2.0].map(|l| boards.take(l, &rules)).into();
                tried.iter().rev().for_each(|t| boards.back(t, &rules));
                assert_eq!((boards.len(), boards.useless()), before);
            }
            let found = boards.take(length, &rules);
            assert_eq!((found.board, found.start()), plainly(&mut free, length, &rules));
            let left = |at: &f64| (rules.stock() - at - rules.kerf).max(0.0);
            let useless: f64 = free.iter().map(left).filter(|l| *l < rules.shortest).sum();
            assert_eq!(boards.useless(), useless);
        }
        assert!(free.len() > 500);
    }
}
