//! Piece marks with lengths: one a piece, on the piece where it fits, else beside it with a leader; rips
//! by their heights where there is room.

use super::dims::bound;
use super::view::View;
use crate::annotate::canvas::{Canvas, Look, Mark};
use crate::annotate::place::text_box;
use crate::annotate::style::TEXT;
use crate::geom::vocabulary::{Point, Vec2, Xy};
use crate::layout::course::LaidCourse;
use crate::layout::piece::Piece;
use crate::layout::wall::{LaidElevation, LaidWall};
use crate::wording::sheet_lengths::{length, short};
use crate::wording::{legend, sheets};

/// Piece marks, without the wall's own prefix, each with the piece's length. Returns how many found no room.
pub(super) fn marks(c: &mut Canvas, e: &LaidElevation, v: &View) -> usize {
    let mut tight = Vec::new();
    let mut placed = Vec::new();
    for w in &e.walls {
        for (k, p) in pieces(w) {
            let center = middle(k, p);
            if !v.holds(center.0, center.1) {
                continue;
            }
            let text = label(p, v);
            match spot(c, p, &text, v) {
                Some(at) => {
                    c.centered(&text, TEXT, false, at);
                    placed.push((p, text, at));
                }
                None => tight.push((p, text, v.at(center.0, center.1))),
            }
        }
    }
    let mut none = 0;
    for (p, text, target) in tight {
        let m = Mark { text: &text, target, wish: target, reach: 2.5, look: Look::Dotted };
        let off_work = c.mark_off_work(m);
        match off_work.or_else(|| c.mark(Mark { reach: 6.0, ..m })) {
            Some(at) => placed.push((p, text, at)),
            None => none += 1,
        }
    }
    for (p, text, at) in placed {
        rip(c, p, (&text, at), v);
    }
    none
}

/// A piece's mark with its length as it is told everywhere.
fn label(p: &Piece, v: &View) -> String {
    format!("{}  {}", short_mark(&p.mark), length(v.style, v.style.to_cut(p.length)))
}

/// The names of walls over them.
pub(super) fn names(c: &mut Canvas, e: &LaidElevation, v: &View) {
    for w in &e.walls {
        name(c, w, v);
    }
}

fn pieces(w: &LaidWall) -> impl Iterator<Item = (&LaidCourse, &Piece)> {
    w.courses
        .iter()
        .flat_map(|k| k.runs.iter().flat_map(move |r| r.pieces.iter().map(move |p| (k, p))))
}

/// What marks of a wall's pieces begin with; the wall's own name where it has none.
pub(in crate::annotate) fn prefix(w: &LaidWall) -> &str {
    let first = pieces(w).next().and_then(|(_, p)| p.mark.split('-').next());
    first.unwrap_or(&w.id)
}

/// The name of a wall over it.
fn name(c: &mut Canvas, w: &LaidWall, v: &View) {
    let say = v.say;
    let top = w.outline.iter().map(|p| p[1]).fold(f64::NEG_INFINITY, f64::max);
    let (left, right) = (bound(w, f64::min), bound(w, f64::max));
    let wish = v.at((left + right) / 2.0, top) + Vec2::new(0.0, 0.2);
    let text = say.line(|lang| sheets::wall(lang, prefix(w)));
    let m = Mark { text: &text, target: wish, wish, reach: 1.0, look: Look::Bare };
    if c.mark_clear(m).is_none() {
        c.mark(Mark { reach: 3.0, ..m });
    }
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

/// A place on the piece where a text fits between its edges, nearest to the middle; off lines that must be
/// seen.
fn spot(c: &Canvas, p: &Piece, text: &str, v: &View) -> Option<Point> {
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
    let places = along.filter_map(|x| height(p, v, x, half));
    let mut clear = places.filter(|at| c.placer.clear(&(about + at.to_vec2())));
    clear.next()
}

/// The middle of a piece's height over a text's width at paper `x`. `None` where capitals do not fit
/// between its edges there.
fn height(p: &Piece, v: &View, x: f64, half: f64) -> Option<Point> {
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
    (tall >= TEXT + 0.02).then(|| Point::new(x, v.at(0.0, (low + high) / 2.0).y))
}

/// What is kept of a ripped piece, beside its mark.
fn rip(c: &mut Canvas, p: &Piece, (label, at): (&str, Point), v: &View) {
    let say = v.say;
    let Some(r) = &p.rip else { return };
    let told = v.style.to_mark(r.to) - v.style.to_mark(r.from);
    let text = say.line(|lang| legend::rip(lang, &short(v.style, told)));
    let mark = crate::typeface::width(label, TEXT, false) / 2.0;
    let own = crate::typeface::width(&text, TEXT, false) / 2.0;
    for side in [1.0, -1.0] {
        let beside = at + Vec2::new(side * (mark + own + 0.09), 0.0);
        let r = text_box(&text, TEXT, false, beside);
        if c.placer.clear(&r) && c.placer.hides_nothing(&r) {
            c.centered(&text, TEXT, false, beside);
            return;
        }
    }
}

pub(in crate::annotate) fn short_mark(mark: &str) -> &str {
    mark.split_once('-').map_or(mark, |(_, rest)| rest)
}
