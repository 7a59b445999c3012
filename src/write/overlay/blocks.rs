//! Blocks: marks with their attribute, dimensions with what they show.

use super::emit::Emitter;
use super::tables::{DIM_STYLE, DimLook, TEXT_STYLE};
use crate::geom::vocabulary::{Point, Vec2};
use crate::model::drawing::{Across, Dimension, Drawing, Group, Polyline, Shape, Text, Up};
use crate::units::LengthStyle;

/// Height of the marks' own text in their block, which is inserted at text height.
const HEIGHT: f64 = 1.0;

/// A block to be written, and who it is for.
pub(super) struct Block {
    pub name: String,
    pub content: Content,
}

pub(super) enum Content {
    /// The definition of a mark: its frame, and its attribute.
    Mark(Vec<Shape>),
    /// What a dimension shows.
    Dimension { layer: String, shapes: Vec<Shape> },
}

/// The blocks an overlay needs that are not in the source, dimensions in drawing order.
pub(super) fn needed(overlay: &Drawing, taken: &[String], look: DimLook) -> Vec<Block> {
    let mut out: Vec<Block> = Vec::new();
    for g in &overlay.groups {
        if !out.iter().any(|b| b.name == *g.block) {
            let content = Content::Mark(frame(&g.block));
            out.push(Block { name: g.block.to_string(), content });
        }
    }
    // Names of what the source has already stay as they are.
    out.retain(|b| !taken.iter().any(|t| t.eq_ignore_ascii_case(&b.name)));
    let numbers = taken.iter().filter_map(|t| t.strip_prefix("*D")?.parse::<u32>().ok());
    let mut number = numbers.max().unwrap_or(0);
    for (layer, d) in dimensions(overlay) {
        number += 1;
        let content = Content::Dimension { layer: layer.to_owned(), shapes: shown(d, look) };
        out.push(Block { name: format!("*D{number}"), content });
    }
    out
}

/// Dimensions of an overlay with their layers.
pub(super) fn dimensions(overlay: &Drawing) -> impl Iterator<Item = (&str, &Dimension)> {
    overlay.items.iter().filter_map(|i| match &i.shape {
        Shape::Dimension(d) => Some((overlay.layers.get(i.layer)?.name.as_str(), d)),
        _ => None,
    })
}

/// The frame of a mark about its middle, for text one high: none for pieces.
fn frame(block: &str) -> Vec<Shape> {
    if !block.contains("TRIM") {
        return Vec::new();
    }
    let (w, h) = (2.1, 0.9);
    let ring = [(-w, -h), (w, -h), (w, h), (-w, h)].map(|(x, y)| Point::new(x, y));
    vec![Shape::Polyline(Polyline::ring(ring))]
}

/// The lines and text of a level or upright dimension.
fn shown(d: &Dimension, look: DimLook) -> Vec<Shape> {
    let (along, across) = axes(d);
    let foot = |p: Point| p + across * (d.line - p).dot(across);
    let (a, b) = (foot(d.from), foot(d.to));
    let u = look.plotted;
    let mut out = vec![Shape::Polyline(Polyline::line(a, b))];
    for (p, end) in [(d.from, a), (d.to, b)] {
        let to = end - p;
        let reach = to.hypot();
        if reach > u / 8.0 {
            let way = to / reach;
            let line = Polyline::line(p + way * (u / 16.0), end + way * (u / 16.0));
            out.push(Shape::Polyline(line));
        }
        let tick = (along + across) * (u / 16.0);
        out.push(Shape::Polyline(Polyline::line(end - tick, end + tick)));
    }
    let upright = along.y.abs() > along.x.abs();
    out.push(Shape::Text(Text {
        at: middle(d, look),
        height: 3.0 / 32.0 * u,
        angle: if upright { 90.0 } else { 0.0 },
        mirrored: false,
        content: d.text.clone().unwrap_or_else(|| words((b - a).hypot(), look)),
        across: Across::Center,
        up: Up::Middle,
        bold: false,
    }));
    out
}

/// Along the dimension line and across it.
fn axes(d: &Dimension) -> (Vec2, Vec2) {
    let along = Vec2::from_angle(d.angle.unwrap_or(0.0).to_radians());
    (along, Vec2::new(-along.y, along.x))
}

/// Middle of the text, over the line.
fn middle(d: &Dimension, look: DimLook) -> Point {
    let (_, across) = axes(d);
    let foot = |p: Point| p + across * (d.line - p).dot(across);
    foot(d.from).midpoint(foot(d.to)) + across * (3.0 / 32.0 * look.plotted)
}

fn words(length: f64, look: DimLook) -> String {
    let shown = length * look.factor;
    if look.feet { LengthStyle::Feet.length(shown) } else { format!("{}", (shown + 0.5).floor()) }
}

