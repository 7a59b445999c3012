//! How a piece is held that keeps no hem, or no lock.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::ids::PieceMark;

/// How a piece is held that keeps no hem at its top, or no lock at its foot, where no trim holds its cut
/// edge: common practice, no source, but for the peak.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum Hold {
    /// Cut at its butt over a lower roof: the edge stands in the roof's channel, the nails of its hem hold
    /// it.
    RoofChannel,
    /// Cut at its butt over a head all along: the edge stands in the head's channel, the nails of its hem
    /// hold it.
    HeadChannel,
    /// No hem: its cut top edge fills the channel over it by itself.
    ChannelOver,
    /// No hem, between rake channels: one small nail through its face (volunteer handbook: the last piece
    /// at the peak).
    // TrimFact::RakeGap.
    FaceNail,
}

/// Pieces that are held alike.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct HeldPieces {
    /// How.
    pub hold: Hold,
    /// Their marks.
    pub marks: Vec<PieceMark>,
}
