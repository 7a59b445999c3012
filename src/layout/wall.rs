//! Walls as laid, with what stands in them and on them.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::course::LaidCourse;
use crate::geom::boolean::{even_odd, intersection};
use crate::geom::polygon::{Polygon, bounds, total_area};
use crate::geom::tol::SAME;
use crate::geom::vocabulary::{Point, Xy};
use crate::model::filler::FillerSide;
use crate::model::house::{EdgeKind, HiddenBy, OpeningKind, OpeningSide, WallWay};
use crate::model::ids::{ElevationName, ObstacleId, OpeningId, WallId, ZoneId};
use crate::model::quantity::WallPart;
use crate::model::receiver::{BareBy, Receiver};
use crate::real::{Real, Total};

/// One face.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize, JsonSchema)]
pub struct LaidElevation {
    /// As titled.
    pub name: ElevationName,
    /// `[a b c d e f]`: source x = a x + c y + e, source y = b x + d y + f.
    pub to_source: [f64; 6],
    /// Finished grade, left to right.
    pub grade: Vec<Xy>,
    /// No floor line is drawn: heights are counted from what is lowest.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub level_assumed: bool,
    /// Walls.
    pub walls: Vec<LaidWall>,
    /// Parts of its walls with another cladding.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub zones: Vec<LaidZone>,
}

impl LaidElevation {
    /// The direction that text over the source reads in: with the view as it is drawn, degrees.
    pub fn reading(&self) -> f64 {
        let [a, b, ..] = self.to_source;
        b.angle_over(a).to_degrees()
    }
}

/// A part of an elevation's walls with another cladding: measured, and not laid out with the rest.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize, JsonSchema)]
pub struct LaidZone {
    /// Name.
    pub id: ZoneId,
    /// The zone's name in the job.
    pub zone: String,
    /// What covers it.
    pub cladding: String,
    /// Whether it is laid out, as a set of its own.
    pub laid_out: bool,
    /// Outer rings and holes, even-odd.
    pub outline: Vec<Vec<Xy>>,
    /// Area, square feet.
    pub gross_area: f64,
    /// That less openings, square feet.
    pub net_area: f64,
}

/// One plane area.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LaidWall {
    /// Name.
    pub id: WallId,
    /// As drawn, its foot as low as a first course hangs.
    pub outline: Vec<Xy>,
    /// As drawn, where a first course hangs lower than that.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub drawn: Vec<Xy>,
    /// How it was found.
    pub way: WallWay,
    /// What panels may cover between pocket bottoms: outer rings and holes, even-odd.
    pub field: Vec<Vec<Xy>>,
    /// What takes parts of the outline away, as drawn.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub hidden: Vec<LaidHidden>,
    /// Parts that get no siding though the wall goes on there.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub bare: Vec<LaidBare>,
    /// Area of the wall less what is drawn as not sided and roofs in front of it, square feet.
    pub gross_area: f64,
    /// What is sided: gross area less openings and less what is bare near grade and over roofs, square
    /// feet.
    pub net_area: f64,
    /// The part of `net_area` above the lowest foot of a rake, square feet; none without a rake.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub gable_area: Option<f64>,
    /// Parts too narrow for siding, covered by filler boards.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub fillers: Vec<LaidFiller>,
    /// Exposure of drawn siding, inches: not used.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub drawn_exposure: Option<f64>,
    /// Holes.
    pub openings: Vec<LaidOpening>,
    /// Fixtures.
    pub obstacles: Vec<LaidObstacle>,
    /// Band boards across it, openings left out: outer rings.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub bands: Vec<Vec<Xy>>,
    /// Places of building joints.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub joints: Vec<f64>,
    /// Sides of the field, openings included.
    pub edges: Vec<LaidEdge>,
    /// Courses, bottom up.
    pub courses: Vec<LaidCourse>,
}

/// A part of a wall's outline that is no wall to side.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LaidHidden {
    /// What hides it.
    pub by: HiddenBy,
    /// Its shape, which may reach beyond the wall: outer rings and holes, even-odd.
    pub outline: Vec<Vec<Xy>>,
}

/// A part of a wall that gets no siding.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LaidBare {
    /// Why.
    pub by: BareBy,
    /// Its shape, within the wall and out of openings: outer rings and holes, even-odd.
    pub outline: Vec<Vec<Xy>>,
    /// Its area, square feet.
    pub area: f64,
}

