//! The job file: TOML to a [`Job`], with faults by line, column and nearest key.

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use super::Job;
use super::nearest::{distance, near};
use super::ranges::{self, Fault};
use super::schema;
use crate::diag::{Note, Refusal};

const LIST: &str = "`lapwright schema job` lists every key and the form of its value.";

/// Unknown keys told at once.
const MOST: usize = 8;

/// Reads a job file.
///
/// # Errors
/// `job-unreadable` with line and column; for an unknown key the nearest known one is named, and
/// every further unknown key is listed. `job-value` for a value no layout can be made with.
pub fn parse(text: &str, name: &str) -> Result<Job, Refusal> {
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
    let job: Job =
        toml::from_str(text).map_err(|e| fault(&e, Some(table.get_ref()), text, name))?;
    let faults = ranges::faults(&job);
    if faults.is_empty() { Ok(job) } else { Err(out_of_range(&faults, &table, text, name)) }
}

/// A text as a TOML file spells it, quoted and escaped.
pub fn quoted(text: &str) -> String {
    toml::Value::String(text.to_owned()).to_string()
}

/// Every value out of range with its place: that of the first key it hangs on which the file sets.
fn out_of_range(faults: &[Fault], table: &Spanned<DeTable>, text: &str, name: &str) -> Refusal {
    let mut placed: Vec<(usize, String)> = faults
        .iter()
        .map(|f| {
            let at = f.keys.iter().find_map(|k| value_at(table.get_ref(), k));
            (at.unwrap_or(0), f.message.clone())
        })
        .collect();
    placed.sort();
    let each: Vec<String> = placed
        .iter()
        .take(MOST)
        .map(|(byte, message)| {
            let (line, column) = place(text, *byte);
            format!("{name}:{line}:{column}: {message}")
        })
        .collect();
    let mut message = each.join("; ");
    if placed.len() > MOST {
        message.push_str(&format!("; and {} more", placed.len() - MOST));
    }
    Note::error("job-value", message, ranges::HELP).into()
}

/// First byte of the value under a dotted key; tables of a list by number.
fn value_at(table: &DeTable, key: &str) -> Option<usize> {
    let (first, rest) = match key.split_once('.') {
        Some((first, rest)) => (first, Some(rest)),
        None => (key, None),
    };
    let value = table.get(first)?;
    let Some(rest) = rest else { return Some(value.span().start) };
    match value.get_ref() {
        DeValue::Table(t) => value_at(t, rest),
        DeValue::Array(list) => {
            let (number, rest) = rest.split_once('.')?;
            value_at(list.get(number.parse::<usize>().ok()?)?.get_ref().as_table()?, rest)
        }
        _ => None,
    }
}

/// Line and column of a byte, from 1; columns in characters.
fn place(text: &str, byte: usize) -> (usize, usize) {
    let before = text.get(..byte).unwrap_or(text);
    let line = before.matches('\n').count() + 1;
    (line, before.rsplit('\n').next().map_or(0, |l| l.chars().count()) + 1)
}

/// What the reader of TOML, or of a value, says, with its place and the key whose value it is.
fn fault(error: &toml::de::Error, table: Option<&DeTable>, text: &str, name: &str) -> Refusal {
    let place = error.span().map_or(String::new(), |s| {
        let (line, column) = place(text, s.start);
        format!(":{line}:{column}")
    });
    let key = error.span().and_then(|s| key_of(table?, s.start));
    let key = key.map_or(String::new(), |k| format!("{}: ", spoken(&k)));
    let message = error.message().trim();
    Note::error("job-unreadable", format!("{name}{place}: {key}{message}"), LIST).into()
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
    let one = |(byte, path): &(usize, String)| {
        let (line, column) = place(text, *byte);
        format!("{name}:{line}:{column}: unknown key {}", spoken(path))
    };
    let mut message = unknown.first().map(one).unwrap_or_default();
    for more in unknown.iter().take(MOST).skip(1) {
        message.push_str(&format!("; {}", one(more)));
    }
    if unknown.len() > MOST {
        message.push_str(&format!("; and {} more", unknown.len() - MOST));
    }
    let meant: Vec<String> = unknown
        .iter()
        .take(MOST)
        .filter_map(|(_, path)| nearest(path, known).map(|k| spoken(k)))
        .collect();
    let help = if meant.is_empty() {
        LIST.to_owned()
    } else {
        format!("Did you mean {}? {LIST}", meant.join(", "))
    };
    Note::error("job-unreadable", message, &help).into()
}

