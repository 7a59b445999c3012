//! The house as its elevations show it, each elevation in inches of its own: x to the right from
//! its leftmost wall point, y up from the house's level line.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::account::LayerAccount;
use super::corner::Corner;
use super::filler::DrawnFiller;
use super::ids::{ElevationName, ObstacleId, OpeningId, WallId, ZoneId};
use super::linework::Role;
use crate::geom::polygon::Polygon;
use crate::geom::tol::SAME;
use crate::geom::vocabulary::{Affine, Point, Rect, Ring, Vec2};
use crate::origin::Origin;

/// A house.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct House {
    /// Elevations in wrap order where it is known (each one's right edge is the next one's left),
    /// else as drawn.
    pub elevations: Vec<DrawnElevation>,
    /// Which way each drawn elevation faces, in quarter turns of the wrap order from the front; empty
    /// where names do not tell.
    pub facings: Vec<usize>,
    /// Corners, each once.
    pub corners: Vec<Corner>,
    /// The zone of the job this is the part of; the whole house where none is named.
    pub zone: Option<usize>,
    /// What became of all that is drawn on layers with a role, of the whole house only.
    pub accounts: Vec<LayerAccount>,
    /// By how much drawing noise put vertices off, inches; 0 in a clean drawing.
    pub roughness: f64,
}

impl House {
    /// The house with other names of walls, openings and fixtures: each by the one it has; what is not
    /// named keeps its own.
    pub fn renamed(&self, names: &BTreeMap<String, String>) -> House {
        let mut out = self.clone();
        let named = |id: &str| names.get(id).cloned().unwrap_or_else(|| id.to_owned());
        for w in out.elevations.iter_mut().flat_map(|e| &mut e.walls) {
            w.id = named(&w.id).into();
            w.openings.iter_mut().for_each(|o| o.id = named(&o.id).into());
            w.obstacles.iter_mut().for_each(|o| o.id = named(&o.id).into());
        }
        for c in &mut out.corners {
            c.sides.iter_mut().for_each(|s| s.wall = named(&s.wall).into());
            if let Some((wall, side)) = c.id.split_once('/') {
                c.id = format!("{}/{side}", named(wall)).into();
            }
        }
        out
    }
}

/// One face of the house.
#[derive(Clone, Debug, PartialEq)]
pub struct DrawnElevation {
    /// As titled.
    pub name: ElevationName,
    /// From elevation inches to source coordinates.
    pub to_source: Affine,
    /// Plane areas to side.
    pub walls: Vec<DrawnWall>,
    /// Finished grade, left to right; empty where none is drawn.
    pub grade: Vec<Point>,
    /// Whether a level line was drawn, so that y is shared by the house.
    pub level_drawn: bool,
    /// Everything drawn in it, for the gray background of a sheet.
    pub backdrop: Vec<Backdrop>,
    /// Where texts stand in it, elevation inches.
    pub texts: Vec<Rect>,
    /// Parts of its walls with another cladding.
    pub zones: Vec<DrawnZone>,
}

/// What a zone covers of an elevation.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct DrawnZone {
    /// Name, unique in the house: `front-Z1`.
    pub id: ZoneId,
    /// The zone's name in the job.
    pub zone: String,
    /// What covers it.
    pub cladding: String,
    /// Whether it is laid out, as a set of its own.
    pub laid: bool,
    /// Where it is.
    pub shapes: Vec<Polygon>,
    /// Their area, square inches.
    pub gross: f64,
    /// That less openings.
    pub net: f64,
}

/// A line of the source drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct Backdrop {
    /// Points, elevation inches.
    pub points: Vec<Point>,
    /// Whether the last joins the first.
    pub closed: bool,
    /// Role of its layer.
    pub role: Option<Role>,
}

/// A plane area to side.
#[derive(Clone, Debug, PartialEq)]
pub struct DrawnWall {
    /// Name, unique in the house: `front-1`.
    pub id: WallId,
    /// As drawn.
    pub outline: Ring,
    /// The outline less bare areas and roofs that hide it.
    pub faces: Vec<Polygon>,
    /// What takes parts of the outline away, as drawn.
    pub hidden: Vec<HiddenPart>,
    /// Openings in it.
    pub openings: Vec<DrawnOpening>,
    /// Fixtures on it.
    pub obstacles: Vec<DrawnObstacle>,
    /// Band boards across it, openings left out.
    pub bands: Vec<Polygon>,
    /// Places of building joints, left to right.
    pub joints: Vec<f64>,
    /// The sides of `faces`, each with what it is.
    pub edges: Vec<DrawnEdge>,
    /// Parts too narrow for siding.
    pub fillers: Vec<DrawnFiller>,
    /// Strips before its sides that its outline stops short of: nothing is drawn there.
    pub short: Vec<Polygon>,
    /// Exposure of a drawn siding texture, inches: reported, never used (common practice).
    // LayoutFact::HatchIsNoLayout.
    pub drawn_exposure: Option<f64>,
    /// Which way to a wall was taken: `outline`, `hatch`, `arrangement`.
    pub way: WallWay,
    /// Place in the source.
    pub origin: Origin,
}

/// A part of a wall's outline that is no wall to side.
#[derive(Clone, Debug, PartialEq)]
pub struct HiddenPart {
    /// What hides it.
    pub by: HiddenBy,
    /// Its shape, which may reach beyond the wall.
    pub shape: Polygon,
}

