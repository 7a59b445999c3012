//! `layout.json` and the schemas, by `serde_json`.

use schemars::generate::SchemaSettings;
use serde_json::Value;

use crate::job::{Job, ranges};
use crate::layout::Layout;
use crate::model::takeoff::{PartShare, Takeoff};
use crate::sources;

/// The layout as `lapwright-layout/1`, one blank of indent, a line end at the end. Lengths are
/// rounded to the millionth of an inch: below the grid, above the noise of the last bit.
pub fn layout(layout: &Layout) -> Vec<u8> {
    let mut value = serde_json::to_value(layout).unwrap_or_default();
    round(&mut value);
    pretty(&value)
}

/// JSON Schema of `layout.json`, as it is written.
pub fn layout_schema() -> Vec<u8> {
    let generator = SchemaSettings::draft2020_12().for_serialize().into_generator();
    let schema = serde_json::to_value(generator.into_root_schema_for::<Layout>());
    pretty(&worded(schema.unwrap_or_default()))
}

/// JSON Schema of `takeoff.json`, as it is written.
pub fn takeoff_schema() -> Vec<u8> {
    let generator = SchemaSettings::draft2020_12().for_serialize().into_generator();
    let schema = serde_json::to_value(generator.into_root_schema_for::<Takeoff>());
    pretty(&worded(schema.unwrap_or_default()))
}

/// What each part of the house takes of each line.
pub fn shares(rows: &[PartShare]) -> Vec<u8> {
    let mut value = serde_json::to_value(rows).unwrap_or_default();
    round(&mut value);
    pretty(&value)
}

/// JSON Schema of the job file, as it is read.
pub fn job_schema() -> Vec<u8> {
    pretty(&job_schema_value())
}

fn job_schema_value() -> Value {
    let generator = SchemaSettings::draft2020_12().for_deserialize().into_generator();
    let mut schema =
        serde_json::to_value(generator.into_root_schema_for::<Job>()).unwrap_or_default();
    for r in ranges::RANGES {
        // A bound says nothing of a length written as text; the program checks that one.
        if let Some(Value::Object(node)) = property(&mut schema, r.key) {
            node.insert("minimum".to_owned(), r.least.into());
            node.insert("maximum".to_owned(), r.most.into());
        }
    }
    worded(schema)
}

/// A schema whose descriptions name their sources in words.
fn worded(mut schema: Value) -> Value {
    match &mut schema {
        Value::Array(list) => list.iter_mut().for_each(|v| *v = worded(v.take())),
        Value::Object(map) => {
            for (key, value) in map.iter_mut() {
                match value {
                    Value::String(text) if key == "description" => *text = sources::in_words(text),
                    _ => *value = worded(value.take()),
                }
            }
        }
        _ => {}
    }
    schema
}

/// The schema of a dotted key.
fn property<'a>(root: &'a mut Value, key: &str) -> Option<&'a mut Value> {
    let mut at = String::new();
    for word in key.split('.') {
        let node = root.pointer(&at)?;
        if let Some(to) = node.get("$ref").and_then(Value::as_str) {
            at = to.trim_start_matches('#').to_owned();
        }
        at.push_str(&format!("/properties/{word}"));
    }
    root.pointer_mut(&at)
}

/// Every key a job file may hold, dotted, tables before what is in them: `product`,
/// `product.length`, `layers.wall`.
pub fn job_keys() -> Vec<String> {
    let schema = job_schema_value();
    let mut out = Vec::new();
    keys(&schema, &schema, "", &mut out);
    out
}

fn keys(root: &Value, node: &Value, above: &str, out: &mut Vec<String>) {
    // An array of tables is written with the table's own keys.
    let node = resolved(root, node);
    let node = node.get("items").map_or(node, |items| resolved(root, items));
    let path = |key: &str| if above.is_empty() { key.to_owned() } else { format!("{above}.{key}") };
    for (key, inner) in node.get("properties").and_then(Value::as_object).into_iter().flatten() {
        out.push(path(key));
        keys(root, inner, &path(key), out);
    }
    // A map from the words of an enumeration.
    let names = node.get("propertyNames").map(|n| resolved(root, n));
    for word in names.into_iter().flat_map(words) {
        out.push(path(&word));
    }
}

