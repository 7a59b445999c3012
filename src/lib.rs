//! Lap siding laid out on a house's elevation drawings.

pub mod diag;
pub mod geom;
pub mod job;
pub mod model;
pub mod units;
