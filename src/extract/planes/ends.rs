//! The ends of a plane: what is drawn short of the line it ends in, for a corner board, the casing of a
//! window at the corner or the foot of a post, is part of the wall.

use super::whole::{DETAIL, POST, Plane};
use crate::extract::ink::Ink;
use crate::geom::boolean::{difference, intersection, union_all};
use crate::geom::polygon::{Polygon, bounds, sides, total_area};
use crate::geom::tol::{LEVEL, plumb};
use crate::geom::vocabulary::{Point, Rect};

/// How far from the outermost place of a plane a side may stand and be its end, inches: a corner board.
pub(super) const END: f64 = 6.0;
/// The share of a side that the line of the end must be drawn along.
const DRAWN: f64 = 0.6;
/// What is left out of an end no higher than this stands before the wall, inches: the foot of a post
/// (common practice, no source).
const FOOT: f64 = 24.0;

/// Takes a plane out to the line it ends in at each hand.
pub(super) fn complete(plane: &mut Plane, others: &[Polygon], ink: &Ink) {
    for i in 0..plane.outlines.len() {
        for right in [false, true] {
            let short = short(&plane.outlines[i], right, ink);
            let free = |r: &Rect| total_area(&intersection(&[boxed(*r)], others)) < 1.0;
            let mut more: Vec<Polygon> = Vec::new();
            for r in short.into_iter().filter(free) {
                more.push(boxed(r));
                more.extend(widened(plane, r, right));
                let cut: Vec<Polygon> =
                    plane.openings.iter().map(|o| Polygon::simple(o.outline.clone())).collect();
                let bare = r.width().max(r.height()) >= DETAIL && r.width() > POST;
                let left = if bare { difference(&[boxed(r)], &cut) } else { Vec::new() };
                plane.bare.extend(left.into_iter().filter(|p| p.area() > 1.0));
            }
            if !more.is_empty() {
                more.push(plane.outlines[i].clone());
                let whole =
                    union_all(&more).into_iter().max_by(|a, b| a.area().total_cmp(&b.area()));
                plane.outlines[i].outer = whole.map_or_else(Vec::new, |p| p.outer);
            }
        }
    }
}

fn boxed(r: Rect) -> Polygon {
    Polygon::rect(r.x0, r.y0, r.x1, r.y1)
}

/// What lies between the sides of one hand that stand near the end and its line.
fn short(outline: &Polygon, right: bool, ink: &Ink) -> Vec<Rect> {
    let b = outline.bounds();
    let end = if right { b.x1 } else { b.x0 };
    let here: Vec<(f64, f64, f64)> = sides(&outline.outer)
        .filter(|(p, q)| plumb(q.x - p.x) && (q.y > p.y) == right)
        .map(|(p, q)| ((p.x + q.x) / 2.0, p.y.min(q.y), p.y.max(q.y)))
        .filter(|s| (s.0 - end).abs() <= END)
        .collect();
    let length = |at_end: bool| -> f64 {
        let mine = here.iter().filter(|s| !at_end || (s.0 - end).abs() <= LEVEL);
        mine.map(|s| s.2 - s.1).sum()
    };
    let is_long = length(true) >= length(false) / 2.0;
    let drawn = |low: f64, high: f64| ink.along_plumb(end, (low, high), (b.y0, b.y1));
    here.iter()
        .filter(|s| (s.0 - end).abs() > LEVEL)
        .filter(|s| {
            let high = s.2 - s.1;
            drawn(s.1, s.2) >= DRAWN * high || (is_long && high <= FOOT)
        })
        .map(|s| Rect::new(s.0.min(end), s.1, s.0.max(end), s.2))
        .collect()
}

/// Takes openings that stand beside a gap at the end through it: their casing is the corner's. Gives what
/// they are now.
fn widened(plane: &mut Plane, r: Rect, right: bool) -> Vec<Polygon> {
    let (inner, end) = if right { (r.x0, r.x1) } else { (r.x1, r.x0) };
    let mut out = Vec::new();
    for o in &mut plane.openings {
        let b = bounds(&o.outline).unwrap_or_default();
        let side = if right { b.x1 } else { b.x0 };
        if (side - inner).abs() <= LEVEL && b.y0 < r.y1 - LEVEL && b.y1 > r.y0 + LEVEL {
            let onto = |p: &Point| if (p.x - side).abs() <= LEVEL { end } else { p.x };
            o.outline = o.outline.iter().map(|p| Point::new(onto(p), p.y)).collect();
            out.push(Polygon::simple(o.outline.clone()).wound());
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::extract::planes::whole::plane;
    use crate::extract::ways::recess::FoundOpening;
    use crate::model::house::OpeningKind;
    use crate::origin::Origin;

    /// A wall 100 x 90 with a window at its right end, 60 to 98 across and from the foot to 70 up: siding
    /// stands beside and over it, its casing ends 2 in short of the corner.
    fn wall(ink: &Ink) -> Plane {
        let siding = [Polygon::rect(0.0, 70.0, 100.0, 90.0), Polygon::rect(0.0, 0.0, 60.0, 70.0)];
        let glass = FoundOpening {
            outline: Polygon::rect(64.0, 0.0, 94.0, 66.0).outer,
            kind: OpeningKind::Window,
            block: None,
            origin: Origin::default(),
        };
        plane(&siding, (&[glass], ink), &Origin::default())
    }

    #[test]
    fn a_window_at_the_corner_reaches_it_where_the_corner_is_drawn() {
        let sides = |ink: &Ink| {
            let mut found = wall(ink);
            complete(&mut found, &[], ink);
            let window = bounds(&found.openings[0].outline).unwrap_or_default();
            (window.x1, found.outlines[0].area())
        };
        let drawn = sides(&Ink::plumb_at(100.0, (0.0, 90.0)));
        assert_eq!(drawn, (100.0, 100.0 * 90.0));
        let bare = sides(&Ink::plumb_at(300.0, (0.0, 90.0)));
        assert!(bare.0 < 100.0, "{bare:?}");
    }
}
