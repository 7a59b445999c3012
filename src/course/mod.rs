//! Level courses: one datum for the house, the runs of each course between receivers, and the
//! pieces of each run once seams are placed.

mod contour;
pub mod ends;
pub mod pieces;
pub mod problem;
pub mod runs;
pub mod story_pole;
