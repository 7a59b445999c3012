//! A job that goes on from another file: files joined, each fault in the file that it is in, and which file
//! each setting comes from.

use std::collections::BTreeMap;

use toml::de::{DeTable, DeValue};
use toml::{Spanned, Table, Value};

use super::check;
use super::fault::Fault;
use super::old_keys;
use super::root::Job;
use super::text::{self, MOST, place, value_at};
use super::texts::{JobText, Texts};
use crate::finding::job::{ExtendsFault, JobFileFault, JobFinding, JobSource};
use crate::finding::{Findings, Refusal};

/// Most files that extend one another: of our own choosing, no source.
const MOST_FILES: usize = 8;

/// A job with the files that it was made of.
#[derive(Clone, Debug)]
pub struct Extended {
    /// The job.
    pub job: Job,
    /// The files, the job's own first, each extending the next.
    pub files: Vec<JobText>,
    /// Which of `files` each setting comes from that one of them says, by its dotted key.
    pub from: BTreeMap<String, usize>,
}

/// Reads a job, and what it extends by `texts`.
///
/// # Errors
/// As [`super::file::parse`], of the file that the fault is in; `job-unreadable` where a file that is
/// extended cannot be read, or files extend one another in a circle.
pub fn read(
    text: &str,
    name: &str,
    texts: &mut dyn Texts,
    findings: &mut Findings,
) -> Result<Extended, Refusal> {
    let files = chain(text, name, texts)?;
    let mut tables = Vec::new();
    for file in &files {
        tables.push(text::table(&file.text, &file.name, findings)?);
    }
    // Each by itself: a value of the wrong form is told of the file that it is in.
    let mut alone = Vec::new();
    for (file, table) in files.iter().zip(&tables) {
        alone.push(text::job(&file.text, table.get_ref(), &file.name)?);
    }
    let said: Vec<Table> = files.iter().map(|f| said(&f.text)).collect();
    let job = match alone.pop().filter(|_| alone.is_empty()) {
        Some(job) => job,
        None => joined(&said).map_err(|e| unfit(&files[0].name, &e))?,
    };
    let faults = check::faults(&job);
    if !faults.is_empty() {
        return Err(out_of_range(faults, &tables, &files));
    }
    let mut from = BTreeMap::new();
    said.iter().enumerate().rev().for_each(|(i, t)| settings(t, "", i, &mut from));
    Ok(Extended { job: Job { extends: None, ..job }, from, files })
}

/// The drawing that a job names by itself; none where its text is no TOML.
pub fn names_drawing(text: &str) -> Option<bool> {
    let table: Table = text::without_mark(text).parse().ok()?;
    let model = table.get("model").and_then(Value::as_table);
    Some(model.is_some_and(|m| m.contains_key("drawing")))
}

/// The files, each extending the next; texts without their marks.
fn chain(text: &str, name: &str, texts: &mut dyn Texts) -> Result<Vec<JobText>, Refusal> {
    let own = |t: &str, name: &str| JobText {
        name: name.to_owned(),
        text: text::without_mark(t).to_owned(),
    };
    let mut files = vec![own(text, name)];
    loop {
        let Some(last) = files.last() else { return Ok(files) };
        let Some((extends, byte)) = extends_of(&last.text) else { return Ok(files) };
        let refused = |why: ExtendsFault| {
            let (place, extends) = (place(&last.text, byte), extends.clone());
            let fault = JobFileFault::Extends { place, extends, why };
            Refusal::new(JobFinding::JobUnreadable { file: last.name.clone(), fault })
        };
        if files.len() == MOST_FILES {
            return Err(refused(ExtendsFault::TooMany { most: MOST_FILES }));
        }
        let next = texts.extended(&last.name, &extends).map_err(&refused)?;
        if let Some(at) = files.iter().position(|f| f.name == next.name) {
            let through = files[at..].iter().chain([&next]).map(|f| f.name.clone()).collect();
            return Err(refused(ExtendsFault::Circle { through }));
        }
        files.push(own(&next.text, &next.name));
    }
}

