//! Filler boards: parts of a wall too narrow for siding.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::ids::{OpeningId, TrimMark};
use crate::geom::polygon::Polygon;
use crate::geom::vocabulary::Rect;

/// What a filler board may stand against.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum FilledTo {
    /// A side of an opening.
    Opening,
    /// An outside corner post.
    OutsideCorner,
    /// An inside corner post.
    InsideCorner,
    /// Where the wall ends against something else.
    WallEnd,
    /// A soffit.
    Eave,
    /// A bare area or a band above.
    BareAbove,
    /// A bare area or a band below.
    BareBelow,
    /// Where the siding starts.
    Start,
    /// A lower roof.
    LowerRoof,
    /// The butt line of the first whole course over it.
    Course,
}

/// What a filler board stands against.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct FillerSide {
    /// What the side is.
    pub to: FilledTo,
    /// The opening it belongs to.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub opening: Option<OpeningId>,
}

/// A part of a wall that a filler board covers.
#[derive(Clone, Debug, PartialEq)]
pub struct DrawnFiller {
    /// Where, elevation inches.
    pub place: Rect,
    /// What it stands between: left and right, or below and above.
    pub between: [FillerSide; 2],
    /// Whether it stands upright.
    pub upright: bool,
    /// The opening whose frame it is taken into.
    pub opening: Option<OpeningId>,
}

impl DrawnFiller {
    /// Its shape.
    pub fn shape(&self) -> Polygon {
        let r = self.place;
        Polygon::rect(r.x0, r.y0, r.x1, r.y1)
    }

    /// Its width, which is ripped.
    pub fn width(&self) -> f64 {
        if self.upright { self.place.width() } else { self.place.height() }
    }
}

/// Boards of one width.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct RippedWidth {
    /// Width they are ripped to, inches.
    pub width: f64,
    /// How many.
    pub pieces: usize,
    /// Their length, inches.
    pub length: f64,
}

/// A filler board with where it stands.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PlacedFiller {
    /// Its lengths.
    pub boards: Vec<TrimMark>,
    /// Width, inches.
    pub width: f64,
    /// Length, inches.
    pub length: f64,
    /// What it stands between.
    pub between: [FillerSide; 2],
}
