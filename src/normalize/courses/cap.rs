//! What lies between the last course line and the line that siding ends at: less than one course.

use super::drawn_lines::DrawnLines;
use super::family::Span;
use super::own::Own;
use crate::geom::polygon::Polygon;
use crate::geom::segment::Segment;
use crate::geom::vocabulary::{Point, Rect};

/// A line nearer than this to the course line stands on it, inches.
const ON: f64 = 1.0 / 32.0;
/// How far over the course line the end is looked for, in pitches: lines are uneven.
const REACH: f64 = 1.08;
/// A line counts from this share of the width on, or from this length, inches.
const SHARE: f64 = 0.25;
const LONG: f64 = 24.0;
/// A level line over this share of the width ends all of it: casings are wider than what they frame.
const MOST_OF: f64 = 0.6;
/// Fewest upright joints that show masonry, and how far apart they stand at most, inches.
const JOINTS: usize = 3;
const JOINT_EVERY: f64 = 48.0;
/// What ends this near to a line, inches, ends at it; the shortest level or upright line that a roof's edge ends
/// at, and the longest side of an arrowhead, inches (common practice, no source).
const TIP: f64 = 1.0 / 8.0;
const STOP: f64 = 3.0;
const ARROW: f64 = 12.0;
/// Most lines that are crossed with one another.
const MOST: usize = 48;

/// The drawn end of some courses.
pub(super) struct Cap {
    pub(super) parts: Vec<Polygon>,
    /// Over how much of the width no end is drawn, inches.
    pub(super) open: f64,
}

/// A drawn line by its heights over the course line.
#[derive(Clone, Copy)]
struct Height {
    x0: f64,
    x1: f64,
    h0: f64,
    h1: f64,
}

impl Height {
    fn at(&self, x: f64) -> f64 {
        self.h0 + (x - self.x0) / (self.x1 - self.x0) * (self.h1 - self.h0)
    }

    fn is_level(&self) -> bool {
        (self.h0 - self.h1).abs() <= ON
    }

    /// Whether it is a short level line that ends on either side short of where courses do: a stroke of stone.
    fn is_dash(&self, span: Span) -> bool {
        let inside = self.x0 > span.0 + ON && self.x1 < span.1 - ON;
        self.is_level() && inside && self.x1 - self.x0 < LONG
    }
}

/// What lies over `span` of a course line at `y`, or under it, up to the first drawn line; those of `own`
/// are courses.
pub(super) fn cap(lines: &DrawnLines, span: Span, y: f64, up: bool, pitch: f64, own: &Own) -> Cap {
    let way = if up { 1.0 } else { -1.0 };
    let reach = REACH * pitch;
    let over =
        Rect::from_points(Point::new(span.0, y - way * ON), Point::new(span.1, y + way * reach));
    let wide = span.1 - span.0;
    let found: Vec<Height> = lines
        .within(over)
        .into_iter()
        .filter(|((p, q), stroke)| !own.holds(*stroke, p.y.midpoint(q.y)))
        .filter(|(s, _)| !is_leader(lines, *s, span))
        .filter_map(|(s, _)| height(s, span, y, way))
        .filter(|h| h.x1 - h.x0 >= (SHARE * wide).min(LONG) && !h.is_dash(span))
        .take(MOST)
        .collect();
    let whole = ends_all(&found, wide, reach);
    let mut out = Cap { parts: Vec::new(), open: 0.0 };
    for (x0, x1) in steps(&found, span, reach) {
        let middle = f64::midpoint(x0, x1);
        let here = found.iter().filter(|h| h.x0 <= middle && h.x1 >= middle);
        let first = here
            .filter(|h| (-ON..=reach).contains(&h.at(middle)))
            .min_by(|a, b| a.at(middle).total_cmp(&b.at(middle)));
        let (h0, h1) = match (first, whole) {
            (Some(h), _) => (h.at(x0).clamp(0.0, reach), h.at(x1).clamp(0.0, reach)),
            (None, Some(level)) => (level.max(0.0), level.max(0.0)),
            (None, None) => {
                out.open += x1 - x0;
                continue;
            }
        };
        if h0.max(h1) > ON {
            out.parts.push(part((x0, x1), y, way * h0, way * h1));
        }
    }
    out
}

/// What lies beyond a line but for stone and brick: there upright joints stand up to the line and end there, one
/// every four feet or more. Stretches up to one level are judged together: beside a band a roof may stand.
pub(super) fn without_masonry(lines: &DrawnLines, span: Span, y: f64, found: &mut Cap) {
    let level = |p: &Polygon| {
        let b = p.bounds();
        if b.center().y > y { b.y1 } else { b.y0 }
    };
    let mut levels: Vec<f64> = found.parts.iter().map(level).collect();
    levels.sort_by(f64::total_cmp);
    levels.dedup_by(|b, a| *b - *a <= ON);
    for to in levels {
        let here = |p: &Polygon| (level(p) - to).abs() <= ON;
        let rooms: Vec<Rect> =
            found.parts.iter().filter(|p| here(p)).map(Polygon::bounds).collect();
        if is_masonry(lines, span, (y, to), &rooms) {
            found.parts.retain(|p| !here(p));
        }
    }
}

