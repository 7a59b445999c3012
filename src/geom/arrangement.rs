//! The arrangement of loose lines: split at crossings and T-junctions, then its faces. The planar
//! graph is `spade`'s constrained triangulation, which is named here alone; faces are its triangles
//! flooded up to the lines.

use std::collections::{BTreeMap, BTreeSet};

use spade::handles::FixedVertexHandle;
use spade::{ConstrainedDelaunayTriangulation, Point2, Triangulation};

use super::polygon::{Polygon, ring_contains, sides, signed_area};
use super::segment::Segment;
use super::tol::snap;
use super::vocabulary::{Point, Ring};
use crate::real::Real;

/// Faces of some lines.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Arrangement {
    /// Bounded faces, left to right, then bottom to top; collinear corners merged.
    pub faces: Vec<Polygon>,
    /// Ends that lay apart from another end or from a line by up to the weld distance, and were
    /// moved onto it.
    pub welded: usize,
}

/// Faces of `segments`, whose ends are first welded to ends and lines nearer than `weld` inches.
///
/// Coordinates must be finite. Faces smaller than `least` square inches are left out.
pub fn arrangement(segments: &[Segment], weld: f64, least: f64) -> Arrangement {
    let (joined, welded) = super::weld::joined(segments, weld);
    let mut graph = Graph::default();
    for (a, b) in &joined {
        graph.add(*a, *b);
    }
    let mut faces = graph.faces(least);
    faces.sort_by(|a, b| {
        let (a, b) = (a.bounds(), b.bounds());
        a.x0.total_cmp(&b.x0).then(a.y0.total_cmp(&b.y0)).then(a.x1.total_cmp(&b.x1))
    });
    Arrangement { faces, welded }
}

type Vertex = FixedVertexHandle;

#[derive(Default)]
struct Graph {
    net: ConstrainedDelaunayTriangulation<Point2<f64>>,
}

impl Graph {
    fn vertex(&mut self, p: Point) -> Option<Vertex> {
        // Negative zero is another number to the triangulation.
        self.net.insert(Point2::new(p.x + 0.0, p.y + 0.0)).ok()
    }

    fn add(&mut self, a: Point, b: Point) {
        if let (Some(from), Some(to)) = (self.vertex(a), self.vertex(b))
            && from != to
        {
            let at = |p: Point2<f64>| Point2::new(snap(p.x) + 0.0, snap(p.y) + 0.0);
            self.net.add_constraint_and_split(from, to, at);
        }
    }

    /// Which component each inner triangle belongs to; those outside every line belong to none.
    fn components(&self) -> Vec<Option<usize>> {
        let n = self.net.num_all_faces();
        let mut of: Vec<Option<usize>> = vec![None; n];
        let mut seen = vec![false; n];
        let mut next = 0;
        for start in self.net.inner_faces() {
            if seen[start.fix().index()] {
                continue;
            }
            let (mut stack, mut members, mut outside) = (vec![start.fix()], Vec::new(), false);
            seen[start.fix().index()] = true;
            while let Some(f) = stack.pop() {
                members.push(f.index());
                for e in self.net.face(f).adjacent_edges() {
                    if e.as_undirected().is_constraint_edge() {
                        continue;
                    }
                    match e.rev().face().as_inner() {
                        None => outside = true,
                        Some(g) if !seen[g.fix().index()] => {
                            seen[g.fix().index()] = true;
                            stack.push(g.fix());
                        }
                        Some(_) => {}
                    }
                }
            }
            if !outside {
                members.iter().for_each(|m| of[*m] = Some(next));
                next += 1;
            }
        }
        of
    }

