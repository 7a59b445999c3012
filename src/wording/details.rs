//! Words of the details sheet.

use super::sheet_lengths;
use super::siding::{nail_material, name};
use crate::job::siding::system::{CutEdgeRule, NailHold};
use crate::job::{InsideCorner, Job, TopFinish};
use crate::units::LengthStyle;

/// The sheet.
pub const DETAILS: &str = "Details";
/// What it holds.
pub const DESCRIPTION: &str =
    "Typical sections of the siding where it starts, ends, laps and is flashed";
/// What its heading says.
pub const TYPICAL: &str = "typical; dimensions are the job's settings, profiles are for the look. The manufacturer's instructions and the local code come first.";

/// Over grade.
pub const STARTER: &str = "Start over grade";
/// Over a roof.
pub const ROOF: &str = "Roof to wall";
/// Low end of a roof.
pub const KICK_OUT: &str = "Low end of a roof, seen from the front";
/// Under a soffit.
pub const SOFFIT: &str = "Top under a soffit";
/// Outside corner.
pub const OUTSIDE: &str = "Outside corner, seen from above";
/// Inside corner.
pub const INSIDE: &str = "Inside corner, seen from above";
/// Seam of panels.
pub const SEAM: &str = "Seam, seen from above";
/// Joint of boards.
pub const JOINT: &str = "Joint on a stud, seen from above";
/// Under a window.
pub const SILL: &str = "Sill";
/// Beside an opening.
pub const JAMB: &str = "Jamb, seen from above";
/// Over an opening.
pub const HEAD: &str = "Head";
/// Water tab.
pub const TAB: &str = "Water tab, seen from the front";
/// Mounting block.
pub const BLOCK: &str = "Mounting block";

/// Name of a dimension.
pub const STARTER_LINE: &str = "snapped line to butt line";
/// Name of a dimension.
pub const CLEAR_OF_GRADE: &str = "clear of grade";
/// Name of a dimension.
pub const CLEAR_OF_ROOF: &str = "clear of the roof";
/// Name of a dimension, and of the board.
pub const FRIEZE: &str = "frieze board";
/// Name of a dimension.
pub const OVER_CUT: &str = "room at the cut edge";
/// Name of a dimension.
pub const SET_BACK: &str = "set-back";
/// Name of a dimension.
pub const END_GAP: &str = "end gap";
/// Name of a dimension.
pub const FACE: &str = "face";
/// Name of a dimension.
pub const LAP: &str = "lap";
/// Name of a dimension.
pub const JOINT_GAP: &str = "gap at the joint";
/// Name of a dimension.
pub const FOAM_SET_BACK: &str = "foam stops short";
/// Name of a dimension.
pub const TAB_LENGTH: &str = "tab";
/// Name of a dimension.
pub const ROUND_BLOCK: &str = "room round the block";

/// Note.
pub const BARRIER: &str = "Weather barrier over the sheathing";
/// Note.
pub const BARRIER_OVER_FLASHING: &str = "Weather barrier laps over the flashing";
/// Note.
pub const FOUNDATION: &str = "Foundation";
/// Note.
pub const GRADE: &str = "Finished grade";
/// Note.
pub const ROOF_CHANNEL: &str = "J-channel over the roof";
/// Note.
// TrimFact::StepFlashing.
pub const STEP_FLASHING: &str = "Step flashing, 4\" x 4\" or more";
/// Title of a detail.
pub const SKIRT: &str = "Skirt board over a level roof or ledge";
/// Note.
pub const SKIRT_BOARD: &str =
    "Skirt board, FB on the wall's sheet, ripped to end at the course line";
