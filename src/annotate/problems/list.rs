//! The list of findings, kind by kind, in columns.

use super::groups::Group;
use crate::annotate::canvas::{fitted, wrapped};
use crate::annotate::style::TEXT;
use crate::finding::Severity;
use crate::geom::vocabulary::Rect;
use crate::units::LengthStyle;
use crate::wording::findings::{FindingWords, words};
use crate::wording::problems as heads;

/// Width of the page and its margins, inches.
pub(super) const WIDTH: f64 = 17.0;
pub(super) const MARGIN: f64 = 0.5;
/// Of lines under a finding, inches.
pub(super) const INDENT: f64 = 0.25;
/// Columns of the list, and the room between them, inches.
const COLUMNS: usize = 2;
pub(super) const BETWEEN: f64 = 0.4;
/// Width of a column.
pub(super) const COLUMN: f64 = (WIDTH - 2.0 * MARGIN - BETWEEN) / COLUMNS as f64;
/// Width of its lines, inches: some air is left, since a viewer that lacks the typeface sets wider.
const ROOM: f64 = (COLUMN - INDENT) * 0.9;

/// The list under the picture in columns of `most` lines, each with whether it is bold. Where there is no
/// room for all, what to do about remarks is left to check.txt first, then the kinds that come last.
pub(super) fn listed(
    found: &[Group],
    window: Option<Rect>,
    style: LengthStyle,
    most: usize,
) -> Vec<Vec<(String, bool)>> {
    let whole: Vec<_> = found.iter().map(|f| entry(f, window, style, true)).collect();
    let room = COLUMNS * most;
    let fits = whole.iter().map(Vec::len).sum::<usize>() + most / 4 <= room;
    let entries = if fits {
        whole
    } else {
        found.iter().map(|f| entry(f, window, style, f.severity() != Severity::Info)).collect()
    };
    let all: usize = entries.iter().map(Vec::len).sum();
    let even = all.div_ceil(COLUMNS).min(most);
    let mut out: Vec<Vec<(String, bool)>> = vec![Vec::new()];
    let kinds = entries.len();
    for (i, lines) in entries.into_iter().enumerate() {
        let last = out.len() == COLUMNS;
        let used = out.last().map_or(0, Vec::len);
        if !last && used > 0 && used + lines.len() > even {
            out.push(Vec::new());
        }
        let used = out.last().map_or(0, Vec::len);
        let Some(column) = out.last_mut() else { break };
        if used + lines.len() + 1 > most {
            column.push((heads::more_in_check(kinds - i), false));
            break;
        }
        column.extend(lines);
    }
    if found.is_empty() {
        out[0].push((heads::NOTHING_TO_REPORT.to_owned(), false));
    }
    out
}

/// What is said of one kind: its number and code, the first finding, how many more there are.
fn entry(
    f: &Group,
    window: Option<Rect>,
    style: LengthStyle,
    with_help: bool,
) -> Vec<(String, bool)> {
    let Some(n) = f.first() else { return Vec::new() };
    let word = match n.severity() {
        Severity::Error => "ERROR",
        Severity::Warning => "warning",
        Severity::Info => "remark",
    };
    let place = match f.places.first() {
        Some(p) if window.is_some_and(|w| w.contains(*p)) => format!(" at {:.3}, {:.3}", p.x, p.y),
        Some(p) => heads::outside_picture(p.x, p.y),
        None => heads::NO_ONE_PLACE.to_owned(),
    };
    let entity = n.origin.as_ref().map_or(String::new(), |o| {
        let handle = o.handle.as_deref().map_or(String::new(), |h| format!(", handle {h}"));
        format!("; {}on layer {}{}{handle}", o.before(), o.layer, o.in_file())
    });
    let also = match f.places.len() {
        0 | 1 => String::new(),
        n => heads::more_places(n - 1),
    };
    let head = format!("{}  {word} {}{place}{entity}{also}", f.number, n.code());
    let mut out = vec![(fitted(&head, TEXT, true, COLUMN * 0.95), true)];
    let FindingWords { message, help } = words(n, style);
    let more = match f.findings.len() {
        0 | 1 => String::new(),
        many => format!(" ({})", heads::more_of_kind(many - 1)),
    };
    let help = if with_help { help } else { String::new() };
    for text in [&format!("{message}{more}"), &help] {
        out.extend(wrapped(text, TEXT, ROOM).into_iter().map(|l| (l, false)));
    }
    out
}
