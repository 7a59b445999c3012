//! The command line: the only place that touches files, the environment and the terminal.

pub mod args;
pub mod files;
pub mod job_file;
mod nearest;
pub mod run;
mod takeoff;
mod template;
