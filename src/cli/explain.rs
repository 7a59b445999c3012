//! What the code of a finding means.

use std::process::ExitCode;

use super::terminal::{print, tell};
use crate::clean::terminal;
use crate::finding::FindingCode;
use crate::job::nearest::nearest;
use crate::wording::explain::unknown;
use crate::write::explain::{page, table};

/// Explains one code, or lists all.
pub(super) fn run(code: Option<&str>) -> ExitCode {
    let Some(code) = code else { return print(table().as_bytes()) };
    match FindingCode::named(&code.to_lowercase()) {
        Some(code) => print(page(code).as_bytes()),
        None => {
            let known: Vec<String> =
                FindingCode::all().iter().map(|c| c.word().to_owned()).collect();
            let nearest = nearest(&code.to_lowercase(), &known).map(String::as_str);
            tell(&format!("{}\n", unknown(&terminal(code), nearest)));
            ExitCode::from(2)
        }
    }
}