    fn faces(&self, least: f64) -> Vec<Polygon> {
        let of = self.components();
        // Half edges with the face on the left and something else on the right.
        let mut borders: BTreeMap<usize, BTreeMap<usize, Vec<usize>>> = BTreeMap::new();
        for f in self.net.inner_faces() {
            let Some(c) = of[f.fix().index()] else { continue };
            for e in f.adjacent_edges() {
                let other = e.rev().face().as_inner().and_then(|g| of[g.fix().index()]);
                if other != Some(c) {
                    let (a, b) = (e.from().fix().index(), e.to().fix().index());
                    borders.entry(c).or_default().entry(a).or_default().push(b);
                }
            }
        }
        let place: Vec<Point> =
            self.net.vertices().map(|v| Point::new(v.position().x, v.position().y)).collect();
        borders
            .into_values()
            .filter_map(|next| assemble(rings(next, &place)))
            .filter(|p| p.area() >= least)
            .collect()
    }
}

/// Rings of a border; where several leave one corner, the sharpest turn to the left is taken, so
/// that rings touch there and do not cross.
fn rings(mut next: BTreeMap<usize, Vec<usize>>, place: &[Point]) -> Vec<Ring> {
    let mut out = Vec::new();
    while let Some((&start, _)) = next.iter().find(|(_, to)| !to.is_empty()) {
        let (mut ring, mut at, mut came): (Vec<usize>, usize, Option<usize>) =
            (Vec::new(), start, None);
        while let Some(choices) = next.get_mut(&at).filter(|c| !c.is_empty()) {
            let pick = came.map_or(0, |from| sharpest(choices, place[from], place[at], place));
            let to = choices.swap_remove(pick);
            ring.push(at);
            came = Some(at);
            at = to;
            if at == start {
                break;
            }
        }
        next.retain(|_, to| !to.is_empty());
        out.push(straight(ring.into_iter().map(|i| place[i]).collect()));
    }
    out.retain(|r| r.len() >= 3);
    out
}

fn sharpest(choices: &[usize], from: Point, at: Point, place: &[Point]) -> usize {
    let turn = |i: &usize| {
        let (u, v) = (at - from, place[*i] - at);
        u.cross(v).angle_over(u.dot(v))
    };
    (0..choices.len()).max_by(|a, b| turn(&choices[*a]).total_cmp(&turn(&choices[*b]))).unwrap_or(0)
}

/// The ring without corners that lie on the line between their neighbors.
pub fn straight(ring: Ring) -> Ring {
    let n = ring.len();
    let turns = |i: &usize| {
        let (a, b, c) = (ring[(i + n - 1) % n], ring[*i], ring[(i + 1) % n]);
        let (u, v) = (b - a, c - b);
        u.cross(v).abs() > 1e-4 * (u.hypot() + v.hypot()).max(1.0) || u.dot(v) < 0.0
    };
    (0..n).filter(turns).map(|i| ring[i]).collect()
}

/// One face of its rings: the counter-clockwise ones with the largest first, the rest holes. Parts
/// that touch at a point only belong to different faces of the triangulation, never to one.
fn assemble(rings: Vec<Ring>) -> Option<Polygon> {
    let outer = rings.iter().max_by(|a, b| signed_area(a).total_cmp(&signed_area(b)))?.clone();
    let holes = rings.into_iter().filter(|r| signed_area(r) < 0.0).collect();
    (signed_area(&outer) > 0.0).then_some(Polygon { outer, holes })
}

/// Which faces touch along a level side, by index: each pair once, the lower one first, with the
/// length they share.
pub fn stacked(faces: &[Polygon]) -> Vec<(usize, usize, f64)> {
    let level = |f: &Polygon, up: bool| -> Vec<(f64, f64, f64)> {
        let all = f.rings().flat_map(|r| sides(r).collect::<Vec<_>>());
        // Counter-clockwise, a top runs left and a bottom right.
        all.filter(|(a, b)| a.y == b.y && (b.x < a.x) == up)
            .map(|(a, b)| (a.y, a.x.min(b.x), a.x.max(b.x)))
            .collect()
    };
    let mut bottoms: BTreeMap<u64, Vec<(usize, f64, f64)>> = BTreeMap::new();
    for (i, f) in faces.iter().enumerate() {
        for (y, x0, x1) in level(f, false) {
            bottoms.entry((y + 0.0).to_bits()).or_default().push((i, x0, x1));
        }
    }
    let mut shared: BTreeMap<(usize, usize), f64> = BTreeMap::new();
    for (i, f) in faces.iter().enumerate() {
        for (y, x0, x1) in level(f, true) {
            for (j, u0, u1) in bottoms.get(&(y + 0.0).to_bits()).into_iter().flatten() {
                let over = x1.min(*u1) - x0.max(*u0);
                if over > 0.0 && i != *j {
                    *shared.entry((i, *j)).or_default() += over;
                }
            }
        }
    }
    shared.into_iter().map(|((i, j), l)| (i, j, l)).collect()
}

