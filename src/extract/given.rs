//! Walls and openings that the job gives outright, in the drawing's own units and from its own origin:
//! what is drawn in their place gives way.

use std::collections::BTreeSet;

use super::frame::ViewFrame;
use super::outline::{GivenBy, Outline};
use super::views::View;
use super::ways;
use super::ways::recess::{self, FoundOpening};
use crate::finding::by_hand::{HandFinding, OutlineList};
use crate::finding::{Finding, Findings};
use crate::geom::boolean::intersection;
use crate::geom::polygon::{Polygon, bounds, ring_contains, total_area};
use crate::geom::tol::snap;
use crate::geom::vocabulary::{Point, Rect, Ring, Vec2};
use crate::job::Job;
use crate::job::by_hand::ring;
use crate::model::house::{DrawnOpening, OpeningKind, WallWay};
use crate::model::ids::ElevationName;
use crate::model::linework::Linework;
use crate::origin::Origin;

/// A drawn wall and a given one that share less of either than this only touch, as hatches do that are
/// drawn along an outline. Of our own choosing: no source.
const TOUCH: f64 = 0.02;
/// From this share on a given wall covers as good as all of a drawn one. Of our own choosing: no source.
const COVERED: f64 = 0.95;

/// A given outline where it lies now, inches on the grid.
fn placed(lines: &Linework, outline: &[[f64; 2]]) -> Ring {
    let on_grid = |p: Point| Point::new(snap(p.x), snap(p.y));
    let points = ring(outline).into_iter().map(|p| on_grid(lines.placed(p))).collect();
    Polygon::simple(points).wound().outer
}

/// Every wall outline of the drawing, and those that the job gives.
pub(super) fn outlines(lines: &Linework, job: &Job, findings: &mut Findings) -> Vec<Outline> {
    let found = ways::outlines(lines, job, findings);
    with_walls(lines, job, found, findings)
}

/// Walls as found, with those of the job in the place of what they cover.
fn with_walls(
    lines: &Linework,
    job: &Job,
    found: Vec<Outline>,
    findings: &mut Findings,
) -> Vec<Outline> {
    let given = job.walls.iter().enumerate();
    let mut given: Vec<Outline> = given
        .map(|(i, w)| Outline {
            ring: placed(lines, &w.outline),
            way: WallWay::Job,
            layer: usize::MAX,
            origin: Origin::default(),
            exposure: None,
            openings: Vec::new(),
            given: Some(GivenBy {
                number: i + 1,
                elevation: w.elevation.clone(),
                replaced: Vec::new(),
            }),
            ..Outline::default()
        })
        .collect();
    let mut kept = Vec::new();
    for o in found {
        match best_cover(&given, &o) {
            Some((i, share)) => {
                let at = lines.source(o.frame().center());
                findings.push(gives_way(i + 1, &o, share).at(at).about(&o.origin));
                replace(&mut given[i], o);
            }
            None => kept.push(o),
        }
    }
    kept.extend(given);
    kept
}

/// The given wall in whose place an outline is drawn, and the share of it that all given ones cover.
fn best_cover(given: &[Outline], o: &Outline) -> Option<(usize, f64)> {
    let whole = [o.polygon()];
    let area = total_area(&whole).max(f64::EPSILON);
    let over = |g: &Outline| {
        let meets = g.frame().overlaps(o.frame());
        if meets { total_area(&intersection(&[g.polygon()], &whole)) } else { 0.0 }
    };
    let areas: Vec<f64> = given.iter().map(over).collect();
    let best = (0..areas.len()).max_by(|a, b| areas[*a].total_cmp(&areas[*b]))?;
    let least = area.min(given[best].polygon().area());
    (areas[best] > TOUCH * least).then(|| (best, areas.iter().sum::<f64>() / area))
}

/// Whether an outline gives way to given ones.
pub(super) fn covers(given: &[Outline], o: &Outline) -> bool {
    best_cover(given, o).is_some()
}

fn gives_way(number: usize, o: &Outline, share: f64) -> Finding {
    Finding::new(HandFinding::WallGivesWay {
        number,
        area: o.polygon().area() / 144.0,
        percent: (100.0 * share).min(100.0),
        covered: share >= COVERED,
    })
}

/// Boxes of the drawn walls that give way to given ones, moved back by `origin`.
pub(super) fn replaced(walls: &[Outline], origin: Vec2) -> Vec<Rect> {
    let given = walls.iter().filter_map(|o| o.given.as_ref());
    given.flat_map(|g| &g.replaced).map(|r| *r - origin).collect()
}

