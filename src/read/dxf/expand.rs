//! Blocks inserted: every item in place, layers and visibility inherited.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::entity::Insert;
use super::paths::moved;
use crate::finding::drawing::{BlockArray, BlockFault, DrawingFinding};
use crate::finding::{Finding, Findings};
use crate::geom::vocabulary::{Affine, BezPath, Point};
use crate::model::drawing::{Drawing, Group, Item, Shape, Space};
use crate::origin::{EntityKind, Origin};
use crate::read::limits::Limits;

/// An entity before insertion.
#[derive(Clone, Debug)]
pub(super) struct Raw {
    pub layer: usize,
    pub space: Space,
    pub invisible: bool,
    pub origin: Origin,
    pub body: Body,
}

/// What an entity is.
#[derive(Clone, Debug)]
pub(super) enum Body {
    Shape(Shape),
    Insert(Insert),
}

/// A block's definition.
#[derive(Clone, Debug, Default)]
pub(super) struct Block {
    pub base: Point,
    pub raws: Vec<Raw>,
}

/// State handed down from an insert to what it brings.
#[derive(Clone)]
struct Context {
    map: Affine,
    group: Option<usize>,
    layer: Option<usize>,
    space: Space,
    shown: bool,
    depth: usize,
}

/// Most blocks that are told of one by one.
const MOST_TOLD: usize = 20;

/// What is counted over all of a drawing's entities.
#[derive(Default)]
pub(super) struct Tally {
    /// Whether a limit was met and told.
    pub full: bool,
    /// Points so far.
    points: usize,
    /// Blocks inserted but not defined.
    missing: Vec<Arc<str>>,
    /// Shapes with absurd coordinates: how many, and the first.
    absurd: Option<(usize, Origin)>,
    /// Insertions left out by block, with why, how many, and the first.
    looped: BTreeMap<Arc<str>, (BlockFault, usize, Origin)>,
}

impl Tally {
    /// Counts a shape with a coordinate beyond the limit: millions of them are one finding.
    pub(super) fn too_far(&mut self, at: &Origin) {
        self.absurd.get_or_insert_with(|| (0, at.clone())).0 += 1;
    }
}

pub(super) struct Expander<'a> {
    pub blocks: &'a BTreeMap<String, Block>,
    pub limits: &'a Limits,
    pub findings: &'a mut Findings,
    pub stack: Vec<Arc<str>>,
    pub tally: &'a mut Tally,
}

impl Expander<'_> {
    pub(super) fn all(&mut self, raws: Vec<Raw>, out: &mut Drawing) {
        let top = Context {
            map: Affine::IDENTITY,
            group: None,
            layer: None,
            space: Space::Model,
            shown: true,
            depth: 0,
        };
        for raw in raws {
            let context = Context { space: raw.space.clone(), ..top.clone() };
            self.one(raw, &context, out);
        }
    }

    /// Tells of what was left out: blocks not defined, shapes too far away, blocks inside themselves.
    pub(super) fn tell(&mut self) {
        if let Some((n, first)) = self.tally.absurd.take() {
            let (shapes, farthest) = (n, self.limits.coordinate);
            let kind = DrawingFinding::NumbersAbsurd { shapes, farthest };
            self.findings.push(Finding::new(kind).about(&first));
        }
        for (block, (fault, insertions, first)) in std::mem::take(&mut self.tally.looped) {
            let block = block.to_string();
            let kind = DrawingFinding::BlockNesting { block, fault, insertions };
            self.findings.push(Finding::new(kind).about(&first));
        }
        for block in std::mem::take(&mut self.tally.missing) {
            let block = block.to_string();
            self.findings.push(Finding::new(DrawingFinding::BlockMissing { block }));
        }
    }

    fn one(&mut self, raw: Raw, context: &Context, out: &mut Drawing) {
        if out.items.len() >= self.limits.items {
            if !self.tally.full {
                self.tally.full = true;
                let most = self.limits.items;
                let kind = DrawingFinding::ItemsTooMany { most, from_line: None, array: None };
                self.findings.push(Finding::new(kind).about(&raw.origin));
            }
            return;
        }
        // What stands on layer 0 of a block takes the layer of its insert.
        let zero = out.layers.get(raw.layer).is_some_and(|l| l.name == "0");
        let layer = if zero { context.layer.unwrap_or(raw.layer) } else { raw.layer };
        let layer_shown = out.layers.get(layer).is_none_or(|l| l.shown);
        let shown = context.shown && layer_shown && !raw.invisible;
        match raw.body {
            Body::Shape(shape) => {
                let shape = moved(shape, context.map);
                if absurd(&shape, self.limits.coordinate) {
                    self.tally.too_far(&raw.origin);
                    return;
                }
                self.tally.points += size(&shape);
                if self.tally.points > self.limits.points {
                    self.full_of_points(&raw.origin);
                    return;
                }
                let space = context.space.clone();
                out.items.push(Item {
                    layer,
                    space,
                    group: context.group,
                    shown,
                    shape,
                    origin: raw.origin,
                });
            }
            Body::Insert(insert) => self.insert(insert, layer, shown, &raw.origin, context, out),
        }
    }

    fn insert(
        &mut self,
        insert: Insert,
        layer: usize,
        shown: bool,
        origin: &Origin,
        context: &Context,
        out: &mut Drawing,
    ) {
        let key = insert.key.clone();
        let Some(block) = self.blocks.get(&*key) else {
            if !self.tally.missing.contains(&insert.block) && self.tally.missing.len() < MOST_TOLD {
                self.tally.missing.push(insert.block);
            }
            return;
        };
        if self.stack.contains(&key) || context.depth >= self.limits.nesting {
            self.too_deep(key, origin);
            return;
        }
        self.stack.push(key);
        let across = Affine::rotate(insert.angle.to_radians());
        'array: for row in 0..insert.rows {
            for column in 0..insert.columns {
                if out.items.len() >= self.limits.items
                    || out.groups.len() >= self.limits.insertions
                    || self.tally.points > self.limits.points
                {
                    self.full_array(&insert, origin);
                    break 'array;
                }
                let step = across
                    * Point::new(column as f64 * insert.spacing.0, row as f64 * insert.spacing.1);
                let map = context.map
                    * Affine::translate(step.to_vec2())
                    * insert.placed
                    * Affine::translate(-block.base.to_vec2());
                out.groups.push(Group {
                    block: insert.block.clone(),
                    parent: context.group,
                    layer,
                    space: context.space.clone(),
                    placed: map,
                    attributes: insert.attributes.clone(),
                    origin: origin.clone(),
                });
                let inner = Context {
                    map,
                    group: Some(out.groups.len() - 1),
                    layer: Some(layer),
                    space: context.space.clone(),
                    shown,
                    depth: context.depth + 1,
                };
                for raw in &block.raws {
                    self.one(raw.clone(), &inner, out);
                }
            }
        }
        self.stack.pop();
    }

    /// Counts a block that inserts itself, or is nested deeper than any drawing needs.
    fn too_deep(&mut self, key: Arc<str>, origin: &Origin) {
        let fault = if self.stack.contains(&key) {
            BlockFault::InsertsItself
        } else {
            BlockFault::NestedTooDeep
        };
        let told = &mut self.tally.looped;
        if told.len() < MOST_TOLD || told.contains_key(&key) {
            told.entry(key).or_insert((fault, 0, origin.clone())).1 += 1;
        }
    }

    fn full_of_points(&mut self, origin: &Origin) {
        if !self.tally.full {
            self.tally.full = true;
            let kind = DrawingFinding::PointsTooMany { most: self.limits.points, from_line: None };
            self.findings.push(Finding::new(kind).about(origin));
        }
    }

    fn full_array(&mut self, insert: &Insert, origin: &Origin) {
        if !self.tally.full {
            self.tally.full = true;
            let array = BlockArray {
                block: insert.block.to_string(),
                columns: insert.columns,
                rows: insert.rows,
            };
            let (most, array) = (self.limits.items, Some(array));
            let kind = DrawingFinding::ItemsTooMany { most, from_line: None, array };
            self.findings.push(Finding::new(kind).about(origin));
        }
    }
}

