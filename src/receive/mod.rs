//! What takes the panels at each side of a wall, and where panels stop: from a wall to its field.
//!
//! The drawn side of an opening or rake is taken as the bottom of the receiver's pocket; that of a corner
//! post stands a set-back off the drawn corner.

pub mod boards;
mod corners;
mod covers;
mod faces;
pub mod field;
pub mod fill;
mod narrow;
pub mod sides;
pub mod steps;

pub use field::field;
pub use fill::filled;
