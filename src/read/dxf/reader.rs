//! A DXF on its way in: pairs gathered to entities, layers by name, blocks inserted as soon as they
//! are known.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::expand::{Block, Body, Expander, Raw, points_of};
use super::passed_over::PassedOver;
use super::tags::{EMBEDDED, Tag, Tags};
use super::tally::Tally;
use super::text::{Decoder, MOST_BYTES};
use crate::finding::Findings;
use crate::finding::drawing::{DrawingFinding, Named};
use crate::model::drawing::{Dialect, Drawing, Layer, Pen};
use crate::model::unused::Unused;
use crate::read::limits::Limits;

/// Letters that are told of a name that is too long.
const SHOWN: usize = 40;

/// The file as far as it is read.
pub(super) struct Reader<'a, 'n> {
    /// Pairs still to come, but for the next one.
    pub(super) tags: Tags<'a>,
    pub(super) ahead: Option<Tag<'a>>,
    pub(super) limits: &'n Limits,
    pub(super) findings: &'n mut Findings,
    pub(super) decoder: Decoder,
    /// What the bytes themselves look encoded as.
    pub(super) sniffed: Option<&'static encoding_rs::Encoding>,
    pub(super) out: Drawing,
    /// Names of the layers, as places of entities hold them.
    pub(super) names: Vec<Arc<str>>,
    /// Layers by their names in capitals.
    pub(super) index: BTreeMap<String, usize>,
    pub(super) blocks: BTreeMap<String, Block>,
    /// Entities that wait for layers or blocks.
    pub(super) raws: Vec<Vec<Raw>>,
    pub(super) tally: Tally,
    /// Layers by their names' bytes, so that a name is decoded once.
    pub(super) by_bytes: BTreeMap<&'a [u8], usize>,
    pub(super) passed_over: PassedOver,
    /// Steps that sampling of splines took.
    pub(super) spline_steps: usize,
    /// A name longer than any is, for which the drawing is refused.
    pub(super) long_name: Option<DrawingFinding>,
    /// Types that are not read, by name.
    pub(super) unread: BTreeMap<&'a [u8], Arc<Unused>>,
    /// How many entities of them there are, and of each layer those that are not kept one by one.
    pub(super) unread_kept: usize,
    pub(super) unread_more: BTreeMap<(usize, Arc<Unused>), usize>,
    /// Entities, and their points, that wait for blocks or layers: a drawing holds no more of them
    /// than of items.
    pub(super) held: (usize, usize),
    pub(super) saw_tables: bool,
    pub(super) saw_blocks: bool,
    pub(super) saw_entities: bool,
    pub(super) saw_end: bool,
    pub(super) in_paper_block: bool,
    pub(super) version: String,
    pub(super) code_page: String,
}

impl<'a, 'n> Reader<'a, 'n> {
    /// Over the bytes of a file.
    pub(super) fn new(bytes: &'a [u8], limits: &'n Limits, findings: &'n mut Findings) -> Self {
        let tags = Tags::new(bytes);
        let sniffed = if tags.is_binary() { None } else { super::text::sniffed(bytes) };
        Reader::over(tags, sniffed, limits, findings)
    }

    /// Over pairs, and what their bytes look encoded as.
    pub(super) fn over(
        mut tags: Tags<'a>,
        sniffed: Option<&'static encoding_rs::Encoding>,
        limits: &'n Limits,
        findings: &'n mut Findings,
    ) -> Self {
        let binary = tags.is_binary();
        let ahead = tags.next();
        let dialect = Dialect { binary, ..Default::default() };
        let out = Drawing { dialect, ..Default::default() };
        Reader {
            tags,
            ahead,
            limits,
            findings,
            decoder: Decoder::new("", "", sniffed),
            sniffed,
            out,
            names: Vec::new(),
            index: BTreeMap::new(),
            blocks: BTreeMap::new(),
            raws: Vec::new(),
            tally: Tally::default(),
            by_bytes: BTreeMap::new(),
            passed_over: PassedOver::default(),
            spline_steps: 0,
            long_name: None,
            unread: BTreeMap::new(),
            unread_kept: 0,
            unread_more: BTreeMap::new(),
            held: (0, 0),
            saw_tables: false,
            saw_blocks: false,
            saw_entities: false,
            saw_end: false,
            in_paper_block: false,
            version: String::new(),
            code_page: String::new(),
        }
    }

