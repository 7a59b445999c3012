//! Of files and folders.

use super::finding_words::FindingWords;
use super::kept;
use crate::finding::files::{
    FileFinding, NameFault, OutputRefusal, OutputTarget, OverlayReason, PageFault, WriterFault,
};

const OTHER_FOLDER: &str = "Give another folder with --out";

pub(super) fn words(found: &FileFinding) -> FindingWords {
    match found {
        FileFinding::FileUnreadable { path, system_says } => FindingWords::new(
            format!("{path} cannot be read: {system_says}"),
            "Check the path and that you may read the file.",
        ),
        FileFinding::OutFailed { target, system_says } => out_failed(target, system_says),
        FileFinding::OutRefused { refusal } => out_refused(refusal),
        FileFinding::HousesAlike { folder, one, other } => alike(folder, one, other),
        FileFinding::NoHouses { path } => no_houses(path),
        FileFinding::OneHouseAlone { option } => one_alone(option),
        FileFinding::WriteFailed { fault } => FindingWords::new(
            format!("a result cannot be made: {}", writer_fault(fault)),
            "Please report this with the drawing; --no-pictures leaves PDF and PNG out.",
        ),
        FileFinding::ThreadsMissing { wanted, system_says } => {
            threads_missing(*wanted, system_says)
        }
        FileFinding::PageNotMade { fault } => page_not_made(fault),
        FileFinding::LayoutFormat { found, expected } => layout_format(found.as_deref(), expected),
        FileFinding::LayoutUnreadable { line, column, reader_says } => {
            layout_unreadable(*line, *column, reader_says)
        }
        FileFinding::NoLayoutFolder { path } => FindingWords::new(
            format!("{path} holds no layout: there is no layout.json in it"),
            "Give a folder that `lapwright layout` wrote, or the drawing itself.",
        ),
        FileFinding::LayoutNotKept { fault } => kept::not_kept(fault),
        FileFinding::StockUnreadable { file, line, column, fault } => {
            kept::stock(file, *line, *column, fault)
        }
        FileFinding::TicksUnreadable { file, fault } => kept::ticks(file, fault),
        FileFinding::OverlayApart { reason } => overlay_apart(*reason),
    }
}

fn threads_missing(wanted: usize, system_says: &str) -> FindingWords {
    FindingWords::new(
        format!(
            "the workbook takes {wanted} threads at once, and the system does not give them: {system_says}"
        ),
        "Raise the limit of processes (`ulimit -u`) or of memory, or end other programs, and run again.",
    )
}

