//! `layout.json` and the schemas, by `serde_json`.

use schemars::JsonSchema;
use schemars::generate::SchemaSettings;
use serde::Serialize;
use serde_json::{Serializer, Value};

use super::json_format::PlainFormatter;
use crate::job::schema::{self};
use crate::layout::Layout;
use crate::layout::ticks::Ticks;
use crate::layout::verified::{Verdict, Verify};
use crate::model::change::Comparison;
use crate::model::takeoff::{PartShare, Takeoff};

/// The layout as `lapwright-layout/2`, two blanks of indent, a line end at the end. Every figure to its
/// last bit, so that what is read back is what was written.
pub fn layout(layout: &Layout) -> Vec<u8> {
    pretty(layout)
}

/// JSON Schema of `layout.json`, as it is written.
pub fn layout_schema() -> Vec<u8> {
    let generator = SchemaSettings::draft2020_12().for_serialize().into_generator();
    let schema = serde_json::to_value(generator.into_root_schema_for::<Layout>());
    pretty(&schema.unwrap_or_default())
}

/// What stands at the head of a table of a layout that breaks rules of the check.
#[derive(Serialize, JsonSchema)]
struct CheckFailed {
    /// What the check says.
    verdict: Verdict,
    /// How many places break a rule.
    places: usize,
}

impl CheckFailed {
    /// Nothing where every rule is kept.
    fn of(verify: &Verify) -> Option<CheckFailed> {
        let failed = CheckFailed { verdict: verify.verdict(), places: verify.places() };
        (!verify.passes()).then_some(failed)
    }
}

/// `takeoff.json`.
#[derive(Serialize, JsonSchema)]
#[schemars(rename = "Takeoff")]
struct TakeoffFile<'a> {
    /// That the layout breaks rules of the check; left out where it keeps them.
    #[serde(skip_serializing_if = "Option::is_none")]
    check: Option<CheckFailed>,
    #[serde(flatten)]
    takeoff: &'a Takeoff,
}

/// A list; of a layout that breaks rules of the check an object that says so and holds the list as
/// `lines`, so that a program that reads the list alone stops.
fn under_bar(verify: &Verify, list: Value) -> Vec<u8> {
    match CheckFailed::of(verify) {
        None => pretty(&list),
        Some(check) => pretty(&serde_json::json!({ "check": check, "lines": list })),
    }
}

/// JSON Schema of `takeoff.json`, as it is written.
pub fn takeoff_schema() -> Vec<u8> {
    let generator = SchemaSettings::draft2020_12().for_serialize().into_generator();
    let schema = serde_json::to_value(generator.into_root_schema_for::<TakeoffFile>());
    pretty(&schema.unwrap_or_default())
}

/// JSON Schema of what the page of a layout saves of ticks.
pub fn ticks_schema() -> Vec<u8> {
    let generator = SchemaSettings::draft2020_12().for_serialize().into_generator();
    let schema = serde_json::to_value(generator.into_root_schema_for::<Ticks>());
    pretty(&schema.unwrap_or_default())
}

/// What each part of the house takes of each line.
pub fn shares(verify: &Verify, rows: &[PartShare]) -> Vec<u8> {
    let mut value = serde_json::to_value(rows).unwrap_or_default();
    round(&mut value);
    under_bar(verify, value)
}

/// `compare.json`: what a revision changes.
pub fn comparison(comparison: &Comparison) -> Vec<u8> {
    let mut value = serde_json::to_value(comparison).unwrap_or_default();
    round(&mut value);
    pretty(&value)
}

/// JSON Schema of what `compare` writes.
pub fn compare_schema() -> Vec<u8> {
    let generator = SchemaSettings::draft2020_12().for_serialize().into_generator();
    let schema = serde_json::to_value(generator.into_root_schema_for::<Comparison>());
    pretty(&schema.unwrap_or_default())
}

/// JSON Schema of the job file, as it is read.
pub fn job_schema() -> Vec<u8> {
    pretty(&schema::value())
}

/// A value as JSON on one line; empty where it is none.
pub fn compact(value: &impl Serialize) -> String {
    serde_json::to_string(value).unwrap_or_default()
}

fn pretty(value: &impl Serialize) -> Vec<u8> {
    let mut out = Vec::new();
    let mut writer = Serializer::with_formatter(&mut out, PlainFormatter::default());
    if value.serialize(&mut writer).is_err() {
        out.clear();
    }
    out.push(b'\n');
    out
}

fn round(value: &mut Value) {
    match value {
        Value::Array(list) => list.iter_mut().for_each(round),
        Value::Object(map) => map.values_mut().for_each(round),
        Value::Number(n) if n.is_f64() => {
            let rounded = n.as_f64().map(|v| (v * 1e6).round() / 1e6);
            if let Some(n) = rounded.and_then(serde_json::Number::from_f64) {
                *value = Value::Number(n);
            }
        }
        _ => {}
    }
}

/// The lines alone, as `layout.json` holds them; with prices, `cost` in each line to buy, null
/// where no price was given.
pub fn takeoff_lines(verify: &Verify, takeoff: &Takeoff) -> Vec<u8> {
    let lines = takeoff.lines.iter().map(|line| {
        let mut value = serde_json::to_value(line).unwrap_or_default();
        if let (Some(cost), true, Value::Object(map)) =
            (&takeoff.cost, takeoff.buys(line), &mut value)
        {
            let priced = cost.lines.iter().find(|p| p.item == line.id);
            let mut priced = serde_json::to_value(priced).unwrap_or_default();
            if let Value::Object(p) = &mut priced {
                p.shift_remove("item");
                p.insert("currency".to_owned(), cost.currency.clone().into());
            }
            map.insert("cost".to_owned(), priced);
        }
        value
    });
    let mut value = Value::Array(lines.collect());
    round(&mut value);
    under_bar(verify, value)
}

/// `takeoff.json`: lines, cutting, leftovers, comparison, cross-checks, advice and cost.
pub fn takeoff(verify: &Verify, takeoff: &Takeoff) -> Vec<u8> {
    let file = TakeoffFile { check: CheckFailed::of(verify), takeoff };
    let mut value = serde_json::to_value(file).unwrap_or_default();
    round(&mut value);
    pretty(&value)
}

/// Every text of a value with the dotted key it stands at.
pub fn texts(value: &impl serde::Serialize) -> Vec<(String, String)> {
    fn walk(value: Value, key: &str, out: &mut Vec<(String, String)>) {
        match value {
            Value::String(text) => out.push((key.to_owned(), text)),
            Value::Array(list) => list.into_iter().for_each(|v| walk(v, key, out)),
            Value::Object(map) => map.into_iter().for_each(|(name, v)| {
                let key = if key.is_empty() { name } else { format!("{key}.{name}") };
                walk(v, &key, out);
            }),
            Value::Null | Value::Bool(_) | Value::Number(_) => {}
        }
    }
    let mut out = Vec::new();
    walk(serde_json::to_value(value).unwrap_or_default(), "", &mut out);
    out
}

/// The word a plain enum value is written as.
pub fn word(value: &impl Serialize) -> Option<String> {
    serde_json::to_value(value).ok()?.as_str().map(str::to_owned)
}
