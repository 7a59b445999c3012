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

/// What ids of our own begin with.
const MARK: &str = "lapwright-mark-";

/// Elements in the order of the source, found by the ids under which they are handed to the resolver.
#[derive(Debug, Default)]
pub(super) struct Names {
    pub(super) all: Vec<Named>,
    /// Places of those with an id of their own; a mark tells its place itself.
    own: BTreeMap<String, usize>,
}

impl Names {
    /// Adds an element; the id it is handed on under: its own, or a mark.
    pub(super) fn add(&mut self, own: Option<&str>, named: Named) -> String {
        let at = self.all.len();
        self.all.push(named);
        match own {
            Some(id) => {
                self.own.insert(id.to_owned(), at);
                id.to_owned()
            }
            None => format!("{MARK}{at}"),
        }
    }

    /// The place of the element with an id.
    pub(super) fn found(&self, id: &str) -> Option<usize> {
        match id.strip_prefix(MARK) {
            Some(at) => at.parse().ok().filter(|at| *at < self.all.len()),
            None => self.own.get(id).copied(),
        }
    }
}

/// Whether an id may stay as it is: no mark is meant by it.
pub(super) fn is_free(id: &str) -> bool {
    !id.is_empty() && !id.starts_with(MARK)
}

/// Elements that are found again.
const FOUND: [&str; 10] =
    ["g", "path", "line", "polyline", "polygon", "rect", "circle", "ellipse", "text", "use"];

/// Whether an element is one that is found again, by the name it has in the source.
pub(super) fn found_again(name: &str) -> Option<&'static str> {
    FOUND.into_iter().find(|f| *f == name)
}

/// What the elements in an element are named by.
#[derive(Clone, Debug)]
pub(super) struct LayerName {
    pub(super) name: Arc<str>,
    /// A group bears it, and not because a program had to call the group something.
    pub(super) given: bool,
}

impl LayerName {
    /// What is in no group with a name.
    pub(super) fn none() -> Self {
        LayerName { name: Arc::from("0"), given: false }
    }
}

/// The layer that an element names, and whether it is a group that was given a name: what drawing
/// programs write of it, or its id. Layers are groups: a class, which names a style as a rule, and what
/// another element is labeled as name a layer only where no group round them is named. Programs that draw
/// from a model of a building give each element an id of its own and name its sort, a word of ISO 16739, as a
/// class: that is the layer.
pub(super) fn layer_label<'a>(node: &Node<'a, '_>, within: &LayerName) -> Option<(&'a str, bool)> {
    let own = |name: &str| {
        let mut all = node.attributes().filter(|a| a.name() == name);
        all.next().map(|a| a.value().trim()).filter(|t| !t.is_empty())
    };
    if let Some(sort) = own("class").and_then(sort_of_part) {
        return Some((sort, true));
    }
    let group = node.tag_name().name() == "g";
    let id = own("id").filter(|_| group);
    let given = || own("label").or_else(|| own("data-name")).or(id.filter(|id| !is_made_up(id)));
    if let Some(name) = group.then(given).flatten() {
        return Some((name, true));
    }
    // The id of another element is its program's.
    let named = || own("label").or_else(|| own("class")).or(id);
    // What such a program calls its groups by a class, what stands in them does not call otherwise.
    let by_class = id.is_some_and(has_uuid) && own("class").is_some();
    if within.given { None } else { named().map(|name| (name, by_class)) }
}

/// The sort of a part of a building among classes: `IfcWall`, `IfcWindow`.
fn sort_of_part(classes: &str) -> Option<&str> {
    classes.split_whitespace().find(|c| {
        let rest = c.strip_prefix("Ifc").unwrap_or_default();
        rest.starts_with(|c: char| c.is_ascii_uppercase())
            && rest.bytes().all(|b| b.is_ascii_alphanumeric())
    })
}

/// Words that programs put before a number to call a group without a name, from memory.
const COUNTED: [&str; 3] = ["g", "surface", "page"];

/// Whether an id is one that a program gives a group without a name: a word and a number, or a number that
/// the whole world has once.
pub(super) fn is_made_up(id: &str) -> bool {
    let counted = COUNTED.iter().filter_map(|word| id.strip_prefix(word));
    let mut rest = counted.map(|r| r.trim_start_matches(['-', '_']));
    rest.any(|r| r.bytes().all(|b| b.is_ascii_digit())) || has_uuid(id)
}

/// Whether 32 digits of base 16 stand together in a text, with dashes after 8, 12, 16 and 20 of them or none:
/// a universally unique identifier (RFC 9562).
fn has_uuid(id: &str) -> bool {
    const GROUPS: [usize; 5] = [8, 4, 4, 4, 12];
    let digits = |part: &[u8]| part.iter().all(u8::is_ascii_hexdigit);
    let bytes = id.as_bytes();
    let plain = || bytes.windows(32).any(digits);
    let dashed = || {
        bytes.windows(36).any(|w| {
            let mut parts = w.split(|b| *b == b'-');
            GROUPS.iter().all(|n| parts.next().is_some_and(|p| p.len() == *n && digits(p)))
        })
    };
    plain() || dashed()
}

/// The text of a text element with its parts joined.
pub(super) fn words(node: &Node) -> String {
    let all = node.descendants().filter(Node::is_text).filter_map(|t| t.text());
    all.flat_map(str::split_whitespace).collect::<Vec<_>>().join(" ")
}
