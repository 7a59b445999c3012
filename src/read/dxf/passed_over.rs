//! What of a DXF was passed over while its entities were read: each kind once, with how many and where.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::tags::Tag;
use super::text::MOST_BYTES;
use crate::finding::drawing::{DrawingFinding, NumberPlace};
use crate::finding::{Finding, Findings};
use crate::origin::{EntityKind, Origin};
use crate::read::limits::Limits;

/// Most types that are told of one by one.
const MOST_TYPES: usize = 200;

/// What was passed over so far.
#[derive(Default)]
pub(super) struct PassedOver {
    /// Types that are not read: how many, and the line of the first.
    skipped: BTreeMap<String, (usize, usize)>,
    /// Entities without a value that they need.
    broken: BTreeMap<EntityKind, (usize, usize)>,
    /// Entities with a value that should be a number and is none, by layer and type: the first value, and
    /// how many entities.
    unreadable: BTreeMap<(Arc<str>, EntityKind), (Unreadable, usize)>,
    /// Texts that are read in part: how many, and the line of the first.
    texts_cut: Option<(usize, usize)>,
    /// Line of the first entity that holds more than is read of one.
    cut_short: Option<usize>,
    /// Line of the first entity past what is kept before blocks are inserted, and whether points were
    /// too many rather than items.
    overfull: Option<(usize, bool)>,
}

/// A value that is no number.
struct Unreadable {
    /// The entity, or the vertex or attribute of one, that it stands in.
    part: EntityKind,
    code: i32,
    value: String,
    line: usize,
    entity: Origin,
}

/// Letters that are told of a value.
const LETTERS: usize = 40;

impl PassedOver {
    pub(super) fn unread(&mut self, name: &[u8], line: usize) {
        let name = String::from_utf8_lossy(name.trim_ascii()).into_owned();
        if self.skipped.len() < MOST_TYPES || self.skipped.contains_key(&name) {
            self.skipped.entry(name).or_insert((0, line)).0 += 1;
        }
    }

    pub(super) fn broken(&mut self, entity: EntityKind, line: usize) {
        self.broken.entry(entity).or_insert((0, line)).0 += 1;
    }

    pub(super) fn unreadable(&mut self, part: EntityKind, tag: &Tag, value: String, at: &Origin) {
        let key = (at.layer.clone(), at.entity);
        if self.unreadable.len() >= MOST_TYPES && !self.unreadable.contains_key(&key) {
            return;
        }
        let first = || {
            let value = value.chars().take(LETTERS).collect();
            let (code, line, entity) = (tag.code, tag.line, at.clone());
            (Unreadable { part, code, value, line, entity }, 0)
        };
        self.unreadable.entry(key).or_insert_with(first).1 += 1;
    }

    pub(super) fn text_cut(&mut self, line: usize) {
        self.texts_cut.get_or_insert((0, line)).0 += 1;
    }

    pub(super) fn cut_short(&mut self, line: usize) {
        self.cut_short.get_or_insert(line);
    }

    pub(super) fn overfull(&mut self, line: usize, points: bool) {
        self.overfull.get_or_insert((line, points));
    }

    /// Whether what comes after a limit was left out.
    pub(super) fn is_overfull(&self) -> bool {
        self.overfull.is_some()
    }

    /// Tells of all of it.
    pub(super) fn tell(self, limits: &Limits, findings: &mut Findings) {
        for (first, entities) in self.unreadable.into_values() {
            let words_only = matches!(
                first.entity.entity,
                EntityKind::Text | EntityKind::MText | EntityKind::Attrib | EntityKind::Viewport
            );
            let Unreadable { part, code, value, line, entity } = first;
            let kind = DrawingFinding::NumberUnreadable {
                part,
                place: NumberPlace::Group { group: code },
                value,
                line,
                entities,
                words_only,
            };
            findings.push(Finding::new(kind).about(&entity));
        }
        let mut push = |kind: DrawingFinding| findings.push(Finding::new(kind));
        for (entity, (count, first_line)) in self.broken {
            push(DrawingFinding::EntityBroken { entity, count, first_line });
        }
        if let Some((texts, line)) = self.texts_cut {
            push(DrawingFinding::TextTooLong { texts, most: MOST_BYTES, line });
        }
        if let Some(line) = self.cut_short {
            push(DrawingFinding::VerticesTooMany { most: limits.vertices, line });
        }
        if let Some((line, points)) = self.overfull {
            let from_line = Some(line);
            push(if points {
                DrawingFinding::PointsTooMany { most: limits.points, from_line }
            } else {
                DrawingFinding::ItemsTooMany { most: limits.items, from_line, array: None }
            });
        }
        for (entity, (count, first_line)) in self.skipped {
            push(DrawingFinding::EntitySkipped { entity, count, first_line });
        }
    }
}
