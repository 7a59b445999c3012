//! Corners of the house as a part of the report.

use super::text::WIDTH;
use crate::clean::terminal;
use crate::layout::Layout;
use crate::model::corner::Corner;
use crate::wording::corners as words;

/// Room for a corner's name, and where a second line begins.
const NAME: usize = 18;
const INDENT: usize = NAME + 3;

/// Each corner with the walls that meet in it and how they were brought together.
pub(super) fn text(layout: &Layout) -> String {
    let style = layout.job.sheet.lengths;
    let row = |c: &Corner| {
        let round: Vec<&str> =
            c.sides.iter().skip(1).map(|s| s.wall.as_str()).filter(|w| !w.is_empty()).collect();
        let (by, kind) = (words::pairing(c.by), words::kind(c.kind).en);
        // A name that is to be typed into the job is never cut short.
        let name = match c.id.chars().count() {
            0..=NAME => format!("  {:<NAME$}", terminal(&c.id)),
            _ => format!("  {}\n  {:<NAME$}", terminal(&c.id), ""),
        };
        let heights = format!("{:>9} to {:<9}", style.length(c.low), style.length(c.high));
        let end = if round.is_empty() {
            by.to_owned()
        } else {
            format!("{}, {by}", terminal(&round.join(", ")))
        };
        let row = format!("{name} {kind:<7} {heights}");
        let last = row.lines().last().unwrap_or_default().chars().count();
        match last + 1 + end.chars().count() <= WIDTH {
            true => format!("{row} {end}\n"),
            false => format!("{row}\n{:<INDENT$}{end}\n", ""),
        }
    };
    if layout.corners.is_empty() {
        return String::new();
    }
    let rows: String = layout.corners.iter().map(row).collect();
    format!("{}\n{rows}", words::HEADING)
}
