//! Which unit the drawing is in, and how sure that is. Never silent: the header is right in fewer
//! than half of real drawings (`DrawingFact::UnitsUnproved`).

use std::collections::BTreeMap;

use crate::finding::lines::{HeightInUnit, LineFinding};
use crate::finding::{Finding, Findings, Refusal};
use crate::geom::polygon::bounds;
use crate::geom::vocabulary::{Point, Rect};
use crate::job::Job;
use crate::model::drawing::{Drawing, Shape};
use crate::model::linework::{Linework, Role, Scale};
use crate::model::source::UnitBasis;
use crate::model::turn::Turn;
use crate::units::{Unit, parse_length};

/// Format of drawings in points of paper, which say nothing of the house.
const PDF: &str = "PDF";

/// Heights a wall outline may have, inches: a low gable to four stories (common practice).
const WALL: std::ops::RangeInclusive<f64> = 8.0..=600.0;
/// Heights a door may have, inches: nominal doors are 80, 84 and 96 (`TakeoffFact::CallSizes`).
const DOOR: std::ops::RangeInclusive<f64> = 72.0..=120.0;

/// Settles the scale: the job's unit, a known distance, the header, or the evidence of sizes.
pub(super) fn settle(
    drawing: &Drawing,
    lines: &Linework,
    job: &Job,
    findings: &mut Findings,
) -> Result<Scale, Refusal> {
    if let Some(text) = &job.drawing.known {
        return known(text, job);
    }
    if drawing.dialect.format == PDF {
        return Err(Refusal::new(LineFinding::ScaleUnknown { written: written(drawing) }));
    }
    let evidence = Evidence::of(lines);
    let (unit, basis) = match (job.drawing.unit, drawing.unit) {
        (Some(unit), _) => (unit, UnitBasis::Job),
        (None, Some(unit)) => (unit, UnitBasis::Header),
        (None, None) => {
            let unit = evidence.likely().unwrap_or(Unit::Inch);
            let sizes = evidence.tallest > 0.0;
            let basis = if sizes { UnitBasis::WallAndDoorSizes } else { UnitBasis::Custom };
            findings.push(Finding::new(LineFinding::UnitAssumed { unit, basis }));
            (unit, basis)
        }
    };
    if !evidence.plausible(unit) {
        return Err(implausible(&evidence, unit, basis));
    }
    let proved = evidence.proves(unit);
    findings.push(Finding::new(LineFinding::UnitTaken { unit, basis, proved }));
    Ok(Scale { inches: unit.inches(), unit: Some(unit), basis, proved })
}

/// Scales that a sheet states, as written, the first few of them.
fn written(drawing: &Drawing) -> Vec<String> {
    const MOST: usize = 4;
    let mut out: Vec<String> = Vec::new();
    for item in &drawing.items {
        let Shape::Text(text) = &item.shape else { continue };
        let words = text.content.trim();
        if out.len() < MOST && states_scale(words) && !out.iter().any(|w| w == words) {
            out.push(words.to_owned());
        }
    }
    out
}

/// Whether a text states a scale: `1/4" = 1'-0"`, `1:50`.
fn states_scale(text: &str) -> bool {
    let of_inches = text.contains('=') && text.contains(['"', '\u{2033}', '\u{201d}']);
    let ratio = text.split(' ').any(|word| {
        word.split_once(':').is_some_and(|(a, b)| a == "1" && b.parse::<u32>().is_ok())
    });
    text.chars().count() < 60 && (of_inches || ratio)
}

fn implausible(evidence: &Evidence, unit: Unit, basis: UnitBasis) -> Refusal {
    let tallest = |unit: Unit| HeightInUnit { unit, height: evidence.tallest * unit.inches() };
    let (tallest, likely) = (tallest(unit), evidence.likely().map(tallest));
    let finding = Finding::new(LineFinding::UnitImplausible { basis, tallest, likely });
    match evidence.at {
        Some(p) => finding.at(p).into(),
        None => finding.into(),
    }
}

