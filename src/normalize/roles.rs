//! What each layer means, and what is drawn on layers nobody named.

use std::collections::BTreeMap;

use super::suggest;
use crate::finding::lines::{LayerCount, LineFinding};
use crate::finding::{Finding, Findings};
use crate::geom::vocabulary::Point;
use crate::job::Job;
use crate::model::drawing::{Drawing, Shape, Space};
use crate::model::linework::{LayerUse, Role};
use crate::origin::Origin;

/// Every layer with its role and how much of model space is on it.
pub fn layer_roles(drawing: &Drawing, job: &Job) -> Vec<LayerUse> {
    let mut out: Vec<LayerUse> = drawing
        .layers
        .iter()
        .map(|l| {
            let role = job.role_of(&l.name);
            let speaks_of = if role.is_none() { suggest::opening_by_name(&l.name) } else { None };
            LayerUse { layer: l.clone(), role, speaks_of, items: 0 }
        })
        .collect();
    for item in drawing.items.iter().filter(|i| i.space == Space::Model) {
        if let Some(l) = out.get_mut(item.layer) {
            l.items += 1;
        }
    }
    for left in drawing.left_out.iter().filter(|l| l.space == Space::Model) {
        if let Some(l) = out.get_mut(left.layer) {
            l.items += left.count;
        }
    }
    out
}

/// Points on layers of outlines: a point has no size, so what it stands for is not laid round.
pub(super) fn report_points(drawing: &Drawing, layers: &[LayerUse], findings: &mut Findings) {
    // What is in a block belongs to the block's own outline.
    let loose = drawing.items.iter().filter(|i| i.shown && i.group.is_none());
    let mut found: BTreeMap<usize, Vec<(Point, &Origin)>> = BTreeMap::new();
    for item in loose.filter(|i| i.space == Space::Model) {
        let role = layers.get(item.layer).and_then(|l| l.role);
        if let (Shape::Point(p), true) = (&item.shape, role.is_some_and(Role::is_outline)) {
            found.entry(item.layer).or_default().push((*p, &item.origin));
        }
    }
    for (layer, points) in found {
        let (at, origin) = points[0];
        let layer = layers[layer].layer.name.clone();
        let kind = LineFinding::PointLeftOut { layer, points: points.len() };
        findings.push(Finding::new(kind).at(at).about(origin));
    }
}

/// Layers with geometry that play no role are named, so that nothing is left out unseen.
pub(super) fn report(layers: &[LayerUse], job: &Job, findings: &mut Findings) {
    let unmapped: Vec<LayerCount> =
        layers.iter().filter(|l| l.role.is_none() && l.items > 0).map(LayerCount::from).collect();
    if !unmapped.is_empty() {
        findings.push(Finding::new(LineFinding::LayerUnmapped { layers: unmapped }));
    }
    for l in layers.iter().filter(|l| !l.layer.shown && l.items > 0) {
        let named = job.names_layer(&l.layer.name);
        if job.drawing.hidden_layers || (!named && matches!(l.role, None | Some(Role::Ignore))) {
            continue;
        }
        let (layer, items) = (l.layer.name.clone(), l.items);
        findings.push(Finding::new(LineFinding::LayerHidden { layer, items, read: named }));
    }
}
