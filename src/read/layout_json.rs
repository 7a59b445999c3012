//! A layout from its own file.

use serde::Deserialize;
use serde_json::Error;

use crate::finding::Refusal;
use crate::finding::files::FileFinding;
use crate::layout::Layout;
use crate::layout::format::FORMAT;

/// What a file says it is.
#[derive(Deserialize)]
struct Head {
    format: Option<String>,
}

/// Reads `layout.json` back: what is read is what was written, to the last bit.
///
/// # Errors
/// `layout-format` for a file of another format or version, `layout-unreadable` for one that is damaged.
pub fn layout(bytes: &[u8]) -> Result<Layout, Refusal> {
    let head: Head = serde_json::from_slice(bytes).map_err(unreadable)?;
    if head.format.as_deref() != Some(FORMAT) {
        let expected = FORMAT.to_owned();
        return Err(Refusal::new(FileFinding::LayoutFormat { found: head.format, expected }));
    }
    serde_json::from_slice(bytes).map_err(unreadable)
}

fn unreadable(why: Error) -> Refusal {
    Refusal::new(FileFinding::LayoutUnreadable {
        line: why.line(),
        column: why.column(),
        reader_says: why.to_string(),
    })
}
