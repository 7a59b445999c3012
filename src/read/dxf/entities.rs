//! Entities as they stand in a section or a block, those of several parts put together.

use std::sync::Arc;

use super::census::{is_said, kind_of};
use super::entity::Insert;
use super::expand::{Body, Raw, origin, points_of};
use super::groups::Groups;
use super::made::Made;
use super::number::NumberFault;
use super::paths::moved;
use super::reader::Reader;
use super::tags::Tag;
use super::text::MOST_BYTES;
use crate::finding::Finding;
use crate::finding::drawing::{DrawingFinding, Named};
use crate::geom::vocabulary::Affine;
use crate::model::drawing::{Polyline, Shape, Space, Vertex};
use crate::model::unused::Unused;
use crate::origin::{EntityKind, Origin};

/// Most types that are not read whose names are kept once.
const MOST_TYPES: usize = 200;
/// Most entities that are not read that are kept one by one.
const MOST_KEPT: usize = 100_000;

fn unread_at(groups: &Groups, why: Unused) -> Body {
    Body::Unread(Arc::new(why), groups.point(10))
}

/// Whether an entity shows words or a measure, and no outline.
fn says_only(entity: EntityKind) -> bool {
    use EntityKind::{Attrib, Dimension, MText, Text};
    matches!(entity, Text | MText | Attrib | Dimension)
}

