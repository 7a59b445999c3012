//! Which names of the drawing and the job have letters that the sheets cannot show.

use std::collections::BTreeSet;

use crate::clean::{Destination, clean};
use crate::finding::letters::{LetterFinding, LetterPlace};
use crate::finding::{Finding, Findings};
use crate::job::Job;
use crate::model::house::House;
use crate::model::linework::{Linework, Role};
use crate::typeface::lacking;
use crate::write::json;

/// Most names and letters that are named.
const MOST_NAMED: usize = 12;

/// Names with letters that cannot be drawn.
#[derive(Default)]
struct Gathered {
    seen: BTreeSet<String>,
    kinds: BTreeSet<char>,
    letters: usize,
    places: Vec<LetterPlace>,
    beside_layers: bool,
}

impl Gathered {
    /// Takes a name, unless one that reads the same was taken.
    fn take(&mut self, text: &str, place: impl FnOnce(String) -> LetterPlace) {
        if text.is_ascii() || lacking(text).next().is_none() || self.seen.contains(text) {
            return;
        }
        self.seen.insert(text.to_owned());
        self.letters += lacking(text).count();
        self.kinds.extend(lacking(text));
        let place = place(clean(text, Destination::Name));
        self.beside_layers |= !matches!(place, LetterPlace::Layer { .. });
        if self.places.len() < MOST_NAMED {
            self.places.push(place);
        }
    }

    fn finding(self) -> Option<Finding> {
        let kind = LetterFinding::LettersNotDrawn {
            letters: self.letters,
            code_points: self.kinds.iter().take(MOST_NAMED).map(|c| u32::from(*c)).collect(),
            kinds: self.kinds.len(),
            places: self.places,
            names: self.seen.len(),
            layers_alone: !self.beside_layers,
        };
        (self.letters > 0).then(|| Finding::new(kind))
    }
}

/// Tells of every name that may stand on a sheet: views, texts of the job, the drawing's own name,
/// layers with a role, and whatever was found so far.
pub(super) fn tell(
    name: &str,
    job: &Job,
    (lines, house): (&Linework, &House),
    findings: &mut Findings,
) {
    let mut names = Gathered::default();
    let view = |text| LetterPlace::View { text };
    let layer = |text| LetterPlace::Layer { text };
    house.elevations.iter().for_each(|e| names.take(&e.name, view));
    names.take(name, |text| LetterPlace::Drawing { text });
    for (key, text) in json::texts(job) {
        // Patterns of layers stand in the table of layers, and in a zone's list of them.
        let of_layer = key.split('.').any(|part| part == "layers");
        names.take(&text, |text| match of_layer {
            true => layer(text),
            false => LetterPlace::Job { key, text },
        });
    }
    let used = lines.layers.iter().filter(|l| l.role.is_some_and(|r| r != Role::Ignore));
    used.for_each(|l| names.take(&l.layer.name, layer));
    for found in findings.all() {
        for (key, text) in json::texts(found) {
            names.take(&text, |text| match last(&key) {
                "layer" | "layers" | "wall_layers" => layer(text),
                "elevation" | "elevations" | "title" | "view" => view(text),
                _ => LetterPlace::Finding { text },
            });
        }
    }
    names.finding().into_iter().for_each(|f| findings.push(f));
}

/// The last part of a dotted key.
fn last(key: &str) -> &str {
    key.rsplit('.').next().unwrap_or(key)
}