/// Whether upright joints between two levels, in some stretches, end at the first.
fn is_masonry(lines: &DrawnLines, span: Span, (y, to): Span, rooms: &[Rect]) -> bool {
    let middle = y.midpoint(to);
    let joint = |(p, q): Segment| {
        let (low, high) = (p.y.min(q.y), p.y.max(q.y));
        let beyond = if middle > y { low >= y - ON } else { high <= y + ON };
        let inside = p.x > span.0 + ON && p.x < span.1 - ON;
        let here = rooms.iter().any(|r| r.x0 <= p.x && r.x1 >= p.x);
        (p.x - q.x).abs() <= ON && low < middle && high > middle && beyond && inside && here
    };
    let level = Rect::new(span.0, middle, span.1, middle);
    let mut joints: Vec<f64> =
        lines.within(level).into_iter().filter(|l| joint(l.0)).map(|l| l.0.0.x).collect();
    joints.sort_by(f64::total_cmp);
    joints.dedup_by(|b, a| *b - *a < 1.0);
    let wide: f64 = rooms.iter().map(Rect::width).sum();
    joints.len() >= JOINTS && joints.len() as f64 * JOINT_EVERY >= wide
}

fn part((x0, x1): Span, y: f64, h0: f64, h1: f64) -> Polygon {
    let mut ring = vec![Point::new(x0, y), Point::new(x1, y)];
    ring.extend([Point::new(x1, y + h1), Point::new(x0, y + h0)]);
    ring.dedup();
    if ring.first() == ring.last() {
        ring.pop();
    }
    Polygon::simple(ring).wound()
}

/// Whether a line is a leader: it slopes, and one of its ends stands free among the courses.
fn is_leader(lines: &DrawnLines, line: Segment, span: Span) -> bool {
    let (p, q) = line;
    let sloped = (p.y - q.y).abs() > ON.max(0.01 * (q.x - p.x)) && q.x - p.x > ON;
    let held = |tip: Point| {
        let here = Rect::new(tip.x - TIP, tip.y - TIP, tip.x + TIP, tip.y + TIP);
        lines.within(here).into_iter().any(|(other, _)| {
            let (run, rise) = ((other.1.x - other.0.x).abs(), (other.1.y - other.0.y).abs());
            let square = run.min(rise) <= ON;
            let least = if square { STOP } else { ARROW };
            other != line && run.max(rise) >= least && passes(other, tip)
        })
    };
    let free = |tip: Point| tip.x > span.0 + ON && tip.x < span.1 - ON && !held(tip);
    sloped && (free(p) || free(q))
}

/// Whether a line goes through a place.
fn passes((p, q): Segment, at: Point) -> bool {
    let way = q - p;
    let along = ((at - p).dot(way) / way.hypot2().max(1e-9)).clamp(0.0, 1.0);
    (p + way * along).distance(at) <= TIP
}

/// A line clipped to the width, by its heights.
fn height((p, q): Segment, span: Span, y: f64, way: f64) -> Option<Height> {
    if q.x - p.x < ON || (q.y - p.y).abs() > 4.0 * (q.x - p.x) {
        return None;
    }
    let of = |x: f64| way * (p.y + (x - p.x) / (q.x - p.x) * (q.y - p.y) - y);
    let (x0, x1) = (p.x.max(span.0), q.x.min(span.1));
    (x1 > x0).then(|| Height { x0, x1, h0: of(x0), h1: of(x1) })
}

/// The nearest level line that spans most of the width, in one part or in several.
fn ends_all(found: &[Height], wide: f64, reach: f64) -> Option<f64> {
    let mut level: Vec<&Height> = found.iter().filter(|h| h.is_level()).collect();
    level.retain(|h| (-ON..=reach).contains(&h.h0));
    level.sort_by(|a, b| a.h0.total_cmp(&b.h0));
    let long = |h: &f64| {
        let alike = level.iter().filter(|o| (o.h0 - h).abs() <= ON);
        alike.map(|o| o.x1 - o.x0).sum::<f64>() >= MOST_OF * wide
    };
    level.iter().map(|h| h.h0).find(long)
}

/// Where the nearest line may change.
fn steps(found: &[Height], span: Span, reach: f64) -> Vec<Span> {
    let mut xs = vec![span.0, span.1];
    for (i, a) in found.iter().enumerate() {
        xs.extend([a.x0, a.x1]);
        let rise = (a.h1 - a.h0) / (a.x1 - a.x0);
        if rise.abs() > 1e-9 {
            xs.extend([0.0, reach].map(|h| a.x0 + (h - a.h0) / rise));
        }
        for b in &found[i + 1..] {
            let turn = (b.h1 - b.h0) / (b.x1 - b.x0);
            if (rise - turn).abs() > 1e-9 {
                xs.push((b.h0 - a.h0 + rise * a.x0 - turn * b.x0) / (rise - turn));
            }
        }
    }
    xs.retain(|x| *x >= span.0 && *x <= span.1);
    xs.sort_by(f64::total_cmp);
    xs.dedup_by(|b, a| *b - *a < 1e-6);
    xs.windows(2).map(|w| (w[0], w[1])).collect()
}
