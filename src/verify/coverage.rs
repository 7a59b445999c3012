//! Pieces cover the field exactly, and overlap only at laps.
//!
//! The field less its clearances, course by course: the end gap to both sides of every plumb or
//! sloped side, the notch clearance above and below level sides that cut a course, a mounting block
//! grown by it. The course is cut into slabs at every height where something begins or ends; in
//! each slab the level line is compared at three heights.

use super::Rule;
use super::scan::{Spans, across, joined, length, without};
use crate::model::layout::{Course, Layout, RuleCheck, Wall, Xy};

/// Uncovered or doubly covered length at one height that counts as none, inches.
const NOISE: f64 = 0.02;
/// Area of a course, square inches, below which a difference is none: strips too small for a
/// piece are left out by rule.
const LEAST: f64 = 1.0;

pub(super) fn check(layout: &Layout) -> [RuleCheck; 3] {
    let (mut open, mut over, mut twice) = (Rule::default(), Rule::default(), Rule::default());
    let (gap, v) = (layout.job.end_gap(), layout.job.courses.notch_clearance);
    for (e, w) in layout.walls() {
        for course in strips(layout, w) {
            let (uncovered, beyond, doubled) = compare(w, &course, gap, v, layout.job.lap());
            let place = || format!("{}, {}, course {}", e.name, w.id, course.index + 1);
            open.case(uncovered < LEAST, || {
                format!("{}: {uncovered:.2} sq in of the field are not covered", place())
            });
            over.case(beyond < LEAST, || {
                format!(
                    "{}: pieces reach {beyond:.2} sq in out of the field or into its clearances",
                    place()
                )
            });
            twice.case(doubled < LEAST, || {
                format!("{}: pieces of different runs overlap by {doubled:.2} sq in", place())
            });
        }
    }
    [
        open.done("pieces cover the whole field"),
        over.done("pieces stay in the field and out of its clearances"),
        twice.done("pieces overlap only at laps"),
    ]
}

/// Every course the field reaches, an empty one where nothing was laid.
fn strips(layout: &Layout, w: &Wall) -> Vec<Course> {
    let ys = w.field.iter().flatten().map(|p| p[1]);
    let (low, high) = ys.fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), y| (a.min(y), b.max(y)));
    if low >= high {
        return Vec::new();
    }
    let exposure = layout.job.product.exposure;
    let first = ((low - layout.datum) / exposure + 1e-6).floor() as i32;
    let last = ((high - layout.datum) / exposure - 1e-6).floor() as i32;
    (first..=last)
        .map(|index| {
            let bottom = layout.datum + f64::from(index) * exposure;
            w.courses.iter().find(|c| c.index == index).cloned().unwrap_or(Course {
                index,
                bottom,
                top: bottom + exposure,
                rip: None,
                avoid: Vec::new(),
                runs: Vec::new(),
            })
        })
        .collect()
}

/// Square inches uncovered, beyond, and doubled between runs.
fn compare(w: &Wall, course: &Course, gap: f64, v: f64, lap: f64) -> (f64, f64, f64) {
    let mut ys = vec![course.bottom, course.top];
    let rings = |c: &Course| -> Vec<Vec<Xy>> {
        c.runs
            .iter()
            .flat_map(|r| &r.pieces)
            .flat_map(|p| std::iter::once(&p.outline).chain(&p.holes).chain(&p.more))
            .cloned()
            .collect()
    };
    let pieces = rings(course);
    ys.extend(w.field.iter().chain(&pieces).flatten().map(|p| p[1]));
    ys.extend(w.field.iter().flatten().flat_map(|p| [p[1] - v, p[1] + v]));
    ys.extend(w.obstacles.iter().flat_map(|o| &o.outline).flat_map(|p| [p[1] - v, p[1], p[1] + v]));
    ys.retain(|y| *y >= course.bottom && *y <= course.top);
    ys.sort_by(f64::total_cmp);
    ys.dedup_by(|a, b| (*a - *b).abs() < 1e-6);
    let mut sums = (0.0, 0.0, 0.0);
    for slab in ys.windows(2) {
        let high = slab[1] - slab[0];
        for at in [0.1, 0.5, 0.9] {
            let y = slab[0] + at * high;
            let clear = clear_at(w, course, y, gap, v);
            let (laid, doubled) = laid_at(course, y, lap);
            let part = |x: f64| if x > NOISE { x * high / 3.0 } else { 0.0 };
            sums.0 += part(length(&without(&clear, &laid)));
            sums.1 += part(length(&without(&laid, &clear)));
            sums.2 += part(doubled);
        }
    }
    sums
}

/// What may be covered at height `y`.
fn clear_at(w: &Wall, course: &Course, y: f64, gap: f64, v: f64) -> Spans {
    let mut off: Spans = Vec::new();
    for ring in &w.field {
        for i in 0..ring.len() {
            let (a, b) = (ring[i], ring[(i + 1) % ring.len()]);
            if (a[1] - b[1]).abs() < 0.01 {
                let cuts = a[1] > course.bottom + 0.01 && a[1] < course.top - 0.01;
                if cuts && (y - a[1]).abs() < v {
                    off.push((a[0].min(b[0]) - gap, a[0].max(b[0]) + gap));
                }
            } else if (a[1] > y) != (b[1] > y) {
                let x = a[0] + (y - a[1]) * (b[0] - a[0]) / (b[1] - a[1]);
                off.push((x - gap, x + gap));
            }
        }
    }
    for o in &w.obstacles {
        if o.mounting_block {
            off.extend(grown_at(&o.outline, y, v));
        } else {
            off.extend(across([&o.outline], y));
        }
    }
    without(&joined(across(&w.field, y)), &joined(off))
}

/// A convex outline grown by a square of half-width `v`, at height `y`.
fn grown_at(outline: &[Xy], y: f64, v: f64) -> Option<(f64, f64)> {
    let (low, high) = (y - v, y + v);
    let mut xs = Vec::new();
    for i in 0..outline.len() {
        let (a, b) = (outline[i], outline[(i + 1) % outline.len()]);
        let (bottom, top) = if a[1] < b[1] { (a, b) } else { (b, a) };
        if top[1] < low || bottom[1] > high {
            continue;
        }
        let at = |y: f64| {
            let t = if top[1] > bottom[1] { (y - bottom[1]) / (top[1] - bottom[1]) } else { 0.0 };
            bottom[0] + t.clamp(0.0, 1.0) * (top[0] - bottom[0])
        };
        xs.extend([at(low.max(bottom[1])), at(high.min(top[1]))]);
        if top[1] == bottom[1] {
            xs.push(top[0]);
        }
    }
    let least = xs.iter().copied().reduce(f64::min)?;
    Some((least - v, xs.iter().copied().reduce(f64::max)? + v))
}

/// What is covered at height `y`, and the length covered twice other than by laps of one run.
fn laid_at(course: &Course, y: f64, lap: f64) -> (Spans, f64) {
    let mut all: Spans = Vec::new();
    let mut doubled = 0.0;
    for run in &course.runs {
        let mut of_run: Spans = Vec::new();
        for p in &run.pieces {
            let here = across(std::iter::once(&p.outline).chain(&p.holes).chain(&p.more), y);
            let both = length(&of_run) + length(&here)
                - length(&joined([of_run.clone(), here.clone()].concat()));
            doubled += (both - lap - 0.01).max(0.0);
            of_run = joined([of_run, here].concat());
        }
        let both = length(&all) + length(&of_run)
            - length(&joined([all.clone(), of_run.clone()].concat()));
        doubled += both.max(0.0);
        all = joined([all, of_run].concat());
    }
    (all, doubled)
}