    pub(super) fn next(&mut self) -> Option<Tag<'a>> {
        let tag = self.ahead.take();
        self.ahead = self.tags.next();
        tag
    }

    /// Passes over an object embedded in an entity, whose groups mean other things than the entity's own.
    /// An attribute of several lines has nothing but its words in it: they become its own.
    fn embedded(&mut self, mark: Tag<'a>, into: &mut Vec<Tag<'a>>) {
        into.push(mark);
        while let Some(tag) = self.ahead.filter(|t| t.code != 0) {
            self.next();
            let own = into.iter_mut().find(|t| t.code == 1);
            if let Some(own) = own.filter(|t| tag.code == 1 && t.value.trim_ascii().is_empty()) {
                own.value = tag.value;
            }
        }
    }

    /// The tags from a 0 tag up to the next one. The buffer is reused.
    pub(super) fn gather(&mut self, first: Tag<'a>, into: &mut Vec<Tag<'a>>) {
        into.clear();
        into.push(first);
        // Extension groups (102 {..}) hold other entities' handles; they are passed over, whatever
        // their nesting.
        let mut inside = 0usize;
        while let Some(tag) = self.ahead {
            if tag.code == 0 {
                break;
            }
            self.next();
            if tag.code == 102 {
                if tag.value.trim_ascii().starts_with(b"{") {
                    inside += 1;
                } else {
                    inside = inside.saturating_sub(1);
                }
                continue;
            }
            if tag.code == EMBEDDED {
                self.embedded(tag, into);
                continue;
            }
            if tag.code == 1001 {
                // Extended data runs to the entity's end.
                while self.ahead.is_some_and(|t| t.code >= 1000) {
                    self.next();
                }
                continue;
            }
            if inside == 0 && tag.code != 999 {
                if into.len() < 8 * self.limits.vertices {
                    into.push(tag);
                } else {
                    self.passed_over.cut_short(first.line);
                }
            }
        }
    }

    /// Whether a name has more letters than any has; the first such is kept, to be refused.
    pub(super) fn too_long(&mut self, of: Named, name: &[u8], line: usize) -> bool {
        let most = self.limits.name;
        if name.len() <= most {
            return false;
        }
        // What is longer than is decoded is told by its bytes.
        let text = self.decoder.text(name);
        let letters = text.chars().count() + name.len().saturating_sub(MOST_BYTES);
        if letters > most && self.long_name.is_none() {
            let begins = text.chars().take(SHOWN).collect();
            self.long_name = Some(DrawingFinding::NameTooLong { of, begins, letters, most, line });
        }
        letters > most
    }

    pub(super) fn layer(&mut self, name: &str) -> usize {
        let key = name.to_uppercase();
        if let Some(i) = self.index.get(&key) {
            return *i;
        }
        // What is over the limit is refused as a whole once all is read.
        let i = self.out.layers.len();
        if i > self.limits.layers {
            return i - 1;
        }
        self.out.layers.push(Layer { name: name.to_owned(), shown: true, pen: Pen::default() });
        self.names.push(Arc::from(name));
        self.index.insert(key, i);
        i
    }

    /// The layer of a name, as `line` has it.
    pub(super) fn layer_of(&mut self, name: &'a [u8], line: usize) -> usize {
        if let Some(i) = self.by_bytes.get(name) {
            return *i;
        }
        if self.too_long(Named::Layer, name, line) {
            return self.layer("0");
        }
        let i = self.layer(&self.decoder.text(name));
        if i < self.limits.layers {
            self.by_bytes.insert(name, i);
        }
        i
    }

    /// Inserts a chunk's blocks at once where layers and blocks are all known by now, so that a large
    /// drawing is not held twice; keeps it for the end where they may be yet to come.
    pub(super) fn stream(&mut self, raws: Vec<Raw>) {
        let inserts = raws.iter().any(|r| matches!(r.body, Body::Insert(_)));
        // What was kept stays before what comes after it.
        let waits = inserts || !self.raws.is_empty();
        if !self.saw_tables || (!self.saw_blocks && waits) {
            self.raws.push(raws);
            return;
        }
        for before in std::mem::take(&mut self.raws) {
            self.expand(before);
        }
        self.expand(raws);
    }

    pub(super) fn expand(&mut self, mut raws: Vec<Raw>) {
        super::lettered::read(&mut raws, &self.blocks);
        self.held.0 -= raws.iter().filter(|r| r.is_read()).count();
        self.held.1 -= raws.iter().map(points_of).sum::<usize>();
        let mut out = std::mem::take(&mut self.out);
        self.expander().all(raws, &mut out);
        self.out = out;
    }

    pub(super) fn expander(&mut self) -> Expander<'_> {
        Expander {
            blocks: &self.blocks,
            limits: self.limits,
            findings: self.findings,
            stack: Vec::new(),
            tally: &mut self.tally,
        }
    }
}
