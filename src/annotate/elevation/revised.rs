//! What a revision changes: each place in a cloud, the triangle with the revision's letter beside it, the
//! number of the change and a few words; what is gone dashed.

use super::view::View;
use crate::annotate::canvas::{Canvas, fitted};
use crate::annotate::elevation_index::{AtElevation, RevisedAt};
use crate::annotate::place::{Off, edge_towards};
use crate::annotate::style::{Ink, TEXT};
use crate::geom::vocabulary::{Point, Rect, Vec2};
use crate::typeface;
use crate::wording::compare;

/// From a place to its cloud, paper inches.
const AROUND: f64 = 0.1;
/// Least side of a cloud.
const LEAST: f64 = 0.34;
/// About how long a scallop is.
const SCALLOP: f64 = 0.16;
/// Points on a scallop.
const POINTS: usize = 6;
/// Half the side of a triangle with one letter.
const HALF: f64 = 0.17;
/// Height of a triangle over its half side.
const HIGH: f64 = 1.732;

/// The cloud of a place on this sheet; none of a place that is on another.
fn cloud(place: &[f64; 4], v: &View) -> Option<Rect> {
    let w = &v.window;
    let apart = place[2] < w.x0 || place[0] > w.x1 || place[3] < w.y0 || place[1] > w.y1;
    // What lies outside the walls, as grade, is seen beside them.
    let beside = place[3] < v.house.y0 || place[1] > v.house.y1;
    if apart && !(beside && place[2] >= w.x0 && place[0] <= w.x1) {
        return None;
    }
    let (left, right) = (place[0].max(w.x0), place[2].min(w.x1));
    let (low, high) =
        if beside { (place[1], place[3]) } else { (place[1].max(w.y0), place[3].min(w.y1)) };
    let r = Rect::from_points(v.at(left, low), v.at(right, high)).inflate(AROUND, AROUND);
    let (dx, dy) = ((LEAST - r.width()).max(0.0) / 2.0, (LEAST - r.height()).max(0.0) / 2.0);
    Some(r.inflate(dx, dy))
}

/// A box with scallops along its sides, bulging out.
fn scalloped(r: Rect) -> Vec<Point> {
    let corners = [
        Point::new(r.x0, r.y0),
        Point::new(r.x1, r.y0),
        Point::new(r.x1, r.y1),
        Point::new(r.x0, r.y1),
    ];
    let mut out = Vec::new();
    for i in 0..4 {
        let (a, b) = (corners[i], corners[(i + 1) % 4]);
        let long = a.distance(b);
        let n = (long / SCALLOP).round().max(1.0) as usize;
        let along = (b - a) / n as f64;
        // The box runs counter-clockwise: outside lies to the right.
        let outside = Vec2::new(along.y, -along.x) * 0.4;
        for k in 0..n {
            let from = a + along * k as f64;
            for p in 0..POINTS {
                let t = p as f64 / POINTS as f64;
                // A parabola, near enough to an arc.
                out.push(from + along * t + outside * (4.0 * t * (1.0 - t)));
            }
        }
    }
    out
}

/// Clouds, which text keeps off, and the outlines of what is gone.
pub(super) fn clouds(c: &mut Canvas, on: &AtElevation, v: &View) {
    let clip = c.clip.take();
    for r in &on.revised {
        for place in &r.change.places {
            if let Some(cloud) = cloud(place, v) {
                c.firm_ring(Ink::Cloud, &scalloped(cloud));
            }
        }
        if r.change.places.iter().any(|p| cloud(p, v).is_some()) && !r.change.gone.is_empty() {
            c.ring(Ink::Gone, &v.points(&r.change.gone));
        }
    }
    c.clip = clip;
}

/// Triangles with their words. Returns how many found no room.
pub(super) fn marks(c: &mut Canvas, on: &AtElevation, v: &View, in_words: bool) -> usize {
    let mut none = 0;
    for r in &on.revised {
        let Some(cloud) = r.change.places.iter().find_map(|p| cloud(p, v)) else { continue };
        let number = r.change.number.to_string();
        let said = format!("{number}: {}", compare::short(&r.change.how, v.style));
        let placed =
            (in_words && triangle(c, r, &said, cloud, 3.0)) || triangle(c, r, &number, cloud, 6.0);
        none += usize::from(!placed);
    }
    none
}

/// A triangle with the letter, and words to its right. Whether there was room.
fn triangle(c: &mut Canvas, r: &RevisedAt, said: &str, cloud: Rect, reach: f64) -> bool {
    let letter = typeface::width(r.letter, TEXT, true);
    let half = HALF.max(letter / 2.0 + 0.12);
    let high = half * HIGH;
    let said = fitted(said, TEXT, false, 2.6);
    let words = typeface::width(&said, TEXT, false);
    let wide = 2.0 * half + 0.05 + words;
    let about = Rect::from_center_size(Point::ORIGIN, (wide + 0.06, high + 0.06));
    let target = Point::new(cloud.x1, cloud.y1);
    let wish = Point::new(cloud.x1, cloud.y1 + high / 2.0 + 0.1);
    // Off lines that must be seen where there is room, else off text alone.
    let clear = c.placer.near(about, target, wish, reach, Off::LinesAlone);
    let placed = clear.or_else(|| c.placer.near(about, target, wish, reach, Off::Text));
    let Some(at) = placed else { return false };
    let left = Point::new(at.x - wide / 2.0, at.y - high / 2.0);
    let peak = left + Vec2::new(half, high);
    let corners = [left, left + Vec2::new(2.0 * half, 0.0), peak];
    let nearest = nearest_on(cloud, at);
    if nearest.distance(at) > wide / 2.0 + 0.1 {
        let edge = edge_towards(&(about + at.to_vec2()), nearest);
        c.line(Ink::Leader, nearest, edge);
    }
    c.ring(Ink::Ground, &corners);
    c.firm_ring(Ink::Cloud, &corners);
    // The middle of a triangle lies a third up.
    c.centered(r.letter, TEXT, true, left + Vec2::new(half, high / 3.0));
    c.centered(&said, TEXT, false, left + Vec2::new(2.0 * half + 0.05 + words / 2.0, high / 3.0));
    true
}

/// The place of a box nearest to a point.
fn nearest_on(r: Rect, p: Point) -> Point {
    Point::new(p.x.clamp(r.x0, r.x1), p.y.clamp(r.y0, r.y1))
}
