//! The proof by prices, worked out again: that no pieces of one panel are worth more than it, and what all
//! runs are worth at least. Whole numbers; every length of an end piece is looked at.

use std::collections::BTreeMap;

use super::dual::PanelFrame;
use crate::model::price_list::PriceList;

/// Prices by length in steps, looked up.
pub(super) struct Priced {
    /// Of end pieces, from 0 to a whole panel.
    ends: Vec<i128>,
    /// Lengths from which on they are worth more than a step less, but for what every step is worth.
    jumps: Vec<usize>,
    /// Of runs of one piece.
    seamless: BTreeMap<i128, i128>,
}

/// Most steps of a panel that are looked at.
const MOST: i128 = 1 << 17;

impl Priced {
    /// Looks a list up; none where it is out of order, or a price is under nothing.
    pub(super) fn new(list: &PriceList, f: &PanelFrame) -> Option<Self> {
        let rising = |lengths: Vec<i64>| lengths.windows(2).all(|w| w[0] < w[1]);
        let in_order = rising(list.ends.iter().map(|e| e.from).collect())
            && rising(list.seamless.iter().map(|p| p.length).collect())
            && list.ends.iter().all(|e| e.from > 0 && e.more >= 0)
            && list.seamless.iter().all(|p| p.length > 0 && p.price >= 0)
            && list.beyond >= 0
            && f.panel <= MOST;
        if !in_order {
            return None;
        }
        let mut ends = Vec::new();
        let mut at = 0i128;
        for length in 0..=f.panel {
            let first = list.ends.first().is_some_and(|e| length > i128::from(e.from));
            at += if first { i128::from(list.beyond) } else { 0 };
            let jump = list.ends.iter().find(|e| i128::from(e.from) == length);
            at += jump.map_or(0, |e| i128::from(e.more));
            ends.push(at);
        }
        let jumps = list.ends.iter().filter_map(|e| usize::try_from(e.from).ok());
        Some(Priced {
            jumps: jumps.filter(|l| *l < ends.len()).collect(),
            ends,
            seamless: list
                .seamless
                .iter()
                .map(|p| (i128::from(p.length), i128::from(p.price)))
                .collect(),
        })
    }

    /// The most that pieces of one panel are worth; `runs` has the lengths of runs that one panel covers, and
    /// how many there are.
    pub(super) fn dearest(&self, f: &PanelFrame, runs: &BTreeMap<i128, i128>) -> i128 {
        let room = usize::try_from(f.panel + f.kerf).unwrap_or(0);
        // By the room taken up: both ends first, then one run after another.
        let mut worth: Vec<i128> = (0..=room).map(|w| self.two_ends(w, f)).collect();
        for (length, price) in &self.seamless {
            let Ok(width) = usize::try_from(length + f.kerf) else { continue };
            let fit = (room / width.max(1)) as i128;
            for _ in 0..runs.get(length).copied().unwrap_or(0).min(fit) {
                for w in (width..=room).rev() {
                    worth[w] = worth[w].max(worth[w - width] + price);
                }
            }
        }
        worth.last().copied().unwrap_or(0)
    }

    /// The most that a left and a right end piece are worth in a room, each with its saw cut. A piece that
    /// is cut back to where its price last jumped leaves the other as much more as it loses.
    fn two_ends(&self, room: usize, f: &PanelFrame) -> i128 {
        let kerf = usize::try_from(f.kerf).unwrap_or(0);
        let longest = self.ends.len() - 1;
        let of = |room: usize| match room.checked_sub(kerf) {
            Some(length) => self.ends[length.min(longest)],
            None => 0,
        };
        let beside = self.jumps.iter().filter(|l| **l + kerf <= room);
        beside.map(|l| self.ends[*l] + of(room - l - kerf)).fold(of(room), i128::max)
    }

    /// The least that a run of `cover` is worth: over one piece, and over every first piece of the two
    /// numbers of pieces that can occur, a whole panel being worth `whole`.
    pub(super) fn least(&self, cover: i128, whole: i128, f: &PanelFrame) -> i128 {
        let end = |length: i128| self.ends[usize::try_from(length).unwrap_or(0)];
        let seamless = || self.seamless.get(&cover).copied().unwrap_or(0);
        let mut best = (cover <= f.panel).then(seamless);
        if cover > f.panel || f.short_seams {
            let first = ((cover - f.lap + f.panel - f.lap - 1) / (f.panel - f.lap)).max(2);
            for pieces in [first, first + 1] {
                let both = cover + (pieces - 1) * f.lap - (pieces - 2) * f.panel;
                let lawful = f.shortest.max(both - f.panel)..=f.panel.min(both - f.shortest);
                let ends = lawful.map(|a| end(a) + end(both - a)).min();
                let worth = ends.map(|e| (pieces - 2) * whole + e);
                best = [best, worth].into_iter().flatten().min();
            }
        }
        best.unwrap_or(0)
    }
}
