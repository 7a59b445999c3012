//! A drawing whose every layer is off or frozen, as some converters write them: nobody means to show
//! nothing, so all of them are read, and it is told.

use std::collections::BTreeSet;

use super::tally::Tally;
use crate::finding::drawing::DrawingFinding;
use crate::finding::{Finding, Findings};
use crate::model::drawing::{Drawing, Item, Shape, Space};

/// The layer of points that dimensions are hung on, which is never plotted (from memory).
const DEFPOINTS: &str = "DEFPOINTS";

/// Whether an item is geometry of the model: what says something stands on layers of its own.
fn is_geometry(item: &Item) -> bool {
    let drawn = matches!(item.shape, Shape::Polyline(_) | Shape::Curve(_) | Shape::Hatch(_));
    drawn && item.space == Space::Model
}

/// Shows every layer where each one with geometry is off or frozen; else off stays off. What is flagged
/// invisible by itself stays so.
pub(super) fn read_all(out: &mut Drawing, tally: &Tally, findings: &mut Findings) {
    let used: BTreeSet<usize> =
        out.items.iter().filter(|i| is_geometry(i)).map(|i| i.layer).collect();
    let plotted =
        |i: &&usize| out.layers.get(**i).is_some_and(|l| !l.name.eq_ignore_ascii_case(DEFPOINTS));
    let layers = used.iter().filter(plotted).count();
    if layers == 0 || used.iter().filter(plotted).any(|i| out.layers[*i].shown) {
        return;
    }
    out.layers.iter_mut().for_each(|l| l.shown = true);
    for (i, item) in out.items.iter_mut().enumerate() {
        item.shown = tally.invisible.binary_search(&i).is_err();
    }
    for (i, left) in out.left_out.iter_mut().enumerate() {
        left.shown = tally.invisible_left.binary_search(&i).is_err();
    }
    findings.push(Finding::new(DrawingFinding::LayersAllOff { layers }));
}