/// A dotted path as the file writes it: the key, and the table it stands in.
fn spoken(path: &str) -> String {
    match path.rsplit_once('.') {
        Some((table, key)) => format!("`{key}` in [{table}]"),
        None => format!("`{path}`"),
    }
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

    fn refused(text: &str) -> Note {
        *parse(text, "job.toml").unwrap_err().0
    }

    #[test]
    fn an_unknown_key_is_placed_and_the_nearest_named() {
        let e = refused("[product]\nexposure = 8\nlenght = 150\n");
        assert_eq!(e.message, "job.toml:3:1: unknown key `lenght` in [product]");
        assert!(e.help.contains("`length` in [product]"), "{}", e.help);
    }

    #[test]
    fn a_key_in_the_wrong_table_is_sent_to_its_own() {
        let e = refused("[product]\nstagger = 24\n");
        assert!(e.help.contains("`stagger` in [seams]"), "{}", e.help);
        let e = refused("colour = \"sand\"\n");
        assert!(e.help.contains("`colour` in [product]"), "{}", e.help);
    }

    #[test]
    fn every_unknown_key_is_told_in_the_order_of_the_file() {
        let e = refused("[sheets]\npaper = \"A3\"\n[[elevation]]\nname = \"F\"\n  regoin = []\n");
        let places = [
            "job.toml:1:2: unknown key `sheets`",
            "job.toml:5:3: unknown key `regoin` in [elevation]",
        ];
        assert_eq!(e.message, places.join("; "));
        assert!(e.help.contains("`sheet`, `region` in [elevation]"), "{}", e.help);
        // What is like nothing is not guessed at.
        assert!(!refused("zzzzzzzz = 1\n").help.contains("Did you mean"));
    }

    #[test]
    fn keys_that_are_roles_and_stocks_are_known() {
        let job = parse(
            "[layers]\nmounting-block = [\"X\"]\n[trim.colours]\nj-channel = \"white\"\n",
            "j",
        );
        assert!(job.is_ok(), "{job:?}");
        assert!(refused("[layers]\nwindows = [\"X\"]\n").help.contains("`window` in [layers]"));
    }

    #[test]
    fn faults_of_form_and_value_are_placed() {
        assert!(refused("[product\n").message.starts_with("job.toml:1:"));
        let e = refused("[product]\nexposure = 8\nfaces = \"two\"\n");
        assert!(e.message.starts_with("job.toml:3:9: `faces` in [product]: "), "{}", e.message);
        let e = refused("[[band]]\nbottom = 1\ntop = 9\n[[band]]\nbottom = \"low\"\n");
        assert!(e.message.starts_with("job.toml:5:10: `bottom` in [band]: not a"), "{}", e.message);
        let e = refused("[product]\ncarton = 1\ncarton = 2\n");
        assert!(e.message.starts_with("job.toml:3:1: "), "{}", e.message);
    }

    #[test]
    fn lengths_come_as_numbers_or_texts() {
        let job = parse("[product]\nlength = \"16'-8\\\"\"\nexposure = 7\n", "j").unwrap();
        assert_eq!((job.product.length, job.product.exposure), (200.0, 7.0));
        assert!(refused("[product]\nlength = \"long\"\n").message.contains("not a length"));
    }

    #[test]
    fn values_out_of_range_are_refused() {
        let e = refused("[seams]\nstagger = -1\n");
        assert_eq!(e.code, "job-value");
        assert!(e.message.starts_with("job.toml:2:11: `seams.stagger` is -1;"), "{}", e.message);
        assert!(refused("[product]\nexposure = inf\n").message.starts_with("job.toml:2:12: "));
        // Every one is told, in the order of the file.
        let e = refused("[trim]\ntab = \"9 in\"\n[product]\ncarton = 0\n");
        assert!(e.message.starts_with("job.toml:2:7: `trim.tab` is 9;"), "{}", e.message);
        assert!(e.message.contains("; job.toml:4:10: `product.carton` is 0;"), "{}", e.message);
    }

    #[test]
    fn values_that_hang_on_one_another_are_placed_where_the_file_sets_one() {
        let e = refused("[drawing]\nweld = 0.1\nknown = \"0,0 1 = 8 ft\"\n");
        assert!(e.message.starts_with("job.toml:3:9: "), "{}", e.message);
        // The shortest piece is 24 in by default: more than half a panel of 40 in.
        let e = refused("[product]\nlength = 40\n");
        assert!(e.message.starts_with("job.toml:2:10: `seams.shortest` is 24;"), "{}", e.message);
        let e = refused(
            "[[elevation]]\nname = \"A\"\n[[elevation]]\nname = \"B\"\nregion = [0, 0, -1, 5]\n",
        );
        assert!(e.message.starts_with("job.toml:5:10: the region of `B`"), "{}", e.message);
        let e = refused("[drawing]\naccept = [\"opening-outsid\"]\n");
        assert!(e.message.contains("opening-outside and dimension-disagrees"), "{}", e.message);
        assert!(refused("[layers]\nwall = [\"\"]\n").message.starts_with("job.toml:2:8: "));
    }
}
