//! The files of `template` into a folder.

use std::path::Path;
use std::process::ExitCode;

use super::files;
use super::terminal::{refused, tell};
use crate::finding::Findings;
use crate::outputs::template;
use crate::units::LengthStyle;

/// The template's files, none of them put in the place of another.
pub(super) fn run(folder: &Path) -> ExitCode {
    let written = template::files().and_then(|list| {
        files::none_there(folder, &list)?;
        files::write_beside(folder, &list, &[])?;
        Ok(list)
    });
    match written {
        Ok(list) => {
            let names: Vec<&str> = list.iter().map(|f| f.0.as_str()).collect();
            tell(&format!("Wrote {}: {}\n", folder.display(), names.join(", ")));
            ExitCode::SUCCESS
        }
        Err(r) => refused(&r, &Findings::default(), LengthStyle::default()),
    }
}
