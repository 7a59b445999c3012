//! Patterns for gables, and for lower roofs whose slope no gable has: at every slope, how far the cut
//! moves sideways in one course (`DrawingFact::RakeStep`, `TrimFact::RakeGap`), full size where the paper
//! holds it.

use std::collections::BTreeMap;

use crate::annotate::canvas::{Canvas, wrapped};
use crate::annotate::cut_list::heading;
use crate::annotate::page::{Page, room};
use crate::annotate::style::{Ink, TEXT};
use crate::geom::tol::SAME;
use crate::geom::vocabulary::{Point, Rect, Vec2};
use crate::layout::Layout;
use crate::model::house::EdgeKind;
use crate::model::ids::ElevationName;
use crate::units::LengthStyle;
use crate::wording::sheet_lengths::short;
use crate::wording::sheets::{self, PatternPlace};
use crate::wording::siding;

use PatternPlace::{Gable, LowerRoof};

/// Shares of full size a pattern is drawn at.
const SHARES: [f64; 6] = [1.0, 2.0, 4.0, 5.0, 10.0, 20.0];

/// One page for every slope of the house.
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
        .map(|(i, (hundredths, slope))| sheet(layout, i + 1, hundredths as f64 / 100.0, &slope))
        .collect()
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

fn sheet(layout: &Layout, n: usize, pitch: f64, slope: &Slope) -> Page {
    let area = room(layout);
    let style = layout.job.sheet.lengths;
    let exposures = slope.exposures(layout.job.product.exposure);
    let exposure = exposures[0];
    let step = 12.0 * exposure / pitch;
    let angle = (pitch / 12.0).atan().to_degrees();
    // Heading, three lines and two rows of the table over it; the bar under it.
    let (text_room, foot) = (1.3, 0.55);
    let fits = |k: &f64| {
        step / k <= area.width() - 0.55 && exposure / k <= area.height() - text_room - foot
    };
    let share = SHARES.into_iter().find(fits).unwrap_or(50.0);
    let mut c = Canvas::new(area);
    let words = sheets::gable(pitch, angle, step, exposure, style);
    heading(&mut c, area, sheets::pattern_name(slope.place), &words);
    let (piece, place) =
        (siding::piece(layout.job.product.kind), siding::end_gap_place(layout.job.siding()));
    let lines = [
        sheets::gable_walls(&slope.on),
        sheets::gable_size(share),
        sheets::gable_use(slope.place, piece, place),
    ];
    let mut y = area.y1 - 0.42;
    for l in lines.iter().flat_map(|l| wrapped(l, TEXT, area.width() * 0.95)) {
        c.left(&l, TEXT, false, Point::new(area.x0, y));
        y -= 0.16;
    }
    let corner = Point::new(area.x0 + 0.15, area.y0 + foot);
    triangle(&mut c, corner, (step / share, exposure / share), style, (step, exposure));
    bar(&mut c, Point::new(area.x0 + 0.15, area.y0 + 0.16), style, share);
    let rows: Vec<(String, f64)> = if exposures.len() == 1 {
        let courses = (slope.rise / exposure).ceil().clamp(1.0, 40.0) as u32;
        (1..=courses).map(|n| (n.to_string(), step * f64::from(n))).collect()
    } else {
        // Exposures that were evened differ: each has its own step.
        let by = exposures.iter().map(|e| (short(style, *e), 12.0 * e / pitch));
        by.collect()
    };
    let head = sheets::gable_table(exposures.len() == 1);
    table(&mut c, area, y, style, (head, &rows));
    Page {
        name: match slope.place {
            Gable => format!("gable-pattern-{n}"),
            LowerRoof => format!("roof-pattern-{n}"),
        },
        title: sheets::gable_title(slope.place, pitch),
        description: sheets::gable_description(pitch),
        scale: sheets::gable_scale(share),
        canvas: c,
    }
}

fn triangle(
    c: &mut Canvas,
    corner: Point,
    paper: (f64, f64),
    style: LengthStyle,
    house: (f64, f64),
) {
    let (low, foot, top) =
        (corner, corner + Vec2::new(paper.0, 0.0), corner + Vec2::new(paper.0, paper.1));
    c.ring(Ink::Wall, &[low, foot, top]);
    let words = format!("step {}", short(style, house.0));
    let middle = low.midpoint(foot) - Vec2::new(0.0, 0.12);
    c.centered(&words, TEXT, false, Point::new(middle.x.max(low.x + 0.6), middle.y));
    let words = short(style, house.1);
    c.left(&words, TEXT, false, foot.midpoint(top) + Vec2::new(0.08, 0.0));
}

/// A bar of known length to prove the print.
fn bar(c: &mut Canvas, at: Point, style: LengthStyle, share: f64) {
    let long = match style {
        LengthStyle::Feet => 4.0,
        LengthStyle::Mm => 100.0 / 25.4,
    };
    let end = at + Vec2::new(long, 0.0);
    for p in [at, end] {
        c.line(Ink::Dimension, p - Vec2::new(0.0, 0.06), p + Vec2::new(0.0, 0.06));
    }
    c.line(Ink::Dimension, at, end);
    let words = sheets::print_bar(style, share);
    c.left(&words, TEXT, false, end + Vec2::new(0.1, 0.0));
}

/// Step after each course from a rake's foot, so that errors of single steps do not add up; where
/// exposures differ, the step of each.
fn table(
    c: &mut Canvas,
    area: Rect,
    y: f64,
    style: LengthStyle,
    (head, rows): (&str, &[(String, f64)]),
) {
    let mut x = area.x0;
    let mut y = y - 0.06;
    x += c.left(head, TEXT, true, Point::new(x, y)) + 0.15;
    for (name, step) in rows {
        let words = format!("{name}: {}", crate::wording::sheet_lengths::length(style, *step));
        let w = crate::typeface::width(&words, TEXT, false);
        if x + w > area.x1 {
            x = area.x0;
            y -= 0.16;
        }
        c.left(&words, TEXT, false, Point::new(x, y));
        x += w + 0.2;
    }
}
