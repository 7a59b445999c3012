//! Ways of counting that a layout is weighed against: rules of thumb by area, and published
//! counting rules. Lengths inches, areas square feet.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::ids::WallId;
use super::item::SidingPiece;
use super::trim::TrimStock;

/// A way of counting panels.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "by", rename_all = "kebab-case")]
pub enum CountingMethod {
    /// The layout: every piece placed and cut from stock, none spare.
    ThisLayout {
        /// Panels by stock length, where lengths are mixed: the count is then their length in panels
        /// of the first.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        by_length: Vec<LengthCount>,
        /// The first length.
        first: f64,
    },
    /// The layout with panels of one of its lengths alone.
    OneLength {
        /// Which of the lengths, from 0.
        place: usize,
        /// The length.
        length: f64,
    },
    /// All openings subtracted, then a percentage added.
    NetArea {
        /// The percentage.
        waste: f64,
    },
    /// No opening subtracted.
    GrossArea,
    /// Only large openings subtracted.
    LargeOpenings {
        /// Area from which an opening is large.
        over: f64,
    },
}

/// Panels of one stock length.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LengthCount {
    /// The length.
    pub length: f64,
    /// Panels.
    pub count: usize,
}

/// A published counting rule, with what of it is the layout's own.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "rule", rename_all = "kebab-case")]
pub enum CountingRule {
    /// Starter strip: perimeter less door widths, by the stock length.
    StarterByPerimeter,
    /// Posts: one a corner and story.
    PostsByStory {
        /// Outside or inside posts.
        stock: TrimStock,
        /// Height taken for a story.
        story: f64,
    },
    /// J-channel: pieces by the size of an opening, and by gable end.
    ChannelsByOpening,
    /// Undersill trim: level tops and sills, by the stock length.
    FinishTrimByLength,
    /// Boards: running feet for a square foot of wall.
    RunningFeet {
        /// Feet for a square foot.
        each: f64,
    },
    /// Nails for siding by the square.
    NailsBySquare {
        /// What they hold.
        piece: SidingPiece,
        /// Nails for a square.
        each: f64,
    },
    /// Nails by weight.
    NailPounds,
    /// Courses of a wall: its height by the exposure, rounded up.
    CoursesByHeight {
        /// The wall.
        wall: WallId,
    },
    /// Area of a gable: base times height by two.
    GableTriangle {
        /// The wall.
        wall: WallId,
    },
}
