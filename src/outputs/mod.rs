//! The files of a layout by their names: which writers make them, and in which order. What a feature
//! leaves out is not in the lists; there is no stand-in for it.

pub mod compare;
#[cfg(any(feature = "pdf", feature = "png"))]
mod drawn;
pub mod file;
mod given;
pub mod house;
pub mod houses;
pub mod making;
pub mod marker;
pub mod measures;
pub mod names;
pub mod overlay;
pub mod paths;
#[cfg(feature = "pdf")]
mod pdf;
#[cfg(feature = "png")]
mod png;
pub mod problems;
pub mod set;
mod sheets;
mod tables;
pub mod template;
#[cfg(feature = "xlsx")]
mod workbook;
