//! Piece marks: one a piece, on the piece where it fits, else beside it with a leader; rips and
//! notches by their sizes where there is room.

use super::dims::bound;
use super::view::View;
use crate::annotate::canvas::{Canvas, Look, Mark};
use crate::annotate::place::text_box;
use crate::annotate::style::TEXT;
use crate::geom::vocabulary::{Point, Rect, Vec2, Xy};
use crate::layout::course::LaidCourse;
use crate::layout::piece::Piece;
use crate::layout::told;
use crate::layout::wall::{LaidElevation, LaidWall};
use crate::model::notch::NotchSide;
use crate::wording::sheet_lengths::short;

/// Piece marks, without the wall's own prefix, which stands once over the wall. Returns how many
/// found no room.
pub(super) fn marks(c: &mut Canvas, e: &LaidElevation, v: &View) -> usize {
    let mut tight = Vec::new();
    let mut placed = Vec::new();
    for w in &e.walls {
        for (k, p) in pieces(w) {
            let center = middle(k, p);
            if !v.holds(center.0, center.1) {
                continue;
            }
            match spot(c, p, v) {
                Some(at) => {
                    c.on_ground(short_mark(&p.mark), TEXT, at);
                    placed.push((p, at));
                }
                None => tight.push((p, v.at(center.0, center.1))),
            }
        }
    }
    for w in &e.walls {
        name(c, w, v);
    }
    let mut none = 0;
    for (p, target) in tight {
        let text = short_mark(&p.mark);
        let m = Mark { text, target, wish: target, reach: 1.5, look: Look::Dotted };
        match c.mark_clear(m).or_else(|| c.mark(Mark { reach: 6.0, ..m })) {
            Some(at) => placed.push((p, at)),
            None => none += 1,
        }
    }
    for (p, at) in placed {
        rip(c, p, at, v);
    }
    none
}

/// Sizes of notches, width before depth, where there is room near them.
pub(super) fn notches(c: &mut Canvas, e: &LaidElevation, v: &View) {
    for w in &e.walls {
        for (k, p) in pieces(w) {
            for (n, told) in p.notches.iter().zip(told::piece(p, v.style).notches) {
                let x = p.x0 + n.left + n.width / 2.0;
                let (y, out) = match n.side {
                    NotchSide::Top => {
                        (p.rip.as_ref().map_or(k.top, |r| k.bottom + r.to) - n.depth, -1.0)
                    }
                    NotchSide::Bottom => {
                        (k.bottom + p.rip.as_ref().map_or(0.0, |r| r.from) + n.depth, 1.0)
                    }
                    _ => (k.bottom + n.foot.unwrap_or(0.0), -1.0),
                };
                if !v.holds(x, y) {
                    continue;
                }
                let text = format!(
                    "{} x {}",
                    short(v.style, told.told_width()),
                    short(v.style, told.depth)
                );
                let target = v.at(x, y);
                let wish = target + Vec2::new(0.0, out * 0.1);
                c.mark_clear(Mark { text: &text, target, wish, reach: 0.5, look: Look::Plain });
            }
        }
    }
}

fn pieces(w: &LaidWall) -> impl Iterator<Item = (&LaidCourse, &Piece)> {
    w.courses
        .iter()
        .flat_map(|k| k.runs.iter().flat_map(move |r| r.pieces.iter().map(move |p| (k, p))))
}

/// The name of a wall over it, with how its marks read.
fn name(c: &mut Canvas, w: &LaidWall, v: &View) {
    let Some(prefix) = pieces(w).next().and_then(|(_, p)| p.mark.split('-').next()) else { return };
    let top = w.outline.iter().map(|p| p[1]).fold(f64::NEG_INFINITY, f64::max);
    // Over what this sheet shows of the wall.
    let left = bound(w, f64::min).max(v.window.x0);
    let right = bound(w, f64::max).min(v.window.x1);
    if left >= right {
        return;
    }
    let (x, top) = ((left + right) / 2.0, top.min(v.window.y1));
    let wish = v.at(x, top) + Vec2::new(0.0, 0.25);
    for text in
        [format!("wall {prefix}: marks read {prefix}-course-piece"), format!("wall {prefix}")]
    {
        if c.mark_clear(Mark { text: &text, target: wish, wish, reach: 1.0, look: Look::Bare })
            .is_some()
        {
            return;
        }
    }
    let text = format!("wall {prefix}");
    c.mark(Mark { text: &text, target: wish, wish, reach: 3.0, look: Look::Bare });
}

