//! The takeoff in words.

pub mod advice;
pub mod basis;
pub mod checks;
pub mod comparison;
mod estimate;
pub mod explain;
mod flashing;
pub mod items;
