//! Lap siding laid out on a house's elevation drawings.

pub mod course;
pub mod diag;
pub mod extract;
pub mod geom;
pub mod job;
pub mod model;
pub mod normalize;
pub mod packing;
pub mod read;
pub mod receive;
pub mod seam;
pub mod trim;
pub mod units;