impl LaidBare {
    /// How much of it lies over finished grade, square feet; all of it where no grade is drawn.
    pub fn above_grade(&self, grade: &[Xy]) -> f64 {
        let point = |p: &Xy| Point::new(p[0], p[1]);
        let rings: Vec<Vec<Point>> =
            self.outline.iter().map(|ring| ring.iter().map(point).collect()).collect();
        let (Some(first), Some(last), Some(all)) =
            (grade.first(), grade.last(), bounds(rings.iter().flatten()))
        else {
            return self.area;
        };
        // Grade goes on level past its ends.
        let (left, right) = (all.x0.min(first[0]) - 1.0, all.x1.max(last[0]) + 1.0);
        let top = grade.iter().map(|p| p[1]).fold(all.y1, f64::max) + 1.0;
        let mut over = vec![Point::new(left, top), Point::new(left, first[1])];
        over.extend(grade.iter().map(point));
        over.extend([Point::new(right, last[1]), Point::new(right, top)]);
        let over = [Polygon::simple(over).wound()];
        total_area(&intersection(&even_odd(&rings), &over)) / 144.0
    }
}

/// A part of a wall that a filler board covers.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LaidFiller {
    /// Left, bottom, right, top.
    pub place: [f64; 4],
    /// What it stands between: left and right, or below and above.
    pub between: [FillerSide; 2],
    /// The opening whose frame it is taken into.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub opening: Option<OpeningId>,
    /// Width it is ripped to, inches.
    pub width: f64,
    /// Its length, inches.
    pub length: f64,
}

/// A hole.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LaidOpening {
    /// Name.
    pub id: OpeningId,
    /// Kind.
    pub kind: OpeningKind,
    /// Outline.
    pub outline: Vec<Xy>,
    /// Left side.
    pub left: f64,
    /// Right side.
    pub right: f64,
    /// Bottom.
    pub sill: f64,
    /// Top.
    pub head: f64,
    /// Sides at which the drawn opening goes on over an area without siding.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub cut: Vec<OpeningSide>,
}

/// A fixture.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LaidObstacle {
    /// Name.
    pub id: ObstacleId,
    /// Whether it has a mounting block.
    pub mounting_block: bool,
    /// How far it is moved up from where it is drawn, inches; negative down.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub moved: Option<f64>,
    /// Outline.
    pub outline: Vec<Xy>,
}

/// A side of a field.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LaidEdge {
    /// What it is.
    pub kind: EdgeKind,
    /// From, the field on the left hand.
    pub from: Xy,
    /// To.
    pub to: Xy,
    /// Rise in 12.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pitch: Option<f64>,
    /// What takes panels there.
    pub receiver: Receiver,
    /// Opening it belongs to.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub opening: Option<OpeningId>,
    /// Corner tag.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tag: Option<String>,
}

impl LaidWall {
    /// Its outline as drawn, whether a first course hangs below it or not.
    pub fn drawn(&self) -> &[Xy] {
        if self.drawn.is_empty() { &self.outline } else { &self.drawn }
    }

    /// Of gross area, what gets no siding, square feet.
    pub fn bare_area(&self) -> f64 {
        let out_of_gross = [BareBy::BehindRoof, BareBy::StopsShort];
        let of_gross = self.bare.iter().filter(|b| !out_of_gross.contains(&b.by));
        of_gross.map(|b| b.area).total()
    }

    /// What filler boards cover, square feet.
    pub fn filler_area(&self) -> f64 {
        let fillers = self.bare.iter().filter(|b| b.by == BareBy::Filler);
        fillers.map(|b| b.area).total()
    }

    /// Height of the lowest foot of a rake; `None` for a wall without one.
    pub fn rake_foot(&self) -> Option<f64> {
        let rakes = self.edges.iter().filter(|e| e.kind == EdgeKind::Rake);
        rakes.map(|e| e.from[1].min(e.to[1])).reduce(f64::min)
    }

    /// The part that what stands at this height belongs to; `None` for a wall without a rake.
    pub fn part_at(&self, y: f64) -> Option<WallPart> {
        self.rake_foot().map(|foot| if y >= foot - SAME { WallPart::Gable } else { WallPart::Wall })
    }
}
