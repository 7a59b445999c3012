//! Level lines at one distance in drawing units, before any unit is known: siding as exploded hatches and
//! prints leave it. Its distance and the height of its fields speak for a unit where nothing else is drawn
//! on layers with a role.

use std::collections::BTreeMap;

use super::courses::{may_be_course, of_notes};
use crate::geom::polygon::bounds;
use crate::geom::vocabulary::{Point, Rect};
use crate::model::drawing::Ink;
use crate::model::linework::{Linework, Stroke};

/// A line leans no more than this share of its length.
const LEAN: f64 = 0.002;
/// Distances of one family differ by no more than this share (as of drawn courses).
const UNEVEN: f64 = 0.04;
/// Fewer steps from line to line than this are no courses.
const LEAST: usize = 8;
/// A line is so many times as long as it is off the next, at least: dashes of earth and stone are not.
const LONG: f64 = 3.0;
/// Most lines over one that are looked at, and most lines in all.
const MOST_OVER: usize = 2_000;
const MOST: usize = 100_000;
/// A field of fewer lines than this is no wall's.
const FIELD: usize = 6;

/// A level line, drawing units.
#[derive(Clone, Copy)]
struct Level {
    y: f64,
    x0: f64,
    x1: f64,
}

/// A step from one line to the next one over it.
struct Step {
    low: usize,
    high: usize,
    gap: f64,
    over: f64,
}

/// Fields of level lines at one distance, and that distance: of the layer and ink whose lines are longest
/// together. Drawing units.
pub(super) fn fields(lines: &Linework, sees: impl Fn(Point) -> bool) -> Vec<(Rect, f64)> {
    let mut best: (f64, Vec<(Rect, f64)>) = (0.0, Vec::new());
    for list in by_key(lines, sees).into_values() {
        let steps = steps(&list);
        let Some((apart, weight)) = apart(&steps) else { continue };
        if weight > best.0 {
            let found = of_family(&list, &steps, apart);
            best = if found.is_empty() { best } else { (weight, found) };
        }
    }
    best.1
}

fn by_key(lines: &Linework, sees: impl Fn(Point) -> bool) -> BTreeMap<(usize, Ink), Vec<Level>> {
    let mut out: BTreeMap<(usize, Ink), Vec<Level>> = BTreeMap::new();
    let (mut count, notes) = (0, of_notes(lines));
    let noted = |s: &Stroke| s.role.is_none() && notes.get(s.layer) == Some(&true);
    for s in lines.strokes.iter().filter(|s| may_be_course(s) && !s.closed && !noted(s)) {
        if !bounds(&s.points).is_some_and(|b| sees(b.center())) {
            continue;
        }
        for w in s.points.windows(2) {
            let (rise, run) = ((w[0].y - w[1].y).abs(), (w[0].x - w[1].x).abs());
            if count < MOST && run > 0.0 && rise <= LEAN * run {
                count += 1;
                let (x0, x1) = (w[0].x.min(w[1].x), w[0].x.max(w[1].x));
                let level = Level { y: w[0].y.midpoint(w[1].y), x0, x1 };
                out.entry((s.layer, s.ink)).or_default().push(level);
            }
        }
    }
    for list in out.values_mut() {
        list.sort_by(|a, b| a.y.total_cmp(&b.y).then(a.x0.total_cmp(&b.x0)));
        // Lines drawn twice say nothing more.
        list.dedup_by(|b, a| b.y == a.y && b.x0 == a.x0 && b.x1 == a.x1);
    }
    out
}

/// From each line to the next one over it that stands over half of the shorter of both.
fn steps(list: &[Level]) -> Vec<Step> {
    let mut out = Vec::new();
    for (low, a) in list.iter().enumerate() {
        let next = list.iter().enumerate().skip(low + 1).take(MOST_OVER).find_map(|(high, b)| {
            let (gap, over) = (b.y - a.y, a.x1.min(b.x1) - a.x0.max(b.x0));
            let short = (a.x1 - a.x0).min(b.x1 - b.x0);
            let stands = over > 0.5 * short && short > LONG * gap && gap > 0.0;
            stands.then_some(Step { low, high, gap, over })
        });
        out.extend(next);
    }
    out
}

/// The distance at which most of the length stands, and that length; none where there are few.
fn apart(steps: &[Step]) -> Option<(f64, f64)> {
    let mut all: Vec<(f64, f64)> = steps.iter().map(|s| (s.gap, s.over)).collect();
    all.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut best: Option<(f64, f64)> = None;
    let (mut from, mut sum) = (0, 0.0);
    for to in 0..all.len() {
        sum += all[to].1;
        while all[from].0 < all[to].0 * (1.0 - UNEVEN) {
            sum -= all[from].1;
            from += 1;
        }
        if to + 1 - from >= LEAST && best.is_none_or(|b| sum > b.1) {
            best = Some((all[from + (to - from) / 2].0, sum));
        }
    }
    best
}

/// The boxes of lines that hang together at a distance.
fn of_family(list: &[Level], steps: &[Step], apart: f64) -> Vec<(Rect, f64)> {
    let mut field: Vec<usize> = (0..list.len()).collect();
    fn first(field: &mut [usize], mut i: usize) -> usize {
        while field[i] != i {
            field[i] = field[field[i]];
            i = field[i];
        }
        i
    }
    for s in steps.iter().filter(|s| (s.gap / apart - 1.0).abs() <= UNEVEN) {
        let (a, b) = (first(&mut field, s.low), first(&mut field, s.high));
        field[a.max(b)] = a.min(b);
    }
    let mut boxes: BTreeMap<usize, (Rect, usize)> = BTreeMap::new();
    for (i, l) in list.iter().enumerate() {
        let own = Rect::new(l.x0, l.y, l.x1, l.y);
        let at = first(&mut field, i);
        let entry = boxes.entry(at).or_insert((own, 0));
        *entry = (entry.0.union(own), entry.1 + 1);
    }
    let large = boxes.into_values().filter(|(_, lines)| *lines >= FIELD);
    large.map(|(b, _)| (b, apart)).collect()
}
