//! Names of panels.

use std::collections::BTreeMap;

use crate::job::stock::{Stock, panel_letter, stock_of};
use crate::model::ids::{PanelId, PieceMark};

/// Names that are held of an earlier layout, and panels that lie on the site.
#[derive(Clone, Debug, Default)]
pub struct HeldNames {
    /// Numbers in the names of panels of the first stock, by panel.
    pub panels: BTreeMap<usize, usize>,
    /// The part of a panel that lies on the site, by panel.
    pub at_hand: BTreeMap<usize, [f64; 2]>,
    /// Marks of the pieces of runs, by run; no other piece has one of them.
    pub marks: BTreeMap<String, Vec<PieceMark>>,
}

impl HeldNames {
    /// The mark of a piece of a run, where it is held.
    fn mark(&self, run: &str, piece: usize) -> Option<PieceMark> {
        self.marks.get(run)?.get(piece).cloned()
    }

    /// Whether a mark is held for some piece.
    fn has(&self, mark: &PieceMark) -> bool {
        self.marks.values().flatten().any(|m| m == mark)
    }
}

/// Marks of the pieces of a course, left to right: those that are held, and numbers past them.
pub(super) struct Marks<'a> {
    held: &'a HeldNames,
    head: String,
    last: usize,
}

impl<'a> Marks<'a> {
    /// Marks that begin so.
    pub(super) fn new(held: &'a HeldNames, head: String) -> Self {
        Marks { held, head, last: 0 }
    }

    /// The mark of the next piece, which has this place in its run.
    pub(super) fn next(&mut self, run: &str, piece: usize) -> PieceMark {
        if let Some(mark) = self.held.mark(run, piece) {
            return mark;
        }
        loop {
            self.last += 1;
            let mark = format!("{}-{}", self.head, self.last).into();
            if !self.held.has(&mark) {
                return mark;
            }
        }
    }
}

/// Panels named in the order they are first cut: `P1`, `P2`, those of a second length `S1`, `S2`.
pub(super) struct Names<'a> {
    /// Stock and number among its panels, by panel.
    pub(super) order: BTreeMap<usize, (usize, usize)>,
    /// The last number of each stock.
    last: Vec<usize>,
    stocks: &'a [Stock],
    /// Lengths of panels, where there are several.
    lengths: &'a [f64],
}

impl<'a> Names<'a> {
    /// Panels of the first stock that are held have their numbers.
    pub(super) fn new(stocks: &'a [Stock], lengths: &'a [f64], held: &HeldNames) -> Self {
        let held = &held.panels;
        let order = held.iter().map(|(panel, number)| (*panel, (0, *number))).collect();
        let mut last = vec![0; stocks.len()];
        if let Some(first) = last.first_mut() {
            *first = held.values().copied().max().unwrap_or(0);
        }
        Names { order, last, stocks, lengths }
    }

    /// The length that a panel is stocked in.
    pub(super) fn length(&self, panel: usize) -> f64 {
        // The answer has it in whole steps.
        let stock = self.lengths.get(panel).map_or(0, |laid| stock_of(self.stocks, *laid));
        self.stocks.get(stock).map_or(0.0, |s| s.length)
    }

    pub(super) fn name(&mut self, panel: usize) -> PanelId {
        let stock = stock_of(self.stocks, self.length(panel));
        let last = &mut self.last;
        let named = self.order.entry(panel).or_insert_with(|| {
            let number = last.get_mut(stock).map_or(0, |n| {
                *n += 1;
                *n
            });
            (stock, number)
        });
        panel_name(*named)
    }
}

/// The name of a panel by its stock and number.
pub(super) fn panel_name((stock, number): (usize, usize)) -> PanelId {
    format!("{}{number}", panel_letter(stock)).into()
}
