//! The value of a setting in words.

use std::collections::BTreeSet;

use serde_json::Value;

use crate::units::{LengthStyle, MM_PER_INCH};
use crate::wording::told_settings::LEFT_OUT;

/// A value in words, lengths as the job writes them; `lengths` are the keys that hold one.
pub(super) fn text(
    style: LengthStyle,
    key: &str,
    found: &Value,
    lengths: &BTreeSet<String>,
) -> String {
    match (found, found.as_f64()) {
        (Value::Null, _) => LEFT_OUT.to_owned(),
        (_, Some(inches)) if lengths.contains(key) && inches.abs() >= 36.0 => style.length(inches),
        (_, Some(inches)) if lengths.contains(key) => exact(style, inches),
        (Value::String(s), _) if s.is_empty() => LEFT_OUT.to_owned(),
        (Value::String(s), _) => s.clone(),
        (v, _) => v.to_string(),
    }
}

/// A short length as it is set: to a tenth of a millimeter, where sheets tell whole ones.
fn exact(style: LengthStyle, inches: f64) -> String {
    match style {
        LengthStyle::Feet => style.short(inches),
        LengthStyle::Mm => format!("{} mm", (inches * MM_PER_INCH * 10.0).round() / 10.0),
    }
}
