//! Layers that a view is limited to.

use crate::job::layers::wildcard;
use crate::model::linework::Linework;

/// Whether a layer's name matches one of some patterns.
pub(crate) fn on_layers(lines: &Linework, layer: usize, patterns: &[String]) -> bool {
    let Some(l) = lines.layers.get(layer) else { return false };
    let name = l.layer.name.to_lowercase();
    patterns.iter().any(|p| wildcard(&p.to_lowercase(), &name))
}
