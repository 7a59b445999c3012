//! The takeoff in words.

pub mod advice;
pub mod basis;
pub mod checks;
pub mod comparison;
pub mod explain;
mod flashing;
pub mod items;
