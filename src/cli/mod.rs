//! The command line: the only place that touches files, the environment and the terminal.

pub mod args;
pub mod files;
pub mod job_file;
mod layers;
mod manual;
mod nearest;
pub mod run;
mod staging;
mod takeoff;
mod template;