/// Indices of the faces that lie in a hole of another: islands in it.
pub fn islands(faces: &[Polygon]) -> BTreeSet<usize> {
    let mut out = BTreeSet::new();
    let holed: Vec<&Polygon> = faces.iter().filter(|f| !f.holes.is_empty()).collect();
    for (i, f) in faces.iter().enumerate() {
        let Some(inward) = inside(f) else { continue };
        if holed.iter().any(|h| h.holes.iter().any(|r| ring_contains(r, inward))) {
            out.insert(i);
        }
    }
    out
}

/// A point inside a face.
pub fn inside(face: &Polygon) -> Option<Point> {
    let b = face.bounds();
    // A level scan at a height that no corner has.
    (1..8).find_map(|k| {
        let y = b.y0 + b.height() * (f64::from(k) / 8.0 + 0.001_37);
        let mut xs: Vec<f64> = face
            .rings()
            .flat_map(|r| sides(r).collect::<Vec<_>>())
            .filter(|(p, q)| (p.y > y) != (q.y > y))
            .map(|(p, q)| p.x + (y - p.y) / (q.y - p.y) * (q.x - p.x))
            .collect();
        xs.sort_by(f64::total_cmp);
        let widest = xs.chunks_exact(2).max_by(|a, b| (a[1] - a[0]).total_cmp(&(b[1] - b[0])))?;
        (widest[1] - widest[0] > 1e-3).then(|| Point::new((widest[0] + widest[1]) / 2.0, y))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn seg(a: (f64, f64), b: (f64, f64)) -> Segment {
        (a.into(), b.into())
    }

    #[test]
    fn lines_that_cross_and_meet_at_tees_make_faces() {
        // A box whose sides overshoot, with a tee and a loose line that closes nothing.
        let lines = [
            seg((-5.0, 0.0), (105.0, 0.0)),
            seg((-5.0, 50.0), (105.0, 50.0)),
            seg((0.0, -5.0), (0.0, 55.0)),
            seg((100.0, -5.0), (100.0, 55.0)),
            seg((40.0, 0.0), (40.0, 50.02)),
            seg((60.0, 10.0), (70.0, 20.0)),
        ];
        let found = arrangement(&lines, 1.0 / 16.0, 1.0);
        let areas: Vec<f64> = found.faces.iter().map(Polygon::area).collect();
        assert_eq!(areas, [2000.0, 3000.0]);
        assert_eq!(found.faces[0].outer.len(), 4, "{:?}", found.faces[0]);
        assert_eq!(found.welded, 1);
    }

    #[test]
    fn a_loop_inside_a_face_is_its_hole_and_a_face_of_its_own() {
        let ring = |x0: f64, y0: f64, x1: f64, y1: f64| {
            let p = Polygon::rect(x0, y0, x1, y1).outer;
            sides(&p).collect::<Vec<_>>()
        };
        let lines: Vec<Segment> =
            [ring(0.0, 0.0, 100.0, 50.0), ring(20.0, 10.0, 40.0, 30.0)].concat();
        let found = arrangement(&lines, 1.0 / 16.0, 1.0);
        let areas: Vec<f64> = found.faces.iter().map(Polygon::area).collect();
        assert_eq!(areas, [4600.0, 400.0]);
        assert_eq!(islands(&found.faces), BTreeSet::from([1]));
        let lower_and_upper = arrangement(
            &[ring(0.0, 0.0, 10.0, 5.0), ring(0.0, 5.0, 10.0, 9.0)].concat(),
            0.01,
            1.0,
        );
        assert_eq!(stacked(&lower_and_upper.faces), [(0, 1, 10.0)]);
    }
}
