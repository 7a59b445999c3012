//! The story pole as a table, and the heights the datum was chosen from.

use super::ids::{ElevationName, FeatureId};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The story pole of a laid-out house.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PoleTable {
    /// The datum in force first, then the best of those that differ really from it.
    pub choices: Vec<DatumChoice>,
    /// Heights that were tried: every sixteenth of a course's height, and every height that brings a
    /// head, sill, eave or band to a course line.
    pub tried: usize,
    /// Butt lines from course 1 up where the exposures of boards are evened, inches; above and below
    /// them courses have the product's exposure.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub evened: Vec<f64>,
    /// How the exposures of boards were evened, level by level upwards.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub divisions: Vec<EvenedCourses>,
    /// Every butt line, start, head, sill and top, bottom up.
    pub lines: Vec<PoleLine>,
}

/// One datum with what it does to the house.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct DatumChoice {
    /// Butt line of the first course over the floor reference line, inches.
    pub datum: f64,
    /// How far that is below the lowest start that keeps clear of grade, inches; negative above it.
    pub below: f64,
    /// Whether the layout stands on it.
    pub chosen: bool,
    /// Points against it: the sum of its terms.
    pub score: f64,
    /// What was weighed, each that counts.
    pub terms: Vec<DatumTerm>,
    /// What it does to the house.
    pub effects: DatumEffects,
}

/// How the datum in force was chosen.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "by", rename_all = "kebab-case")]
pub enum DatumReason {
    /// The floor reference line: no wall has a start.
    #[default]
    FloorReference,
    /// The job fixes it.
    FixedByJob,
    /// It is that of the house, for a zone laid out by itself.
    OfTheHouse,
    /// The lowest start on the house that keeps clear of grade.
    LowestStart,
    /// The best of the heights tried.
    Searched {
        /// How far it is below the lowest start, inches; negative above it, 0 at it.
        below: f64,
        /// Heights tried.
        tried: usize,
    },
}

/// Courses of one exposure up to a level that they meet.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct EvenedCourses {
    /// How many.
    pub courses: u32,
    /// Exposure of each, inches.
    pub exposure: f64,
    /// The level, over the floor reference line, inches.
    pub up_to: f64,
}

/// What a datum does to the house; lengths are inches.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct DatumEffects {
    /// The first course on wall bottoms.
    pub first_course: FirstCourse,
    /// Where the first course hangs below the drawn bottom.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hung: Option<HungStart>,
    /// The height that most heads share; none without a head.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub main_heads: Option<MainLine>,
    /// The same of sills.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub main_sills: Option<MainLine>,
    /// A strip lower than this is thin.
    pub least_strip: f64,
    /// Thin strips by place.
    pub thin_strips: Vec<ThinStrips>,
    /// Of the datum laid, strips that skirt boards take the place of.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub skirted: Vec<ThinStrips>,
    /// What is kept of the thinnest top course; none where all are whole.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub least_top: Option<f64>,
    /// Steps at grade, each a whole course.
    pub grade_steps: usize,
    /// Panels ripped or notched, about.
    pub cut_panels: f64,
}

/// The first course on wall bottoms.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum FirstCourse {
    /// Whole everywhere.
    #[default]
    Whole,
    /// Cut along some.
    Cut {
        /// Length of wall bottom.
        along: f64,
        /// Least height kept.
        least: f64,
        /// How far it would hang below the drawn bottom to be whole; 0 where it stays cut.
        whole_if_hung: f64,
    },
}

/// A first course that hangs below the drawn bottom.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct HungStart {
    /// Length of wall bottom.
    pub along: f64,
    /// How far it hangs at most.
    pub most: f64,
}

/// A height that most heads or sills share.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct MainLine {
    /// Over the floor reference line.
    pub height: f64,
    /// What is kept of the course it cuts; none for heads on a course line. Under sills on one the
    /// course below is cut, and its whole face is kept but for the clearance.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub kept: Option<f64>,
}

/// Strips lower than the least.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct ThinStrips {
    /// Where.
    pub place: StripPlace,
    /// Their length.
    pub along: f64,
    /// Height of the lowest, where it is laid.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub least: Option<f64>,
}

/// Where a strip is left.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum StripPlace {
    /// Over heads.
    OverHeads,
    /// Under sills.
    UnderSills,
    /// At eaves and under bands.
    AtTops,
    /// Where siding begins.
    AtStarts,
    /// Over and under fixtures.
    AtFixtures,
}

/// One part of a score.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct DatumTerm {
    /// What is weighed.
    pub weight: DatumWeight,
    /// How much there is of it, in the weight's unit.
    pub amount: f64,
    /// What it is counted in.
    pub unit: WeighedIn,
    /// Amount by weight.
    pub points: f64,
}

/// What is weighed, by the setting of its weight under `courses.weights`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum DatumWeight {
    /// Thin strips over heads.
    StripOverHead,
    /// Thin strips under sills.
    StripUnderSill,
    /// Thin strips at tops.
    StripAtTop,
    /// Thin strips at starts.
    StripAtStart,
    /// Main heads off the course lines.
    MainHead,
    /// Other heads off the course lines.
    OtherLine,
    /// Short top courses.
    ShortTop,
    /// First courses that are cut.
    CutStart,
    /// Steps at grade.
    Step,
    /// Wall that steps leave bare.
    LeftBare,
    /// Panels ripped or notched.
    CutPanel,
}

/// What a weighed amount is counted in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum WeighedIn {
    /// Feet.
    Feet,
    /// Square feet.
    SquareFeet,
    /// Steps.
    Steps,
    /// Panels.
    Panels,
}

/// One height of the stick.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PoleLine {
    /// Over the floor reference line, inches.
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
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum LineKind {
    /// Butt line of a course.
    Butt,
    /// Bottom of the siding on a wall bottom.
    Start,
    /// Top of a bare area the siding stands on.
    StoneTop,
    /// Level bottom over a lower roof.
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
