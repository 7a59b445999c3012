//! The independent check in words: its rules, and what breaks them.

mod counts;
mod siding;
mod titles;
mod trim;
mod walls;

use crate::language::{Language, Said, said};
use crate::layout::Layout;
use crate::layout::breach::Breach;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::{Place, Subject, Violation};
use crate::units::LengthStyle;
use crate::wording::figure;
use crate::wording::nouns::{self, counted};
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
pub fn failed(lang: Language, places: usize) -> String {
    say!(lang, "CHECK FAILED: {}", "REVISIÓN FALLIDA: {}", counted(lang, places, nouns::PLACE))
}

/// The bar of a sheet or table: what failed, and what not to do.
pub fn bar(lang: Language, places: usize) -> String {
    say!(
        lang,
        "{}. Do not cut, order or build by this.",
        "{}. No corte, no pida ni construya con esto.",
        failed(lang, places)
    )
}

/// The bar in one cell of a table, with where each place is told.
pub fn bar_of_table(lang: Language, places: usize) -> String {
    format!("{} See report.txt and the cover.", bar(lang, places))
}

/// What is told of a layout that breaks rules, even where nothing else is: the first place in words.
pub fn alarm(layout: &Layout) -> String {
    let lang = Language::English;
    let verify = &layout.verify;
    let of = layout.zone.as_ref().map_or(String::new(), |z| format!(", zone {z}"));
    let first = verify.numbered().next().map_or(String::new(), |(n, v)| {
        format!(" {}: {}.", mark(lang, n), in_full(lang, v, layout.job.sheet.lengths))
    });
    format!("{}{of}. Do not cut, order or build by it.{first}", failed(lang, verify.places()))
}

/// Heading over the list of places.
pub const PLACES: Said = said("Check failed: places", "Revisión fallida: lugares");
/// Heading over what no layout avoids.
pub const NO_LAYOUT: Said = said(
    "Proven: no layout keeps these rules",
    "Probado: ninguna distribución cumple estas reglas",
);

/// What is said under that heading.
pub fn unavoidable(lang: Language, cases: usize) -> String {
    say!(
        lang,
        "The check itself proves that no layout of the courses concerned keeps the rule in {}: it is not a failure. The settings named with the conflict would do.",
        "La revisión misma prueba que ninguna distribución de esas hileras cumple la regla en {}: no es una falla. Servirían los ajustes que se nombran con el conflicto.",
        counted(lang, cases, nouns::CASE)
    )
}

/// The mark of a place that breaks a rule: `FAIL 3`.
pub fn mark(lang: Language, number: usize) -> String {
    say!(lang, "FAIL {number}", "FALLA {number}")
}

/// The mark with what it concerns: `FAIL 3: piece F2-14-2`.
pub fn named(lang: Language, number: usize, v: &Violation) -> String {
    format!("{}: {}", mark(lang, number), subject(lang, &v.subject))
}

/// A violation with its number and rule.
pub fn numbered(lang: Language, n: usize, v: &Violation, style: LengthStyle) -> String {
    format!("{}: {}.", mark(lang, n), in_full(lang, v, style))
}

/// A violation with its rule. What breaks it in which figures is told by the report, in English: a sheet in
/// Spanish names rule, subject and place.
pub fn in_full(lang: Language, v: &Violation, style: LengthStyle) -> String {
    match lang {
        Language::English => format!("rule \"{}\": {}", rule(v.rule).en, violation(v, style)),
        Language::Spanish => {
            let at =
                v.at.as_ref().map_or(String::new(), |p| format!(", {}", place(lang, p, style)));
            let (rule, subject) = (rule(v.rule).es, subject(lang, &v.subject));
            format!("regla \"{rule}\": {subject}{at}; las medidas están en report.txt")
        }
    }
}

