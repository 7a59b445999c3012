//! The bound by prices of what one panel can give: at most one left and one right end piece and any
//! pieces between. Prices under which no such panel is worth more than one make the least worth of all
//! runs a bound (Gilmore and Gomory 1961); the best prices are found with the panels and partings that
//! they leave too dear or too cheap, and the lengths between which they must tell apart, added in turn.
//! What is concluded is worked out from prices in whole numbers.

use std::collections::BTreeMap;

use super::options::Way;
use super::part::Digest;
use super::priced::{Prices, Stock};
use crate::master::Master;
use crate::model::price_list::{EndPrice, PiecePrice, PriceList};
use crate::model::seam::{Certificate, Dual};

/// Differences in prices that are none.
const ALIKE: f64 = 1e-7;
/// Numbers looked at before the search for a layout: some milliseconds.
pub(super) const FIRST_LOOK: u64 = 4_000_000;
/// The same in all, where a gap is left after it.
const LONG_LOOK: u64 = 60_000_000;
/// The same where few offcuts may wait: the bound leaves that out, and is seldom met.
const NEXT_LOOK: u64 = 12_000_000;

/// How long a gap that the search has left is looked at.
pub(super) fn last_look(digest: &Digest) -> u64 {
    if digest.rules.travel.is_some() { NEXT_LOOK } else { LONG_LOOK }
}
/// Most exchanges of columns at a time.
const EXCHANGES: usize = 1000;
/// Most lengths told apart anew at a time.
const NEW_LENGTHS: usize = 6;

/// Runs that are alike to the bound.
struct Kind {
    runs: usize,
    /// Its place among the runs of one piece.
    one: Option<usize>,
    ways: Vec<Way>,
}

/// A bound with its prices.
struct Proof {
    bound: usize,
    /// What all runs are worth at least, and what a panel is.
    sum: i64,
    scale: i64,
    list: PriceList,
}

/// The search for prices, which can be taken up again.
pub(super) struct PatternBound {
    search: Search,
    known: usize,
    best: Option<Prices>,
    /// The prices are the best there are.
    settled: bool,
    effort: u64,
}

impl PatternBound {
    /// For a house of which a bound is known.
    pub(super) fn new(digest: &Digest, known: usize) -> Self {
        let search = Search::new(digest);
        PatternBound { search, known, best: None, settled: false, effort: 0 }
    }

    /// The bound that is known by now.
    pub(super) fn bound(&self) -> usize {
        self.known
    }

    /// Looks for prices that give a bound of `wanted` panels, until so many numbers have been looked at in
    /// all.
    pub(super) fn raise(&mut self, wanted: usize, most_effort: u64) {
        while self.known < wanted && !self.settled {
            if self.effort + self.search.master.effort >= most_effort {
                return;
            }
            let (bound, prices, more) = self.search.step(&mut self.effort);
            self.settled = !more;
            if bound > self.known {
                self.known = bound;
                self.best = Some(prices);
            }
        }
    }

    /// The certificate of the bound: `before` where prices gave no more.
    pub(super) fn certificate(&self, before: Certificate) -> Certificate {
        let Some(best) = &self.best else { return before };
        // In the roundest numbers that say the same.
        let proof = |places| self.search.proof(best, 10f64.powi(places));
        let proofs: Vec<Proof> = (3..=9).filter_map(proof).collect();
        let most = proofs.iter().map(|p| p.bound).max().unwrap_or(0);
        let Some(proof) = proofs.into_iter().find(|p| p.bound == most && most > before.bound)
        else {
            return before;
        };
        Certificate {
            bound: proof.bound,
            function: Dual::Length,
            sum: proof.sum,
            scale: proof.scale,
            prices: Some(proof.list),
            ..before
        }
    }
}

struct Search {
    stock: Stock,
    shortest: i64,
    kinds: Vec<Kind>,
    master: Master,
    /// Rows: of end pieces at least so long, by length; of their length beyond the shortest; of runs of one
    /// piece; of seamed runs.
    lengths: BTreeMap<i64, usize>,
    beyond: usize,
    ones: Vec<usize>,
    seamed: Vec<Option<usize>>,
    /// Columns with end pieces, given or taken.
    ends: Vec<(usize, Vec<i64>, f64)>,
}

