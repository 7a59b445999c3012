//! Numbers of an SVG that cannot be read, and what else of it is left out: each sort once, with how many
//! and the first place.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::numbers::Fault;
use crate::finding::drawing::{DrawingFinding, NumberPlace};
use crate::finding::{Finding, Findings};
use crate::origin::{EntityKind, Origin};
use crate::read::limits::Limits;

/// Most sorts that are told of one by one, and letters of a value.
const MOST_TOLD: usize = 200;
const LETTERS: usize = 40;

/// Where a number stands.
pub(super) struct Place<'a> {
    pub(super) element: &'a str,
    pub(super) attribute: &'a str,
    pub(super) line: usize,
    pub(super) id: Option<&'a str>,
    pub(super) layer: &'a Arc<str>,
}

impl Place<'_> {
    fn origin(&self) -> Origin {
        let entity = EntityKind::named(self.element);
        let (line, layer) = (self.line, self.layer.clone());
        Origin { line, handle: self.id.map(Box::from), entity, layer }
    }
}

/// What was left out so far.
#[derive(Default)]
pub(super) struct Faults {
    /// By layer and type: the first, and how many.
    unreadable: BTreeMap<(Arc<str>, EntityKind), (DrawingFinding, Origin, usize)>,
    /// Elements with a coordinate beyond the limit.
    far: Option<(usize, Origin)>,
    /// Elements that are not read, by their names.
    skipped: BTreeMap<&'static str, (usize, usize)>,
}

impl Faults {
    pub(super) fn skipped(&mut self, name: &'static str, line: usize) {
        self.skipped.entry(name).or_insert((0, line)).0 += 1;
    }

    pub(super) fn found(&mut self, fault: Fault, place: &Place) {
        let says = match fault {
            Fault::TooFar => {
                self.far.get_or_insert_with(|| (0, place.origin())).0 += 1;
                return;
            }
            Fault::NoNumber(says) => says,
        };
        let key = (place.layer.clone(), EntityKind::named(place.element));
        if self.unreadable.len() >= MOST_TOLD && !self.unreadable.contains_key(&key) {
            return;
        }
        let first = || {
            let kind = DrawingFinding::NumberUnreadable {
                part: EntityKind::named(place.element),
                place: NumberPlace::Attribute { attribute: place.attribute.to_owned() },
                value: says.chars().take(LETTERS).collect(),
                line: place.line,
                entities: 0,
                words_only: matches!(place.element, "text" | "tspan"),
            };
            (kind, place.origin(), 0)
        };
        self.unreadable.entry(key).or_insert_with(first).2 += 1;
    }

    /// Tells of all of it.
    pub(super) fn tell(&mut self, limits: &Limits, findings: &mut Findings) {
        for (mut kind, origin, count) in std::mem::take(&mut self.unreadable).into_values() {
            if let DrawingFinding::NumberUnreadable { entities, .. } = &mut kind {
                *entities = count;
            }
            findings.push(Finding::new(kind).about(&origin));
        }
        if let Some((shapes, first)) = self.far.take() {
            let farthest = limits.coordinate;
            let kind = DrawingFinding::NumbersAbsurd { shapes, farthest };
            findings.push(Finding::new(kind).about(&first));
        }
        for (name, (count, first_line)) in std::mem::take(&mut self.skipped) {
            let entity = name.to_owned();
            let kind = DrawingFinding::EntitySkipped { entity, count, first_line };
            findings.push(Finding::new(kind));
        }
    }
}
