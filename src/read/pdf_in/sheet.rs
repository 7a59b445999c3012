//! What stands on one page.

use std::collections::BTreeMap;

use hayro_interpret::font::GlyphRun;
use hayro_interpret::hayro_syntax::object::{Dict, String as PdfString};
use hayro_interpret::{
    BlendMode, ClipPath, Device, DrawMode, DrawProps, Image, ImageDrawProps, SoftMask,
};

use super::clip::Clip;
use super::dashes::joined;
use super::pen::{DASHED, Ink, in_dashes};
use super::words::Words;
use crate::geom::flatten::path_points;
use crate::geom::vocabulary::{Affine, BezPath, CurveShape, PathEl, Point, Vec2};
use crate::model::drawing::{
    Dash, Drawing, Ink as ItemInk, Item, Pen, Polyline, Shape, Space, Text,
};
use crate::model::hatch::Hatch;
use crate::origin::{EntityKind, Origin};
use crate::read::limits::Limits;

/// How far chords may stand off a curve that is cut at a clip, points.
const SAGITTA: f64 = 0.02;

/// The layer something is drawn on, and with what.
type On = (usize, ItemInk);

/// A page as it is read.
pub(super) struct Sheet {
    /// Which page, from 1.
    pub(super) number: usize,
    /// Width and height, points.
    pub(super) size: Vec2,
    /// Strokes and fills: layer, with what, what.
    shapes: Vec<(usize, ItemInk, Shape)>,
    /// Texts of the page.
    pub(super) texts: Vec<Text>,
    /// How many pictures it shows.
    pub(super) pictures: usize,
    /// Letters whose font does not say which they are.
    pub(super) mute: usize,
    /// It asks for more than is read of a page.
    pub(super) too_much: bool,
    /// Name, pen, and whether it is a pen that stands in for a layer.
    layers: Vec<(String, Pen, bool)>,
    index: BTreeMap<String, usize>,
    clips: Vec<Clip>,
    /// Layers of the file that what follows stands on, innermost last.
    marked: Vec<Option<String>>,
    words: Words,
    most: usize,
}

impl Sheet {
    /// An empty page.
    pub(super) fn new(number: usize, size: Vec2, limits: &Limits) -> Self {
        Sheet {
            number,
            size,
            shapes: Vec::new(),
            texts: Vec::new(),
            pictures: 0,
            mute: 0,
            too_much: false,
            layers: Vec::new(),
            index: BTreeMap::new(),
            clips: Vec::new(),
            marked: Vec::new(),
            words: Words::default(),
            most: limits.items,
        }
    }

    /// How many strokes and fills it has.
    pub(super) fn strokes(&self) -> usize {
        self.shapes.len()
    }

    /// Ends the page: its last text is whole, and dashes are lines.
    pub(super) fn close(&mut self) {
        self.texts = self.words.texts();
        self.mute = self.words.mute;
        for ((layer, ink, shape), dashed) in joined(std::mem::take(&mut self.shapes)) {
            let on = if dashed { (self.dashed(layer), in_dashes(ink)) } else { (layer, ink) };
            self.shapes.push((on.0, on.1, shape));
        }
    }

    /// The layer of dashed lines of a pen; on a layer of the file they stay.
    fn dashed(&mut self, layer: usize) -> usize {
        let (name, pen, of_pen) = self.layers[layer].clone();
        if !of_pen {
            return layer;
        }
        self.layer_of(name + DASHED, Pen { dash: Dash::Dashed, ..pen }, true)
    }

    /// The layer of the file it is drawn on, or else its pen.
    fn layer(&mut self, ink: Ink) -> usize {
        let name = self.marked.iter().rev().flatten().next();
        let of_pen = name.is_none();
        let name = name.cloned().unwrap_or_else(|| ink.name());
        self.layer_of(name, ink.pen(), of_pen)
    }

    fn layer_of(&mut self, name: String, pen: Pen, of_pen: bool) -> usize {
        if let Some(known) = self.index.get(&name) {
            return *known;
        }
        self.layers.push((name.clone(), pen, of_pen));
        self.index.insert(name, self.layers.len() - 1);
        self.layers.len() - 1
    }

    fn add(&mut self, on: On, shape: Shape) {
        if self.shapes.len() >= self.most {
            self.too_much = true;
            return;
        }
        self.shapes.push((on.0, on.1, shape));
    }

    fn stroke(&mut self, on: On, path: &BezPath) {
        let bounds = path.bounding_box();
        if !bounds.is_finite() || self.clips.iter().any(|c| c.misses(bounds)) {
            return;
        }
        if !self.clips.iter().all(|c| c.holds(bounds)) {
            return self.stroke_cut(on, path);
        }
        let straight = path
            .elements()
            .iter()
            .all(|e| matches!(e, PathEl::MoveTo(_) | PathEl::LineTo(_) | PathEl::ClosePath));
        if !straight {
            return self.add(on, Shape::Curve(path.clone()));
        }
        for (points, closed) in path_points(path, SAGITTA) {
            let mut line = Polyline::open(points);
            line.closed = closed;
            self.add(on, Shape::Polyline(line));
        }
    }

