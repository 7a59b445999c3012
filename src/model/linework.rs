//! What `normalize` yields: lines in inches on the grid, each with the role its layer plays.

use std::collections::{BTreeMap, BTreeSet};

use serde::{Deserialize, Serialize};

use super::drawing::{Group, Ink, Layer, Text, Viewport};
use super::hatch::Hatch;
use super::no_siding::NoSiding;
use super::source::UnitBasis;
use super::turn::Turn;
use super::unused::Unused;
use crate::geom::vocabulary::{Affine, Point, Rect};
use crate::origin::Origin;
use crate::units::Unit;

/// What a layer's contents mean to the layout.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
#[non_exhaustive]
pub enum Role {
    /// Closed outline of a plane area to side.
    Wall,
    /// Closed outline of an area that takes no lap siding: stone, brick, other cladding.
    Bare,
    /// Closed outline of a band board, frieze or water table: it parts the siding of its wall.
    Band,
    /// Upright line at a joint of the building that siding must not bridge.
    Joint,
    /// Window: an inserted block or a closed loop.
    Window,
    /// Door, an overhead door included.
    Door,
    /// Roof or deck as seen; where its closed outline overlaps a wall it hides that part.
    Roof,
    /// Fixture with a mounting block.
    MountingBlock,
    /// Fixture without one.
    Obstacle,
    /// Level line that ties the elevations together, the first floor by custom.
    Level,
    /// Finished grade.
    Grade,
    /// Upright line on, or up to 6 in inside, the wall edge that is an inside corner.
    InsideCorner,
    /// Short text near the foot of a corner, the same in both elevations that show it.
    CornerTag,
    /// Closed rectangle round one elevation.
    Frame,
    /// Text that names an elevation.
    Title,
    /// Drawn siding: a texture, never laid out from.
    Texture,
    /// Dimensions, read as evidence.
    Dimension,
    /// Known and left alone: notes, title blocks, hidden work.
    Ignore,
}

impl Role {
    /// Whether what is drawn with this role shapes the layout, so that it is told if it is not used.
    pub fn shapes_layout(self) -> bool {
        use Role::{CornerTag, Frame, Grade, InsideCorner, Joint, Level};
        let line = matches!(self, Joint | Level | Grade | InsideCorner | CornerTag | Frame);
        line || self.is_outline()
    }

    /// Whether what is drawn with this role is an opening or a fixture: often a block.
    pub fn is_thing(self) -> bool {
        matches!(self, Role::Window | Role::Door | Role::MountingBlock | Role::Obstacle)
    }

    /// Whether what has this role is drawn as closed outlines or blocks.
    pub fn is_outline(self) -> bool {
        use Role::{Band, Bare, Door, MountingBlock, Obstacle, Roof, Wall, Window};
        matches!(self, Wall | Bare | Band | Window | Door | Roof | MountingBlock | Obstacle)
    }
}

/// A layer with the role it was given.
#[derive(Clone, Debug, PartialEq)]
pub struct LayerUse {
    /// The layer.
    pub layer: Layer,
    /// Its role; `None` where no pattern matches.
    pub role: Option<Role>,
    /// The opening that its name speaks of, where it has no role.
    pub speaks_of: Option<Role>,
    /// Shapes and texts on it in model space.
    pub items: usize,
}

/// How the scale was settled.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Scale {
    /// Inches in one drawing unit.
    pub inches: f64,
    /// The unit; none where a known distance set the scale.
    pub unit: Option<Unit>,
    /// What it was taken by.
    pub basis: UnitBasis,
    /// Whether evidence in the drawing agrees, so that a scale bar may be trusted.
    pub proved: bool,
}

/// A chain of straight segments, curves flattened.
#[derive(Clone, Debug, PartialEq)]
pub struct Stroke {
    /// Points, inches on the grid; the first is not repeated at the end of a closed one.
    pub points: Vec<Point>,
    /// Closed by its flag or by meeting ends.
    pub closed: bool,
    /// Role of its layer.
    pub role: Option<Role>,
    /// Index into [`Linework::layers`].
    pub layer: usize,
    /// Index into [`Linework::groups`].
    pub group: Option<usize>,
    /// The insertion that is drawn as one thing and that it is part of, an index into
    /// [`Linework::groups`]: of openings and fixtures only.
    pub part_of: Option<usize>,
    /// What it is drawn with.
    pub ink: Ink,
    /// Entities of the source that it stands for: those joined to it and those that say the same.
    pub entities: usize,
    /// Place in the source.
    pub origin: Origin,
}

impl Stroke {
    /// Whether a side of it comes into one of some boxes, inches: what only goes round them does not.
    pub fn meets_any(&self, boxes: &[Rect]) -> bool {
        let closing = self.closed.then(|| self.points.last().zip(self.points.first())).flatten();
        let open = self.points.windows(2).map(|w| (w[0], w[1]));
        open.chain(closing.map(|(a, b)| (*a, *b))).any(|(p, q)| {
            let side = Rect::from_points(p, q);
            boxes
                .iter()
                .any(|b| side.x0 <= b.x1 && side.x1 >= b.x0 && side.y0 <= b.y1 && side.y1 >= b.y0)
        })
    }
}

/// A shape that is not laid out from, with why.
#[derive(Clone, Debug, PartialEq)]
pub struct LeftStroke {
    /// Its lines, inches; a place of no size where it has none.
    pub stroke: Stroke,
    /// Why.
    pub why: Unused,
}

