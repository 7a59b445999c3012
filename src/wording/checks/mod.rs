//! The independent check in words: its rules, and what breaks them.

mod counts;
mod siding;
mod titles;
mod trim;
mod walls;

use crate::layout::breach::Breach;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::{Place, Subject, Violation};
use crate::units::{LengthStyle, counted};
use crate::wording::figure;
use crate::wording::trim::stock_length;

pub use self::titles::{SECTION, rule};

/// Whether a rule is kept: `pass`, or `FAIL` with how many cases break it.
pub fn verdict(check: &RuleCheck) -> String {
    if check.passes() { "pass".to_owned() } else { format!("{} FAIL", check.violations.len()) }
}

/// All rules in one sentence: `41 rules checked independently: all pass.`
pub fn summary(rules: &[RuleCheck]) -> String {
    let broken: usize = rules.iter().map(|r| r.violations.len()).sum();
    let failed = rules.iter().filter(|r| !r.passes()).count();
    let all = counted(rules.len(), "rule");
    if broken == 0 {
        return format!("{all} checked independently: all pass.");
    }
    let cases = counted(broken, "case");
    format!("{all} checked independently: {failed} FAIL in {cases}; see report.txt.")
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
        Subject::TrimStock { stock } => format!("stock {}", stock_length(stock)),
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
