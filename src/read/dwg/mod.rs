//! DWG: its objects written as the group pairs of a DXF, so that one reader makes shapes of both.

mod curves;
mod entities;
mod file;
mod fit;
mod hatch;
mod pairs;
mod style;
mod words;

use opendwg::Error;

use crate::finding::drawing::DrawingFinding;
use crate::finding::formats::DwgFault;
use crate::finding::{Finding, Findings, Refusal};

/// A DWG as the text of a DXF: tables, blocks and entities, each entity with its own handle.
///
/// # Errors
/// `dwg-unreadable`, with the fault: a version that is not read, a password, or a file that is broken.
pub(super) fn as_dxf(
    bytes: &[u8],
    name: &str,
    findings: &mut Findings,
) -> Result<Vec<u8>, Refusal> {
    let refused =
        |fault| Refusal::new(DrawingFinding::DwgUnreadable { name: name.to_owned(), fault });
    let source = opendwg::Drawing::from_bytes(bytes).map_err(|e| refused(fault(&e, bytes)))?;
    let (text, texts_lost) = file::text(&source);
    if texts_lost > 0 {
        findings.push(Finding::new(DrawingFinding::DwgTextsLost { texts: texts_lost }));
    }
    Ok(text)
}

/// The version a DWG states: `AC1018`.
pub(super) fn version(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes.get(..6).unwrap_or_default()).into_owned()
}

fn fault(error: &Error, bytes: &[u8]) -> DwgFault {
    match error {
        Error::UnsupportedVersion(_) => DwgFault::Version { version: version(bytes) },
        Error::Encrypted(_) => DwgFault::Locked,
        _ => DwgFault::Broken,
    }
}
