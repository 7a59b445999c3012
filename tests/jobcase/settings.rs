//! Settings drawn from the schema of the job file: every key of it, within its bounds and at their ends,
//! lengths in every spelling.

use std::collections::BTreeSet;
use std::sync::OnceLock;

use lapwright::job::file as job_file;
use lapwright::job::schema;
use lapwright::write::json;
use serde_json::Value;

use super::Dice;
use super::drawing::Drawn;

/// Keys that name a drawing's own things, or stand in tables that are written below.
const OWN: [&str; 11] = [
    "title",
    "revision",
    "built",
    "layers",
    "elevation",
    "return",
    "angled",
    "band",
    "movement_joint",
    "zone",
    "stock",
];
/// Keys whose texts are drawn from what is known of them, or that say nothing of what is laid.
const APART: [&str; 7] = [
    "drawing.unit",
    "drawing.known",
    "drawing.accept",
    "work.seen_from_by_elevation",
    "trim.colors",
    "product.color",
    "fasteners.lengths",
];

/// Settings that are drawn after all others: a seed keeps its job when they are added to the schema.
const LATER: [&str; 4] =
    ["boards.even", "takeoff.trim_spare", "courses.least_width", "model.mirrored"];

/// Whether a key is of what is only counted: such keys are drawn last.
fn is_counted(path: &str) -> bool {
    let beside = ["takeoff.flashing_lap", "takeoff.door_pan_up", "takeoff.step_exposure"];
    path.starts_with("estimate.") || beside.contains(&path)
}

/// Keys of what is only counted.
fn counted() -> &'static [Key] {
    static KEYS: OnceLock<Vec<Key>> = OnceLock::new();
    KEYS.get_or_init(|| {
        let mut out = Vec::new();
        walk(job_schema(), "", &schema::lengths(), &mut out);
        out.retain(|k| is_counted(&k.path));
        assert!(out.len() > 20, "only {} keys of what is counted", out.len());
        out
    })
}

/// A key of the job file with what its value may be.
#[derive(Clone)]
struct Key {
    path: String,
    kind: Kind,
}

#[derive(Clone)]
enum Kind {
    Flag,
    Words(Vec<String>),
    Whole(f64, f64),
    Number(f64, f64),
    Length(f64, f64),
}

fn job_schema() -> &'static Value {
    static SCHEMA: OnceLock<Value> = OnceLock::new();
    SCHEMA.get_or_init(|| serde_json::from_slice(&json::job_schema()).expect("the job's schema"))
}

/// Every key that holds a value of its own, with its bounds; those drawn later by themselves.
fn all_keys() -> &'static (Vec<Key>, Vec<Key>) {
    static KEYS: OnceLock<(Vec<Key>, Vec<Key>)> = OnceLock::new();
    KEYS.get_or_init(|| {
        let lengths = schema::lengths();
        let mut out = Vec::new();
        walk(job_schema(), "", &lengths, &mut out);
        assert!(out.len() > 100, "only {} keys of the schema are drawn from", out.len());
        // What is only counted shapes no layout.
        out.retain(|k| !is_counted(&k.path));
        out.into_iter().partition(|k| !LATER.contains(&k.path.as_str()))
    })
}

fn keys() -> &'static [Key] {
    &all_keys().0
}

fn resolved(node: &Value) -> &Value {
    match node.get("$ref").and_then(Value::as_str) {
        Some(to) => job_schema().pointer(to.trim_start_matches('#')).unwrap_or(node),
        None => node,
    }
}

fn walk(node: &Value, above: &str, lengths: &BTreeSet<String>, out: &mut Vec<Key>) {
    let Some(inner) = resolved(node).get("properties").and_then(Value::as_object) else { return };
    for (name, node) in inner {
        let path = if above.is_empty() { name.clone() } else { format!("{above}.{name}") };
        if OWN.contains(&path.as_str()) || APART.contains(&path.as_str()) {
            continue;
        }
        match kind(node, lengths.contains(&path)) {
            Some(kind) => out.push(Key { path, kind }),
            None => walk(node, &path, lengths, out),
        }
    }
}

