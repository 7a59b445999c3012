//! What a revision changes, in words.

use super::corners;
use super::figure::trimmed;
use super::takeoff::items;
use crate::geom::tol::CUT;
use crate::model::change::{Change, How, Remark, Subject, WallSide};
use crate::model::corner::{CornerKind, Hand};
use crate::model::house::{HiddenBy, OpeningKind};
use crate::model::item::SidingPiece;
use crate::units::{LengthStyle, counted};

/// Heading of the report.
pub const TITLE: &str = "LAPWRIGHT COMPARISON";
/// Heading of what the drawing changes.
pub const CHANGES: &str = "WHAT THE DRAWING CHANGES";
/// Under it where there is none.
pub const NOTHING: &str = "Nothing: walls, openings, levels and titles are as they were.";
/// Heading of settings.
pub const SETTINGS: &str = "SETTINGS OF THE JOB THAT DIFFER (they change the order too)";
/// Heading of walls.
pub const WALLS: &str = "WHAT IT DOES TO EACH WALL (before and after)";
/// Heading of what to order more.
pub const MORE: &str = "ORDER MORE";
/// Heading of what is over.
pub const OVER: &str = "OVER, IF ORDERED BY THE OLD DRAWING";
/// Heading of costs.
pub const COST: &str = "COST AT YOUR PRICES";
/// Where nothing is ordered otherwise.
pub const SAME_ORDER: &str = "The order is the same, line by line.";
/// What the counts rest on.
pub const RESTS_ON: &str = "Both layouts are laid anew, each by itself: a wall that did not change may be cut otherwise, since panels are shared. `lapwright layout --keep OLD` holds what did not change.";
/// Before anything is done by it.
pub const BEFORE_ORDERING: &str = "Ask the architect about each change before you order. The maker's instructions and the local code override every figure.";
/// Title of the sheet of revisions.
pub const SHEET_TITLE: &str = "REVISIONS";
/// What clouds mean.
pub const CLOUDS: &str = "A cloud is round what changed; the triangle holds the letter of the revision, the figure beside it is the number of the change. Dashed in a cloud: what is gone.";
/// Beside the drawing of a wall.
pub const NOT_TO_CUT_BY: &str = "Seams are those of the new layout; cut and hang by the sheets of that layout, not by this one.";
/// Rows of the cost.
pub const OLD_ORDER: &str = "old order";
/// The same.
pub const NEW_ORDER: &str = "new order";
/// The same.
pub const TO_ORDER_MORE: &str = "to order more";
/// The same.
pub const OVER_COST: &str = "over";
/// The same.
pub const DIFFERENCE: &str = "difference";
/// The same.
pub const TAX_DIFFERENCE: &str = "tax on the difference";
/// Columns of the changes.
pub const CHANGE_HEADS: [&str; 4] = ["Number", "Elevation", "Wall", "What is changed"];
/// Over the order before and after.
pub const ORDER_TITLE: &str = "Order more, and what is over";
/// Its columns, before the cost.
pub const ORDER_HEADS: [&str; 5] = ["Item", "Unit", "Before", "After", "More (over: less)"];
/// Under them.
pub const DIFFERENCE_OF_PRICED: &str = "Difference of the priced lines";

/// What the sheet of revisions shows, for readers that cannot see it.
pub fn sheet_description(changes: usize) -> String {
    format!("Table of the revision: {}, and what to order by it", counted(changes, "change"))
}

/// Which two drawings, with the beginning of their fingerprints.
pub fn drawing(which: &str, name: &str, sha256: &str) -> String {
    let short: String = sha256.chars().take(16).collect();
    format!("{which}: {name} (SHA-256 {short})")
}

/// The revision, with its date.
pub fn revision(letter: &str, date: &str) -> String {
    if date.is_empty() {
        format!("Revision {letter}")
    } else {
        format!("Revision {letter}, {date}")
    }
}

/// What is no change of the house.
pub fn remark(remark: &Remark) -> String {
    match remark {
        Remark::Moved { elevations } => {
            let names: Vec<&str> = elevations.iter().map(|e| e.as_str()).collect();
            format!(
                "Elsewhere on the sheet, which changes nothing of the house: {}.",
                names.join(", ")
            )
        }
        Remark::Mirrored => "The house is drawn the other hand: left and right are exchanged. What follows is told on the new drawing.".to_owned(),
        Remark::SameFile => "Both are layouts of the same drawing, bit for bit.".to_owned(),
    }
}

/// A layout that breaks rules.
pub fn check_failed(which: &str) -> String {
    format!("CHECK FAILED: the {which} layout breaks rules of the check. Do not order by it.")
}

