//! Bands and building joints: what parts the siding of a wall (`LayoutFact::BandsPartWalls`,
//! `LayoutFact::MovementJoints`).

use super::frame::ViewFrame;
use super::outline::Outline;
use crate::finding::house::HouseFinding;
use crate::finding::views::{JobList, ViewFinding};
use crate::finding::{Finding, Findings};
use crate::geom::boolean::{difference, intersection, union_all};
use crate::geom::polygon::{Polygon, bounds, sides};
use crate::geom::tol::{LEVEL, same, snap};
use crate::geom::vocabulary::{Point, Rect};
use crate::model::house::{DrawnOpening, DrawnWall, HiddenBy, House};
use crate::model::linework::Role;

/// Closed outlines of bands, and the bands of the job.
pub(super) fn bands(local: &ViewFrame, frame: Rect, drawn: Vec<Polygon>) -> Vec<Polygon> {
    let here = |e: &Option<String>| e.as_ref().is_none_or(|e| same_name(e, &local.view.name));
    let of_job = local.job.bands.iter().filter(|b| here(&b.elevation)).map(|b| {
        let (left, right) = (b.left.unwrap_or(frame.x0 - 1.0), b.right.unwrap_or(frame.x1 + 1.0));
        // As fine as what is drawn.
        Polygon::rect(snap(left), snap(b.bottom), snap(right), snap(b.top))
    });
    drawn.into_iter().chain(of_job).collect()
}

/// Bands whose ends and edges stand on a wall's plumb and level sides but for what is called plumb put on
/// them: beside a band that ends a hair inside a wall's side no strip of siding is left, and one that begins
/// a hair inside it is none.
pub(super) fn seated(bands: Vec<Polygon>, outlines: &[Outline]) -> Vec<Polygon> {
    let all = outlines.iter().flat_map(|o| sides(&o.ring));
    let (mut plumb, mut level): (Vec<_>, Vec<_>) = (Vec::new(), Vec::new());
    for (a, b) in all {
        if same(a.x, b.x) {
            plumb.push((a.x, a.y.min(b.y), a.y.max(b.y)));
        } else if same(a.y, b.y) {
            level.push((a.y, a.x.min(b.x), a.x.max(b.x)));
        }
    }
    let near = |lines: &[(f64, f64, f64)], v: f64, (low, high): (f64, f64)| {
        let beside = lines.iter().filter(|l| l.1 < high && l.2 > low);
        let off = beside.map(|l| l.0).min_by(|p, q| (p - v).abs().total_cmp(&(q - v).abs()));
        off.filter(|x| (x - v).abs() <= LEVEL).unwrap_or(v)
    };
    let seat = |band: Polygon| {
        let b = band.bounds();
        let on =
            |p: Point| Point::new(near(&plumb, p.x, (b.y0, b.y1)), near(&level, p.y, (b.x0, b.x1)));
        let band = band.map(on);
        (!band.bounds().is_zero_area()).then_some(band)
    };
    bands.into_iter().filter_map(seat).collect()
}

/// Elevations are named in the job as they are titled, capitals or not.
pub(super) fn same_name(a: &str, b: &str) -> bool {
    a.trim().eq_ignore_ascii_case(b.trim())
}

/// Places of joints and the heights over which they are drawn.
pub(super) fn joints(local: &ViewFrame) -> Vec<(f64, f64, f64)> {
    let drawn = local.strokes(Role::Joint).flat_map(|s| {
        let ring = local.ring(s);
        let pairs: Vec<(f64, f64, f64)> = ring
            .windows(2)
            .filter(|w| (w[0].x - w[1].x).abs() <= LEVEL && (w[0].y - w[1].y).abs() > LEVEL)
            .map(|w| ((w[0].x + w[1].x) / 2.0, w[0].y.min(w[1].y), w[0].y.max(w[1].y)))
            .collect();
        pairs
    });
    let of_job =
        local.job.movement_joints.iter().filter(|j| same_name(&j.elevation, &local.view.name));
    drawn.chain(of_job.map(|j| (j.at, f64::NEG_INFINITY, f64::INFINITY))).collect()
}

