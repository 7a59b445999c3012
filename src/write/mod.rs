//! From the layout and sheets to bytes. Writers are peers: each takes finished data and touches no
//! file.

pub mod alarm;
pub mod compare;
mod corners;
pub mod csv;
pub mod csv_bar;
mod csv_cell;
pub mod explain;
pub mod findings;
pub mod first_job;
pub mod houses;
pub mod json;
mod json_format;
pub mod layers;
pub mod making;
pub mod measures;
pub mod overlay;
#[cfg(feature = "page")]
pub mod page;
#[cfg(feature = "pdf")]
pub mod pdf;
pub mod pdf_update;
#[cfg(feature = "png")]
pub mod png;
pub mod report;
mod report_nails;
mod report_pole;
mod report_work;
pub mod review;
mod saw_places;
mod setting_value;
#[cfg(feature = "xlsx")]
mod settings;
pub mod summary;
pub mod svg;
#[cfg(any(feature = "pdf", feature = "png"))]
pub mod svg_tree;
pub mod tables;
pub mod template;
mod text;
pub mod told_settings;
pub mod walls;
#[cfg(feature = "xlsx")]
pub mod xlsx;
#[cfg(feature = "browser")]
pub mod zip;
