//! This layout and the rules of thumb by area.

use crate::job::Job;
use crate::model::counting::{CountingMethod, LengthCount};
use crate::sources::takeoff::TakeoffFact;
use crate::units::LengthStyle;
use crate::wording::lists::joined;
use crate::wording::sources::titles;

/// The way of counting by name.
pub fn name(method: &CountingMethod, style: LengthStyle) -> String {
    match method {
        CountingMethod::ThisLayout { .. } => "this layout".to_owned(),
        CountingMethod::OneLength { length, .. } => format!("{} alone", style.length(*length)),
        CountingMethod::NetArea { waste } => format!("net area + {waste} %"),
        CountingMethod::GrossArea => "gross area".to_owned(),
        CountingMethod::LargeOpenings { over } => {
            let over = (style.area(*over) * 10.0).round() / 10.0;
            format!("less openings over {over} {}", style.area_unit())
        }
    }
}

/// How it counts, with its source.
pub fn explained(method: &CountingMethod, job: &Job) -> String {
    let source = |fact: TakeoffFact| titles(&[fact.record()]);
    match method {
        CountingMethod::ThisLayout { by_length, first } => format!(
            "every piece placed and cut from stock{}; spare not counted",
            by_lengths(by_length, *first, job.sheet.lengths)
        ),
        CountingMethod::OneLength { length, .. } => format!(
            "laid out with panels of {} and no others, spare not counted; more or less by length as panels of the first",
            job.sheet.lengths.length(*length)
        ),
        CountingMethod::NetArea { .. } => format!(
            "all openings subtracted, then waste added ({})",
            source(TakeoffFact::AllOpeningsOff)
        ),
        CountingMethod::GrossArea => format!(
            "no opening subtracted: they pay for the waste; wall without siding left out ({})",
            source(TakeoffFact::NoOpeningsOff)
        ),
        CountingMethod::LargeOpenings { .. } => format!(
            "only large openings and wall without siding subtracted, the rest pay for the waste (contractors; the area is {}, no source)",
            source(TakeoffFact::LargeOpeningsOff)
        ),
    }
}

/// Panels by length, where lengths are mixed: all are counted by length as panels of the first, so
/// that they compare with what area would buy of these.
fn by_lengths(by_length: &[LengthCount], first: f64, style: LengthStyle) -> String {
    let each: Vec<String> =
        by_length.iter().map(|l| format!("{} of {}", l.count, style.length(l.length))).collect();
    if each.is_empty() {
        return String::new();
    }
    format!(", {}, counted by their length as panels of {}", joined(&each), style.length(first))
}

/// More or fewer than this layout takes.
pub fn difference(over: i64) -> String {
    match over {
        0 => "-".to_owned(),
        n if n > 0 => format!("{n} more"),
        n => format!("{} SHORT", n.unsigned_abs()),
    }
}
