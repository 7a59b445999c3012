//! Near ends joined: ends to ends, and ends to the lines they stop short of.

use std::collections::BTreeMap;

use super::segment::Segment;
use super::vocabulary::Point;

/// Ends moved by less than this were only rounded to the grid.
const ROUNDING: f64 = 2.0 * super::tol::GRID;

/// Cells of a square grid with what touches them.
struct Cells {
    size: f64,
    of: BTreeMap<(i64, i64), Vec<usize>>,
}

impl Cells {
    fn new(size: f64) -> Self {
        Cells { size, of: BTreeMap::new() }
    }

    fn key(&self, p: Point) -> (i64, i64) {
        ((p.x / self.size).floor() as i64, (p.y / self.size).floor() as i64)
    }

    /// Every cell a segment passes, by steps of half a cell.
    fn along(&self, (a, b): Segment) -> Vec<(i64, i64)> {
        let steps = ((b - a).hypot() / (self.size / 2.0)).ceil().clamp(1.0, 1e5) as usize;
        let mut out: Vec<_> =
            (0..=steps).map(|i| self.key(a.lerp(b, i as f64 / steps as f64))).collect();
        out.dedup();
        out
    }

    fn near(&self, p: Point) -> impl Iterator<Item = usize> + '_ {
        let (x, y) = self.key(p);
        (-1..=1)
            .flat_map(move |dx| (-1..=1).map(move |dy| (x + dx, y + dy)))
            .filter_map(|k| self.of.get(&k))
            .flatten()
            .copied()
    }
}

/// The segments with ends nearer than `weld` moved onto one another, and split where an end of
/// another lies on or nearer than `weld` to them; and how many ends moved.
pub(super) fn joined(segments: &[Segment], weld: f64) -> (Vec<Segment>, usize) {
    let (ends, welded) = ends_joined(segments, weld);
    let longest = ends.iter().map(|(a, b)| a.distance(*b)).fold(0.0, f64::max);
    // Cells neither finer than the weld nor so fine that a long line fills thousands.
    let mut cells = Cells::new((longest / 200.0).max(weld * 2.0).max(1.0));
    for (i, s) in ends.iter().enumerate() {
        for key in cells.along(*s) {
            let list = cells.of.entry(key).or_default();
            if list.last() != Some(&i) {
                list.push(i);
            }
        }
    }
    let mut cuts: Vec<Vec<(f64, Point)>> = vec![Vec::new(); ends.len()];
    let mut onto: BTreeMap<(u64, u64), Point> = BTreeMap::new();
    let mut moved = 0;
    for (p, times) in meetings(&ends).into_values() {
        let on = lines_at(&ends, &cells, p, weld);
        let Some((away, nearest, _)) = on.first().copied() else { continue };
        // A lone end is carried onto the line; where lines meet already, the line bends to them.
        let place = if times == 1 {
            moved += usize::from(away > ROUNDING);
            foot(ends[nearest], p)
        } else {
            p
        };
        onto.insert(key(p), place);
        on.iter().for_each(|(_, i, t)| cuts[*i].push((*t, place)));
    }
    let mut out = Vec::new();
    let settled = |p: Point| onto.get(&key(p)).copied().unwrap_or(p);
    for ((a, b), mut on) in ends.into_iter().zip(cuts) {
        let (a, b) = (settled(a), settled(b));
        on.sort_by(|x, y| x.0.total_cmp(&y.0));
        let mut from = a;
        for (_, p) in on {
            if p != from {
                out.push((from, p));
            }
            from = p;
        }
        if from != b {
            out.push((from, b));
        }
    }
    (out, welded + moved)
}

/// Lines on which a point lies, or nearly, away from their ends: how far off, which, how far along; the
/// nearest first.
fn lines_at(ends: &[Segment], cells: &Cells, p: Point, weld: f64) -> Vec<(f64, usize, f64)> {
    let mut near: Vec<usize> = cells.near(p).collect();
    near.sort_unstable();
    near.dedup();
    let mut on: Vec<(f64, usize, f64)> = Vec::new();
    for i in near {
        let (a, b) = ends[i];
        let length = a.distance(b);
        if length <= weld || a == p || b == p {
            continue;
        }
        let u = (b - a) / length;
        let (t, away) = ((p - a).dot(u), u.cross(p - a).abs());
        if away <= weld && t > 0.0 && t < length {
            on.push((away, i, t));
        }
    }
    on.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    on
}

fn key(p: Point) -> (u64, u64) {
    (p.x.to_bits(), p.y.to_bits())
}

/// How many segments end at each place.
fn meetings(segments: &[Segment]) -> BTreeMap<(u64, u64), (Point, usize)> {
    let mut out: BTreeMap<(u64, u64), (Point, usize)> = BTreeMap::new();
    for p in segments.iter().flat_map(|(a, b)| [*a, *b]) {
        out.entry(key(p)).or_insert((p, 0)).1 += 1;
    }
    out
}

/// The place on a line nearest to `p`, on the grid.
fn foot((a, b): Segment, p: Point) -> Point {
    let u = (b - a) / a.distance(b);
    let q = a + u * (p - a).dot(u);
    Point::new(super::tol::snap(q.x), super::tol::snap(q.y))
}

/// Each end replaced by the first end found nearer than `weld`.
fn ends_joined(segments: &[Segment], weld: f64) -> (Vec<Segment>, usize) {
    let mut cells = Cells::new(weld.max(1.0 / 64.0) * 2.0);
    let mut kept: Vec<Point> = Vec::new();
    let mut welded = 0;
    // The steps of a curve may be nearer to one another than the weld: only loose ends are counted.
    let met = meetings(segments);
    let loose = |p: Point| met.get(&key(p)).is_some_and(|m| m.1 == 1);
    let mut settle = |p: Point| -> Point {
        let nearest = cells
            .near(p)
            .map(|i| (kept[i].distance(p), i))
            .filter(|(d, _)| *d <= weld)
            .min_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
        if let Some((d, i)) = nearest {
            welded += usize::from(d > ROUNDING && loose(p));
            return kept[i];
        }
        cells.of.entry(cells.key(p)).or_default().push(kept.len());
        kept.push(p);
        p
    };
    let out = segments.iter().map(|(a, b)| (settle(*a), settle(*b))).collect::<Vec<_>>();
    (out.into_iter().filter(|(a, b)| a != b).collect(), welded)
}
