//! Courses and runs as laid.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::piece::Piece;
use crate::geom::tol::CUT;
use crate::model::course::RunEnd;
use crate::model::ids::RunId;

/// A level row of panels.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LaidCourse {
    /// Counted from the datum.
    pub index: i32,
    /// Butt line.
    pub bottom: f64,
    /// Next butt line.
    pub top: f64,
    /// Height kept where every run of the course is ripped alike.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rip: Option<f64>,
    /// Jamb lines.
    pub avoid: Vec<f64>,
    /// Runs.
    pub runs: Vec<LaidRun>,
}

/// A part of a course between receivers.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LaidRun {
    /// Name.
    pub id: RunId,
    /// Left pocket bottom at the long point.
    pub x0: f64,
    /// Right pocket bottom at the long point.
    pub x1: f64,
    /// Its left end and its right end.
    pub ends: [RunEnd; 2],
    /// End gap.
    pub gap: f64,
    /// Middles of laps.
    pub seams: Vec<f64>,
    /// Seams an obstacle fixes; a subset of `seams`.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub fixed: Vec<f64>,
    /// Pieces, left to right.
    pub pieces: Vec<Piece>,
}

impl LaidRun {
    /// From where to where up the wall a seam at `x` shows: as far as its panel covers the wall there,
    /// notches left out.
    pub fn seam_height(&self, x: f64) -> Option<(f64, f64)> {
        // At a joint no piece lies over the middle: the one on its left is as high.
        let over = self.pieces.iter().find(|p| p.x0 <= x && x <= p.x1);
        let piece = over.or_else(|| self.pieces.iter().rfind(|p| p.x0 <= x))?;
        let x = x.min(piece.x1 - CUT);
        let sides = std::iter::once(&piece.outline)
            .chain(&piece.more)
            .flat_map(|r| r.iter().zip(r.iter().cycle().skip(1)));
        let crossings = sides
            .filter(|(a, b)| (a[0] > x) != (b[0] > x))
            .map(|(a, b)| a[1] + (x - a[0]) / (b[0] - a[0]) * (b[1] - a[1]));
        crossings.fold(None, |span: Option<(f64, f64)>, y| {
            Some(span.map_or((y, y), |(low, high)| (low.min(y), high.max(y))))
        })
    }
}
