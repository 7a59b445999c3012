//! Shapes and text on named layers. Readers yield a [`Drawing`], `annotate` makes one, writers
//! take it, so `read(write(d))` tests both ends.
//!
//! What leaves a reader has nothing implicit: blocks are inserted (each item knows its
//! [`Group`]), colors and layers inherited, curves in one of the forms below, y up.

use std::sync::Arc;

use super::hatch::Hatch;
pub use super::text::{Across, Text, Up};
use super::unused::Unused;
use crate::geom::flatten::MOST_POINTS;
use crate::geom::vocabulary::{Affine, BezPath, Point, Rect, Vec2};
use crate::origin::Origin;
use crate::units::Unit;

/// A drawing.
#[derive(Clone, Debug, Default)]
pub struct Drawing {
    /// File stem or sheet name.
    pub name: String,
    /// Unit the header states, if it states one a house is drawn in.
    pub unit: Option<Unit>,
    /// How the source was written.
    pub dialect: Dialect,
    /// Layers in the source's order.
    pub layers: Vec<Layer>,
    /// Insertions of blocks, a parent before its children.
    pub groups: Vec<Group>,
    /// Shapes and text in drawing order.
    pub items: Vec<Item>,
    /// Windows of paper space onto model space.
    pub viewports: Vec<Viewport>,
    /// Shapes that could not be read as any of the items.
    pub left_out: Vec<LeftOut>,
}

/// Shapes of the source that are no item of the drawing, by layer.
#[derive(Clone, Debug, PartialEq)]
pub struct LeftOut {
    /// Index into [`Drawing::layers`].
    pub layer: usize,
    /// Which space they are in.
    pub space: Space,
    /// Innermost insertion they came by, an index into [`Drawing::groups`].
    pub group: Option<usize>,
    /// As [`Item::shown`].
    pub shown: bool,
    /// Why.
    pub why: Arc<Unused>,
    /// How many; more than one only past what is kept one by one.
    pub count: usize,
    /// Where it stands in the drawing, if it says so.
    pub at: Option<Point>,
    /// Where the first stands in the source.
    pub origin: Origin,
}

/// How the source file was written; the overlay writer answers in kind.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Dialect {
    /// `DXF AC1015`, `SVG`.
    pub format: String,
    /// Binary rather than text.
    pub binary: bool,
    /// Encoding label the text was decoded with, as the WHATWG names it.
    pub encoding: String,
}

/// A layer and how it looks.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Layer {
    /// Name as written.
    pub name: String,
    /// Neither off nor frozen.
    pub shown: bool,
    /// The pen its items are drawn with.
    pub pen: Pen,
}

/// How a line is drawn on paper.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pen {
    /// Width on paper, millimeters, one of the ISO 128 series.
    // DrawingFact::LineWidths.
    pub width: f64,
    /// Red, green, blue.
    pub color: [u8; 3],
    /// Line type.
    pub dash: Dash,
    /// Fill of closed shapes.
    pub fill: Option<[u8; 3]>,
}

impl Default for Pen {
    fn default() -> Self {
        Pen { width: 0.25, color: [0, 0, 0], dash: Dash::Solid, fill: None }
    }
}

/// Color and line weight of one entity as its source writes them: they tell what was drawn in one go
/// from the rest, and nothing more is read from them.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Ink {
    /// Color: a number of the source's own; 0 as its layer has it.
    pub color: u32,
    /// Line weight: a number of the source's own; 0 as its layer has it.
    pub weight: i32,
}

/// Line types, by the names of ISO 128.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Dash {
    /// Continuous.
    #[default]
    Solid,
    /// Dashed.
    Dashed,
    /// Long-dashed dotted, for center and level lines.
    DashDot,
    /// Long-dashed double-dotted.
    DashDotDot,
    /// Dotted.
    Dotted,
}

/// One insertion of a block.
#[derive(Clone, Debug, PartialEq)]
pub struct Group {
    /// The block's name as written; shared by all that insert it.
    pub block: Arc<str>,
    /// The insertion this one is nested in.
    pub parent: Option<usize>,
    /// Layer of the insert, an index into [`Drawing::layers`].
    pub layer: usize,
    /// Which space it is in.
    pub space: Space,
    /// From block coordinates to model coordinates, the parent's included.
    pub placed: Affine,
    /// Attribute tags and values; shared by all that an array inserts.
    pub attributes: Arc<Vec<(String, String)>>,
    /// Where the INSERT stands.
    pub origin: Origin,
}

/// Model space, or the paper space layout of that name.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub enum Space {
    /// Where the building is drawn, full size.
    #[default]
    Model,
    /// A sheet.
    Paper(String),
}

/// One thing drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct Item {
    /// Index into [`Drawing::layers`], block inheritance resolved.
    pub layer: usize,
    /// Which space it is in.
    pub space: Space,
    /// Innermost insertion it came by, an index into [`Drawing::groups`].
    pub group: Option<usize>,
    /// Not flagged invisible, and neither its layer nor its insert's is hidden.
    pub shown: bool,
    /// What it is drawn with, beside its layer's pen.
    pub ink: Ink,
    /// What is drawn.
    pub shape: Shape,
    /// Where it stands in the source.
    pub origin: Origin,
}

