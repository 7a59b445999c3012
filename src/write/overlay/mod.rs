//! The overlay spliced into the source's own bytes: new layers, line types, styles, blocks and
//! entities go in; every byte of the source stays where it was but the handle seed and the counts of
//! tables that grew.

mod blocks;
mod emit;
mod patch;
mod scan;
mod tables;

use blocks::needed;
use emit::{Emitter, plotted};
use patch::Patch;
use scan::Scan;
use tables::DimLook;

use crate::finding::files::OverlayReason;
use crate::model::drawing::Drawing;
use crate::units::{LengthStyle, MM_PER_INCH};

/// How lengths of the source read.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measure {
    /// Inches in one source unit.
    pub inches: f64,
    /// How dimensions are written.
    pub style: LengthStyle,
}

/// A drawing of nothing, in the oldest form every program reads.
const EMPTY: &str = "0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1009\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n0\nENDSEC\n0\nEOF\n";

/// The source with the overlay in it.
///
/// # Errors
/// Why, when the source is binary or has no place for entities.
pub fn spliced(
    source: &[u8],
    overlay: &Drawing,
    measure: Measure,
) -> Result<Vec<u8>, OverlayReason> {
    let scan = Scan::of(source)?;
    let mut emitter = Emitter::new(&scan);
    let mut patches = Vec::new();
    let feet = measure.style == LengthStyle::Feet;
    let factor = measure.inches * if feet { 1.0 } else { MM_PER_INCH };
    let look = DimLook { plotted: plotted(overlay), factor, feet };
    let mut blocks =
        if emitter.blocks() { needed(overlay, &scan.blocks, look) } else { Vec::new() };
    if !emitter.dimensions() {
        blocks.retain(|b| matches!(b.content, blocks::Content::Mark(_)));
    }
    let names: Vec<String> = blocks.iter().map(|b| b.name.clone()).collect();
    let records = emitter.tables(overlay, look, &names, &mut patches);
    let definitions = emitter.definitions(&blocks, &records);
    if !definitions.is_empty() {
        let n = scan.newline;
        let (at, text) = match scan.blocks_end {
            Some(end) => (end, definitions),
            None => (
                scan.before_entities,
                format!("  0{n}SECTION{n}  2{n}BLOCKS{n}{definitions}  0{n}ENDSEC{n}"),
            ),
        };
        patches.push(Patch { from: at, to: at, bytes: text.into_bytes() });
    }
    let entities = emitter.entities(overlay, look, &blocks);
    patches.push(Patch { from: scan.entities_end, to: scan.entities_end, bytes: entities });
    if let Some((from, to)) = scan.seed {
        patches.push(Patch { from, to, bytes: emitter.seed().into_bytes() });
    }
    if !scan.ended {
        patches.push(end(source, scan.newline));
    }
    Ok(apply(source, patches))
}

/// The end of the file, where the source was cut short after its entities: without it a strict reader
/// takes nothing.
fn end(source: &[u8], newline: &str) -> Patch {
    let fresh = if source.ends_with(b"\n") || source.ends_with(b"\r") { "" } else { newline };
    let bytes = format!("{fresh}  0{newline}EOF{newline}").into_bytes();
    Patch { from: source.len(), to: source.len(), bytes }
}

/// Whether a source takes an overlay.
///
/// # Errors
/// As [`spliced`].
pub fn takes(source: &[u8]) -> Result<(), OverlayReason> {
    Scan::of(source).map(|_| ())
}

/// The overlay as a drawing of its own, on the source's origin.
pub fn separate(overlay: &Drawing, measure: Measure) -> Vec<u8> {
    spliced(EMPTY.as_bytes(), overlay, measure).unwrap_or_default()
}

/// Puts patches in; those at one place keep their order.
fn apply(source: &[u8], mut patches: Vec<Patch>) -> Vec<u8> {
    patches.sort_by_key(|p| p.from);
    let mut out =
        Vec::with_capacity(source.len() + patches.iter().map(|p| p.bytes.len()).sum::<usize>());
    let mut at = 0;
    for p in patches {
        out.extend_from_slice(source.get(at..p.from).unwrap_or_default());
        out.extend_from_slice(&p.bytes);
        at = p.to;
    }
    out.extend_from_slice(source.get(at..).unwrap_or_default());
    out
}
