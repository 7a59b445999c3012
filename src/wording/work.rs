//! The order of work in sentences to be read on a ladder.

use super::cuts;
use super::lists::{capital, commas, courses, joined};
use super::restricted;
use super::trim;
use crate::model::hold::HeldPieces;
use crate::model::work::{
    Begins, CoursesBegin, CutStart, FlashedPlace, SharedTrim, TrimOfKind, Viewpoint, WallWork,
    WorkRule, WorkStep,
};
use crate::units::LengthStyle;

/// What goes before the order of work.
pub const PRECEDENCE: &str =
    "Manufacturers' instructions, local code and licensed practice take precedence.";

/// A rule that holds on every wall.
pub fn rule(rule: &WorkRule, style: LengthStyle) -> String {
    match rule {
        WorkRule::BarrierAndFlashing => "Barrier and flashing before anything else, every joint lapped so that water runs over it: sill, then jambs, then head; keep to the manufacturers' instructions. Look behind for wiring, gas and water before you nail.".to_owned(),
        WorkRule::HangPosts { top_gap, under_head } => format!(
            "Hang corner posts from a nail at the top of their top slots, {} below the soffit; every other nail goes in the middle of its slot, {} clear under its head.",
            style.short(*top_gap),
            thin(*under_head, style)
        ),
        WorkRule::SpaceStarters { gap } => {
            format!("Starters: {} between lengths and to posts.", style.short(*gap))
        }
        WorkRule::FrameOpenings => "Frames: sill, jambs, head, then the drip cap. The tabs of the head go down over the jambs, those of the jambs over the sill.".to_owned(),
        WorkRule::PanelsFromBottom { gap } => format!(
            "Panels from the bottom up: lock each fully, neither pull it up nor press it down; {} clear in every receiver. No caulk at receivers or laps.",
            style.short(*gap)
        ),
        WorkRule::LapsFaceAway { foam } => {
            let hand = if *foam {
                " Where foam is set off to one side, ask the manufacturer which hand the panels run."
            } else {
                ""
            };
            format!(
                "Each next panel of a course laps over the last: the exposed edge of every lap faces away from the entry.{hand}"
            )
        }
        WorkRule::HoldCutEdges { lug_spacing, slot_spacing } => format!(
            "Cut edges go into undersill (finish) trim and are held by snap-lock lugs every {}; where a ripped top course goes under a face board, nail slots every {} take the place of its hem.",
            style.short(*lug_spacing),
            style.short(*slot_spacing)
        ),
        WorkRule::NailCutEdges { spacing } => format!(
            "Cut edges go into undersill (finish) trim, drilled and nailed through with trim nails of their color every {0}; where a ripped top course goes under a face board, nail slots every {0} take the place of its hem (common practice; the manufacturer's instructions take precedence).",
            style.short(*spacing)
        ),
        WorkRule::BoardTrimFirst => "Corner boards and the boards around openings before the siding; the starter piece under the first board takes the place of the top edge of one below.".to_owned(),
        WorkRule::BoardsFromBottom { gap } => format!(
            "Boards from the bottom up, each nailed to every stud it crosses; joints on studs, backed as the manufacturer says; {} clear at trim, caulked or left open as the manufacturer says.",
            style.short(*gap)
        ),
    }
}

/// A length finer than a sixteenth.
fn thin(inches: f64, style: LengthStyle) -> String {
    match style {
        LengthStyle::Feet => format!("1/{:.0}\"", 1.0 / inches),
        LengthStyle::Mm => style.short(inches),
    }
}

/// From where a wall is seen.
pub fn viewpoint(place: &Viewpoint) -> String {
    match place {
        Viewpoint::Door { opening } => format!("the door {opening}"),
        Viewpoint::LeftEnd => "the left end".to_owned(),
        Viewpoint::Middle => "the middle".to_owned(),
        Viewpoint::RightEnd => "the right end".to_owned(),
    }
}

/// The steps of a wall, in order.
pub fn steps(wall: &WallWork, style: LengthStyle) -> Vec<String> {
    wall.steps.iter().map(|s| step(s, wall, style)).collect()
}

