//! What each layer means, and what is drawn on layers nobody named.

use std::collections::BTreeMap;

use crate::diag::{Note, Notes, Origin};
use crate::geom::vocabulary::Point;
use crate::job::Job;
use crate::model::drawing::{Drawing, Shape, Space};
use crate::model::linework::{LayerUse, Role};
use crate::units::counted;

/// Every layer with its role and how much of model space is on it.
pub fn layer_roles(drawing: &Drawing, job: &Job) -> Vec<LayerUse> {
    let mut out: Vec<LayerUse> = drawing
        .layers
        .iter()
        .map(|l| LayerUse { layer: l.clone(), role: job.role_of(&l.name), items: 0 })
        .collect();
    for item in drawing.items.iter().filter(|i| i.space == Space::Model) {
        if let Some(l) = out.get_mut(item.layer) {
            l.items += 1;
        }
    }
    out
}

/// Points on layers of outlines: a point has no size, so what it stands for is not laid round.
pub(super) fn report_points(drawing: &Drawing, layers: &[LayerUse], notes: &mut Notes) {
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
        let (count, (at, origin)) = (counted(points.len(), "point"), points[0]);
        let name = &layers[layer].layer.name;
        let message = format!("{count} on layer {name} left out: a point has no size");
        let help = "Draw what it stands for as a block or a closed outline.";
        notes.push(Note::warning("point-left-out", message, help).at(at).about(origin));
    }
}

/// Layers with geometry that play no role are named, so that nothing is left out unseen.
pub(super) fn report(layers: &[LayerUse], job: &Job, notes: &mut Notes) {
    let strange: Vec<String> = layers
        .iter()
        .filter(|l| l.role.is_none() && l.items > 0)
        .map(|l| format!("{} ({})", l.layer.name, counted(l.items, "item")))
        .collect();
    if !strange.is_empty() {
        let message =
            format!("layers without a role, left out of the layout: {}", strange.join(", "));
        let help = "If one holds walls or openings, name it under [layers] in the job file.";
        notes.push(Note::info("layer-unmapped", message, help));
    }
    for l in layers.iter().filter(|l| !l.layer.shown && l.items > 0) {
        let named = job.names_layer(&l.layer.name);
        if job.drawing.hidden_layers || (!named && matches!(l.role, None | Some(Role::Ignore))) {
            continue;
        }
        let (name, items) = (&l.layer.name, counted(l.items, "item"));
        let (message, help) = if named {
            (
                format!("layer {name} is off or frozen; the job names it and has its {items} read"),
                "Take it out of the job file if it shall stay out.",
            )
        } else {
            (
                format!("layer {name} is off or frozen; left out: {items}"),
                "Thaw it in the drawing, name it in the job file, or set `hidden_layers = true` under [drawing].",
            )
        };
        notes.push(Note::info("layer-hidden", message, help));
    }
}
