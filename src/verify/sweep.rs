//! A plane cut into slabs in which no side begins, ends or crosses another: lengths along a level
//! line are then linear in its height, and one line at mid height gives each slab's area exactly.

use super::scan::Spans;
use crate::geom::vocabulary::Xy;

/// Heights nearer than this are one height, inches: far under the 1/1024 in grid.
const SAME_HEIGHT: f64 = 1e-7;

/// One side of a shape, low end first.
#[derive(Clone, Copy, Debug)]
pub(super) struct Side {
    /// Low end.
    pub(super) low: Xy,
    /// High end.
    pub(super) high: Xy,
    /// Which shape it bounds.
    shape: usize,
}

impl Side {
    fn x(&self, y: f64) -> f64 {
        self.low[0] + (y - self.low[1]) * self.slope()
    }

    fn slope(&self) -> f64 {
        (self.high[0] - self.low[0]) / (self.high[1] - self.low[1])
    }
}

/// Shapes added one by one, each a set of rings read even-odd.
#[derive(Debug, Default)]
pub(super) struct Shapes {
    sides: Vec<Side>,
    count: usize,
}

/// Where a level line is inside each shape; shapes it misses are left out.
#[derive(Debug)]
pub(super) struct Slab {
    /// Bottom.
    pub(super) low: f64,
    /// Top.
    pub(super) high: f64,
    /// Bounds at mid height: (x, shape), sorted by x.
    bounds: Vec<(f64, usize)>,
    /// The same just over the bottom and just under the top.
    ends: [Vec<(f64, usize)>; 2],
    /// The leftmost and the rightmost side.
    pub(super) outer: Option<[Side; 2]>,
}

impl Shapes {
    /// Adds a shape and gives its number.
    pub(super) fn add<'a>(&mut self, rings: impl IntoIterator<Item = &'a Vec<Xy>>) -> usize {
        for ring in rings {
            for i in 0..ring.len() {
                self.side(ring[i], ring[(i + 1) % ring.len()], self.count);
            }
        }
        self.count += 1;
        self.count - 1
    }

    /// How many shapes there are.
    pub(super) fn count(&self) -> usize {
        self.count
    }

    fn side(&mut self, a: Xy, b: Xy, shape: usize) {
        let (low, high) = if a[1] < b[1] { (a, b) } else { (b, a) };
        if high[1] - low[1] > SAME_HEIGHT {
            self.sides.push(Side { low, high, shape });
        }
    }

    /// The slabs between two heights, bottom up.
    pub(super) fn slabs(mut self, bottom: f64, top: f64) -> Vec<Slab> {
        self.sides.retain(|s| s.low[1] < top && s.high[1] > bottom);
        self.sides.sort_by(|a, b| a.low[1].total_cmp(&b.low[1]));
        let mut heights: Vec<f64> = vec![bottom, top];
        heights.extend(self.sides.iter().flat_map(|s| [s.low[1], s.high[1]]));
        heights.retain(|y| *y >= bottom && *y <= top);
        heights.sort_by(f64::total_cmp);
        heights.dedup_by(|b, a| *b - *a < SAME_HEIGHT);
        let (mut out, mut active, mut next) = (Vec::new(), Vec::new(), 0);
        for pair in heights.windows(2) {
            let middle = (pair[0] + pair[1]) / 2.0;
            while next < self.sides.len() && self.sides[next].low[1] < middle {
                active.push(self.sides[next]);
                next += 1;
            }
            active.retain(|s: &Side| s.high[1] > middle);
            uncrossed(&mut active, pair[0], pair[1], &mut out);
        }
        out
    }
}

/// Cuts a slab at every height where two of its sides cross.
fn uncrossed(active: &mut [Side], bottom: f64, top: f64, out: &mut Vec<Slab>) {
    let mut low = bottom;
    while top - low > SAME_HEIGHT {
        // Just over `low`, where sides that meet at it have parted.
        let base = low + SAME_HEIGHT / 2.0;
        active.sort_by(|a, b| a.x(base).total_cmp(&b.x(base)));
        let crossing = active.windows(2).filter_map(|w| {
            let (gap, closing) = (w[1].x(base) - w[0].x(base), w[0].slope() - w[1].slope());
            (closing > 0.0).then(|| base + gap / closing)
        });
        let first = crossing.filter(|y| *y > low + SAME_HEIGHT).fold(top, f64::min);
        out.push(slab(active, low, first));
        low = first;
    }
}

