//! The overlay spliced into the source's own bytes: new layers, line types and entities go in;
//! every byte of the source stays where it was but the handle seed and two table counts.

mod emit;
mod scan;

use emit::Emitter;
use scan::Scan;

use crate::model::drawing::Drawing;

/// Why a source cannot take the overlay.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum OverlayError {
    /// A binary file: its overlay is written as a drawing of its own.
    #[error("the source is a binary DXF")]
    Binary,
    /// No ENTITIES section to splice into.
    #[error("the source has no complete ENTITIES section")]
    NoEntities,
}

/// A drawing of nothing, in the oldest form every program reads.
const EMPTY: &str = "0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1009\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n0\nENDSEC\n0\nEOF\n";

/// Bytes put in at a place, or in the place of others.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Patch {
    from: usize,
    to: usize,
    bytes: Vec<u8>,
}

/// The source with the overlay in it.
///
/// # Errors
/// [`OverlayError`] when the source is binary or has no place for entities.
pub fn spliced(source: &[u8], overlay: &Drawing) -> Result<Vec<u8>, OverlayError> {
    let scan = Scan::of(source)?;
    let mut emitter = Emitter::new(&scan);
    let mut patches = Vec::new();
    emitter.tables(overlay, &mut patches);
    let entities = emitter.entities(overlay);
    patches.push(Patch { from: scan.entities_end, to: scan.entities_end, bytes: entities });
    if let Some((from, to)) = scan.seed {
        patches.push(Patch { from, to, bytes: emitter.seed().into_bytes() });
    }
    Ok(apply(source, patches))
}

/// The overlay as a drawing of its own, on the source's origin.
pub fn separate(overlay: &Drawing) -> Vec<u8> {
    spliced(EMPTY.as_bytes(), overlay).unwrap_or_default()
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
