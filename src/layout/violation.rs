//! A broken rule as data: what it concerns, where, what was measured and what is allowed.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::breach::Breach;
use super::rule::Rule;
use crate::geom::vocabulary::Xy;
use crate::model::ids::{
    CornerId, ElevationName, ObstacleId, OpeningId, PanelId, PieceMark, RunId, TrimMark,
    TrimStockId, WallId, ZoneId,
};

/// One case that breaks a rule.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Violation {
    /// The rule.
    pub rule: Rule,
    /// What breaks it.
    pub subject: Subject,
    /// The other of two things that do not go together.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub other: Option<Subject>,
    /// Where, if it has a place on an elevation.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at: Option<Place>,
    /// What the layout has or says.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub measured: Option<Figure>,
    /// What the rule allows.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub allowed: Option<Allowed>,
    /// In which way the rule is broken, with what else is needed to understand it.
    pub breach: Breach,
}

/// What a rule is about.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "kind", rename_all = "kebab-case")]
#[non_exhaustive]
pub enum Subject {
    /// The whole house, or a set laid out by itself.
    House,
    /// An elevation.
    Elevation {
        /// Its name.
        elevation: ElevationName,
    },
    /// A wall.
    Wall {
        /// Its name.
        wall: WallId,
    },
    /// A course of a wall.
    Course {
        /// The wall.
        wall: WallId,
        /// Counted from the datum.
        course: i32,
    },
    /// An opening of a wall.
    Opening {
        /// The wall.
        wall: WallId,
        /// The opening.
        opening: OpeningId,
    },
    /// A fixture on a wall.
    Obstacle {
        /// The wall.
        wall: WallId,
        /// The fixture.
        obstacle: ObstacleId,
    },
    /// A zone with another cladding.
    Zone {
        /// Its name.
        zone: ZoneId,
    },
    /// A corner of the house.
    Corner {
        /// Its name.
        corner: CornerId,
    },
    /// A run.
    Run {
        /// Its name.
        run: RunId,
    },
    /// A piece of siding.
    Piece {
        /// Its mark.
        piece: PieceMark,
    },
    /// A stock panel or board.
    Panel {
        /// Its name.
        panel: PanelId,
    },
    /// A piece of trim.
    Trim {
        /// Its mark.
        trim: TrimMark,
    },
    /// A stock length of trim.
    TrimStock {
        /// Its name.
        stock: TrimStockId,
    },
    /// A line of the takeoff.
    TakeoffLine {
        /// The line's short name.
        line: String,
    },
}

/// A place on an elevation.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Place {
    /// The elevation.
    pub elevation: ElevationName,
    /// Elevation inches.
    pub point: Xy,
}

/// A number with what it measures.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "unit", content = "value", rename_all = "kebab-case")]
pub enum Figure {
    /// A length or a coordinate, inches.
    Inches(f64),
    /// An area, square inches.
    SquareInches(f64),
    /// An area, square feet.
    SquareFeet(f64),
    /// An angle, degrees.
    Degrees(f64),
    /// Sideways for one up.
    Slope(f64),
    /// A whole number of things.
    Count(i64),
    /// What is ordered of a line of the takeoff, in its own unit.
    Quantity(f64),
}

/// What a rule allows.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "limit", rename_all = "kebab-case")]
pub enum Allowed {
    /// This and nothing else.
    Exactly {
        /// The figure.
        figure: Figure,
    },
    /// This or more.
    AtLeast {
        /// The figure.
        figure: Figure,
    },
    /// This or less.
    AtMost {
        /// The figure.
        figure: Figure,
    },
    /// From one figure to the other.
    Between {
        /// The lower one.
        least: Figure,
        /// The higher one.
        most: Figure,
    },
}
