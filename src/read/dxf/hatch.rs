//! HATCH: boundary loops as polylines or edges, and the line families of its pattern.

use super::groups::Groups;
use super::paths::arc_path;
use super::tags::Tag;
use crate::geom::flatten::SAGITTA;
use crate::geom::flatten::bulge_points;
use crate::geom::vocabulary::{BezPath, Point, Vec2};
use crate::model::hatch::{Hatch, LineFamily};

struct Cursor<'a, 't> {
    tags: &'t [Tag<'a>],
    at: usize,
}

impl Cursor<'_, '_> {
    /// The next value with this code before any of `stop`.
    fn next(&mut self, code: i32) -> Option<f64> {
        let found = self.tags.get(self.at..)?.iter().position(|t| t.code == code)?;
        self.at += found + 1;
        self.tags[self.at - 1].float()
    }

    fn count(&mut self, code: i32) -> Option<i64> {
        self.next(code).map(|n| n as i64)
    }

    fn point(&mut self, x: i32) -> Option<Point> {
        Some(Point::new(self.next(x)?, self.next(x + 10)?))
    }

    fn peek(&self) -> i32 {
        self.tags.get(self.at).map_or(-1, |t| t.code)
    }
}

/// Loops that a hatch says it has.
pub(super) fn loops(groups: &Groups) -> usize {
    usize::try_from(groups.int(91)).unwrap_or(0)
}

/// A hatch with its loops. Beyond the reader's limit of loops none is made: half an even-odd area is
/// a wrong one.
pub(super) fn hatch(groups: &Groups) -> Option<Hatch> {
    let ocs = groups.ocs(groups.float(30).unwrap_or(0.0));
    let start = groups.tags.iter().position(|t| t.code == 91)?;
    let mut c = Cursor { tags: groups.tags, at: start };
    let mut loops = Vec::new();
    for _ in 0..c.count(91)?.max(0) {
        // A hatch with a part of its loops is another area: it is none.
        loops.push(ocs * boundary(&mut c)?);
    }
    let solid = groups.int(70) == 1;
    let families = if solid { Vec::new() } else { families(&mut c).unwrap_or_default() };
    Some(Hatch { loops, solid, pattern: groups.text(2).unwrap_or_default(), families })
}

fn boundary(c: &mut Cursor) -> Option<BezPath> {
    let flags = c.count(92)?;
    if flags & 2 == 2 {
        return polyline(c);
    }
    let mut path = BezPath::new();
    for _ in 0..c.count(93)? {
        edge(c, &mut path)?;
    }
    if !path.elements().is_empty() {
        path.close_path();
    }
    Some(path)
}

fn polyline(c: &mut Cursor) -> Option<BezPath> {
    let bulged = c.count(72)? != 0;
    c.next(73)?;
    let mut vertices: Vec<(Point, f64)> = Vec::new();
    for _ in 0..c.count(93)? {
        let p = c.point(10)?;
        let bulge = if bulged && c.peek() == 42 { c.next(42)? } else { 0.0 };
        vertices.push((p, bulge));
    }
    let mut path = BezPath::new();
    // A loop of no vertices bounds nothing.
    let Some((first, _)) = vertices.first() else { return Some(path) };
    path.move_to(*first);
    for (i, (p, bulge)) in vertices.iter().enumerate() {
        let next = vertices[(i + 1) % vertices.len()].0;
        bulge_points(*p, next, *bulge, SAGITTA / 4.0).into_iter().for_each(|q| path.line_to(q));
    }
    path.close_path();
    Some(path)
}

fn join(path: &mut BezPath, part: BezPath) {
    use crate::geom::vocabulary::PathEl;
    let fresh = path.elements().is_empty();
    for el in part.elements() {
        match el {
            PathEl::MoveTo(p) if fresh => path.move_to(*p),
            PathEl::MoveTo(p) => path.line_to(*p),
            PathEl::ClosePath => {}
            other => path.push(*other),
        }
    }
}

fn edge(c: &mut Cursor, path: &mut BezPath) -> Option<()> {
    match c.count(72)? {
        1 => {
            let mut line = BezPath::new();
            line.move_to(c.point(10)?);
            line.line_to(c.point(11)?);
            join(path, line);
        }
        2 => {
            let (center, radius) = (c.point(10)?, c.next(40)?);
            let (a, b) = (c.next(50)?.to_radians(), c.next(51)?.to_radians());
            join(path, swept(center, Vec2::new(radius, 0.0), 1.0, a, b, c.count(73)? != 0)?);
        }
        3 => {
            let (center, major) = (c.point(10)?, c.point(11)?.to_vec2());
            let ratio = c.next(40)?;
            let (a, b) = (c.next(50)?.to_radians(), c.next(51)?.to_radians());
            join(path, swept(center, major, ratio, a, b, c.count(73)? != 0)?);
        }
        4 => {
            let degree = usize::try_from(c.count(94)?).ok()?;
            let rational = c.count(73)? != 0;
            c.next(74)?;
            let (knots, points) = (c.count(95)?, c.count(96)?);
            let knots: Vec<f64> = (0..knots).map_while(|_| c.next(40)).collect();
            let (mut control, mut weights) = (Vec::new(), Vec::new());
            for _ in 0..points {
                control.push(c.point(10)?);
                if rational {
                    weights.push(c.next(42)?);
                }
            }
            let sampled = super::spline::sample(&control, &knots, &weights, degree)?;
            let mut line = BezPath::new();
            let (first, rest) = sampled.split_first()?;
            line.move_to(*first);
            rest.iter().for_each(|p| line.line_to(*p));
            join(path, line);
        }
        _ => return None,
    }
    Some(())
}

/// An arc edge; a clockwise one states its angles mirrored.
fn swept(center: Point, major: Vec2, ratio: f64, a: f64, b: f64, ccw: bool) -> Option<BezPath> {
    let sweep = (b - a).rem_euclid(std::f64::consts::TAU);
    let sweep = if sweep < 1e-9 { std::f64::consts::TAU } else { sweep };
    if ccw {
        arc_path(center, major, ratio, a, sweep)
    } else {
        arc_path(center, major, ratio, -a, -sweep)
    }
}

fn families(c: &mut Cursor) -> Option<Vec<LineFamily>> {
    let mut out = Vec::new();
    for _ in 0..c.count(78)?.clamp(0, 1000) {
        let angle = c.next(53)?;
        let base = Point::new(c.next(43)?, c.next(44)?);
        let offset = (c.next(45)?, c.next(46)?);
        let dashes = (0..c.count(79)?.clamp(0, 100)).map_while(|_| c.next(49)).collect();
        out.push(LineFamily { angle, base, offset, dashes });
    }
    Some(out)
}