/// Note.
pub const SKIRT_FLASHING: &str = "Flashing, up behind board and starter";
/// Note.
pub const ROOF_OR_LEDGE: &str = "Roof or ledge";
/// Note.
pub const ROOFING: &str = "Roofing";
/// Note.
pub const ROOF_LOW_END: &str = "Roof, its low end";
/// Note.
pub const GUTTER: &str = "Gutter";
/// Note.
pub const SOFFIT_PANEL: &str = "Soffit";
/// Note.
pub const JOINT_FLASHING: &str = "Flashing behind the joint, over the head of the board below";
/// Note.
pub const FOAM: &str = "Foam meets foam";
/// Note.
pub const SILL_FLASHING: &str = "Sill flashing, over the barrier below";
/// Note.
pub const SILL_CHANNEL: &str = "J-channel under the sill";
/// Note.
pub const JAMB_FLASHING: &str = "Jamb flashing, behind the siding";
/// Note.
pub const JAMB_CHANNEL: &str = "J-channel";
/// Note.
pub const HEAD_FLASHING: &str = "Head flashing or drip cap, under the barrier";
/// Note.
pub const HEAD_CHANNEL: &str = "J-channel, with a water tab at each end";
/// Note.
pub const TAB_NOTE: &str = "Tab, bent down over the jamb channel: water runs over, not behind";
/// Note.
pub const TAB_HEAD: &str = "Head channel";
/// Note.
pub const TAB_JAMB: &str = "Jamb channel";
/// Note.
pub const BLOCK_NOTE: &str = "Mounting block on the sheathing";
/// Note.
pub const BLOCK_FLASHING: &str = "Flashing over the block";

/// A length that no line of a note breaks.
fn short(style: LengthStyle, inches: f64) -> String {
    unbroken(&sheet_lengths::short(style, inches))
}

fn unbroken(length: &str) -> String {
    length.replace(' ', "\u{a0}")
}

/// The siding.
pub fn siding(job: &Job) -> String {
    let text = name(job.product.kind);
    let mut letters = text.chars();
    letters.next().map_or(String::new(), |c| c.to_uppercase().chain(letters).collect())
}

/// The starter strip.
pub fn starter(job: &Job) -> String {
    let style = job.sheet.lengths;
    let side = if job.trim.starter_line < 0.0 { "below" } else { "above" };
    let line = short(style, job.trim.starter_line.abs());
    let gap = short(style, job.trim_gaps().starter);
    format!("Starter strip, top edge on a line {line} {side} the butt line; {gap} between lengths")
}

/// The starter piece under boards.
pub fn starter_piece(job: &Job) -> String {
    let thick = short(job.sheet.lengths, job.starter_thickness());
    format!("Starter piece, {thick} thick, as the head of a board below")
}

/// The first course.
pub fn first(job: &Job) -> String {
    if job.siding().receivers.has_pockets() {
        "First panel, locked into the starter".to_owned()
    } else {
        "First board, nailed over the starter piece".to_owned()
    }
}

/// Siding over a roof.
pub fn roof_siding(job: &Job) -> String {
    let cut = if job.siding().receivers.has_pockets() { "Panel" } else { "Board" };
    format!("{cut} cut along the roof")
}

/// What turns the water out.
pub fn kick_out(job: &Job) -> String {
    let channel =
        if job.siding().receivers.has_pockets() { "; the channel stops at it" } else { "" };
    format!("Kick-out flashing turns the water into the gutter{channel}")
}

/// Siding round a kick-out.
pub fn cut_round_kick_out(clear: &str) -> String {
    format!("Siding cut round it, {} off", unbroken(clear))
}

/// What takes the cut edge under a soffit.
pub fn top_finish(job: &Job) -> String {
    let gap = short(job.sheet.lengths, job.trim_gaps().post_top);
    let what = match job.trim.top {
        TopFinish::FinishTrim => format!("Undersill trim; {}", held(job)),
        TopFinish::TwoPiece => "Nailed base with a face board snapped on".to_owned(),
        TopFinish::Crown => "Nailed base with a crown molding".to_owned(),
        TopFinish::TopPanel => "Panel made for the top".to_owned(),
    };
    format!("{what}. Corner posts stop {gap} under the soffit")
}

