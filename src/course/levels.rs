//! The level lines of a house that a datum is judged by: where siding starts, heads, sills and tops,
//! each with the width of siding along it.

use std::collections::BTreeMap;

use super::starts::grade_at;
use crate::geom::curve::curved_sides;
use crate::geom::polygon::{Polygon, sides};
use crate::geom::strip::intervals_at;
use crate::geom::tol::{GRID, LEVEL, SAME, snap};
use crate::geom::vocabulary::{Point, Ring};
use crate::job::{CourseRules, Job};
use crate::model::house::{
    DrawnEdge, DrawnElevation, DrawnOpening, DrawnWall, EdgeKind, House, OpeningKind,
};
use crate::model::pole::LineKind;

/// A width in grid steps: sums of these are exact, whichever way round a house is drawn.
pub(super) type GridWidth = i64;

pub(super) fn steps(inches: f64) -> GridWidth {
    (inches / GRID).round() as GridWidth
}

/// Feet of a width.
pub(super) fn feet(width: GridWidth) -> f64 {
    width as f64 * GRID / 12.0
}

/// Lines of one kind at one height.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Line {
    /// Height.
    pub(super) y: f64,
    /// Siding along it, openings taken together.
    pub(super) width: GridWidth,
    /// How many openings or walls.
    pub(super) count: usize,
    /// Of these, windows only.
    pub(super) windows: GridWidth,
}

/// One level bottom of a wall, or of its siding on stone.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Start {
    /// Height of the drawn bottom.
    pub(super) y: f64,
    /// Its length, doors that stand on it left out.
    pub(super) width: GridWidth,
    /// How far the first course may hang below it.
    pub(super) hang: f64,
    /// Whether it is the top of a bare area, over which nothing hangs.
    pub(super) stone: bool,
    /// Least height of a panel's bottom at places evenly along it: the drawn bottom, or grade and
    /// clearance where that is higher.
    pub(super) floors: Vec<f64>,
    /// Length of wall each of these stands for.
    pub(super) each: GridWidth,
}

/// Every level line of a house.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Levels {
    pub(super) starts: Vec<Start>,
    /// Level feet over roofs.
    pub(super) feet: Vec<Line>,
    pub(super) heads: Vec<Line>,
    pub(super) sills: Vec<Line>,
    pub(super) tops: Vec<Line>,
    /// Pointed and curved heads and sills.
    pub(super) tips: Vec<Tip>,
}

/// A head or a sill that is level nowhere at its height.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Tip {
    /// Its height.
    pub(super) y: f64,
    /// Whether it is a head.
    pub(super) is_head: bool,
    /// The opening's outline.
    pub(super) outline: Ring,
}

/// Shorter level sides of an opening are no head or sill that a course is set by, inches: of our own
/// choosing, no source.
const LEAST_SIDE: f64 = 4.0;
/// Heights of grade looked at along one wall bottom.
const PLACES: usize = 64;

/// Gathers the level lines of a house.
pub(super) fn levels(house: &House, job: &Job) -> Levels {
    let rules = &job.courses;
    let ledge = job.clearances().ledge;
    let (mut starts, mut tips) = (Vec::new(), Vec::new());
    let mut lines: BTreeMap<(LineKind, i64), Line> = BTreeMap::new();
    for e in &house.elevations {
        for w in &e.walls {
            starts.extend(bottoms(w).filter_map(|edge| start(e, w, edge, rules)));
            // On stone siding starts as well, but hangs over it nowhere, and grade is far below.
            let stone = w.edges.iter().filter(|e| e.kind == EdgeKind::BareTop && level(e));
            starts.extend(stone.filter_map(|edge| {
                let (x0, x1) = span(edge);
                let (y, width) = (snap(edge.from.y + ledge), steps(x1 - x0));
                (width > 0).then(|| Start {
                    y,
                    width,
                    hang: 0.0,
                    stone: true,
                    floors: vec![y],
                    each: width,
                })
            }));
            tips.extend(w.openings.iter().flat_map(tips_of));
            for (kind, y, width, window) in of_wall(w, job) {
                let line = lines.entry((kind, steps(y))).or_default();
                line.y = y;
                line.width += steps(width);
                line.count += 1;
                line.windows += if window { steps(width) } else { 0 };
            }
        }
    }
    // Either way round a house is drawn, the same starts come in the same order.
    starts.sort_by(|a: &Start, b: &Start| a.y.total_cmp(&b.y).then(a.width.cmp(&b.width)));
    let of = |kinds: &[LineKind]| -> Vec<Line> {
        lines.iter().filter(|((k, _), _)| kinds.contains(k)).map(|(_, l)| *l).collect()
    };
    Levels {
        starts,
        feet: of(&[LineKind::RoofFoot]),
        heads: of(&[LineKind::Head]),
        sills: of(&[LineKind::Sill]),
        tops: of(&[LineKind::Eave, LineKind::Band]),
        tips,
    }
}

