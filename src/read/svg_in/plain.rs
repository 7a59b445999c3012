//! The source written anew for the resolver: what is kept of it, each drawn element under an id by which
//! it is found again.

use std::collections::BTreeMap;
use std::sync::Arc;

use usvg::roxmltree::{Attribute, Document, Node};

use super::budget::{ids, target};
use super::css::{as_attributes, parts, tamed, without_pens};
use super::escape::{SET_APART, escaped, written};
use super::excess::LETTERS_OF_TEXT;
use super::faults::{Faults, Place};
use super::kept::{Kept, keeps, kept};
use super::lines::Lines;
use super::names::{LayerName, Named, Names, found_again, is_free, layer_label, words};
use super::numbers;
use super::shown::{Around, Left, clip, drawn_in};
use crate::finding::drawing::{DrawingFinding, Named as NamedKind};
use crate::finding::{Findings, Refusal};
use crate::model::unused::Unused;
use crate::read::limits::Limits;

/// Most elements left out that are kept one by one.
const MOST_LEFT: usize = 100_000;
/// Letters of an id or a label that are told where it is too long.
const SHOWN: usize = 40;

/// Text for the resolver, and what its ids stand for.
pub(super) struct Plain {
    pub(super) text: String,
    pub(super) names: Names,
    /// What is not in it.
    pub(super) left: Vec<Left>,
}

struct Writer<'a, 'n> {
    out: Plain,
    ids: BTreeMap<&'a str, Node<'a, 'a>>,
    lines: &'n Lines,
    limits: &'n Limits,
    faults: Faults,
    /// A style sheet asks for attributes: all are kept.
    all: bool,
    /// Whether there is no style sheet, over which a style of an element goes and its attributes do not.
    unstyled: bool,
    /// Letters of the text at hand that are still handed on.
    letters: usize,
}

/// The style sheets of a document, one behind another.
pub(super) fn sheet(xml: &Document) -> String {
    let mut out = String::new();
    let sheets = xml.descendants().filter(|n| n.is_element() && n.tag_name().name() == "style");
    for node in sheets.filter(|n| n.attribute("type").is_none_or(|t| t == "text/css")) {
        node.children().filter_map(|n| n.text()).for_each(|t| out.push_str(t));
        out.push('\n');
    }
    super::css::without_comments(&out)
}

/// Writes a document anew.
///
/// # Errors
/// `name-too-long` for an id or a label that is longer than any name.
pub(super) fn plain(
    xml: &Document,
    sheet: &str,
    lines: &Lines,
    limits: &Limits,
    findings: &mut Findings,
) -> Result<Plain, Refusal> {
    let out = Plain {
        text: String::with_capacity(xml.input_text().len()),
        names: Names::default(),
        left: Vec::new(),
    };
    let mut writer = Writer {
        out,
        ids: ids(xml),
        lines,
        limits,
        faults: Faults::default(),
        all: sheet.contains('['),
        unstyled: sheet.trim().is_empty(),
        letters: 0,
    };
    writer.root(xml.root_element(), sheet)?;
    writer.faults.tell(limits, findings);
    Ok(writer.out)
}