impl Search {
    fn new(digest: &Digest) -> Self {
        let rules = &digest.rules;
        let mut alike: BTreeMap<(i64, bool), (usize, Vec<Way>)> = BTreeMap::new();
        for p in &digest.parts {
            let ways = || (0, p.ways[..p.lawful].to_vec());
            alike.entry((p.cover, p.one_piece)).or_insert_with(ways).0 += 1;
        }
        let mut stock = Stock { panel: rules.panel, kerf: rules.kerf, ones: Vec::new() };
        let mut kinds = Vec::new();
        for ((cover, one_piece), (runs, ways)) in alike {
            let one = one_piece.then_some(stock.ones.len());
            stock.ones.extend(one_piece.then_some((cover, runs)));
            kinds.push(Kind { runs, one, ways });
        }
        let mut search = Search {
            stock,
            shortest: rules.shortest.min(rules.panel),
            kinds,
            master: Master::default(),
            lengths: BTreeMap::new(),
            beyond: 0,
            ones: Vec::new(),
            seamed: Vec::new(),
            ends: Vec::new(),
        };
        search.rows();
        search
    }

    /// The first rows: what every run asks for, at worst met by panels of its own.
    fn rows(&mut self) {
        let mut next = 0;
        let mut row = |master: &mut Master, least: f64, missing: f64| {
            master.row(least, missing, &[]);
            next += 1;
            next - 1
        };
        let (shortest, panel) = (self.shortest, self.stock.panel);
        let half = ((panel - self.stock.kerf) / 2 + 1).max(shortest);
        for length in [shortest, half] {
            self.lengths.entry(length).or_insert_with(|| row(&mut self.master, 0.0, 1.0));
        }
        let longer = (panel - shortest).max(1) as f64;
        self.beyond = row(&mut self.master, 0.0, panel as f64 / longer);
        for kind in &self.kinds {
            let runs = kind.runs as f64;
            if kind.one.is_some() {
                let asked = if kind.ways.is_empty() { runs } else { 0.0 };
                self.ones.push(row(&mut self.master, asked, 1.0));
            }
            let pieces = kind.ways.first().map(|w| w.k as f64);
            self.seamed.push(pieces.map(|k| row(&mut self.master, runs, k)));
        }
        for (kind, seamed) in self.kinds.iter().zip(&self.seamed) {
            if let (Some(one), Some(seamed)) = (kind.one, seamed) {
                self.master.column(0.0, vec![(self.ones[one], -1.0), (*seamed, 1.0)]);
            }
        }
    }

    /// The prices that the rows have now.
    fn prices(&self) -> Prices {
        let of = |row: usize| self.master.prices[row].max(0.0);
        Prices {
            steps: self.lengths.iter().map(|(length, row)| (*length, of(*row))).collect(),
            slope: of(self.beyond) / self.stock.panel as f64,
            ones: self.ones.iter().map(|row| of(*row)).collect(),
        }
    }

    /// Settles the mix once more: the bound that its prices give, the prices, and whether something was
    /// added that may better them.
    fn step(&mut self, effort: &mut u64) -> (usize, Prices, bool) {
        self.master.settle(EXCHANGES);
        let prices = self.prices();
        let panels = self.stock.dearest(&prices, 1.0 + ALIKE, effort);
        let dearest = panels.first().map_or(1.0, |p| p.worth).max(1.0);
        let worth = self.worth(&prices, dearest) / dearest;
        let mut added = self.partings(&prices);
        for p in panels.into_iter().filter(|p| p.worth > 1.0 + ALIKE) {
            let ones: Vec<(usize, f64)> =
                p.ones.iter().map(|(i, n)| (self.ones[*i], *n as f64)).collect();
            self.column(1.0, p.ends, 1.0, ones);
            added = true;
        }
        let more = added || self.tell_apart();
        ((worth - ALIKE).ceil().max(0.0) as usize, prices, more)
    }

    /// The least that all runs are worth where a whole panel is worth `whole`.
    fn worth(&self, prices: &Prices, whole: f64) -> f64 {
        self.kinds.iter().map(|k| k.runs as f64 * k.worth(prices, whole)).sum()
    }

    /// Adds the cheapest parting of each run that is cheaper than the run's price; false if there is none.
    fn partings(&mut self, prices: &Prices) -> bool {
        let mut found = Vec::new();
        for (kind, row) in self.kinds.iter().zip(&self.seamed) {
            let Some(row) = row else { continue };
            for w in &kind.ways {
                let (worth, a) = prices.cheapest(w.sum, w.least, w.most);
                let between = (w.k - 2) as f64;
                if between + worth < self.master.prices[*row] - ALIKE {
                    found.push((between, vec![a, w.sum - a], *row));
                }
            }
        }
        let any = !found.is_empty();
        for (between, ends, row) in found {
            self.column(between, ends, -1.0, vec![(row, 1.0)]);
        }
        any
    }

