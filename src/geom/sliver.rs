//! Slivers: what of a shape is thinner than what tells two lengths apart. Outlines that were drawn one
//! over another leave them, and no saw does: one rule for faces, fields and courses.

use super::polygon::{Polygon, sides};
use super::tol::SAME;
use super::vocabulary::{Point, Rect, Ring, Vec2};

/// The shapes without slivers that stick out of their rings or run into them; what is nothing else is
/// left out. A place moves by no more than [`SAME`].
pub fn without_slivers(shapes: Vec<Polygon>) -> Vec<Polygon> {
    let whole = |p: Polygon| {
        let outer = trimmed(p.outer);
        let holes = p.holes.into_iter().map(trimmed).filter(|h| h.len() > 2).collect();
        (outer.len() > 2).then_some(Polygon { outer, holes })
    };
    shapes.into_iter().filter_map(whole).collect()
}

/// What lies between sides of `shapes` and the sides of a wound `whole` that they run along but for
/// drawing noise: taken off with the shapes, no strip of the whole is left between.
pub fn between(shapes: &[Polygon], whole: &Polygon) -> Vec<Polygon> {
    let borders: Vec<(Point, Point)> = whole.rings().flat_map(|r| sides(r)).collect();
    let mut out = Vec::new();
    for s in shapes {
        let reach = s.bounds().inflate(SAME, SAME);
        let near = borders.iter().filter(|(p, q)| meet(reach, Rect::from_points(*p, *q)));
        for (p, q) in near {
            out.extend(s.rings().flat_map(|r| sides(r)).filter_map(|side| strip(side, *p, *q)));
        }
    }
    out
}

/// Whether two boxes, flat ones too, have a place in common.
fn meet(a: Rect, b: Rect) -> bool {
    a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1
}

/// The strip from the part of a side that runs along `p` to `q` to a little outside of that line; what
/// it bounds lies on its left hand.
fn strip((a, b): (Point, Point), p: Point, q: Point) -> Option<Polygon> {
    let length = p.distance(q);
    if length <= SAME || a.distance(b) <= SAME {
        return None;
    }
    let u = (q - p) / length;
    let (ta, tb) = ((a - p).dot(u), (b - p).dot(u));
    let (low, high) = (ta.min(tb).max(0.0), ta.max(tb).min(length));
    if high - low <= SAME {
        return None;
    }
    let on_side = |t: f64| a + (b - a) * ((t - ta) / (tb - ta));
    let (s, e) = (on_side(low), on_side(high));
    let off = |x: Point| u.cross(x - p).abs();
    let out = Vec2::new(u.y, -u.x) * SAME;
    (off(s) <= SAME && off(e) <= SAME)
        .then(|| Polygon::simple(vec![s, e, p + u * high + out, p + u * low + out]).wound())
}

/// A ring without corners that it only goes to and back from, and without sides of no length.
fn trimmed(ring: Ring) -> Ring {
    let mut out: Ring = ring;
    let mut i = 0;
    while i < out.len() && out.len() > 2 {
        // Its neighbors may be idle now.
        i = if trim(&mut out, i) { i.saturating_sub(2) } else { i + 1 };
    }
    // A ring begins anywhere: what the last removals changed lies round its start.
    while out.len() > 2 && [out.len() - 1, 0, 1].into_iter().any(|i| trim(&mut out, i)) {}
    out
}

