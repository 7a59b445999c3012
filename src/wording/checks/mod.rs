//! The independent check in words: its rules, and what breaks them.

mod counts;
mod siding;
mod titles;
mod trim;
mod walls;

use crate::layout::Layout;
use crate::layout::breach::Breach;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::{Place, Subject, Violation};
use crate::units::{LengthStyle, counted};
use crate::wording::figure;
use crate::wording::trim::stock_length;

pub use self::titles::{SECTION, rule, rule_on};

/// Whether a rule is kept: `pass`, or `FAIL` with how many cases break it.
pub fn verdict(check: &RuleCheck) -> String {
    match (check.violations.len(), check.unavoidable.len()) {
        (0, 0) => "pass".to_owned(),
        (0, n) => format!("{n} proven unavoidable"),
        (n, _) => format!("{n} FAIL"),
    }
}

/// What stands on everything that is written of a layout that breaks rules.
pub fn failed(places: usize) -> String {
    format!("CHECK FAILED: {}", counted(places, "place"))
}

/// The bar of a sheet or table: what failed, and what not to do.
pub fn bar(places: usize) -> String {
    format!("{}. Do not cut, order or build by this.", failed(places))
}

/// The bar in one cell of a table, with where each place is told.
pub fn bar_of_table(places: usize) -> String {
    format!("{} See report.txt and the cover.", bar(places))
}

/// What is told of a layout that breaks rules, even where nothing else is: the first place in words.
pub fn alarm(layout: &Layout) -> String {
    let verify = &layout.verify;
    let of = layout.zone.as_ref().map_or(String::new(), |z| format!(", zone {z}"));
    let first = verify.numbered().next().map_or(String::new(), |(n, v)| {
        format!(" {}: {}.", mark(n), in_full(v, layout.job.sheet.lengths))
    });
    format!("{}{of}. Do not cut, order or build by it.{first}", failed(verify.places()))
}

/// Heading over the list of places.
pub const PLACES: &str = "Check failed: places";
/// Heading over what no layout avoids.
pub const NO_LAYOUT: &str = "Proven: no layout keeps these rules";

/// What is said under that heading.
pub fn unavoidable(cases: usize) -> String {
    format!(
        "The check itself proves that no layout of the courses concerned keeps the rule in {}: it is not a failure. The settings named with the conflict would do.",
        counted(cases, "case")
    )
}

/// The mark of a place that breaks a rule: `FAIL 3`.
pub fn mark(number: usize) -> String {
    format!("FAIL {number}")
}

/// The mark with what it concerns: `FAIL 3: piece F2-14-2`.
pub fn named(number: usize, v: &Violation) -> String {
    format!("{}: {}", mark(number), subject(&v.subject))
}

/// A violation with its rule.
pub fn in_full(v: &Violation, style: LengthStyle) -> String {
    format!("rule \"{}\": {}", rule(v.rule), violation(v, style))
}

/// All rules in one sentence: `41 rules checked independently: all pass.`
pub fn summary(rules: &[RuleCheck]) -> String {
    let broken: usize = rules.iter().map(|r| r.violations.len()).sum();
    let proven: usize = rules.iter().map(|r| r.unavoidable.len()).sum();
    let failing = rules.iter().filter(|r| !r.passes()).count();
    let all = counted(rules.len(), "rule");
    let but = match proven {
        0 => String::new(),
        n => format!(", but for {} that no layout avoids, as the check proves", counted(n, "case")),
    };
    if broken == 0 {
        return format!("{all} checked independently: all pass{but}.");
    }
    let failed = failed(broken);
    format!("{failed}. {all} checked independently: {failing} FAIL{but}; see report.txt.")
}

/// How many more than those that are shown.
pub fn and_more(more: usize) -> String {
    format!("and {more} more")
}

/// A violation in one sentence, without its rule.
pub fn violation(v: &Violation, style: LengthStyle) -> String {
    let other = v.other.as_ref().map_or(String::new(), |o| format!(", {}", subject(o)));
    let mut out = format!("{}{other}: {}", subject(&v.subject), breach(&v.breach, style));
    if let Some(figures) = figure::against(v.measured, v.allowed, style) {
        out.push_str(&format!(": {figures}"));
    }
    if let Some(at) = &v.at {
        out.push_str(&format!(" ({})", place(at, style)));
    }
    out
}

/// What a violation concerns.
fn subject(s: &Subject) -> String {
    match s {
        Subject::House => "house".to_owned(),
        Subject::Elevation { elevation } => format!("elevation {elevation}"),
        Subject::Wall { wall } => format!("wall {wall}"),
        Subject::Course { wall, course } => format!("wall {wall}, course {}", number(*course)),
        Subject::Opening { opening, .. } => format!("opening {opening}"),
        Subject::Obstacle { obstacle, .. } => format!("fixture {obstacle}"),
        Subject::Zone { zone } => format!("zone {zone}"),
        Subject::Corner { corner } => format!("corner {corner}"),
        Subject::Run { run } => format!("run {run}"),
        Subject::Piece { piece } => format!("piece {piece}"),
        Subject::Panel { panel } => format!("panel {panel}"),
        Subject::Trim { trim } => format!("trim {trim}"),
        Subject::TrimStock { stock } => format!("stock {}", stock_length(stock, false)),
        Subject::TakeoffLine { line } => format!("takeoff line {line}"),
    }
}

/// A course as sheets number it: the first over the datum is 1.
fn number(course: i32) -> i64 {
    i64::from(course) + 1
}

/// A place: `FRONT, 12'-3 1/2" from left, height 4'-2"`.
fn place(at: &Place, style: LengthStyle) -> String {
    let [x, y] = at.point;
    format!("{}, {} from left, height {}", at.elevation, style.length(x), style.length(y))
}

fn breach(breach: &Breach, style: LengthStyle) -> String {
    match breach {
        Breach::Field(b) => walls::field(b, style),
        Breach::Course(b) => walls::course(b),
        Breach::Run(b) => siding::run(b, style),
        Breach::Piece(b) => siding::piece(b, style),
        Breach::Panel(b) => siding::panel(b, style),
        Breach::Opening(b) => trim::opening(b),
        Breach::Trim(b) => trim::trim(b, style),
        Breach::Corner(b) => trim::corner(b, style),
        Breach::Count(b) => counts::count(b, style),
    }
}
