//! Seam rules that could not be kept, with what is broken where and what would help.

use serde::{Deserialize, Serialize};

use super::ids::{ElevationName, RunId};

/// Courses whose rules cannot all be kept.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, schemars::JsonSchema)]
pub struct Conflict {
    /// Elevation.
    pub elevation: ElevationName,
    /// The least set of courses in conflict, from 0 at the datum.
    pub courses: Vec<i32>,
    /// Names of runs whose seams break a rule as drawn.
    pub runs: Vec<RunId>,
    /// Which rule cannot be kept.
    pub rule: BrokenSeamRule,
    /// Each rule that is broken in the layout as drawn, as it is marked on the sheets.
    pub breaks: Vec<Break>,
    /// The nearest settings that work; none if none was found.
    pub remedies: Vec<SeamRemedy>,
}

impl Conflict {
    /// Whether it is proven that no layout keeps the rules.
    pub fn proven(&self) -> bool {
        use BrokenSeamRule::{JointOffStuds, JointsOnOneStud, Stagger};
        let proof = match &self.rule {
            Stagger { proof, .. } | JointOffStuds { proof } | JointsOnOneStud { proof } => proof,
            BrokenSeamRule::NoJointFits | BrokenSeamRule::LaidByCrew => return false,
        };
        *proof == ConflictProof::NoLayoutExists
    }
}

/// A rule of seams that cannot be kept; lengths are inches.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(tag = "rule", rename_all = "kebab-case")]
pub enum BrokenSeamRule {
    /// Seams of near courses stand apart sideways, or a run has no lawful place for them.
    Stagger {
        /// Least sideways distance.
        least: f64,
        /// Clear courses between two seams in one line.
        clear_courses: u32,
        /// How sure it is.
        proof: ConflictProof,
        /// The least distance as drawn, where it is under the least one.
        nearest: Option<f64>,
    },
    /// A joint of boards stands off the studs.
    JointOffStuds {
        /// How sure it is.
        #[serde(default)]
        proof: ConflictProof,
    },
    /// Joints of near courses stand on one stud.
    JointsOnOneStud {
        /// How sure it is.
        #[serde(default)]
        proof: ConflictProof,
    },
    /// No joint fits a run: its boards stand end to end. Of layouts of earlier days.
    #[default]
    NoJointFits,
    /// Laid as a crew does: a seam stands nearer than the stagger, and no other place was looked for. Of
    /// layouts of earlier days.
    LaidByCrew,
}

/// How sure a conflict is.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum ConflictProof {
    /// Every layout of these courses was looked at: none keeps the rules.
    NoLayoutExists,
    /// None was found.
    #[default]
    NoneFound,
}

/// A setting of the job that ends a conflict.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(tag = "setting", rename_all = "kebab-case")]
pub enum SeamRemedy {
    /// `seams.stagger`: the largest in whole inches that works.
    Stagger {
        /// Inches.
        inches: i64,
    },
    /// `seams.clear_courses`: the most that works.
    ClearCourses {
        /// Courses.
        courses: u32,
    },
    /// `product.length`: longer boards, or fewer clear courses.
    LongerBoards,
    /// `seams.effort`: a search in place of what a crew does.
    SearchSeams,
}

/// One broken rule, with its mark.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, schemars::JsonSchema)]
pub struct Break {
    /// Its mark on the elevation sheet and in the overlay, unique in the house: `X1`.
    pub mark: String,
    /// What is broken.
    pub fault: SeamFault,
    /// The seams it is broken at.
    pub seams: Vec<SeamAt>,
}

/// What one or two seams break; courses from 1, lengths inches.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(tag = "fault", rename_all = "kebab-case")]
pub enum SeamFault {
    /// Seams of near courses stand too near to one another.
    TooNear {
        /// The courses, the lower first.
        courses: [i32; 2],
        /// How far apart they stand.
        apart: f64,
        /// How far they should.
        least: f64,
    },
    /// No stud that boards may be joined on is left for a joint.
    OffStuds {
        /// The course.
        course: i32,
    },
    /// Fixtures or the shortest piece leave no lawful place.
    NoLawfulPlace {
        /// The course.
        course: i32,
        /// The shortest piece.
        shortest: f64,
    },
}

impl Default for SeamFault {
    fn default() -> Self {
        SeamFault::NoLawfulPlace { course: 0, shortest: 0.0 }
    }
}

/// A seam of a run.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, schemars::JsonSchema)]
pub struct SeamAt {
    /// The run.
    pub run: RunId,
    /// Its course, from the datum.
    pub course: i32,
    /// Middle of the lap, elevation inches.
    pub x: f64,
}
