//! A whole DXF: header, tables, blocks, entities, in the file's order.

use std::sync::Arc;

use super::expand::{Block, Raw, origin};
use super::groups::Groups;
use super::reader::Reader;
use super::tags::Tag;
#[cfg(feature = "dwg")]
use super::tags::Tags;
use super::text::Decoder;
use crate::finding::drawing::{DrawingFinding, Named};
use crate::finding::{Finding, Findings, Refusal};
use crate::geom::vocabulary::Point;
use crate::model::drawing::{Drawing, LeftOut, Space};
use crate::origin::{EntityKind, Origin};
use crate::read::limits::Limits;
use crate::units::Unit;

/// Reads a DXF.
///
/// # Errors
/// `file-truncated` when the entities are missing.
pub(in crate::read) fn drawing(
    bytes: &[u8],
    name: &str,
    limits: &Limits,
    findings: &mut Findings,
) -> Result<Drawing, Refusal> {
    let mut reader = Reader::new(bytes, limits, findings);
    reader.sections();
    reader.finish(name)
}

/// Reads the pairs that another format was written as: they stand in no file, and have no lines.
///
/// # Errors
/// As [`drawing`].
#[cfg(feature = "dwg")]
pub(in crate::read) fn transcribed(
    text: &[u8],
    name: &str,
    limits: &Limits,
    findings: &mut Findings,
) -> Result<Drawing, Refusal> {
    let mut reader = Reader::over(Tags::unnumbered(text), None, limits, findings);
    reader.sections();
    reader.finish(name)
}

/// Entities kept together before blocks are inserted: a chunk is let go as soon as it is, so that a
/// large drawing is not held twice.
const CHUNK: usize = 1 << 15;

