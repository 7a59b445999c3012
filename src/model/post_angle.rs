//! Angles of corners that usual posts of 90 degrees do not fit.

use serde::{Deserialize, Serialize};

use super::corner::{Corner, Pairing};

/// The angle that a post is made for, where the corner is not square.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum PostAngle {
    /// Degrees between the faces of the walls.
    Degrees(u16),
    /// Not square, and nobody has said yet.
    Unknown,
}

impl PostAngle {
    /// That of a corner; `None` where usual posts fit.
    pub fn at(corner: &Corner) -> Option<Self> {
        let angle = corner.angle.map(|a| PostAngle::Degrees(a.round().clamp(0.0, 360.0) as u16));
        angle.or((corner.by == Pairing::Neighbor).then_some(PostAngle::Unknown))
    }

    /// What it adds to a short name: `135`.
    pub fn ending(self) -> String {
        match self {
            PostAngle::Degrees(degrees) => degrees.to_string(),
            PostAngle::Unknown => "angled".to_owned(),
        }
    }

    /// The angle that a short name ends with.
    pub fn of_ending(ending: &str) -> Option<Self> {
        match ending {
            "angled" => Some(PostAngle::Unknown),
            degrees => degrees.parse().ok().map(PostAngle::Degrees),
        }
    }
}
