//! The command line: the only place that touches files, the environment and the terminal.

pub mod args;
mod check;
mod explain;
pub mod files;
mod layers;
mod layout;
mod loading;
mod manual;
mod progress;
pub mod run;
mod staging;
mod takeoff;
mod template;
mod terminal;
mod unused;
