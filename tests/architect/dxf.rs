//! Writes a sheet as DXF text.

use super::habit::{Style, Version};
use super::ink::{Entity, Ink};
use super::layers;
use super::tags::Tags;

/// The file.
pub(crate) fn written(ink: &Ink, style: &Style, views: &[String]) -> String {
    let scale = match style.unit.word {
        "foot" => 1.0 / 12.0,
        "cm" => 0.1,
        "m" => 0.001,
        _ => 1.0,
    };
    let mut t = Tags::new(style, views, scale);
    t.header();
    t.tables(ink);
    t.blocks(ink);
    t.section("ENTITIES");
    for e in &ink.entities {
        t.shape(e, MODEL, false);
    }
    t.tag(0, "ENDSEC");
    if t.is_new() {
        t.section("OBJECTS");
        for (k, v) in [(0, "DICTIONARY"), (5, "C"), (330, "0"), (100, "AcDbDictionary")] {
            t.tag(k, v);
        }
        t.tag(281, 1);
        t.tag(0, "ENDSEC");
    }
    t.tag(0, "EOF");
    t.text
}

/// Handle of the block record of model space.
const MODEL: &str = "1F";
/// Of paper space.
const PAPER: &str = "1B";

impl Tags<'_> {
    fn header(&mut self) {
        self.section("HEADER");
        let version = match self.style.version {
            Version::R12 => "AC1009",
            Version::R2000 => "AC1015",
            Version::R2007 => "AC1021",
            Version::R2013 => "AC1027",
        };
        self.tag(9, "$ACADVER");
        self.tag(1, version);
        self.tag(9, "$DWGCODEPAGE");
        self.tag(3, "ANSI_1252");
        if let Some(code) = self.style.header.filter(|_| self.is_new()) {
            self.tag(9, "$INSUNITS");
            self.tag(70, code);
        }
        self.tag(9, "$MEASUREMENT");
        let metric = self.style.header.is_some_and(|c| c > 2);
        self.tag(70, u8::from(metric));
        if self.is_new() {
            self.tag(9, "$HANDSEED");
            self.tag(5, "FFFFF");
        }
        self.tag(0, "ENDSEC");
    }

    /// A table with its records; each writes what follows its class.
    fn table(&mut self, name: &str, records: usize, fill: impl FnOnce(&mut Self)) {
        self.tag(0, "TABLE");
        self.tag(2, name);
        self.own_handle();
        self.class("AcDbSymbolTable");
        self.tag(70, records);
        fill(self);
        self.tag(0, "ENDTAB");
    }

    fn record(&mut self, kind: &str, class: &str, handle: Option<&str>, name: &str) {
        self.tag(0, kind);
        match handle {
            Some(h) => self.tag(5, h),
            None => self.own_handle(),
        }
        self.class("AcDbSymbolTableRecord");
        self.class(class);
        let name = self.encoded(name);
        self.tag(2, name);
    }

    fn tables(&mut self, ink: &Ink) {
        let blocks = ink.blocks.iter().flat_map(|b| &b.entities);
        let mut names: Vec<String> = ink
            .entities
            .iter()
            .chain(blocks)
            .map(|e| layers::layer(self.style, self.views, e).0)
            .collect();
        names.push("0".to_owned());
        names.sort();
        names.dedup();
        self.section("TABLES");
        self.table("LTYPE", 2, |t| {
            t.linetype("CONTINUOUS", "Solid line", &[]);
            t.linetype("DASHED", "__ __ __", &[12.0, -6.0]);
        });
        self.table("LAYER", names.len(), |t| {
            for n in &names {
                t.record("LAYER", "AcDbLayerTableRecord", None, n);
                let color = layers::color(t.style, n);
                t.tag(70, 0);
                t.tag(62, color);
                t.tag(6, "CONTINUOUS");
            }
        });
        self.table("STYLE", 1, |t| {
            t.record("STYLE", "AcDbTextStyleTableRecord", None, "STANDARD");
            for (k, v) in [(70, "0"), (40, "0.0"), (41, "1.0"), (50, "0.0"), (71, "0")] {
                t.tag(k, v);
            }
            t.tag(42, "2.5");
            t.tag(3, "txt");
            t.tag(4, "");
        });
        if self.is_new() {
            self.table("APPID", 1, |t| {
                t.record("APPID", "AcDbRegAppTableRecord", None, "ACAD");
                t.tag(70, 0);
            });
            self.table("BLOCK_RECORD", ink.blocks.len() + 2, |t| {
                t.record("BLOCK_RECORD", "AcDbBlockTableRecord", Some(MODEL), "*Model_Space");
                t.record("BLOCK_RECORD", "AcDbBlockTableRecord", Some(PAPER), "*Paper_Space");
                for (i, b) in ink.blocks.iter().enumerate() {
                    let handle = block_record(i);
                    t.record("BLOCK_RECORD", "AcDbBlockTableRecord", Some(&handle), &b.name);
                }
            });
        }
        self.tag(0, "ENDSEC");
    }

    fn linetype(&mut self, name: &str, looks: &str, dashes: &[f64]) {
        self.record("LTYPE", "AcDbLinetypeTableRecord", None, name);
        self.tag(70, 0);
        self.tag(3, looks);
        self.tag(72, 65);
        self.tag(73, dashes.len());
        self.length(40, dashes.iter().map(|d| d.abs()).sum::<f64>());
        for d in dashes {
            self.length(49, *d);
            if self.is_new() {
                self.tag(74, 0);
            }
        }
    }

    fn blocks(&mut self, ink: &Ink) {
        self.section("BLOCKS");
        if self.is_new() {
            for (name, owner) in [("*Model_Space", MODEL), ("*Paper_Space", PAPER)] {
                self.block(name, owner, &[]);
            }
        }
        for (i, b) in ink.blocks.iter().enumerate() {
            self.block(&b.name, &block_record(i), &b.entities);
        }
        self.tag(0, "ENDSEC");
    }

    fn block(&mut self, name: &str, owner: &str, entities: &[Entity]) {
        self.begin("BLOCK", owner, "0", None);
        self.class("AcDbBlockBegin");
        self.tag(2, name);
        self.tag(70, u8::from(name.starts_with("*D")));
        self.point3(10, [0.0, 0.0]);
        self.tag(3, name);
        self.tag(1, "");
        for e in entities {
            // Within a block, lines are on layer 0 and take the insert's, but for dimensions.
            self.shape(e, owner, !name.starts_with("*D"));
        }
        self.begin("ENDBLK", owner, "0", None);
        self.class("AcDbBlockEnd");
    }
}

/// Handle of the record of a block by its number.
fn block_record(i: usize) -> String {
    format!("{:X}", 0xF0_0000 + i)
}
