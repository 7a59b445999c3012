//! The finished layout, in the shape of `layout.json` (`lapwright-layout/1`): lengths inches,
//! angles degrees, areas square feet. Verify, takeoff, annotate and write read this and the job.
//!
//! Heights and places are elevation inches: x from the elevation's leftmost wall point, y from the
//! house's level line.

pub mod bound;
pub(crate) mod by_wall;
pub mod course;
pub(crate) mod from_drawn;
pub mod piece;
pub mod slopes;
pub mod verified;
pub mod wall;

use schemars::JsonSchema;
use serde::Serialize;

use self::bound::Bound;
use self::course::{LaidCourse, LaidRun};
use self::piece::{Panel, Piece};
use self::verified::Verify;
use self::wall::{LaidElevation, LaidWall};
use crate::diag::Note;
use crate::job::Job;
use crate::model::corner::Corner;
use crate::model::fastening::{Fastening, Movement};
use crate::model::half::Half;
use crate::model::pole::{DatumReason, PoleTable};
use crate::model::quantity::TakeoffLine;
use crate::model::source::Source;
use crate::model::trim::TrimPiece;
use crate::model::work::WorkOrder;

/// The format's name.
pub const FORMAT: &str = "lapwright-layout/1";

/// A laid-out house.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Layout {
    /// Always `lapwright-layout/1`.
    #[schemars(extend("const" = FORMAT))]
    pub format: &'static str,
    /// The source.
    pub drawing: Source,
    /// The zone this is the set of; left out for the house's own siding.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub zone: Option<String>,
    /// The job in force, defaults included.
    pub job: Job,
    /// Butt line of course 0.
    pub datum: f64,
    /// How the datum was chosen.
    pub datum_reason: DatumReason,
    /// The story pole: heights the datum was chosen from, and every line on the stick.
    pub story_pole: PoleTable,
    /// Faces of the house.
    pub elevations: Vec<LaidElevation>,
    /// Corners, each once, with the walls that meet in it.
    pub corners: Vec<Corner>,
    /// Stock panels, in cutting order.
    pub panels: Vec<Panel>,
    /// The proof of how few panels there can be.
    pub bound: Bound,
    /// Trim, piece by piece.
    pub trims: Vec<TrimPiece>,
    /// The order of work.
    pub work: WorkOrder,
    /// Nails: length, spacing, counts.
    pub fastening: Fastening,
    /// How lengths change with the weather, and whether gaps cover it.
    pub movement: Movement,
    /// What to buy.
    pub takeoff: Vec<TakeoffLine>,
    /// What was checked.
    pub verify: Verify,
    /// Findings.
    pub notes: Vec<Note>,
}

impl Layout {
    /// Panels of which both halves serve, each once.
    pub fn halved(&self) -> usize {
        let upper = self.pieces().filter(|(.., p)| p.half == Some(Half::Upper));
        upper.map(|(.., p)| p.panel.as_str()).collect::<std::collections::BTreeSet<_>>().len()
    }

    /// Butt line of a course, counted from the datum.
    pub fn butt(&self, index: i32) -> f64 {
        let (lines, exposure) = (&self.story_pole.evened, self.job.product.exposure);
        crate::model::course::butt(lines, self.datum, exposure, index)
    }

    /// The course whose face holds a height.
    pub fn course_at(&self, y: f64) -> i32 {
        let (lines, exposure) = (&self.story_pole.evened, self.job.product.exposure);
        crate::model::course::course_at(lines, self.datum, exposure, y)
    }

    /// Walls with the elevation each is on.
    pub fn walls(&self) -> impl Iterator<Item = (&LaidElevation, &LaidWall)> {
        self.elevations.iter().flat_map(|e| e.walls.iter().map(move |w| (e, w)))
    }

    /// Pieces with the wall, course and run each is in.
    pub fn pieces(&self) -> impl Iterator<Item = (&LaidWall, &LaidCourse, &LaidRun, &Piece)> {
        self.walls().flat_map(|(_, w)| {
            w.courses.iter().flat_map(move |c| {
                c.runs.iter().flat_map(move |r| r.pieces.iter().map(move |p| (w, c, r, p)))
            })
        })
    }
}
