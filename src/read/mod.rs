//! Readers: bytes of a drawing to a [`Drawing`] with nothing implicit.

#[cfg(feature = "dwg")]
mod dwg;
pub mod dxf;
pub mod layout_json;
pub mod limits;
#[cfg(feature = "pdf-in")]
mod pdf_in;
mod pens;
pub mod stock_csv;
mod svg_in;
pub mod ticks_json;
mod wide;

pub use limits::Limits;

use crate::finding::drawing::{DrawingFinding, LooksLike};
use crate::finding::{Findings, Refusal};
use crate::model::drawing::Drawing;
#[cfg(feature = "pdf-in")]
use crate::model::pdf_base::PdfBase;

/// Reads a drawing, told apart by its content.
///
/// # Errors
/// `not-dxf` when the bytes are neither DXF, DWG nor SVG (the note says what they look like), `dwg-unreadable`, `file-truncated` when
/// no entities are left, `file-too-big`, `layers-too-many`, and `numbers-absurd` when nothing readable remains.
pub fn drawing(
    bytes: &[u8],
    name: &str,
    limits: &Limits,
    findings: &mut Findings,
) -> Result<Drawing, Refusal> {
    if bytes.len() > limits.bytes {
        let (name, bytes, most) = (name.to_owned(), bytes.len(), limits.bytes);
        return Err(Refusal::new(DrawingFinding::FileTooBig { name, bytes, most }));
    }
    if let Some(looks_like) = packed(bytes) {
        return Err(Refusal::new(DrawingFinding::NotDxf { name: name.to_owned(), looks_like }));
    }
    #[cfg(feature = "dwg")]
    if is_dwg(bytes) {
        let text = dwg::as_dxf(bytes, name, findings)?;
        let mut drawing = dxf::transcribed(&text, name, limits, findings)?;
        drawing.dialect.format = format!("DWG {}", dwg::version(bytes));
        return of_few_layers(drawing, limits);
    }
    #[cfg(feature = "pdf-in")]
    if is_pdf(bytes) {
        let drawing = pdf_in::drawing(bytes, name, limits, findings)?;
        return of_few_layers(drawing, limits);
    }
    let wide = wide::encoding(bytes);
    let bytes = &*wide::narrowed(bytes);
    let mut drawing = if is_svg(bytes) {
        svg_in::drawing(bytes, name, limits, findings)?
    } else if let Some(looks_like) = looks_like(bytes) {
        return Err(Refusal::new(DrawingFinding::NotDxf { name: name.to_owned(), looks_like }));
    } else {
        dxf::drawing(bytes, name, limits, findings)?
    };
    if let Some(wide) = wide {
        drawing.dialect.encoding = wide.name().to_owned();
    }
    of_few_layers(drawing, limits)
}

/// Whether a drawing is text in UTF-16: it is read, and nothing can be put into its own bytes.
pub fn is_wide(bytes: &[u8]) -> bool {
    wide::encoding(bytes).is_some()
}

/// Whether a drawing is a PDF: its mark stands within the first kilobyte.
pub fn is_pdf(bytes: &[u8]) -> bool {
    bytes[..bytes.len().min(1024)].windows(5).any(|w| w == b"%PDF-")
}

/// What an update of a PDF needs to know of it: the pages that [`drawing`] reads with the same limits.
#[cfg(feature = "pdf-in")]
pub fn pdf_base(bytes: &[u8], limits: &Limits) -> Option<PdfBase> {
    pdf_in::base(bytes, limits)
}

/// Whether a drawing is a DWG.
pub fn is_dwg(bytes: &[u8]) -> bool {
    bytes.starts_with(b"AC10")
}

/// What a file is that must be unpacked or saved anew before it can be read.
fn packed(bytes: &[u8]) -> Option<LooksLike> {
    use LooksLike::{Compressed, Gzip, Zip};
    let starts: [(&[u8], LooksLike); 12] = [
        (b"PK\x03\x04", Zip),
        (b"PK\x05\x06", Zip),
        (b"PK\x07\x08", Zip),
        (b"\x1f\x8b", Gzip),
        (b"\x1f\x9d", Compressed),
        (b"\x1f\xa0", Compressed),
        (b"BZh", Compressed),
        (b"\xfd7zXZ\0", Compressed),
        (b"\x28\xb5\x2f\xfd", Compressed),
        (b"\x04\x22\x4d\x18", Compressed),
        (b"7z\xbc\xaf\x27\x1c", Compressed),
        (b"Rar!\x1a\x07", Compressed),
    ];
    if let Some((_, what)) = starts.iter().find(|(magic, _)| bytes.starts_with(magic)) {
        return Some(*what);
    }
    if bytes.get(257..262) == Some(b"ustar") {
        return Some(LooksLike::Tar);
    }
    wide::four_bytes(bytes).then_some(LooksLike::Utf32)
}

/// Refuses a drawing with more layers than any has.
fn of_few_layers(drawing: Drawing, limits: &Limits) -> Result<Drawing, Refusal> {
    if drawing.layers.len() <= limits.layers {
        return Ok(drawing);
    }
    let (name, most) = (drawing.name, limits.layers);
    Err(Refusal::new(DrawingFinding::LayersTooMany { name, most }))
}

/// Whether the first element is `svg`: past the declaration, comments and the document type.
pub fn is_svg(bytes: &[u8]) -> bool {
    let head = wide::narrowed(&bytes[..bytes.len().min(1 << 16)]);
    let head = String::from_utf8_lossy(&head);
    let head = head.trim_start_matches('\u{feff}').trim_start();
    // A document type names the first element; what it declares may hold others.
    let named = head.split_once("<!DOCTYPE").map(|(_, t)| t.trim_start());
    if head.starts_with('<') && named.is_some_and(|t| t.starts_with("svg")) {
        return true;
    }
    head.starts_with('<')
        && head
            .match_indices('<')
            .map(|(i, _)| &head[i + 1..])
            .find(|t| t.starts_with(|c: char| c.is_alphabetic()))
            .is_some_and(|t| {
                let name = t.split(|c: char| c.is_whitespace() || c == '>' || c == '/').next();
                name.is_some_and(|n| n == "svg" || n.ends_with(":svg"))
            })
}

/// What a file that is not DXF looks like; `None` if it may be one.
fn looks_like(bytes: &[u8]) -> Option<LooksLike> {
    let head = &bytes[..bytes.len().min(512)];
    if head.is_empty() {
        return Some(LooksLike::EmptyFile);
    }
    let starts: [(&[u8], LooksLike); 6] = [
        (b"AC10", LooksLike::Dwg),
        (b"%PDF", LooksLike::Pdf),
        (b"\x89PNG", LooksLike::Png),
        (b"\xff\xd8\xff", LooksLike::Jpeg),
        (b"II*\0", LooksLike::Tiff),
        (b"{", LooksLike::Json),
    ];
    if let Some((_, what)) = starts.iter().find(|(magic, _)| head.starts_with(magic)) {
        return Some(*what);
    }
    if head.starts_with(dxf::tags::BINARY_MAGIC) {
        return None;
    }
    let text = head.trim_ascii_start();
    if text.starts_with(b"<") {
        return Some(LooksLike::OtherXml);
    }
    // The first line of a DXF is a group code.
    let text = text.strip_prefix(b"\xef\xbb\xbf").unwrap_or(text);
    let first = text.split(|b| *b == b'\n' || *b == b'\r').next().unwrap_or_default();
    let code = !first.is_empty() && first.trim_ascii().iter().all(u8::is_ascii_digit);
    (!code).then_some(LooksLike::OtherData)
}