fn slab(active: &[Side], low: f64, high: f64) -> Slab {
    let at = |y: f64| {
        let mut xs: Vec<(f64, usize)> = active.iter().map(|s| (s.x(y), s.shape)).collect();
        xs.sort_by(|a, b| a.0.total_cmp(&b.0));
        xs
    };
    let edge = (high - low) * 1e-6;
    let middle = (low + high) / 2.0;
    let by_x = |a: &&Side, b: &&Side| a.x(middle).total_cmp(&b.x(middle));
    let outer = active.iter().min_by(by_x).zip(active.iter().max_by(by_x)).map(|(a, b)| [*a, *b]);
    Slab { low, high, bounds: at(middle), ends: [at(low + edge), at(high - edge)], outer }
}

/// A height within a slab.
#[derive(Clone, Copy, Debug)]
pub(super) enum Height {
    /// Just over the bottom.
    Bottom,
    /// Half way.
    Middle,
    /// Just under the top.
    Top,
}

impl Slab {
    /// Height of the slab.
    pub(super) fn rise(&self) -> f64 {
        self.high - self.low
    }

    /// Where the line is inside each shape that `keep` asks for, shape by shape.
    pub(super) fn spans(&self, height: Height, keep: impl Fn(usize) -> bool) -> Vec<Spans> {
        let bounds = match height {
            Height::Bottom => &self.ends[0],
            Height::Middle => &self.bounds,
            Height::Top => &self.ends[1],
        };
        let mut of: std::collections::BTreeMap<usize, Vec<f64>> = std::collections::BTreeMap::new();
        for (x, shape) in bounds.iter().filter(|b| keep(b.1)) {
            of.entry(*shape).or_default().push(*x);
        }
        of.into_values().map(|xs| xs.chunks_exact(2).map(|c| (c[0], c[1])).collect()).collect()
    }

    /// The same joined into one set.
    pub(super) fn union(&self, height: Height, keep: impl Fn(usize) -> bool) -> Spans {
        super::scan::joined(self.spans(height, keep).concat())
    }
}

#[cfg(test)]
mod tests {
    use super::{Height, Shapes, Slab};
    use crate::verify::scan::{length, without};

    fn area(slabs: &[Slab], f: impl Fn(&Slab) -> f64) -> f64 {
        slabs.iter().map(|s| s.rise() * f(s)).sum()
    }

    #[test]
    fn a_triangle_has_half_its_box_whatever_the_strip() {
        // Example::GableOfFour: span 24 ft, 4 in 12: 48 sq ft.
        let ring = vec![[0.0, 0.0], [288.0, 0.0], [144.0, 48.0]];
        let mut s = Shapes::default();
        s.add([&ring]);
        let slabs = s.slabs(-5.0, 60.0);
        let sum = area(&slabs, |s| length(&s.union(Height::Middle, |_| true)));
        assert!((sum - 48.0 * 144.0).abs() < 1e-9);
    }

    #[test]
    fn crossing_sides_are_cut_where_they_cross() {
        // Two triangles base to tip: what is in the first and not in the second is a kite's half,
        // known by hand: the overlap of the triangles is the rhombus with diagonals 5 and 10.
        let (up, down) = (
            vec![[0.0, 0.0], [10.0, 0.0], [5.0, 10.0]],
            vec![[0.0, 10.0], [10.0, 10.0], [5.0, 0.0]],
        );
        let mut s = Shapes::default();
        let (a, b) = (s.add([&up]), s.add([&down]));
        let slabs = s.slabs(0.0, 10.0);
        let rest = area(&slabs, |s| {
            length(&without(
                &s.union(Height::Middle, |i| i == a),
                &s.union(Height::Middle, |i| i == b),
            ))
        });
        assert!((rest - (50.0 - 25.0)).abs() < 1e-6, "{rest}");
    }

    #[test]
    fn rings_of_one_shape_are_read_even_odd() {
        let (outer, hole) = (
            vec![[0.0, 0.0], [10.0, 0.0], [10.0, 10.0], [0.0, 10.0]],
            vec![[2.0, 2.0], [4.0, 2.0], [4.0, 4.0], [2.0, 4.0]],
        );
        let mut s = Shapes::default();
        s.add([&outer, &hole]);
        let sum = area(&s.slabs(0.0, 10.0), |s| length(&s.union(Height::Middle, |_| true)));
        assert_eq!(sum, 96.0);
    }
}