/// All rules in one sentence: `41 rules checked independently: all pass.`
pub fn summary(lang: Language, rules: &[RuleCheck]) -> String {
    let broken: usize = rules.iter().map(|r| r.violations.len()).sum();
    let proven: usize = rules.iter().map(|r| r.unavoidable.len()).sum();
    let failing = rules.iter().filter(|r| !r.passes()).count();
    let all = counted(lang, rules.len(), nouns::RULE);
    let but = match proven {
        0 => String::new(),
        n => say!(
            lang,
            ", but for {} that no layout avoids, as the check proves",
            ", salvo {} que ninguna distribución evita, como lo prueba la revisión",
            counted(lang, n, nouns::CASE)
        ),
    };
    if broken == 0 {
        return say!(
            lang,
            "{all} checked independently: all pass{but}.",
            "{all} revisadas por separado: todas se cumplen{but}."
        );
    }
    let failed = failed(lang, broken);
    let fail = if failing == 1 { said("FAILS", "FALLA") } else { said("FAIL", "FALLAN") };
    let fail = fail.of(lang);
    say!(
        lang,
        "{failed}. {all} checked independently: {failing} {fail}{but}; see report.txt.",
        "{failed}. {all} revisadas por separado: {failing} {fail}{but}; vea report.txt."
    )
}

/// How many more than those that are shown.
pub fn and_more(lang: Language, more: usize) -> String {
    say!(lang, "and {more} more", "y {more} más")
}

/// A violation in one sentence, without its rule.
pub fn violation(v: &Violation, style: LengthStyle) -> String {
    let lang = Language::English;
    let other = v.other.as_ref().map_or(String::new(), |o| format!(", {}", subject(lang, o)));
    let mut out = format!("{}{other}: {}", subject(lang, &v.subject), breach(&v.breach, style));
    if let Some(figures) = figure::against(v.measured, v.allowed, style) {
        out.push_str(&format!(": {figures}"));
    }
    if let Some(at) = &v.at {
        out.push_str(&format!(" ({})", place(lang, at, style)));
    }
    out
}

/// What a violation concerns.
fn subject(lang: Language, s: &Subject) -> String {
    match s {
        Subject::House => said("house", "casa").of(lang).to_owned(),
        Subject::Elevation { elevation } => {
            say!(lang, "elevation {elevation}", "elevación {elevation}")
        }
        Subject::Wall { wall } => say!(lang, "wall {wall}", "pared {wall}"),
        Subject::Course { wall, course } => {
            say!(lang, "wall {wall}, course {}", "pared {wall}, hilera {}", number(*course))
        }
        Subject::Opening { opening, .. } => say!(lang, "opening {opening}", "abertura {opening}"),
        Subject::Obstacle { obstacle, .. } => {
            say!(lang, "fixture {obstacle}", "accesorio {obstacle}")
        }
        Subject::Zone { zone } => say!(lang, "zone {zone}", "zona {zone}"),
        Subject::Corner { corner } => say!(lang, "corner {corner}", "esquina {corner}"),
        Subject::Run { run } => say!(lang, "run {run}", "tramo {run}"),
        Subject::Piece { piece } => say!(lang, "piece {piece}", "pieza {piece}"),
        Subject::Panel { panel } => say!(lang, "panel {panel}", "panel {panel}"),
        Subject::Trim { trim } => say!(lang, "trim {trim}", "moldura {trim}"),
        Subject::TrimStock { stock } => {
            say!(lang, "stock {}", "tramo de {}", stock_length(lang, stock, false))
        }
        Subject::TakeoffLine { line } => {
            say!(lang, "takeoff line {line}", "línea del pedido {line}")
        }
    }
}

/// A course as sheets number it: the first over the datum is 1.
fn number(course: i32) -> i64 {
    i64::from(course) + 1
}

/// A place: `FRONT, 12'-3 1/2" from left, height 4'-2"`.
fn place(lang: Language, at: &Place, style: LengthStyle) -> String {
    let [x, y] = at.point;
    say!(
        lang,
        "{}, {} from left, height {}",
        "{}, a {} desde la izquierda, altura {}",
        at.elevation,
        style.length(x),
        style.length(y)
    )
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
