//! A file to be written, and what is told when it cannot be made.

use crate::finding::Refusal;
use crate::finding::files::{FileFinding, WriterFault};

/// A file: its path inside the folder, and its bytes.
pub type OutputFile = (String, Vec<u8>);

/// A refusal for a file that a writer could not make.
pub(super) fn write_failed(fault: WriterFault) -> Refusal {
    Refusal::new(FileFinding::WriteFailed { fault })
}

/// Whether a set of so many sheets is written as PNG too: of a large one that would take longer than
/// everything else, and its PDF holds every sheet.
pub fn pictured(sheets: usize) -> bool {
    sheets <= 80
}
