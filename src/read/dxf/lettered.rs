//! What the pictures of dimensions say: their blocks hold the text as it was plotted.

use std::collections::BTreeMap;

use super::expand::{Block, Body, Raw};
use crate::model::drawing::Shape;

/// Gives each dimension the text of its picture, where that holds one.
pub(super) fn read(raws: &mut [Raw], blocks: &BTreeMap<String, Block>) {
    for raw in raws {
        if let Body::Shape(Shape::Dimension(d)) = &mut raw.body {
            let picture = d.picture.as_ref().and_then(|name| blocks.get(&name.to_uppercase()));
            d.lettered = picture.and_then(only_text);
        }
    }
}

/// The text of a block that holds one.
fn only_text(block: &Block) -> Option<String> {
    let texts = block.raws.iter().filter_map(|raw| match &raw.body {
        Body::Shape(Shape::Text(t)) => Some(t.content.trim()),
        _ => None,
    });
    let mut texts = texts.filter(|t| !t.is_empty());
    let first = texts.next();
    first.filter(|_| texts.next().is_none()).map(str::to_owned)
}