/// Points that an entity is kept as before it is inserted.
pub(super) fn points_of(raw: &Raw) -> usize {
    match &raw.body {
        Body::Shape(shape) => size(shape),
        Body::Insert(_) => 1,
    }
}

/// Points that a shape is kept as: what else it holds is counted as points that take as much room.
fn size(shape: &Shape) -> usize {
    /// A part of a path takes as much as two vertices, and is copied once more on its way.
    const OF_PATH: usize = 4;
    /// Letters that take as much as a vertex.
    const LETTERS: usize = 24;
    match shape {
        Shape::Polyline(p) => p.vertices.len(),
        Shape::Curve(c) => OF_PATH * c.elements().len(),
        Shape::Hatch(h) => {
            let loops: usize = h.loops.iter().map(|l| OF_PATH * l.elements().len() + 1).sum();
            let families: usize = h.families.iter().map(|f| 3 + f.dashes.len()).sum();
            loops + families + h.pattern.len() / LETTERS
        }
        Shape::Text(t) => 1 + t.content.len() / LETTERS,
        Shape::Dimension(d) => 1 + d.text.as_ref().map_or(0, String::len) / LETTERS,
        Shape::Point(_) => 1,
    }
}

fn absurd(shape: &Shape, most: f64) -> bool {
    let wild = |p: Point| !p.is_finite() || p.x.abs().max(p.y.abs()) > most;
    match shape {
        Shape::Polyline(p) => p.vertices.iter().any(|v| wild(v.at) || !v.bulge.is_finite()),
        Shape::Curve(c) => wild_path(c, most),
        Shape::Hatch(h) => h.loops.iter().any(|l| wild_path(l, most)),
        Shape::Text(t) => wild(t.at) || t.height.abs() > most || t.height.is_nan(),
        Shape::Dimension(d) => wild(d.from) || wild(d.to) || wild(d.line),
        Shape::Point(p) => wild(*p),
    }
}

fn wild_path(path: &BezPath, most: f64) -> bool {
    use crate::geom::vocabulary::PathEl;
    let wild = |p: &Point| !p.is_finite() || p.x.abs().max(p.y.abs()) > most;
    path.elements().iter().any(|el| match el {
        PathEl::MoveTo(p) | PathEl::LineTo(p) => wild(p),
        PathEl::QuadTo(a, b) => wild(a) || wild(b),
        PathEl::CurveTo(a, b, c) => wild(a) || wild(b) || wild(c),
        PathEl::ClosePath => false,
    })
}

/// An origin's parts shared between entities of one layer.
pub(super) fn origin(
    line: usize,
    handle: Option<Box<str>>,
    entity: EntityKind,
    layer: &Arc<str>,
) -> Origin {
    Origin { line, handle, entity, layer: layer.clone() }
}
