//! Settings of a job in words: what is in force, and where it comes from.

use serde_json::Value;

use super::setting_value;
use crate::job::Job;
use crate::job::{idle, schema};

/// One setting.
pub(super) struct Setting {
    /// Dotted key, as the job file spells it.
    pub(super) key: String,
    /// Value in force, lengths in the job's words.
    pub(super) value: String,
    /// Whether the job sets another value than the default.
    pub(super) set: bool,
    /// What it means, its default and the source of that.
    pub(super) words: String,
}

/// Every setting that a figure may hang on; title, views and layers are told elsewhere.
pub(super) fn settings(job: &Job) -> Vec<Setting> {
    const ELSEWHERE: [&str; 14] = [
        "title",
        "revision",
        "built",
        "layers",
        "elevation",
        "return",
        "angled",
        "band",
        "movement_joint",
        "sheet",
        "skip",
        "join",
        "wall",
        "opening",
    ];
    let value = |j: &Job| serde_json::to_value(j).unwrap_or_default();
    let (mine, usual) = (value(job), value(&Job::default()));
    let (words, lengths) = (schema::descriptions(), schema::lengths());
    let one = |key: String| {
        let at = |v: &Value| v.pointer(&format!("/{}", key.replace('.', "/"))).cloned();
        let found = at(&mine).filter(|v| !v.is_object())?;
        let set = at(&usual).as_ref() != Some(&found);
        let text = setting_value::text(job.sheet.lengths, &key, &found, &lengths);
        let words = words.get(&key).map(|w| w.replace('\n', " ")).unwrap_or_default();
        Some(Setting { value: text, set, words, key })
    };
    let idle = idle::keys(job);
    schema::keys()
        .into_iter()
        .filter(|k| !idle.contains(&k.as_str()))
        .filter(|k| !ELSEWHERE.contains(&k.split('.').next().unwrap_or_default()))
        .filter_map(one)
        .collect()
}
