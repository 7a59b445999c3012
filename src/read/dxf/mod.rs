//! DXF: tags (group pairs), then typed entities, then blocks inserted.

mod all_off;
mod census;
mod document;
mod entities;
mod entity;
mod expand;
mod extent;
mod groups;
mod hatch;
mod lettered;
mod made;
mod number;
mod passed_over;
mod paths;
mod reader;
mod spline;
pub mod tags;
mod tally;
mod text;
mod viewport;

pub(super) use document::drawing;
#[cfg(feature = "dwg")]
pub(super) use document::transcribed;
