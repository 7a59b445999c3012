//! Notches, slots and holes of a piece, and cuts that are no straight line.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::ids::FeatureId;
use crate::geom::tol::LEVEL;
use crate::geom::vocabulary::Xy;

/// Least that is cut off a face together with the hem over it, inches: the finest mark of a tape, of our
/// own choosing.
pub const LEAST_HEM_CUT: f64 = 1.0 / 16.0;

/// A cut that is no straight line across the panel, point by point: `[along, up]` from the piece's
/// left end and from the butt line.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Contour {
    /// Its corners; on a curve the points to mark, straight lines between them within 1/32 in of it.
    pub points: Vec<Xy>,
    /// Even spacing of the points of a curve, along the panel where it is flat, up where it is steep.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub spacing: Option<f64>,
}

/// Which edge a notch opens to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum NotchSide {
    /// From the top edge: under a sill.
    Top,
    /// From the butt edge: over a head.
    Bottom,
    /// From the left end: a slot.
    Left,
    /// From the right end: a slot.
    Right,
    /// To none: a hole.
    Hole,
}

/// A notch or cut-out, clearances included.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Notch {
    /// Edge it opens to.
    pub side: NotchSide,
    /// Where it opens, from the piece's left end (long point), along the panel.
    pub left: f64,
    /// Width at the edge it opens to; of a slot or hole, its length along the panel.
    pub width: f64,
    /// Greatest depth from that edge, once the piece is ripped; of a slot or hole, its height.
    pub depth: f64,
    /// Height over the butt line of a slot's or hole's lower side.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub foot: Option<f64>,
    /// Openings and fixtures it goes round; none for a step of the wall itself.
    pub around: Vec<FeatureId>,
    /// Its edge, where it is no rectangle: from left to right, or of a slot bottom up.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub contour: Option<Contour>,
}

impl Notch {
    /// Width that is told: at the edge it opens to, unless it opens there in a point; then how far it
    /// reaches along the panel.
    pub fn told_width(&self) -> f64 {
        let points = self.contour.iter().flat_map(|c| &c.points);
        let ends = points.fold([f64::MAX, f64::MIN], |e, p| [e[0].min(p[0]), e[1].max(p[0])]);
        if self.width < LEVEL { self.width.max(ends[1] - ends[0]) } else { self.width }
    }
}
