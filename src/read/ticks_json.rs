//! What a crew has ticked, as the page of a layout saved it.

use crate::finding::Refusal;
use crate::finding::files::{FileFinding, TicksFault};
use crate::layout::ticks::{FORMAT, Ticks};

/// Reads saved ticks; `name` is what errors call the file, `drawing` the fingerprint of the drawing that they must
/// be of.
///
/// # Errors
/// `ticks-unreadable` for what is no such file, and for ticks of another drawing.
pub fn parse(bytes: &[u8], name: &str, drawing: &str) -> Result<Ticks, Refusal> {
    let refused = |fault: TicksFault| {
        Refusal::new(FileFinding::TicksUnreadable { file: name.to_owned(), fault })
    };
    let ticks: Ticks = serde_json::from_slice(bytes)
        .map_err(|e| refused(TicksFault::NoTicks { reader_says: e.to_string() }))?;
    if ticks.format != FORMAT {
        return Err(refused(TicksFault::OtherFormat { found: ticks.format }));
    }
    if ticks.drawing != drawing {
        return Err(refused(TicksFault::OtherDrawing));
    }
    Ok(ticks)
}
