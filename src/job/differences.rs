//! Settings that two jobs give differently.

use std::collections::BTreeMap;

use serde_json::Value;

use super::root::Job;
use crate::model::change::SettingChange;

/// Every setting whose value differs, in force, defaults included; by its key. The title block and the page's
/// looks are none: they lay nothing out otherwise.
pub fn differences(old: &Job, new: &Job) -> Vec<SettingChange> {
    let leaves = |job: &Job| {
        let mut out = BTreeMap::new();
        let value = serde_json::to_value(job).unwrap_or_default();
        leaves(&value, String::new(), &mut out);
        out
    };
    let (was, is) = (leaves(old), leaves(new));
    let mut keys: Vec<&String> = was.keys().chain(is.keys()).collect();
    keys.sort();
    keys.dedup();
    let lays = |key: &&&String| {
        !["title.", "sheet.", "revision", "built"].iter().any(|part| key.starts_with(part))
    };
    let differ = keys.iter().filter(lays).filter(|k| was.get(**k) != is.get(**k));
    differ
        .map(|k| SettingChange {
            key: (*k).clone(),
            from: was.get(*k).cloned(),
            to: is.get(*k).cloned(),
        })
        .collect()
}

fn leaves(value: &Value, key: String, out: &mut BTreeMap<String, String>) {
    match value {
        Value::Object(map) => {
            for (name, inner) in map {
                let inner_key = if key.is_empty() { name.clone() } else { format!("{key}.{name}") };
                leaves(inner, inner_key, out);
            }
        }
        Value::Null => {}
        other => {
            out.insert(key, other.to_string());
        }
    }
}
