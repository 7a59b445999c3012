//! Parts of sentences that several findings share.

use crate::finding::Finding;
use crate::finding::lines::LayerCount;
use crate::language::Language;
use crate::wording::lists::first_in;

/// ` on layer A-WALL`, where the finding is about an entity.
pub(super) fn on_layer(finding: &Finding) -> String {
    finding.origin.as_ref().map_or(String::new(), |o| format!(" on layer {}", o.layer))
}

/// `Front, `, where the finding is in an elevation.
pub(super) fn elevation(finding: &Finding) -> String {
    finding.elevation.as_ref().map_or(String::new(), |e| format!("{e}, "))
}

/// Names with commas between.
pub(super) fn listed<T: AsRef<str>>(names: impl IntoIterator<Item = T>) -> String {
    let names: Vec<T> = names.into_iter().collect();
    if names.is_empty() {
        return "none".to_owned();
    }
    names.iter().map(AsRef::as_ref).collect::<Vec<&str>>().join(", ")
}

/// The first of many names, and how many more there are.
pub(super) fn first_of(names: &[String], most: usize) -> String {
    first_in(Language::English, names, most)
}

/// Most layers that one finding lists: a drawing of 19,000 would make a cover of 22 pages.
const LAYERS_LISTED: usize = 40;

/// Layers as `each` writes them: the fullest where they are too many to read, in the drawing's order.
pub(super) fn fullest_layers(
    layers: &[LayerCount],
    each: impl Fn(&LayerCount) -> String,
) -> String {
    let mut by_items: Vec<usize> = (0..layers.len()).collect();
    by_items.sort_by_key(|i| (std::cmp::Reverse(layers[*i].items), *i));
    by_items.truncate(LAYERS_LISTED);
    by_items.sort_unstable();
    let listed = by_items.iter().map(|i| each(&layers[*i])).collect::<Vec<_>>().join(", ");
    match layers.len() - by_items.len() {
        0 => listed,
        more => format!("{listed} and {more} more, which `lapwright layers` lists"),
    }
}

/// A dotted key as the job file writes it: the key, and the table it stands in.
pub(super) fn spoken(key: &str) -> String {
    match key.rsplit_once('.') {
        Some((table, key)) => format!("`{key}` in [{table}]"),
        None => format!("`{key}`"),
    }
}

/// A plain number as a person writes it: no more decimals than it has, six at most.
pub(super) fn number(value: f64) -> String {
    if !value.is_finite() {
        return "beyond all numbers".to_owned();
    }
    let text = format!("{value:.6}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}
