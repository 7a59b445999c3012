//! The list of findings, kind by kind, in columns.

use super::groups::{Group, Marked};
use crate::annotate::canvas::{fitted, wrapped};
use crate::annotate::style::TEXT;
use crate::finding::{Finding, Severity};
use crate::geom::vocabulary::{Point, Rect};
use crate::units::LengthStyle;
use crate::wording::findings::{self, FindingWords, words};
use crate::wording::problems as heads;

/// Width of the page and its margins, inches.
pub(super) const WIDTH: f64 = 17.0;
pub(super) const MARGIN: f64 = 0.5;
/// Of lines under a finding, inches.
const INDENT: f64 = 0.25;
/// Columns of the list, and the room between them, inches.
const COLUMNS: usize = 2;
pub(super) const BETWEEN: f64 = 0.4;
/// Width of a column.
pub(super) const COLUMN: f64 = (WIDTH - 2.0 * MARGIN - BETWEEN) / COLUMNS as f64;
/// Width of its lines, inches: some air is left, since a viewer that lacks the typeface sets wider.
const ROOM: f64 = (COLUMN - INDENT) * 0.9;

/// A line of the list.
pub(super) struct Line {
    pub(super) text: String,
    pub(super) bold: bool,
    /// From the left end of its column, inches.
    pub(super) indent: f64,
}

impl Line {
    fn plain(text: String) -> Line {
        Line { text, bold: false, indent: INDENT }
    }
}

/// The list under the picture in columns of `most` lines. Where there is no room for all, what to do about
/// remarks is left to check.txt first, then the kinds that come last.
pub(super) fn listed(
    found: &[Group],
    (window, style): (Option<Rect>, LengthStyle),
    place: impl Fn(&Finding) -> Option<Point>,
    most: usize,
) -> Vec<Vec<Line>> {
    let entries = |with_help: bool| -> Vec<Vec<Line>> {
        let of = |g: &Group| -> Vec<Vec<Line>> {
            let kinds = g.kinds(&place);
            let helped = |k: &Marked| with_help || k.severity() != Severity::Info;
            let mut out: Vec<_> =
                kinds.iter().map(|k| entry(k, window, style, helped(k))).collect();
            // A head stands with its first kind.
            if let (true, Some(first)) = (kinds.len() > 1, out.first_mut()) {
                first.insert(0, head(g));
            }
            out
        };
        found.iter().flat_map(of).collect()
    };
    let whole = entries(true);
    let fits = whole.iter().map(Vec::len).sum::<usize>() + most / 4 <= COLUMNS * most;
    let entries = if fits { whole } else { entries(false) };
    let all: usize = entries.iter().map(Vec::len).sum();
    let even = all.div_ceil(COLUMNS).min(most);
    let mut out: Vec<Vec<Line>> = vec![Vec::new()];
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
            column.push(Line::plain(heads::more_in_check(kinds - i)));
            break;
        }
        column.extend(lines);
    }
    if found.is_empty() {
        out[0].push(Line::plain(heads::NOTHING_TO_REPORT.to_owned()));
    }
    out
}

fn word(severity: Severity) -> &'static str {
    match severity {
        Severity::Error => "ERROR",
        Severity::Warning => "warning",
        Severity::Info => "remark",
    }
}

/// Over kinds about one subject: `3  warning Corners: 2 warnings, 1 remark`.
fn head(g: &Group) -> Line {
    let told = findings::head(&g.told, "remark");
    let text = format!("{}  {} {told}", g.number, word(g.told.severity()));
    Line { text: fitted(&text, TEXT, true, COLUMN * 0.95), bold: true, indent: 0.0 }
}

/// What is said of one kind: its mark and code, the first finding, how many more there are.
fn entry(f: &Marked, window: Option<Rect>, style: LengthStyle, with_help: bool) -> Vec<Line> {
    let n = f.kind.first();
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
    let head = format!("{}  {} {}{place}{entity}{also}", f.mark, word(n.severity()), n.code());
    let mut out =
        vec![Line { text: fitted(&head, TEXT, true, COLUMN * 0.95), bold: true, indent: 0.0 }];
    let FindingWords { message, help } = words(n, style);
    let more = match f.kind.all().len() {
        0 | 1 => String::new(),
        many => format!(" ({})", heads::more_of_kind(many - 1)),
    };
    let help = if with_help { help } else { String::new() };
    for text in [&format!("{message}{more}"), &help] {
        out.extend(wrapped(text, TEXT, ROOM).into_iter().map(Line::plain));
    }
    out
}
