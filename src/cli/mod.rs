//! The command line: the only place that touches files, the environment and the terminal.

pub mod args;
pub mod files;
mod layers;
mod manual;
pub mod run;
mod staging;
mod takeoff;
