//! The slope of every rake, as a triangle with a base of 12 (`DrawingFact::SlopeTriangle`).

use super::view::View;
use crate::annotate::canvas::Canvas;
use crate::annotate::place::text_box;
use crate::annotate::style::{Ink, TEXT};
use crate::geom::vocabulary::{Point, Rect, Vec2};
use crate::layout::wall::{LaidElevation, LaidWall};
use crate::model::house::EdgeKind;

/// Base of the triangle on paper.
const BASE: f64 = 0.3;
/// Rakes shorter on paper are undersides of lower roofs or returns; the main slopes say enough.
const LEAST: f64 = 0.8;

pub(super) fn slopes(c: &mut Canvas, e: &LaidElevation, v: &View) {
    for w in &e.walls {
        slopes_of(c, w, v);
    }
}

fn slopes_of(c: &mut Canvas, w: &LaidWall, v: &View) {
    for edge in w.edges.iter().filter(|s| s.kind == EdgeKind::Rake && s.opening.is_none()) {
        let Some(pitch) = edge.pitch.filter(|p| *p > 0.0) else { continue };
        let (a, b) = (v.xy(&edge.from), v.xy(&edge.to));
        let middle = ((edge.from[0] + edge.to[0]) / 2.0, (edge.from[1] + edge.to[1]) / 2.0);
        if a.distance(b) < LEAST || !v.holds(middle.0, middle.1) {
            continue;
        }
        let (low, high) = if a.y < b.y { (a, b) } else { (b, a) };
        // Towards the ridge, sideways.
        let up = (high.x - low.x).signum();
        let words = format!("{}", (pitch * 100.0).round() / 100.0);
        // Along the rake and off it, until there is room.
        let spots = (0..24).map(|i| {
            let along = 0.5 + [0.0, 0.12, -0.12, 0.24, -0.24, 0.34, -0.34, 0.42][i % 8];
            (low + (high - low) * along, 0.16 + 0.14 * (i / 8) as f64)
        });
        let triangle = |(on, off): (Point, f64)| {
            // The hypotenuse lies along the rake's own slope, outside of it; the base is level, on
            // top, and the rise hangs at the low end.
            let rise = BASE * pitch / 12.0;
            let inner = on + Vec2::new(-up * 0.0, off);
            let outer = inner + Vec2::new(-up * BASE, -rise);
            let corner = Point::new(outer.x, inner.y);
            (inner, outer, corner)
        };
        let texts = |(inner, outer, corner): (Point, Point, Point)| {
            let base = inner.midpoint(corner) + Vec2::new(0.0, 0.085);
            let w = crate::typeface::width(&words, TEXT, false);
            let rise = outer.midpoint(corner) + Vec2::new(-up * (0.05 + w / 2.0), 0.0);
            (base, rise)
        };
        let fits = |spot: &(Point, f64)| {
            let t = triangle(*spot);
            let (base, rise) = texts(t);
            let whole = Rect::from_points(t.0, t.1).union(Rect::from_points(t.0, t.2));
            c.placer.clear(&text_box("12", TEXT, false, base))
                && c.placer.clear(&text_box(&words, TEXT, false, rise))
                && c.placer.clear(&whole)
        };
        let Some(spot) = spots.into_iter().find(fits) else { continue };
        let t = triangle(spot);
        let (base, rise) = texts(t);
        c.firm(Ink::Dimension, t.0, t.1);
        c.firm(Ink::Dimension, t.1, t.2);
        c.firm(Ink::Dimension, t.2, t.0);
        c.centered("12", TEXT, false, base);
        c.centered(&words, TEXT, false, rise);
    }
}
