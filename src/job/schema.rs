//! The schema of the job file, and what follows from it: every key, which are lengths, what each means.

use std::collections::{BTreeMap, BTreeSet};

use schemars::generate::SchemaSettings;
use serde_json::Value;

use super::ranges;
use super::root::Job;
use super::stock_given::STOCK_BOUNDS;
use crate::model::seam::MOST_STOCKS;

/// The schema, with the bounds of `ranges`.
pub(crate) fn value() -> Value {
    let generator = SchemaSettings::draft2020_12().for_deserialize().into_generator();
    let mut schema =
        serde_json::to_value(generator.into_root_schema_for::<Job>()).unwrap_or_default();
    for r in ranges::RANGES {
        bounded(&mut schema, r.key, r.least, r.most);
    }
    for b in STOCK_BOUNDS {
        bounded(&mut schema, &format!("stock.{}", b.key), b.least, b.most);
    }
    if let Some(Value::Object(list)) = property(&mut schema, "stock") {
        list.insert("maxItems".to_owned(), MOST_STOCKS.into());
    }
    schema
}

/// A bound says nothing of a length written as text; the program checks that one.
fn bounded(schema: &mut Value, key: &str, least: f64, most: f64) {
    if let Some(Value::Object(node)) = property(schema, key) {
        node.insert("minimum".to_owned(), least.into());
        node.insert("maximum".to_owned(), most.into());
    }
}

/// The schema of a dotted key; tables of a list have one for all.
fn property<'a>(root: &'a mut Value, key: &str) -> Option<&'a mut Value> {
    let mut at = String::new();
    for word in key.split('.') {
        if root.pointer(&at)?.get("items").is_some() {
            at.push_str("/items");
        }
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
pub fn keys() -> Vec<String> {
    let schema = value();
    let mut out = Vec::new();
    list_keys(&schema, &schema, "", &mut out);
    out
}

fn list_keys(root: &Value, node: &Value, above: &str, out: &mut Vec<String>) {
    // An array of tables is written with the table's own keys.
    let node = resolved(root, node);
    let node = node.get("items").map_or(node, |items| resolved(root, items));
    let path = |key: &str| if above.is_empty() { key.to_owned() } else { format!("{above}.{key}") };
    for (key, inner) in node.get("properties").and_then(Value::as_object).into_iter().flatten() {
        out.push(path(key));
        list_keys(root, inner, &path(key), out);
    }
    // A map from the words of an enumeration.
    let names = node.get("propertyNames").map(|n| resolved(root, n));
    for word in names.into_iter().flat_map(words) {
        out.push(path(&word));
    }
}

/// Keys of a job file that hold a length.
pub fn lengths() -> BTreeSet<String> {
    let mut schema = value();
    let mut is_length = |k: &String| {
        property(&mut schema, k).is_some_and(|n| n.to_string().contains("\"#/$defs/Length\""))
    };
    keys().into_iter().filter(|k| is_length(k)).collect()
}

/// What each key of a job file means, by its dotted path.
pub fn descriptions() -> BTreeMap<String, String> {
    let schema = value();
    let mut out = BTreeMap::new();
    described(&schema, &schema, "", &mut out);
    out
}

fn described(root: &Value, node: &Value, above: &str, out: &mut BTreeMap<String, String>) {
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