/// The middle of what shows of a piece.
pub(in crate::annotate) fn middle(k: &LaidCourse, p: &Piece) -> (f64, f64) {
    let x = (p.x0 + p.x1) / 2.0;
    let span = (0..=20)
        .map(|i| x + (p.x1 - p.x0) / 41.0 * f64::from(if i % 2 == 0 { i } else { -i }))
        .find_map(|x| spans(&p.outline, x).into_iter().max_by(longer).map(|s| (x, s)));
    span.map_or((x, (k.bottom + k.top) / 2.0), |(x, s)| (x, (s.0 + s.1) / 2.0))
}

fn longer(a: &(f64, f64), b: &(f64, f64)) -> std::cmp::Ordering {
    (a.1 - a.0).total_cmp(&(b.1 - b.0))
}

/// Where a plumb line at `x` is inside a ring, low to high.
fn spans(ring: &[Xy], x: f64) -> Vec<(f64, f64)> {
    let sides = ring.iter().zip(ring.iter().cycle().skip(1));
    let mut at: Vec<f64> = sides
        .filter(|(a, b)| (a[0] > x) != (b[0] > x))
        .map(|(a, b)| a[1] + (x - a[0]) / (b[0] - a[0]) * (b[1] - a[1]))
        .collect();
    at.sort_by(f64::total_cmp);
    at.chunks_exact(2).map(|p| (p[0], p[1])).collect()
}

/// A place on the piece where its mark fits, nearest to the middle; off lines that must be seen.
fn spot(c: &Canvas, p: &Piece, v: &View) -> Option<Point> {
    let text = short_mark(&p.mark);
    let about = text_box(text, TEXT, false, Point::ORIGIN);
    let half = about.width() / 2.0;
    let (a, b) = (v.at(p.x0, 0.0).x + half, v.at(p.x1, 0.0).x - half);
    if a > b {
        return None;
    }
    let step = 0.06;
    let count = ((b - a) / step).ceil() as i32;
    let middle = (a + b) / 2.0;
    let along = (0..=count)
        .map(|i| middle + step / 2.0 * f64::from(if i % 2 == 0 { i } else { -i - 1 }))
        .filter(|x| *x >= a && *x <= b);
    let places: Vec<(Point, bool)> = along.filter_map(|x| height(p, v, x, half)).collect();
    let clear = |at: &Point| c.placer.clear(&(about + at.to_vec2()));
    let full = places.iter().filter(|(_, whole)| *whole).map(|(at, _)| *at).find(clear);
    // Courses nearer than text is high: the mark stands over their lines, on its ground.
    full.or_else(|| {
        let free = |at: &Point| c.placer.clear(&about_of(about, *at));
        places.iter().map(|(at, _)| *at).find(free)
    })
}

fn about_of(about: Rect, at: Point) -> Rect {
    about + at.to_vec2()
}

/// The middle of a piece's height over a mark's width at paper `x`, and whether capitals fit
/// between its edges. `None` where the piece is a sliver there.
fn height(p: &Piece, v: &View, x: f64, half: f64) -> Option<(Point, bool)> {
    let back = v.map.inverse();
    let mut low = f64::NEG_INFINITY;
    let mut high = f64::INFINITY;
    for d in [0.0, -1.0, 1.0, -0.5, 0.5] {
        let at = (back * Point::new(x + d * half, 0.0)).x;
        let middle = (low + high) / 2.0;
        let span = spans(&p.outline, at)
            .into_iter()
            .filter(|s| !middle.is_finite() || (s.0 < high && s.1 > low))
            .max_by(longer)?;
        low = low.max(span.0);
        high = high.min(span.1);
    }
    let tall = (high - low) / v.factor;
    (tall > 0.045).then(|| {
        let y = v.at(0.0, (low + high) / 2.0).y;
        (Point::new(x, y), tall >= TEXT + 0.02)
    })
}

/// What is kept of a ripped piece, beside its mark.
fn rip(c: &mut Canvas, p: &Piece, at: Point, v: &View) {
    let Some(r) = &p.rip else { return };
    let text = format!("rip {}", short(v.style, v.style.to_mark(r.to) - v.style.to_mark(r.from)));
    let mark = crate::typeface::width(short_mark(&p.mark), TEXT, false) / 2.0;
    let own = crate::typeface::width(&text, TEXT, false) / 2.0;
    for side in [1.0, -1.0] {
        let beside = at + Vec2::new(side * (mark + own + 0.09), 0.0);
        if c.placer.clear(&text_box(&text, TEXT, false, beside)) {
            c.on_ground(&text, TEXT, beside);
            return;
        }
    }
}

pub(super) fn short_mark(mark: &str) -> &str {
    mark.split_once('-').map_or(mark, |(_, rest)| rest)
}
