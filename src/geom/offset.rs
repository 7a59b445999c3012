//! A ring moved outward or inward, side by side.

use super::boolean::union_all;
use super::polygon::{Polygon, signed_area};
use super::tol::{SAME, snap};
use super::vocabulary::{Point, Ring, Vec2};

/// How far a corner may move, in widths: a sharper one is cut off square, of our own choosing.
const MOST_MITER: f64 = 4.0;

/// The ring with each side moved outward, square to it, by what `by` says of the side from one point
/// to the next; inward where that is negative. The ring runs counter-clockwise, and so does the result.
pub fn moved_out(ring: &[Point], by: impl Fn(Point, Point) -> f64) -> Ring {
    let n = ring.len();
    if n < 3 {
        return ring.to_vec();
    }
    // Sides of no length have no direction.
    let corners: Vec<Point> =
        (0..n).filter(|i| ring[*i].distance(ring[(i + 1) % n]) > SAME).map(|i| ring[i]).collect();
    let m = corners.len();
    let mut out: Ring = Vec::with_capacity(m);
    for i in 0..m {
        let (a, p, b) = (corners[(i + m - 1) % m], corners[i], corners[(i + 1) % m]);
        corner((a, p, b), (by(a, p), by(p, b)), &mut out);
    }
    out.iter_mut().for_each(|p| *p = Point::new(snap(p.x), snap(p.y)));
    // Where moved sides run over one another, what they bound once more is no part of it.
    let whole = union_all(&[Polygon::simple(out.clone())]);
    let largest = whole.into_iter().max_by(|a, b| a.area().total_cmp(&b.area()));
    match largest {
        Some(p) if p.holes.is_empty() && signed_area(&out) > 0.0 => {
            if p.outer.len() == out.len() {
                out
            } else {
                p.outer
            }
        }
        _ => out,
    }
}

/// Where the sides before and after a corner meet once they are moved.
fn corner((a, p, b): (Point, Point, Point), (first, second): (f64, f64), out: &mut Ring) {
    let (u, v) = ((p - a) / a.distance(p), (b - p) / p.distance(b));
    let right = |d: Vec2| Vec2::new(d.y, -d.x);
    let (from, to) = (p + right(u) * first, p + right(v) * second);
    let cross = u.cross(v);
    if cross.abs() < 1e-4 {
        out.push(from.midpoint(to));
        return;
    }
    let meets = from + u * ((to - from).cross(v) / cross);
    let most = MOST_MITER * first.abs().max(second.abs());
    // Only where the moved sides run away from one another does the corner go far out.
    let parts = cross * (first + second) > 0.0;
    if !parts || meets.distance(p) <= most {
        out.push(meets);
    } else {
        out.extend([from + u * first.abs(), to - v * second.abs()]);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ring(points: &[(f64, f64)]) -> Ring {
        points.iter().map(|p| Point::new(p.0, p.1)).collect()
    }

    #[test]
    fn every_side_of_an_l_moves_by_the_width() {
        let l =
            ring(&[(0.0, 0.0), (20.0, 0.0), (20.0, 10.0), (40.0, 10.0), (40.0, 40.0), (0.0, 40.0)]);
        let want = ring(&[
            (-2.0, -2.0),
            (22.0, -2.0),
            (22.0, 8.0),
            (42.0, 8.0),
            (42.0, 42.0),
            (-2.0, 42.0),
        ]);
        assert_eq!(moved_out(&l, |_, _| 2.0), want);
        assert_eq!(moved_out(&want, |_, _| -2.0), l);
        // The foot of a door stays.
        let door = moved_out(&l, |a, b| if a.y == 0.0 && b.y == 0.0 { 0.0 } else { 2.0 });
        assert_eq!(door[0], Point::new(-2.0, 0.0));
    }

    #[test]
    fn a_triangle_grows_by_its_border() {
        // Area and border: A + w P + w^2 (sum of cot of half angles); 3-4-5 has 1 + 2 + 3.
        let t = ring(&[(0.0, 0.0), (40.0, 0.0), (0.0, 30.0)]);
        let grown = signed_area(&moved_out(&t, |_, _| 2.0));
        assert!((grown - (600.0 + 2.0 * 120.0 + 4.0 * 6.0)).abs() < 0.2, "{grown}");
    }
}
