//! What to buy.

use super::layout::TakeoffLine;

/// The takeoff of a house.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Takeoff {
    /// Line by line, in ordering order.
    pub lines: Vec<TakeoffLine>,
}
