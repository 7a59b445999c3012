//! Three ways to a wall, in this order: closed outlines on wall layers; the boundaries of siding
//! hatches; the arrangement of loose lines where the job names a layer or a region. The report says
//! which was used.

pub(super) mod drawn_courses;
pub(super) mod faces_of;
mod foot;
pub(super) mod gable;
pub(super) mod hatch;
pub(super) mod loose;
pub(super) mod recess;

use super::outline::Outline;
use super::turns::region_of;

use crate::finding::house::{HouseFinding, WallsOf};
use crate::finding::{Finding, Findings};
use crate::geom::vocabulary::{Point, Rect};
use crate::job::Job;
use crate::job::drawing::View;
use crate::model::house::WallWay;
use crate::model::ids::ElevationName;
use crate::model::linework::{Linework, Role, Stroke};
use crate::units::sixteenths;

/// Every wall outline that the whole drawing shows. Those of hatches carry no openings yet: these
/// are settled view by view.
pub(crate) fn outlines(lines: &Linework, job: &Job, findings: &mut Findings) -> Vec<Outline> {
    let seen = seen(lines, job);
    let soup = loose::layers(lines, &seen);
    let drawn = hatch::exposures(lines);
    let mut out: Vec<Outline> = lines
        .strokes
        .iter()
        .filter(|s| s.role == Some(Role::Wall) && s.closed && s.points.len() >= 3)
        .filter(|s| !soup.contains(&s.layer) && seen(s))
        .map(|s| Outline {
            ring: s.points.clone(),
            way: WallWay::Outline,
            layer: s.layer,
            origin: s.origin.clone(),
            exposure: hatch::exposure_over(&drawn, &s.points),
            openings: Vec::new(),
            ..Outline::default()
        })
        .collect();
    out.extend(loose::outlines(lines, (&soup, &seen), job, findings));
    out.extend(hatch::outlines(lines, &out));
    out
}

/// Whether something of a stroke lies in a view of the job, where each view has its region: what lies outside
/// of all is not seen.
fn seen(lines: &Linework, job: &Job) -> impl Fn(&Stroke) -> bool + use<> {
    let k = lines.scale.inches;
    let region = |v: &View| {
        let [a, b, c, d] = v.region?;
        let drawn = Rect::from_points(Point::new(a * k, b * k), Point::new(c * k, d * k));
        Some(region_of(lines, v, drawn))
    };
    let regions: Option<Vec<Rect>> = job.views().map(region).collect();
    let regions = regions.unwrap_or_default();
    move |s: &Stroke| regions.is_empty() || s.meets_any(&regions)
}

/// Says which way was taken where it was not the agreed one.
pub(super) fn report(views: &[(&str, &[Outline])], findings: &mut Findings) {
    let by = |way: WallWay| -> Vec<(&str, Vec<&Outline>)> {
        views
            .iter()
            .map(|(name, all)| (*name, all.iter().filter(|o| o.way == way).collect::<Vec<_>>()))
            .filter(|(_, o)| !o.is_empty())
            .collect()
    };
    let counted = |found: &[(&str, Vec<&Outline>)]| -> Vec<WallsOf> {
        let one = |(name, outlines): &(&str, Vec<&Outline>)| WallsOf {
            elevation: ElevationName::from(*name),
            walls: outlines.len(),
        };
        found.iter().map(one).collect()
    };
    let hatched = by(WallWay::Hatch);
    if !hatched.is_empty() {
        let mut line_spacings: Vec<f64> =
            hatched.iter().flat_map(|(_, o)| o.iter().filter_map(|o| o.exposure)).collect();
        line_spacings.sort_by(f64::total_cmp);
        line_spacings.dedup_by_key(|spacing| sixteenths(*spacing));
        let kind = HouseFinding::WallsFromHatch { walls: counted(&hatched), line_spacings };
        findings.push(Finding::new(kind));
    }
    let loose = by(WallWay::Arrangement);
    if !loose.is_empty() {
        findings.push(Finding::new(HouseFinding::WallsFromLines { walls: counted(&loose) }));
    }
}
