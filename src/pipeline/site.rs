//! What is read of earlier layouts and of the site, beside the drawing.

pub use crate::read::{layout_json, stock_csv, ticks_json};
