//! Pens in place of layers, where no group and no class names any.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::names::is_made_up;
use crate::model::drawing::{Drawing, Ink, Layer, Pen, Shape};
use crate::read::pens;

/// The layer of what is in no group with a name.
const UNNAMED: &str = "0";
/// The layer of words.
const WORDS: &str = "text";
/// Steps of a width to the unit of the drawing.
pub(super) const STEPS: f32 = 1000.0;

/// Gives each pen of a drawing a layer by its name, where the drawing names none and has several.
pub(super) fn as_layers(out: &mut Drawing) {
    if out.layers.iter().any(|l| l.name != UNNAMED && !is_made_up(&l.name)) {
        return;
    }
    let is_text = |shape: &Shape| matches!(shape, Shape::Text(_));
    let mut drawn = out.items.iter().filter(|i| !is_text(&i.shape)).map(|i| i.ink);
    let first = drawn.next();
    if drawn.all(|ink| Some(ink) == first) {
        return;
    }
    // What does not show has no pen.
    let mut layers: Vec<Layer> =
        if out.left_out.is_empty() && out.groups.is_empty() { vec![] } else { out.layers.clone() };
    let mut known: BTreeMap<String, usize> = BTreeMap::new();
    for item in &mut out.items {
        let name = if is_text(&item.shape) { WORDS.to_owned() } else { name(item.ink) };
        item.layer = *known.entry(name).or_insert_with_key(|name| {
            let (name, shown, pen) = (name.clone(), true, Pen::default());
            layers.push(Layer { name, shown, pen });
            layers.len() - 1
        });
        item.origin.layer = Arc::from(layers[item.layer].name.as_str());
    }
    out.layers = layers;
}

/// The name of a pen; widths are in the units of the drawing.
fn name(ink: Ink) -> String {
    // What is painted with more than one color has none; as in a print, it is taken for gray.
    let [_, r, g, b] = ink.color.checked_sub(1).map_or([0, 128, 128, 128], u32::to_be_bytes);
    let width = (ink.weight > 0).then(|| (f64::from(ink.weight) / f64::from(STEPS), ""));
    pens::name(width, [r, g, b])
}
