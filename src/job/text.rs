//! The text of one job file: its table, and faults of it by line, column and nearest key.

use toml::Spanned;
use toml::de::{DeArray, DeTable, DeValue};

use super::nearest::{distance, near};
use super::old_keys::{self, OldSpelling};
use super::root::Job;
use super::schema;
use crate::finding::job::{FilePlace, JobFileFault, JobFinding, UnknownKey};
use crate::finding::{Finding, Findings, Refusal};

/// Unknown keys told at once.
pub(super) const MOST: usize = 8;

/// A text without its byte order mark, which is no part of it.
pub(super) fn without_mark(text: &str) -> &str {
    text.strip_prefix('\u{feff}').unwrap_or(text)
}

/// The table of a text without its mark: TOML, every key known, none given twice. Keys and words that are
/// spelled as before are told.
pub(super) fn table<'a>(
    text: &'a str,
    name: &str,
    findings: &mut Findings,
) -> Result<Spanned<DeTable<'a>>, Refusal> {
    let table = DeTable::parse(text).map_err(|e| fault(&e, None, text, name))?;
    let known = schema::keys();
    let mut unknown = Vec::new();
    unknown_keys(table.get_ref(), "", &known, &mut unknown);
    if !unknown.is_empty() {
        unknown.sort();
        return Err(refusal(&unknown, &known, text, name));
    }
    let old = old_keys::found(table.get_ref());
    if let Some(both) = old.iter().find(|o| o.both) {
        return Err(given_twice(both, text, name));
    }
    old.iter().for_each(|o| findings.push(spelled_before(o, text, name)));
    Ok(table)
}

/// The job that the text alone makes.
pub(super) fn job(text: &str, table: &DeTable, name: &str) -> Result<Job, Refusal> {
    toml::from_str(text).map_err(|e| fault(&e, Some(table), text, name))
}

fn spelled_before(old: &OldSpelling, text: &str, name: &str) -> Finding {
    Finding::new(JobFinding::OldSpelling {
        file: name.to_owned(),
        place: place(text, old.byte),
        key: old_keys::current(&old.key),
        old: old.old.to_owned(),
        new: old.new.to_owned(),
    })
}

fn given_twice(old: &OldSpelling, text: &str, name: &str) -> Refusal {
    let fault = JobFileFault::GivenTwice {
        place: place(text, old.byte),
        key: old_keys::current(&old.key),
        old: old.old.to_owned(),
    };
    Refusal::new(JobFinding::JobUnreadable { file: name.to_owned(), fault })
}

/// First byte of the value under a dotted key; tables of a list by number.
pub(super) fn value_at(table: &DeTable, key: &str) -> Option<usize> {
    let (first, rest) = match key.split_once('.') {
        Some((first, rest)) => (first, Some(rest)),
        None => (key, None),
    };
    let value = table.get(first).or_else(|| table.get(old_keys::older(first)?))?;
    let Some(rest) = rest else { return Some(value.span().start) };
    match value.get_ref() {
        DeValue::Table(t) => value_at(t, rest),
        DeValue::Array(list) => value_in(list, rest),
        _ => None,
    }
}

/// Where a value of a list stands: a table's, or one of a list within it.
fn value_in(list: &DeArray, path: &str) -> Option<usize> {
    let (number, rest) = path.split_once('.').map_or((path, None), |(n, r)| (n, Some(r)));
    let value = list.get(number.parse::<usize>().ok()?)?;
    match (value.get_ref(), rest) {
        (_, None) => Some(value.span().start),
        (DeValue::Table(t), Some(rest)) => value_at(t, rest),
        (DeValue::Array(inner), Some(rest)) => value_in(inner, rest),
        _ => None,
    }
}

/// Line and column of a byte, from 1; columns in characters.
pub(super) fn place(text: &str, byte: usize) -> FilePlace {
    let before = text.get(..byte).unwrap_or(text);
    let line = before.matches('\n').count() + 1;
    let column = before.rsplit('\n').next().map_or(0, |l| l.chars().count()) + 1;
    FilePlace { line, column }
}