impl Emitter<'_> {
    /// Definitions, each owned by its record.
    pub(super) fn definitions(&mut self, blocks: &[Block], records: &[String]) -> String {
        self.gathered(|e| {
            for (i, b) in blocks.iter().enumerate() {
                let owner = records.get(i).cloned().unwrap_or_default();
                e.owned(&owner, |e| e.definition(b));
            }
        })
    }

    fn definition(&mut self, block: &Block) {
        self.begin("BLOCK", "0", "AcDbBlockBegin");
        self.pair(2, &block.name);
        self.pair(70, if matches!(block.content, Content::Mark(_)) { "2" } else { "1" });
        self.point(10, Point::ZERO);
        self.pair(3, &block.name);
        if self.modern() {
            self.pair(1, "");
        }
        match &block.content {
            Content::Mark(shapes) => {
                shapes.iter().for_each(|s| self.shape("0", s));
                self.definition_of_mark();
            }
            Content::Dimension { layer, shapes } => {
                shapes.iter().for_each(|s| self.shape(layer, s));
            }
        }
        self.begin("ENDBLK", "0", "AcDbBlockEnd");
    }

    fn definition_of_mark(&mut self) {
        self.begin("ATTDEF", "0", "AcDbText");
        self.text_about(Point::ZERO, HEIGHT, "");
        if self.modern() {
            self.pair(100, "AcDbAttributeDefinition");
        }
        self.pair(3, "piece mark");
        self.pair(2, "MARK");
        self.pair(70, "1");
        self.pair(74, "2");
    }

    /// Text centered on a point both ways, as attributes have it.
    fn text_about(&mut self, at: Point, height: f64, words: &str) {
        self.point(10, at);
        self.float(40, height);
        self.text_value(1, words);
        if self.style.is_some() {
            self.pair(7, TEXT_STYLE);
        }
        self.pair(72, "1");
        self.point(11, at);
    }

    /// Every item of the overlay as entities of model space. `blocks` are those of its
    /// dimensions; without one a dimension is left out.
    pub(super) fn entities(
        &mut self,
        overlay: &Drawing,
        look: DimLook,
        blocks: &[Block],
    ) -> Vec<u8> {
        let names = blocks.iter().filter(|b| matches!(b.content, Content::Dimension { .. }));
        let mut names = names.map(|b| b.name.clone()).collect::<Vec<_>>().into_iter();
        let inserts = self.blocks();
        for item in &overlay.items {
            let Some(layer) = overlay.layers.get(item.layer) else { continue };
            match &item.shape {
                Shape::Dimension(d) => {
                    if let Some(name) = names.next() {
                        self.dimension(&layer.name, d, &name, look);
                    }
                }
                shape => self.shape(&layer.name, shape),
            }
        }
        for g in overlay.groups.iter().filter(|_| inserts) {
            if let Some(layer) = overlay.layers.get(g.layer) {
                self.insert(&layer.name, g);
            }
        }
        std::mem::take(&mut self.out).into_bytes()
    }

    /// A mark: an insertion with its attribute, hidden since the mark is written besides.
    fn insert(&mut self, layer: &str, g: &Group) {
        let scale = g.placed.determinant().abs().sqrt();
        let at = g.placed * Point::ZERO;
        let own = self.begin("INSERT", layer, "AcDbBlockReference");
        self.pair(66, "1");
        self.text_value(2, &g.block);
        self.point(10, at);
        for code in [41, 42, 43] {
            self.float(code, scale);
        }
        self.owned(&own, |e| {
            for (tag, value) in g.attributes.iter() {
                e.begin("ATTRIB", layer, "AcDbText");
                e.text_about(at, scale * HEIGHT, value);
                if e.modern() {
                    e.pair(100, "AcDbAttribute");
                }
                e.text_value(2, tag);
                e.pair(70, "1");
                e.pair(74, "2");
            }
            e.begin("SEQEND", layer, "");
        });
    }

    fn dimension(&mut self, layer: &str, d: &Dimension, block: &str, look: DimLook) {
        let (along, across) = axes(d);
        let foot = |p: Point| p + across * (d.line - p).dot(across);
        self.begin("DIMENSION", layer, "AcDbDimension");
        self.pair(2, block);
        self.point(10, foot(d.to));
        self.point(11, middle(d, look));
        self.pair(70, if self.modern() { "32" } else { "0" });
        self.text_value(1, d.text.as_deref().unwrap_or(""));
        if self.modern() {
            self.pair(71, "5");
            if self.weighted() {
                self.float(42, (d.to - d.from).dot(along).abs());
            }
        }
        self.pair(3, DIM_STYLE);
        if self.modern() {
            self.pair(100, "AcDbAlignedDimension");
        }
        self.point(13, d.from);
        self.point(14, d.to);
        self.float(50, d.angle.unwrap_or(0.0));
        if self.modern() {
            self.pair(100, "AcDbRotatedDimension");
        }
    }
}
