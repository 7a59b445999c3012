//! The ways in which rules of openings, trim and corners are broken.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::model::corner::Hand;
use crate::model::house::{EdgeKind, OpeningSide};
use crate::model::ids::ElevationName;
use crate::model::trim::TrimKind;

/// What is wrong with the trim and flashing of an opening.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "case", rename_all = "kebab-case")]
#[non_exhaustive]
pub enum OpeningBreach {
    /// Channels stand round an opening in boards.
    ChannelsAtBoards,
    /// Trim or flashing of one sort is not as long as the opening needs.
    Length {
        /// The sort.
        trim: TrimKind,
    },
    /// A side has no trim of its sort.
    SideBare {
        /// The sort.
        trim: TrimKind,
        /// The side.
        side: EdgeKind,
    },
    /// Another number of ends is mitered than needed.
    MiteredEnds,
    /// Its trim stands on another wall.
    OnAnotherWall,
    /// The head channel is not tabbed down at both ends.
    HeadTabs,
    /// A jamb channel is not tabbed over the sill's.
    JambTab,
    /// Its head has no drip cap.
    DripCap,
    /// The cut edge under its sill has no undersill trim.
    UndersillMissing,
    /// Undersill trim stands under its sill where the siding needs none.
    UndersillNeedless,
    /// Undersill trim lies along no sill.
    UndersillElsewhere,
    /// Trim of one sort lies along no side of its own.
    OffContour {
        /// The sort.
        trim: TrimKind,
    },
    /// Another number of channels stands round it than along its sides.
    ChannelCount,
    /// A channel's end is not mitered as the corner is.
    CornerCut,
    /// Where two channels meet the upper one does not run over the lower.
    CornerTab,
    /// Siding meets a side that is said to go on over something else.
    SidingAtCutSide {
        /// The side.
        side: OpeningSide,
    },
}

/// What is wrong with trim along sides, on the wall's face, and with its stock.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "case", rename_all = "kebab-case")]
#[non_exhaustive]
pub enum TrimBreach {
    /// A side has no trim of its sort.
    SideBare {
        /// The sort.
        trim: TrimKind,
        /// Length of the side.
        side_length: f64,
    },
    /// The starter leaves no gap to what stands beside it.
    StarterGap,
    /// Corner covers are not as long as the posts they cover.
    CoverLength,
    /// Band board is not as long as the bands.
    BandLength,
    /// A band has no cap.
    BandCap,
    /// Movement joints are not between the wall's ends, one by one.
    JointPlaces {
        /// Where they are.
        joints: Vec<f64>,
    },
    /// A run crosses a movement joint.
    RunAcrossJoint,
    /// No channel stands beside a movement joint.
    JointChannel,
    /// A rake channel is cut at another angle than the rake's.
    RakeCut,
    /// It is not as long as its place.
    Length,
    /// It is longer than its stock.
    OverStock,
    /// It is cut from stock of another sort.
    OtherStock,
    /// More is cut from a stock length than it holds.
    StockFull,
    /// Two pieces of trim have one mark.
    MarkTwice,
    /// It is too short to cut.
    Crumb,
}

/// What is wrong with a corner or its post.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "case", rename_all = "kebab-case")]
#[non_exhaustive]
pub enum CornerBreach {
    /// A wall's side is part of no corner, or of several.
    SideCorners {
        /// Which side of the wall.
        hand: Hand,
    },
    /// Two corners have one name.
    NamedTwice,
    /// It is on no wall.
    Bare,
    /// It names a wall that does not stand.
    WallUnknown,
    /// It is not as high as its walls.
    Height {
        /// From and to, as said.
        said: [f64; 2],
        /// From and to, as its walls stand.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        walls: Option<[f64; 2]>,
    },
    /// Siding is reckoned from elsewhere than its set-back off the corner.
    SetBack,
    /// A piece ends nearer to the corner than set-back and end gap.
    PieceInPost,
    /// Trim runs nearer to the corner than the set-back.
    TrimInPost,
    /// One elevation shows all of it.
    OneElevation,
    /// A butt line of one wall meets none of the other.
    ButtLine,
    /// It has no post along a part of it.
    PostMissing {
        /// What is needed.
        trim: TrimKind,
        /// From.
        from: f64,
        /// To.
        to: f64,
    },
    /// A post's splice is not given, or wrongly.
    PostSplice,
    /// A post stands at no corner, or at several.
    PostCorners,
    /// A post is not as high as its walls.
    PostHeight {
        /// From and to, as said.
        said: [f64; 2],
        /// From and to, as its walls stand.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        walls: Option<[f64; 2]>,
    },
    /// A post is said to be shared with another elevation than it is.
    PostShared {
        /// As said.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        shared_with: Option<ElevationName>,
    },
    /// A post is made for another angle than its corner's.
    PostAngle,
    /// A post stands where another does.
    PostTwice,
}
