//! The finished layout, in the shape of `layout.json` (`lapwright-layout/1`): lengths inches,
//! angles degrees, areas square feet. Verify, takeoff, annotate and write read this and the job.
//!
//! Heights and places are elevation inches: x from the elevation's leftmost wall point, y from the
//! house's level line.

use schemars::JsonSchema;
use serde::Serialize;

use super::corner::Corner;
use super::fastening::{Fastening, Movement};
use super::half::Half;
use super::house::{EdgeKind, OpeningKind, OpeningSide, WallWay};
pub use super::notch::{Contour, Notch, NotchSide};
use super::pole::PoleTable;
pub use super::quantity::{Group, KindShare, Share, TakeoffLine, Zone};
use super::receiver::Receiver;
use super::seam::{Certificate, Conflict};
use super::trim::TrimPiece;
use super::work::WorkOrder;
use crate::diag::Note;
use crate::geom::tol::{CUT, SAME};
use crate::job::Job;

/// A place, `[x, y]`, elevation inches.
pub type Xy = [f64; 2];

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
    pub datum_why: String,
    /// The story pole: heights the datum was chosen from, and every line on the stick.
    pub story_pole: PoleTable,
    /// Faces of the house.
    pub elevations: Vec<Elevation>,
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

/// Where the layout came from.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct Source {
    /// File name.
    pub name: String,
    /// SHA-256 of its bytes, hex.
    pub sha256: String,
    /// Unit taken.
    pub unit: String,
    /// Why that unit.
    pub unit_source: String,
    /// Inches in one drawing unit.
    pub inches_per_unit: f64,
    /// Whether evidence in the drawing agrees with the unit.
    pub unit_proved: bool,
}

/// One face.
#[derive(Clone, Debug, Default, Serialize, JsonSchema)]
pub struct Elevation {
    /// As titled.
    pub name: String,
    /// `[a b c d e f]`: source x = a x + c y + e, source y = b x + d y + f.
    pub to_source: [f64; 6],
    /// Finished grade, left to right.
    pub grade: Vec<Xy>,
    /// Walls.
    pub walls: Vec<Wall>,
    /// Parts of its walls with another cladding.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub zones: Vec<ZoneArea>,
    /// Lines of the source for the grey background; kept out of `layout.json`.
    #[serde(skip)]
    #[schemars(skip)]
    pub backdrop: Vec<super::house::Backdrop>,
}

/// A part of an elevation's walls with another cladding: measured, and not laid out with the rest.
#[derive(Clone, Debug, Default, Serialize, JsonSchema)]
pub struct ZoneArea {
    /// Name.
    pub id: String,
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
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Wall {
    /// Name.
    pub id: String,
    /// As drawn.
    pub outline: Vec<Xy>,
    /// How it was found.
    pub way: WallWay,
    /// What panels may cover between pocket bottoms: outer rings and holes, even-odd.
    pub field: Vec<Vec<Xy>>,
    /// Area of the wall less bare areas and roofs, square feet.
    pub gross_area: f64,
    /// That less openings, square feet.
    pub net_area: f64,
    /// The part of `net_area` above the lowest foot of a rake, square feet; none without a rake.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub gable_area: Option<f64>,
    /// Exposure of drawn siding, inches: not used.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub drawn_exposure: Option<f64>,
    /// Holes.
    pub openings: Vec<Opening>,
    /// Fixtures.
    pub obstacles: Vec<Obstacle>,
    /// Band boards across it, openings left out: outer rings.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub bands: Vec<Vec<Xy>>,
    /// Places of building joints.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub joints: Vec<f64>,
    /// Sides of the field, openings included.
    pub edges: Vec<Edge>,
    /// Courses, bottom up.
    pub courses: Vec<Course>,
}

/// A hole.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Opening {
    /// Name.
    pub id: String,
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
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub cut: Vec<OpeningSide>,
}

/// A fixture.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Obstacle {
    /// Name.
    pub id: String,
    /// Whether it has a mounting block.
    pub mounting_block: bool,
    /// Outline.
    pub outline: Vec<Xy>,
}

/// A side of a field.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Edge {
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
    pub opening: Option<String>,
    /// Corner tag.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tag: Option<String>,
}