/// What was found with the drawn wall goes over to the given one.
fn replace(given: &mut Outline, drawn: Outline) {
    let whole = given.polygon();
    let middle = |o: &DrawnOpening| bounds(&o.outline).unwrap_or_default().center();
    let frame = drawn.frame();
    given.openings.extend(drawn.openings.into_iter().filter(|o| whole.contains(middle(o))));
    given.exposure = given.exposure.or(drawn.exposure);
    given.given.iter_mut().for_each(|g| g.replaced.push(frame));
}

/// The openings that the job gives a view, elevation inches, with the walls of the view in inches of the
/// whole drawing.
pub(super) fn openings(local: &ViewFrame, walls: &[Outline]) -> Vec<DrawnOpening> {
    let mut out = Vec::new();
    for o in &local.job.openings {
        let whole = placed(local.lines, &o.outline);
        let frame = bounds(&whole).unwrap_or_default();
        if !local.view.shows(o.elevation.as_deref(), frame) {
            continue;
        }
        let wall = walls.iter().find(|w| ring_contains(&w.ring, frame.center()));
        let by_place = || {
            let foot = wall.map_or(frame.y0, |w| w.frame().y0);
            recess::by_size(frame, foot)
        };
        out.push(DrawnOpening {
            id: Default::default(),
            kind: o.kind.unwrap_or_else(by_place),
            outline: whole.iter().map(|p| local.place(*p)).collect(),
            cut: Vec::new(),
            unfilled: None,
            block: None,
            origin: Origin::default(),
        });
    }
    out
}

/// Whether an opening is the job's: nothing of the source says where it is from.
pub(super) fn is_given(o: &DrawnOpening) -> bool {
    o.origin == Origin::default()
}

/// Whether two outlines are of one thing: the middle of one lies in the other.
fn one_thing(a: &DrawnOpening, b: &DrawnOpening) -> bool {
    let middle = |o: &DrawnOpening| bounds(&o.outline).unwrap_or_default().center();
    ring_contains(&a.outline, middle(b)) || ring_contains(&b.outline, middle(a))
}

/// Openings with the given ones in the place of those that are drawn there.
pub(super) fn before(found: Vec<DrawnOpening>, given: &[DrawnOpening]) -> Vec<DrawnOpening> {
    let drawn = found.into_iter().filter(|o| given.iter().all(|g| !one_thing(o, g)));
    drawn.chain(given.iter().cloned()).collect()
}

/// Drawn and given openings as hatches are asked of them.
pub(super) fn known(all: &[DrawnOpening]) -> Vec<FoundOpening> {
    let one = |o: &DrawnOpening| FoundOpening {
        outline: o.outline.clone(),
        kind: o.kind,
        block: o.block.clone(),
        origin: o.origin.clone(),
    };
    all.iter().map(one).collect()
}

/// Tells of what the job gives and no elevation shows.
pub(super) fn report(
    lines: &Linework,
    views: &[View],
    shown: &BTreeSet<usize>,
    job: &Job,
    findings: &mut Findings,
) {
    let known = |named: &Option<String>| {
        named.as_ref().is_some_and(|n| views.iter().any(|v| v.is_named(n)))
    };
    let mut tell = |list, number: usize, named: &Option<String>, outline: &[[f64; 2]]| {
        let first = ring(outline).first().copied().unwrap_or_default();
        let elevations = views.iter().map(|v| ElevationName::from(v.name.as_str())).collect();
        let named = named.clone();
        let kind = HandFinding::GivenOutside { list, number, named, elevations };
        findings.push(Finding::new(kind).at(first));
    };
    for (i, w) in job.walls.iter().enumerate() {
        if !shown.contains(&(i + 1)) {
            tell(OutlineList::Wall, i + 1, &w.elevation, &w.outline);
        }
    }
    for (i, o) in job.openings.iter().enumerate() {
        let frame = bounds(&placed(lines, &o.outline)).unwrap_or_default();
        let by_place = o.elevation.is_none() && views.iter().any(|v| v.shows(None, frame));
        if !(known(&o.elevation) || by_place) {
            tell(OutlineList::Opening, i + 1, &o.elevation, &o.outline);
        }
    }
}

/// What an opening of the job is called where it is none of a man's height at the foot: as it says.
pub(super) fn keeps_kind(o: &DrawnOpening) -> bool {
    is_given(o) || o.kind != OpeningKind::Window
}
