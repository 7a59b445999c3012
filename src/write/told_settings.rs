//! Settings of a job with the file that each comes from, for `check`.

use std::collections::{BTreeMap, BTreeSet};

use serde_json::Value;

use super::setting_value;
use super::text::fitted;
use crate::clean::terminal;
use crate::job::{Job, idle, schema};
use crate::wording::told_settings as words;

/// A table of the settings that the files of a job say, or of all there are: key, value, and the file or the
/// default. `from` has the number of the file of each key that one says.
pub fn text(job: &Job, files: &[&str], from: &BTreeMap<String, usize>, all: bool) -> String {
    let value = serde_json::to_value(job).unwrap_or_default();
    let lengths = schema::lengths();
    let keys: BTreeSet<String> = from
        .keys()
        .cloned()
        .chain(all.then(|| defaults(job, &value)).into_iter().flatten())
        .collect();
    let mut out = format!("{}\n", words::HEAD);
    for key in keys {
        let at = value.pointer(&format!("/{}", key.replace('.', "/")));
        let said = match at {
            Some(Value::Array(list)) if list.iter().any(Value::is_object) => {
                words::entries(list.len())
            }
            Some(found) => setting_value::text(job.sheet.lengths, &key, found, &lengths),
            // What is spelled in a way of its own, or a key with a period in it.
            None => words::SAID.to_owned(),
        };
        let file = from.get(&key).and_then(|i| files.get(*i));
        out.push_str(&format!(
            "  {:<38} {:<20} {}\n",
            fitted(&terminal(&key), 38),
            fitted(&terminal(&said), 20),
            terminal(file.map_or(words::DEFAULT, |f| f))
        ));
    }
    out
}

/// Keys that are in force without a file that says them.
fn defaults(job: &Job, value: &Value) -> Vec<String> {
    let idle = idle::keys(job);
    let is_set = |k: &String| {
        let found = value.pointer(&format!("/{}", k.replace('.', "/")));
        let alone = |v: &Value| {
            !v.is_object() && v.as_array().is_none_or(|a| !a.iter().any(Value::is_object))
        };
        !idle.contains(&k.as_str()) && found.is_some_and(alone)
    };
    schema::keys().into_iter().filter(is_set).collect()
}
