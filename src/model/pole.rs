//! The story pole as a table, and the heights the datum was chosen from.

use super::ids::{ElevationName, FeatureId};
use schemars::JsonSchema;
use serde::Serialize;

/// The story pole of a laid-out house.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct PoleTable {
    /// The datum in force first, then the best of those that differ really from it.
    pub choices: Vec<DatumChoice>,
    /// Heights that were tried: every sixteenth of a course's height, and every height that brings a
    /// head, sill, eave or band to a course line.
    pub tried: usize,
    /// Butt lines from course 1 up where the exposures of boards are evened, inches; above and below
    /// them courses have the product's exposure.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub evened: Vec<f64>,
    /// Every butt line, start, head, sill and top, bottom up.
    pub lines: Vec<PoleLine>,
}

/// One datum with what it does to the house.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct DatumChoice {
    /// Butt line of the first course over the level line, inches.
    pub datum: f64,
    /// How far that is below the lowest start that keeps clear of grade, inches; negative above it.
    pub below: f64,
    /// Whether the layout stands on it.
    pub chosen: bool,
    /// Points against it: the sum of its terms.
    pub score: f64,
    /// What was weighed, each that counts.
    pub terms: Vec<DatumTerm>,
    /// What it does, in words.
    pub words: String,
}

/// One part of a score.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct DatumTerm {
    /// Setting of its weight under `courses.weights`.
    pub weight: String,
    /// How much there is of it.
    pub amount: f64,
    /// Counted in: `ft`, `sq ft`, `steps`, `panels`.
    pub unit: String,
    /// Amount by weight.
    pub points: f64,
}

/// One height of the stick.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct PoleLine {
    /// Over the level line, inches.
    pub height: f64,
    /// What stands there.
    pub kind: LineKind,
    /// Number of the course that begins there or holds it, from 1.
    pub course: i32,
    /// Over that course's butt line, inches: 0 on a course line.
    pub over: f64,
    /// Elevations it belongs to.
    pub elevations: Vec<ElevationName>,
    /// Openings and walls it belongs to; none for a butt line.
    pub names: Vec<FeatureId>,
}

/// What a height of the story pole is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum LineKind {
    /// Butt line of a course.
    Butt,
    /// Bottom of the siding on a wall bottom.
    Start,
    /// Top of a bare area the siding stands on.
    StoneTop,
    /// Level foot over a lower roof.
    RoofFoot,
    /// Bottom of a window.
    Sill,
    /// Top of an opening.
    Head,
    /// Underside of a band or frieze.
    Band,
    /// Level top under a soffit.
    Eave,
    /// Peak of a gable.
    Peak,
}

impl LineKind {
    /// The trade's word for it.
    pub fn word(self) -> &'static str {
        match self {
            LineKind::Butt => "butt line",
            LineKind::Start => "start",
            LineKind::StoneTop => "top of base",
            LineKind::RoofFoot => "lower roof",
            LineKind::Sill => "sill",
            LineKind::Head => "head",
            LineKind::Band => "band",
            LineKind::Eave => "eave",
            LineKind::Peak => "peak",
        }
    }
}