fn overlay_apart(reason: OverlayReason) -> FindingWords {
    let why = match reason {
        OverlayReason::BinarySource => "the drawing is a binary DXF",
        OverlayReason::NoEntitiesSection => "the drawing has no complete section of entities",
        OverlayReason::DwgSource => "the drawing is a DWG",
        OverlayReason::WideSource => "the drawing is saved in UTF-16",
        OverlayReason::PdfSource => "the drawing is a PDF",
        OverlayReason::PdfEnd => "the drawing is a PDF that takes no additions",
    };
    let remedy = match reason {
        OverlayReason::PdfSource => {
            "overlay.pdf has the layout on the pages of the PDF itself, on layers that can be switched off."
        }
        OverlayReason::PdfEnd => {
            "It is locked, or broken and mended in reading. Print it to a new PDF to have overlay.pdf, the layout on its own pages."
        }
        _ => "Save the drawing as a text DXF to have the overlay in a copy of it.",
    };
    FindingWords::new(
        format!("overlay.dxf is a drawing of its own, on the same origin: {why}"),
        remedy,
    )
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

fn layout_unreadable(line: usize, column: usize, reader_says: &str) -> FindingWords {
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

fn alike(folder: &str, one: &str, other: &str) -> FindingWords {
    FindingWords::new(
        format!("{one} and {other} would both go to {folder}"),
        "Each house gets a folder of its name: rename one of the files, or lay them out in two calls.",
    )
}

fn no_houses(path: &str) -> FindingWords {
    FindingWords::new(
        format!("there is no drawing in {path}, and no job that names one"),
        "Give drawings (DXF, DWG, SVG, PDF), jobs with `model.drawing`, or a folder of them.",
    )
}

fn one_alone(option: &str) -> FindingWords {
    FindingWords::new(
        format!("{option} is for one house"),
        "Give one drawing, or leave the option out.",
    )
}

fn out_refused(refusal: &OutputRefusal) -> FindingWords {
    let (message, and) = match refusal {
        OutputRefusal::NotAFolder { path } => (format!("{path} is a file, not a folder"), "."),
        OutputRefusal::JobStands { path } => {
            return FindingWords::new(
                format!("{path} is there already, and no job is written over"),
                "Go on with that job, or move it away and run `lapwright start` again.",
            );
        }
        OutputRefusal::IsAFolder { path } => {
            (format!("{path} is a folder"), ", or move that one away.")
        }
        OutputRefusal::BadName { path, part, name_fault } => {
            (format!("{path} names no folder: {}", bad_name(part, *name_fault)), ".")
        }
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
        OutputRefusal::HoldsOtherFiles { path, strangers, edited } => (
            format!("{path} holds {}; nothing was written", not_ours(strangers, edited)),
            ", or move away what you want to keep. --replace writes over what has the name of a result and keeps everything else.",
        ),
        OutputRefusal::HoldsAnotherDrawing { path, drawing } => (
            format!("{path} holds the results of another drawing, {drawing}"),
            ", so that both are kept, or say --replace to have these in their place.",
        ),
        OutputRefusal::AnotherRun { path } => {
            (format!("another run is writing into {path}"), ", or wait until that run is done.")
        }
        OutputRefusal::ChangedMeanwhile { path } => (
            format!("files in {path} were changed while the results were written; it is as it was"),
            ", or run this again when nobody works in that folder.",
        ),
    };
    FindingWords::new(message, format!("{OTHER_FOLDER}{and}"))
}

fn bad_name(part: &str, fault: NameFault) -> String {
    match fault {
        NameFault::NoName => format!("`{part}` is no name of a new folder"),
        NameFault::Letter { letter } => {
            format!("no name may hold `{letter}`, as `{part}` does")
        }
        NameFault::Device => format!("Windows keeps `{part}` for a device"),
        NameFault::End => {
            format!("Windows takes the period or blank off the end of `{part}`")
        }
    }
}

/// Most files that are named one by one.
const MOST_NAMED: usize = 20;

/// Files that are not as the program wrote them, each by its name.
fn not_ours(strangers: &[String], edited: &[String]) -> String {
    let strangers = (!strangers.is_empty())
        .then(|| format!("what Lapwright did not write ({})", named(strangers)));
    let edited = (!edited.is_empty())
        .then(|| format!("what was changed since Lapwright wrote it ({})", named(edited)));
    strangers.into_iter().chain(edited).collect::<Vec<_>>().join(", and ")
}

fn named(files: &[String]) -> String {
    let shown = files.iter().take(MOST_NAMED).cloned().collect::<Vec<_>>().join(", ");
    match files.len().saturating_sub(MOST_NAMED) {
        0 => shown,
        more => format!("{shown} and {more} more"),
    }
}

fn page_not_made(fault: &PageFault) -> FindingWords {
    let why = match fault {
        PageFault::LeftOut => "this program was built without what makes it".to_owned(),
        PageFault::NoSource => "the program's source is not here".to_owned(),
        PageFault::NoCargo { system_says } => format!("cargo cannot be started: {system_says}"),
        PageFault::NotBuilt { target } => {
            format!("the library was not built for {target}; what cargo says of it stands above")
        }
        PageFault::NotBound { tool_says } => {
            format!("the library that was built cannot be put into a page: {tool_says}")
        }
    };
    let remedy = match fault {
        PageFault::NotBuilt { target } => {
            return FindingWords::new(
                format!("the page is not made: {why}"),
                format!(
                    "If the target is missing, install it: `rustup target add {target}`. Then run again."
                ),
            );
        }
        PageFault::NotBound { .. } => {
            "Run `cargo update --locked` in the checkout to see that its versions are those of Cargo.lock, delete target/page, and run again."
        }
        _ => {
            "In a checkout of the source, run `cargo run --release --features page -- page --out lapwright.html`."
        }
    };
    FindingWords::new(format!("the page is not made: {why}"), remedy)
}
