//! The finished layout, in the shape of `layout.json` (`lapwright-layout/2`): lengths inches,
//! angles degrees, areas square feet. It holds facts alone: each of its texts is a word of an
//! enumeration, a name, or comes from the drawing or the job.
//!
//! Heights and places are elevation inches: x from the elevation's leftmost wall point, y from the
//! house's floor reference line.

pub mod at_hand;
pub mod backdrop;
pub mod bound;
pub mod breach;
pub(crate) mod by_wall;
pub mod course;
pub mod drawn_ends;
mod finished;
pub mod format;
pub(crate) mod from_drawn;
pub mod houses;
pub mod kept;
pub mod laid;
pub mod piece;
pub mod rule;
pub mod set;
pub mod slopes;
pub mod ticks;
pub mod told;
pub mod verified;
pub mod violation;
pub mod wall;

pub use self::finished::Layout;