/// One step of a wall's work.
pub fn step(step: &WorkStep, wall: &WallWork, style: LengthStyle) -> String {
    match step {
        WorkStep::Barrier { flashing } if flashing.is_empty() => "Barrier.".to_owned(),
        WorkStep::Barrier { flashing } => {
            let places: Vec<String> = flashing.iter().map(flashed).collect();
            format!("Barrier; flashing {}.", commas(&places))
        }
        WorkStep::Corners { boards, marks, counted_elsewhere } => {
            let what = if *boards { "Corner boards" } else { "Corner posts" };
            format!("{what}: {}.", corners(marks, counted_elsewhere))
        }
        WorkStep::Start { marks, heights, snapped, cut } => {
            start(marks, (heights, *snapped), cut.as_ref(), style)
        }
        WorkStep::Frames { openings } => {
            let frame = openings.iter().map(|f| format!("{} ({})", f.opening, commas(&f.marks)));
            format!("Frames: {}.", frame.collect::<Vec<_>>().join("; "))
        }
        WorkStep::Channels { marks } => format!(
            "Channels at wall ends, in corners, over roofs and along rakes: {}.",
            joined(marks)
        ),
        WorkStep::BeforeSiding { trim } => format!("Before the siding: {}.", by_kind(trim)),
        WorkStep::RestrictedAccess { place } => match wall.restricted.get(*place) {
            Some(place) => {
                let how = capital(&restricted::sentence(place, style));
                format!("Restricted access, how to install: {how}.")
            }
            None => "Restricted access, how to install: see the elevation.".to_owned(),
        },
        WorkStep::Siding { boards, from_course, to_course } => {
            let piece = if *boards { "boards" } else { "panels" };
            format!("Siding: {piece} of courses {from_course} to {to_course}.")
        }
        WorkStep::LapDirection { begins } => laps(begins, &wall.viewpoint),
        WorkStep::CheckLevel => format!(
            "Check level, and height against the next wall and the story pole, on top of {} {}.",
            if wall.level_checks.len() == 1 { "course" } else { "courses" },
            joined(&wall.level_checks)
        ),
        WorkStep::TrimUnderSills { trim } => {
            let each: Vec<String> =
                trim.iter().map(|t| format!("{} under {}", t.mark, t.opening)).collect();
            format!(
                "Before the course that meets the sill: undersill (finish) trim inside the channel, {}.",
                joined(&each)
            )
        }
        WorkStep::TrimAtTop { marks } => {
            format!("Before the top course: undersill (finish) trim {}.", joined(marks))
        }
        WorkStep::GablePattern => "Gable: cut one pattern to the rake and copy it; only the last piece at the peak may take a small nail in its face.".to_owned(),
        WorkStep::HoldPieces { pieces } => held(pieces),
        WorkStep::AfterSiding { trim } => format!("Last: {}.", by_kind(trim)),
    }
}

/// Pieces without hem or lock, and how they are held.
fn held(pieces: &[HeldPieces]) -> String {
    let each = pieces.iter().map(|p| format!("{}: {}", joined(&p.marks), cuts::hold(p.hold)));
    format!("Pieces without their hem or lock. {}.", each.collect::<Vec<_>>().join(". "))
}

fn flashed(place: &FlashedPlace) -> String {
    match place {
        FlashedPlace::Openings { openings } => format!("around {}", joined(openings)),
        FlashedPlace::Corners => "around the corners".to_owned(),
        FlashedPlace::SlopedRoof => "step flashing where the roof meets the wall".to_owned(),
        FlashedPlace::KickOut => "a kick-out where the roof ends and the wall goes on".to_owned(),
        FlashedPlace::LevelRoof => "over the level roof or deck that meets the wall".to_owned(),
        FlashedPlace::Ledge => "over the ledge the siding starts on".to_owned(),
    }
}

fn corners<T: std::fmt::Display>(marks: &[T], elsewhere: &[SharedTrim]) -> String {
    let list = elsewhere.iter().map(|t| format!("{} ({})", t.mark, t.elevation));
    let next = format!("marked on the next elevations: {}", list.collect::<Vec<_>>().join(", "));
    match (marks.is_empty(), elsewhere.is_empty()) {
        (false, true) => joined(marks),
        (false, false) => format!("{}; {next}", joined(marks)),
        (true, false) => next,
        (true, true) => "those of the next elevations".to_owned(),
    }
}