/// Keys of a job file that hold a length.
pub(super) fn job_lengths() -> std::collections::BTreeSet<String> {
    let mut schema = job_schema_value();
    let mut is_length = |k: &String| {
        property(&mut schema, k).is_some_and(|n| n.to_string().contains("\"#/$defs/Length\""))
    };
    job_keys().into_iter().filter(|k| is_length(k)).collect()
}

/// What each key of a job file means, by its dotted path.
pub fn job_words() -> std::collections::BTreeMap<String, String> {
    let schema = job_schema_value();
    let mut out = std::collections::BTreeMap::new();
    described(&schema, &schema, "", &mut out);
    out
}

fn described(
    root: &Value,
    node: &Value,
    above: &str,
    out: &mut std::collections::BTreeMap<String, String>,
) {
    let text = |n: &Value| n.get("description").and_then(Value::as_str).map(str::to_owned);
    let node = resolved(root, node);
    let node = node.get("items").map_or(node, |items| resolved(root, items));
    let path = |key: &str| if above.is_empty() { key.to_owned() } else { format!("{above}.{key}") };
    for (key, inner) in node.get("properties").and_then(Value::as_object).into_iter().flatten() {
        let words = text(inner).or_else(|| text(resolved(root, inner))).unwrap_or_default();
        out.insert(path(key), words);
        described(root, inner, &path(key), out);
    }
    let names = node.get("propertyNames").map(|n| resolved(root, n));
    let each = names.and_then(|n| n.get("oneOf")).and_then(Value::as_array).into_iter().flatten();
    for name in each {
        if let Some(word) = name.get("const").and_then(Value::as_str) {
            out.insert(path(word), text(name).unwrap_or_default());
        }
    }
}

/// A schema with its reference followed.
fn resolved<'a>(root: &'a Value, node: &'a Value) -> &'a Value {
    let pointer = node.get("$ref").and_then(Value::as_str).and_then(|r| r.strip_prefix('#'));
    pointer.and_then(|p| root.pointer(p)).unwrap_or(node)
}

/// The words of an enumeration, documented one by one or not.
fn words(node: &Value) -> Vec<String> {
    let plain = node.get("enum").and_then(Value::as_array).into_iter().flatten();
    let each = node.get("oneOf").and_then(Value::as_array).into_iter().flatten();
    let each = each.flat_map(|n| {
        n.get("const")
            .cloned()
            .map(|c| vec![c])
            .unwrap_or_else(|| n.get("enum").and_then(Value::as_array).cloned().unwrap_or_default())
    });
    plain.cloned().chain(each).filter_map(|v| v.as_str().map(str::to_owned)).collect()
}

fn pretty(value: &Value) -> Vec<u8> {
    let mut out = serde_json::to_vec_pretty(value).unwrap_or_default();
    out.push(b'\n');
    out
}

fn round(value: &mut Value) {
    match value {
        Value::Array(list) => list.iter_mut().for_each(round),
        Value::Object(map) => map.values_mut().for_each(round),
        Value::Number(n) if n.is_f64() => {
            let rounded =
                n.as_f64().map(|v| (v * 1e6).round() / 1e6).map(|v| if v == 0.0 { 0.0 } else { v });
            if let Some(n) = rounded.and_then(serde_json::Number::from_f64) {
                *value = Value::Number(n);
            }
        }
        _ => {}
    }
}

/// The lines alone, as `layout.json` holds them; with prices, `cost` in each line to buy, null
/// where no price was given.
pub fn takeoff_lines(takeoff: &Takeoff) -> Vec<u8> {
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
    pretty(&value)
}

/// `takeoff.json`: lines, cutting, leftovers, comparison, cross-checks, advice and cost.
pub fn takeoff(takeoff: &Takeoff) -> Vec<u8> {
    let mut value = serde_json::to_value(takeoff).unwrap_or_default();
    round(&mut value);
    pretty(&value)
}

/// The word a plain enum value is written as.
pub fn word(value: &impl serde::Serialize) -> Option<String> {
    serde_json::to_value(value).ok()?.as_str().map(str::to_owned)
}
