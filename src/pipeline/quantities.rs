//! What is asked of quantities once they are reckoned: prices, parts of the house, how a line came about.

pub use crate::takeoff::{explain, price, shares};