/// What hides a part of a wall.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
#[non_exhaustive]
pub enum HiddenBy {
    /// A lower roof in front of it.
    Roof,
    /// It is drawn as not sided, or a zone of other cladding covers it.
    NotSided,
    /// It lies outside the zone that is laid out.
    OtherZone,
    /// A band board.
    Band,
    /// The gap at a joint of the building.
    Joint,
    /// The strip, no wider than drawing noise, between one of these and a side of the wall.
    Noise,
}

/// How a wall was found.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema,
)]
#[serde(rename_all = "lowercase")]
#[non_exhaustive]
pub enum WallWay {
    /// A closed outline on a wall layer.
    #[default]
    Outline,
    /// The boundary of a siding hatch.
    Hatch,
    /// Faces of the arrangement of loose lines.
    Arrangement,
    /// Given by the job, drawn nowhere.
    Job,
}

/// A hole in a wall.
#[derive(Clone, Debug, PartialEq)]
pub struct DrawnOpening {
    /// Name, unique in the house: `front-W1`.
    pub id: OpeningId,
    /// What it is.
    pub kind: OpeningKind,
    /// The edge the channel follows.
    pub outline: Ring,
    /// The same before fillers beside it, or a first course that hangs under its sill, were taken into it.
    pub unfilled: Option<Ring>,
    /// Sides at which the drawn opening goes on over an area without siding.
    pub cut: Vec<OpeningSide>,
    /// The block it was inserted as.
    pub block: Option<String>,
    /// Place in the source.
    pub origin: Origin,
}

/// Kinds of opening.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[non_exhaustive]
pub enum OpeningKind {
    /// Channel on all sides, a sill.
    Window,
    /// Channel on head and jambs.
    Door,
    /// A wide door: channel on head and jambs.
    OverheadDoor,
    /// Louvre, vent or hatch: framed like a window.
    Vent,
}

/// A side of an opening.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum OpeningSide {
    /// Its left jamb.
    Left,
    /// Its right jamb.
    Right,
    /// Its foot.
    Sill,
    /// Its top.
    Head,
}

/// A fixture on a wall: lamp, tap, meter, vent.
#[derive(Clone, Debug, PartialEq)]
pub struct DrawnObstacle {
    /// Name, unique in the house.
    pub id: ObstacleId,
    /// Its outline, the mounting block's where it has one.
    pub outline: Ring,
    /// Whether it sits on a mounting block.
    pub mounting_block: bool,
    /// How far it is moved up, to keep out of a course; 0 where it stands as drawn.
    pub moved: f64,
    /// Place in the source.
    pub origin: Origin,
}

/// One side of a wall's faces.
#[derive(Clone, Debug, PartialEq)]
pub struct DrawnEdge {
    /// What it is.
    pub kind: EdgeKind,
    /// From, the face on the left hand.
    pub from: Point,
    /// To.
    pub to: Point,
    /// Rise in 12 of run, for sloped sides.
    pub pitch: Option<f64>,
    /// Corner tag drawn beside it.
    pub tag: Option<String>,
}

/// What a side of a wall is.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
#[non_exhaustive]
pub enum EdgeKind {
    /// Level bottom: the siding starts here.
    Base,
    /// Upright side at an outside corner.
    OutsideCorner,
    /// Upright side at an inside corner.
    InsideCorner,
    /// Upright side against something else: masonry, another cladding.
    Abutment,
    /// Level top under a soffit.
    Eave,
    /// Sloped top.
    Rake,
    /// Bottom, level or sloped, on a lower roof.
    LowerRoof,
    /// Top of a bare area (stone base) that the siding stands on.
    BareTop,
    /// Underside of a bare area (band, frieze) above the siding.
    BareBottom,
    /// Side of an opening that is steeper than 45 degrees.
    Jamb,
    /// Top of an opening: level, sloped or curved.
    Head,
    /// Bottom of a window: level, sloped or curved.
    Sill,
}

/// How much steeper than 45 degrees a side may be drawn and still count as sill or head: rise over run
/// at 45.1 degrees.
const FLAT: f64 = 1.0035;

impl EdgeKind {
    /// What a side of an opening is, the siding on its left hand: over it where it runs to the right,
    /// under it where it runs to the left, beside it where it is steeper than 45 degrees. A chord of a
    /// curve is part of the head or the sill that the curve is, until it is plumb.
    pub fn of_opening_side(run: Vec2, is_curved: bool) -> Self {
        let is_steep = !is_curved && run.y.abs() > FLAT * run.x.abs();
        if is_steep || run.x.abs() <= SAME {
            EdgeKind::Jamb
        } else if run.x > 0.0 {
            EdgeKind::Head
        } else {
            EdgeKind::Sill
        }
    }
}

impl OpeningKind {
    /// Whether it has a sill: doors stand on the floor.
    pub fn has_sill(self) -> bool {
        matches!(self, OpeningKind::Window | OpeningKind::Vent)
    }
}

impl DrawnOpening {
    /// Whether the drawn opening ends at this side, so that boards and flashing stand there.
    pub fn ends_at(&self, side: OpeningSide) -> bool {
        !self.cut.contains(&side)
    }

    /// Left, right, sill and head: the box round the outline.
    pub fn sides(&self) -> (f64, f64, f64, f64) {
        let b = crate::geom::polygon::bounds(&self.outline).unwrap_or_default();
        (b.x0, b.x1, b.y0, b.y1)
    }

    /// The same without fillers.
    pub fn own_sides(&self) -> (f64, f64, f64, f64) {
        let ring = self.unfilled.as_ref().unwrap_or(&self.outline);
        let b = crate::geom::polygon::bounds(ring).unwrap_or_default();
        (b.x0, b.x1, b.y0, b.y1)
    }
}
