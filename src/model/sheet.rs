//! A sheet of paper with what is drawn on it.

use super::drawing::Drawing;

/// One sheet: paper inches, the origin at its lower left corner, y up.
#[derive(Clone, Debug)]
pub struct Sheet {
    /// File stem: `02-front-elevation`.
    pub name: String,
    /// As the title block and bookmarks name it.
    pub title: String,
    /// What it shows, in one sentence, for readers that cannot see it.
    pub description: String,
    /// Width, inches.
    pub width: f64,
    /// Height, inches.
    pub height: f64,
    /// It must be printed at its own size: what is drawn is laid on the work.
    pub full_size: bool,
    /// What is drawn.
    pub drawing: Drawing,
}
