//! Level courses: one datum for the house, the runs of each course between receivers, and the
//! pieces of each run once seams are placed.

pub mod blocks;
mod clearance;
mod contour;
pub mod crumbs;
pub mod datum;
pub mod edge_work;
mod effects;
pub mod ends;
pub mod even;
pub mod halves;
mod halves_waiting;
pub mod hang;
pub mod held;
mod judge;
mod levels;
pub mod mirror;
pub mod panel_names;
pub mod piece_marks;
pub mod pieces;
pub mod pole_lines;
pub mod problem;
pub mod questions;
mod ragged;
pub mod runs;
pub mod settle;
pub mod starts;
pub mod story_pole;
pub mod strips;
pub mod studs;
mod thin;
pub mod wall_order;
pub mod warnings;
