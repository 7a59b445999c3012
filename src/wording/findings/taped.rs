//! Of what was taped on site.

use super::finding_words::FindingWords;
use super::parts::listed;
use crate::finding::taped::{TapedFault, TapedFinding};
use crate::model::house::EdgeKind;
use crate::units::LengthStyle;

pub(super) fn words(found: &TapedFinding, style: LengthStyle) -> FindingWords {
    match found {
        TapedFinding::Unreadable { file, line, fault } => FindingWords::new(
            format!("{file}:{line}: {}", unreadable(fault, style)),
            "The table that `lapwright measure` writes has the columns measure and taped; a length is 12'-6 1/2\", 3810mm or a number, each measure once.",
        ),
        TapedFinding::Unknown { measures } => FindingWords::new(
            format!("nothing is drawn that has {}", listed(measures.iter().map(String::as_str))),
            "Take the names as `lapwright measure` writes them for this drawing and job.",
        ),
        TapedFinding::LeftOut { walls, narrower } => FindingWords::new(
            format!(
                "no sheet to tape by for {}: no wider than {}, two sides cannot be told apart there",
                listed(walls.iter().map(|w| &**w)),
                style.short(*narrower)
            ),
            "Measure these on site before their panels are cut. They keep their drawn size and go along with the wall beside them.",
        ),
        TapedFinding::Taken { taken, as_drawn, named } => FindingWords::new(
            format!("{taken} taped lengths are taken; {}", blank(*as_drawn, named)),
            "Nothing to do. Tape what is blank before ordering, the worst first.",
        ),
        TapedFinding::Leans { wall, left, right } => FindingWords::new(
            format!("{wall}: as taped, {}", leaning([*left, *right], style)),
            "Set each post along its corner, not plumb. Panels are cut square, each course to its own length.",
        ),
        TapedFinding::LevelStart { wall, off } => FindingWords::new(
            format!(
                "{wall}: the start is {} out of level as taped, lower at the {}; siding starts level, from the lower corner",
                style.short(off.abs()),
                if *off > 0.0 { "left" } else { "right" }
            ),
            "Snap one level line from the lower corner. At the other one panels hang over the foot of the wall: see that the starter still has wood behind it there and that clearances to grade are kept.",
        ),
        TapedFinding::Top { wall, off } => FindingWords::new(
            format!(
                "{wall}: the top is {} out of level as taped, lower at the {}; the top course is cut to it",
                style.short(off.abs()),
                if *off > 0.0 { "left" } else { "right" }
            ),
            "Courses stay level. Rip each piece of the top course to its own two heights, and set what holds it along the soffit or band, not level.",
        ),
        TapedFinding::Slopes { wall, sloped } => FindingWords::new(
            format!(
                "{wall}: as taped, {} are laid out as slopes: the order has channel there, no post, starter or finish trim",
                listed(sloped.iter().map(|k| sides(*k)))
            ),
            "Put these into the order by hand; or leave the blanks empty (out of plumb, level of the start) where the side is shimmed plumb or the start snapped level.",
        ),
        TapedFinding::Contradicts { wall, measures, off } => FindingWords::new(
            format!(
                "{wall}: {} do not go together: they are off by {}",
                listed(measures.iter().map(String::as_str)),
                style.short(off.abs())
            ),
            "Tape them again. Widths and the lean of the left side are taken, not the lean of the right; an opening or a band that would lie over another, or beyond its wall, stays as drawn.",
        ),
    }
}

/// Corners that lean, left and right.
fn leaning(leans: [f64; 2], style: LengthStyle) -> String {
    let corners = ["left", "right"].into_iter().zip(leans).filter(|(_, lean)| *lean != 0.0);
    let one = |(corner, lean): (&str, f64)| {
        let way = if lean > 0.0 { "right" } else { "left" };
        format!("the {corner} corner leans {} to the {way} at its top", style.short(lean.abs()))
    };
    corners.map(one).collect::<Vec<_>>().join(", ")
}

/// Sides of one kind, as they are taped.
fn sides(kind: EdgeKind) -> &'static str {
    match kind {
        EdgeKind::OutsideCorner | EdgeKind::InsideCorner => "corners out of plumb",
        EdgeKind::Base | EdgeKind::BareTop => "starts out of level",
        EdgeKind::Eave | EdgeKind::BareBottom => "tops out of level",
        _ => "sides out of plumb",
    }
}

fn unreadable(fault: &TapedFault, style: LengthStyle) -> String {
    match fault {
        TapedFault::ColumnMissing { column } => format!("the column `{column}` is missing"),
        TapedFault::QuoteOpen => "a quotation mark stays open".to_owned(),
        TapedFault::NoMeasure { text } => format!("`{text}` is of no measure"),
        TapedFault::NoLength { text } => format!("`{text}` is no length"),
        TapedFault::Beyond { measure, text } => format!("{measure} cannot be `{text}`"),
        TapedFault::FarOff { text, drawn } => {
            format!("`{text}` is far off the drawn {}: is it the right unit?", style.short(*drawn))
        }
        TapedFault::Twice { measure } => format!("{measure} stands there twice"),
    }
}

fn blank(as_drawn: usize, named: &[String]) -> String {
    match as_drawn {
        0 => "none is blank".to_owned(),
        n if n > named.len() => format!(
            "{n} are blank and taken as drawn: {} and {} more",
            named.join(", "),
            n - named.len()
        ),
        n => format!("{n} are blank and taken as drawn: {}", named.join(", ")),
    }
}
