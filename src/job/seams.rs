//! Where seams may be.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::length::{Length, length};
use super::waiting::WaitingLimit;
use crate::model::seam::Effort;
use crate::model::waiting::OffcutReach;

/// Where seams may be.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct SeamSettings {
    /// Shortest piece of a run with a seam, twice the lap at least. Default 24 in: common practice, no source.
    // SidingFact::ShortestPiece.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub shortest: f64,
    /// Least sideways distance of seams in near courses. Default 24 in: common practice, no source.
    // SidingFact::SidewaysStagger.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub stagger: f64,
    /// Clear courses between two seams in one upright line. Default 3, the stricter reading of
    /// "three courses apart" (siding association's manual, an older edition).
    // SidingFact::ThreeCoursesApart.
    pub clear_courses: u32,
    /// Wished distance of a seam from a jamb line. Default 6 in: common practice, no source.
    // SidingFact::NoSeamAtOpenings.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub jamb: f64,
    /// Width of a cut. Default 1/8 in: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub kerf: f64,
    /// How far the first panel goes past an obstacle without a mounting block, at most a lap: the
    /// second one covers it up to the obstacle. Default 1 in (common practice, no
    /// source).
    // TrimFact::CutAtObstacle.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub past_obstacle: f64,
    /// Whether a run that one panel covers may get a seam.
    pub seam_short_runs: bool,
    /// Whether a panel that is ripped along its whole length may serve twice: its lower part where a
    /// course is cut at its head, its upper part where one is cut at its foot, as a first course without
    /// `courses.hang_below` and the start over a step. Boards: any two strips that the width holds. The
    /// bound on panels says nothing of it. Default: no.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub reuse_halves: bool,
    /// Most offcuts that may wait at the end of a wall, each from the end of the wall where its panel is
    /// opened to the start of the wall that uses it; `any` for any number. Default 8: what one pair of
    /// sawhorses holds, marked and in sight (common practice, no source). Fewer cost panels:
    /// `--compare-waiting` prints how many.
    pub waiting: WaitingLimit,
    /// How far an offcut may go: used on the same `wall`, there or on the `next wall` in the order of
    /// walls, or anywhere in the `house`. Default `house`.
    pub offcuts: OffcutReach,
    /// How hard the search tries.
    pub effort: Effort,
    /// Seed of the search.
    pub seed: u64,
}

impl Default for SeamSettings {
    fn default() -> Self {
        SeamSettings {
            shortest: 24.0,
            stagger: 24.0,
            clear_courses: 3,
            jamb: 6.0,
            kerf: 0.125,
            past_obstacle: 1.0,
            seam_short_runs: false,
            reuse_halves: false,
            waiting: WaitingLimit::at_most(8),
            offcuts: OffcutReach::House,
            effort: Effort::Usual,
            seed: 1,
        }
    }
}