/// Where the first course stands before and after.
pub fn datum([from, to]: [f64; 2], style: LengthStyle) -> String {
    let at = |y: f64| {
        format!(
            "{} {} the floor line",
            style.length(y.abs()),
            if y < 0.0 { "below" } else { "over" }
        )
    };
    if (from - to).abs() < CUT {
        return format!("The first course stays {}.", at(to));
    }
    let by = signed(to - from, ["higher", "lower"], style);
    format!("The first course is {}, and was {}: every course line is {by}.", at(to), at(from))
}

/// A length with the word for its sign.
fn signed(by: f64, [plus, minus]: [&str; 2], style: LengthStyle) -> String {
    format!("{} {}", style.short(by.abs()), if by >= 0.0 { plus } else { minus })
}

fn sideways(by: f64, style: LengthStyle) -> String {
    signed(by, ["to the right", "to the left"], style)
}

fn upright(by: f64, style: LengthStyle) -> String {
    signed(by, ["higher", "lower"], style)
}

/// A kind of opening.
pub fn opening(kind: OpeningKind) -> &'static str {
    match kind {
        OpeningKind::Window => "window",
        OpeningKind::Door => "door",
        OpeningKind::OverheadDoor => "overhead door",
        OpeningKind::Vent => "vent",
    }
}

fn side(side: WallSide) -> &'static str {
    match side {
        WallSide::Left => "left side",
        WallSide::Right => "right side",
        WallSide::Foot => "foot",
        WallSide::Top => "top (soffit)",
        WallSide::Rake => "rake",
    }
}

fn in_front(by: Option<HiddenBy>) -> &'static str {
    match by {
        Some(HiddenBy::Roof) => "a roof in front",
        Some(HiddenBy::NotSided | HiddenBy::OtherZone) => "stone, brick or other cladding",
        _ => "what stands in front",
    }
}

/// What is changed, by its name in the new layout and its old name where it had another.
pub fn subject(c: &Change) -> String {
    let kind = match c.how {
        How::Kind { from, .. } => opening(from),
        _ => c.opening.map_or("opening", opening),
    };
    let what = match c.subject {
        Subject::Elevation => "elevation",
        Subject::Zone => "siding of its own:",
        Subject::Wall => "wall",
        Subject::Opening => kind,
        Subject::Fixture => "fixture",
        Subject::Band => "band board",
        Subject::MovementJoint => "joint of the building",
        Subject::Corner => "corner",
        Subject::Grade => "finished grade",
        Subject::FloorLine => "floor line",
        Subject::InFront => "",
    };
    let names = (c.old_name.as_ref(), c.new_name.as_ref());
    let renamed = c.subject != Subject::Elevation && c.subject != Subject::Corner;
    let name = match names {
        (Some(old), Some(new)) if old != new && renamed => format!("{new} (was {old})"),
        (_, Some(one)) | (Some(one), None) => one.to_string(),
        (None, None) => String::new(),
    };
    let on = match (&c.wall, c.subject) {
        (Some(w), Subject::Band | Subject::MovementJoint) => format!("on {w}"),
        (Some(w), Subject::InFront) => format!("of {w}"),
        _ => String::new(),
    };
    [what, &name, &on].iter().filter(|t| !t.is_empty()).copied().collect::<Vec<_>>().join(" ")
}

/// One change as a sentence, without its number.
pub fn change(c: &Change, style: LengthStyle) -> String {
    let what = subject(c);
    match &c.how {
        How::Reshaped { from, to, by } if c.subject == Subject::InFront => {
            let wall = c.wall.as_ref().map(|w| w.to_string()).unwrap_or_default();
            let (from, to) = (area(*from, style), area(*to, style));
            format!("{} covers {to} of wall {wall}, was {from}", in_front(*by))
        }
        how => format!("{what}: {}", short(how, style)),
    }
}

