//! One change in the text of a job file; comments and all else in it stay as they are.

use serde::{Deserialize, Serialize};
use serde_json::Value as Given;
use toml_edit::{Array, ArrayOfTables, DocumentMut, Item, Table, Value};

use super::file::parse;
use crate::finding::Refusal;

/// What the text of a job says, key by key; defaults are not in it.
#[derive(Debug, Default, Serialize)]
pub struct Said(toml::Table);

/// What a text says; nothing where it is no TOML.
pub fn said(text: &str) -> Said {
    Said(text.parse().unwrap_or_default())
}

/// Why a job is not changed.
#[derive(Debug)]
pub enum NotChanged {
    /// The job is none, or what would come of it is none.
    Refused(Refusal),
    /// The change is none, or does not fit what stands in the job.
    Unfit,
}

/// What is changed.
#[derive(Debug, Deserialize)]
struct Change {
    /// Keys from the top of the file, `["drawing", "unit"]`.
    at: Vec<String>,
    /// What is done there.
    #[serde(flatten)]
    how: How,
}

#[derive(Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
enum How {
    /// The value is set; `null` takes the key away.
    Set(Given),
    /// A value at the end of the list.
    Add(Given),
    /// Keys of the table in the list that has the same value at the first key; a new table where none has.
    Merge(Vec<(String, Given)>),
    /// The last value, or the table of that number, is taken out of the list.
    Drop(usize),
}

/// The text with a change in it, given as JSON: `{"at": ["drawing", "unit"], "set": "inch"}`.
///
/// # Errors
/// As [`parse`] where the text is no job or what comes of it is none; `Unfit` where the change cannot be made.
pub fn edited(text: &str, change: &str) -> Result<String, NotChanged> {
    parse(text, "job.toml").map_err(NotChanged::Refused)?;
    let mut doc: DocumentMut = text.parse().map_err(|_| NotChanged::Unfit)?;
    let change: Change = serde_json::from_str(change).map_err(|_| NotChanged::Unfit)?;
    apply(doc.as_table_mut(), &change.at, &change.how).ok_or(NotChanged::Unfit)?;
    let text = doc.to_string();
    parse(&text, "job.toml").map_err(NotChanged::Refused)?;
    Ok(text)
}

/// None where the change does not fit what stands there.
fn apply(table: &mut Table, at: &[String], how: &How) -> Option<()> {
    let (key, rest) = at.split_first()?;
    if !rest.is_empty() {
        let inner = table.entry(key).or_insert_with(|| Item::Table(Table::new()));
        return apply(inner.as_table_mut()?, rest, how);
    }
    match how {
        How::Set(Given::Null) => drop(table.remove(key)),
        How::Set(v) => set(table, key, value(v)?),
        How::Add(Given::Object(keys)) => {
            let mut new = Table::new();
            for (k, v) in keys {
                set(&mut new, k, value(v)?);
            }
            tables(table, key)?.push(new);
        }
        How::Add(v) => {
            let list = table.entry(key).or_insert_with(|| Item::Value(Array::new().into()));
            list.as_array_mut()?.push(value(v)?);
        }
        How::Merge(keys) => merge(tables(table, key)?, keys)?,
        How::Drop(n) => out_of(table, key, *n)?,
    }
    Some(())
}

/// Sets a key; what was said beside it stays.
fn set(table: &mut Table, key: &str, mut value: Value) {
    if let Some(old) = table.get(key).and_then(Item::as_value) {
        *value.decor_mut() = old.decor().clone();
    }
    table.insert(key, Item::Value(value));
}

fn tables<'a>(table: &'a mut Table, key: &str) -> Option<&'a mut ArrayOfTables> {
    let list = table.entry(key).or_insert_with(|| Item::ArrayOfTables(ArrayOfTables::new()));
    list.as_array_of_tables_mut()
}

fn merge(list: &mut ArrayOfTables, keys: &[(String, Given)]) -> Option<()> {
    let (first, given) = keys.first()?;
    let is = |t: &Table| t.get(first).and_then(Item::as_str) == given.as_str();
    let at = list.iter().position(is).unwrap_or(list.len());
    if at == list.len() {
        list.push(Table::new());
    }
    let table = list.get_mut(at)?;
    for (k, v) in keys {
        match v {
            Given::Null => drop(table.remove(k)),
            _ => set(table, k, value(v)?),
        }
    }
    Some(())
}

fn out_of(table: &mut Table, key: &str, n: usize) -> Option<()> {
    match table.get_mut(key)? {
        Item::ArrayOfTables(list) if n < list.len() => {
            list.remove(n);
        }
        Item::Value(Value::Array(list)) if n < list.len() => drop(list.remove(n)),
        _ => return None,
    }
    Some(())
}

/// A value as TOML has it; none for what TOML lacks.
fn value(given: &Given) -> Option<Value> {
    Some(match given {
        Given::Null => return None,
        Given::Bool(b) => Value::from(*b),
        Given::Number(n) => match n.as_i64() {
            Some(whole) => Value::from(whole),
            None => Value::from(n.as_f64()?),
        },
        Given::String(s) => Value::from(s.as_str()),
        Given::Array(all) => Value::Array(all.iter().map(value).collect::<Option<Array>>()?),
        Given::Object(keys) => {
            let all = keys.iter().map(|(k, v)| Some((k.clone(), value(v)?)));
            Value::InlineTable(all.collect::<Option<_>>()?)
        }
    })
}
