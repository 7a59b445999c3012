//! A stock length with what it weighs and how it is bought.

/// A length that panels are stocked in, and what one of them counts for in what is kept least.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StockWeight {
    /// Inches; no two stocks are of one length.
    pub length: f64,
    /// A whole number over 0, a million at most; those of all stocks have no common divisor.
    pub weight: i64,
    /// Panels in a carton, one at least: whole cartons are bought.
    pub carton: u32,
    /// Spare ones to buy, percent.
    pub spare: f64,
}

impl StockWeight {
    /// A length bought by the panel, none spare.
    pub fn single(length: f64, weight: i64) -> Self {
        StockWeight { length, weight, carton: 1, spare: 0.0 }
    }

    /// Panels in the whole cartons that hold so many and their spare ones.
    pub fn in_cartons(&self, panels: usize) -> usize {
        let carton = self.carton.max(1) as usize;
        let spare = (panels as f64 * self.spare / 100.0 - 1e-9).ceil().max(0.0) as usize;
        (panels + spare).div_ceil(carton) * carton
    }

    /// What they weigh.
    pub fn bought(&self, panels: usize) -> i64 {
        let panels = i64::try_from(self.in_cartons(panels)).unwrap_or(i64::MAX);
        panels.saturating_mul(self.weight)
    }
}
