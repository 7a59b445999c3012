//! Findings: what the program has to tell its user, each with a code, a place and what to do.
//!
//! [`Notes`] is the one in-out parameter of the flow, append-only. [`Refusal`] is how the head of
//! the flow (read, normalize, extract, job) says that it cannot go on.

use std::sync::Arc;

use serde::Serialize;

use crate::geom::tol::GRID;
use crate::geom::vocabulary::Point;

/// How much a finding matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, schemars::JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Severity {
    /// Something assumed or mended, worth knowing.
    Info,
    /// The layout stands, but someone should look.
    Warning,
    /// The drawing or job cannot be used as it is.
    Error,
}

/// Where in the source an entity stands. Small: there is one for every item of a drawing.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, schemars::JsonSchema)]
pub struct Origin {
    /// Line of the entity's first group in a text file, from 1; byte offset in a binary one.
    pub line: usize,
    /// The entity's handle (group 5), or an SVG id.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub handle: Option<Box<str>>,
    /// The entity's type as the file names it.
    pub entity: &'static str,
    /// Its layer.
    pub layer: Arc<str>,
}

impl Default for Origin {
    fn default() -> Self {
        Origin { line: 0, handle: None, entity: "", layer: Arc::from("") }
    }
}

/// One finding.
#[derive(Clone, Debug, PartialEq, Serialize, schemars::JsonSchema)]
pub struct Note {
    /// Stable code in words: `wall-open`, `unit-assumed`.
    pub code: &'static str,
    /// How much it matters.
    pub severity: Severity,
    /// What and where, in one sentence.
    pub message: String,
    /// What to do about it.
    pub help: String,
    /// The elevation it is in.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub elevation: Option<String>,
    /// Place in the **source's** coordinates and units.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schemars(with = "Option<(f64, f64)>")]
    #[serde(serialize_with = "point_pair")]
    pub at: Option<Point>,
    /// Further places of the same, source coordinates; some are enough where there are many.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[schemars(with = "Vec<(f64, f64)>")]
    #[serde(serialize_with = "point_pairs")]
    pub also: Vec<Point>,
    /// The entity it is about.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub origin: Option<Origin>,
}

fn point_pairs<S: serde::Serializer>(points: &[Point], s: S) -> Result<S::Ok, S::Error> {
    s.collect_seq(points.iter().map(|p| (p.x, p.y)))
}

fn point_pair<S: serde::Serializer>(p: &Option<Point>, s: S) -> Result<S::Ok, S::Error> {
    p.map(|p| (p.x, p.y)).serialize(s)
}

/// A place in a drawing's own unit, to no more figures than the grid holds.
pub fn round_place(p: Point, inches_per_unit: f64) -> Point {
    if (inches_per_unit / GRID).fract() == 0.0 {
        // Inches and feet are on the grid as they are drawn.
        return p;
    }
    // The finest decimal place that is no finer than the grid.
    let mut parts = 1.0;
    while parts < 1e6 && inches_per_unit >= GRID * parts * 10.0 {
        parts *= 10.0;
    }
    Point::new((p.x * parts).round() / parts, (p.y * parts).round() / parts)
}

impl Note {
    fn new(severity: Severity, code: &'static str, message: String, help: &str) -> Self {
        let help = help.to_owned();
        Note {
            code,
            severity,
            message,
            help,
            elevation: None,
            at: None,
            also: vec![],
            origin: None,
        }
    }

    /// A finding that stops the program.
    pub fn error(code: &'static str, message: impl Into<String>, help: &str) -> Self {
        Self::new(Severity::Error, code, message.into(), help)
    }

    /// A finding someone should look at.
    pub fn warning(code: &'static str, message: impl Into<String>, help: &str) -> Self {
        Self::new(Severity::Warning, code, message.into(), help)
    }

    /// Something assumed or mended.
    pub fn info(code: &'static str, message: impl Into<String>, help: &str) -> Self {
        Self::new(Severity::Info, code, message.into(), help)
    }

    /// At this place, in source coordinates.
    pub fn at(mut self, p: Point) -> Self {
        self.at = Some(p);
        self
    }

    /// At these places too.
    pub fn also_at(mut self, points: Vec<Point>) -> Self {
        self.also = points;
        self
    }

    /// About this entity.
    pub fn about(mut self, origin: &Origin) -> Self {
        self.origin = Some(origin.clone());
        self
    }

    /// See [`Notes::round_places`].
    pub fn round_places(&mut self, inches_per_unit: f64) {
        for p in self.at.iter_mut().chain(&mut self.also) {
            *p = round_place(*p, inches_per_unit);
        }
    }

    /// In this elevation.
    pub fn on(mut self, elevation: &str) -> Self {
        self.elevation = Some(elevation.to_owned());
        self
    }
}

/// The findings of a run, in the order they were made.
#[derive(Clone, Debug, Default)]
pub struct Notes(Vec<Note>);

impl Notes {
    /// Adds one finding.
    pub fn push(&mut self, note: Note) {
        self.0.push(note);
    }

    /// All of them.
    pub fn all(&self) -> &[Note] {
        &self.0
    }

    /// How many are at least this severe.
    pub fn count(&self, least: Severity) -> usize {
        self.0.iter().filter(|n| n.severity >= least).count()
    }

    /// Tells places to no more figures than the grid holds, where a drawing unit has so many inches:
    /// what was drawn at 4000 mm is not told at 3999.998.
    pub fn round_places(&mut self, inches_per_unit: f64) {
        for note in &mut self.0 {
            note.round_places(inches_per_unit);
        }
    }

    /// An error if any finding is one; the first is named, the rest stand in the notes.
    pub fn refuse_on_error(&self) -> Result<(), Refusal> {
        match self.0.iter().find(|n| n.severity == Severity::Error) {
            Some(first) => Err(Refusal::from(first.clone())),
            None => Ok(()),
        }
    }
}

/// The drawing or job cannot be used; the finding says why and what to do.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("{}", .0.message)]
pub struct Refusal(pub Box<Note>);

impl From<Note> for Refusal {
    fn from(note: Note) -> Self {
        Refusal(Box::new(note))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geom::tol::snap;

    #[test]
    fn places_are_told_as_they_were_drawn_in_whichever_unit() {
        // Drawn at 4000 mm and 123.4 mm, at 6.25 in, at 2.5 m: brought to the grid and back.
        for (unit, drawn) in [(1.0 / 25.4, 4000.0), (1.0 / 25.4, 123.4), (1.0, 6.25), (39.37, 2.5)]
        {
            let mut notes = Notes::default();
            let at = Point::new(snap(drawn * unit) / unit, 0.0);
            notes.push(Note::info("stray", "far away", "Delete it.").at(at).also_at(vec![at]));
            notes.round_places(unit);
            let note = &notes.all()[0];
            assert_eq!((note.at.unwrap().x, note.also[0].x), (drawn, drawn));
        }
    }
}
