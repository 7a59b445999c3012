//! Nails, and how lengths change with the weather. Lengths inches.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::item::SidingPiece;
use super::trim::TrimStock;

/// Room under a nail's head, inches (siding association's manual, horizontal siding).
// NailFact::RoomUnderHead.
pub const UNDER_HEAD: f64 = 1.0 / 32.0;

/// Nails of a house.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Fastening {
    /// What a panel's nail goes through, from under its head on.
    pub layers: Vec<NailLayer>,
    /// Their sum.
    pub needed: f64,
    /// Length to buy.
    pub length: f64,
    /// Least shank.
    pub shank: f64,
    /// Least head.
    pub head: f64,
    /// Nails by what they hold.
    pub nails: Vec<NailCount>,
}

/// One layer a nail goes through.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct NailLayer {
    /// What.
    pub layer: LayerKind,
    /// How thick.
    pub thickness: f64,
}

/// Layers a nail goes through.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum LayerKind {
    /// Room under the head, so that a panel can move.
    UnderHead,
    /// Stand-off of the nail hem from the wall.
    HemStandOff,
    /// The board itself.
    Board,
    /// Sheathing, where studs alone are to hold.
    Sheathing,
    /// Foam board, which holds no nail.
    FoamBoard,
    /// Other layers that hold no nail.
    OtherLayers,
    /// Sheathing and framing that hold it.
    Nailable,
    /// Studs that hold it.
    Studs,
}

/// Nails of one kind of piece.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct NailCount {
    /// What they hold.
    pub holds: Fastened,
    /// Greatest spacing.
    pub spacing: f64,
    /// Pieces.
    pub pieces: usize,
    /// Nails: one more than spaces in each piece, posts on both flanges.
    pub nails: f64,
}

/// What nails hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Fastened {
    /// Siding.
    Siding(SidingPiece),
    /// Trim of a stock.
    Trim(TrimStock),
}

/// Change of length between the day of the work and the coldest and hottest day.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Movement {
    /// Temperature of the siding on the day, F.
    pub installed: f64,
    /// Coldest, F.
    pub lowest: f64,
    /// Hottest, F.
    pub highest: f64,
    /// Length per length and F.
    pub expansion: f64,
    /// By piece; empty for boards.
    pub rows: Vec<PieceMovement>,
}

/// What the longest piece of a kind does.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PieceMovement {
    /// The kind of piece.
    pub piece: MovingPiece,
    /// Its length on the day.
    pub length: f64,
    /// Longer on the hottest day.
    pub longer: f64,
    /// Shorter on the coldest.
    pub shorter: f64,
    /// Where it has room to grow.
    pub room_at: MovementRoom,
    /// How much; left out where it is free.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub room: Option<f64>,
    /// Of that room, how much is needed.
    pub needed: f64,
    /// Whether the room covers it.
    pub covered: bool,
    /// Rise of temperature that uses up the gaps at the ends of a panel, F.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rise_covered: Option<f64>,
}

/// Pieces that grow and shrink.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum MovingPiece {
    /// A panel.
    Panel,
    /// An outside corner post of one length.
    OutsidePost,
    /// An outside corner post of several lengths.
    SplicedOutsidePost,
    /// An inside corner post of one length.
    InsidePost,
    /// An inside corner post of several lengths.
    SplicedInsidePost,
    /// J-channel.
    JChannel,
}

/// Where a piece has room to grow.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum MovementRoom {
    /// The gap at each end of a panel that is held at its middle.
    EndGaps,
    /// The cut-back flange under the lap below, the post hanging from its top.
    SpliceBelow,
    /// Free below, the post hanging from its top.
    FreeBelow,
    /// The lap of one length over the next.
    LapOverNext,
}
