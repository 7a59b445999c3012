//! The lower bound: no layout under the rules uses fewer panels.
//!
//! A dual-feasible function f gives each share of a panel a value such that the pieces of one panel
//! never sum to more than 1. So the sum over all runs of the least value that the run's pieces can
//! have bounds the panels from below. All arithmetic is in whole numbers.

use std::collections::BTreeMap;

use super::options::Way;
use super::part::Digest;
use super::rules::Rules;
use crate::model::seam::{Certificate, Dual, Exclusion};

/// Value of a piece of `length` under `dual`, and what a whole panel is worth, both whole numbers.
#[inline]
pub(super) fn value(dual: Dual, length: i64, rules: &Rules) -> i64 {
    let (w, room) = ((length + rules.kerf).min(rules.room()), rules.room());
    match dual {
        Dual::Length => w,
        Dual::Rounded(k) => {
            let n = (k + 1) * w;
            if n % room == 0 { k * w } else { n / room * room }
        }
        Dual::Clipped(e) => {
            if w < e {
                0
            } else if w > room - e {
                room
            } else {
                w
            }
        }
        Dual::Counted(e) => {
            let most = room / e;
            if 2 * w > room {
                most - (room - w) / e
            } else if w >= e {
                1
            } else {
                0
            }
        }
    }
}

pub(super) fn scale(dual: Dual, rules: &Rules) -> i64 {
    match dual {
        Dual::Length | Dual::Clipped(_) => rules.room(),
        Dual::Rounded(k) => k * rules.room(),
        Dual::Counted(e) => rules.room() / e,
    }
}

fn functions(rules: &Rules) -> Vec<Dual> {
    let room = rules.room();
    let mut out = vec![Dual::Length];
    out.extend((1..=12).map(Dual::Rounded));
    // Steps of an inch up to half a panel.
    let steps = (1..).map(|i| rules.steps.of(i)).take_while(|e| 2 * e <= room);
    out.extend(steps.clone().map(Dual::Clipped));
    out.extend(steps.map(Dual::Counted));
    out
}

/// Lengths round which a function bends or jumps, rising.
pub(super) fn kinks(dual: Dual, rules: &Rules) -> Vec<i64> {
    let room = rules.room();
    let charged: Vec<i64> = match dual {
        Dual::Length => Vec::new(),
        Dual::Rounded(k) => (1..=k).map(|i| i * room / (k + 1)).collect(),
        Dual::Clipped(e) => vec![e, room - e],
        Dual::Counted(e) => {
            let down = (1..=room / e).map(|i| room - i * e).take_while(|w| 2 * w > room);
            down.chain([e, room / 2]).collect()
        }
    };
    let round = charged.iter().flat_map(|w| (-1..=1).map(move |d| w - rules.kerf + d));
    let mut kinks: Vec<i64> = round.filter(|l| *l >= 0 && *l <= rules.panel).collect();
    kinks.sort_unstable();
    kinks.dedup();
    kinks
}

/// Many kinds of runs ask for so many values that a table of all pays.
const MANY: usize = 12;

/// Values of pieces, and the lengths round which they bend or jump: between those the values run
/// straight, so that a sum of two is least at one of them.
struct Table<'a> {
    dual: Dual,
    rules: &'a Rules,
    /// By length; empty if worked out when asked.
    values: Vec<i64>,
    kinks: Vec<i64>,
    whole: i64,
}

impl<'a> Table<'a> {
    fn new(dual: Dual, rules: &'a Rules, kinds: usize) -> Self {
        let values = match kinds > MANY {
            true => (0..=rules.panel).map(|l| value(dual, l, rules)).collect(),
            false => Vec::new(),
        };
        Table { dual, rules, values, kinks: kinks(dual, rules), whole: scale(dual, rules) }
    }

    fn at(&self, length: i64) -> i64 {
        if self.values.is_empty() {
            return value(self.dual, length, self.rules);
        }
        usize::try_from(length).ok().and_then(|l| self.values.get(l)).copied().unwrap_or(self.whole)
    }

