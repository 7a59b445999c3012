//! What drawn elements are called, and where they stand, by the ids under which the resolver gives them
//! back.

use std::collections::BTreeMap;
use std::sync::Arc;

use usvg::roxmltree::Node;

use crate::geom::vocabulary::Rect;
use crate::model::unused::Unused;

/// An element of the source.
#[derive(Clone, Debug)]
pub(super) struct Named {
    /// The layer: label of the nearest named group, or the element's own.
    pub(super) layer: Arc<str>,
    /// Line of the element, from 1.
    pub(super) line: usize,
    /// The element's own id as written.
    pub(super) id: Option<Box<str>>,
    /// The element's name.
    pub(super) element: &'static str,
    /// What a text element says.
    pub(super) text: Option<String>,
    /// Why nothing of it shows, where the resolver gives nothing; none where nothing is due.
    pub(super) unseen: Option<Unused>,
    /// The box it is clipped to, in its own coordinates.
    pub(super) clip: Option<Box<Rect>>,
}

/// Names by the ids of what is handed to the resolver.
pub(super) type Names = BTreeMap<String, Named>;

/// Elements that are found again.
const FOUND: [&str; 10] =
    ["g", "path", "line", "polyline", "polygon", "rect", "circle", "ellipse", "text", "use"];

/// Whether an element is one that is found again, by the name it has in the source.
pub(super) fn found_again(name: &str) -> Option<&'static str> {
    FOUND.into_iter().find(|f| *f == name)
}

/// The layer label of an element: what drawing programs write, else its id or class.
fn label<'a>(node: &Node<'a, '_>) -> Option<&'a str> {
    let own = |name: &str| node.attributes().find(|a| a.name() == name).map(|a| a.value().trim());
    ["label", "data-name", "id", "class"].into_iter().find_map(own).filter(|t| !t.is_empty())
}

/// The label of an element that names a layer: of a group, or of another element that has one that is no
/// machine-made id.
pub(super) fn layer_label<'a>(node: &Node<'a, '_>) -> Option<&'a str> {
    let group = node.tag_name().name() == "g";
    let named = group || node.attributes().any(|a| matches!(a.name(), "label" | "class"));
    if named { label(node) } else { None }
}

/// The text of a text element with its parts joined.
pub(super) fn words(node: &Node) -> String {
    let all = node.descendants().filter(Node::is_text).filter_map(|t| t.text());
    all.flat_map(str::split_whitespace).collect::<Vec<_>>().join(" ")
}
