//! Who says so, by title.

use crate::sources::record::{Record, Sureness};

/// The sources of some facts, each once; nothing where they are arithmetic or definition.
pub fn titles(records: &[Record]) -> String {
    let mut out: Vec<&str> = Vec::new();
    for r in records {
        let unsourced = match r.sureness {
            Sureness::Exact => None,
            Sureness::Memory => Some("from memory"),
            Sureness::Read | Sureness::Practice | Sureness::Disputed => Some("common practice"),
        };
        let named = r.sources.iter().map(|s| s.title());
        let each: Vec<&str> = match r.sources {
            [] => unsourced.into_iter().collect(),
            _ => named.collect(),
        };
        out.extend(each);
    }
    let mut seen = std::collections::BTreeSet::new();
    out.retain(|t| seen.insert(*t));
    out.join("; ")
}

/// The same in brackets after a blank.
pub fn in_brackets(records: &[Record]) -> String {
    match titles(records) {
        t if t.is_empty() => t,
        t => format!(" ({t})"),
    }
}
