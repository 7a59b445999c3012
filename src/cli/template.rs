//! The files of `template` into a folder.

use std::path::Path;
use std::process::ExitCode;

use super::files;
use super::terminal::{refused, tell_line, tell_recovered};
use crate::clean::terminal;
use crate::finding::Findings;
use crate::outputs::template;
use crate::units::LengthStyle;
use crate::wording::command;

/// The template's files, none of them put in the place of somebody's.
pub(super) fn run(folder: &Path, replace: bool) -> ExitCode {
    tell_recovered(folder);
    let written = template::files().and_then(|list| {
        files::write_beside(folder, &list, &[], replace)?;
        Ok(list)
    });
    match written {
        Ok(list) => {
            let names: Vec<&str> = list.iter().map(|f| f.0.as_str()).collect();
            tell_line(&command::wrote(&terminal(&folder.display().to_string()), &names));
            ExitCode::SUCCESS
        }
        Err(r) => refused(&r, &Findings::default(), LengthStyle::default()),
    }
}