/// The top course.
pub fn ripped(job: &Job) -> String {
    let style = job.sheet.lengths;
    match job.siding().cut_edge {
        CutEdgeRule::FaceNails => "Last board, ripped to its place and face-nailed".to_owned(),
        CutEdgeRule::Lugs | CutEdgeRule::TrimNails if job.trim.top == TopFinish::FinishTrim => {
            "Last panel, ripped to its place".to_owned()
        }
        CutEdgeRule::Lugs | CutEdgeRule::TrimNails => {
            let slots = short(style, job.courses.slot_spacing);
            format!("Last panel, ripped; nail slots punched every {slots}")
        }
    }
}

/// What holds a cut edge in undersill trim.
fn held(job: &Job) -> String {
    let style = job.sheet.lengths;
    match job.siding().cut_edge {
        CutEdgeRule::Lugs => format!("lugs every {}", short(style, job.courses.lug_spacing)),
        CutEdgeRule::TrimNails => {
            format!("trim nails every {}", short(style, job.courses.slot_spacing))
        }
        CutEdgeRule::FaceNails => "face-nailed".to_owned(),
    }
}

/// Undersill trim.
pub fn undersill(job: &Job) -> String {
    let alone = job.channel_alone();
    let held = held(job);
    if alone <= 0.0 {
        return format!("Undersill trim in the channel; {held}");
    }
    let alone = short(job.sheet.lengths, alone);
    format!(
        "Undersill trim in the channel where the cut falls more than {alone} over a face's lower edge; {held}"
    )
}

/// Siding cut round something.
pub fn notched(job: &Job) -> String {
    let clear = short(job.sheet.lengths, job.courses.notch_clearance);
    if job.siding().receivers.has_pockets() {
        format!("Panel, notched with {clear} to spare")
    } else {
        format!("Board, notched with {clear} to spare")
    }
}

/// Nails.
pub fn nails(job: &Job) -> String {
    let style = job.sheet.lengths;
    let system = job.siding();
    let (spacing, deep) = (short(style, job.nail_spacing()), short(style, job.penetration()));
    let into = match system.fastening.holds {
        NailHold::SheathingAndFraming => "nailable sheathing and framing",
        NailHold::Studs => "studs",
    };
    let material = nail_material(system);
    let loose = if system.fastening.through.is_slotted() {
        "; not driven tight, in the middle of the slot"
    } else {
        ""
    };
    format!("Nails every {spacing}, {deep} into {into}, {material}{loose}")
}

/// A casing round an opening.
pub fn casing(wide: &str) -> String {
    format!("Casing and surround, {}", unbroken(wide))
}

/// What stands at an outside corner.
pub fn outside(job: &Job) -> String {
    if job.siding().receivers.has_pockets() {
        "Outside corner post, hung from its top nails".to_owned()
    } else {
        "Corner boards; siding butts against them, to caulk as the manufacturer says".to_owned()
    }
}

/// What stands in an inside corner.
pub fn inside(job: &Job) -> String {
    if !job.siding().receivers.has_pockets() {
        return "Strip in the corner; boards butt against it".to_owned();
    }
    match job.trim.inside_corner {
        InsideCorner::Post => "Inside corner post, hung from its top nails",
        InsideCorner::OneChannel => "J-channel on the wall sided second",
        InsideCorner::TwoChannels => "A J-channel on each wall",
    }
    .to_owned()
}

/// The stud behind a joint.
pub fn stud(job: &Job) -> String {
    format!("Stud, {} on center", short(job.sheet.lengths, job.stud_spacing()))
}

/// The length that laps over.
pub fn seam_first(job: &Job) -> String {
    if job.siding().joints.is_lapped() {
        "Factory end over; the lap faces away from where people look".to_owned()
    } else {
        "Boards butt, each nailed to the stud".to_owned()
    }
}

/// The other length.
pub fn seam_second(job: &Job) -> String {
    if job.siding().joints.is_lapped() { "Factory end under".to_owned() } else { siding(job) }
}
