//! Plane areas, what is cut out of them, and the strokes of a pattern over them.

use geo::{Area as _, BooleanOps, Coord, LineString, MultiPolygon, Polygon};

/// A point.
pub(crate) type P = [f64; 2];

/// A box: left, foot, right, top.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Rect {
    pub(crate) x0: f64,
    pub(crate) y0: f64,
    pub(crate) x1: f64,
    pub(crate) y1: f64,
}

impl Rect {
    pub(crate) fn new(x0: f64, y0: f64, x1: f64, y1: f64) -> Self {
        Rect { x0, y0, x1, y1 }
    }

    /// Its corners, counter-clockwise from the lower left.
    pub(crate) fn corners(self) -> Vec<P> {
        vec![[self.x0, self.y0], [self.x1, self.y0], [self.x1, self.y1], [self.x0, self.y1]]
    }

    /// Larger by so much on each side.
    pub(crate) fn grown(self, by: f64) -> Self {
        Rect::new(self.x0 - by, self.y0 - by, self.x1 + by, self.y1 + by)
    }

    pub(crate) fn width(self) -> f64 {
        self.x1 - self.x0
    }

    pub(crate) fn height(self) -> f64 {
        self.y1 - self.y0
    }

    pub(crate) fn middle(self) -> P {
        [(self.x0 + self.x1) / 2.0, (self.y0 + self.y1) / 2.0]
    }

    pub(crate) fn holds(self, p: P) -> bool {
        p[0] >= self.x0 && p[0] <= self.x1 && p[1] >= self.y0 && p[1] <= self.y1
    }

    pub(crate) fn moved(self, by: P) -> Self {
        Rect::new(self.x0 + by[0], self.y0 + by[1], self.x1 + by[0], self.y1 + by[1])
    }
}

/// An area of the drawing plane, with holes and islands.
#[derive(Clone, Debug)]
pub(crate) struct Area(MultiPolygon<f64>);

impl Area {
    pub(crate) fn none() -> Self {
        Area(MultiPolygon(Vec::new()))
    }

    /// The inside of a closed line.
    pub(crate) fn of(points: &[P]) -> Self {
        let ring = points.iter().map(|p| Coord { x: p[0], y: p[1] }).collect();
        Area(MultiPolygon(vec![Polygon::new(LineString(ring), Vec::new())]))
    }

    pub(crate) fn rect(r: Rect) -> Self {
        Area::of(&r.corners())
    }

    pub(crate) fn minus(&self, other: &Area) -> Self {
        Area(rounded(self.0.difference(&other.0)))
    }

    pub(crate) fn within(&self, other: &Area) -> Self {
        Area(rounded(self.0.intersection(&other.0)))
    }

    pub(crate) fn and(&self, other: &Area) -> Self {
        Area(rounded(self.0.union(&other.0)))
    }

    /// Its size, square units.
    pub(crate) fn size(&self) -> f64 {
        self.0.unsigned_area()
    }

    pub(crate) fn is_empty(&self) -> bool {
        self.size() < 1e-6
    }

    /// Its parts.
    pub(crate) fn parts(&self) -> Vec<Area> {
        self.0.iter().map(|p| Area(MultiPolygon(vec![p.clone()]))).collect()
    }

    /// Its closed lines, the outer one of each part before its holes, first point not repeated.
    pub(crate) fn rings(&self) -> Vec<Vec<P>> {
        let rings = self.0.iter().flat_map(|p| std::iter::once(p.exterior()).chain(p.interiors()));
        rings
            .map(|r| r.0.iter().skip(1).map(|c| [c.x, c.y]).collect::<Vec<P>>())
            .filter(|r| r.len() > 2)
            .collect()
    }

    /// The box round it.
    pub(crate) fn bounds(&self) -> Rect {
        bounds(&self.rings().concat())
    }

    /// Each point put elsewhere.
    pub(crate) fn moved(&self, put: impl Fn(P) -> P) -> Self {
        use geo::MapCoords;
        Area(self.0.map_coords(|c| {
            let [x, y] = put([c.x, c.y]);
            Coord { x, y }
        }))
    }

    /// Turned about the origin, by degrees.
    fn turned(&self, degrees: f64) -> Vec<Vec<P>> {
        let (sin, cos) = degrees.to_radians().sin_cos();
        let turn = |p: P| [p[0] * cos - p[1] * sin, p[0] * sin + p[1] * cos];
        self.rings().into_iter().map(|r| r.into_iter().map(turn).collect()).collect()
    }
}

