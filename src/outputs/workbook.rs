//! The takeoff as a workbook.

use super::file::OutputFile;
use super::given::Given;
use crate::finding::files::WriterFault;
use crate::write::xlsx;

/// The workbook.
pub(super) fn file(given: &Given) -> Result<OutputFile, WriterFault> {
    Ok(("takeoff.xlsx".to_owned(), xlsx::workbook(given.layout, given.takeoff)?))
}
