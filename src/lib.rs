//! Lap siding laid out on a house's elevation drawings.

pub mod annotate;
pub mod cli;
pub mod course;
pub mod diag;
pub mod extract;
pub mod geom;
pub mod job;
pub mod model;
pub mod normalize;
pub mod packing;
pub mod pipeline;
pub mod read;
pub mod receive;
pub mod seam;
pub mod takeoff;
pub mod trim;
pub mod typeface;
pub mod units;
pub mod verify;
pub mod write;