/// The scale that the job's known distance sets.
fn known(text: &str, job: &Job) -> Result<Scale, Refusal> {
    let Some(inches) = job.drawing.known_scale() else {
        return Err(Refusal::new(LineFinding::KnownUnreadable { text: text.to_owned() }));
    };
    Ok(Scale { inches, unit: None, basis: UnitBasis::KnownDistance, proved: true })
}

/// Sizes in drawing units that speak for a unit.
struct Evidence {
    tallest: f64,
    at: Option<Point>,
    doors: Vec<f64>,
    /// Drawn length and the inches its text states, for dimensions that state a unit.
    stated: Vec<(f64, f64)>,
}

/// Boxes of hatches with level lines only: where no outline is drawn, walls are read from these.
fn siding(lines: &Linework) -> Vec<Rect> {
    use crate::geom::vocabulary::CurveShape;
    lines
        .hatches
        .iter()
        .filter(|h| h.role != Some(Role::Ignore) && h.hatch.level_spacing().is_some())
        .filter_map(|h| {
            h.hatch.loops.iter().map(CurveShape::bounding_box).reduce(|a, b| a.union(b))
        })
        .collect()
}

/// Whether the drawing lies on its side, by most of its text: its heights then run across.
fn lying(lines: &Linework) -> bool {
    let read = lines.labels.iter().filter(|l| l.role != Some(Role::Dimension));
    let turns: Vec<Turn> =
        read.filter_map(|l| Turn::of_text(l.text.angle, l.text.mirrored)).collect();
    2 * turns.iter().filter(|t| t.quarters % 2 == 1).count() > turns.len()
}

impl Evidence {
    fn of(lines: &Linework) -> Self {
        let high = if lying(lines) { Rect::width } else { Rect::height };
        let walls = lines.strokes.iter().filter(|s| s.role == Some(Role::Wall));
        let mut boxes: Vec<Rect> = walls.filter_map(|s| bounds(&s.points)).collect();
        if boxes.is_empty() {
            boxes = siding(lines);
        }
        let tallest = boxes.iter().max_by(|a, b| high(a).total_cmp(&high(b)));
        let mut doors: BTreeMap<(Option<usize>, usize), Rect> = BTreeMap::new();
        for (i, s) in lines.strokes.iter().enumerate().filter(|(_, s)| s.role == Some(Role::Door)) {
            let Some(b) = bounds(&s.points) else { continue };
            let key = (s.group, if s.group.is_some() { 0 } else { i });
            doors.entry(key).and_modify(|r| *r = r.union(b)).or_insert(b);
        }
        let stated = lines.measured.iter().filter_map(|m| {
            let text = m.text.as_ref().filter(|t| t.contains(['\'', '"', '′', '″']))?;
            Some((m.drawn, parse_length(text, Unit::Inch)?))
        });
        Evidence {
            tallest: tallest.map_or(0.0, high),
            at: tallest.map(|r| Point::new(r.x0, r.y1)),
            doors: doors.values().map(high).collect(),
            stated: stated.collect(),
        }
    }

    fn plausible(&self, unit: Unit) -> bool {
        let tall = self.tallest * unit.inches();
        // Loose lines on a wall layer may all be level; then there is nothing to judge by.
        self.tallest == 0.0 || WALL.contains(&tall)
    }

    fn doors_fit(&self, unit: Unit) -> bool {
        self.doors.iter().any(|d| DOOR.contains(&(d * unit.inches())))
    }

    fn proves(&self, unit: Unit) -> bool {
        let agrees =
            |(drawn, stated): &(f64, f64)| (drawn * unit.inches() - stated).abs() <= 0.02 * stated;
        self.doors_fit(unit) || self.stated.iter().any(agrees)
    }

    /// The unit that sizes speak for.
    fn likely(&self) -> Option<Unit> {
        let fits = |u: &Unit| self.plausible(*u);
        let by_doors = Unit::ALL.into_iter().filter(fits).find(|u| self.doors_fit(*u));
        by_doors.or_else(|| Unit::ALL.into_iter().find(fits)).filter(|_| self.tallest > 0.0)
    }
}
