//! Corners of the house, each once, though two elevations show it.

use serde::{Deserialize, Serialize};

use super::ids::{CornerId, ElevationName, WallId};

/// A corner of the house.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, schemars::JsonSchema)]
pub struct Corner {
    /// Name, unique in the house: the wall and side it was first met at, `front-1/left`; further
    /// parts of one side are counted, `front-1/left-2`.
    pub id: CornerId,
    /// Which way it turns.
    pub kind: CornerKind,
    /// Tag drawn beside it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tag: Option<String>,
    /// How its two walls were brought together.
    pub by: Pairing,
    /// Degrees between the faces of its walls, where it is not square and known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub angle: Option<f64>,
    /// Lowest place of it that any side shows, house inches.
    pub low: f64,
    /// Highest.
    pub high: f64,
    /// The walls that meet in it, each with its side there: one where the other is not drawn, two
    /// as a rule, more where one elevation shows it in parts.
    pub sides: Vec<CornerSide>,
}

/// Which way a corner turns.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum CornerKind {
    /// Away from who looks at it.
    Outside,
    /// Towards them.
    Inside,
}

/// How the walls of a corner were brought together.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Pairing {
    /// Both bear one tag.
    Tag,
    /// The elevations follow one another round the house and the heights agree.
    Wrap,
    /// The elevations follow one another round the house; heights disagree.
    WrapAlone,
    /// Heights agree, and one is a left side, the other a right one.
    Height,
    /// Two walls of one elevation meet there, one of them at an angle.
    Neighbor,
    /// The job gives the wall that is not drawn.
    Job,
    /// The job says that nothing is sided round it.
    Bare,
    /// The other wall is not known.
    Open,
}

/// A side of a wall.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum Hand {
    /// The wall lies to the right of it.
    Left,
    /// The wall lies to the left of it.
    Right,
}

impl Hand {
    /// As it stands in a corner's name.
    pub fn id(self) -> &'static str {
        match self {
            Hand::Left => "left",
            Hand::Right => "right",
        }
    }

    /// The other one.
    pub fn other(self) -> Hand {
        match self {
            Hand::Left => Hand::Right,
            Hand::Right => Hand::Left,
        }
    }
}

/// A corner as one wall shows it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, schemars::JsonSchema)]
pub struct CornerSide {
    /// Elevation.
    pub elevation: ElevationName,
    /// Wall.
    pub wall: WallId,
    /// Side of the wall.
    pub side: Hand,
    /// Where it stands on its elevation, half way up, elevation inches.
    pub x: f64,
    /// How far it leans to the right, inches for an inch up; nothing where it stands plumb.
    #[serde(default, skip_serializing_if = "is_plumb")]
    pub lean: f64,
    /// Its foot, house inches.
    pub low: f64,
    /// Its top.
    pub high: f64,
}

fn is_plumb(lean: &f64) -> bool {
    *lean == 0.0
}

impl CornerSide {
    /// Where it stands at a height; over its top and under its foot its line goes on.
    pub fn at(&self, y: f64) -> f64 {
        self.x + self.lean * (y - (self.low + self.high) / 2.0)
    }

    /// Takes it from one height to another along its line.
    pub fn reach(&mut self, low: f64, high: f64) {
        self.x = self.at((low + high) / 2.0);
        (self.low, self.high) = (low, high);
    }
}

impl Corner {
    /// Whether walls on both sides of it are known.
    pub fn paired(&self) -> bool {
        self.sides.iter().any(|s| s.elevation != self.sides[0].elevation)
    }

    /// Whether a wall of it is sided before another one: the last elevation in the order of its sides is
    /// sided last.
    pub fn is_sided_first(&self, wall: &str) -> bool {
        let last = self.sides.last().map(|s| &s.elevation);
        let mine = self.sides.iter().find(|s| s.wall == wall).map(|s| &s.elevation);
        mine.is_some() && mine != last
    }

    /// The first side that another elevation than the first one shows.
    pub fn round(&self) -> Option<&CornerSide> {
        self.sides.iter().find(|s| s.elevation != self.sides[0].elevation)
    }
}
