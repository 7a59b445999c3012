//! Names of panels.

use std::collections::BTreeMap;

use crate::job::stock::{Stock, panel_letter, stock_of};
use crate::model::ids::PanelId;

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
    pub(super) fn new(
        stocks: &'a [Stock],
        lengths: &'a [f64],
        held: &BTreeMap<usize, usize>,
    ) -> Self {
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
