//! The command line: the only place that touches files, the environment and the terminal.

pub mod args;
mod check;
mod compare;
mod disk;
mod earlier;
mod explain;
pub mod files;
mod house;
mod houses;
mod in_place;
mod inputs;
mod layers;
mod layout;
mod loading;
mod manual;
mod measure;
pub mod outcome;
mod page;
#[cfg(feature = "page")]
mod page_build;
pub mod place;
mod progress;
pub mod recovery;
pub mod run;
mod stage;
mod standing;
mod start;
mod takeoff;
mod template;
mod terminal;
mod whole;
