//! What lies between parts of a shape: beside one another at one height, or over one another.

use super::polygon::{Polygon, sides};
use super::tol::SAME;
use super::vocabulary::Point;

/// A stretch of one slab that an area covers: its left and right ends at the slab's foot and head.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stretch {
    /// Index of its area.
    pub of: usize,
    /// Left end at foot and head.
    pub left: (f64, f64),
    /// Right end at foot and head.
    pub right: (f64, f64),
}

/// A level slab between two heights, in which no area has a corner, and what covers it left to right.
#[derive(Clone, Debug, PartialEq)]
pub struct Slab {
    /// Foot.
    pub low: f64,
    /// Head.
    pub high: f64,
    /// Covered stretches, by their left ends.
    pub covered: Vec<Stretch>,
}

/// Areas cut into level slabs at every height where one of them has a corner. An area may be several
/// polygons that do not overlap.
pub fn slabs(areas: &[&[Polygon]]) -> Vec<Slab> {
    let mut edges: Vec<(usize, Point, Point)> = Vec::new();
    for (of, area) in areas.iter().enumerate() {
        for (a, b) in area.iter().flat_map(Polygon::rings).flat_map(|r| sides(r)) {
            if a.y != b.y {
                edges.push(if a.y < b.y { (of, a, b) } else { (of, b, a) });
            }
        }
    }
    let mut heights: Vec<f64> = edges.iter().flat_map(|e| [e.1.y, e.2.y]).collect();
    heights.sort_by(f64::total_cmp);
    // Heights as good as the same are one: a slab left out would part what lies under and over it.
    heights.dedup_by(|a, b| *a - *b <= SAME);
    let one = |y: f64| heights[heights.partition_point(|h| *h <= y).max(1) - 1];
    let on_heights = |(of, a, b): (usize, Point, Point)| {
        (of, Point::new(a.x, one(a.y)), Point::new(b.x, one(b.y)))
    };
    let mut edges: Vec<_> = edges.into_iter().map(on_heights).filter(|e| e.1.y < e.2.y).collect();
    edges.sort_by(|a, b| a.1.y.total_cmp(&b.1.y));
    let (mut open, mut next): (Vec<(usize, Point, Point)>, usize) = (Vec::new(), 0);
    let mut out = Vec::new();
    for pair in heights.windows(2) {
        let (low, high) = (pair[0], pair[1]);
        while edges.get(next).is_some_and(|e| e.1.y <= low) {
            open.push(edges[next]);
            next += 1;
        }
        open.retain(|e| e.2.y >= high);
        out.push(Slab { low, high, covered: covered(&open, low, high) });
    }
    out
}

fn covered(open: &[(usize, Point, Point)], low: f64, high: f64) -> Vec<Stretch> {
    let at = |a: Point, b: Point, y: f64| a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x);
    let mut crossings: Vec<(usize, f64, f64)> =
        open.iter().map(|(of, a, b)| (*of, at(*a, *b, low), at(*a, *b, high))).collect();
    crossings.sort_by(|p, q| p.0.cmp(&q.0).then((p.1 + p.2).total_cmp(&(q.1 + q.2))));
    let mut out: Vec<Stretch> = crossings
        .chunk_by(|p, q| p.0 == q.0)
        .flat_map(|mine| mine.chunks_exact(2))
        .map(|c| Stretch { of: c[0].0, left: (c[0].1, c[0].2), right: (c[1].1, c[1].2) })
        .collect();
    out.sort_by(|p, q| (p.left.0 + p.left.1).total_cmp(&(q.left.0 + q.left.1)));
    out
}

/// The places that have the shape to their left and to their right at one height, as trapezoids.
pub fn beside(shape: &[Polygon]) -> Vec<Polygon> {
    let mut out = Vec::new();
    for slab in slabs(&[shape]) {
        for pair in slab.covered.windows(2) {
            let (from, to) = (pair[0].right, pair[1].left);
            if to.0 + to.1 - from.0 - from.1 > SAME {
                let ring = vec![
                    Point::new(from.0, slab.low),
                    Point::new(to.0, slab.low),
                    Point::new(to.1, slab.high),
                    Point::new(from.1, slab.high),
                ];
                out.push(Polygon::simple(ring).wound());
            }
        }
    }
    out
}

/// The places that have the shape above and beneath them.
pub fn over(shape: &[Polygon]) -> Vec<Polygon> {
    let turned: Vec<Polygon> = shape.iter().map(turned).collect();
    beside(&turned).iter().map(self::turned).collect()
}

/// With x and y exchanged.
pub fn turned(p: &Polygon) -> Polygon {
    p.map(|q| Point::new(q.y, q.x)).wound()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geom::boolean::difference;
    use crate::geom::polygon::total_area;

    #[test]
    fn what_lies_between_two_areas_is_as_large_as_reckoned_by_hand() {
        // Two squares of 10, 5 apart, the right one 4 higher: 6 of height shared, 5 x 6 between.
        let two = [Polygon::rect(0.0, 0.0, 10.0, 10.0), Polygon::rect(15.0, 4.0, 25.0, 14.0)];
        assert_eq!(total_area(&beside(&two)), 30.0);
        assert!(over(&two).is_empty());
        // A frame of 2 round a hole of 6 x 6 lies beside and over its hole.
        let frame = difference(
            &[Polygon::rect(0.0, 0.0, 10.0, 10.0)],
            &[Polygon::rect(2.0, 2.0, 8.0, 8.0)],
        );
        assert_eq!(total_area(&beside(&frame)), 36.0);
        assert_eq!(total_area(&over(&frame)), 36.0);
        // A valley between two gables of 10 x 5 each: a triangle of 10 x 5.
        let gables = vec![(0.0, 0.0), (20.0, 0.0), (15.0, 5.0), (10.0, 0.0), (5.0, 5.0)];
        let gables = [Polygon::simple(gables.into_iter().map(Point::from).collect()).wound()];
        assert_eq!(total_area(&beside(&gables)), 25.0);
    }

    #[test]
    fn heights_that_are_as_good_as_the_same_part_no_gap() {
        // Two walls 20 apart; each has a corner half way up, 1/200 in from the other's: one gap of 20 x 40.
        let left = [(0.0, 0.0), (10.0, 0.0), (10.0, 40.0), (0.0, 40.0), (0.0, 20.0), (-5.0, 20.0)];
        let right =
            [(30.0, 0.0), (40.0, 0.0), (45.0, 20.005), (40.0, 20.005), (40.0, 40.0), (30.0, 40.0)];
        let all = [&left[..], &right[..]]
            .map(|r| Polygon::simple(r.iter().copied().map(Point::from).collect()).wound());
        let found = crate::geom::boolean::union_all(&beside(&all));
        assert_eq!(found.len(), 1, "{found:?}");
        assert!((total_area(&found) - 800.0).abs() < 0.2);
    }

    #[test]
    fn slabs_name_the_area_of_each_stretch() {
        let (a, b) = ([Polygon::rect(0.0, 0.0, 4.0, 8.0)], [Polygon::rect(6.0, 2.0, 9.0, 8.0)]);
        let found = slabs(&[&a, &b]);
        assert_eq!(found.len(), 2);
        assert_eq!((found[0].low, found[0].high, found[0].covered.len()), (0.0, 2.0, 1));
        let owners: Vec<usize> = found[1].covered.iter().map(|s| s.of).collect();
        assert_eq!(owners, [0, 1]);
    }
}
