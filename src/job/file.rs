//! The job file: TOML to a [`Job`], with faults by line, column and nearest key.

use toml::Spanned;
use toml::de::{DeArray, DeTable, DeValue};

use super::check;
use super::fault::Fault;
use super::nearest::{distance, near};
use super::old_keys::{self, OldSpelling};
use super::root::Job;
use super::schema;
use crate::finding::job::{FilePlace, JobFileFault, JobFinding, JobSource, UnknownKey};
use crate::finding::{Finding, Findings, Refusal};

/// Unknown keys told at once.
const MOST: usize = 8;

/// Reads a job file.
///
/// # Errors
/// `job-unreadable` with line and column; for an unknown key the nearest known one is named, and
/// every further unknown key is listed. `job-value` for a value no layout can be made with.
pub fn parse(text: &str, name: &str) -> Result<Job, Refusal> {
    read(text, name, &mut Findings::default())
}

/// The same, with a finding for each key or word that is spelled as before.
///
/// # Errors
/// As [`parse`].
pub fn read(text: &str, name: &str, findings: &mut Findings) -> Result<Job, Refusal> {
    // A byte order mark is no part of the text.
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
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
    let job: Job =
        toml::from_str(text).map_err(|e| fault(&e, Some(table.get_ref()), text, name))?;
    let faults = check::faults(&job);
    if faults.is_empty() { Ok(job) } else { Err(out_of_range(faults, &table, text, name)) }
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

/// A text as a TOML file spells it, quoted and escaped.
pub fn quoted(text: &str) -> String {
    toml::Value::String(text.to_owned()).to_string()
}

/// Every value out of range with its place: that of the first key it hangs on which the file sets.
fn out_of_range(faults: Vec<Fault>, table: &Spanned<DeTable>, text: &str, name: &str) -> Refusal {
    let start = |f: &Fault| f.keys.iter().find_map(|k| value_at(table.get_ref(), k)).unwrap_or(0);
    let mut placed: Vec<(usize, Fault)> = faults.into_iter().map(|f| (start(&f), f)).collect();
    placed.sort_by_key(|(byte, _)| *byte);
    let more = placed.len().saturating_sub(MOST);
    let faults =
        placed.into_iter().take(MOST).map(|(byte, f)| f.placed(Some(place(text, byte)))).collect();
    let source = JobSource::File { file: name.to_owned() };
    Refusal::new(JobFinding::JobValue { source, faults, more })
}

/// First byte of the value under a dotted key; tables of a list by number.
fn value_at(table: &DeTable, key: &str) -> Option<usize> {
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
fn place(text: &str, byte: usize) -> FilePlace {
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::finding::FindingKind;
    use crate::finding::job_value::ValueFault;

    fn refused(text: &str) -> JobFinding {
        match parse(text, "job.toml").unwrap_err().0.kind {
            FindingKind::Job(found) => found,
            other => unreachable!("{other:?}"),
        }
    }

    /// Unknown keys: line, column, key, and the key that may be meant.
    fn unknown(text: &str) -> Vec<(usize, usize, String, Option<String>)> {
        match refused(text) {
            JobFinding::JobUnreadable { fault: JobFileFault::UnknownKeys { keys, .. }, .. } => {
                let one = |k: UnknownKey| (k.place.line, k.place.column, k.key, k.nearest);
                keys.into_iter().map(one).collect()
            }
            other => unreachable!("{other:?}"),
        }
    }

    /// A fault of form: line, column and key.
    fn form(text: &str) -> (usize, usize, Option<String>) {
        match refused(text) {
            JobFinding::JobUnreadable { fault: JobFileFault::Form { place, key, .. }, .. } => {
                let place = place.unwrap();
                (place.line, place.column, key)
            }
            other => unreachable!("{other:?}"),
        }
    }

    /// Faults of values: line, column, and what is wrong.
    fn values(text: &str) -> Vec<(usize, usize, ValueFault)> {
        match refused(text) {
            JobFinding::JobValue { source, faults, .. } => {
                assert_eq!(source, JobSource::File { file: "job.toml".to_owned() });
                let placed = faults.into_iter().map(|f| (f.place.unwrap(), f.fault));
                placed.map(|(p, fault)| (p.line, p.column, fault)).collect()
            }
            other => unreachable!("{other:?}"),
        }
    }

    fn nearest_to(text: &str) -> Option<String> {
        unknown(text).remove(0).3
    }

    #[test]
    fn an_unknown_key_is_placed_and_the_nearest_named() {
        let found = unknown("[product]\nexposure = 8\nlenght = 150\n");
        let nearest = Some("product.length".to_owned());
        assert_eq!(found, [(3, 1, "product.lenght".to_owned(), nearest)]);
    }

    #[test]
    fn a_key_in_the_wrong_table_is_sent_to_its_own() {
        let meant = nearest_to("[product]\nstagger = 24\n");
        assert_eq!(meant.as_deref(), Some("seams.stagger"));
        let meant = nearest_to("carton = 20\n");
        assert_eq!(meant.as_deref(), Some("product.carton"));
    }

    #[test]
    fn every_unknown_key_is_given_in_the_order_of_the_file() {
        let found =
            unknown("[sheets]\npaper = \"A3\"\n[[elevation]]\nname = \"F\"\n  regoin = []\n");
        let some = |text: &str| Some(text.to_owned());
        let expected = [
            (1, 2, "sheets".to_owned(), some("sheet")),
            (5, 3, "elevation.regoin".to_owned(), some("elevation.region")),
        ];
        assert_eq!(found, expected);
        // What is like nothing is not guessed at.
        assert_eq!(nearest_to("zzzzzzzz = 1\n"), None);
    }

    #[test]
    fn keys_that_are_roles_and_stocks_are_known() {
        let job = parse(
            "[layers]\nmounting-block = [\"X\"]\n[trim.colors]\nj-channel = \"white\"\n",
            "j",
        );
        assert!(job.is_ok(), "{job:?}");
        let meant = nearest_to("[layers]\nwindows = [\"X\"]\n");
        assert_eq!(meant.as_deref(), Some("layers.window"));
    }

    #[test]
    fn faults_of_form_and_value_are_placed() {
        assert_eq!(form("[product\n").0, 1);
        let key = |text: &str| Some(text.to_owned());
        let text = "[product]\nexposure = 8\nfaces = \"two\"\n";
        assert_eq!(form(text), (3, 9, key("product.faces")));
        let text = "[[band]]\nbottom = 1\ntop = 9\n[[band]]\nbottom = \"low\"\n";
        assert_eq!(form(text), (5, 10, key("band.bottom")));
        let (line, column, _) = form("[product]\ncarton = 1\ncarton = 2\n");
        assert_eq!((line, column), (3, 1));
    }

    #[test]
    fn lengths_come_as_numbers_or_texts() {
        let job = parse("[product]\nlength = \"16'-8\\\"\"\nexposure = 7\n", "j").unwrap();
        assert_eq!((job.product.length, job.product.exposure), (200.0, 7.0));
        assert_eq!(form("[product]\nlength = \"long\"\n").2.as_deref(), Some("product.length"));
    }

    #[test]
    fn values_out_of_range_are_refused() {
        let range = |key: &str, value, least, most| ValueFault::OutOfRange {
            key: key.to_owned(),
            value,
            least,
            most,
        };
        let found = values("[seams]\nstagger = -1\n");
        assert_eq!(found, [(2, 11, range("seams.stagger", -1.0, 0.0, 600.0))]);
        // A length is finite or none.
        assert_eq!(
            form("[product]\nexposure = inf\n"),
            (2, 12, Some("product.exposure".to_owned()))
        );
        let key = "weather.highest_f".to_owned();
        let found = values("[weather]\nhighest_f = inf\n");
        assert_eq!(found[0], (2, 13, ValueFault::NotFinite { key }));
        // Every one is given, in the order of the file.
        let found = values("[trim]\ntab = \"9 in\"\n[product]\ncarton = 0\n");
        assert_eq!(found[0], (2, 7, range("trim.tab", 9.0, 0.0, 6.0)));
        assert_eq!(found[1], (4, 10, range("product.carton", 0.0, 1.0, 1000.0)));
    }

    #[test]
    fn values_that_hang_on_one_another_are_placed_where_the_file_sets_one() {
        let first = |text: &str| values(text).remove(0);
        let (line, column, _) = first("[drawing]\nweld = 0.1\nknown = \"0,0 1 = 8 ft\"\n");
        assert_eq!((line, column), (3, 9));
        // The shortest piece is 24 in by default: more than half a panel of 40 in.
        let found = first("[product]\nlength = 40\n");
        let fault = ValueFault::TooLargeFor {
            key: "seams.shortest".to_owned(),
            value: 24.0,
            most: 20.0,
            other: "product.length".to_owned(),
        };
        assert_eq!(found, (2, 10, fault));
        let text =
            "[[elevation]]\nname = \"A\"\n[[elevation]]\nname = \"B\"\nregion = [0, 0, -1, 5]\n";
        let (key, view) = ("elevation.1.region".to_owned(), "B".to_owned());
        assert_eq!(first(text), (5, 10, ValueFault::RegionEmpty { key, view }));
        let (.., fault) = first("[drawing]\naccept = [\"opening-outsid\"]\n");
        assert!(matches!(fault, ValueFault::NotOneOf { choices, .. } if choices.len() == 3));
        let (line, column, _) = first("[layers]\nwall = [\"\"]\n");
        assert_eq!((line, column), (2, 8));
    }
}