fn start<T: std::fmt::Display>(
    marks: &[T],
    (heights, snapped): (&[f64], Option<f64>),
    cut: Option<&CutStart>,
    style: LengthStyle,
) -> String {
    let cut = cut.map(|c| {
        let held = if c.held_in.is_empty() { String::new() } else { format!(" {}", joined(&c.held_in)) };
        format!(
            "where the bottom is on no course line, the first course is cut and its edge held in undersill (finish) trim{held}, not by a starter"
        )
    });
    if marks.is_empty() {
        return format!("Start: {}.", cut.unwrap_or_default());
    }
    let at = |over: f64| {
        joined(&heights.iter().map(|h| style.length(h + over)).collect::<Vec<String>>())
    };
    let cut = cut.map_or(String::new(), |c| format!("; {c}"));
    let snap = snapped.map_or(String::new(), |s| snap_line(s, &at(s), style));
    format!("Starter {}: level, butt lines at {}{snap}{cut}.", joined(marks), at(0.0))
}

/// Where the line is snapped that the starter's top edge is set to.
fn snap_line(over: f64, at: &str, style: LengthStyle) -> String {
    let by = style.short(over.abs());
    match over.total_cmp(&0.0) {
        _ if over == 0.0 => "; snap them for the starter's top edge".to_owned(),
        std::cmp::Ordering::Less => {
            format!("; snap the line for its top edge {by} below them, at {at}")
        }
        _ => format!("; snap the line for its top edge {by} above them, at {at}"),
    }
}

fn by_kind(list: &[TrimOfKind]) -> String {
    let each = list.iter().map(|t| format!("{} {}", trim::kind(t.kind), joined(&t.marks)));
    each.collect::<Vec<_>>().join("; ")
}

fn laps(begins: &[CoursesBegin], from: &Viewpoint) -> String {
    let each = begins.iter().map(|b| {
        let end = match b.begins {
            Begins::Left => "at the left, going right",
            Begins::Right => "at the right, going left",
            Begins::Both => "at both ends, the piece in front of the viewer last and over both",
        };
        format!("{} {end}", courses(&b.courses))
    });
    let each: Vec<String> = each.collect();
    format!("Laps face away from {}: begin seamed runs of {}.", viewpoint(from), each.join("; "))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn said(step: &WorkStep) -> String {
        super::step(step, &WallWork::default(), LengthStyle::Feet)
    }

    #[test]
    fn posts_of_two_elevations_are_told_apart() {
        let other = SharedTrim { mark: "OP3".into(), elevation: "REAR".into() };
        let corners = |marks: &[&str], counted_elsewhere: Vec<SharedTrim>| {
            let marks = marks.iter().map(|m| (*m).into()).collect();
            said(&WorkStep::Corners { boards: false, marks, counted_elsewhere })
        };
        assert_eq!(corners(&["OP1", "OP2"], vec![]), "Corner posts: OP1 and OP2.");
        let both = corners(&["OP1"], vec![other]);
        assert_eq!(both, "Corner posts: OP1; marked on the next elevations: OP3 (REAR).");
        assert_eq!(corners(&[], vec![]), "Corner posts: those of the next elevations.");
    }

    #[test]
    fn a_start_says_what_holds_it() {
        let cut = Some(CutStart { held_in: vec!["FT1".into()] });
        let start = |marks: Vec<crate::model::ids::TrimMark>, heights, snapped, cut| {
            said(&WorkStep::Start { marks, heights, snapped, cut })
        };
        for (snapped, more) in [
            (None, ""),
            (Some(2.0), "; snap the line for its top edge 2\" above them, at 0'-2 1/2\""),
            (Some(-0.25), "; snap the line for its top edge 1/4\" below them, at 0'-0 1/4\""),
            (Some(0.0), "; snap them for the starter's top edge"),
        ] {
            assert_eq!(
                start(vec!["ST1".into()], vec![0.5], snapped, None),
                format!("Starter ST1: level, butt lines at 0'-0 1/2\"{more}.")
            );
        }
        assert!(
            start(vec![], vec![], None, cut)
                .starts_with("Start: where the bottom is on no course line")
        );
    }

    #[test]
    fn a_place_that_is_missing_is_no_panic() {
        assert!(said(&WorkStep::RestrictedAccess { place: 3 }).contains("see the elevation"));
        let posts = WorkRule::HangPosts { top_gap: 0.25, under_head: 1.0 / 32.0 };
        assert!(rule(&posts, LengthStyle::Feet).contains("1/32\" clear"));
        assert!(rule(&posts, LengthStyle::Mm).contains("0.8 mm clear"));
    }
}
