//! What an SVG asks of the resolver, counted in the XML tree with uses followed: elements, levels,
//! points, letters, comparisons of styles. The resolver makes all of it before anything can be counted.

use std::collections::BTreeMap;

use usvg::roxmltree::{Document, Node};

use super::css;
use super::excess::{LETTERS, LETTERS_OF_ATTRIBUTES, LETTERS_OF_TEXT, LEVELS, STYLES, refused};
use super::kept::{Kept, kept};
use super::lines::Lines;
use crate::finding::Refusal;
use crate::finding::drawing::{DrawingFinding, SvgExcess};
use crate::read::limits::Limits;

/// Elements that a text costs as many as: it is shaped, and its letters are set one by one.
const OF_TEXT: usize = 8;
/// Points that are kept in as much room as one of the resolver's: it has each several times over.
const OF_POINT: usize = 4;

/// The resolver goes back to the beginning of a style for every declaration it reads: so many letters,
/// squared, take as long as a comparison.
const OF_STYLE: usize = 64;

/// What a node brings with all that is in it and that it uses.
#[derive(Clone, Copy, Default)]
struct Weight {
    elements: usize,
    points: usize,
    /// Letters of attributes.
    attributes: usize,
    /// Letters of texts.
    letters: usize,
    /// What reading style attributes takes, in comparisons.
    styles: usize,
    /// Letters of classes, which every rule for a class goes through.
    classes: usize,
    /// Levels below it.
    height: usize,
}

impl Weight {
    fn add(&mut self, other: Weight) {
        self.elements = self.elements.saturating_add(other.elements);
        self.points = self.points.saturating_add(other.points);
        self.attributes = self.attributes.saturating_add(other.attributes);
        self.letters = self.letters.saturating_add(other.letters);
        self.classes = self.classes.saturating_add(other.classes);
        self.styles = self.styles.saturating_add(other.styles);
        self.height = self.height.max(other.height + 1);
    }
}

/// Refuses what would be drawn for hours, or fill the memory, with the first place of it.
pub(super) fn within<'a>(
    xml: &'a Document<'a>,
    sheet: &str,
    lines: &Lines,
    limits: &Limits,
) -> Result<(), Refusal> {
    let mut scale = Scale { ids: ids(xml), known: BTreeMap::new(), open: 0, lines, limits };
    let all = scale.weigh(xml.root_element(), 1)?;
    let rules = css::comparisons(sheet, all.height);
    // A rule for a class goes through the letters of an element's classes.
    let comparisons = rules.saturating_mul(all.elements + all.classes / 8);
    let sheet = longest_part(sheet).saturating_mul(sheet.len()) / OF_STYLE;
    if comparisons.saturating_add(all.styles).saturating_add(sheet) > STYLES {
        return Err(refused(SvgExcess::Styles, STYLES, None));
    }
    Ok(())
}

/// Letters of the longest part of a sheet that is read in one.
fn longest_part(sheet: &str) -> usize {
    css::parts(sheet).iter().map(|p| p.len()).max().unwrap_or(0)
}

/// Elements by their ids, the first of each.
pub(super) fn ids<'a>(xml: &'a Document<'a>) -> BTreeMap<&'a str, Node<'a, 'a>> {
    let mut out = BTreeMap::new();
    for node in xml.descendants().filter(Node::is_element) {
        if let Some(id) = node.attribute("id") {
            out.entry(id).or_insert(node);
        }
    }
    out
}

/// What an element uses, by its reference.
pub(super) fn target<'a>(node: &Node<'a, '_>) -> Option<&'a str> {
    const LINKS: &str = "http://www.w3.org/1999/xlink";
    let href = node.attribute((LINKS, "href")).or_else(|| node.attribute("href"))?;
    href.trim().strip_prefix('#')
}

struct Scale<'a, 'n> {
    ids: BTreeMap<&'a str, Node<'a, 'a>>,
    /// Of what is used; none while it is being weighed.
    known: BTreeMap<usize, Option<Weight>>,
    /// How many are being weighed.
    open: usize,
    lines: &'n Lines,
    limits: &'n Limits,
}

