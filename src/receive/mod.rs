//! What takes the panels at each side of a wall, and where panels stop: from a wall to its field.
//!
//! The drawn side of a corner, opening or rake is taken as the bottom of the receiver's pocket.

pub mod boards;
mod covers;
pub mod field;
pub mod sides;
pub mod steps;

pub use field::field;
