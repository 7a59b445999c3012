//! Kinds of siding: each has one file that describes it whole; stages ask the description.

mod fiber_cement;
mod foam_backed;
pub mod kind;
mod steel;
pub mod system;
mod vinyl;
mod wood;
