//! What of a DXF was passed over while its entities were read: each kind once, with how many and where.

use std::collections::BTreeMap;

use crate::finding::drawing::DrawingFinding;
use crate::finding::{Finding, Findings};
use crate::origin::EntityKind;
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
    /// Line of the first entity that holds more than is read of one.
    cut_short: Option<usize>,
    /// Line of the first entity past what is kept before blocks are inserted, and whether points were
    /// too many rather than items.
    overfull: Option<(usize, bool)>,
}

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
        let mut push = |kind: DrawingFinding| findings.push(Finding::new(kind));
        for (entity, (count, first_line)) in self.broken {
            push(DrawingFinding::EntityBroken { entity, count, first_line });
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