    /// Least value of both end pieces of a way.
    fn ends(&self, w: &Way) -> i64 {
        let mirrored = self.kinks.iter().map(|l| w.sum - l);
        let inside =
            self.kinks.iter().copied().chain(mirrored).filter(|a| *a > w.least && *a < w.most);
        let tried = [w.least, w.most].into_iter().chain(inside);
        tried.map(|a| self.at(a) + self.at(w.sum - a)).min().unwrap_or(0)
    }
}

/// Least value a run can have.
fn least(cover: i64, one_piece: bool, ways: &[Way], table: &Table) -> i64 {
    let one = one_piece.then(|| table.at(cover));
    let seamed = ways.iter().map(|w| (w.k - 2) * table.whole + table.ends(w));
    one.into_iter().chain(seamed).min().unwrap_or(0)
}

/// The best bound over all functions tried.
pub(super) fn bound(digest: &Digest) -> Certificate {
    let rules = &digest.rules;
    // Runs of one length are alike to the bound.
    let mut kinds: BTreeMap<(i64, bool), (i64, Vec<Way>)> = BTreeMap::new();
    for p in &digest.parts {
        kinds
            .entry((p.cover, p.one_piece))
            .or_insert_with(|| (0, p.ways[..p.lawful].to_vec()))
            .0 += 1;
    }
    let mut best = Certificate { steps: rules.steps.0, ..Certificate::default() };
    for dual in functions(rules) {
        let table = Table::new(dual, rules, kinds.len());
        let whole = table.whole;
        let sum: i64 = kinds
            .iter()
            .map(|((cover, one), (n, ways))| n * least(*cover, *one, ways, &table))
            .sum();
        let panels = usize::try_from((sum + whole - 1) / whole).unwrap_or(0);
        if panels > best.bound || best.scale == 0 {
            best = Certificate { bound: panels, function: dual, sum, scale: whole, ..best };
        }
    }
    best.excludes = excludes();
    best
}

/// What no bound here looks at.
pub(super) fn excludes() -> Vec<Exclusion> {
    vec![Exclusion::SeamPlaces, Exclusion::RippedHalves]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_least_of_two_ends_is_found_at_a_kink() {
        // Against every first piece, in a table and without.
        let r = Rules { shortest: 3, ..Rules::plain(40, 2) };
        let mut duals = functions(&r);
        duals.extend((1..=21).map(Dual::Clipped));
        duals.extend((1..=21).map(Dual::Counted));
        for dual in duals {
            for kinds in [0, 99] {
                let table = Table::new(dual, &r, kinds);
                for sum in 6..=80 {
                    let way =
                        Way { k: 2, sum, least: 3.max(sum - 40), most: 40.min(sum - 3), whole: 0 };
                    let all = (way.least..=way.most).map(|a| table.at(a) + table.at(sum - a));
                    assert_eq!(Some(table.ends(&way)), all.min(), "{dual:?} {sum}");
                }
            }
        }
    }

    #[test]
    fn no_panel_full_of_pieces_is_worth_more_than_one() {
        // Every multiset of pieces that fits a small panel, for every function.
        let r = Rules::plain(40, 2);
        let mut duals = functions(&r);
        duals.extend((1..=21).map(Dual::Clipped));
        duals.extend((1..=21).map(Dual::Counted));
        for dual in duals {
            let v: Vec<i64> = (0..=r.panel).map(|l| value(dual, l, &r)).collect();
            // Greatest value of pieces that fit a room: an unbounded knapsack.
            let mut most = vec![0i64; r.room() as usize + 1];
            for room in 1..most.len() {
                for l in 1..=r.panel {
                    let w = (l + r.kerf) as usize;
                    if w <= room {
                        most[room] = most[room].max(most[room - w] + v[l as usize]);
                    }
                }
            }
            assert!(most[r.room() as usize] <= scale(dual, &r), "{dual:?}");
        }
    }
}
