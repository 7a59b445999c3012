//! What takes parts of a wall's outline away.

use super::frame::ViewFrame;
use super::{parts, zones};
use crate::geom::boolean::intersection;
use crate::geom::polygon::Polygon;
use crate::geom::sliver::{between, without_slivers};
use crate::geom::vocabulary::Rect;
use crate::model::house::{HiddenBy, HiddenPart};

/// Areas drawn over a wall, what lies outside the zone, joints.
pub(super) fn hidden(
    local: &ViewFrame,
    whole: &Polygon,
    each: &[(HiddenBy, &Vec<Polygon>)],
    joints: &[f64],
) -> Vec<HiddenPart> {
    let all = |by: HiddenBy, shapes: Vec<Polygon>| {
        shapes.into_iter().map(move |shape| HiddenPart { by, shape })
    };
    let mut out: Vec<HiddenPart> = Vec::new();
    for (by, shapes) in each {
        let near = shapes.iter().filter(|s| touches(s, whole)).cloned().collect();
        out.extend(all(*by, near));
    }
    out.extend(all(HiddenBy::OtherZone, zones::outside(local, whole)));
    let gap = local.job.trim.movement_gap;
    let strips = joints.iter().map(|x| parts::strip(whole, *x, gap)).collect();
    out.extend(all(HiddenBy::Joint, strips));
    // Stone drawn along a side of its wall leaves no strip between.
    let shapes: Vec<Polygon> = out.iter().map(|h| h.shape.clone()).collect();
    out.extend(all(HiddenBy::Noise, between(&shapes, whole)));
    out
}

/// The same within the wall: what is told of it, where the drawn areas may go on for long.
pub(super) fn within(whole: &Polygon, hidden: Vec<HiddenPart>) -> Vec<HiddenPart> {
    let whole = std::slice::from_ref(whole);
    let clipped = |h: HiddenPart| {
        let inside = without_slivers(intersection(&[h.shape], whole));
        inside.into_iter().map(move |shape| HiddenPart { by: h.by, shape })
    };
    hidden.into_iter().flat_map(clipped).collect()
}

/// Whether two shapes may have a place in common.
pub(super) fn touches(a: &Polygon, b: &Polygon) -> bool {
    meet(a.bounds(), b.bounds())
}

/// Whether two boxes do.
pub(super) fn meet(a: Rect, b: Rect) -> bool {
    a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1
}
