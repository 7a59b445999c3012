//! The simplex method for a mix of columns that meets every row at least cost, columns and rows being
//! added as they are found. The inverse of the basis is held whole; rows are few.
//!
//! Plain additions and multiplications of `f64` in a fixed order: the same on every machine. What is
//! concluded from it is worked out again in whole numbers, so that rounding proves nothing wrong.

/// Smaller numbers are taken for nothing.
const NOTHING: f64 = 1e-9;

/// How much a unit of a column gives to each row, and what it costs.
#[derive(Clone, Debug)]
struct Column {
    cost: f64,
    entries: Vec<(usize, f64)>,
}

/// Rows `sum of columns >= least`, and the cheapest columns for them.
#[derive(Clone, Debug, Default)]
pub(crate) struct Master {
    columns: Vec<Column>,
    least: Vec<f64>,
    /// The column that stands in each row of the basis, and how much of it.
    basic: Vec<usize>,
    amount: Vec<f64>,
    inverse: Vec<Vec<f64>>,
    /// Price of each row.
    pub(crate) prices: Vec<f64>,
    /// Multiplications so far: the effort spent.
    pub(crate) effort: u64,
}

impl Master {
    /// Adds a row. `entries` are what the columns so far give to it; a unit of what is missing costs
    /// `missing`, which bounds the row's price.
    pub(crate) fn row(&mut self, least: f64, missing: f64, entries: &[(usize, f64)]) {
        let row = self.least.len();
        self.least.push(least);
        let mut of_basis = vec![0.0; row];
        for (column, entry) in entries {
            self.columns[*column].entries.push((row, *entry));
        }
        for (at, column) in self.basic.iter().enumerate() {
            if let Some((r, entry)) = self.columns[*column].entries.last()
                && *r == row
            {
                of_basis[at] = *entry;
            }
        }
        let spare: f64 = of_basis.iter().zip(&self.amount).map(|(e, x)| e * x).sum::<f64>() - least;
        // What is over stands in the basis where there is any, else what is missing.
        let sign = if spare >= 0.0 { -1.0 } else { 1.0 };
        let cost = if spare >= 0.0 { 0.0 } else { missing };
        let over = self.column(0.0, vec![(row, -1.0)]);
        let lacking = self.column(missing, vec![(row, 1.0)]);
        let mut inverse = vec![0.0; row + 1];
        for (entry, line) in of_basis.iter().zip(&self.inverse).filter(|(e, _)| **e != 0.0) {
            line.iter().zip(&mut inverse).for_each(|(v, out)| *out -= sign * entry * v);
        }
        inverse[row] = sign;
        self.inverse.iter_mut().for_each(|line| line.push(0.0));
        self.prices.push(0.0);
        inverse.iter().zip(&mut self.prices).for_each(|(v, price)| *price += cost * v);
        self.inverse.push(inverse);
        self.basic.push(if spare >= 0.0 { over } else { lacking });
        self.amount.push(spare.abs());
    }

    /// Adds a column.
    pub(crate) fn column(&mut self, cost: f64, entries: Vec<(usize, f64)>) -> usize {
        self.columns.push(Column { cost, entries });
        self.columns.len() - 1
    }

    /// Columns of the mix and how much of each.
    pub(crate) fn mix(&self) -> impl Iterator<Item = (usize, f64)> + '_ {
        self.basic.iter().copied().zip(self.amount.iter().copied())
    }

    /// What the mix costs.
    #[cfg(test)]
    pub(crate) fn cost(&self) -> f64 {
        self.mix().map(|(c, x)| self.columns[c].cost * x).sum()
    }

    /// Changes the mix until no column makes it cheaper, or as many times as may be.
    pub(crate) fn settle(&mut self, most: usize) {
        for _ in 0..most {
            let Some(enters) = self.cheaper() else { return };
            if !self.enter(enters) {
                return;
            }
        }
    }

    /// The column that makes the mix cheapest by the unit.
    fn cheaper(&mut self) -> Option<usize> {
        let mut best = (-NOTHING, None);
        for (i, c) in self.columns.iter().enumerate() {
            let gain = c.cost - c.entries.iter().map(|(r, e)| e * self.prices[*r]).sum::<f64>();
            if gain < best.0 {
                best = (gain, Some(i));
            }
        }
        self.effort += 4 * self.columns.len() as u64;
        best.1
    }

    /// Takes a column into the mix in place of the one that it uses up first; false if it uses up none.
    fn enter(&mut self, enters: usize) -> bool {
        let (rows, column) = (self.least.len(), &self.columns[enters]);
        let used: Vec<f64> = self
            .inverse
            .iter()
            .map(|line| column.entries.iter().map(|(r, e)| e * line[*r]).sum())
            .collect();
        let mut leaves: Option<(f64, usize)> = None;
        for (i, u) in used.iter().enumerate().filter(|(_, u)| **u > NOTHING) {
            let share = self.amount[i].max(0.0) / u;
            let better = leaves.is_none_or(|(least, at)| {
                share < least - NOTHING || share <= least + NOTHING && *u > used[at]
            });
            if better {
                leaves = Some((share, i));
            }
        }
        let Some((share, out)) = leaves else { return false };
        let gain =
            column.cost - column.entries.iter().map(|(r, e)| e * self.prices[*r]).sum::<f64>();
        let pivot = used[out];
        let line: Vec<f64> = self.inverse[out].iter().map(|v| v / pivot).collect();
        for (i, u) in used.iter().enumerate().filter(|(i, u)| *i != out && **u != 0.0) {
            self.inverse[i].iter_mut().zip(&line).for_each(|(v, l)| *v -= u * l);
            self.amount[i] = (self.amount[i] - u * share).max(0.0);
            self.effort += rows as u64;
        }
        self.prices.iter_mut().zip(&line).for_each(|(price, l)| *price += gain * l);
        self.inverse[out] = line;
        self.amount[out] = share;
        self.basic[out] = enters;
        true
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cutting_of_two_lengths_by_hand() {
        // 4 pieces that three go into a panel, and 3 that two go in; one of each go too. Two rows; a
        // panel a column: (3, 0), (0, 2), (1, 1). All by their own: 4/3 + 3/2 = 17/6. The dual: 3p <= 1,
        // 2q <= 1, p + q <= 1 gives p = 1/3, q = 1/2, 17/6.
        let mut m = Master::default();
        m.row(4.0, 1.0, &[]);
        m.row(3.0, 1.0, &[]);
        assert_eq!(m.cost(), 7.0);
        let columns = [vec![(0, 3.0)], vec![(1, 2.0)], vec![(0, 1.0), (1, 1.0)]];
        let columns: Vec<usize> = columns.into_iter().map(|c| m.column(1.0, c)).collect();
        m.settle(100);
        assert!((m.cost() - 17.0 / 6.0).abs() < 1e-9);
        assert!((m.prices[0] - 1.0 / 3.0).abs() < 1e-9 && (m.prices[1] - 0.5).abs() < 1e-9);
        // At least four panels: a third row, which they fall short of by 7/6. Each lacking one is a panel.
        let entries: Vec<(usize, f64)> = columns.iter().map(|c| (*c, 1.0)).collect();
        m.row(4.0, 1.0, &entries);
        m.settle(100);
        assert!((m.cost() - 4.0).abs() < 1e-9);
    }
}