/// The kind of a key's value; none for a table.
fn kind(node: &Value, is_length: bool) -> Option<Kind> {
    let bound = |name: &str, or: f64| node.get(name).and_then(Value::as_f64).unwrap_or(or);
    // What says no bounds of its own is bounded by what it hangs on.
    let (least, most) = (bound("minimum", 0.0), bound("maximum", 48.0));
    if is_length {
        return Some(Kind::Length(least, most));
    }
    let target = resolved(node);
    let mut words = Vec::new();
    texts(target, &mut words);
    if !words.is_empty() {
        return Some(Kind::Words(words));
    }
    let is = |name: &str| {
        target.get("type").is_some_and(|t| t.to_string().contains(&format!("\"{name}\"")))
    };
    match () {
        () if is("boolean") => Some(Kind::Flag),
        () if is("integer") => Some(Kind::Whole(least, most)),
        () if is("number") => Some(Kind::Number(least, most)),
        () => None,
    }
}

/// Words of an enumeration, however it is written.
fn texts(node: &Value, out: &mut Vec<String>) {
    let node = resolved(node);
    let listed = node.get("enum").and_then(Value::as_array).into_iter().flatten();
    out.extend(listed.filter_map(|v| v.as_str().map(str::to_owned)));
    out.extend(node.get("const").and_then(Value::as_str).map(str::to_owned));
    for several in ["oneOf", "anyOf"] {
        let list = node.get(several).and_then(Value::as_array).into_iter().flatten();
        list.for_each(|n| texts(n, out));
    }
}

/// A number within bounds: at their ends, a little inside, anywhere, or near what is usual.
fn number(dice: &mut Dice, least: f64, most: f64) -> f64 {
    let span = most - least;
    let v = match dice.roll(8) {
        0 => least,
        1 => most,
        2 => least + span / 1000.0,
        3 => least + span * dice.share().powi(4),
        _ => least + span * dice.share().powi(2),
    };
    v.clamp(least, most)
}

/// A length as a job file may write it: a number of inches, a fraction, feet, or metric.
fn length(dice: &mut Dice, least: f64, most: f64) -> String {
    let v = number(dice, least, most);
    let within = |v: f64| v.clamp(least, most);
    let sign = if v < 0.0 { "-" } else { "" };
    match dice.roll(7) {
        0 => format!("{:?}", within(v.round())),
        1 => format!("{:?}", within((v * 4.0).round() / 4.0)),
        2 => format!("{:?}", within((v * 1000.0).round() / 1000.0)),
        3 => {
            let sixteenths = (v.abs() * 16.0).floor() as u64;
            format!("\"{sign}{} {}/16\\\"\"", sixteenths / 16, sixteenths % 16)
        }
        4 => format!("\"{sign}{}mm\"", (v.abs() * 25.4).floor()),
        5 => format!("\"{sign}{:.2}cm\"", (v.abs() * 254.0).floor() / 100.0),
        _ if v.abs() >= 12.0 => {
            let inches = v.abs().floor() as u64;
            format!("\"{sign}{}'-{} 1/8\\\"\"", inches / 12, inches % 12)
        }
        _ => format!("{v:?}"),
    }
}

fn value(dice: &mut Dice, kind: &Kind) -> String {
    match kind {
        Kind::Flag => dice.once_in(2).to_string(),
        Kind::Words(words) => format!("{:?}", dice.of(words)),
        Kind::Whole(least, most) => format!("{}", number(dice, *least, *most).round()),
        Kind::Number(least, most) => format!("{:?}", number(dice, *least, *most)),
        Kind::Length(least, most) => length(dice, *least, *most),
    }
}

/// The job of a drawing: settings are taken one by one as long as the job they make is accepted.
pub(crate) fn job_text(dice: &mut Dice, drawn: &Drawn) -> String {
    let mut settings: Vec<(String, String)> = vec![
        ("drawing.unit".to_owned(), format!("{:?}", drawn.unit)),
        (
            "drawing.accept".to_owned(),
            "[\"opening-outside\", \"opening-too-large\", \"dimension-disagrees\"]".to_owned(),
        ),
    ];
    let kinds = keys().iter().find(|k| k.path == "product.kind").expect("kinds of siding");
    let mut wished: Vec<(String, String)> =
        vec![("product.kind".to_owned(), value(dice, &kinds.kind))];
    // Most of a small house is laid in a moment; a long search tries nothing else.
    wished.push((
        "seams.effort".to_owned(),
        dice.of(&["\"brief\"", "\"crew\"", "\"usual\""]).to_owned(),
    ));
    let count = dice.of(&[1, 2, 3, 5, 8, 13, 30]);
    for _ in 0..count {
        let key = dice.of(keys());
        let value = value(dice, &key.kind);
        wished.push((key.path, value));
    }
    let mut tables: Vec<String> = Vec::new();
    for (path, value) in wished {
        if settings.iter().any(|s| s.0 == path) || value == "\"long\"" {
            continue;
        }
        settings.push((path, value));
        if job_file::parse(&text(&settings, &tables), "j").is_err() {
            settings.pop();
        }
    }
    for _ in 0..dice.of(&[0, 0, 1, 2]) {
        tables.push(table(dice, drawn));
        if job_file::parse(&text(&settings, &tables), "j").is_err() {
            tables.pop();
        }
    }
    for key in all_keys().1.iter().filter(|_| dice.once_in(4)).cloned().collect::<Vec<_>>() {
        settings.push((key.path, value(dice, &key.kind)));
        if job_file::parse(&text(&settings, &tables), "j").is_err() {
            settings.pop();
        }
    }
    for _ in 0..dice.roll(5) {
        let key: Key = dice.of(counted());
        let value = value(dice, &key.kind);
        if settings.iter().any(|s| s.0 == key.path) {
            continue;
        }
        settings.push((key.path, value));
        if job_file::parse(&text(&settings, &tables), "j").is_err() {
            settings.pop();
        }
    }
    text(&settings, &tables)
}

