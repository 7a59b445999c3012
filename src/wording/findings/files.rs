//! Of files and folders.

use super::finding_words::FindingWords;
use crate::finding::files::{FileFinding, OutputRefusal, OutputTarget, OverlayReason, WriterFault};

const OTHER_FOLDER: &str = "Give another folder with --out";

pub(super) fn words(found: &FileFinding) -> FindingWords {
    match found {
        FileFinding::FileUnreadable { path, system_says } => FindingWords::new(
            format!("{path} cannot be read: {system_says}"),
            "Check the path and that you may read the file.",
        ),
        FileFinding::OutFailed { target, system_says } => out_failed(target, system_says),
        FileFinding::OutRefused { refusal } => out_refused(refusal),
        FileFinding::WriteFailed { fault } => FindingWords::new(
            format!("a result cannot be made: {}", writer_fault(fault)),
            "Please report this with the drawing; --no-pictures leaves PDF and PNG out.",
        ),
        FileFinding::ThreadsMissing { wanted, system_says } => FindingWords::new(
            format!(
                "the workbook takes {wanted} threads at once, and the system does not give them: {system_says}"
            ),
            "Raise the limit of processes (`ulimit -u`) or of memory, or end other programs, and run again.",
        ),
        FileFinding::LayoutFormat { found, expected } => layout_format(found.as_deref(), expected),
        FileFinding::LayoutUnreadable { line, column, reader_says } => {
            // What is missing in one that is whole as JSON has no place.
            let place = match line {
                0 => String::new(),
                _ => format!(" (line {line}, column {column})"),
            };
            FindingWords::new(
                format!("the layout cannot be read: {reader_says}{place}"),
                "The file is damaged or was changed: lay the drawing out again with `lapwright layout`.",
            )
        }
        FileFinding::OverlayApart { reason } => {
            let why = match reason {
                OverlayReason::BinarySource => "the drawing is a binary DXF",
                OverlayReason::NoEntitiesSection => {
                    "the drawing has no complete section of entities"
                }
                OverlayReason::WideSource => "the drawing is saved in UTF-16",
            };
            FindingWords::new(
                format!("overlay.dxf is a drawing of its own, on the same origin: {why}"),
                "Save the drawing as a text DXF to have the overlay in a copy of it.",
            )
        }
    }
}

fn writer_fault(fault: &WriterFault) -> &str {
    match fault {
        WriterFault::SheetWithoutSize => "a sheet has no size",
        WriterFault::SheetNotDrawn => "a sheet cannot be drawn",
        WriterFault::PictureWithoutSize => "a picture has no size",
        WriterFault::Library { library_says } => library_says,
    }
}

fn layout_format(found: Option<&str>, expected: &str) -> FindingWords {
    let what = match found {
        Some(format) => format!("the file is of the format `{format}`"),
        None => "the file names no format".to_owned(),
    };
    FindingWords::new(
        format!("{what}; this version reads `{expected}`"),
        "Lay the drawing out again with `lapwright layout` of this version.",
    )
}

fn out_failed(target: &OutputTarget, system_says: &str) -> FindingWords {
    match target {
        OutputTarget::WholeFolder { path } => FindingWords::new(
            format!("{path} cannot be written: {system_says}"),
            "Check free space and that you may write there; what stood there before is untouched.",
        ),
        OutputTarget::FilesInFolder { path } => FindingWords::new(
            format!("{path} cannot be written: {system_says}"),
            "Check free space and that you may write there.",
        ),
        OutputTarget::UnreadableFolder { path } => FindingWords::new(
            format!("{path} cannot be read: {system_says}"),
            "Check that you may read it.",
        ),
        OutputTarget::StandardOutput => FindingWords::new(
            format!("standard output cannot be written: {system_says}"),
            "Check free space where the output goes; what is there is not whole.",
        ),
    }
}

fn out_refused(refusal: &OutputRefusal) -> FindingWords {
    let (message, and) = match refusal {
        OutputRefusal::NotAFolder { path } => (format!("{path} is a file, not a folder"), "."),
        OutputRefusal::IsAFolder { path } => {
            (format!("{path} is a folder"), ", or move that one away.")
        }
        OutputRefusal::AlreadyThere { path } => (
            format!("{path} is there already"),
            ", or move that file away; it may hold somebody's work.",
        ),
        OutputRefusal::IsASource { path } => {
            (format!("{path} is what this run reads"), "; a source is never overwritten.")
        }
        OutputRefusal::HoldsASource { path, source } => (
            format!("{source}, which this run reads, lies in {path}"),
            "; a source is never overwritten.",
        ),
        OutputRefusal::IsWorkingFolder { path } => (
            format!("{path} is the folder you are in"),
            " for the results alone: it is replaced as a whole.",
        ),
        OutputRefusal::HoldsOtherFiles { path, other } => (
            format!("{path} holds {other}, which no layout wrote"),
            ", empty or new, so that nothing of yours is lost.",
        ),
    };
    FindingWords::new(message, format!("{OTHER_FOLDER}{and}"))
}
