//! Ways of cutting and fitting trim that a job may choose between.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// How the channels round an opening meet.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum FrameCut {
    /// Mitred: every piece runs one face past the opening at both ends (FACTS SD-104).
    #[default]
    Mitre,
    /// Square: jambs stand between sill and head, with a tab more at the foot (common practice, no
    /// source).
    Square,
}

/// What takes the panels in an inside corner (FACTS SD-100, VSI-A).
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
