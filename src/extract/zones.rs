//! Parts of walls with another cladding, measured.

use super::Local;
use super::ways::Outline;
use crate::geom::boolean::{difference, intersection, union_all};
use crate::geom::polygon::{Polygon, total_area};
use crate::geom::tol::snap;
use crate::geom::vocabulary::Point;
use crate::model::house::{Opening, ZoneArea};
use crate::model::linework::{Role, Stroke};

/// Parts smaller than this, square inches, are drawing noise.
const NOISE: f64 = 24.0;

/// The zone of a stroke, by its layer.
fn zone_of(local: &Local, s: &Stroke) -> Option<usize> {
    let layer = local.lines.layers.get(s.layer)?;
    local.job.zone_of(&layer.layer.name)
}

/// Closed outlines on the layers of a zone; of bare areas for `None`.
pub(super) fn loops(local: &Local, zone: Option<usize>) -> Vec<Polygon> {
    local
        .strokes(Role::Bare)
        .filter(|s| s.closed && s.points.len() >= 3 && zone_of(local, s) == zone)
        .map(|s| Polygon::simple(local.ring(s)).wound())
        .collect()
}

/// What each zone covers of the walls of a view, less what is bare or hidden in it; where zones
/// overlap the first has it.
pub(super) fn areas(
    local: &Local,
    outlines: &[Outline],
    openings: &[Opening],
    roofs: &[Polygon],
) -> Vec<ZoneArea> {
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
        out.push(ZoneArea {
            id: String::new(),
            zone: zone.name.clone(),
            cladding: zone.cladding.clone(),
            gross: total_area(&shapes),
            net: total_area(&net),
            shapes,
        });
    }
    out
}