/// Takes off what a corner bounds if that is nothing but a sliver: a corner at a side of no length goes, a
/// thorn is cut back to where its thin end begins. False where there is none.
fn trim(ring: &mut Ring, i: usize) -> bool {
    let n = ring.len();
    let (a, b, c) = (ring[(i + n - 1) % n], ring[i], ring[(i + 1) % n]);
    let (u, v) = (b - a, c - b);
    // Of a side of no length the end goes that changes the shape less: long sides stay level and plumb.
    let change = |a: Point, b: Point, c: Point| (b - a).cross(c - b).abs();
    let own = change(a, b, c);
    let (before, after) = (u.hypot() <= SAME, v.hypot() <= SAME);
    let goes = (after && own <= change(b, c, ring[(i + 2) % n]))
        || (before && own < change(ring[(i + n - 2) % n], a, b));
    if goes {
        ring.remove(i);
        return true;
    }
    let thorn = u.dot(v) < 0.0 && !before && !after;
    let back = [(c, a, b), (a, b, c)].map(|(p, from, to)| (p, nearest(p, from, to)));
    let cut = back.into_iter().find(|(p, q)| thorn && p.distance(*q) <= SAME);
    if let Some((_, at)) = cut {
        ring[i] = at;
    }
    cut.is_some()
}

/// The place of a segment that is nearest to another.
fn nearest(p: Point, a: Point, b: Point) -> Point {
    let side = b - a;
    let share = if side.hypot2() > 0.0 { (p - a).dot(side) / side.hypot2() } else { 0.0 };
    a + side * share.clamp(0.0, 1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn p(x: f64, y: f64) -> Point {
        Point::new(x, y)
    }

    #[test]
    fn a_strip_between_a_wall_and_stone_beside_its_side_is_none() {
        // Stone 26 high that stands thousandths inside a wall's left side, and a slit as thin.
        let wall = vec![
            p(0.002, 26.0),
            p(100.0, 26.0),
            p(100.0, 96.0),
            p(50.0, 96.0),
            p(50.0, 60.0),
            p(49.997, 96.0),
            p(0.0, 96.0),
            p(0.0, -14.0),
            p(0.002, -14.0),
        ];
        let found = without_slivers(vec![Polygon::simple(wall)]);
        assert_eq!(found.len(), 1);
        let ring = &found[0].outer;
        assert_eq!(ring.len(), 5, "{ring:?}");
        assert!((found[0].area() - 7000.0).abs() < 0.5);
        // A band of stone that ends thousandths inside both sides leaves nothing beside it.
        let whole =
            Polygon::simple(vec![p(0.0, 0.0), p(90.0, 0.0), p(89.999, 90.0), p(0.001, 90.0)]);
        let band = vec![Polygon::rect(0.003, 40.0, 89.996, 50.0)];
        let off = [band.clone(), between(&band, &whole)].concat();
        let left = crate::geom::boolean::difference(
            std::slice::from_ref(&whole),
            &crate::geom::boolean::union_all(&off),
        );
        let left = without_slivers(left);
        assert_eq!(left.iter().map(|f| f.outer.len()).collect::<Vec<_>>(), [4, 4], "{left:?}");
        // Stone that stands beside it takes nothing off.
        let beside = [Polygon::rect(-20.0, 10.0, -0.002, 50.0)];
        let off = between(&beside, &whole);
        assert!(crate::geom::boolean::intersection(&off, &[whole]).is_empty(), "{off:?}");
        // A step of thousandths at the end of a long level side goes into the upright side over it.
        let step = |x: f64| {
            let foot = [p(0.0, 0.0), p(40.0, 0.0), p(x, 0.007)];
            Polygon::simple([&foot[..], &[p(40.0, 10.0), p(0.0, 10.0)]].concat())
        };
        // So does a thorn that runs out of that end.
        for shape in [step(40.0), step(40.003), step(39.99)] {
            let found = without_slivers(vec![shape]);
            assert!((found[0].area() - 400.0).abs() < 0.06, "{found:?}");
            assert_eq!(found[0].outer.len(), 4);
        }
        // A strip by itself is nothing; a thin one that a saw leaves stays.
        assert!(without_slivers(vec![Polygon::rect(0.0, 0.0, 0.005, 40.0)]).is_empty());
        assert_eq!(without_slivers(vec![Polygon::rect(0.0, 0.0, 0.02, 40.0)]).len(), 1);
    }
}