/// A level row of panels.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Course {
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
    pub runs: Vec<Run>,
}

/// A part of a course between receivers.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Run {
    /// Name.
    pub id: String,
    /// Left pocket bottom at the long point.
    pub x0: f64,
    /// Right pocket bottom at the long point.
    pub x1: f64,
    /// Receiver on the left.
    pub left: Receiver,
    /// Receiver on the right.
    pub right: Receiver,
    /// Sideways move of the left end per inch of height.
    pub left_slope: f64,
    /// Sideways move of the right end per inch of height.
    pub right_slope: f64,
    /// End gap.
    pub gap: f64,
    /// Middles of laps.
    pub seams: Vec<f64>,
    /// Seams an obstacle fixes; a subset of `seams`.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub fixed: Vec<f64>,
    /// Pieces, left to right.
    pub pieces: Vec<Piece>,
}

impl Run {
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

/// How a piece ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum EndCut {
    /// As it left the works.
    Factory,
    /// Cut square.
    Square,
    /// Cut at an angle.
    Angled,
    /// Cut to a contour of more than one angle, or curved.
    Shaped,
}

/// What is cut from one stock panel for one place.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Piece {
    /// Piece mark, unique in the house.
    pub mark: String,
    /// Panel it is cut from.
    pub panel: String,
    /// The half of it, where the panel is ripped along its whole length and both halves serve.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub half: Option<Half>,
    /// Where it begins on the panel, from its left end.
    pub start: f64,
    /// Where it ends on the panel.
    pub end: f64,
    /// Long point to long point.
    pub length: f64,
    /// Left end on the wall, at its long point.
    pub x0: f64,
    /// Right end on the wall, at its long point.
    pub x1: f64,
    /// Left end.
    pub left_end: EndCut,
    /// Right end.
    pub right_end: EndCut,
    /// Angle of the left cut with the panel's long edge, 90 for square; of a shaped end, that of its
    /// longest slanted side.
    pub left_angle: f64,
    /// Angle of the right cut.
    pub right_angle: f64,
    /// Long point to short point of the left end, along the panel.
    pub left_set: f64,
    /// Same, right.
    pub right_set: f64,
    /// The left cut from foot to head, where it is not square.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub left_contour: Option<Contour>,
    /// Same, right.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub right_contour: Option<Contour>,
    /// Cut along the length.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rip: Option<Rip>,
    /// Notches.
    pub notches: Vec<Notch>,
    /// What is done to its cut upper edges.
    #[serde(skip_serializing_if = "EdgeWork::is_none")]
    pub edge_work: EdgeWork,
    /// What shows on the wall: the outer ring.
    pub outline: Vec<Xy>,
    /// Cut-outs in it.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub holes: Vec<Vec<Xy>>,
    /// Further rings, where an opening parts the piece.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub more: Vec<Vec<Xy>>,
}

/// What is done to the cut upper edges of a piece, so that they hold without their nail hem.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct EdgeWork {
    /// Nail slots punched along edges that are nailed (FACTS PR-09).
    pub slots: u32,
    /// Snap-lock lugs crimped along edges that go into finish trim, and along the slopes of a piece
    /// without a hem (FACTS SD-106, PR-10).
    pub lugs: u32,
    /// Whether the finish trim must be furred out: the cut falls where the panel stands off the wall
    /// (FACTS SD-109).
    pub furring: bool,
}

impl EdgeWork {
    /// Whether there is nothing to do.
    pub fn is_none(&self) -> bool {
        self.slots == 0 && self.lugs == 0
    }
}

impl Piece {
    /// A piece with square ends and nothing told of it but its length and what shows: for unit tests.
    #[cfg(test)]
    pub(crate) fn plain(length: f64, outline: Vec<Xy>) -> Self {
        Piece {
            mark: "T-1-1".to_owned(),
            panel: "P1".to_owned(),
            half: None,
            start: 0.0,
            end: length,
            length,
            x0: 0.0,
            x1: length,
            left_end: EndCut::Square,
            right_end: EndCut::Square,
            left_angle: 90.0,
            right_angle: 90.0,
            left_set: 0.0,
            right_set: 0.0,
            left_contour: None,
            right_contour: None,
            rip: None,
            notches: Vec::new(),
            edge_work: EdgeWork::default(),
            outline,
            holes: Vec::new(),
            more: Vec::new(),
        }
    }

