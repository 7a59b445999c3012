//! What is told of level lines: those taken for siding, and those that are not.

use std::collections::BTreeMap;

use super::judge::Refused;
use super::patch::{Family, Patch};
use crate::finding::lines::LineFinding;
use crate::finding::{Finding, Findings};
use crate::geom::vocabulary::{CurveShape, Point};
use crate::model::linework::Linework;
use crate::model::no_siding::NoSiding;

/// Level lines that cover less than this, square inches, are not told of where they are no siding: 20 sq ft.
const TOLD: f64 = 2880.0;
/// Hatches that cover this many times as much show where siding is (of our own choosing, no source).
const MANY: f64 = 5.0;
/// Exposures of drawn lap siding, inches (common practice, no source).
const PITCHES: std::ops::RangeInclusive<f64> = 2.0..=14.0;
/// Ends that are not drawn are told from this length on, inches.
const OPEN: f64 = 12.0;

pub(super) fn tell(lines: &Linework, kept: &[Patch], refused: &[Refused], findings: &mut Findings) {
    let mut families: BTreeMap<Family, Vec<&Patch>> = BTreeMap::new();
    for p in kept {
        families.entry(p.family()).or_default().push(p);
    }
    for patches in families.values() {
        let Some(first) = patches.first() else { continue };
        let kind = LineFinding::SidingFromLines {
            layer: layer(lines, first),
            spacing: first.pitch,
            patches: patches.len(),
            area: area(patches),
        };
        findings.push(told(lines, patches, kind));
        let open: f64 = patches.iter().map(|p| p.open).sum();
        if open >= OPEN {
            let kind = LineFinding::CoursesUnended { layer: layer(lines, first), length: open };
            let ends: Vec<&Patch> = patches.iter().filter(|p| p.open >= OPEN).copied().collect();
            findings.push(told(lines, if ends.is_empty() { patches } else { &ends }, kind));
        }
    }
    let hatched = hatched(lines);
    let mut others: BTreeMap<(NoSiding, usize, u64), Vec<&Patch>> = BTreeMap::new();
    for (p, why) in refused {
        others.entry((*why, p.key.0, p.pitch.to_bits())).or_default().push(p);
    }
    for ((why, ..), patches) in &others {
        let Some(first) = patches.first() else { continue };
        if patches.iter().map(|p| p.area()).fold(0.0, f64::max) < TOLD {
            continue;
        }
        let covered: f64 = patches.iter().map(|p| p.area()).sum();
        let kind = LineFinding::LinesNoSiding {
            beside_hatches: hatched > MANY * covered,
            layer: layer(lines, first),
            why: *why,
            spacing: first.pitch,
            patches: patches.len(),
            area: area(patches),
        };
        findings.push(told(lines, patches, kind));
    }
}

/// What hatches of level lines cover, square inches of their boxes.
fn hatched(lines: &Linework) -> f64 {
    let drawn = lines.hatches.iter().filter(|h| h.course_lines == 0);
    let level = drawn.filter(|h| h.hatch.level_spacing().is_some_and(|s| PITCHES.contains(&s)));
    level.flat_map(|h| &h.hatch.loops).map(|l| l.bounding_box().area()).sum()
}

fn layer(lines: &Linework, p: &Patch) -> String {
    lines.layers.get(p.key.0).map(|l| l.layer.name.clone()).unwrap_or_default()
}

fn area(patches: &[&Patch]) -> f64 {
    patches.iter().map(|p| p.area()).sum::<f64>() / 144.0
}

/// A finding at the middles of some patches.
fn told(lines: &Linework, patches: &[&Patch], kind: LineFinding) -> Finding {
    let places = patches.iter().map(|p| lines.source(p.frame().center()));
    let mut places: Vec<Point> = places.collect();
    let mut finding = Finding::new(kind);
    if let Some(s) = patches.first().and_then(|p| lines.strokes.get(p.stroke)) {
        finding = finding.about(&s.origin);
    }
    if !places.is_empty() {
        finding = finding.at(places.remove(0));
    }
    finding.also_at(places)
}
