//! What of a DXF was passed over while its entities were read: each kind once, with how many and where.

use std::collections::BTreeMap;

use crate::diag::{Note, Notes};
use crate::read::limits::Limits;
use crate::units::counted;

/// Most types that are told of one by one.
const MOST_TYPES: usize = 200;

/// What was passed over so far.
#[derive(Default)]
pub(super) struct PassedOver {
    /// Types that are not read: how many, and the line of the first.
    skipped: BTreeMap<String, (usize, usize)>,
    /// Entities without a value that they need.
    broken: BTreeMap<&'static str, (usize, usize)>,
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

    pub(super) fn broken(&mut self, kind: &'static str, line: usize) {
        self.broken.entry(kind).or_insert((0, line)).0 += 1;
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
    pub(super) fn tell(self, limits: &Limits, notes: &mut Notes) {
        for (kind, (count, line)) in self.broken {
            let message = format!(
                "{count} {kind} lack a value or hold no number, the first at line {line}; left out"
            );
            let help = "Run the drawing program's audit and save again.";
            notes.push(Note::warning("entity-broken", message, help));
        }
        if let Some(line) = self.cut_short {
            let most = limits.vertices;
            let message = format!(
                "an entity near line {line} has more than {most} vertices; the rest of it is left out"
            );
            let help = "Simplify it, or save only the elevations to a file of their own.";
            notes.push(Note::error("vertices-too-many", message, help));
        }
        if let Some((line, points)) = self.overfull {
            let (code, most) = if points {
                ("points-too-many", counted(limits.points, "point"))
            } else {
                ("items-too-many", counted(limits.items, "item"))
            };
            let message = format!("more than {most}; what comes from line {line} on is left out");
            let help = "Save only the elevations to a file of their own.";
            notes.push(Note::warning(code, message, help));
        }
        for (kind, (count, line)) in self.skipped {
            let message =
                format!("{count} {kind} are of a type that is not read, the first at line {line}");
            let help = "Explode them to lines if they show walls or openings.";
            notes.push(Note::info("entity-skipped", message, help));
        }
    }
}
