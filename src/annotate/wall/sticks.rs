//! Which walls each stock length of trim goes to.

use std::collections::{BTreeMap, BTreeSet};

use super::batches::in_order;
use crate::layout::Layout;
use crate::model::ids::TrimStockId;
use crate::model::trim::TrimStock;

/// Walls of every stock length, by their numbers in the order of walls.
pub(in crate::annotate) struct Sticks {
    walls: BTreeMap<(usize, TrimStockId), BTreeSet<usize>>,
}

/// The stock lengths of one kind on one wall, by their numbers.
#[derive(Debug, Default, PartialEq, Eq)]
pub(super) struct SticksOf {
    /// Cut first for this wall.
    pub(super) opened: Vec<u32>,
    /// Of these an offcut waits, with the wall it was cut for last.
    pub(super) taken: BTreeMap<usize, Vec<u32>>,
    /// Of these an offcut waits for a later wall.
    pub(super) aside: BTreeMap<usize, Vec<u32>>,
}

fn kind(stock: TrimStock) -> usize {
    TrimStock::ALL.iter().position(|s| *s == stock).unwrap_or(0)
}

impl Sticks {
    pub(in crate::annotate) fn of(layout: &Layout) -> Self {
        let order: BTreeMap<&str, usize> = in_order(layout)
            .into_iter()
            .enumerate()
            .map(|(i, (_, w))| (w.id.as_str(), i))
            .collect();
        let mut walls: BTreeMap<(usize, TrimStockId), BTreeSet<usize>> = BTreeMap::new();
        for t in &layout.trims {
            let Some(wall) = order.get(t.wall.as_str()) else { continue };
            walls.entry((kind(t.kind.stock()), t.stock.clone())).or_default().insert(*wall);
        }
        Sticks { walls }
    }

    pub(super) fn at(&self, stock: TrimStock, wall: usize) -> SticksOf {
        let mut out = SticksOf::default();
        for ((_, id), walls) in self.walls.iter().filter(|((k, _), _)| *k == kind(stock)) {
            if !walls.contains(&wall) {
                continue;
            }
            let number = id.number();
            match walls.range(..wall).next_back() {
                Some(last) => out.taken.entry(*last).or_default().push(number),
                None => out.opened.push(number),
            }
            if let Some(next) = walls.range(wall + 1..).next() {
                out.aside.entry(*next).or_default().push(number);
            }
        }
        out
    }
}
