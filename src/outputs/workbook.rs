//! The takeoff as a workbook.

use super::file::OutputFile;
use super::given::Given;
use crate::cores::threads;
use crate::finding::Refusal;
use crate::finding::files::{FileFinding, WriterFault};
use crate::write::xlsx;

/// The workbook.
pub(super) fn file(given: &Given) -> Result<OutputFile, WriterFault> {
    Ok(("takeoff.xlsx".to_owned(), xlsx::workbook(given.layout, given.takeoff)?))
}

/// Refuses a run that could not write it, before anything is made.
///
/// # Errors
/// `threads-missing` with what the system says.
pub(super) fn can_be_made() -> Result<(), Refusal> {
    threads::wanted(xlsx::SHEETS).map_err(|e| {
        let (wanted, system_says) = (xlsx::SHEETS, e.to_string());
        Refusal::new(FileFinding::ThreadsMissing { wanted, system_says })
    })
}
