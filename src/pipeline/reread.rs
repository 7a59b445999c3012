//! Layouts that were written, taken up again: what to order is reckoned anew from them.

use crate::compare;
use crate::layout::Layout;
use crate::layout::backdrop::Backdrops;
use crate::layout::set::{LaidSet, LaidSets};
use crate::model::change::Comparison;
use crate::takeoff;

/// The sets of a house from their layouts as read back: the house's own, then those of its zones.
pub fn reread(house: Layout, zones: Vec<Layout>) -> LaidSets {
    let zones = zones.into_iter().map(set).collect();
    let mut sets = LaidSets { house: set(house), zones };
    let each: Vec<takeoff::Set> = sets.iter().map(|s| (&s.layout.laid, &s.takeoff)).collect();
    sets.house.takeoff.one_order = takeoff::one_order(&each);
    sets
}

fn set(layout: Layout) -> LaidSet {
    let quantities = takeoff::quantities(&layout.laid);
    let takeoff = takeoff::with_lengths_alone(quantities, &layout.laid, &layout.bound);
    LaidSet { layout, takeoff, backdrops: Backdrops::default() }
}

/// Compares two layouts of a house; the revision bears the letter given, else the next.
pub fn compared(old: &LaidSets, new: &LaidSets, letter: Option<&str>) -> Comparison {
    compare::compare(old, new, letter)
}
