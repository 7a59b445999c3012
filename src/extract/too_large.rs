//! Openings drawn over siding that are larger than openings are: borders, panels of a schedule, frames of a
//! detail that stand on a layer of windows.

use super::frame::ViewFrame;
use super::outline::Outline;
use crate::finding::house::HouseFinding;
use crate::finding::{Finding, Findings};
use crate::geom::boolean::intersection;
use crate::geom::polygon::{Polygon, bounds, total_area};
use crate::model::house::{DrawnOpening, OpeningKind, WallWay};

/// Openings higher than this, inches, are higher than a story: 12 ft (common practice, no source).
const STORY: f64 = 144.0;
/// A window over more than this share of a wall is none, and a door over more than this one, as an overhead
/// door takes most of a garage's end (common practice, no source).
const HALF: f64 = 0.5;
const MOST: f64 = 0.85;

/// The openings that no hole in the siding shows, without those that are too large for one. Each is told;
/// one that the job accepts stays.
pub(super) fn without(
    local: &ViewFrame,
    outlines: &[Outline],
    alone: Vec<DrawnOpening>,
    findings: &mut Findings,
) -> Vec<DrawnOpening> {
    if !outlines.iter().all(|o| o.way == WallWay::Hatch) {
        return alone;
    }
    let walls: Vec<Polygon> = outlines.iter().map(Outline::polygon).collect();
    let accepted = local.job.drawing.accept.iter().any(|c| c == "opening-too-large");
    let mut kept = Vec::new();
    for o in alone {
        let Some((height, percent)) = too_large(&o, &walls) else {
            kept.push(o);
            continue;
        };
        // Zones show the same once more.
        if local.part.is_none() {
            let kind = HouseFinding::OpeningTooLarge { height, percent, accepted };
            let at = bounds(&o.outline).unwrap_or_default().center();
            let finding = Finding::new(kind).about(&o.origin).at(local.source(at));
            findings.push(finding.on(&local.view.name));
        }
        kept.extend(accepted.then_some(o));
    }
    kept
}

/// Height in inches and share of its wall in percent of what is no opening; none of one that may be.
fn too_large(o: &DrawnOpening, walls: &[Polygon]) -> Option<(f64, f64)> {
    let shape = [Polygon::simple(o.outline.clone()).wound()];
    let over = |w: &Polygon| total_area(&intersection(&shape, std::slice::from_ref(w)));
    let on = walls.iter().map(|w| (over(w), w.area())).max_by(|a, b| a.0.total_cmp(&b.0))?;
    let share = on.0 / on.1.max(f64::MIN_POSITIVE);
    let door = matches!(o.kind, OpeningKind::Door | OpeningKind::OverheadDoor);
    let height = shape[0].bounds().height();
    let large = on.0 > 0.0 && (height > STORY || share > if door { MOST } else { HALF });
    large.then_some((height, 100.0 * share))
}
