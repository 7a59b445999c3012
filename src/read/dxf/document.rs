//! A whole DXF: header, tables, blocks, entities, in the file's order.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::census::kind_of;
use super::expand::{Block, Body, Expander, Raw, Tally, origin, points_of};
use super::groups::Groups;
use super::paths::moved;
use super::tags::{Tag, Tags};
use super::text::Decoder;
use super::told::PassedOver;
use crate::finding::drawing::DrawingFinding;
use crate::finding::{Finding, Findings, Refusal};
use crate::geom::vocabulary::{Point, Rect};
use crate::model::drawing::{
    Dialect, Drawing, Layer, Pen, Polyline, Shape, Space, Vertex, Viewport,
};
use crate::origin::EntityKind;
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

/// Entities kept together before blocks are inserted: a chunk is let go as soon as it is, so that a
/// large drawing is not held twice.
const CHUNK: usize = 1 << 15;

struct Reader<'a, 'n> {
    tags: Tags<'a>,
    ahead: Option<Tag<'a>>,
    limits: &'n Limits,
    findings: &'n mut Findings,
    decoder: Decoder,
    /// What the bytes themselves look encoded as.
    sniffed: Option<&'static encoding_rs::Encoding>,
    out: Drawing,
    names: Vec<Arc<str>>,
    index: BTreeMap<String, usize>,
    blocks: BTreeMap<String, Block>,
    raws: Vec<Vec<Raw>>,
    tally: Tally,
    /// Layers by their names' bytes, so that a name is decoded once.
    by_bytes: BTreeMap<&'a [u8], usize>,
    passed_over: PassedOver,
    /// Entities, and their points, that wait for blocks or layers: a drawing holds no more of them
    /// than of items.
    held: (usize, usize),
    saw_tables: bool,
    saw_blocks: bool,
    saw_entities: bool,
    saw_end: bool,
    in_paper_block: bool,
    version: String,
    code_page: String,
}

impl<'a, 'n> Reader<'a, 'n> {
    fn new(bytes: &'a [u8], limits: &'n Limits, findings: &'n mut Findings) -> Self {
        let mut tags = Tags::new(bytes);
        let binary = tags.is_binary();
        let sniffed = if binary { None } else { super::text::sniffed(bytes) };
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

    fn next(&mut self) -> Option<Tag<'a>> {
        let tag = self.ahead.take();
        self.ahead = self.tags.next();
        tag
    }

