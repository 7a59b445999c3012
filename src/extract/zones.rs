//! Parts of walls with another cladding, measured.

use super::frame::ViewFrame;
use super::limits::NOISE;
use super::outline::Outline;
use super::parts;
use crate::geom::boolean::{difference, intersection, union_all};
use crate::geom::polygon::{Polygon, total_area};
use crate::geom::tol::snap;
use crate::geom::vocabulary::Point;
use crate::model::house::{DrawnOpening, DrawnZone};
use crate::model::linework::{Role, Stroke};

/// The zone of a stroke, by its layer.
fn zone_of(local: &ViewFrame, s: &Stroke) -> Option<usize> {
    let layer = local.lines.layers.get(s.layer)?;
    local.job.zone_of(&layer.layer.name)
}

/// Closed outlines on the layers of a zone and the regions the job gives it; of bare areas for
/// `None`.
pub(super) fn loops(local: &ViewFrame, zone: Option<usize>) -> Vec<Polygon> {
    let drawn = local
        .strokes(Role::Bare)
        .filter(|s| s.closed && s.points.len() >= 3 && zone_of(local, s) == zone)
        .map(|s| Polygon::simple(local.ring(s)).wound());
    let of_job = zone.and_then(|z| local.job.zone.get(z)).into_iter().flat_map(|z| &z.regions);
    let here = of_job
        .filter(|r| r.elevation.as_ref().is_none_or(|e| parts::same_name(e, &local.view.name)));
    drawn
        .chain(here.map(|r| {
            // As fine as what is drawn.
            let [left, bottom, right, top] = r.sides().map(snap);
            Polygon::rect(left, bottom, right, top)
        }))
        .collect()
}

/// What panels of a zone keep off, as drawn: bare areas, and zones that go before it.
pub(super) fn bare(local: &ViewFrame) -> Vec<Polygon> {
    let before = (0..local.part.unwrap_or(local.job.zone.len())).map(Some);
    std::iter::once(None).chain(before).flat_map(|z| loops(local, z)).collect()
}

/// What of a wall lies outside the zone that is laid out; nothing where the house is.
pub(super) fn outside(local: &ViewFrame, wall: &Polygon) -> Vec<Polygon> {
    let Some(zone) = local.part else { return Vec::new() };
    difference(std::slice::from_ref(wall), &union_all(&loops(local, Some(zone))))
        .iter()
        .map(|p| p.map(|q| Point::new(snap(q.x), snap(q.y))))
        .collect()
}

/// The same as closed outlines, those round a zone inside its wall too.
pub(super) fn border(local: &ViewFrame, wall: &Polygon) -> Vec<Polygon> {
    let rings = |p: &Polygon| p.rings().map(|r| Polygon::simple(r.to_vec())).collect::<Vec<_>>();
    outside(local, wall).iter().flat_map(rings).collect()
}

/// What each zone covers of the walls of a view, less what is bare or hidden in it; where zones
/// overlap the first has it.
pub(super) fn areas(
    local: &ViewFrame,
    outlines: &[Outline],
    openings: &[DrawnOpening],
    roofs: &[Polygon],
) -> Vec<DrawnZone> {
    if local.part.is_some() {
        // A zone's set is that zone alone.
        return Vec::new();
    }
    let walls: Vec<Polygon> = outlines.iter().map(Outline::polygon).collect();
    let holes: Vec<Polygon> =
        openings.iter().map(|o| Polygon::simple(o.outline.clone()).wound()).collect();
    let mut taken: Vec<Polygon> = loops(local, None).into_iter().chain(roofs.to_vec()).collect();
    let mut out = Vec::new();
    for (i, zone) in local.job.zone.iter().enumerate() {
        let drawn = loops(local, Some(i));
        if drawn.is_empty() {
            continue;
        }
        let on_walls = intersection(&union_all(&drawn), &union_all(&walls));
        let shapes: Vec<Polygon> = difference(&on_walls, &union_all(&taken))
            .iter()
            .map(|p| p.map(|q| Point::new(snap(q.x), snap(q.y))))
            .filter(|p| p.area() > NOISE)
            .collect();
        taken.extend(drawn);
        if shapes.is_empty() {
            continue;
        }
        let net = difference(&shapes, &union_all(&holes));
        out.push(DrawnZone {
            id: Default::default(),
            zone: zone.name.clone(),
            cladding: match &zone.product {
                Some(p) => p.kind.key().to_owned(),
                None => zone.cladding.clone(),
            },
            laid: zone.product.is_some(),
            gross: total_area(&shapes),
            net: total_area(&net),
            shapes,
        });
    }
    out
}
