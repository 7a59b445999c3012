//! Of blocks that cannot be inserted.

use super::finding_words::FindingWords;
use crate::finding::drawing::BlockFault;
use crate::units::counted;

pub(super) fn nesting(block: &str, fault: BlockFault, insertions: usize) -> FindingWords {
    let why = match fault {
        BlockFault::InsertsItself => "inserts itself",
        BlockFault::NestedTooDeep => "is nested too deep",
    };
    FindingWords::new(
        format!("block `{block}` {why}: {} left out", counted(insertions, "insertion")),
        "Explode or redraw the block.",
    )
}

pub(super) fn external(block: &str, file: &str, insertions: usize) -> FindingWords {
    let times = if insertions == 1 { "once".to_owned() } else { format!("{insertions} times") };
    let named = if file.is_empty() { String::new() } else { format!(" ({file})") };
    FindingWords::new(
        format!(
            "block `{block}`, inserted {times}, stands in another file{named}, which is not read: what it shows is missing"
        ),
        "Bind the external reference into the drawing and save it again.",
    )
}
