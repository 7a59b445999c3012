//! Walls from drawn siding that may be none: what speaks against them, though nothing decides it.

use crate::finding::house::{HouseFinding, WallDoubt};
use crate::finding::{Finding, Findings};
use crate::geom::polygon::{Polygon, bounds, total_area};
use crate::geom::vocabulary::{Point, Rect};
use crate::model::house::{DrawnWall, House, WallWay};

/// A wall of which less than this shows, square inches, may be something else: ten square feet (common practice, no
/// source).
const SLIGHT: f64 = 1440.0;
/// Distances of course lines that differ by more than this share are two (common practice, no source).
const OTHER: f64 = 0.02;
/// From the head of a wall to the foot of a roof over it: fascia, soffit and frieze, inches (common practice, no
/// source).
const EAVE: f64 = 40.0;
/// What juts out at a lower roof's end: out by an overhang, and as high as a porch's roof is, inches (common
/// practice, no source).
const OUT: std::ops::RangeInclusive<f64> = 3.0..=48.0;
const HIGHEST: f64 = 60.0;
/// Sides on one line, inches.
const ON_LINE: f64 = 1.0;

/// Tells of walls that may be none, each by the first thing that speaks against it.
pub(super) fn report(house: &House, findings: &mut Findings) {
    for e in &house.elevations {
        let drawn: Vec<&DrawnWall> =
            e.walls.iter().filter(|w| w.way == WallWay::Hatch && !w.faces.is_empty()).collect();
        for w in &drawn {
            let found = little(w).or_else(|| other_courses(w, &drawn)).or_else(|| juts_out(w));
            if let Some((why, at)) = found {
                let kind = HouseFinding::WallDoubted { wall: w.id.clone(), why };
                findings.push(Finding::new(kind).at(e.to_source * at).on(e.name.as_str()));
            }
        }
    }
}

fn middle(shapes: &[Polygon]) -> Point {
    let largest = shapes.iter().max_by(|a, b| a.area().total_cmp(&b.area()));
    largest.map(|p| p.bounds().center()).unwrap_or_default()
}

/// Whether little of a wall shows; one that is drawn so small is told where it is found.
fn little(w: &DrawnWall) -> Option<(WallDoubt, Point)> {
    let shown = total_area(&w.faces);
    let whole = Polygon::simple(w.outline.clone()).wound().area();
    let is_little = shown < SLIGHT && whole >= SLIGHT;
    is_little.then(|| (WallDoubt::LittleShows { area: shown / 144.0 }, middle(&w.faces)))
}

/// Whether all siding that a wall stands on is drawn at another distance.
fn other_courses(w: &DrawnWall, all: &[&DrawnWall]) -> Option<(WallDoubt, Point)> {
    let (own, b) = (w.drawn_exposure?, bounds(&w.outline)?);
    let under = |v: &&&DrawnWall| {
        bounds(&v.outline).is_some_and(|r: Rect| {
            let beside = r.x1.min(b.x1) - r.x0.max(b.x0);
            let apart = (-ON_LINE..=EAVE).contains(&(b.y0 - r.y1));
            apart && beside > 0.5 * r.width().min(b.width())
        })
    };
    let below: Vec<f64> = all.iter().filter(under).filter_map(|v| v.drawn_exposure).collect();
    let other = |p: &f64| (p - own).abs() > OTHER * own;
    let first = below.first().copied().filter(|_| below.iter().all(other))?;
    Some((WallDoubt::OtherCourses { own, below: first }, middle(&w.faces)))
}

/// Whether a part of a wall juts out between two parts of one plumb end.
fn juts_out(w: &DrawnWall) -> Option<(WallDoubt, Point)> {
    let ring = Polygon::simple(w.outline.clone()).wound().outer;
    let n = ring.len();
    let at = |i: usize| ring[i % n];
    let plumb = |i: usize| (at(i).x - at(i + 1).x).abs() < ON_LINE;
    for i in (0..n).filter(|i| plumb(*i)) {
        let from = at(i + 1);
        // A wound ring has its inside at the left: out is to the right of the way.
        let way = (at(i + 1).y - at(i).y).signum();
        let back = (2..n.min(10)).map(|k| i + k).find(|j| {
            let to = at(*j);
            plumb(*j) && (to.x - from.x).abs() < ON_LINE && (at(j + 1).y - to.y) * way > 0.0
        });
        let Some(j) = back.filter(|j| *j > i + 2) else { continue };
        let height = (at(j).y - from.y) * way;
        let part: Vec<Point> = (i + 1..=j).map(at).collect();
        let reach = |p: &Point| (p.x - from.x) * way;
        let by = part.iter().map(reach).fold(0.0, f64::max);
        if OUT.contains(&by) && (0.0..=HIGHEST).contains(&height) {
            let middle = bounds(&part).unwrap_or_default().center();
            return Some((WallDoubt::JutsOut { by, height }, middle));
        }
    }
    None
}
