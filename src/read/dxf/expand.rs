//! Blocks inserted: every item in place, layers and visibility inherited.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::entity::Insert;
use super::extent::{absurd, size};
use super::paths::moved;
use super::tally::{MOST_TOLD, Tally};
use crate::finding::drawing::{BlockArray, BlockFault, DrawingFinding};
use crate::finding::{Finding, Findings};
use crate::geom::vocabulary::{Affine, Point};
use crate::model::drawing::{Drawing, Group, Ink, Item, LeftOut, Shape, Space};
use crate::model::unused::Unused;
use crate::origin::{EntityKind, Origin};
use crate::read::limits::Limits;

/// An entity before insertion.
#[derive(Clone, Debug)]
pub(super) struct Raw {
    pub layer: usize,
    pub space: Space,
    pub invisible: bool,
    pub ink: Ink,
    pub origin: Origin,
    pub body: Body,
}

impl Raw {
    /// Whether it is a shape or an insertion.
    pub(super) fn is_read(&self) -> bool {
        !matches!(self.body, Body::Unread(..))
    }
}

/// What an entity is.
#[derive(Clone, Debug)]
pub(super) enum Body {
    Shape(Shape),
    Insert(Insert),
    /// No shape that is read, and where it stands.
    Unread(Arc<Unused>, Option<Point>),
}

/// A block's definition.
#[derive(Clone, Debug, Default)]
pub(super) struct Block {
    pub base: Point,
    /// The file it stands in, where that is another one.
    pub file: Option<String>,
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
    /// It, or what it came by, is flagged invisible.
    invisible: bool,
    depth: usize,
}

/// How an entity in place is seen: its layer, whether it shows, and whether it is flagged invisible.
#[derive(Clone, Copy)]
struct Seen {
    layer: usize,
    shown: bool,
    invisible: bool,
}

/// Most shapes left out that are kept one by one, and how far back a like one is looked for past them.
const MOST_LEFT: usize = 100_000;
const MOST_LOOKED_AT: usize = 64;

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
            invisible: false,
            depth: 0,
        };
        for raw in raws {
            let context = Context { space: raw.space.clone(), ..top.clone() };
            self.one(raw, &context, out);
        }
    }

    /// Tells of what was left out.
    pub(super) fn tell(&mut self) {
        self.tally.tell(self.limits, self.findings);
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
        let invisible = context.invisible || raw.invisible;
        let shown = context.shown && layer_shown && !raw.invisible;
        let seen = Seen { layer, shown, invisible };
        match raw.body {
            Body::Shape(shape) => {
                let shape = moved(shape, context.map);
                if absurd(&shape, self.limits.coordinate) {
                    self.tally.too_far(&raw.origin);
                    if !matches!(shape, Shape::Text(_) | Shape::Dimension(_)) {
                        let far = Arc::new(Unused::TooFar);
                        self.leave(far, None, seen, &raw.origin, context, out);
                    }
                    return;
                }
                self.tally.points += size(&shape);
                if self.tally.points > self.limits.points {
                    self.full_of_points(&raw.origin);
                    return;
                }
                let space = context.space.clone();
                if invisible {
                    self.tally.invisible.push(out.items.len());
                }
                let (group, ink, origin) = (context.group, raw.ink, raw.origin);
                out.items.push(Item { layer, space, group, shown, ink, shape, origin });
            }
            Body::Insert(insert) => {
                self.insert(insert, seen, &raw.origin, context, out);
            }
            Body::Unread(why, at) => {
                let at = at.map(|p| context.map * p);
                self.leave(why, at, seen, &raw.origin, context, out);
            }
        }
    }

    /// Keeps what is no item: one by one as long as they are few, then by number.
    fn leave(
        &mut self,
        why: Arc<Unused>,
        at: Option<Point>,
        Seen { layer, shown, invisible }: Seen,
        origin: &Origin,
        context: &Context,
        out: &mut Drawing,
    ) {
        self.tally.left += 1;
        let many = out.left_out.len() >= MOST_LEFT;
        let same = |l: &&mut LeftOut| l.layer == layer && l.why == why && l.shown == shown;
        if many && let Some(last) = out.left_out.iter_mut().rev().take(MOST_LOOKED_AT).find(same) {
            last.count += 1;
            return;
        }
        let (space, group, origin) = (context.space.clone(), context.group, origin.clone());
        if invisible {
            self.tally.invisible_left.push(out.left_out.len());
        }
        out.left_out.push(LeftOut { layer, space, group, shown, why, count: 1, at, origin });
    }

    fn insert(
        &mut self,
        insert: Insert,
        seen: Seen,
        origin: &Origin,
        context: &Context,
        out: &mut Drawing,
    ) {
        let key = insert.key.clone();
        if let Some(why) = self.nothing_by(&insert, &key, context.depth, origin) {
            // A block of attributes alone is a text.
            let said = matches!(*why, Unused::BlockEmpty { .. }) && !insert.attributes.is_empty();
            if !said {
                let at = Some(context.map * insert.placed * Point::ZERO);
                self.leave(why, at, seen, origin, context, out);
            }
            return;
        }
        let Some(block) = self.blocks.get(&*key) else { return };
        self.stack.push(key);
        let across = Affine::rotate(insert.angle.to_radians());
        'array: for row in 0..insert.rows {
            for column in 0..insert.columns {
                if out.items.len().max(self.tally.left) >= self.limits.items
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
                out.groups.push(group(&insert, map, seen.layer, context, origin));
                let inner = Context {
                    map,
                    group: Some(out.groups.len() - 1),
                    layer: Some(seen.layer),
                    space: context.space.clone(),
                    shown: seen.shown,
                    invisible: seen.invisible,
                    depth: context.depth + 1,
                };
                for raw in &block.raws {
                    self.one(raw.clone(), &inner, out);
                }
            }
        }
        self.stack.pop();
    }

    /// Why an insertion brings nothing, if it does not.
    fn nothing_by(
        &mut self,
        insert: &Insert,
        key: &Arc<str>,
        depth: usize,
        origin: &Origin,
    ) -> Option<Arc<Unused>> {
        let block = insert.block.clone();
        let Some(defined) = self.blocks.get(&**key) else {
            let missing = &mut self.tally.missing;
            if !missing.contains(&block) && missing.len() < MOST_TOLD {
                missing.push(block.clone());
            }
            return Some(Arc::new(Unused::BlockMissing { block: block.to_string() }));
        };
        if self.stack.contains(key) || depth >= self.limits.nesting {
            self.too_deep(key.clone(), origin);
            return Some(Arc::new(Unused::BlockNested { block: block.to_string() }));
        }
        if !defined.raws.is_empty() {
            return None;
        }
        let Some(file) = defined.file.clone() else {
            return Some(Arc::new(Unused::BlockEmpty { block: block.to_string() }));
        };
        let told = &mut self.tally.external;
        if told.len() < MOST_TOLD || told.contains_key(&block) {
            told.entry(block).or_insert_with(|| (file.clone(), 0, origin.clone())).1 += 1;
        }
        Some(Arc::new(Unused::ExternalReference { file }))
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
        Body::Insert(_) | Body::Unread(..) => 1,
    }
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

/// One insertion of a block, as placed in the drawing.
fn group(
    insert: &Insert,
    placed: Affine,
    layer: usize,
    context: &Context,
    origin: &Origin,
) -> Group {
    Group {
        block: insert.block.clone(),
        parent: context.group,
        layer,
        space: context.space.clone(),
        placed,
        attributes: insert.attributes.clone(),
        origin: origin.clone(),
    }
}