/// What the reader of TOML, or of a value, says, with its place and the key whose value it is.
fn fault(error: &toml::de::Error, table: Option<&DeTable>, text: &str, name: &str) -> Refusal {
    let fault = JobFileFault::Form {
        place: error.span().map(|s| place(text, s.start)),
        key: error.span().and_then(|s| key_of(table?, s.start)),
        parser_says: error.message().trim().to_owned(),
    };
    Refusal::new(JobFinding::JobUnreadable { file: name.to_owned(), fault })
}

/// The dotted path of the key in whose value a byte lies.
fn key_of(table: &DeTable, byte: usize) -> Option<String> {
    let (key, value) = table.iter().find(|(_, v)| holds(v, byte))?;
    let below = match value.get_ref() {
        DeValue::Table(t) => key_of(t, byte),
        DeValue::Array(list) => {
            list.iter().find_map(|v| v.get_ref().as_table().and_then(|t| key_of(t, byte)))
        }
        _ => None,
    };
    Some(match below {
        Some(below) => format!("{}.{below}", key.get_ref()),
        None => key.get_ref().to_string(),
    })
}

/// Whether a byte lies in a value; what a header opens ends where its last value does.
fn holds(value: &Spanned<DeValue>, byte: usize) -> bool {
    let deeper = match value.get_ref() {
        DeValue::Table(t) => t.values().any(|v| holds(v, byte)),
        DeValue::Array(list) => list.iter().any(|v| holds(v, byte)),
        _ => false,
    };
    deeper || value.span().contains(&byte)
}

/// Keys of `table` that no job has: byte and dotted path. A table under an unknown key is not
/// looked into.
fn unknown_keys(
    table: &DeTable,
    above: &str,
    known: &[String],
    unknown: &mut Vec<(usize, String)>,
) {
    for (key, value) in table {
        let path = if above.is_empty() {
            key.get_ref().to_string()
        } else {
            format!("{above}.{}", key.get_ref())
        };
        let path = old_keys::current(&path);
        if !known.contains(&path) {
            unknown.push((key.span().start, path));
            continue;
        }
        match value.get_ref() {
            // Names of the drawing's own are keys of some tables: nothing is known of those.
            DeValue::Table(t) if known.iter().any(|k| k.starts_with(&format!("{path}."))) => {
                unknown_keys(t, &path, known, unknown)
            }
            DeValue::Array(list) => {
                for t in list.iter().filter_map(|v| v.get_ref().as_table()) {
                    unknown_keys(t, &path, known, unknown);
                }
            }
            _ => {}
        }
    }
}

fn refusal(unknown: &[(usize, String)], known: &[String], text: &str, name: &str) -> Refusal {
    let one = |(byte, key): &(usize, String)| UnknownKey {
        place: place(text, *byte),
        key: key.clone(),
        nearest: nearest(key, known).cloned(),
    };
    let fault = JobFileFault::UnknownKeys {
        keys: unknown.iter().take(MOST).map(one).collect(),
        more: unknown.len().saturating_sub(MOST),
    };
    Refusal::new(JobFinding::JobUnreadable { file: name.to_owned(), fault })
}

/// The known key nearest to `path`: one with the same last word in another table before one that is
/// misspelt; in its own table before others.
fn nearest<'a>(path: &str, known: &'a [String]) -> Option<&'a String> {
    let split = |p: &str| -> (String, String) {
        let (table, key) = p.rsplit_once('.').unwrap_or(("", p));
        (table.to_lowercase(), key.to_lowercase().replace('-', "_"))
    };
    let (table, key) = split(path);
    let score = |k: &&String| {
        let (other_table, other) = split(k);
        let tables = distance(&table, &other_table).min(4);
        // One letter in the key weighs more than another table.
        // Of two alike, the one nearer to the top of the file.
        (5 * distance(&key, &other) + tables, k.matches('.').count(), other.len())
    };
    let best = known.iter().min_by_key(score)?;
    let (_, other) = split(best);
    near(&key, &other).then_some(best)
}