impl<'a> Scale<'a, '_> {
    /// The weight of a node within `level` others, uses counted through.
    fn weigh(&mut self, node: Node<'a, 'a>, level: usize) -> Result<Weight, Refusal> {
        if level > LEVELS {
            return Err(self.refused(SvgExcess::Levels, LEVELS, Some(node)));
        }
        let mut all = self.own(node);
        for child in node.children() {
            if child.is_element() && kept(&child) != Kept::Nothing {
                all.add(self.weigh(child, level + 1)?);
            }
        }
        if node.tag_name().name() == "use"
            && let Some(used) = target(&node).and_then(|id| self.ids.get(id)).copied()
        {
            all.add(self.used(used, node, level)?);
        }
        // What is known already may lie deeper here than where it was weighed.
        if level + all.height > LEVELS {
            return Err(self.refused(SvgExcess::Levels, LEVELS, Some(node)));
        }
        self.hold(&all, Some(node))?;
        Ok(all)
    }

    fn used(
        &mut self,
        used: Node<'a, 'a>,
        by: Node<'a, 'a>,
        level: usize,
    ) -> Result<Weight, Refusal> {
        match self.known.get(&used.id().get_usize()) {
            Some(Some(weight)) => return Ok(*weight),
            // It uses itself, by whatever ways.
            Some(None) => return Err(self.refused(SvgExcess::Uses, LEVELS, Some(by))),
            None => {}
        }
        if self.open >= DEEPEST_USE {
            return Err(self.refused(SvgExcess::Uses, DEEPEST_USE, Some(by)));
        }
        self.known.insert(used.id().get_usize(), None);
        self.open += 1;
        let weight = self.weigh(used, level + 1)?;
        self.open -= 1;
        self.known.insert(used.id().get_usize(), Some(weight));
        Ok(weight)
    }

    fn own(&self, node: Node) -> Weight {
        let mut own = Weight { elements: 1, ..Default::default() };
        for a in node.attributes() {
            own.attributes += a.value().len();
            match a.name() {
                // A point takes two letters at least.
                "d" | "points" => own.points += numbers(a.value()) / 2,
                "style" => own.styles += a.value().len().saturating_mul(a.value().len()) / OF_STYLE,
                "class" => own.classes += a.value().len(),
                _ => {}
            }
        }
        if matches!(node.tag_name().name(), "text" | "tspan" | "textPath") {
            own.elements += OF_TEXT;
            let texts = node.children().filter_map(|n| n.text().filter(|_| n.is_text()));
            own.letters = texts.map(str::len).sum::<usize>().min(LETTERS_OF_TEXT);
        }
        own
    }

    fn hold(&self, w: &Weight, node: Option<Node>) -> Result<(), Refusal> {
        let over = [
            (SvgExcess::Elements, w.elements, self.limits.elements),
            (SvgExcess::LettersOfAttributes, w.attributes, LETTERS_OF_ATTRIBUTES),
            (SvgExcess::Letters, w.letters, LETTERS),
        ];
        if let Some((of, _, most)) = over.into_iter().find(|(_, count, most)| count > most) {
            return Err(self.refused(of, most, node));
        }
        let most = self.limits.points / OF_POINT;
        if w.points > most {
            let from_line = node.map(|n| self.lines.at(n.range().start));
            return Err(Refusal::new(DrawingFinding::PointsTooMany { most, from_line }));
        }
        Ok(())
    }

    fn refused(&self, of: SvgExcess, most: usize, node: Option<Node>) -> Refusal {
        refused(of, most, node.map(|n| self.lines.at(n.range().start)))
    }
}

/// Most uses in uses.
const DEEPEST_USE: usize = 64;

/// Numbers of path data, near enough: what begins one behind something else.
fn numbers(data: &str) -> usize {
    let mut count = 0;
    let mut before = b' ';
    for b in data.bytes() {
        let begins = match b {
            b'0'..=b'9' => !matches!(before, b'0'..=b'9' | b'.' | b'-' | b'+' | b'e' | b'E'),
            b'-' | b'+' => !matches!(before, b'e' | b'E'),
            b'.' => !matches!(before, b'0'..=b'9' | b'-' | b'+'),
            _ => false,
        };
        count += usize::from(begins);
        before = b;
    }
    // Points without a blank between them, `.5.5`, are fewer than those with one.
    count + data.matches('.').count() / 4
}