    /// Segment by segment, as far as they show.
    fn stroke_cut(&mut self, on: On, path: &BezPath) {
        for (mut points, closed) in path_points(path, SAGITTA) {
            if closed {
                points.extend(points.first().copied());
            }
            let mut parts: Vec<(Point, Point)> = points.windows(2).map(|w| (w[0], w[1])).collect();
            for clip in &self.clips {
                parts = parts.iter().flat_map(|(a, b)| clip.cut(*a, *b)).collect();
            }
            for chain in chains(&parts) {
                self.add(on, Shape::Polyline(Polyline::open(chain)));
            }
        }
    }

    fn fill(&mut self, on: On, path: BezPath) {
        let bounds = path.bounding_box();
        // A fill is kept whole: what of it shows through a clip is not needed to measure.
        if bounds.is_finite() && !self.clips.iter().any(|c| c.misses(bounds)) {
            let hatch = Hatch { loops: vec![path], solid: true, ..Hatch::default() };
            self.add(on, Shape::Hatch(hatch));
        }
    }

    /// Puts all of it into a drawing, moved.
    pub(super) fn put_into(self, out: &mut Drawing, by: Vec2) {
        let layers: Vec<usize> =
            self.layers.iter().map(|(name, pen, _)| out.layer(name, *pen)).collect();
        let map = Affine::translate(by);
        let mut put = |layer: usize, ink: ItemInk, shape: Shape, entity: EntityKind| {
            let name = std::sync::Arc::from(out.layers[layer].name.as_str());
            let origin = Origin { entity, layer: name, ..Origin::default() };
            let (space, group, shown) = (Space::Model, None, true);
            out.items.push(Item { layer, space, group, shown, ink, shape, origin });
        };
        for (layer, ink, shape) in self.shapes {
            let entity = match shape {
                Shape::Hatch(_) => EntityKind::PdfFill,
                _ => EntityKind::PdfStroke,
            };
            put(layers[layer], ink, moved(shape, map), entity);
        }
        if self.texts.is_empty() {
            return;
        }
        let words = out.layer("text", Pen::default());
        for text in self.texts {
            let name = std::sync::Arc::from("text");
            let origin = Origin { entity: EntityKind::PdfText, layer: name, ..Origin::default() };
            let (space, group, shown) = (Space::Model, None, true);
            let shape = Shape::Text(text.moved(map));
            let ink = ItemInk::default();
            out.items.push(Item { layer: words, space, group, shown, ink, shape, origin });
        }
    }
}

/// Segments that go on from one to the next as lines of several points.
fn chains(parts: &[(Point, Point)]) -> Vec<Vec<Point>> {
    let mut out: Vec<Vec<Point>> = Vec::new();
    for (a, b) in parts {
        match out.last_mut().filter(|line| line.last() == Some(a)) {
            Some(line) => line.push(*b),
            None => out.push(vec![*a, *b]),
        }
    }
    out
}

fn moved(shape: Shape, map: Affine) -> Shape {
    match shape {
        Shape::Polyline(mut line) => {
            line.vertices.iter_mut().for_each(|v| v.at = map * v.at);
            Shape::Polyline(line)
        }
        Shape::Curve(path) => Shape::Curve(map * path),
        Shape::Hatch(hatch) => Shape::Hatch(hatch.moved(map)),
        other => other,
    }
}

impl<'a> Device<'a> for Sheet {
    fn draw_path(&mut self, path: &BezPath, props: DrawProps<'a>, mode: &DrawMode) {
        let ink = Ink::of(&props, mode);
        let on = (self.layer(ink), ink.of_item());
        let placed = props.transform * path.clone();
        match mode {
            DrawMode::Stroke(_) => self.stroke(on, &placed),
            DrawMode::Fill(_) => self.fill(on, placed),
            DrawMode::FillAndStroke(..) => {
                self.stroke(on, &placed);
            }
            DrawMode::Invisible => {}
        }
    }

    fn push_clip_path(&mut self, clip: &ClipPath) {
        self.clips.push(Clip::of(&clip.path));
    }

    fn pop_clip(&mut self) {
        self.clips.pop();
    }

    fn push_transparency_group(&mut self, _: f32, _: Option<SoftMask<'a>>, _: BlendMode) {}

    fn pop_transparency_group(&mut self) {}

    fn draw_glyph_run(&mut self, run: &GlyphRun<'_, 'a>, props: DrawProps<'a>, _: &DrawMode) {
        self.words.add(run, props.transform);
    }

    fn draw_image(&mut self, _: Image<'a, '_>, _: ImageDrawProps<'a>) {
        self.pictures += 1;
    }

    fn begin_marked_content(&mut self, tag: &[u8], properties: Option<&Dict<'_>>) {
        let name = properties.filter(|_| tag == b"OC").and_then(|p| p.get::<PdfString>("Name"));
        self.marked.push(name.map(|n| decoded(n.as_bytes())));
    }

    fn end_marked_content(&mut self) {
        self.marked.pop();
    }
}

/// A text of the file: UTF-16 behind its mark, else as good as Latin.
fn decoded(bytes: &[u8]) -> String {
    match bytes {
        [0xfe, 0xff, rest @ ..] => encoding_rs::UTF_16BE.decode_without_bom_handling(rest).0,
        [0xef, 0xbb, 0xbf, rest @ ..] => String::from_utf8_lossy(rest),
        _ => encoding_rs::WINDOWS_1252.decode_without_bom_handling(bytes).0,
    }
    .into_owned()
}