/// The file that a text extends, and where it says so; none where it is no text, which is told later.
fn extends_of(text: &str) -> Option<(String, usize)> {
    let table = DeTable::parse(text).ok()?;
    let value = table.get_ref().get("extends")?;
    match value.get_ref() {
        DeValue::String(path) => Some((path.to_string(), value.span().start)),
        _ => None,
    }
}

/// What a text says, keys as they are spelled now.
fn said(text: &str) -> Table {
    let table: Table = text.parse().unwrap_or_default();
    as_now(table, "")
}

fn as_now(table: Table, above: &str) -> Table {
    let mut out = Table::new();
    for (key, value) in table {
        let path = if above.is_empty() { key } else { format!("{above}.{key}") };
        let path = old_keys::current(&path);
        let value = match value {
            Value::Table(t) => Value::Table(as_now(t, &path)),
            Value::Array(list) => Value::Array(
                list.into_iter()
                    .map(|v| match v {
                        Value::Table(t) => Value::Table(as_now(t, &path)),
                        other => other,
                    })
                    .collect(),
            ),
            other => other,
        };
        out.insert(path.rsplit('.').next().unwrap_or(&path).to_owned(), value);
    }
    out
}

/// The job of files that extend one another, the nearest first.
fn joined(said: &[Table]) -> Result<Job, toml::de::Error> {
    let mut all = Table::new();
    said.iter().rev().for_each(|t| join(&mut all, t));
    all.remove("extends");
    Value::Table(all).try_into()
}

/// Puts what `over` says over what is there: tables key by key, all else as a whole.
fn join(all: &mut Table, over: &Table) {
    for (key, value) in over {
        match (all.get_mut(key), value) {
            (Some(Value::Table(below)), Value::Table(t)) => join(below, t),
            _ => drop(all.insert(key.clone(), value.clone())),
        }
    }
}

/// Every key of a table that is no table itself comes from this file; lists count as a whole.
fn settings(table: &Table, above: &str, file: usize, from: &mut BTreeMap<String, usize>) {
    for (key, value) in table {
        let path = if above.is_empty() { key.clone() } else { format!("{above}.{key}") };
        match value {
            Value::Table(t) => settings(t, &path, file, from),
            _ => drop(from.insert(path, file)),
        }
    }
    from.remove("extends");
}

fn unfit(name: &str, error: &toml::de::Error) -> Refusal {
    let parser_says = error.message().trim().to_owned();
    let fault = JobFileFault::Form { place: None, key: None, parser_says };
    Refusal::new(JobFinding::JobUnreadable { file: name.to_owned(), fault })
}

/// Every value out of range with its place: that of the first key it hangs on which a file sets. Those of
/// one file are told at once, the job's own first.
fn out_of_range(faults: Vec<Fault>, tables: &[Spanned<DeTable>], files: &[JobText]) -> Refusal {
    let at = |f: &Fault| {
        let set = |k: &String| {
            tables.iter().enumerate().find_map(|(i, t)| Some((i, value_at(t.get_ref(), k)?)))
        };
        f.keys.iter().find_map(set).unwrap_or((0, 0))
    };
    let mut placed: Vec<((usize, usize), Fault)> =
        faults.into_iter().map(|f| (at(&f), f)).collect();
    placed.sort_by_key(|(at, _)| *at);
    let all = placed.len();
    let file = placed.first().map_or(0, |((file, _), _)| *file);
    let JobText { name, text } = &files[file];
    let own = placed.into_iter().filter(|((f, _), _)| *f == file).take(MOST);
    let faults: Vec<_> = own.map(|((_, byte), f)| f.placed(Some(place(text, byte)))).collect();
    let source = JobSource::File { file: name.clone() };
    let more = all - faults.len();
    Refusal::new(JobFinding::JobValue { source, faults, more })
}