    /// From where to where its foot or its head goes, along from its left end: from long point to
    /// long point or shorter. A notch in it counts as if it were whole.
    pub fn edge(&self, top: bool) -> (f64, f64) {
        let ys = self.outline.iter().map(|q| q[1]);
        let y = if top {
            ys.fold(f64::NEG_INFINITY, f64::max)
        } else {
            ys.fold(f64::INFINITY, f64::min)
        };
        let on = self.outline.iter().filter(|q| (q[1] - y).abs() < CUT);
        on.map(|q| q[0] - self.x0)
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), x| (a.min(x), b.max(x)))
    }
}

/// Where a panel is cut along its length.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Rip {
    /// Taken off the bottom, from the butt edge; 0 if the butt edge stays.
    pub from: f64,
    /// Kept up to this height over the butt line.
    pub to: f64,
}

/// A stock panel.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Panel {
    /// Name.
    pub id: String,
    /// Stock length.
    pub stock: f64,
    /// Marks of the pieces cut from it, left to right; of two halves the lower one's first.
    pub pieces: Vec<String>,
    /// Longest length left over.
    pub offcut: f64,
}

/// The panel count and the proof.
#[derive(Clone, Debug, Default, Serialize, JsonSchema)]
pub struct Bound {
    /// Least possible.
    pub panels: usize,
    /// In this layout.
    pub best: usize,
    /// Whether they are the same; where two stock lengths are mixed, whether what is bought is the least.
    pub proven: bool,
    /// How the bound was found.
    pub method: String,
    /// What it leaves out.
    pub excludes: Vec<String>,
    /// In one sentence.
    pub words: String,
    /// The certificate, for the checker.
    pub certificate: Certificate,
    /// What the careful-crew method takes.
    pub crew: usize,
    /// What net area and ten percent would buy.
    pub by_area: usize,
    /// Where two stock lengths are mixed: what either alone, a crew and the rule of thumb would take, in
    /// words.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub beside: Option<String>,
    /// What the other short-run policy would take, when solved.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub other_policy: Option<usize>,
    /// Rules that could not be kept.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub conflicts: Vec<Conflict>,
}

/// Result of the check.
#[derive(Clone, Debug, Default, Serialize, JsonSchema)]
pub struct Verify {
    /// Rule by rule.
    pub rules: Vec<RuleCheck>,
}

/// One rule.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct RuleCheck {
    /// In words.
    pub rule: String,
    /// How many cases were looked at.
    pub checked: usize,
    /// Each case that breaks it, in words with its place.
    pub violations: Vec<String>,
}

impl Wall {
    /// Height of the lowest foot of a rake; `None` for a wall without one.
    pub fn rake_foot(&self) -> Option<f64> {
        let rakes = self.edges.iter().filter(|e| e.kind == EdgeKind::Rake);
        rakes.map(|e| e.from[1].min(e.to[1])).reduce(f64::min)
    }

    /// The zone of what stands at this height; `None` for a wall without a rake.
    pub fn zone(&self, y: f64) -> Option<Zone> {
        self.rake_foot().map(|foot| if y >= foot - SAME { Zone::Gable } else { Zone::Wall })
    }
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
        super::course::butt(lines, self.datum, exposure, index)
    }

    /// The course whose face holds a height.
    pub fn course_at(&self, y: f64) -> i32 {
        let (lines, exposure) = (&self.story_pole.evened, self.job.product.exposure);
        super::course::course_at(lines, self.datum, exposure, y)
    }

    /// Walls with the elevation each is on.
    pub fn walls(&self) -> impl Iterator<Item = (&Elevation, &Wall)> {
        self.elevations.iter().flat_map(|e| e.walls.iter().map(move |w| (e, w)))
    }

    /// Pieces with the wall, course and run each is in.
    pub fn pieces(&self) -> impl Iterator<Item = (&Wall, &Course, &Run, &Piece)> {
        self.walls().flat_map(|(_, w)| {
            w.courses.iter().flat_map(move |c| {
                c.runs.iter().flat_map(move |r| r.pieces.iter().map(move |p| (w, c, r, p)))
            })
        })
    }
}