/// What can be drawn.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum Shape {
    /// LINE, LWPOLYLINE, POLYLINE, ARC, CIRCLE.
    Polyline(Polyline),
    /// ELLIPSE, SPLINE, SVG paths.
    Curve(BezPath),
    /// HATCH and SOLID.
    Hatch(Hatch),
    /// TEXT, one line of MTEXT each, shown ATTRIBs.
    Text(Text),
    /// A dimension's values; its drawn block is left out.
    Dimension(Dimension),
    /// A POINT.
    Point(Point),
}

/// Points joined by straight or bulged segments.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Polyline {
    /// Corners; each bulge belongs to the segment from its vertex to the next.
    pub vertices: Vec<Vertex>,
    /// Whether the last vertex joins the first.
    pub closed: bool,
}

/// A corner of a polyline.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Vertex {
    /// Place.
    pub at: Point,
    /// Tangent of a quarter of the arc's included angle, positive counter-clockwise (DXF reference).
    // DrawingFact::Bulge.
    pub bulge: f64,
}

/// A linear dimension.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Dimension {
    /// First measured point.
    pub from: Point,
    /// Second measured point.
    pub to: Point,
    /// A point of the dimension line.
    pub line: Point,
    /// Direction of the dimension line, degrees; `None` for aligned.
    pub angle: Option<f64>,
    /// The value stored with it (group 42), drawing units.
    pub measured: Option<f64>,
    /// A text override that is neither empty nor `<>` (DXF reference).
    // DrawingFact::DimensionOverride.
    pub text: Option<String>,
    /// The block that shows it.
    pub picture: Option<String>,
    /// What that block says, as it is plotted.
    pub lettered: Option<String>,
}

/// A paper-space window onto model space.
#[derive(Clone, Debug, PartialEq)]
pub struct Viewport {
    /// The layout it is on.
    pub layout: String,
    /// Its number there; 1 is as a rule the sheet itself.
    pub number: i64,
    /// Its place on the sheet, paper units.
    pub paper: Rect,
    /// What it shows, model units.
    pub model: Rect,
    /// Layers (indices) frozen in it.
    pub frozen: Vec<usize>,
}

impl Text {
    /// The text moved: turned with its place, and seen in a mirror where the map mirrors.
    pub fn moved(self, map: Affine) -> Self {
        let [a, b, c, d, ..] = map.as_coeffs();
        let along = Vec2::from_angle(self.angle.to_radians());
        let image = Vec2::new(a * along.x + c * along.y, b * along.x + d * along.y);
        Text {
            at: map * self.at,
            height: self.height * map.determinant().abs() / image.hypot().max(1e-12),
            angle: image.atan2().to_degrees(),
            mirrored: self.mirrored != (map.determinant() < 0.0),
            ..self
        }
    }
}

impl Polyline {
    /// A straight segment.
    pub fn line(a: Point, b: Point) -> Self {
        Self::open([a, b])
    }

    /// An open chain of straight segments.
    pub fn open(points: impl IntoIterator<Item = Point>) -> Self {
        let vertices = points.into_iter().map(|at| Vertex { at, bulge: 0.0 }).collect();
        Polyline { vertices, closed: false }
    }

    /// A closed ring of straight segments.
    pub fn ring(points: impl IntoIterator<Item = Point>) -> Self {
        Polyline { closed: true, ..Self::open(points) }
    }

    /// Its points, arcs flattened to `sagitta`; the first is not repeated at the end of a closed one. Not
    /// many more than [`MOST_POINTS`]: what follows is left out.
    pub fn points(&self, sagitta: f64) -> Vec<Point> {
        let v = &self.vertices;
        let Some(first) = v.first() else { return Vec::new() };
        // Nearly all lines of a drawing are straight; their points are their corners.
        if v.iter().all(|v| v.bulge == 0.0) {
            return v.iter().map(|v| v.at).collect();
        }
        let mut out = vec![first.at];
        let next = v.iter().skip(1).chain(v.first().filter(|_| self.closed && v.len() > 1));
        for (a, b) in v.iter().zip(next) {
            if out.len() >= MOST_POINTS {
                return out;
            }
            out.extend(crate::geom::flatten::bulge_points(a.at, b.at, a.bulge, sagitta));
        }
        if self.closed && out.len() > 1 {
            out.pop();
        }
        out
    }
}

impl Drawing {
    /// Index of the layer of that name, made with `pen` if there is none.
    pub fn layer(&mut self, name: &str, pen: Pen) -> usize {
        if let Some(i) = self.layers.iter().position(|l| l.name == name) {
            return i;
        }
        self.layers.push(Layer { name: name.to_owned(), shown: true, pen });
        self.layers.len() - 1
    }

    /// Adds a shape to model space.
    pub fn draw(&mut self, layer: usize, shape: Shape) {
        let origin = Origin::default();
        self.items.push(Item {
            layer,
            space: Space::Model,
            group: None,
            shown: true,
            ink: Ink::default(),
            shape,
            origin,
        });
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_closed_pair_of_half_circles_is_a_circle() {
        let v = |x| Vertex { at: Point::new(x, 0.0), bulge: 1.0 };
        let circle = Polyline { vertices: vec![v(0.0), v(10.0)], closed: true };
        let area = crate::geom::polygon::signed_area(&circle.points(1e-4));
        assert!((area - 25.0 * std::f64::consts::PI).abs() < 0.01);
    }
}
