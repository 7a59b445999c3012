//! Lengths to tape before an order, and a house moved to what was taped.

mod bands;
mod house;
mod joined;
mod known;
mod list;
mod moved;
mod shape;
mod spoils;
mod tape;
mod taped;
mod wall;

use crate::finding::taped::TapedFinding;
use crate::finding::{Finding, Findings};
use crate::layout::Layout;
use crate::model::house::House;
use crate::model::measure::Measure;

pub(super) use self::moved::tape;
pub(crate) use self::tape::Tape;
pub use self::taped::read;

/// The lengths of a house worth taping, those first that spoil most. What an error costs is told by the pieces of a
/// layout of the house, of a careful crew for speed: a piece counts where an error of half an inch would leave it
/// cut wrong, which is every piece that ends at a corner for the width or the lean of its side, those beside
/// an opening or notched for it for its place and size, the first course for the level of a foot, the last
/// one for a height, the courses at an edge of a band for its level, pieces with slanted ends for a peak. It is a count, no new layout: an error is not laid out.
pub fn measures(house: &House, layout: &Layout) -> Vec<Measure> {
    let mut all = list::of_house(house);
    all.iter_mut().for_each(|m| m.spoils = spoils::of(m, layout));
    // Of two alike, as they stand in the house.
    all.sort_by(|a, b| {
        let (a, b) = (a.spoils, b.spoils);
        b.pieces.cmp(&a.pieces).then(b.length.total_cmp(&a.length))
    });
    all
}

/// Tells which walls of a house [`measures`] leaves out, and why.
pub fn tell_left_out(house: &House, findings: &mut Findings) {
    let walls = list::left_out(house);
    if !walls.is_empty() {
        let narrower = 2.0 * shape::SIDE;
        findings.push(Finding::new(TapedFinding::LeftOut { walls, narrower }));
    }
}
