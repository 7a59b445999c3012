//! What takes the end of a panel, and where panels stop.

use serde::{Deserialize, Serialize};

use super::house::EdgeKind;
use crate::geom::polygon::Polygon;
use crate::geom::vocabulary::Point;

/// Trim that receives panels.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
#[non_exhaustive]
pub enum Receiver {
    /// Starter strip under the first course.
    Starter,
    /// Outside corner post.
    OutsidePost,
    /// Inside corner post.
    InsidePost,
    /// J-channel on a wall end, a jamb, a head or over a lower roof.
    JChannel,
    /// Finish trim, in a J-channel under sills: level tops, and starts off the course line.
    FinishTrim,
    /// J-channel along a rake.
    RakeChannel,
    /// Casing, frieze or other trim that boards butt against, with a gap to caulk.
    Trim,
    /// Two-piece finish, top panel or crown at a level top.
    TopFinish,
}

/// One side of a field with its receiver.
#[derive(Clone, Debug, PartialEq)]
pub struct FieldEdge {
    /// What the side is.
    pub kind: EdgeKind,
    /// What takes the panels there.
    pub receiver: Receiver,
    /// From, the field on the left hand; pocket bottom, elevation inches.
    pub from: Point,
    /// To.
    pub to: Point,
    /// Opening it belongs to, an index into the wall's openings.
    pub opening: Option<usize>,
    /// Whether it is a chord of a curve.
    pub is_curved: bool,
    /// Rise in 12, for sloped sides.
    pub pitch: Option<f64>,
    /// Corner tag.
    pub tag: Option<String>,
}

/// Why a part of a wall gets no siding.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
#[non_exhaustive]
pub enum BareBy {
    /// Courses there would stand too near to finished grade.
    NearGrade,
    /// Siding keeps clear of a lower roof or deck.
    OverRoof,
    /// A lower roof stands in front of it: no part of gross area.
    BehindRoof,
    /// It is too narrow for siding: a filler board covers it.
    Filler,
    /// The outline stops short of a roof line or the next wall: no part of gross area.
    StopsShort,
}

/// A part of a wall that gets no siding.
#[derive(Clone, Debug, PartialEq)]
pub struct BarePart {
    /// Why.
    pub by: BareBy,
    /// Its shapes, within the wall and out of openings.
    pub shapes: Vec<Polygon>,
}

/// Where panels go on one wall: the face less openings, between pocket bottoms.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Field {
    /// Index of the elevation.
    pub elevation: usize,
    /// Index of the wall in it.
    pub wall: usize,
    /// Its area.
    pub shapes: Vec<Polygon>,
    /// Its sides.
    pub edges: Vec<FieldEdge>,
    /// Parts of the wall that stay bare.
    pub bare: Vec<BarePart>,
}
