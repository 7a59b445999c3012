//! Of a job and its file.

use super::finding_words::FindingWords;
use super::job_value;
use super::parts::spoken;
use crate::finding::job::{
    ExtendsFault, FilePlace, JobFileFault, JobFinding, JobSource, PlacedFault, UnknownKey,
};

const LIST: &str = "`lapwright schema job` lists every key and the form of its value.";

pub(super) fn words(found: &JobFinding) -> FindingWords {
    match found {
        JobFinding::JobUnreadable {
            file,
            fault: JobFileFault::Form { place, key, parser_says },
        } => {
            let key = key.as_ref().map_or(String::new(), |k| format!("{}: ", spoken(k)));
            let place = place.map_or_else(|| file.clone(), |p| at(file, p));
            FindingWords::new(format!("{place}: {key}{}", plain(parser_says)), LIST)
        }
        JobFinding::JobUnreadable { file, fault: JobFileFault::UnknownKeys { keys, more } } => {
            unknown_keys(file, keys, *more)
        }
        JobFinding::JobUnreadable { file, fault: JobFileFault::GivenTwice { place, key, old } } => {
            let new = key.rsplit('.').next().unwrap_or(key);
            FindingWords::new(
                format!("{}: {} is given twice, once as `{old}`", at(file, *place), spoken(key)),
                format!("`{old}` is how `{new}` was spelled before: leave it out."),
            )
        }
        JobFinding::JobUnreadable {
            file,
            fault: JobFileFault::Extends { place, extends, why },
        } => extends_fault(&at(file, *place), extends, why),
        JobFinding::NoDrawing { file } => FindingWords::new(
            format!("{file}: this job names no drawing"),
            "Give the drawing and `--job`, or name the drawing in the job: [model] drawing = \"plan.dxf\".",
        ),
        JobFinding::NotGiven { file } => FindingWords::new(
            format!("{file} stands beside the drawing and is not read: no job is given"),
            format!(
                "Add `--job {file}` to lay out by it; without it every setting is its default."
            ),
        ),
        JobFinding::OldSpelling { file, place, key, old, new } => {
            let table = key.rsplit_once('.').map_or(String::new(), |(t, _)| format!(" in [{t}]"));
            FindingWords::new(
                format!("{}: `{old}`{table} is now spelled `{new}`", at(file, *place)),
                "It is still read; write the new spelling.",
            )
        }
        JobFinding::JobValue { source, faults, more } => values(source, faults, *more),
    }
}

fn extends_fault(at: &str, extends: &str, why: &ExtendsFault) -> FindingWords {
    let (said, help) = match why {
        ExtendsFault::Unreadable { system_says } => (
            format!("the file it extends, {extends}, cannot be read: {system_says}"),
            "The path is from the folder of the file that names it. Correct `extends`, or put the file there.",
        ),
        ExtendsFault::Circle { through } => (
            format!("it extends itself: {}", through.join(" extends ")),
            "Take `extends` out of one of these files.",
        ),
        ExtendsFault::TooMany { most } => (
            format!("{extends} is one file too many: at most {most} extend one another"),
            "Put what they say into fewer files.",
        ),
        ExtendsFault::NoFiles => (
            format!("it extends {extends}, and no other file can be read here"),
            "Put the settings of that file into this one, or use the command.",
        ),
    };
    FindingWords::new(format!("{at}: {said}"), help)
}

fn at(file: &str, place: FilePlace) -> String {
    format!("{file}:{}:{}", place.line, place.column)
}

/// What a parser says, without the names that the program's own types have: they tell a user nothing.
fn plain(parser_says: &str) -> String {
    if parser_says.contains("untagged enum") {
        return "the value is in no form that is read here".to_owned();
    }
    for named in ["expected struct ", "expected enum ", "expected tuple struct "] {
        if let Some((before, _)) = parser_says.split_once(named) {
            let wanted = if named.contains("enum") { "a text" } else { "a table of keys" };
            return format!("{before}expected {wanted}");
        }
    }
    parser_says.to_owned()
}

fn and_more(more: usize) -> String {
    if more == 0 { String::new() } else { format!("; and {more} more") }
}

fn unknown_keys(file: &str, keys: &[UnknownKey], more: usize) -> FindingWords {
    let one = |k: &UnknownKey| format!("{}: unknown key {}", at(file, k.place), spoken(&k.key));
    let each: Vec<String> = keys.iter().map(one).collect();
    let meant: Vec<String> = keys.iter().filter_map(|k| k.nearest.as_deref()).map(spoken).collect();
    let help = if meant.is_empty() {
        LIST.to_owned()
    } else {
        format!("Did you mean {}? {LIST}", meant.join(", "))
    };
    FindingWords::new(each.join("; ") + &and_more(more), help)
}

fn values(source: &JobSource, faults: &[PlacedFault], more: usize) -> FindingWords {
    let one = |f: &PlacedFault| {
        let said = job_value::message(&f.fault, f.zone, source);
        match (source, f.place) {
            (JobSource::File { file }, Some(place)) => format!("{}: {said}", at(file, place)),
            _ => said,
        }
    };
    let each: Vec<String> = faults.iter().map(one).collect();
    let help = match source {
        JobSource::CommandLine => "Give the option one of these.",
        JobSource::File { .. } => {
            "Correct the value in the job file; lengths are inches unless they carry a unit."
        }
        JobSource::Program => "Correct the value in the job; lengths are inches.",
    };
    FindingWords::new(each.join("; ") + &and_more(more), help)
}