/// As a file: tables in brackets, each once.
fn text(settings: &[(String, String)], tables: &[String]) -> String {
    let mut names: Vec<&str> =
        settings.iter().filter_map(|(p, _)| Some(p.rsplit_once('.')?.0)).collect();
    names.sort_unstable();
    names.dedup();
    let mut out = String::new();
    for name in names {
        out.push_str(&format!("[{name}]\n"));
        let own = settings.iter().filter_map(|(p, v)| {
            let (table, key) = p.rsplit_once('.')?;
            (table == name).then(|| format!("{key} = {v}\n"))
        });
        out.extend(own);
    }
    out.extend(tables.iter().map(String::as_str));
    out
}

/// What a job gives beside the drawing: bands, joints, walls, zones, several stocks.
fn table(dice: &mut Dice, drawn: &Drawn) -> String {
    let (w, h) = (drawn.width, drawn.height);
    let elevation = dice.of(&drawn.elevations);
    let wall = if drawn.elevations.len() > 1 { "front-1" } else { "wall-1" };
    let at = |dice: &mut Dice, most: f64| length(dice, 0.0, most);
    match dice.roll(7) {
        0 => {
            let (bottom, thick) = (dice.share() * h, dice.share() * 14.0 + 0.5);
            let left =
                if dice.once_in(2) { format!("left = {}\n", at(dice, w)) } else { String::new() };
            format!(
                "[[band]]\nelevation = {elevation:?}\nbottom = {bottom:?}\ntop = {:?}\n{left}",
                bottom + thick
            )
        }
        1 => format!("[[movement_joint]]\nelevation = {elevation:?}\nat = {}\n", at(dice, w)),
        2 => {
            let hand = dice.of(&["left", "right"]);
            let width = at(dice, 200.0);
            let height = if dice.once_in(2) {
                format!("height = {}\n", length(dice, 1.0, 200.0))
            } else {
                String::new()
            };
            format!("[[return]]\ncorner = \"{wall}/{hand}\"\nwidth = {width}\n{height}")
        }
        3 => format!("[[angled]]\nwall = {wall:?}\nwidth = {}\n", length(dice, w, 3.0 * w)),
        4 => {
            let own = if drawn.zone_layer && dice.once_in(2) {
                "layers = [\"A-WALL-SHNG\"]\n".to_owned()
            } else {
                format!("[[zone.region]]\nbottom = {:?}\n", dice.share() * h)
            };
            let kinds = keys().iter().find(|k| k.path == "product.kind");
            let kind = kinds.map_or_else(String::new, |k| value(dice, &k.kind));
            let (layers, region) =
                if own.starts_with("layers") { (own, String::new()) } else { (String::new(), own) };
            match dice.roll(3) {
                0 => format!("[[zone]]\nname = \"part\"\ncladding = \"shingle\"\n{layers}{region}"),
                _ => {
                    let more = match dice.roll(3) {
                        0 => format!("end_gap = {}\n", length(dice, 0.0, 2.0)),
                        1 => format!("length = {}\n", length(dice, 36.0, 600.0)),
                        _ => String::new(),
                    };
                    format!(
                        "[[zone]]\nname = \"part\"\n{layers}[zone.product]\nkind = {kind}\n{more}{region}"
                    )
                }
            }
        }
        _ => {
            let mut out = String::new();
            for _ in 0..2 + dice.roll(2) {
                out.push_str(&format!("[[stock]]\nlength = {}\n", length(dice, 36.0, 600.0)));
            }
            out
        }
    }
}
