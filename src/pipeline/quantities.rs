//! What is asked of quantities once they are reckoned: prices, and what each part of the house takes.

pub use crate::takeoff::{price, shares};