impl<'a> Reader<'a, '_> {
    /// Entities up to (not past) a 0 tag that `ends` them, or until there are `most`; whether they
    /// ended.
    pub(super) fn entities(
        &mut self,
        buffer: &mut Vec<Tag<'a>>,
        raws: &mut Vec<Raw>,
        most: usize,
        ends: impl Fn(&Tag) -> bool,
    ) -> bool {
        while let Some(tag) = self.ahead {
            if tag.code == 0 && ends(&tag) {
                if tag.is("ENDBLK") {
                    self.next();
                }
                return true;
            }
            if raws.len() >= most {
                return false;
            }
            self.next();
            if tag.code != 0 {
                continue;
            }
            self.gather(tag, buffer);
            let points = self.held.1 > self.limits.points;
            if points || self.held.0 >= self.limits.items {
                self.passed_over.overfull(tag.line, points);
                continue;
            }
            let before = raws.len();
            self.entity(buffer, raws);
            self.held.0 += raws[before..].iter().filter(|r| r.is_read()).count();
            self.held.1 += raws[before..].iter().map(points_of).sum::<usize>();
        }
        true
    }

    fn entity(&mut self, buffer: &mut Vec<Tag<'a>>, raws: &mut Vec<Raw>) {
        let first = buffer[0];
        let Some(entity) = kind_of(first.value) else {
            self.passed_over.unread(first.value, first.line);
            if !is_said(first.value) {
                self.unread(buffer, raws);
            }
            return;
        };
        if matches!(entity, EntityKind::AttDef | EntityKind::Vertex | EntityKind::SeqEnd) {
            return;
        }
        let groups = Groups { tags: buffer, decoder: self.decoder };
        let (name, line) = groups.get(8).map_or((&b"0"[..], first.line), |t| (t.value, t.line));
        let handle = groups.handle();
        let (invisible, ink) = (groups.int(60) & 1 == 1, groups.ink());
        let paper = groups.int(67) == 1;
        let layer = self.layer_of(name, line);
        let space = if paper { Space::Paper(String::new()) } else { Space::Model };
        let at = origin(first.line, handle, entity, &self.names[layer]);
        if entity == EntityKind::Viewport {
            if paper || self.in_paper_block {
                self.viewport(buffer);
            }
            return;
        }
        if !self.taken(entity, buffer) {
            return;
        }
        let place = Groups { tags: buffer, decoder: self.decoder }.point(10);
        let made = self.made(entity, buffer, raws, (layer, &space), &at);
        let list = match made {
            Made::Bodies(list) => list,
            other => {
                let why = self.left_out(other, entity, &at).filter(|_| !says_only(entity));
                why.map(|w| Body::Unread(Arc::new(w), place)).into_iter().collect()
            }
        };
        raws.extend(list.into_iter().map(|body| Raw {
            layer,
            space: space.clone(),
            invisible,
            ink,
            origin: at.clone(),
            body,
        }));
    }

    /// Whether an entity is within the limits of its sort; what is not is told.
    fn taken(&mut self, entity: EntityKind, buffer: &[Tag<'a>]) -> bool {
        let groups = Groups { tags: buffer, decoder: self.decoder };
        let line = buffer[0].line;
        if groups.bytes_of_text() > MOST_BYTES {
            self.passed_over.text_cut(line);
        }
        if entity == EntityKind::Spline {
            self.spline_steps += super::spline::steps(&groups);
            if self.spline_steps > self.limits.spline_steps {
                self.passed_over.overfull(line, true);
                return false;
            }
        }
        let block = groups.get(2).copied().filter(|_| entity == EntityKind::Insert);
        block.is_none_or(|b| !self.too_long(Named::Block, b.value, b.line))
    }

    /// What an entity's group pairs make, and those of its vertices or attributes.
    fn made(
        &mut self,
        entity: EntityKind,
        buffer: &mut Vec<Tag<'a>>,
        raws: &mut Vec<Raw>,
        (layer, space): (usize, &Space),
        at: &Origin,
    ) -> Made<'a> {
        let groups = Groups { tags: buffer, decoder: self.decoder };
        let fault = groups.number_fault();
        match entity {
            EntityKind::Hatch if super::hatch::loops(&groups) > self.limits.loops => {
                let (loops, most) = (super::hatch::loops(&groups), self.limits.loops);
                let kind = DrawingFinding::HatchLoops { loops, most };
                self.findings.push(Finding::new(kind).about(at));
                Made::Bodies(vec![unread_at(&groups, Unused::TooManyLoops)])
            }
            EntityKind::Polyline => self.polyline(buffer, fault),
            EntityKind::Insert => self.insert(buffer, raws, layer, space, fault),
            _ => match fault {
                Some(fault) => Made::Unreadable(entity, fault),
                None if entity == EntityKind::Face && groups.is_tilted() => {
                    Made::Bodies(vec![unread_at(&groups, Unused::NotFlat)])
                }
                None => Made::of(groups.shape(entity.word())),
            },
        }
    }

    /// Tells why an entity made nothing.
    fn left_out(&mut self, made: Made<'a>, entity: EntityKind, at: &Origin) -> Option<Unused> {
        match made {
            Made::Bodies(_) => None,
            Made::Surface(name) => {
                self.passed_over.unread(name, at.line);
                let entity = String::from_utf8_lossy(name).into_owned();
                Some(Unused::NotRead { entity })
            }
            Made::Broken => {
                self.passed_over.broken(entity, at.line);
                Some(Unused::Unreadable)
            }
            Made::Unreadable(part, fault) => {
                self.unreadable(part, fault, at);
                Some(if fault.too_far { Unused::TooFar } else { Unused::Unreadable })
            }
        }
    }

    /// An entity left out for a value that is no number, or one beyond all that are held.
    pub(super) fn unreadable(&mut self, part: EntityKind, fault: NumberFault, at: &Origin) {
        if fault.too_far {
            self.tally.too_far(at);
        } else {
            let value = self.decoder.text(fault.tag.value);
            self.passed_over.unreadable(part, &fault.tag, value, at);
        }
    }

    /// Keeps the place of an entity whose type is not read, so that its layer can tell of it.
    fn unread(&mut self, buffer: &[Tag<'a>], raws: &mut Vec<Raw>) {
        let first = buffer[0];
        let groups = Groups { tags: buffer, decoder: self.decoder };
        let (name, line) = groups.get(8).map_or((&b"0"[..], first.line), |t| (t.value, t.line));
        let layer = self.layer_of(name, line);
        let (handle, invisible) = (groups.handle(), groups.int(60) & 1 == 1);
        let paper = groups.int(67) == 1;
        let space = if paper { Space::Paper(String::new()) } else { Space::Model };
        let origin = origin(first.line, handle, EntityKind::Unknown, &self.names[layer]);
        let known = self.unread.get(first.value.trim_ascii()).cloned();
        let why = known.unwrap_or_else(|| {
            let entity = String::from_utf8_lossy(first.value.trim_ascii()).into_owned();
            if self.unread.len() >= MOST_TYPES {
                return Arc::new(Unused::NotRead { entity: String::new() });
            }
            let why = Arc::new(Unused::NotRead { entity });
            self.unread.insert(first.value.trim_ascii(), why.clone());
            why
        });
        self.unread_kept += 1;
        if self.unread_kept > MOST_KEPT {
            // Millions of them are a number.
            *self.unread_more.entry((layer, why)).or_default() += 1;
            return;
        }
        let body = Body::Unread(why, groups.point(10));
        raws.push(Raw { layer, space, invisible, ink: groups.ink(), origin, body });
    }

    /// POLYLINE with its VERTEX entities, up to SEQEND.
    fn polyline(&mut self, buffer: &mut Vec<Tag<'a>>, fault: Option<NumberFault<'a>>) -> Made<'a> {
        let head = Groups { tags: buffer, decoder: self.decoder };
        let flags = head.int(70);
        let ocs =
            if flags & 8 == 8 { Affine::IDENTITY } else { head.ocs(head.float(30).unwrap_or(0.0)) };
        let mut fault = fault.map(|f| (EntityKind::Polyline, f));
        let (mut vertices, mut whole) = (Vec::new(), true);
        while let Some(tag) = self.ahead {
            if tag.code != 0 || !(tag.is("VERTEX") || tag.is("SEQEND")) {
                break;
            }
            self.next();
            self.gather(tag, buffer);
            if tag.is("SEQEND") {
                break;
            }
            let v = Groups { tags: buffer, decoder: self.decoder };
            fault = fault.or_else(|| v.number_fault().map(|f| (EntityKind::Vertex, f)));
            // Control points of a spline frame are no part of the line.
            if v.int(70) & 16 == 16 {
                continue;
            }
            if vertices.len() >= self.limits.vertices {
                self.passed_over.cut_short(tag.line);
                continue;
            }
            match v.point(10) {
                Some(at) => vertices.push(Vertex { at, bulge: v.float(42).unwrap_or(0.0) }),
                None => whole = false,
            }
        }
        if let Some((part, fault)) = fault {
            return Made::Unreadable(part, fault);
        }
        if flags & (16 | 64) != 0 {
            return Made::Surface(if flags & 16 != 0 {
                b"POLYLINE (mesh)"
            } else {
                b"POLYLINE (polyface mesh)"
            });
        }
        if !whole {
            return Made::Broken;
        }
        let shape = Shape::Polyline(Polyline { vertices, closed: flags & 1 == 1 });
        Made::Bodies(vec![Body::Shape(moved(shape, ocs))])
    }

    /// INSERT with its ATTRIB entities: shown ones become texts of their own.
    fn insert(
        &mut self,
        buffer: &mut Vec<Tag<'a>>,
        raws: &mut Vec<Raw>,
        layer: usize,
        space: &Space,
        fault: Option<NumberFault<'a>>,
    ) -> Made<'a> {
        let head = Groups { tags: buffer, decoder: self.decoder };
        let follows = head.int(66) == 1;
        let insert = head.insert();
        let mut attributes = Vec::new();
        while let Some(tag) = self.ahead {
            if !follows || tag.code != 0 || !(tag.is("ATTRIB") || tag.is("SEQEND")) {
                break;
            }
            self.next();
            self.gather(tag, buffer);
            if tag.is("SEQEND") {
                break;
            }
            attributes.push(self.attribute(buffer, raws, layer, space));
        }
        match (fault, insert) {
            (Some(fault), _) => Made::Unreadable(EntityKind::Insert, fault),
            (None, None) => Made::Broken,
            (None, Some(insert)) => {
                let attributes = Arc::new(attributes);
                Made::Bodies(vec![Body::Insert(Insert { attributes, ..insert })])
            }
        }
    }

    /// An ATTRIB as its insertion has it, tag and value; it becomes a text of its own too.
    fn attribute(
        &mut self,
        buffer: &[Tag<'a>],
        raws: &mut Vec<Raw>,
        layer: usize,
        space: &Space,
    ) -> (String, String) {
        let a = Groups { tags: buffer, decoder: self.decoder };
        let (tag_name, value) = (a.text(2).unwrap_or_default(), a.text(1).unwrap_or_default());
        let hidden = a.int(70) & 1 == 1;
        let own = a.get(8).copied().filter(|t| !t.is("0"));
        let (fault, handle) = (a.number_fault(), a.handle());
        let on = own.map_or(layer, |t| self.layer_of(t.value, t.line));
        let at = origin(buffer[0].line, handle, EntityKind::Attrib, &self.names[on]);
        match fault {
            Some(fault) => self.unreadable(EntityKind::Attrib, fault, &at),
            None => {
                let shapes = Groups { tags: buffer, decoder: self.decoder }.shape("ATTRIB");
                raws.extend(shapes.unwrap_or_default().into_iter().map(|shape| Raw {
                    layer: on,
                    space: space.clone(),
                    invisible: hidden,
                    ink: Default::default(),
                    origin: at.clone(),
                    body: Body::Shape(shape),
                }));
            }
        }
        (tag_name, value)
    }
}
