//! A line of text as drawn.

use crate::geom::vocabulary::Point;

/// A line of text.
#[derive(Clone, Debug, PartialEq)]
pub struct Text {
    /// Anchor point.
    pub at: Point,
    /// Capital height, drawing units.
    pub height: f64,
    /// Direction of reading, degrees counter-clockwise from x.
    pub angle: f64,
    /// Seen in a mirror: the letters' tops lie to the right of the direction of reading.
    pub mirrored: bool,
    /// What it says, codes resolved. Hostile: whoever writes it escapes it.
    pub content: String,
    /// Where the anchor stands across the line.
    pub across: Across,
    /// Where the anchor stands up the line.
    pub up: Up,
    /// Heavier weight.
    pub bold: bool,
}

/// Horizontal anchor of a text.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Across {
    /// At the start.
    #[default]
    Left,
    /// At the middle.
    Center,
    /// At the end.
    Right,
}

/// Vertical anchor of a text.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Up {
    /// On the baseline.
    #[default]
    Baseline,
    /// Half way up the capitals.
    Middle,
    /// At the top of the capitals.
    Top,
}