    /// The tags from a 0 tag up to the next one. The buffer is reused.
    fn gather(&mut self, first: Tag<'a>, into: &mut Vec<Tag<'a>>) {
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

    /// Inserts a chunk's blocks at once where layers and blocks are all known by now, so that a large
    /// drawing is not held twice; keeps it for the end where they may be yet to come.
    fn stream(&mut self, raws: Vec<Raw>) {
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

    fn expand(&mut self, raws: Vec<Raw>) {
        self.held.0 -= raws.len();
        self.held.1 -= raws.iter().map(points_of).sum::<usize>();
        let mut out = std::mem::take(&mut self.out);
        self.expander().all(raws, &mut out);
        self.out = out;
    }

    fn expander(&mut self) -> Expander<'_> {
        Expander {
            blocks: &self.blocks,
            limits: self.limits,
            findings: self.findings,
            stack: Vec::new(),
            tally: &mut self.tally,
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

    fn layer(&mut self, name: &str) -> usize {
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

    fn layer_of(&mut self, name: &'a [u8]) -> usize {
        if let Some(i) = self.by_bytes.get(name) {
            return *i;
        }
        let i = self.layer(&self.decoder.text(name));
        if i < self.limits.layers {
            self.by_bytes.insert(name, i);
        }
        i
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
            let Some(name) = groups.text(2) else { continue };
            // Bit 1 of the flags: frozen; a negative colour: off (FACTS DR-09).
            let frozen = groups.int(70) & 1 == 1;
            let off = groups.int(62) < 0;
            let i = self.layer(&name);
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
            } else {
                self.blocks.entry(upper).or_insert(Block { base, raws });
            }
        }
    }

    /// Entities up to (not past) a 0 tag that `ends` them, or until there are `most`; whether they
    /// ended.
    fn entities(
        &mut self,
        buffer: &mut Vec<Tag<'a>>,
        raws: &mut Vec<Raw>,
        most: usize,
        ends: impl Fn(&Tag) -> bool,
    ) -> bool {
        while let Some(tag) = self.ahead {
            if tag.code == 0 && ends(&tag) {
                if tag.is("ENDBLK") {
                    self.next();
                }
                return true;
            }
            if raws.len() >= most {
                return false;
            }
            self.next();
            if tag.code != 0 {
                continue;
            }
            self.gather(tag, buffer);
            let points = self.held.1 > self.limits.points;
            if points || self.held.0 >= self.limits.items {
                self.passed_over.overfull(tag.line, points);
                continue;
            }
            let before = raws.len();
            self.entity(buffer, raws);
            self.held.0 += raws.len() - before;
            self.held.1 += raws[before..].iter().map(points_of).sum::<usize>();
        }
        true
    }

    fn entity(&mut self, buffer: &mut Vec<Tag<'a>>, raws: &mut Vec<Raw>) {
        let first = buffer[0];
        let Some(entity) = kind_of(first.value) else {
            self.passed_over.unread(first.value, first.line);
            return;
        };
        if matches!(entity, EntityKind::AttDef | EntityKind::Vertex | EntityKind::SeqEnd) {
            return;
        }
        let groups = Groups { tags: buffer, decoder: self.decoder };
        let name = groups.get(8).map_or(&b"0"[..], |t| t.value);
        let handle = groups.handle();
        let invisible = groups.int(60) & 1 == 1;
        let paper = groups.int(67) == 1;
        let layer = self.layer_of(name);
        let space = if paper { Space::Paper(String::new()) } else { Space::Model };
        let at = origin(first.line, handle, entity, &self.names[layer]);
        if entity == EntityKind::Viewport {
            if paper || self.in_paper_block {
                self.viewport(buffer);
            }
            return;
        }
        if entity == EntityKind::Hatch && super::hatch::loops(&groups) > self.limits.loops {
            let (loops, most) = (super::hatch::loops(&groups), self.limits.loops);
            let kind = DrawingFinding::HatchLoops { loops, most };
            self.findings.push(Finding::new(kind).about(&at));
            return;
        }
        let bodies: Option<Vec<Body>> = match entity {
            EntityKind::Polyline => self.polyline(buffer).map(|p| vec![Body::Shape(p)]),
            EntityKind::Insert => self.insert(buffer, raws, layer, &space),
            _ => Groups { tags: buffer, decoder: self.decoder }
                .shape(entity.word())
                .map(|shapes| shapes.into_iter().map(Body::Shape).collect()),
        };
        match bodies {
            Some(list) => raws.extend(list.into_iter().map(|body| Raw {
                layer,
                space: space.clone(),
                invisible,
                origin: at.clone(),
                body,
            })),
            None => self.passed_over.broken(entity, first.line),
        }
    }

    /// POLYLINE with its VERTEX entities, up to SEQEND.
    fn polyline(&mut self, buffer: &mut Vec<Tag<'a>>) -> Option<Shape> {
        let head = Groups { tags: buffer, decoder: self.decoder };
        let flags = head.int(70);
        let ocs = if flags & 8 == 8 {
            crate::geom::vocabulary::Affine::IDENTITY
        } else {
            head.ocs(head.float(30).unwrap_or(0.0))
        };
        let mut vertices = Vec::new();
        while let Some(tag) = self.ahead {
            if tag.code != 0 || !(tag.is("VERTEX") || tag.is("SEQEND")) {
                break;
            }
            self.next();
            self.gather(tag, buffer);
            if tag.is("SEQEND") {
                break;
            }
            let v = Groups { tags: buffer, decoder: self.decoder };
            // Control points of a spline frame are no part of the line.
            if v.int(70) & 16 == 16 {
                continue;
            }
            if vertices.len() >= self.limits.vertices {
                self.passed_over.cut_short(tag.line);
                continue;
            }
            if let Some(at) = v.point(10) {
                vertices.push(Vertex { at, bulge: v.float(42).unwrap_or(0.0) });
            }
        }
        // Meshes and polyface meshes are surfaces, not lines.
        if flags & (16 | 64) != 0 {
            return None;
        }
        Some(moved(Shape::Polyline(Polyline { vertices, closed: flags & 1 == 1 }), ocs))
    }

    /// INSERT with its ATTRIB entities: shown ones become texts of their own.
    fn insert(
        &mut self,
        buffer: &mut Vec<Tag<'a>>,
        raws: &mut Vec<Raw>,
        layer: usize,
        space: &Space,
    ) -> Option<Vec<Body>> {
        let head = Groups { tags: buffer, decoder: self.decoder };
        let follows = head.int(66) == 1;
        let mut insert = head.insert();
        while let Some(tag) = self.ahead {
            if !follows || tag.code != 0 || !(tag.is("ATTRIB") || tag.is("SEQEND")) {
                break;
            }
            self.next();
            self.gather(tag, buffer);
            if tag.is("SEQEND") {
                break;
            }
            let a = Groups { tags: buffer, decoder: self.decoder };
            let (tag_name, value) = (a.text(2).unwrap_or_default(), a.text(1).unwrap_or_default());
            let hidden = a.int(70) & 1 == 1;
            let own = a.text(8).filter(|n| n != "0");
            let text = a.shape("ATTRIB");
            let handle = a.handle();
            if let Some(i) = &mut insert {
                i.attributes.push((tag_name, value));
            }
            let on = own.map_or(layer, |n| self.layer(&n));
            let at = origin(tag.line, handle, EntityKind::Attrib, &self.names[on]);
            for shape in text.unwrap_or_default() {
                raws.push(Raw {
                    layer: on,
                    space: space.clone(),
                    invisible: hidden,
                    origin: at.clone(),
                    body: Body::Shape(shape),
                });
            }
        }
        insert.map(|i| vec![Body::Insert(i)])
    }

    fn viewport(&mut self, buffer: &[Tag<'a>]) {
        let g = Groups { tags: buffer, decoder: self.decoder };
        // Viewport 1 is the sheet itself.
        if g.int(69) == 1 {
            return;
        }
        let (Some(c), Some(w), Some(h)) = (g.point(10), g.float(40), g.float(41)) else { return };
        let (Some(view), Some(height)) = (g.point(12), g.float(45)) else { return };
        if h <= 0.0 || height <= 0.0 {
            return;
        }
        let target = g.point(17).unwrap_or(Point::ZERO).to_vec2();
        let (vw, centre) = (height * w / h, view + target);
        // Some writers give the sheet's own viewport no number: it shows itself at full size.
        if centre.distance(c) < 1e-9 * w && (h - height).abs() < 1e-9 * h {
            return;
        }
        self.out.viewports.push(Viewport {
            layout: String::new(),
            paper: Rect::from_center_size(c, (w, h)),
            model: Rect::from_center_size(centre, (vw, height)),
            frozen: Vec::new(),
        });
    }

    fn finish(mut self, name: &str) -> Result<Drawing, Refusal> {
        self.report();
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
        let mut out = self.out;
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
