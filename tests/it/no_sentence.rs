//! A layout holds facts alone: each text of `layout.json` is a word of an enumeration of its schema, a
//! name, or stands in the drawing or the job. The published schema and every sample are walked together.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;

use lapwright::finding::Findings;
use lapwright::model::drawing::Shape;
use lapwright::read::{self, Limits};
use lapwright::write::json;
use serde_json::Value;

use crate::support::{laid, samples};

/// Types of names, without spaces: made by the program, or by it from the elevation's.
const NAMES: [&str; 14] = [
    "ItemId",
    "CountedName",
    "WallId",
    "OpeningId",
    "ObstacleId",
    "FeatureId",
    "ZoneId",
    "CornerId",
    "RunId",
    "PieceMark",
    "PanelId",
    "TrimMark",
    "TrimStockId",
    "ElevationName",
];
/// The one name with spaces: as titled.
const TITLED: &str = "ElevationName";

/// A schema with all of its definitions.
struct Schema(Value);

impl Schema {
    /// What may stand at a place: the alternatives of a node, each with the name of its definition.
    fn alternatives<'a>(&'a self, node: &'a Value, name: &'a str) -> Vec<(&'a Value, &'a str)> {
        let mut out = vec![(node, name)];
        if let Some(to) = node.get("$ref").and_then(Value::as_str) {
            let target = self.0.pointer(to.trim_start_matches('#')).expect(to);
            out.extend(self.alternatives(target, to.rsplit('/').next().unwrap()));
        }
        for key in ["anyOf", "oneOf", "allOf"] {
            for inner in node.get(key).and_then(Value::as_array).into_iter().flatten() {
                out.extend(self.alternatives(inner, name));
            }
        }
        out
    }

    /// The nodes of a member of an object.
    fn member<'a>(&'a self, of: &[(&'a Value, &'a str)], key: &str) -> Vec<(&'a Value, &'a str)> {
        let own = of.iter().filter_map(|(n, _)| n.get("properties")?.get(key));
        let any = of.iter().filter_map(|(n, _)| n.get("additionalProperties"));
        own.chain(any).flat_map(|n| self.alternatives(n, "")).collect()
    }

    /// The nodes of an item of a list.
    fn item<'a>(&'a self, of: &[(&'a Value, &'a str)], at: usize) -> Vec<(&'a Value, &'a str)> {
        let own = of.iter().filter_map(|(n, _)| n.get("prefixItems")?.get(at));
        let any = of.iter().filter_map(|(n, _)| n.get("items"));
        own.chain(any).flat_map(|n| self.alternatives(n, "")).collect()
    }
}

/// Whether a text is a word of an enumeration.
fn is_word(nodes: &[(&Value, &str)], text: &str) -> bool {
    nodes.iter().any(|(n, _)| {
        let listed =
            n.get("enum").and_then(Value::as_array).is_some_and(|l| l.iter().any(|v| v == text));
        listed || n.get("const").is_some_and(|v| v == text)
    })
}

/// Whether a text is a name of a type of names.
fn is_name(nodes: &[(&Value, &str)], text: &str) -> bool {
    let named = |name: &str| NAMES.contains(&name) && (name == TITLED || !text.contains(' '));
    !text.is_empty() && nodes.iter().any(|(_, name)| named(name))
}

/// The texts of a layout that are neither words, names nor given: one for each place in the schema.
fn strangers(
    schema: &Schema,
    nodes: &[(&Value, &str)],
    value: &Value,
    path: &str,
    given: &BTreeSet<String>,
    out: &mut BTreeMap<String, String>,
) {
    match value {
        Value::String(text)
            if !is_word(nodes, text) && !is_name(nodes, text) && !given.contains(text) =>
        {
            out.insert(path.to_owned(), text.clone());
        }
        Value::Array(list) => list.iter().enumerate().for_each(|(i, v)| {
            strangers(schema, &schema.item(nodes, i), v, &format!("{path}[]"), given, out);
        }),
        Value::Object(map) => map.iter().for_each(|(key, v)| {
            strangers(schema, &schema.member(nodes, key), v, &format!("{path}.{key}"), given, out);
        }),
        _ => {}
    }
}

/// Every text of a value.
fn texts(value: &Value, out: &mut BTreeSet<String>) {
    match value {
        Value::String(text) => drop(out.insert(text.clone())),
        Value::Array(list) => list.iter().for_each(|v| texts(v, out)),
        Value::Object(map) => map.iter().for_each(|(key, v)| {
            out.insert(key.clone());
            texts(v, out);
        }),
        _ => {}
    }
}

/// What the drawing gives: its texts, layers, blocks, and of each entity the type and handle.
fn of_drawing(bytes: &[u8], name: &str) -> BTreeSet<String> {
    let drawing = read::drawing(bytes, name, &Limits::default(), &mut Findings::default()).unwrap();
    let mut out: BTreeSet<String> = drawing.layers.iter().map(|l| l.name.clone()).collect();
    out.insert(name.to_owned());
    for item in &drawing.items {
        if let Shape::Text(t) = &item.shape {
            out.insert(t.content.trim().to_owned());
        }
        out.insert(item.origin.entity.to_string());
        out.extend(item.origin.handle.as_deref().map(str::to_owned));
    }
    out
}

#[test]
fn every_text_of_a_layout_is_a_word_a_name_or_given() {
    let schema = Schema(serde_json::from_slice(&json::layout_schema()).unwrap());
    let root = schema.alternatives(&schema.0, "");
    let mut found = BTreeMap::new();
    for (stem, path) in samples() {
        let layout: Value = serde_json::from_slice(&json::layout(&laid(&stem))).unwrap();
        let mut given = of_drawing(&fs::read(&path).unwrap(), "test.dxf");
        texts(&layout["job"], &mut given);
        // The fingerprint is of the drawing's bytes.
        given.insert(layout["drawing"]["sha256"].as_str().unwrap().to_owned());
        strangers(&schema, &root, &layout, "", &given, &mut found);
    }
    assert!(found.is_empty(), "{found:#?}");
}

#[test]
fn the_walk_finds_a_sentence_wherever_one_stands() {
    let schema = Schema(serde_json::from_slice(&json::layout_schema()).unwrap());
    let root = schema.alternatives(&schema.0, "");
    let whole: Value = serde_json::from_slice(&json::layout(&laid("one-gable"))).unwrap();
    let sentence = Value::from("The walk must not let this pass.");
    let piece = "/elevations/0/walls/0/courses/0/runs/0/pieces/0";
    for place in ["/datum_reason/by", "/panels/0/id", "/verify/rules/0/rule", "/trims/0/kind"]
        .map(str::to_owned)
        .into_iter()
        .chain(["/mark", "/panel", "/ends/0/cut"].map(|end| format!("{piece}{end}")))
    {
        let mut layout = whole.clone();
        *layout.pointer_mut(&place).expect(&place) = sentence.clone();
        let mut found = BTreeMap::new();
        let mut given = BTreeSet::new();
        texts(&layout["job"], &mut given);
        strangers(&schema, &root, &layout, "", &given, &mut found);
        assert!(found.values().any(|text| sentence == text.as_str()), "{place}");
    }
}