/// A text in place.
#[derive(Clone, Debug, PartialEq)]
pub struct Label {
    /// The text, lengths in inches.
    pub text: Text,
    /// Role of its layer.
    pub role: Option<Role>,
    /// Index into [`Linework::layers`].
    pub layer: usize,
    /// Insertion it came by.
    pub group: Option<usize>,
    /// Place in the source.
    pub origin: Origin,
}

/// A hatch in place.
#[derive(Clone, Debug, PartialEq)]
pub struct HatchArea {
    /// Loops and line families, inches.
    pub hatch: Hatch,
    /// Role of its layer.
    pub role: Option<Role>,
    /// Index into [`Linework::layers`].
    pub layer: usize,
    /// Insertion it came by.
    pub group: Option<usize>,
    /// Whether its area stands among the strokes as closed outlines.
    pub outlined: bool,
    /// Course lines that it is drawn by; 0 where it is a hatch.
    pub course_lines: usize,
    /// Why it is no siding, though it is drawn like it.
    pub no_siding: Option<NoSiding>,
    /// Place in the source.
    pub origin: Origin,
}

/// A dimension as evidence, inches.
#[derive(Clone, Debug, PartialEq)]
pub struct Measured {
    /// First point.
    pub from: Point,
    /// Second point.
    pub to: Point,
    /// Distance along the dimension line by its points.
    pub drawn: f64,
    /// Middle of the dimension line, where its text stands.
    pub middle: Point,
    /// The text override, if there is one.
    pub text: Option<String>,
    /// What it is lettered with, as plotted.
    pub lettered: Option<String>,
    /// Place in the source.
    pub origin: Origin,
}

/// Shown model-space content in inches, with roles.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Linework {
    /// File stem.
    pub name: String,
    /// How the scale was settled. Source coordinates are inches divided by `scale.inches`.
    pub scale: Scale,
    /// Layers, in the source's order, with roles.
    pub layers: Vec<LayerUse>,
    /// Insertions, placed in inches.
    pub groups: Vec<Group>,
    /// Lines.
    pub strokes: Vec<Stroke>,
    /// Texts of model space.
    pub labels: Vec<Label>,
    /// Hatches.
    pub hatches: Vec<HatchArea>,
    /// Dimensions.
    pub measured: Vec<Measured>,
    /// Texts of paper space with the layout they are on, paper units.
    pub paper_labels: Vec<(String, Label)>,
    /// Windows onto model space; `model` in inches.
    pub viewports: Vec<Viewport>,
    /// Parts that were turned to stand upright, in the order they were.
    pub moved: Vec<Moved>,
    /// Shapes on layers with a role that are not laid out from.
    pub left: Vec<LeftStroke>,
    /// Texts, dimensions and what has no length, of each layer.
    pub asides: BTreeMap<usize, Asides>,
    /// What the drawing holds beside what is read of it.
    pub beside: Beside,
    /// By how much drawing noise put vertices off, inches; 0 in a clean drawing.
    pub roughness: f64,
}

/// What a drawing holds beside what is read of its model space.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Beside {
    /// Pictures, and pages of other files shown as such.
    pub pictures: usize,
    /// Items on sheets.
    pub on_sheets: usize,
}

/// Entities of a layer that are no shapes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Asides {
    /// Texts and dimensions.
    pub said: usize,
    /// Lines of no length.
    pub empty: usize,
}

/// A view that the job wants turned.
#[derive(Clone, Debug, PartialEq)]
pub struct ViewTurn {
    /// Its name in the job.
    pub view: String,
    /// Where it is drawn, inches.
    pub region: Rect,
    /// How.
    pub turn: Turn,
}

/// A view that is drawn at another scale than the one taken for the drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct ViewScale {
    /// The view.
    pub view: String,
    /// Where it is drawn, inches of the scale taken.
    pub region: Rect,
    /// How many times as large it is as that scale has it.
    pub times: f64,
}

/// A part of the drawing that was turned to stand upright.
#[derive(Clone, Debug, PartialEq)]
pub struct Moved {
    /// Where it lies now, inches.
    pub now: Rect,
    /// From there to where it is drawn, inches.
    pub back: Affine,
    /// The view that the job names for it; none where drawing noise was taken out.
    pub view: Option<String>,
}

impl Linework {
    /// Layers that something is read from.
    pub fn layers_read(&self) -> BTreeSet<usize> {
        let strokes = self.strokes.iter().map(|s| s.layer);
        strokes.chain(self.hatches.iter().map(|h| h.layer)).collect()
    }

    /// The way from a place to where it is drawn, inches.
    pub fn way_back(&self, p: Point) -> Affine {
        self.moved.iter().rev().fold(Affine::IDENTITY, |back, m| {
            if m.now.contains(back * p) { m.back * back } else { back }
        })
    }

    /// Where a place of the source, in its own units, lies now, inches.
    pub fn placed(&self, drawn: Point) -> Point {
        let inches = Point::new(drawn.x * self.scale.inches, drawn.y * self.scale.inches);
        self.moved.iter().fold(inches, |p, m| {
            let now = m.back.inverse() * p;
            if m.now.contains(now) { now } else { p }
        })
    }

    /// Where a place is drawn, in the source's own units.
    pub fn source(&self, p: Point) -> Point {
        let drawn = self.way_back(p) * p;
        Point::new(drawn.x / self.scale.inches, drawn.y / self.scale.inches)
    }
}
