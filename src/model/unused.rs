//! Why something drawn is not used.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Why something drawn is not used.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "why", rename_all = "kebab-case")]
pub enum Unused {
    /// Its layer is off or frozen.
    HiddenLayer,
    /// It came by a block whose layer is off or frozen.
    HiddenInsert,
    /// It is marked invisible, or styled so.
    Invisible,
    /// It is clipped away whole.
    ClippedAway,
    /// It has neither line nor fill, or no size.
    NotPainted,
    /// It stands on a sheet, not in the model.
    OnSheet,
    /// Its block stands in another file.
    ExternalReference {
        /// That file, as the drawing names it.
        file: String,
    },
    /// Its block is not defined.
    BlockMissing {
        /// The block.
        block: String,
    },
    /// Nothing is drawn in its block.
    BlockEmpty {
        /// The block.
        block: String,
    },
    /// Its block inserts itself, or lies too deep in others.
    BlockNested {
        /// The block.
        block: String,
    },
    /// What its block holds is drawn on layers without a role.
    BlockOnOtherLayers {
        /// The block.
        block: String,
    },
    /// Its type is not read.
    NotRead {
        /// The type as the file names it.
        entity: String,
    },
    /// A face in space that does not lie flat in the view.
    NotFlat,
    /// A value it needs is missing or no number.
    Unreadable,
    /// It lies farther out than any house.
    TooFar,
    /// A hatch with more loops than are read.
    TooManyLoops,
    /// A point has no size.
    PointOnly,
    /// Lines that go round but do not close.
    OpenLoop,
    /// Lines that enclose nothing.
    LooseLines,
    /// A closed loop too small for what its layer holds.
    TooSmall,
    /// A pattern that shows no lap siding.
    HatchPattern,
    /// It lies outside every elevation.
    OutsideViews,
    /// It lies outside the regions or layers that the job gives its elevations.
    OutsideRegions,
    /// It lies in a view that is no elevation.
    InOtherView,
    /// It lies on no wall.
    OffWalls,
    /// It lies where another cladding is.
    OnOtherCladding,
    /// A roof or a band hides it.
    Covered,
    /// It lies on a wall that the job leaves out.
    OnSkippedWall,
    /// A line that marks nothing where it stands.
    MarksNothing,
}

impl Unused {
    /// Whether the drawing itself or the job says that it is left out.
    pub fn is_meant(&self) -> bool {
        use Unused::{InOtherView, OnOtherCladding, OnSkippedWall, OutsideRegions};
        matches!(self, OutsideRegions | InOtherView | OnOtherCladding | OnSkippedWall)
    }
}

/// Things left out for one reason.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct UnusedCount {
    /// Why.
    #[serde(flatten)]
    pub why: Unused,
    /// How many things.
    pub things: usize,
    /// Lines they are drawn with, where that tells them.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lines: Option<usize>,
    /// How far the ends of an open loop are apart, inches: the widest of them.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub gap: Option<f64>,
}
