//! What groups are called, and marks by which the tree's nodes are found again.

use std::collections::BTreeMap;

use usvg::roxmltree::{Document, Node};

use crate::finding::Refusal;
use crate::finding::drawing::DrawingFinding;
use crate::read::limits::Limits;

/// Elements that get a mark.
const MARKED: [&str; 10] =
    ["g", "path", "line", "polyline", "polygon", "rect", "circle", "ellipse", "text", "use"];

/// A mark's place in the source.
#[derive(Clone, Debug)]
pub(super) struct Named {
    /// The layer: label of the nearest named group, or the element's own id.
    pub(super) layer: String,
    /// Line of the element, from 1.
    pub(super) line: usize,
    /// The element's own id as written.
    pub(super) id: Option<String>,
    /// The element's name.
    pub(super) element: &'static str,
    /// What a text element says.
    pub(super) text: Option<String>,
}

/// Names by mark or id.
pub(super) struct Names(pub(super) BTreeMap<String, Named>);

/// The layer label of a group: what drawing programs write, else its id or class.
fn label(node: Node) -> Option<String> {
    let own = |name: &str| {
        node.attributes().find(|a| a.name() == name).map(|a| a.value().trim().to_owned())
    };
    ["label", "data-name", "id", "class"].into_iter().find_map(own).filter(|t| !t.is_empty())
}

/// The layer of an element: the innermost group with a label round it, an element's own label
/// before that where it is no machine-made one.
fn layer(node: Node) -> String {
    let group = |n: &Node| n.has_tag_name_like("g");
    node.ancestors()
        .filter(|n| group(n) || *n == node)
        .filter(|n| group(n) || n.attributes().any(|a| a.name() == "label" || a.name() == "class"))
        .find_map(label)
        .unwrap_or_else(|| "0".to_owned())
}

/// Names without regard to their namespace's prefix.
trait TagLike {
    fn has_tag_name_like(&self, name: &str) -> bool;
}

impl TagLike for Node<'_, '_> {
    fn has_tag_name_like(&self, name: &str) -> bool {
        self.is_element() && self.tag_name().name() == name
    }
}

fn mark(i: usize) -> String {
    format!("mark-{i}")
}

/// The text of a text element with its parts joined.
fn words(node: Node) -> Option<String> {
    node.has_tag_name_like("text").then(|| {
        let all = node.descendants().filter(Node::is_text).filter_map(|t| t.text());
        all.collect::<Vec<_>>().join(" ").split_whitespace().collect::<Vec<_>>().join(" ")
    })
}

fn marked_nodes<'a>(
    xml: &'a Document<'a>,
) -> impl Iterator<Item = (usize, Node<'a, 'a>, &'static str)> {
    xml.descendants()
        .filter(Node::is_element)
        .enumerate()
        .filter_map(|(i, n)| MARKED.iter().find(|m| **m == n.tag_name().name()).map(|m| (i, n, *m)))
}

impl Names {
    pub(super) fn of(xml: &Document) -> Self {
        let mut out = BTreeMap::new();
        for (i, node, element) in marked_nodes(xml) {
            let id = node.attribute("id").map(str::to_owned);
            let line = xml.text_pos_at(node.range().start).row as usize;
            let named =
                Named { layer: layer(node), line, id: id.clone(), element, text: words(node) };
            out.insert(id.unwrap_or_else(|| mark(i)), named);
        }
        Names(out)
    }
}

/// The source with an id on every drawn element that lacks one.
pub(super) fn marked(xml: &Document, text: &str) -> String {
    let mut out = String::with_capacity(text.len() + text.len() / 8);
    let mut done = 0;
    for (i, node, element) in marked_nodes(xml) {
        let start = node.range().start;
        // Elements made by entities stand elsewhere in the text, or nowhere.
        let Some(tag) = text.get(start..).filter(|t| t.starts_with('<')) else { continue };
        if node.attribute("id").is_some() || start < done {
            continue;
        }
        let name_ends = tag
            .find(|c: char| c.is_whitespace() || c == '>' || c == '/')
            .filter(|e| tag[..*e].ends_with(element));
        if let Some(e) = name_ends {
            out.push_str(&text[done..start + e]);
            out.push_str(&format!(" id=\"{}\"", mark(i)));
            done = start + e;
        }
    }
    out.push_str(&text[done..]);
    out
}

/// Refuses uses of uses that multiply beyond the limits, and nesting that would exhaust the stack.
pub(super) fn within_limits<'a>(xml: &'a Document<'a>, limits: &Limits) -> Result<(), Refusal> {
    let ids: BTreeMap<&str, Node<'a, 'a>> =
        xml.descendants().filter_map(|n| n.attribute("id").map(|i| (i, n))).collect();
    let mut known: BTreeMap<usize, u64> = BTreeMap::new();
    let deepest = xml.descendants().map(|n| n.ancestors().take(DEEPEST + 1).count()).max();
    let most = limits.elements as u64;
    let size = size_of(xml.root_element(), &ids, &mut known, 0);
    let over = deepest.unwrap_or(0) > DEEPEST || size.is_none_or(|s| s > most);
    if over { Err(too_big(limits)) } else { Ok(()) }
}

/// Most levels of elements in elements.
const DEEPEST: usize = 400;

pub(super) fn too_big(limits: &Limits) -> Refusal {
    let (most_elements, most_levels) = (limits.elements, DEEPEST);
    Refusal::new(DrawingFinding::SvgTooBig { most_elements, most_levels })
}

/// Elements that a node brings, uses and clips counted out; `None` where uses go round or too deep.
fn size_of<'a>(
    node: Node<'a, 'a>,
    ids: &BTreeMap<&'a str, Node<'a, 'a>>,
    known: &mut BTreeMap<usize, u64>,
    depth: usize,
) -> Option<u64> {
    const DEEPEST_USE: usize = 64;
    let mut total = 0u64;
    for n in node.descendants().filter(Node::is_element) {
        total = total.saturating_add(1);
        for target in targets(n).filter_map(|id| ids.get(id)) {
            if depth > DEEPEST_USE {
                return None;
            }
            let key = target.id().get_usize();
            let more = match known.get(&key) {
                Some(s) => *s,
                None => {
                    let s = size_of(*target, ids, known, depth + 1)?;
                    known.insert(key, s);
                    s
                }
            };
            total = total.saturating_add(more);
        }
    }
    Some(total)
}

/// What an element brings beside what it holds: what it uses, and what it is clipped, masked or filled
/// by, which the resolver follows as well.
fn targets<'a>(node: Node<'a, 'a>) -> impl Iterator<Item = &'a str> {
    let used = node.tag_name().name() == "use";
    node.attributes().flat_map(move |a| {
        let href = (used && a.name() == "href").then(|| a.value().strip_prefix('#')).flatten();
        let urls = a.value().split("url(").skip(1).filter_map(|u| {
            let u = u.trim_start_matches([' ', '"', '\'']).strip_prefix('#')?;
            u.split([')', '"', '\'', ' ']).next()
        });
        href.into_iter().chain(urls)
    })
}
