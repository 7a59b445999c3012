//! Course numbers and heights at both ends, and strings of dimensions whose parts sum to the whole.

use std::collections::BTreeSet;

use super::view::{View, top};
use crate::annotate::canvas::{Canvas, Look, Mark};
use crate::annotate::meeting::clipped;
use crate::annotate::place::text_box;
use crate::annotate::style::{Ink, TEXT};
use crate::geom::vocabulary::{Point, Rect, Vec2};
use crate::layout::course::LaidCourse;
use crate::layout::wall::{LaidElevation, LaidWall};
use crate::model::house::EdgeKind;
use crate::wording::sheet_lengths::{length, string};
use crate::wording::sheets::overall;

/// Distance of strings of dimensions.
pub(super) const ROW: f64 = 0.32;
/// Distance of heights from a wall's left, and of the upright string and its words from its right.
pub(super) const HEIGHTS: f64 = 0.46;
pub(super) const UPRIGHT: f64 = 0.35;
pub(super) const BESIDE: f64 = 0.07;
/// Sills at or over this, house inches over the level line, belong to an upper story's openings.
const UPPER: f64 = 96.0;

/// Course numbers between butt lines, heights of butt lines beside them, on the left; a wedge where
/// level is checked, on top of the courses numbered in `checks`.
pub(super) fn heights(c: &mut Canvas, e: &LaidElevation, v: &View, checks: &BTreeSet<i32>) {
    let mut levels: Vec<&LaidCourse> = e.walls.iter().flat_map(|w| &w.courses).collect();
    levels.sort_by_key(|c| c.index);
    levels.dedup_by_key(|c| c.index);
    levels.retain(|l| v.holds(v.window.x0, (l.bottom + l.top) / 2.0));
    let paper = v.paper();
    // Where courses stand nearer than text is high, every second, third.. is written.
    let pitch = levels.first().map_or(1.0, |l| (l.top - l.bottom) / v.factor);
    let every = ((TEXT * 1.5) / pitch).ceil().max(1.0) as usize;
    for (i, l) in levels.iter().enumerate() {
        let y = v.at(0.0, l.bottom).y;
        let at = |d: f64| Point::new(paper.x0 - d, y);
        c.line(Ink::Dimension, at(0.05), at(0.2));
        if checks.contains(&l.index) {
            let half = Vec2::new(0.0, 0.035);
            c.ring(Ink::Solid, &[at(0.05), at(0.17) + half, at(0.17) - half]);
        }
        if i % every != 0 {
            continue;
        }
        let number = format!("{}", l.index + 1);
        let height = length(v.style, l.bottom);
        c.right(&number, TEXT, true, at(0.22) + Vec2::new(0.0, pitch / 2.0));
        c.right(&height, TEXT, false, at(HEIGHTS));
    }
}

/// Strings of widths under the walls: openings story by story, then the whole.
pub(super) fn widths(c: &mut Canvas, e: &LaidElevation, v: &View) {
    let paper = v.paper();
    // Grade may run far past the walls: what of it is drawn under them counts.
    let near = Rect::new(paper.x0 - 0.3, f64::MIN / 4.0, paper.x1 + 0.3, f64::MAX / 4.0);
    let grade = e.grade.windows(2).filter_map(|p| clipped(v.xy(&p[0]), v.xy(&p[1]), &near));
    let lowest = grade.map(|(a, b)| a.y.min(b.y)).fold(paper.y0, f64::min);
    let strings = strings(e, v.window);
    let rows = strings.len() as f64;
    let mut row = lowest.max(c.placer.area.y0 + rows * ROW) - 0.02;
    for xs in strings {
        row -= ROW;
        level_string(c, v, xs, row);
    }
}

/// The strings of a window: places along the walls, the highest string first.
pub(super) fn strings(e: &LaidElevation, window: Rect) -> Vec<Vec<f64>> {
    let mut strings: Vec<Vec<f64>> = Vec::new();
    for upper in [true, false] {
        let sides: Vec<f64> = e
            .walls
            .iter()
            .flat_map(|w| &w.openings)
            .filter(|o| (o.sill >= UPPER) == upper)
            .flat_map(|o| [o.left, o.right])
            .collect();
        let shown = |x: &&f64| **x > window.x0 && **x < window.x1;
        if upper && !sides.iter().any(|x| shown(&x)) {
            continue;
        }
        let sided = sides.iter().any(|x| shown(&x));
        let ends = e.walls.iter().flat_map(|w| [bound(w, f64::min), bound(w, f64::max)]);
        let mut xs: Vec<f64> = ends.chain(sides).collect();
        xs.retain(|x| *x > window.x0 && *x < window.x1);
        xs.extend([window.x0, window.x1]);
        // One wall without openings is as long as the whole, and other widths are told already.
        if !strings.is_empty() && !sided && places(xs.clone()).len() == 2 {
            continue;
        }
        strings.push(xs);
    }
    strings.push(vec![window.x0, window.x1]);
    strings
}

