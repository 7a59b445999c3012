//! `layout.json` and the schemas, by `serde_json`.

use crate::job::Job;
use crate::model::layout::Layout;

/// The layout as `lapwright-layout/1`, one blank of indent, a line end at the end. Lengths are
/// rounded to the millionth of an inch: below the grid, above the noise of the last bit.
pub fn layout(layout: &Layout) -> Vec<u8> {
    let mut value = serde_json::to_value(layout).unwrap_or_default();
    round(&mut value);
    pretty(&value)
}

/// JSON Schema of `layout.json`.
pub fn layout_schema() -> Vec<u8> {
    pretty(&serde_json::to_value(schemars::schema_for!(Layout)).unwrap_or_default())
}

/// JSON Schema of the job file.
pub fn job_schema() -> Vec<u8> {
    pretty(&serde_json::to_value(schemars::schema_for!(Job)).unwrap_or_default())
}

fn pretty(value: &serde_json::Value) -> Vec<u8> {
    let mut out = serde_json::to_vec_pretty(value).unwrap_or_default();
    out.push(b'\n');
    out
}

fn round(value: &mut serde_json::Value) {
    match value {
        serde_json::Value::Array(list) => list.iter_mut().for_each(round),
        serde_json::Value::Object(map) => map.values_mut().for_each(round),
        serde_json::Value::Number(n) if n.is_f64() => {
            let rounded =
                n.as_f64().map(|v| (v * 1e6).round() / 1e6).map(|v| if v == 0.0 { 0.0 } else { v });
            if let Some(n) = rounded.and_then(serde_json::Number::from_f64) {
                *value = serde_json::Value::Number(n);
            }
        }
        _ => {}
    }
}

/// The takeoff lines alone.
pub fn takeoff(layout: &Layout) -> Vec<u8> {
    let mut value = serde_json::to_value(&layout.takeoff).unwrap_or_default();
    round(&mut value);
    pretty(&value)
}

/// The word a plain enum value is written as.
pub fn word(value: &impl serde::Serialize) -> Option<String> {
    serde_json::to_value(value).ok()?.as_str().map(str::to_owned)
}
