//! Layers without a role whose names speak of windows or doors: what of them stands on walls, where no
//! opening is, is told loudly, since siding is laid over it.

use std::collections::BTreeMap;

use super::things::together;
use crate::extract::outline::stroke_box;
use crate::finding::house::HouseFinding;
use crate::finding::{Finding, Findings};
use crate::geom::vocabulary::Rect;
use crate::model::linework::{Linework, Stroke};

/// What is smaller either way than this is no opening, inches (common practice, no source).
const LEAST: f64 = 6.0;
/// Most things of a layer that are looked at: one is enough to tell.
const MOST: usize = 400;

/// Tells of each such layer.
pub(super) fn tell(lines: &Linework, walls: &[Rect], openings: &[Rect], findings: &mut Findings) {
    let mut of_layer: BTreeMap<usize, Vec<&Stroke>> = BTreeMap::new();
    for s in &lines.strokes {
        if lines.layers.get(s.layer).is_some_and(|l| l.speaks_of.is_some() && l.layer.shown) {
            of_layer.entry(s.layer).or_default().push(s);
        }
    }
    let (walls, openings) = (ByPlace::of(walls), ByPlace::of(openings));
    for (layer, strokes) in of_layer {
        let used = &lines.layers[layer];
        let Some(role) = used.speaks_of else { continue };
        let stands = |b: &Rect| {
            b.width().min(b.height()) >= LEAST
                && walls.near(b).any(|w| w.contains(b.center()))
                && !openings.near(b).any(|o| o.overlaps(*b))
        };
        let found = outermost(boxes(&strokes).into_iter().filter(stands).take(MOST).collect());
        let Some(first) = found.first() else { continue };
        let (layer, things) = (used.layer.name.clone(), found.len());
        let places = found.iter().map(|b| lines.source(b.center()));
        let kind = HouseFinding::LayerSpeaks { layer, role, things };
        findings.push(
            Finding::new(kind).at(lines.source(first.center())).also_at(places.skip(1).collect()),
        );
    }
}

/// Boxes, left to right.
struct ByPlace {
    boxes: Vec<Rect>,
    widest: f64,
}

impl ByPlace {
    fn of(boxes: &[Rect]) -> Self {
        let mut boxes = boxes.to_vec();
        boxes.sort_by(|a, b| a.x0.total_cmp(&b.x0));
        let widest = boxes.iter().map(Rect::width).fold(0.0, f64::max);
        ByPlace { boxes, widest }
    }

    /// Those that may reach to a box.
    fn near(&self, b: &Rect) -> impl Iterator<Item = &Rect> {
        let from = self.boxes.partition_point(|r| r.x0 < b.x0 - self.widest);
        let to = self.boxes.partition_point(|r| r.x0 <= b.x1);
        self.boxes.get(from..to).unwrap_or_default().iter()
    }
}

/// Boxes of blocks, closed outlines, and lines whose ends come near one another.
fn boxes(strokes: &[&Stroke]) -> Vec<Rect> {
    let mut blocks: BTreeMap<usize, Rect> = BTreeMap::new();
    let (mut out, mut loose) = (Vec::new(), Vec::new());
    for (i, s) in strokes.iter().enumerate() {
        let b = stroke_box(s);
        match s.group {
            Some(group) => {
                blocks.entry(group).and_modify(|r| *r = r.union(b)).or_insert(b);
            }
            None if s.closed => out.push(b),
            None => loose.push(i),
        }
    }
    let around =
        |set: Vec<usize>| set.into_iter().map(|i| stroke_box(strokes[i])).reduce(|a, b| a.union(b));
    out.extend(together(strokes, &loose).into_iter().filter_map(around));
    out.extend(blocks.into_values());
    out
}

/// Without those that stand within others: panes, glass.
fn outermost(mut all: Vec<Rect>) -> Vec<Rect> {
    all.sort_by(|a, b| b.area().total_cmp(&a.area()));
    let mut out: Vec<Rect> = Vec::new();
    for b in all {
        if !out.iter().any(|o| o.contains(b.center())) {
            out.push(b);
        }
    }
    out
}
