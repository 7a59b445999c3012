//! What a drawing shows where there is nothing to side.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::views::OtherView;
use crate::model::ids::WallId;

/// Why drawn level lines are no siding.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum NoCourses {
    /// They are nearer to each other or farther apart than courses are.
    Spacing,
    /// The area is smaller than any wall.
    Small,
    /// Their layer is left alone or is of something else.
    Layer,
}

/// What is seen, with how much of it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", tag = "seen")]
pub enum Seen {
    /// Every wall that was found is left out by the job.
    LeftOut {
        /// Their names.
        walls: Vec<WallId>,
    },
    /// Nothing at all in model space.
    Nothing,
    /// Pictures, and whether there is nothing else.
    Pictures {
        /// How many.
        pictures: usize,
        /// Whether no line is drawn.
        only: bool,
    },
    /// Shapes on sheets alone.
    OnSheets {
        /// How many.
        items: usize,
    },
    /// Layers that are off or frozen and not read.
    LayersOff {
        /// How many.
        layers: usize,
        /// Items on them.
        items: usize,
    },
    /// A region of the job in which no stroke lies.
    RegionEmpty {
        /// The view.
        view: String,
        /// Where strokes lie, drawing units: left, bottom, right, top; none where there are none.
        #[serde(skip_serializing_if = "Option::is_none")]
        drawn: Option<[f64; 4]>,
    },
    /// A layer that the job names for walls and that holds nothing.
    LayerEmpty {
        /// As the job names it.
        layer: String,
    },
    /// Titles of views that are no elevations.
    Titles {
        /// What they show.
        shows: OtherView,
        /// How many.
        titles: usize,
        /// The first.
        first: String,
    },
    /// Hatches with upright lines.
    Upright {
        /// How many.
        hatches: usize,
        /// Distance of the lines, inches.
        apart: f64,
        /// Layer of most.
        layer: String,
    },
    /// Hatches with level lines that are not taken for siding.
    Level {
        /// How many.
        hatches: usize,
        /// Distance of the lines, inches.
        apart: f64,
        /// Layer of most.
        layer: String,
        /// Why.
        why: NoCourses,
    },
    /// Hatches with sloped or crossing lines.
    Crossed {
        /// How many.
        hatches: usize,
    },
    /// Lines on a wall layer that close to no outline.
    OpenLines {
        /// The layer.
        layer: String,
        /// How many.
        lines: usize,
    },
    /// Lines on layers without a role.
    OtherLines {
        /// How many.
        lines: usize,
    },
}
