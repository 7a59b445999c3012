//! Level courses: one datum for the house, the runs of each course between receivers, and the
//! pieces of each run once seams are placed.

pub mod datum;
pub mod ends;
pub mod hang;
mod levels;
pub mod pieces;
pub mod pole_lines;
pub mod problem;
pub mod runs;
pub mod story_pole;
mod thin;
mod words;