impl<'a> Writer<'a, '_> {
    fn root(&mut self, root: Node<'a, 'a>, sheet: &str) -> Result<(), Refusal> {
        self.open(root, "svg", None);
        self.out.text.push_str(" xmlns=\"http://www.w3.org/2000/svg\">");
        if !sheet.trim().is_empty() {
            for part in parts(&tamed(sheet)) {
                self.out.text.push_str("<style>");
                escaped(part, &mut self.out.text);
                self.out.text.push_str("</style>");
            }
        }
        self.children(root, &LayerName::none(), Around::default())?;
        self.out.text.push_str("</svg>");
        Ok(())
    }

    fn children(
        &mut self,
        node: Node<'a, 'a>,
        layer: &LayerName,
        around: Around,
    ) -> Result<(), Refusal> {
        let within_text = self.letters > 0;
        for child in node.children() {
            if child.is_element() {
                self.element(child, layer, around)?;
            } else if let (true, Some(text)) =
                (within_text, child.text().filter(|_| child.is_text()))
            {
                let end = text.char_indices().nth(self.letters).map_or(text.len(), |(i, _)| i);
                self.letters = self.letters.saturating_sub(text[..end].chars().count());
                escaped(&text[..end], &mut self.out.text);
            }
        }
        Ok(())
    }

    fn element(
        &mut self,
        node: Node<'a, 'a>,
        layer: &LayerName,
        around: Around,
    ) -> Result<(), Refusal> {
        let name = match kept(&node) {
            Kept::Nothing => return Ok(()),
            Kept::Skipped(name) => {
                self.faults.skipped(name, self.line(&node));
                let own = self.layer(&node, layer)?;
                self.leave(&node, own.name, around, Unused::NotRead { entity: name.to_owned() }, 1);
                return Ok(());
            }
            Kept::Unseen => "defs",
            Kept::As(name) => name,
        };
        let outermost = name == "text" && self.letters == 0;
        // What stands in a text behind its letters that are measured is left out.
        if name == "tspan" && self.letters == 0 {
            return Ok(());
        }
        let own = self.layer(&node, layer)?;
        let id = self.id(&node, &own.name, outermost, around)?;
        if self.faulty(&node, &own.name) {
            let named = id.as_ref().and_then(|id| self.out.names.found(id));
            match named.and_then(|n| self.out.names.all[n].unseen.as_mut()) {
                Some(why) => *why = Unused::Unreadable,
                None => {
                    self.leave(&node, own.name, around, Unused::Unreadable, drawn_in(&node));
                }
            }
            return Ok(());
        }
        if outermost {
            self.letters = LETTERS_OF_TEXT;
        }
        self.open(node, name, id);
        self.out.text.push('>');
        self.children(node, &own, around.within(&node, name))?;
        self.out.text.push_str("</");
        self.out.text.push_str(name);
        self.out.text.push('>');
        if outermost {
            self.letters = 0;
        }
        Ok(())
    }

    /// What a `use` names and the source does not hold.
    fn missing(&self, node: &Node<'a, 'a>) -> Option<&'a str> {
        let used = target(node).filter(|_| node.tag_name().name() == "use")?;
        (!self.ids.contains_key(used)).then_some(used)
    }

    /// Keeps what is not handed to the resolver.
    fn leave(
        &mut self,
        node: &Node<'a, 'a>,
        layer: Arc<str>,
        around: Around,
        why: Unused,
        count: usize,
    ) {
        if around.defined || count == 0 || self.out.left.len() >= MOST_LEFT {
            return;
        }
        let why = if around.hidden { Unused::HiddenLayer } else { why };
        let (line, id) = (self.line(node), node.attribute("id").map(Box::from));
        self.out.left.push(Left { layer, line, id, why, count });
    }

    fn line(&self, node: &Node) -> usize {
        self.lines.at(node.range().start)
    }

    /// The layer of an element: its own, or that of the group it is in.
    fn layer(&self, node: &Node<'a, 'a>, outer: &LayerName) -> Result<LayerName, Refusal> {
        let Some((label, given)) = layer_label(node, outer) else { return Ok(outer.clone()) };
        self.short(NamedKind::Layer, label, node)?;
        Ok(LayerName { name: Arc::from(label), given })
    }

    fn short(&self, of: NamedKind, text: &str, node: &Node) -> Result<(), Refusal> {
        let most = self.limits.name;
        if text.len() <= most || text.chars().nth(most).is_none() {
            return Ok(());
        }
        let begins = text.chars().take(SHOWN).collect();
        let (letters, line) = (text.chars().count(), self.line(node));
        Err(Refusal::new(DrawingFinding::NameTooLong { of, begins, letters, most, line }))
    }

    /// The id an element is written with: its own, or a mark where it has none or is not the first with
    /// it.
    fn id(
        &mut self,
        node: &Node<'a, 'a>,
        layer: &Arc<str>,
        outermost: bool,
        around: Around,
    ) -> Result<Option<String>, Refusal> {
        let own = node.attribute("id");
        if let Some(id) = own {
            self.short(NamedKind::Element, id, node)?;
        }
        let first =
            own.filter(|id| is_free(id) && self.ids.get(id).is_some_and(|n| n.id() == node.id()));
        let Some(element) = found_again(node.tag_name().name()) else {
            return Ok(first.map(str::to_owned));
        };
        let named = Named {
            layer: layer.clone(),
            line: self.line(node),
            id: own.map(Box::from),
            element,
            text: outermost.then(|| words(node)),
            unseen: around.unseen(node, self.missing(node)),
            clip: clip(node, &self.ids),
        };
        Ok(Some(self.out.names.add(first, named)))
    }

    /// Whether a number of an element cannot be read, or lies too far away: it is then left out, and told.
    fn faulty(&mut self, node: &Node<'a, 'a>, layer: &Arc<str>) -> bool {
        let farthest = self.limits.coordinate;
        for a in node.attributes().filter(|a| a.namespace().is_none()) {
            let fault = match a.name() {
                "d" => numbers::path(a.value(), farthest).err(),
                "points" => numbers::points(a.value(), farthest).err(),
                "transform" => numbers::transform(a.value(), farthest).err(),
                "viewBox" => numbers::list(a.value(), farthest).err(),
                "x" | "y" | "x1" | "y1" | "x2" | "y2" | "cx" | "cy" | "r" | "rx" | "ry"
                | "width" | "height" | "dx" | "dy" => numbers::lengths(a.value(), farthest).err(),
                _ => None,
            };
            if let Some(fault) = fault {
                let place = Place {
                    element: node.tag_name().name(),
                    attribute: a.name(),
                    line: self.line(node),
                    id: node.attribute("id"),
                    layer,
                };
                self.faults.found(fault, &place);
                return true;
            }
        }
        false
    }

    /// A start tag up to where it ends.
    fn open(&mut self, node: Node<'a, 'a>, name: &str, id: Option<String>) {
        self.out.text.push('<');
        self.out.text.push_str(name);
        if let Some(id) = &id {
            self.attribute("id", id);
        }
        if name == "defs" {
            return;
        }
        if name == "use"
            && let Some(used) = target(&node)
        {
            self.attribute("href", &format!("#{used}"));
        }
        let words = matches!(name, "text" | "tspan");
        let style = node.attribute("style").map(|s| without_pens(tamed(s)));
        let pairs = style.as_deref().filter(|_| self.unstyled).and_then(as_attributes);
        let pairs = pairs.unwrap_or_default();
        for (name, value) in &pairs {
            self.attribute(name, value);
        }
        for a in node.attributes() {
            let given = |name: &str| a.namespace().is_none() && name == a.name();
            if !pairs.is_empty() && (given("style") || pairs.iter().any(|p| given(p.0))) {
                continue;
            }
            if self.kept(&a) {
                let value = match a.name() {
                    "fill" | "stroke" if a.value().contains("url(") => "black",
                    // A letter or two tells where a text stands; each with a place of its own would be
                    // shaped for itself.
                    "x" | "y" | "dx" | "dy" | "rotate" if words => numbers::first(a.value()),
                    "style" => style.as_deref().unwrap_or_default(),
                    _ => a.value(),
                };
                self.attribute(written(&a), value);
            }
        }
    }

    fn kept(&self, a: &Attribute) -> bool {
        let name = a.name();
        match a.namespace() {
            None => {
                let asked = self.all && !SET_APART.iter().any(|s| name.starts_with(s));
                name != "id" && name != "href" && (keeps(name) || asked)
            }
            // `xml:space`
            Some(_) => name == "space",
        }
    }

    fn attribute(&mut self, name: &str, value: &str) {
        self.out.text.push(' ');
        self.out.text.push_str(name);
        self.out.text.push_str("=\"");
        escaped(value, &mut self.out.text);
        self.out.text.push('"');
    }
}
