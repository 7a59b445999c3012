//! The sections of a DXF: header, layers, blocks, entities.

use std::collections::{BTreeMap, BTreeSet};

use opendwg::object::BlockRecord;
use opendwg::{Drawing, Handle};

use super::entities::{Names, Writer};
use super::pairs::Pairs;
use super::style;

/// Text of R2007 and later is UTF-8.
const VERSION: &str = "AC1021";

/// The drawing as a DXF, and how many of its texts could not be decoded.
pub(super) fn text(source: &Drawing) -> (Vec<u8>, usize) {
    let names = names(source);
    let mut pairs = Pairs::default();
    header(&mut pairs, source);
    layers(&mut pairs, source);
    let mut writer = Writer::new(source, &names, pairs);
    blocks(&mut writer, source, &names);
    entities(&mut writer, source);
    let (mut pairs, texts_lost) = writer.done();
    pairs.text(0, "EOF");
    (pairs.into_bytes(), texts_lost)
}

/// Names of layers, line types and blocks by their handles; each block has one of its own.
fn names(source: &Drawing) -> Names {
    let layers = source.layers().map(|(h, l)| (h, l.entry.name.clone())).collect();
    let linetypes = source.linetypes().map(|(h, l)| (h, l.entry.name.clone())).collect();
    let mut taken = BTreeSet::new();
    let mut blocks = BTreeMap::new();
    for (handle, record) in source.block_records() {
        let mut name = record.entry.name.clone();
        // A block without a name of its own is stored as `*U`, without the number a DXF gives it.
        if !taken.insert(name.to_uppercase()) {
            name = format!("{name}_{handle}");
            taken.insert(name.to_uppercase());
        }
        blocks.insert(handle, name);
    }
    Names { layers, linetypes, blocks }
}

fn section(pairs: &mut Pairs, name: &str) {
    pairs.text(0, "SECTION");
    pairs.text(2, name);
}

fn header(pairs: &mut Pairs, source: &Drawing) {
    section(pairs, "HEADER");
    pairs.text(9, "$ACADVER");
    pairs.text(1, VERSION);
    pairs.text(9, "$INSUNITS");
    pairs.int(70, source.header.insunits);
    pairs.text(0, "ENDSEC");
}

fn layers(pairs: &mut Pairs, source: &Drawing) {
    section(pairs, "TABLES");
    pairs.text(0, "TABLE");
    pairs.text(2, "LAYER");
    for (handle, layer) in source.layers() {
        pairs.text(0, "LAYER");
        pairs.handle(5, handle);
        pairs.text(2, &layer.entry.name);
        pairs.int(70, i64::from(layer.frozen) | i64::from(layer.locked) << 2);
        style::color(pairs, &layer.color, layer.off);
        style::weight(pairs, layer.lineweight);
    }
    pairs.text(0, "ENDTAB");
    pairs.text(0, "ENDSEC");
}

/// All blocks but the model and the active sheet, which stand among the entities.
fn blocks(writer: &mut Writer, source: &Drawing, names: &Names) {
    section(writer.pairs(), "BLOCKS");
    let drawn = [source.model_space(), source.header.block_record_paper_space];
    for (handle, record) in source.block_records() {
        if drawn.contains(&handle) {
            continue;
        }
        begin(writer.pairs(), handle, record, names);
        writer.all(handle, false);
        writer.pairs().text(0, "ENDBLK");
    }
    writer.pairs().text(0, "ENDSEC");
}

fn begin(pairs: &mut Pairs, handle: Handle, record: &BlockRecord, names: &Names) {
    pairs.text(0, "BLOCK");
    pairs.handle(5, handle);
    pairs.text(8, "0");
    pairs.text(2, names.blocks.get(&handle).map_or("", String::as_str));
    let flags = [
        (record.anonymous, 1),
        (record.has_attdefs, 2),
        (record.is_xref, 4),
        (record.xref_overlaid, 8),
    ];
    pairs.int(70, flags.iter().filter(|f| f.0).map(|f| f.1).sum::<i64>());
    pairs.point(10, record.base_point);
    if !record.xref_path.is_empty() {
        pairs.text(1, &record.xref_path);
    }
}

fn entities(writer: &mut Writer, source: &Drawing) {
    section(writer.pairs(), "ENTITIES");
    writer.all(source.model_space(), false);
    writer.all(source.header.block_record_paper_space, true);
    writer.pairs().text(0, "ENDSEC");
}