/// The joints of a wall: those inside it that are drawn over half of its height or more.
pub(super) fn on(outline: &Polygon, joints: &[(f64, f64, f64)], gap: f64) -> Vec<f64> {
    let b = outline.bounds();
    let inside = |x: f64| x > b.x0 + gap && x < b.x1 - gap;
    let long = |low: f64, high: f64| high.min(b.y1) - low.max(b.y0) >= b.height() / 2.0;
    let mut out: Vec<f64> = joints
        .iter()
        .filter(|(x, low, high)| inside(*x) && long(*low, *high))
        .map(|j| snap(j.0))
        .collect();
    out.sort_by(f64::total_cmp);
    out.dedup_by(|a, b| (*a - *b).abs() <= gap);
    out
}

/// The strip that a joint's two channels stand either side of.
pub(super) fn strip(outline: &Polygon, x: f64, gap: f64) -> Polygon {
    let b = outline.bounds();
    Polygon::rect(snap(x - gap / 2.0), b.y0 - 1.0, snap(x + gap / 2.0), b.y1 + 1.0)
}

/// Tells of a joint that runs through an opening: it cannot be one of the building.
pub(super) fn through_openings(
    local: &ViewFrame,
    outline: &Polygon,
    joints: &[f64],
    openings: &[DrawnOpening],
    findings: &mut Findings,
) {
    for x in joints {
        let struck = openings.iter().find(|o| {
            let (left, right, sill, head) = o.sides();
            let middle = Point::new(*x, (sill + head) / 2.0);
            left < *x && *x < right && outline.contains(middle)
        });
        if let Some(o) = struck {
            let at = local.source(Point::new(*x, o.sides().2));
            let finding = Finding::new(HouseFinding::JointInOpening {}).on(&local.view.name);
            findings.push(finding.about(&o.origin).at(at));
        }
    }
}

/// What of the bands lies on a wall, openings and joints left out.
pub(super) fn boards(wall: &DrawnWall, bands: &[Polygon], strips: &[Polygon]) -> Vec<Polygon> {
    let whole = [Polygon::simple(wall.outline.clone()).wound()];
    let mut off: Vec<Polygon> =
        wall.openings.iter().map(|o| Polygon::simple(o.outline.clone()).wound()).collect();
    off.extend(strips.iter().cloned());
    let mine = intersection(&union_all(bands), &whole);
    let mut out = difference(&mine, &union_all(&off));
    out.retain(|p| bounds(&p.outer).is_some_and(|b| b.width() > 1.0));
    out.sort_by(|a, b| {
        let (a, b) = (a.bounds(), b.bounds());
        a.y0.total_cmp(&b.y0).then(a.x0.total_cmp(&b.x0))
    });
    out
}

/// The boards of a wall whose openings or bands were moved, `gap` being the width at a joint of the building.
pub(super) fn boards_anew(wall: &mut DrawnWall, gap: f64) {
    let whole = Polygon::simple(wall.outline.clone()).wound();
    let bands = wall.hidden.iter().filter(|h| h.by == HiddenBy::Band);
    let bands: Vec<Polygon> = bands.map(|h| h.shape.clone()).collect();
    let strips: Vec<Polygon> = wall.joints.iter().map(|x| strip(&whole, *x, gap)).collect();
    wall.bands = boards(wall, &bands, &strips);
}

/// Tells of bands, joints and regions of zones of the job that name no elevation.
pub(super) fn report(house: &House, job: &crate::job::Job, findings: &mut Findings) {
    let known = |name: &str| house.elevations.iter().any(|e| same_name(&e.name, name));
    let of_bands = job.bands.iter().filter_map(|b| b.elevation.as_ref());
    let of_joints = job.movement_joints.iter().map(|j| &j.elevation);
    let of_regions = job.zone.iter().flat_map(|z| &z.regions).filter_map(|r| r.elevation.as_ref());
    let named = of_bands
        .map(|e| (JobList::Band, e))
        .chain(of_joints.map(|e| (JobList::Joint, e)))
        .chain(of_regions.map(|e| (JobList::ZoneRegion, e)));
    for (list, name) in named.filter(|(_, name)| !known(name)) {
        let elevations = house.elevations.iter().map(|e| e.name.clone()).collect();
        let kind = ViewFinding::PartUnknown { list, named: name.clone(), elevations };
        findings.push(Finding::new(kind));
    }
}
