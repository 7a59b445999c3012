//! What each layer means, and what is drawn on layers nobody named.

use crate::diag::{Note, Notes, Refusal};
use crate::job::Job;
use crate::model::drawing::{Drawing, Shape, Space};
use crate::model::linework::{LayerUse, Linework, Role};

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

/// Layers with geometry that play no role are named, so that nothing is left out unseen.
pub(super) fn report(layers: &[LayerUse], notes: &mut Notes) {
    let strange: Vec<String> = layers
        .iter()
        .filter(|l| l.role.is_none() && l.items > 0)
        .map(|l| format!("{} ({} items)", l.layer.name, l.items))
        .collect();
    if !strange.is_empty() {
        let message =
            format!("layers without a role, left out of the layout: {}", strange.join(", "));
        let help = "If one holds walls or openings, name it under [layers] in the job file.";
        notes.push(Note::info("layer-unmapped", message, help));
    }
    for l in layers.iter().filter(|l| l.role.is_some_and(|r| r != Role::Ignore)) {
        if !l.layer.shown && l.items > 0 {
            let message = format!(
                "layer {} is off or frozen; its {} items are left out",
                l.layer.name, l.items
            );
            let help = "Thaw it in the drawing, or set `hidden_layers = true` under [drawing].";
            notes.push(Note::info("layer-hidden", message, help));
        }
    }
}

/// Refuses a drawing with nothing on its wall layers.
pub(super) fn demand_walls(lines: &Linework, job: &Job) -> Result<(), Refusal> {
    if lines.strokes.iter().any(|s| s.role == Some(Role::Wall)) {
        return Ok(());
    }
    let found: Vec<String> = lines
        .layers
        .iter()
        .filter(|l| l.items > 0)
        .take(30)
        .map(|l| format!("{} ({})", l.layer.name, l.items))
        .collect();
    let found =
        if found.is_empty() { "none with anything on it".to_owned() } else { found.join(", ") };
    let message = format!(
        "nothing to side: no line is drawn on a wall layer ({}). Layers found: {found}",
        job.patterns(Role::Wall).join(", ")
    );
    let help = "Draw each wall as a closed outline on A-WALL-OTLN, or name the layer that holds the outlines as `wall` under [layers] in the job file.";
    Err(Note::error("no-walls", message, help).into())
}

/// Whether a shape is geometry rather than text or a dimension.
pub fn is_geometry(shape: &Shape) -> bool {
    !matches!(shape, Shape::Text(_) | Shape::Dimension(_) | Shape::Point(_))
}
