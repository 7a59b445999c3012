//! From the layout and sheets to bytes. Writers are peers: each takes finished data and touches no
//! file.

mod corners;
pub mod csv;
pub mod json;
pub mod layers;
pub mod overlay;
pub mod pdf;
pub mod render;
pub mod report;
mod report_nails;
mod report_pole;
mod report_work;
mod settings;
pub mod svg;
pub mod tables;
pub mod template;
mod words;
pub mod xlsx;
