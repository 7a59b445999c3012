//! Patterns for gables, and for lower roofs whose slope no gable has: at every slope, how far the cut
//! moves sideways in one course (`DrawingFact::RakeStep`, `TrimFact::RakeGap`), full size.

use std::collections::BTreeMap;

use super::tiles::{Pattern, pages};
use crate::annotate::page::Page;
use crate::annotate::style::Ink;
use crate::geom::tol::SAME;
use crate::geom::vocabulary::{Point, Rect};
use crate::language::Phrase;
use crate::layout::Layout;
use crate::model::house::EdgeKind;
use crate::model::ids::ElevationName;
use crate::real::Real;
use crate::wording::patterns::{self, PatternPlace};
use crate::wording::sheet_lengths::{length, short};
use crate::wording::siding;

use PatternPlace::{Gable, LowerRoof};

/// The pages of every slope of the house.
pub(super) fn sheets(layout: &Layout) -> Vec<Page> {
    let mut pitches: BTreeMap<i64, Slope> = BTreeMap::new();
    for (e, w) in layout.walls() {
        for s in &w.edges {
            let slope = matches!(s.kind, EdgeKind::Rake | EdgeKind::LowerRoof);
            let Some(p) = s.pitch.filter(|p| slope && *p > 0.01) else { continue };
            let at = pitches.entry((p * 100.0).round() as i64).or_default();
            let (low, high) = (s.from[1].min(s.to[1]), s.from[1].max(s.to[1]));
            at.rise = at.rise.max(high - low);
            at.place = at.place.max(if s.kind == EdgeKind::Rake { Gable } else { LowerRoof });
            if !at.on.contains(&e.name) {
                at.on.push(e.name.clone());
            }
            for c in w.courses.iter().filter(|c| c.bottom < high - SAME && c.top > low + SAME) {
                *at.exposures.entry(grid(c.top - c.bottom)).or_default() += 1;
            }
        }
    }
    pitches
        .into_iter()
        .enumerate()
        .flat_map(|(i, (hundredths, slope))| {
            sheet(layout, i + 1, hundredths as f64 / 100.0, &slope)
        })
        .collect()
}

/// A pattern is marked on a scrap: one that steps farther in a course than this share of a panel would take
/// panel upon panel of paper, and a slope so flat is marked by the heights at both ends of a piece (common
/// practice, no source).
const SCRAP: f64 = 0.5;

/// A slope that rises less than a course cuts a piece or two, by the lengths on the cutting sheet (common
/// practice, no source).
fn crosses_a_course(slope: &Slope, exposure: f64) -> bool {
    slope.rise >= exposure - SAME
}

/// Where a slope is.
#[derive(Default)]
struct Slope {
    /// What it is cut along: a gable's rake wherever there is one.
    place: PatternPlace,
    /// Elevations.
    on: Vec<ElevationName>,
    /// Greatest rise of its rakes, inches.
    rise: f64,
    /// How many courses meet it with each exposure, 1/1024 in.
    exposures: BTreeMap<i64, usize>,
}

fn grid(inches: f64) -> i64 {
    (inches * 1024.0).round() as i64
}

impl Slope {
    /// Exposures, inches, the commonest first.
    fn exposures(&self, aimed: f64) -> Vec<f64> {
        let mut all: Vec<(i64, usize)> = self.exposures.iter().map(|(e, n)| (*e, *n)).collect();
        all.sort_by_key(|(e, n)| (std::cmp::Reverse(*n), *e));
        if all.is_empty() {
            return vec![aimed];
        }
        all.into_iter().map(|(e, _)| e as f64 / 1024.0).collect()
    }
}

fn sheet(layout: &Layout, n: usize, pitch: f64, slope: &Slope) -> Vec<Page> {
    let say = layout.job.sheet.language;
    let style = layout.job.sheet.lengths;
    let exposures = slope.exposures(layout.job.product.exposure);
    let exposure = exposures[0];
    let step = 12.0 * exposure / pitch;
    let longest = layout.stocks.iter().map(|s| s.length).fold(0.0, f64::max);
    if step > SCRAP * longest || !crosses_a_course(slope, exposure) {
        return Vec::new();
    }
    let angle = (pitch / 12.0).arc_tangent().to_degrees();
    let (piece, place) =
        (siding::piece(layout.job.product.kind), siding::end_gap_place(layout.job.siding()));
    let rows: Vec<(String, f64)> = if exposures.len() == 1 {
        let courses = (slope.rise / exposure).ceil().clamp(1.0, 40.0) as u32;
        (1..=courses).map(|n| (n.to_string(), step * f64::from(n))).collect()
    } else {
        // Exposures that were evened differ: each has its own step.
        let by = exposures.iter().map(|e| (short(style, *e), 12.0 * e / pitch));
        by.collect()
    };
    let rows: Vec<String> =
        rows.into_iter().map(|(name, step)| format!("{name}: {}", length(style, step))).collect();
    let lines = vec![
        say.block(|lang| patterns::gable(lang, pitch, angle, step, exposure, style)),
        say.block(|lang| patterns::gable_walls(lang, &slope.on)),
        say.sentence(patterns::FULL_SIZE_NOTE),
        say.block(|l| patterns::gable_use(l, slope.place, piece.of(l), place.of(l))),
        say.block(|lang| patterns::gable_steps(lang, exposures.len() == 1, &rows)),
    ];
    let (low, foot, top) = (Point::ORIGIN, Point::new(step, 0.0), Point::new(step, exposure));
    let stem = match slope.place {
        Gable => format!("gable-pattern-{n}"),
        LowerRoof => format!("roof-pattern-{n}"),
    };
    let pattern = Pattern {
        stem,
        title: Phrase::new(|lang| patterns::gable_title(lang, slope.place, pitch)),
        description: say.line(|lang| patterns::gable_description(lang, pitch)),
        lines,
        // Room for the words beside its sides.
        bounds: Rect::new(-0.1, -0.25, step + 0.45, exposure + 0.1),
        strokes: vec![(Ink::Wall, vec![low, foot, top, low])],
        texts: vec![
            (
                Point::new(step / 2.0, -0.12),
                say.line(|lang| patterns::step(lang, &short(style, step))),
            ),
            (Point::new(step + 0.22, exposure / 2.0), short(style, exposure)),
        ],
    };
    pages(layout, &pattern)
}
