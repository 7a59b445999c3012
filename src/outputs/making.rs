//! Whether files are of the program's making, name and content: for folders of results from before a list
//! of files stood beside them.

use std::collections::BTreeMap;

use super::names::{ZONE, is_own_name};
use crate::write::making::Results;

/// Paths of those files that no run of this program wrote as they are.
pub fn not_of_our_making(files: &BTreeMap<String, Vec<u8>>) -> Vec<String> {
    // The house's set, and each zone's.
    let mut sets: BTreeMap<&str, BTreeMap<&str, &[u8]>> = BTreeMap::new();
    for (path, bytes) in files {
        let (set, name) = match path.split_once('/') {
            Some((zone, name)) if zone.starts_with(ZONE) => (zone, name),
            _ => ("", path.as_str()),
        };
        sets.entry(set).or_default().insert(name, bytes);
    }
    let mut out: Vec<String> = files.keys().filter(|p| !is_own_name(p)).cloned().collect();
    for (set, files) in sets {
        let results = Results::of(&files);
        let foreign = files.iter().filter(|(name, bytes)| !results.made(name, bytes));
        out.extend(foreign.map(|(name, _)| match set {
            "" => (*name).to_owned(),
            _ => format!("{set}/{name}"),
        }));
    }
    out.sort();
    out.dedup();
    out
}
