//! The key of an elevation sheet, and what is written beside things on it.

use crate::job::Job;
use crate::layout::wall::LaidZone;
use crate::model::corner::CornerKind;
use crate::units::LengthStyle;
use crate::wording::{corners, siding};

/// Where siding goes.
pub const LIMIT_OF_SIDING: &str = "limit of siding";
/// Butt edge of a panel.
pub const PANEL_EDGE: &str = "panel edge";
/// A seam.
pub const SEAM: &str = "seam";
/// Which panel laps.
pub const LAP: &str = "lap: exposed edge faces away from the entry";
/// Corner posts.
pub const CORNER_POSTS: &str = "corner post OP outside, IP inside";
/// Starter strip.
pub const STARTER: &str = "starter ST";
/// Channels.
pub const CHANNELS: &str = "J-channel JH head, JJ jamb, JS sill, JW wall, JR rake, JL lower roof";
/// Channels round curves.
pub const BENT_CHANNEL: &str = "JB flexible J-channel, bent along the curve";
/// Drip cap.
pub const DRIP_CAP: &str = "drip cap DC";
/// Undersill trim.
pub const UNDERSILL: &str = "undersill (finish) trim FT";
/// Casings, bands, filler boards.
pub const TRIM_BOARDS: &str = "trim board";
/// The level line of the house.
pub const FLOOR_REFERENCE: &str = "floor reference line";
/// Finished grade.
pub const GRADE: &str = "grade";
/// Lines of the source.
pub const SOURCE: &str = "source drawing";
/// The frame of a mark.
pub const TRIM_MARK: &str = "trim mark";
/// Where the next sheet goes on.
pub const MATCH_LINE: &str = "match line";
/// Butt edge of a board.
pub const BOARD_EDGE: &str = "board edge";
/// Where boards meet.
pub const JOINT: &str = "joint, on a stud";
/// Corner boards.
pub const CORNER_BOARDS: &str = "corner boards OP outside, IP inside";
/// Starter piece of boards.
pub const STARTER_PIECE: &str = "starter piece ST";
/// The figure of a rip.
pub const RIP: &str = "rip to: height of the piece";
/// How high a ripped piece is.
pub fn rip(height: &str) -> String {
    format!("rip {height}")
}

/// The marks of broken seam rules.
pub const BREAKS: &str = "X1 and on, at diamonds: a seam rule fails, see the report";
/// The marks of places that break a rule of the check.
pub const FAILED: &str = "FAIL 1 and on, at heavy circles: the check failed here, see the cover";
/// The mark of a level check.
pub const LEVEL_CHECK: &str = "wedge at a butt line: check level there, and against the next wall";
/// Flashing along sloped roofs.
pub const STEP_FLASHING: &str = "step flashing: 4 x 4 in or more, one a course (R905.2.8.3)";
/// Flashing where a roof ends above wall that goes on.
pub const KICK_OUT: &str = "kick-out: large, into the gutter";
/// At the corner of a wall that no elevation shows.
pub const RETURN_WIDTH: &str = "return: confirm width";

/// Room over roofs and decks.
pub fn clear_of_roof(job: &Job) -> String {
    format!(
        "siding {} clear of roofs and decks ({}); flashing behind it, 26 gauge or more (R903.2.1)",
        job.sheet.lengths.short(job.clearances().roof),
        siding::roof_source(job.siding())
    )
}

/// Room over grade.
pub fn above_grade(clear: f64, style: LengthStyle) -> String {
    format!("{} min. above grade", style.short(clear))
}

/// Which boards the thin lines are, each with its letters.
pub fn boards(list: &[String]) -> String {
    format!("thin solid lines are boards: {}", list.join(", "))
}

/// At a corner that is not square.
pub fn post_angle(degrees: f64) -> String {
    format!("post for {degrees:.0} degrees")
}

/// How far from drawn corners siding is reckoned, by sorts of corners, and the gap on top.
pub fn set_backs(backs: &[(CornerKind, Option<f64>, String)], gap: &str) -> String {
    let each = |(kind, angle, back): &(CornerKind, Option<f64>, String)| {
        let at = angle.map(|a| format!(" at {a:.0} degrees")).unwrap_or_default();
        format!("{back} {}{at}", corners::kind(*kind))
    };
    let each: Vec<String> = backs.iter().map(each).collect();
    format!("set-back from drawn corners: {}; end gap {gap} more", each.join(", "))
}

/// Where the next part of an elevation is.
pub fn match_line(part: usize) -> String {
    format!("match line: see part {part}")
}

/// The length of a scale bar.
pub fn scale_bar(length: &str, unit_proved: bool) -> String {
    if unit_proved {
        length.to_owned()
    } else {
        format!("{length}  DO NOT SCALE: the unit is not proved")
    }
}

/// Other cladding, named and measured.
pub fn zone(z: &LaidZone, style: LengthStyle) -> String {
    let area = area(z.net_area, style);
    if z.laid_out {
        format!("{}: see the set of {}, {area} net", siding::cladding(z), z.zone)
    } else {
        format!("{}: not laid out, {area} net", siding::cladding(z))
    }
}

/// The same in the overlay.
pub fn overlay_zone(z: &LaidZone, style: LengthStyle) -> String {
    let how = if z.laid_out { "A SET OF ITS OWN" } else { "NOT LAID OUT" };
    format!("{}: {}, {how}, {} NET", z.id, siding::cladding(z), area(z.net_area, style))
}

/// What the overlay says under an elevation.
pub fn overlay_notice(elevation: &str) -> String {
    format!("{elevation}: SIDING LAYOUT. MANUFACTURER'S INSTRUCTIONS AND LOCAL CODE GOVERN.")
}

fn area(square_feet: f64, style: LengthStyle) -> String {
    format!("{:.1} {}", style.area(square_feet), style.area_unit())
}