/// The level bottoms of a wall that siding starts from.
pub(super) fn bottoms(wall: &DrawnWall) -> impl Iterator<Item = &DrawnEdge> {
    wall.edges.iter().filter(|e| e.kind == EdgeKind::Base && level(e))
}

fn level(e: &DrawnEdge) -> bool {
    (e.from.y - e.to.y).abs() <= LEVEL
}

/// Left and right end of a side.
pub(super) fn span(e: &DrawnEdge) -> (f64, f64) {
    (e.from.x.min(e.to.x), e.from.x.max(e.to.x))
}

/// How far the first course may hang below a wall bottom: the job's limit, and no nearer to grade
/// than the clearance anywhere along it.
pub(super) fn hang(on: &DrawnElevation, edge: &DrawnEdge, rules: &CourseRules) -> f64 {
    let (x0, x1) = span(edge);
    let turns = on.grade.iter().filter(|g| g.x > x0 && g.x < x1).map(|g| g.y);
    let ends = [x0, x1].into_iter().filter_map(|x| grade_at(&on.grade, x));
    let highest = ends.chain(turns);
    let room =
        highest.reduce(f64::max).map_or(f64::INFINITY, |g| edge.from.y - g - rules.clear_of_grade);
    rules.hang_below.min(room).max(0.0)
}

fn start(
    on: &DrawnElevation,
    wall: &DrawnWall,
    edge: &DrawnEdge,
    rules: &CourseRules,
) -> Option<Start> {
    let (x0, x1) = span(edge);
    let y = edge.from.y;
    let doors: f64 = wall
        .openings
        .iter()
        .map(DrawnOpening::sides)
        .filter(|(_, _, sill, _)| *sill <= y + SAME)
        .map(|(left, right, ..)| (right.min(x1) - left.max(x0)).max(0.0))
        .sum();
    let width = x1 - x0 - doors;
    let at = |i: usize| x0 + (x1 - x0) * (i as f64 + 0.5) / PLACES as f64;
    let floor = |x: f64| grade_at(&on.grade, x).map_or(y, |g| y.max(g + rules.clear_of_grade));
    (width > SAME).then(|| Start {
        y,
        width: steps(width),
        hang: hang(on, edge, rules),
        stone: false,
        floors: (0..PLACES).map(|i| snap(floor(at(i)))).collect(),
        each: steps((x1 - x0) / PLACES as f64),
    })
}

