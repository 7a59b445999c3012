//! The page that holds the whole program, made in a checkout of the source.

use std::path::Path;
use std::process::ExitCode;

use super::files;
use super::terminal::{refused, tell_line};
use crate::clean::terminal;
use crate::finding::{Findings, Refusal};
use crate::units::LengthStyle;
use crate::wording::command;

/// Makes the page and writes it; `replace` writes over a file that stands there.
pub(super) fn run(out: &Path, replace: bool) -> ExitCode {
    let made = made().and_then(|page| {
        let folder = out.parent().filter(|p| !p.as_os_str().is_empty()).unwrap_or(Path::new("."));
        let name = out.file_name().map_or_else(String::new, |n| n.to_string_lossy().into_owned());
        let bytes = page.len();
        files::write_beside(folder, &[(name, page.into_bytes())], &[], replace).map(|()| bytes)
    });
    match made {
        Ok(bytes) => {
            tell_line(&command::page_made(&terminal(&out.display().to_string()), bytes));
            ExitCode::SUCCESS
        }
        Err(r) => refused(&r, &Findings::default(), LengthStyle::default()),
    }
}

/// The page as a text.
#[cfg(feature = "page")]
fn made() -> Result<String, Refusal> {
    super::page_build::page()
}

/// A program without what makes one.
#[cfg(not(feature = "page"))]
fn made() -> Result<String, Refusal> {
    use crate::finding::files::{FileFinding, PageFault};
    Err(Refusal::new(FileFinding::PageNotMade { fault: PageFault::LeftOut }))
}