impl<'a> Reader<'a, '_> {
    fn sections(&mut self) {
        let mut buffer = Vec::new();
        while let Some(tag) = self.next() {
            if tag.code != 0 {
                continue;
            }
            if tag.is("EOF") {
                self.saw_end = true;
                return;
            }
            if !tag.is("SECTION") {
                continue;
            }
            let Some(section) = self.next() else { return };
            if section.is("HEADER") {
                self.header();
            } else if section.is("TABLES") {
                self.tables(&mut buffer);
                self.saw_tables = true;
            } else if section.is("BLOCKS") {
                self.block_section(&mut buffer);
                self.saw_blocks = true;
            } else if section.is("ENTITIES") {
                self.saw_entities = true;
                let mut ended = false;
                while !ended {
                    let mut raws = Vec::new();
                    ended = self
                        .entities(&mut buffer, &mut raws, CHUNK, |t| t.is("ENDSEC") || t.is("EOF"));
                    self.stream(raws);
                }
            }
        }
    }

    fn header(&mut self) {
        let mut name: &[u8] = b"";
        while let Some(tag) = self.ahead {
            if tag.code == 0 {
                break;
            }
            self.next();
            if tag.code == 9 {
                name = tag.value.trim_ascii();
                continue;
            }
            match name {
                b"$ACADVER" if tag.code == 1 => {
                    self.version = String::from_utf8_lossy(tag.value.trim_ascii()).into_owned()
                }
                b"$DWGCODEPAGE" if tag.code == 3 => {
                    self.code_page = String::from_utf8_lossy(tag.value.trim_ascii()).into_owned()
                }
                b"$INSUNITS" if tag.code == 70 => {
                    self.out.unit = tag.int().and_then(|c| Unit::from_insunits(c as i32));
                }
                _ => {}
            }
        }
        self.decoder = Decoder::new(&self.code_page, &self.version, self.sniffed);
    }

    fn tables(&mut self, buffer: &mut Vec<Tag<'a>>) {
        while let Some(tag) = self.next() {
            if tag.code != 0 {
                continue;
            }
            if tag.is("ENDSEC") || tag.is("EOF") {
                return;
            }
            self.gather(tag, buffer);
            if !tag.is("LAYER") {
                continue;
            }
            let groups = Groups { tags: buffer, decoder: self.decoder };
            let Some(name) = groups.get(2).copied() else { continue };
            // Bit 1 of the flags: frozen; a negative color: off (DrawingFact::LayerFlags).
            let frozen = groups.int(70) & 1 == 1;
            let off = groups.int(62) < 0;
            let i = self.layer_of(name.value, name.line);
            self.out.layers[i].shown = !(frozen || off);
        }
    }

    fn block_section(&mut self, buffer: &mut Vec<Tag<'a>>) {
        while let Some(tag) = self.next() {
            if tag.code != 0 {
                continue;
            }
            if tag.is("ENDSEC") || tag.is("EOF") {
                return;
            }
            if !tag.is("BLOCK") {
                continue;
            }
            self.gather(tag, buffer);
            let groups = Groups { tags: buffer, decoder: self.decoder };
            let name = groups.text(2).unwrap_or_default();
            let base = groups.point(10).unwrap_or(Point::ZERO);
            let (named, fault) = (groups.get(2).copied(), groups.number_fault());
            let long = named.is_some_and(|t| self.too_long(Named::Block, t.value, t.line));
            let file = super::groups::file_of(&groups);
            let mut raws = Vec::new();
            let upper = name.to_uppercase();
            let seen = self.out.viewports.len();
            self.in_paper_block =
                upper.starts_with("*PAPER_SPACE") || upper.starts_with("$PAPER_SPACE");
            self.entities(buffer, &mut raws, usize::MAX, |t| {
                t.is("ENDBLK") || t.is("ENDSEC") || t.is("EOF")
            });
            // The active sheet's own entities stand among the model's, flagged; its name is empty.
            let sheet = match &upper[..] {
                "*PAPER_SPACE" | "$PAPER_SPACE" => String::new(),
                _ => name.clone(),
            };
            self.out.viewports[seen..].iter_mut().for_each(|v| v.layout.clone_from(&sheet));
            // Space blocks hold their entities here in some files; the rest are definitions.
            if upper.starts_with("*MODEL_SPACE") || upper.starts_with("$MODEL_SPACE") {
                self.raws.push(raws);
            } else if std::mem::take(&mut self.in_paper_block) {
                let paper = Space::Paper(sheet);
                let on = raws.into_iter().map(|r| Raw { space: paper.clone(), ..r });
                self.raws.push(on.collect());
            } else if let Some(fault) = fault {
                // Where it is inserted by is not known, so nothing that inserts it is.
                let at = origin(tag.line, None, EntityKind::Block, &Arc::from("0"));
                self.unreadable(EntityKind::Block, fault, &at);
            } else if !long {
                self.blocks.entry(upper).or_insert(Block { base, file, raws });
            }
        }
    }

    fn finish(mut self, name: &str) -> Result<Drawing, Refusal> {
        self.report();
        if let Some(kind) = self.long_name.take() {
            return Err(Refusal::new(kind));
        }
        if !self.saw_entities && self.raws.is_empty() {
            return Err(Refusal::new(self.truncated(name, false)));
        }
        if !self.saw_end {
            let kind = self.truncated(name, true);
            self.findings.push(Finding::new(kind));
        }
        for raws in std::mem::take(&mut self.raws) {
            self.expand(raws);
        }
        self.expander().tell();
        for ((layer, why), count) in std::mem::take(&mut self.unread_more) {
            let (space, group, at) = (Space::Model, None, None);
            let shown = self.out.layers[layer].shown;
            let origin = Origin { layer: self.names[layer].clone(), ..Origin::default() };
            self.out.left_out.push(LeftOut { layer, space, group, shown, why, count, at, origin });
        }
        let mut out = self.out;
        super::viewport::without_sheets(&mut out.viewports);
        super::all_off::read_all(&mut out, &self.tally, self.findings);
        out.name = name.to_owned();
        let version = if self.version.is_empty() { "without a version" } else { &self.version };
        out.dialect.format = format!("DXF {version}");
        out.dialect.encoding = self.decoder.page.name().to_owned();
        Ok(out)
    }

    fn truncated(&self, name: &str, entities_found: bool) -> DrawingFinding {
        let (name, end_found) = (name.to_owned(), self.saw_end);
        DrawingFinding::FileTruncated { name, end_found, entities_found }
    }

    fn report(&mut self) {
        let bad = std::mem::take(&mut self.tags.bad);
        if let Some(first) = bad.first() {
            let kind = DrawingFinding::LineBad { lines: bad.len(), first_line: *first };
            self.findings.push(Finding::new(kind));
        }
        // One finding is enough.
        self.tally.full |= self.passed_over.is_overfull();
        std::mem::take(&mut self.passed_over).tell(self.limits, self.findings);
    }
}
