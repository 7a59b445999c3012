//! Settings of a job in words: what is in force, and where it comes from.

use serde_json::Value;

use crate::job::Job;
use crate::job::{idle, schema};
use crate::units::{LengthStyle, MM_PER_INCH};

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
        let text = match (&found, found.as_f64()) {
            (Value::Null, _) => "left out".to_owned(),
            (_, Some(inches)) if lengths.contains(&key) && inches.abs() >= 36.0 => {
                job.sheet.lengths.length(inches)
            }
            (_, Some(inches)) if lengths.contains(&key) => exact(job.sheet.lengths, inches),
            (Value::String(s), _) if s.is_empty() => "left out".to_owned(),
            (Value::String(s), _) => s.clone(),
            (v, _) => v.to_string(),
        };
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

/// A short length as it is set: to a tenth of a millimeter, where sheets tell whole ones.
fn exact(style: LengthStyle, inches: f64) -> String {
    match style {
        LengthStyle::Feet => style.short(inches),
        LengthStyle::Mm => format!("{} mm", (inches * MM_PER_INCH * 10.0).round() / 10.0),
    }
}