pub(super) fn bound(w: &LaidWall, f: fn(f64, f64) -> f64) -> f64 {
    w.outline.iter().map(|p| p[0]).reduce(f).unwrap_or(0.0)
}

fn places(mut at: Vec<f64>) -> Vec<f64> {
    at.sort_by(f64::total_cmp);
    at.dedup_by(|a, b| (*a - *b).abs() < 1.0 / 16.0);
    at
}

/// A tick of a dimension, and the end of its extension line.
fn tick(c: &mut Canvas, p: Point, upright: bool) {
    c.line(Ink::Dimension, p - Vec2::new(0.035, 0.035), p + Vec2::new(0.035, 0.035));
    let d = if upright { Vec2::new(0.06, 0.0) } else { Vec2::new(0.0, 0.06) };
    c.line(Ink::Dimension, p - d, p + d);
}

/// One level string: each length over its part, or off it with a leader where it does not fit.
fn level_string(c: &mut Canvas, v: &View, xs: Vec<f64>, y: f64) {
    let xs = places(xs);
    let at = |x: f64| Point::new(v.at(x, 0.0).x, y);
    xs.iter().for_each(|x| tick(c, at(*x), false));
    for (pair, words) in xs.windows(2).zip(string(v.style, &xs)) {
        let (a, b) = (at(pair[0]), at(pair[1]));
        c.firm(Ink::Dimension, a, b);
        c.measured(a, b, &words);
        let middle = a.midpoint(b);
        let over = middle + Vec2::new(0.0, 0.085);
        let room = b.x - a.x > crate::typeface::width(&words, TEXT, false) + 0.02;
        if room && c.placer.free(&text_box(&words, TEXT, false, over)) {
            c.centered(&words, TEXT, false, over);
        } else {
            let wish = middle - Vec2::new(0.0, 0.13);
            let m = Mark { text: &words, target: middle, wish, reach: 1.5, look: Look::Plain };
            c.mark(m);
        }
    }
}

/// One upright string on the right: feet of walls, eaves and tops.
pub(super) fn upright(c: &mut Canvas, e: &LaidElevation, v: &View) {
    let say = v.say;
    let ys = levels(e, v.window);
    let x = v.paper().x1 + UPRIGHT;
    let at = |y: f64| Point::new(x, v.at(0.0, y).y);
    ys.iter().for_each(|y| tick(c, at(*y), true));
    for (pair, words) in ys.windows(2).zip(string(v.style, &ys)) {
        let (a, b) = (at(pair[0]), at(pair[1]));
        c.firm(Ink::Dimension, a, b);
        c.measured(a, b, &words);
        let w = crate::typeface::width(&words, TEXT, false);
        let beside = a.midpoint(b) + Vec2::new(BESIDE + w / 2.0, 0.0);
        if c.placer.free(&text_box(&words, TEXT, false, beside)) {
            c.centered(&words, TEXT, false, beside);
        } else {
            let target = a.midpoint(b);
            c.mark(Mark { text: &words, target, wish: beside, reach: 1.5, look: Look::Plain });
        }
    }
    if let [low, _, .., high] = ys.as_slice() {
        let words = say.line(|lang| overall(lang, &length(v.style, high - low)));
        let top = at(*high) + Vec2::new(0.0, 0.12);
        let w = crate::typeface::width(&words, TEXT, false);
        let target = top + Vec2::new(0.2_f64.min(w / 2.0), 0.02);
        c.mark(Mark { text: &words, target, wish: target, reach: 1.0, look: Look::Bare });
    }
}

/// The places of the upright string of a window.
pub(super) fn levels(e: &LaidElevation, window: Rect) -> Vec<f64> {
    let mut ys: Vec<f64> = Vec::new();
    for w in &e.walls {
        let level = |s: &&crate::layout::wall::LaidEdge| {
            s.opening.is_none()
                && (s.from[1] - s.to[1]).abs() < 0.1
                && matches!(
                    s.kind,
                    EdgeKind::Base | EdgeKind::BareTop | EdgeKind::Eave | EdgeKind::BareBottom
                )
        };
        ys.extend(w.edges.iter().filter(level).map(|s| s.from[1]));
    }
    let top = top(e, window);
    ys.retain(|y| *y > window.y0 && *y < top);
    ys.extend([window.y0, top]);
    places(ys)
}
