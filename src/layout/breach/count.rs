//! The ways in which counts and the proof of the panel bound are wrong.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::model::seam::Dual;

/// What is wrong with a count or the proof of the panel bound.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "case", rename_all = "kebab-case")]
#[non_exhaustive]
pub enum CountBreach {
    /// Panels are counted otherwise than cut.
    Panels,
    /// The bound is over the panels of the layout.
    BoundOver,
    /// It is said wrongly whether the bound is proven.
    Proven {
        /// As said.
        said: Counted,
    },
    /// Seams of one sort are told otherwise than they are.
    Seams {
        /// The sort.
        what: SeamCount,
    },
    /// More seams of one sort are told to be the least than there are.
    SeamsLeast {
        /// The sort.
        what: SeamCount,
    },
    /// A seam on a jamb line is not told.
    SeamOnJambUntold,
    /// The order of walls leaves one out, or has one twice.
    WallOrder,
    /// More offcuts wait at the end of a wall than may.
    OffcutsWaiting,
    /// A wall that is held has other pieces than are listed.
    KeptWall,
    /// Offcuts are cut that do not lie on the site.
    NotAtHand,
    /// A figure of what is built or to be ordered is another one.
    BuiltTold,
    /// More is said to be needed at least than the rest takes.
    BuiltBound,
    /// Held pieces are of another number of panels than is told.
    KeptPanels,
    /// Offcuts at the end of a wall are told otherwise than they wait.
    OffcutsTold,
    /// A panel gives pieces to walls farther apart in the order than offcuts may go.
    OffcutGoesFar,
    /// A piece is not once in the saw list of its wall, from its panel.
    SawListPiece,
    /// The saw list has a piece at another length.
    SawListLength,
    /// The takeoff orders other than is cut.
    Ordered,
    /// The takeoff measures other than the walls have.
    Measured,
    /// A function of the certificate is not dual-feasible for its panel.
    Function {
        /// The function.
        function: Dual,
        /// Length of the panel.
        stock: f64,
    },
    /// The certificate's prices are no list: lengths rising, no price under nothing, and no function beside
    /// them.
    Prices,
    /// By the certificate's prices the pieces of a panel can be worth more than the panel.
    DearPanel,
    /// The certificate's sum is not that of the runs.
    Sum {
        /// Sum and worth of a panel, as said.
        said: [i64; 2],
        /// As the runs give them.
        found: [i64; 2],
    },
    /// The certificate's worth of a board is not its length with a saw cut.
    PanelWorth,
    /// The bound does not follow from the runs.
    Bound,
    /// The least weight of mixed panels does not follow from the runs.
    WeightBound,
    /// The weight of whole cartons is not that of the panels cut.
    WeightBought,
    /// The certificate does not agree with the layout.
    Certificate {
        /// What the certificate says.
        said: Counted,
        /// What the layout has.
        found: Counted,
    },
    /// Mixed stock lengths are missing in the job or in the certificate.
    StocksMissing,
    /// The layout's stock lengths are not those of the job.
    Stocks,
    /// The certificate's stock lengths or weights are not those of the job.
    Weights {
        /// Weights, as said.
        weights: Vec<i64>,
    },
    /// Panels of each length or their weight are counted otherwise than cut.
    Weight {
        /// Panels of each length, as said.
        said: Vec<i64>,
        /// Panels of each length, as cut.
        cut: Vec<i64>,
    },
}

/// What seams are counted by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum SeamCount {
    /// All of them.
    Seams,
    /// In notches or too near to one.
    InNotches,
    /// On jamb lines.
    OnJambs,
    /// Near jamb lines.
    NearJambs,
    /// Stairs.
    Stairs,
    /// Ladders.
    Ladders,
}

/// Bound and panels.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Counted {
    /// The bound.
    pub bound: i64,
    /// Panels in the layout.
    pub panels: i64,
    /// Whether they are the same, as the proof has it.
    pub proven: bool,
}

impl Counted {
    /// Of counts.
    pub fn new(bound: usize, panels: usize, proven: bool) -> Self {
        let whole = |n: usize| i64::try_from(n).unwrap_or(i64::MAX);
        Counted { bound: whole(bound), panels: whole(panels), proven }
    }
}
