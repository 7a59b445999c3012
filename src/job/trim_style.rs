//! Ways of cutting and fitting trim that a job may choose between.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// How the channels round an opening meet.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum FrameCut {
    /// Mitered: every piece runs one face past the opening at both ends (common practice).
    // TrimFact::WindowFrame.
    #[default]
    #[serde(alias = "mitre")]
    Miter,
    /// Square: jambs stand between sill and head, with a tab more at the foot (common practice, no
    /// source).
    Square,
}

/// What takes the panels in an inside corner (siding association's manual, accessories).
// TrimFact::InsideCorner.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum InsideCorner {
    /// A corner post.
    #[default]
    Post,
    /// One J-channel, on the wall that is sided second.
    OneChannel,
    /// A J-channel on each wall.
    TwoChannels,
}

/// What finishes the top of a wall under a level soffit.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum TopFinish {
    /// Finish trim that takes the cut edge (siding association on windy places).
    // TrimFact::UndersillLugs.
    #[default]
    FinishTrim,
    /// A nailed base and a face board snapped on it (common practice).
    // TrimFact::TopFinish.
    TwoPiece,
    /// A panel made for the top (common practice).
    // TrimFact::TopFinish.
    TopPanel,
    /// The nailed base with a crown molding in place of the face board (common
    /// practice); over a frieze the molding alone.
    // TrimFact::TopFinish.
    Crown,
}