/// The box round points.
pub(crate) fn bounds(points: &[P]) -> Rect {
    let none = Rect::new(f64::MAX, f64::MAX, f64::MIN, f64::MIN);
    points.iter().fold(none, |b, p| {
        Rect::new(b.x0.min(p[0]), b.y0.min(p[1]), b.x1.max(p[0]), b.y1.max(p[1]))
    })
}

/// What the boolean engine's own grid put off by a hair goes back to where it was drawn.
fn rounded(mut m: MultiPolygon<f64>) -> MultiPolygon<f64> {
    use geo::MapCoordsInPlace;
    let near = |v: f64| {
        let half = (v * 2.0).round() / 2.0;
        if (v - half).abs() < 2e-5 { half } else { (v * 1e5).round() / 1e5 }
    };
    m.map_coords_in_place(|c| Coord { x: near(c.x), y: near(c.y) });
    m
}

/// One family of parallel lines of a pattern, as DXF describes it.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Family {
    /// Degrees.
    pub(crate) angle: f64,
    /// A point on one of its lines.
    pub(crate) base: P,
    /// How far along itself and how far square to itself the next line begins.
    pub(crate) step: P,
    /// Strokes and gaps (below zero) along a line; none for a whole one.
    pub(crate) dashes: Vec<f64>,
}

impl Family {
    /// Level whole lines at one pitch through a height.
    pub(crate) fn level(pitch: f64, through: f64) -> Self {
        Family { angle: 0.0, base: [0.0, through], step: [0.0, pitch], dashes: Vec::new() }
    }

    /// The step as DXF has it: in the drawing's axes.
    pub(crate) fn offset(&self) -> P {
        let (sin, cos) = self.angle.to_radians().sin_cos();
        let near = |v: f64| if v.abs() < 1e-9 { 0.0 } else { v };
        let [along, square] = self.step;
        [near(along * cos - square * sin), near(along * sin + square * cos)]
    }

    /// Its strokes over an area.
    pub(crate) fn strokes(&self, area: &Area) -> Vec<(P, P)> {
        let rings = area.turned(-self.angle);
        let b = bounds(&rings.concat());
        let (sin, cos) = self.angle.to_radians().sin_cos();
        let base =
            [self.base[0] * cos + self.base[1] * sin, -self.base[0] * sin + self.base[1] * cos];
        let back = |x: f64, y: f64| [x * cos - y * sin, x * sin + y * cos];
        let pitch = self.step[1];
        let first = ((b.y0 - base[1]) / pitch).ceil() as i64;
        let last = ((b.y1 - base[1]) / pitch).floor() as i64;
        let mut out = Vec::new();
        for k in first..=last {
            let y = base[1] + k as f64 * pitch;
            // A line along the foot or the top of the area is no stroke of its own.
            if y - b.y0 < 1e-3 || b.y1 - y < 1e-3 {
                continue;
            }
            let start = base[0] + k as f64 * self.step[0];
            for (x0, x1) in cuts(&rings, y) {
                for (a, z) in self.dashed(x0, x1, start) {
                    out.push((back(a, y), back(z, y)));
                }
            }
        }
        out
    }

    fn dashed(&self, x0: f64, x1: f64, start: f64) -> Vec<(f64, f64)> {
        let whole: f64 = self.dashes.iter().map(|d| d.abs()).sum();
        if whole <= 0.0 {
            return vec![(x0, x1)];
        }
        let mut at = start + ((x0 - start) / whole).floor() * whole;
        let mut out = Vec::new();
        while at < x1 {
            for d in &self.dashes {
                let (a, z) = (at.max(x0), (at + d.abs()).min(x1));
                if *d > 0.0 && z - a > 1e-3 {
                    out.push((a, z));
                }
                at += d.abs();
            }
        }
        out
    }
}

/// Where a level line is inside closed lines, left to right.
pub(crate) fn cuts(rings: &[Vec<P>], y: f64) -> Vec<(f64, f64)> {
    let mut at: Vec<f64> = Vec::new();
    for ring in rings {
        for (i, a) in ring.iter().enumerate() {
            let b = ring[(i + 1) % ring.len()];
            if (a[1] > y) != (b[1] > y) {
                at.push(a[0] + (y - a[1]) / (b[1] - a[1]) * (b[0] - a[0]));
            }
        }
    }
    at.sort_by(f64::total_cmp);
    at.chunks_exact(2).map(|c| (c[0], c[1])).filter(|(a, z)| z - a > 1e-3).collect()
}
