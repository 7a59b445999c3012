//! One run after another: joints that suit the courses near it, pieces from offcuts where they fit.

use std::collections::BTreeMap;

use super::ask::Ask;
use super::boards::{Boards, Taken};
use super::places::{gap, places, sets, span};
use crate::geom::tol::ROUNDING;
use crate::model::joint::{JointRules, Studs};
use crate::model::seam::{Cut, SeamRules};

/// A piece and where it is cut.
pub(super) struct PieceCut {
    pub(super) length: f64,
    pub(super) cut: Cut,
}

/// A run laid.
pub(super) struct Laid {
    pub(super) joints: Vec<f64>,
    pub(super) pieces: Vec<PieceCut>,
}

/// Boards opened so far, and joints by wall and course.
pub(super) struct State {
    boards: Boards,
    joints: BTreeMap<(usize, i32), Vec<f64>>,
    /// Marsaglia's xorshift64 (2003).
    dice: u64,
    /// Which of the tries: the first takes the cheapest always.
    attempt: u64,
}

impl State {
    pub(super) fn new(seed: u64, attempt: u64) -> Self {
        let dice = seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1;
        State { boards: Boards::default(), joints: BTreeMap::new(), dice, attempt }
    }

    pub(super) fn boards(&self) -> usize {
        self.boards.len()
    }

    fn roll(&mut self, n: u64) -> u64 {
        self.dice ^= self.dice << 13;
        self.dice ^= self.dice >> 7;
        self.dice ^= self.dice << 17;
        self.dice % n.max(1)
    }

    pub(super) fn lay(&mut self, ask: &Ask, rules: &SeamRules, joints: &JointRules) -> Laid {
        let (from, to) = span(ask.run, rules);
        if to - from <= rules.stock() + ROUNDING {
            return self.cut(ask, rules, Vec::new());
        }
        let studs: Option<Studs> = joints.studs.get(&ask.run.id).map(|s| s.1);
        let on_studs = places(ask.run, rules, studs);
        let near = self.near(ask, rules);
        let clash = |set: &Vec<f64>| -> usize {
            let clashes = |x: &&f64| near.iter().any(|y| (*x - y).abs() < joints.apart - ROUNDING);
            set.iter().filter(clashes).count()
        };
        let mut all = sets(ask.run, rules, &on_studs, 0);
        if all.iter().all(|s| clash(s) > 0) {
            all.extend(sets(ask.run, rules, &on_studs, 1));
        }
        if all.is_empty() {
            all = sets(ask.run, rules, &places(ask.run, rules, None), 0);
        }
        let mut ranked: Vec<((usize, i64), Vec<f64>)> = Vec::new();
        for s in all {
            ranked.push(((clash(&s), self.cost(ask, rules, &s)), s));
        }
        ranked.sort_by_key(|r| r.0);
        // Later tries take the second or third best now and then, of those that break as little.
        let equal = ranked.iter().take_while(|r| r.0.0 == ranked[0].0.0).count();
        let pick = match self.attempt {
            0 => 0,
            _ => (self.roll(8).saturating_sub(5) as usize).min(equal.saturating_sub(1)),
        };
        if ranked.is_empty() {
            // Nothing joins it within the rules: boards end to end.
            let apart = end_to_end(from, to, rules);
            return self.cut(ask, rules, apart);
        }
        let (_, set) = ranked.swap_remove(pick);
        self.cut(ask, rules, set)
    }

    /// Joints of this wall in the courses that must stay clear.
    fn near(&self, ask: &Ask, rules: &SeamRules) -> Vec<f64> {
        let clear = rules.clear_courses as i32;
        let levels =
            self.joints.range((ask.wall, ask.course - clear)..=(ask.wall, ask.course + clear));
        levels.filter(|((_, c), _)| *c != ask.course).flat_map(|(_, j)| j.iter().copied()).collect()
    }

    /// What a set costs, hundredths of an inch: boards opened, what is left too short to use, and
    /// joints over or under jambs.
    fn cost(&mut self, ask: &Ask, rules: &SeamRules, set: &[f64]) -> i64 {
        let before = self.boards.len();
        let lengths = longest_first(&pieces(ask, rules, set));
        let taken: Vec<Taken> = lengths.iter().map(|l| self.boards.take(*l, rules)).collect();
        let opened = (self.boards.len() - before) as f64 * rules.stock();
        let useless = self.boards.useless();
        taken.iter().rev().for_each(|t| self.boards.back(t, rules));
        let jambs = set.iter().filter(|x| ask.avoid.iter().any(|a| (*x - a).abs() < rules.jamb));
        ((opened + useless + 2.0 * jambs.count() as f64 + 4.0 * set.len() as f64) * 100.0) as i64
    }

    /// Cuts a run's boards between these joints.
    pub(super) fn cut(&mut self, ask: &Ask, rules: &SeamRules, set: Vec<f64>) -> Laid {
        let lengths = pieces(ask, rules, &set);
        let mut order: Vec<usize> = (0..lengths.len()).collect();
        order.sort_by(|a, b| lengths[*b].total_cmp(&lengths[*a]).then(a.cmp(b)));
        let mut cuts = vec![Cut { panel: 0, start: 0.0, end: 0.0 }; lengths.len()];
        for i in order {
            let taken = self.boards.take(lengths[i], rules);
            let start = taken.start();
            cuts[i] = Cut { panel: taken.board, start, end: start + lengths[i] };
        }
        self.joints.entry((ask.wall, ask.course)).or_default().extend(&set);
        let both = lengths.into_iter().zip(cuts);
        let pieces = both.map(|(length, cut)| PieceCut { length, cut }).collect();
        Laid { joints: set, pieces }
    }
}

/// Lengths of the pieces between joints, left to right.
fn pieces(ask: &Ask, rules: &SeamRules, set: &[f64]) -> Vec<f64> {
    let (from, to) = span(ask.run, rules);
    let half = gap(rules) / 2.0;
    let starts = std::iter::once(from).chain(set.iter().map(|x| x + half));
    let ends = set.iter().map(|x| x - half).chain([to]);
    starts.zip(ends).map(|(a, b)| b - a).collect()
}

fn longest_first(lengths: &[f64]) -> Vec<f64> {
    let mut out = lengths.to_vec();
    out.sort_by(|a, b| b.total_cmp(a));
    out
}

/// Joints a board apart.
fn end_to_end(from: f64, to: f64, rules: &SeamRules) -> Vec<f64> {
    let g = gap(rules);
    let count = ((to - from + g) / (rules.stock() + g) - ROUNDING).ceil().max(1.0);
    let each = (to - from + g) / count;
    (1..count as usize).map(|i| from + i as f64 * each - g / 2.0).collect()
}