    /// Adds a column that gives end pieces, or takes them if `sign` is negative.
    fn column(&mut self, cost: f64, ends: Vec<i64>, sign: f64, mut entries: Vec<(usize, f64)>) {
        for (length, row) in &self.lengths {
            let n = ends.iter().filter(|e| *e >= length).count();
            if n > 0 {
                entries.push((*row, sign * n as f64));
            }
        }
        let beyond: i64 = ends.iter().map(|e| (e - self.shortest).max(0)).sum();
        if beyond > 0 {
            entries.push((self.beyond, sign * beyond as f64 / self.stock.panel as f64));
        }
        let column = self.master.column(cost, entries);
        self.ends.push((column, ends, sign));
    }

    /// Adds lengths from which on the mix takes more end pieces than it gives; false if there are none.
    fn tell_apart(&mut self) -> bool {
        let amounts: BTreeMap<usize, f64> = self.master.mix().collect();
        let mut given: BTreeMap<i64, f64> = BTreeMap::new();
        for (column, ends, sign) in &self.ends {
            if let Some(amount) = amounts.get(column).filter(|a| **a > 0.0) {
                ends.iter().for_each(|e| *given.entry(*e).or_insert(0.0) += sign * amount);
            }
        }
        let (mut over, mut lacking) = (0.0, Vec::new());
        for (length, amount) in given.iter().rev() {
            over += amount;
            if over < -ALIKE && !self.lengths.contains_key(length) {
                lacking.push((over, *length));
            }
        }
        lacking.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
        lacking.truncate(NEW_LENGTHS);
        for (_, length) in &lacking {
            let count = |ends: &[i64]| ends.iter().filter(|e| *e >= length).count() as f64;
            let entries = self.ends.iter().map(|(c, ends, sign)| (*c, sign * count(ends)));
            let entries: Vec<(usize, f64)> = entries.filter(|e| e.1 != 0.0).collect();
            self.lengths.insert(*length, self.master.prices.len());
            self.master.row(0.0, 1.0, &entries);
        }
        !lacking.is_empty()
    }

    /// What follows from prices rounded down to whole parts, `parts` of which a panel has.
    fn proof(&self, prices: &Prices, parts: f64) -> Option<Proof> {
        let down = |x: f64| (x * parts + ALIKE).floor();
        let steps = prices.steps.iter().map(|(length, price)| (*length, down(*price)));
        let prices = Prices {
            steps: steps.collect(),
            slope: down(prices.slope),
            ones: prices.ones.iter().map(|p| down(*p)).collect(),
        };
        let dearest = self.stock.dearest(&prices, f64::INFINITY, &mut 0);
        let scale = dearest.first().map_or(0.0, |p| p.worth);
        if scale < 1.0 {
            return None;
        }
        let (sum, scale) = (self.worth(&prices, scale) as i64, scale as i64);
        let whole = |x: f64| x as i64;
        let ends = prices.steps.iter().enumerate().filter(|(i, s)| *i == 0 || s.1 > 0.0);
        let list = PriceList {
            ends: ends.map(|(_, s)| EndPrice { from: s.0, more: whole(s.1) }).collect(),
            beyond: whole(prices.slope),
            seamless: self
                .stock
                .ones
                .iter()
                .zip(&prices.ones)
                .filter(|(_, price)| **price > 0.0)
                .map(|((length, _), price)| PiecePrice { length: *length, price: whole(*price) })
                .collect(),
        };
        Some(Proof { bound: usize::try_from((sum + scale - 1) / scale).ok()?, sum, scale, list })
    }
}

impl Kind {
    /// The least that a run is worth where a whole panel is worth `whole`.
    fn worth(&self, prices: &Prices, whole: f64) -> f64 {
        let one = self.one.map(|i| prices.ones[i]);
        let ways = self
            .ways
            .iter()
            .map(|w| (w.k - 2) as f64 * whole + prices.cheapest(w.sum, w.least, w.most).0);
        one.into_iter().chain(ways).reduce(f64::min).unwrap_or(0.0)
    }
}