/// How a thing is changed, in few words: beside a cloud.
pub fn short(how: &How, style: LengthStyle) -> String {
    let sized = |size: &Option<[f64; 2]>, openings: usize| {
        let size = size.map(|[w, h]| format!(", {}", style.size(w, h))).unwrap_or_default();
        let with = if openings > 0 {
            format!(", with {}", counted(openings, "opening"))
        } else {
            String::new()
        };
        format!("{size}{with}")
    };
    match how {
        How::Added { size, openings, .. } => format!("new{}", sized(size, *openings)),
        How::Removed { size, openings, .. } => format!("gone{}", sized(size, *openings)),
        How::Moved { right, up } => {
            let moves = [
                (*right != 0.0).then(|| sideways(*right, style)),
                (*up != 0.0).then(|| upright(*up, style)),
            ];
            format!("moved {}", moves.into_iter().flatten().collect::<Vec<_>>().join(", "))
        }
        How::Resized { from, to, sides } => resized(*from, *to, *sides, style),
        How::SideMoved { side: of, by } => {
            let moved = match of {
                WallSide::Left | WallSide::Right => sideways(*by, style),
                _ => upright(*by, style),
            };
            format!("{} {moved}", side(*of))
        }
        How::Pitch { from, to } => {
            format!("slope {} in 12, was {} in 12", trimmed(*to, 2), trimmed(*from, 2))
        }
        How::Reshaped { from, to, .. } => {
            format!("another outline, {}, was {}", area(*to, style), area(*from, style))
        }
        How::Raised { up } => upright(*up, style),
        How::Regraded { highest, lowest } => regraded(*highest, *lowest, style),
        How::Kind { to, .. } => format!("now a {}", opening(*to)),
        How::Block { now: true } => "has a mounting block now".to_owned(),
        How::Block { now: false } => "has no mounting block any more".to_owned(),
        How::Turned { side, from, to } => {
            let hand = match side {
                Hand::Left => "left",
                Hand::Right => "right",
            };
            format!("at the {hand} side {} now, was {}", turned(*to), turned(*from))
        }
        How::Renamed { from, to } => format!("titled {to} now, was {from}"),
    }
}

fn area(feet: f64, style: LengthStyle) -> String {
    format!("{} {}", trimmed(style.area(feet), 1), style.area_unit())
}

fn turned((kind, angle): (CornerKind, Option<f64>)) -> String {
    let angle = angle.map(|a| format!(", {} degrees", trimmed(a, 1))).unwrap_or_default();
    format!("{}{angle}", corners::kind(kind).en)
}

fn resized(from: [f64; 2], to: [f64; 2], sides: [f64; 4], style: LengthStyle) -> String {
    let [left, sill, right, head] = sides;
    let moved = [
        (left != 0.0).then(|| format!("left side {}", sideways(left, style))),
        (right != 0.0).then(|| format!("right side {}", sideways(right, style))),
        (sill != 0.0).then(|| format!("sill {}", upright(sill, style))),
        (head != 0.0).then(|| format!("head {}", upright(head, style))),
    ];
    let moved: Vec<String> = moved.into_iter().flatten().collect();
    format!(
        "{}, was {}: {}",
        style.size(to[0], to[1]),
        style.size(from[0], from[1]),
        moved.join(", ")
    )
}

fn regraded(highest: f64, lowest: f64, style: LengthStyle) -> String {
    match (highest > 0.0, lowest < 0.0) {
        (true, true) => format!(
            "up to {} higher and up to {} lower",
            style.short(highest),
            style.short(-lowest)
        ),
        (true, false) => format!("{} to {} higher", style.short(lowest), style.short(highest)),
        _ => format!("{} to {} lower", style.short(-highest), style.short(-lowest)),
    }
}

/// How many changes, and where to read of them: in the table of revisions.
pub fn in_table(changes: usize) -> String {
    match changes {
        0 => "no change of the house".to_owned(),
        n => format!("{}: see the sheet of revisions", counted(n, "change")),
    }
}

/// Walls that are not told.
pub fn walls_alike(walls: usize) -> String {
    format!("{} as before.", counted(walls, "wall"))
}

/// Panels or boards laid before and after, whatever they are bought by.
pub fn panels([from, to]: [usize; 2], piece: SidingPiece) -> String {
    let name = items::piece(piece);
    if from == to {
        return format!("{} laid, as before.", counted(to, name.en));
    }
    let change = to.abs_diff(from);
    let word = if to > from { "more" } else { "fewer" };
    format!("{} laid, {change} {word} than before ({from}).", counted(to, name.en))
}

/// Lines of the order that are not told.
pub fn orders_alike(lines: usize) -> String {
    format!("{} of the order as before.", counted(lines, "line"))
}

/// A setting before and after.
pub fn setting(key: &str, from: Option<&str>, to: Option<&str>) -> String {
    let said = |v: Option<&str>| v.map_or_else(|| "not set".to_owned(), str::to_owned);
    format!("{key}: {}, was {}", said(to), said(from))
}

/// Lines that differ and have no price.
pub fn unpriced(lines: &[String]) -> String {
    format!("Without a price, and in no sum: {}.", lines.join(", "))
}