/// Level lines of one wall but its bottom: kind, height, width of siding along it, and whether it is
/// a window's.
fn of_wall(wall: &DrawnWall, job: &Job) -> Vec<(LineKind, f64, f64, bool)> {
    let mut out = Vec::new();
    for e in &wall.edges {
        let (x0, x1) = span(e);
        let kind = match e.kind {
            EdgeKind::LowerRoof => LineKind::RoofFoot,
            EdgeKind::Eave => LineKind::Eave,
            EdgeKind::BareBottom => LineKind::Band,
            _ => continue,
        };
        // Siding begins over the clearance to a roof, and ends under a frieze.
        let raised = match kind {
            LineKind::RoofFoot => job.clearances().roof,
            LineKind::Eave => -job.trim.frieze,
            _ => 0.0,
        };
        if level(e) {
            out.push((kind, snap(e.from.y + raised), x1 - x0, false));
        } else if kind == LineKind::Eave {
            // Out of level as taped: pieces at either end are as narrow as the top is low there.
            let half = (x1 - x0) / 2.0;
            out.extend([e.from.y, e.to.y].map(|y| (kind, snap(y + raised), half, false)));
        }
    }
    for o in &wall.openings {
        let window = o.kind == OpeningKind::Window;
        let door = matches!(o.kind, OpeningKind::Door | OpeningKind::OverheadDoor);
        let mut at: BTreeMap<(GridWidth, LineKind), f64> = BTreeMap::new();
        for (kind, y, span) in level_sides(o) {
            let off = if kind == LineKind::Head { 0.5 } else { -0.5 };
            *at.entry((steps(y), kind)).or_default() += beside(wall, Some(span), y + off);
        }
        let along = at
            .into_iter()
            .filter(|((_, kind), width)| *width > SAME && !(door && *kind == LineKind::Sill));
        out.extend(along.map(|((y, kind), width)| (kind, y as f64 * GRID, width, window)));
    }
    out
}

/// The top of an opening and, of one with a sill, its foot, where they are level nowhere.
fn tips_of(o: &DrawnOpening) -> Vec<Tip> {
    let (.., low, high) = o.sides();
    let level = level_sides(o);
    let flat = |kind: LineKind, y: f64| {
        level.iter().any(|(k, at, _)| *k == kind && (at - y).abs() <= LEVEL)
    };
    let tip = |y: f64, is_head: bool| Tip { y, is_head, outline: o.outline.clone() };
    let mut out = Vec::new();
    if !flat(LineKind::Head, high) {
        out.push(tip(high, true));
    }
    if o.kind.has_sill() && !flat(LineKind::Sill, low) {
        out.push(tip(low, false));
    }
    out
}

/// The level sides of an opening's contour, heads and sills, each with its height and its ends: a stepped
/// one has several. A curve is level nowhere.
fn level_sides(o: &DrawnOpening) -> Vec<(LineKind, f64, (f64, f64))> {
    let ring = Polygon::simple(o.outline.clone()).wound().outer;
    let curved = curved_sides(&ring);
    let straight = sides(&ring).zip(curved).filter(|(_, curved)| !curved).map(|(s, _)| s);
    let long =
        straight.filter(|(a, b)| (a.y - b.y).abs() <= LEVEL && (a.x - b.x).abs() >= LEAST_SIDE);
    // Counter-clockwise the opening lies over what runs to the right.
    let named = long.map(|(a, b)| {
        let kind = if b.x > a.x { LineKind::Sill } else { LineKind::Head };
        let y = if kind == LineKind::Head { a.y.max(b.y) } else { a.y.min(b.y) };
        (kind, y, (a.x.min(b.x), a.x.max(b.x)))
    });
    named.collect()
}

/// Where an opening is level at a height, for half its width at least: an arch has no such place at
/// its top.
pub(super) fn level_side(o: &DrawnOpening, y: f64) -> Option<(f64, f64)> {
    let at = |p: &Point| (p.y - y).abs() <= LEVEL;
    let flat = sides(&o.outline).filter(|(a, b)| at(a) && at(b));
    let span = flat.fold(None, |s: Option<(f64, f64)>, (a, b)| {
        let (low, high) = (a.x.min(b.x), a.x.max(b.x));
        Some(s.map_or((low, high), |(l, h)| (l.min(low), h.max(high))))
    });
    let (left, right, ..) = o.sides();
    span.filter(|(a, b)| b - a >= 0.5 * (right - left))
}

/// How much of a span the wall's faces fill at a height.
fn beside(wall: &DrawnWall, span: Option<(f64, f64)>, y: f64) -> f64 {
    let Some((x0, x1)) = span else { return 0.0 };
    let parts = intervals_at(&wall.faces, y).into_iter();
    parts.map(|(a, b)| (b.min(x1) - a.max(x0)).max(0.0)).sum()
}
