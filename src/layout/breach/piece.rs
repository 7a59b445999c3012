//! The ways in which rules of runs, pieces and panels are broken.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::layout::piece::EndCut;
use crate::model::corner::Hand;
use crate::model::ids::{FeatureId, PanelId};
use crate::model::receiver::Receiver;

/// What is wrong with a run or its seams.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "case", rename_all = "kebab-case")]
#[non_exhaustive]
pub enum RunBreach {
    /// Two runs have one name.
    NameTwice,
    /// A run's end has other trim than is drawn there.
    EndReceiver {
        /// Which end.
        hand: Hand,
        /// What the run says.
        receiver: Receiver,
        /// What is drawn there.
        drawn: Vec<Receiver>,
    },
    /// An end leans otherwise than the run says.
    Slope {
        /// Which end.
        hand: Hand,
    },
    /// Pieces less laps do not make what the run takes.
    Filled,
    /// The end gap is not the job's.
    EndGap,
    /// The number of seams does not go with the number of pieces.
    SeamCount {
        /// Pieces of the run.
        pieces: usize,
    },
    /// A seam is not the middle of its lap, or the lap is another length.
    SeamOffLap {
        /// Where the lap begins.
        from: f64,
        /// Where it ends.
        to: f64,
        /// How long it must be; less than nothing for the gap of a joint.
        lap: f64,
    },
    /// Seams or joints of near courses stand too near one another.
    SeamsNear {
        /// One seam.
        seam: f64,
        /// Its course.
        course: i32,
        /// The other seam.
        other_seam: f64,
        /// Its course.
        other_course: i32,
    },
    /// A seam laps over a fixture.
    SeamOverObstacle,
    /// No seam stands past a fixture without a mounting block.
    SeamMissing,
    /// A seam is said to be fixed where no fixture is.
    SeamFixedByNothing,
    /// A joint of boards is said to be fixed by a fixture.
    JointFixed,
    /// A joint stands off its stud.
    JointOffStud,
}

/// How a piece is not as in the earlier layout that it is held of.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "how", rename_all = "kebab-case")]
#[non_exhaustive]
pub enum HeldBreach {
    /// It is on no wall.
    Gone,
    /// It stands elsewhere.
    Elsewhere,
    /// It is cut from another panel or place of it.
    Cut {
        /// The panel it was cut from.
        panel: PanelId,
    },
    /// The panel it is cut from was an offcut of another length, or none.
    Offcut {
        /// The panel.
        panel: PanelId,
    },
}

/// What is wrong with a piece.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "case", rename_all = "kebab-case")]
#[non_exhaustive]
pub enum PieceBreach {
    /// Its length is not what is cut, or not what it takes up on the wall.
    Length {
        /// Length cut from its panel.
        cut: f64,
        /// Length on the wall.
        on_wall: f64,
    },
    /// Two pieces do not meet with factory ends.
    SeamEnds,
    /// A strip of it is lower than the datum is said to leave.
    StripUnderLeast,
    /// It is a peak too low to cut.
    PeakUnderLeast,
    /// It claims a factory end it does not have.
    FactoryEnd {
        /// Which end.
        hand: Hand,
    },
    /// It is shorter than the shortest.
    TooShort,
    /// It shows elsewhere than it is said to.
    Extent {
        /// From where to where it is said to be.
        said: [f64; 2],
        /// From where to where it shows.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        shown: Option<[f64; 2]>,
    },
    /// It leaves its course.
    LeavesCourse,
    /// It is ripped otherwise than it shows.
    Rip {
        /// From and to over the butt line, as said.
        said: [f64; 2],
        /// As it shows.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        shown: Option<[f64; 2]>,
    },
    /// An edge of it is cut and no rip is given.
    RipMissing {
        /// Whether it is the top edge; else the bottom (butt) edge.
        top: bool,
    },
    /// An end is cut otherwise than it is said to be.
    End {
        /// Which end.
        hand: Hand,
        /// As said.
        said: EndShape,
        /// As it shows.
        shown: EndShape,
    },
    /// An end's long point is given elsewhere than at the piece's end.
    LongPoint {
        /// Which end.
        hand: Hand,
    },
    /// A notch goes round what is not on its wall.
    NotchOfNothing {
        /// What it is said to go round.
        around: FeatureId,
    },
    /// No part of an opening or fixture is in the notch round it.
    NotchElsewhere,
    /// A notch is not as large as it must be.
    NotchSize {
        /// As said.
        said: NotchSize,
        /// As needed.
        needed: NotchSize,
    },
    /// It is held of an earlier layout, and is not as there.
    Held {
        /// In which way.
        #[serde(flatten)]
        how: HeldBreach,
    },
    /// Its nail hem, or a board's head lap, stands where an opening, soffit or band is.
    HemInTheWay,
    /// It has lugs or trim nails, and no edge of it stands in undersill trim.
    LugsInNoTrim,
    /// It keeps no hem, or no lock, and it is not told how it is held.
    NotHeld {
        /// Whether at its top; else at its foot.
        top: bool,
    },
    /// Its cuts leave other than what shows.
    Cuts,
    /// Two pieces have one mark.
    MarkTwice,
    /// It is cut from no panel.
    OfNoPanel,
    /// It is cut from two panels.
    OfTwoPanels,
}

/// What is wrong with a stock panel and what is cut from it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "case", rename_all = "kebab-case")]
#[non_exhaustive]
pub enum PanelBreach {
    /// It is as long as no stock panel.
    StockLength {
        /// Lengths that are stocked.
        stocks: Vec<f64>,
    },
    /// No piece is cut from it.
    Empty,
    /// It names a piece that is on no wall.
    PieceUnknown,
    /// It holds a piece that names another panel.
    PieceOfAnother {
        /// The panel the piece names.
        named: PanelId,
    },
    /// A piece lies beyond its ends.
    PieceBeyondEnds {
        /// Where the piece begins.
        from: f64,
        /// Where it ends.
        to: f64,
    },
    /// A piece lies beyond the part of it that was at hand.
    BeyondOffcut {
        /// Where that begins.
        from: f64,
        /// Where it ends.
        to: f64,
    },
    /// No saw cut is left between two pieces.
    SawCutMissing,
    /// Its offcut is not what is left over.
    Offcut,
    /// It serves in halves, which the job does not want.
    HalvesUnwanted,
    /// Not every piece of it is of a half, or a half has none.
    HalfMissing,
    /// Its halves leave too little for the saw cut between them.
    HalvesMeet,
}

/// How an end of a piece is cut.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct EndShape {
    /// The cut; none where only angle and depth are known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cut: Option<EndCut>,
    /// Angle with the long edge, degrees.
    pub angle: f64,
    /// Long point, inches along the piece from its left end.
    pub long_point: f64,
    /// Short point.
    pub short_point: f64,
}

/// Size and place of a notch, inches.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct NotchSize {
    /// From the piece's left end.
    pub left: f64,
    /// Along the piece.
    pub width: f64,
    /// From the edge it opens to.
    pub depth: f64,
}
