//! The house as laid: everything that has a place on a wall. Whole before anything is reckoned of it.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::course::{LaidCourse, LaidRun};
use super::kept::Kept;
use super::piece::{Panel, Piece};
use super::wall::{LaidElevation, LaidWall};
use crate::job::stock::stock_of;
use crate::job::{Job, Stock};
use crate::model::corner::Corner;
use crate::model::half::Half;
use crate::model::ids::WallId;
use crate::model::pole::{DatumReason, PoleTable};
use crate::model::source::Source;
use crate::model::trim::TrimPiece;

/// A house with its siding and trim in place.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LaidHouse {
    /// The source.
    pub drawing: Source,
    /// The zone this is the set of; left out for the house's own siding.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub zone: Option<String>,
    /// The job in force, defaults included.
    pub job: Job,
    /// The lengths that panels are stocked in, one at least.
    pub stocks: Vec<Stock>,
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
    /// The walls in the order they are sided.
    #[serde(default)]
    pub order: Vec<WallId>,
    /// What is held of an earlier layout; left out where nothing is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub kept: Option<Kept>,
    /// Stock panels, in cutting order.
    pub panels: Vec<Panel>,
    /// Trim, piece by piece.
    pub trims: Vec<TrimPiece>,
}

impl LaidHouse {
    /// Panels of which both halves serve, each once.
    pub fn halved(&self) -> usize {
        let upper = self.pieces().filter(|(.., p)| p.half == Some(Half::Upper));
        upper.map(|(.., p)| p.panel.as_str()).collect::<std::collections::BTreeSet<_>>().len()
    }

    /// Pieces that are ripped or notched.
    pub fn reworked(&self) -> usize {
        self.pieces().filter(|(.., p)| p.rip.is_some() || !p.notches.is_empty()).count()
    }

    /// The place of a panel's stock among the layout's.
    pub fn stock_of(&self, panel: &Panel) -> usize {
        stock_of(&self.stocks, panel.stock)
    }

    /// Length of the first stock.
    pub fn first_length(&self) -> f64 {
        self.stocks.first().map_or(0.0, |s| s.length)
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
