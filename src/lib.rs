//! Lap siding laid out on a house's elevation drawings.

pub mod diag;
pub mod geom;
pub mod model;
pub mod units;
