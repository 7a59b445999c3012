//! Of what is laid out.

use super::finding_words::FindingWords;
use super::parts::elevation;
use super::{crew, fillers};
use crate::finding::Finding;
use crate::finding::laying::LayingFinding;
use crate::language::Language;
use crate::model::fastening::PieceMovement;
use crate::model::ids::WallId;
use crate::model::item::SidingPiece;
use crate::model::receiver::BareBy;
use crate::units::LengthStyle;
use crate::wording::checks;
use crate::wording::seams;
use crate::wording::takeoff::advice;
use crate::wording::takeoff::items::{piece, pieces};

pub(super) fn words(found: &LayingFinding, finding: &Finding, style: LengthStyle) -> FindingWords {
    use LayingFinding as F;
    let on = elevation(finding);
    let of_crew = || crew::told(Language::English, found, &on, style).unwrap_or_default();
    match found {
        F::StripThin { wall, course, height, board, left, right } => {
            let between = [style.length(*left), style.length(*right)];
            let high = [style.short(*height), style.short(*board)];
            strip_thin(&on, wall, *course, &high, &between)
        }
        F::WallBare { wall, by, area, above_grade } => {
            let said = |area: f64| format!("{:.1} {}", style.area(area), style.area_unit());
            let buried = (area - above_grade > 0.05).then(|| said(*above_grade));
            bare(&format!("{on}{wall}"), *by, &said(*area), buried)
        }
        F::PostPastStone { corner, wall, by } => FindingWords::new(
            format!(
                "{on}corner {corner}: siding stands on stone on {wall}; round the corner it goes on {} farther down, and what stands in the corner runs down past the stone",
                style.length(*by)
            ),
            "Say whether the stone turns the corner, and draw it on both elevations, or whether it stops against it.",
        ),
        F::RaggedFoot { wall, edges, size } => {
            ragged_foot(&format!("{on}{wall}"), *edges, &size.map(|s| style.length(s)))
        }
        F::BlockMoved { .. } => FindingWords::new(
            of_crew(),
            "Set it at that height; its box stays. `courses.block_shift` says how far a block may be moved.",
        ),
        F::PeakLeft { .. } => FindingWords::new(
            of_crew(),
            "Close what shows in the peak with a piece of coil or trim.",
        ),
        F::FillerBoard { wall, fillers, least, piece } => {
            fillers::words(&format!("{on}{wall}"), fillers, *least, *piece, style)
        }
        F::OpeningsJoined { wall, pairs } => fillers::joined(&format!("{on}{wall}"), pairs),
        F::PanelShort { piece, .. } => FindingWords::new(of_crew(), panel_short(*piece)),
        F::NotchThin { piece, .. } => FindingWords::new(of_crew(), notch_thin(*piece)),
        F::MovementGap { row, .. } => FindingWords::new(of_crew(), movement_gap(row)),
        F::SeamRulesConflict { courses, rule, remedies } => {
            conflict(finding, courses, &seams::broken(rule, style), seams::remedies(remedies))
        }
        F::SeamOnJamb { courses, .. } => FindingWords::new(of_crew(), seam_on_jamb(courses)),
        F::CheckFailed { places } => check_failed(*places),
        F::LongPanelGap { length, gap } => {
            long_panel_gap(&style.length(*length), &style.short(*gap))
        }
        F::OneLot { color, piece } => one_lot(color.as_deref(), *piece),
        F::CrewTakesMore { crew, bought, length, piece: of } => {
            crew_takes_more([*crew, *bought], *length, *of, style)
        }
        F::ZoneEmpty { zone, number } => FindingWords::new(
            format!("the zone {zone} covers no wall"),
            format!("Draw it on a layer that `zone.{number}.layers` names, or give it a `region`."),
        ),
    }
}

fn long_panel_gap(length: &str, gap: &str) -> FindingWords {
    FindingWords::new(
        format!(
            "panels of {length} are 20 ft or longer: their manufacturer states a larger gap at the ends; the usual {gap} is taken"
        ),
        "Set `product.end_gap` from the manufacturer's instructions (association manual).",
    )
}

fn crew_takes_more(
    [crew, bought]: [usize; 2],
    length: Option<f64>,
    of: SidingPiece,
    style: LengthStyle,
) -> FindingWords {
    let counted = length
        .map_or(String::new(), |l| format!(", counted by their length as of {}", style.length(l)));
    FindingWords::new(
        format!(
            "a crew that starts each run with the last offcut takes {}{counted}; {bought} are bought, spare included",
            pieces(Language::English, crew, of)
        ),
        "Have them cut by the cutting list, or raise `takeoff.spare`.",
    )
}

fn strip_thin(
    on: &str,
    wall: &WallId,
    course: i32,
    [height, board]: &[String; 2],
    [left, right]: &[String; 2],
) -> FindingWords {
    FindingWords::new(
        format!(
            "{on}course {course}: a strip only {height} high is left between {left} and {right} on {wall}"
        ),
        format!(
            "Leave the strip out: a filler or frieze board {board} high takes its place (`trim.frieze` at soffits), or a band or a deeper trim; the courses under it stay whole. Or move the datum (`courses.datum`)."
        ),
    )
}

/// `over` is what lies over finished grade, where some lies under it.
fn bare(wall: &str, by: BareBy, area: &str, over: Option<String>) -> FindingWords {
    match by {
        BareBy::BehindRoof => FindingWords::new(
            format!("{wall}: {area} behind a lower roof is laid without siding"),
            "Say whether the wall is sided there, as under the roof of an open porch; if so, draw the roof as the line where it meets the wall.",
        ),
        _ => FindingWords::new(
            match over {
                Some(over) => format!(
                    "{wall}: {area} under the start of the siding gets none, {over} of it over grade"
                ),
                None => format!(
                    "{wall}: {area} between the start of the siding and grade gets no siding"
                ),
            },
            "Say what covers it: masonry, a skirt board, parging. Siding keeps `courses.clear_of_grade` over finished grade.",
        ),
    }
}

fn ragged_foot(wall: &str, edges: usize, [wide, high]: &[String; 2]) -> FindingWords {
    FindingWords::new(
        format!(
            "{wall}: siding is cut along {edges} short slanted edges around something {wide} wide and {high} high, as if around a chair or a plant drawn in front of the wall"
        ),
        "Panels are cut to this shape as it is. If siding continues behind it, give the wall outright with its outline (`[[wall]]`).",
    )
}

fn panel_short(of: SidingPiece) -> String {
    let table = match of {
        SidingPiece::Board => "boards",
        SidingPiece::Panel => "courses",
    };
    format!(
        "Put blocking or nailable sheathing behind them, or cover the place with a wider trim; `{table}.stud_spacing` sets the spacing."
    )
}

fn notch_thin(of: SidingPiece) -> String {
    format!(
        "Close the place with a filler or trim board, or cut the {} in two there and handle the pieces with care; the report's other heights of the datum (`courses.datum`, `courses.hang_below`) say whether one leaves no such place. `courses.least_strip` sets the limit.",
        piece(of).en
    )
}

fn movement_gap(row: &PieceMovement) -> String {
    let covered = row
        .rise_covered
        .map_or(String::new(), |rise| format!(" The gap covers a rise of {rise:.0} F."));
    format!(
        "Work on a warmer day, leave a larger gap as the manufacturer says, or set `weather` and `weather.expansion` to the place and the product.{covered}"
    )
}

fn conflict(finding: &Finding, courses: &[i32], broken: &str, remedies: String) -> FindingWords {
    let courses: Vec<String> = courses.iter().map(i32::to_string).collect();
    let on = finding.elevation.as_ref().map_or(String::new(), |e| format!("{e}: "));
    FindingWords::new(
        format!("{on}courses {} cannot keep every seam rule: {broken}", courses.join(", ")),
        remedies,
    )
}

fn one_lot(color: Option<&str>, of: SidingPiece) -> FindingWords {
    let words = advice::one_lot(of, color.unwrap_or_default());
    FindingWords::new(words, "Order spare ones with them.")
}

fn seam_on_jamb(courses: &[i32]) -> String {
    let courses = if courses.len() == 1 { "course" } else { "each" };
    format!(
        "Cut an extra piece so that {courses} has its seam elsewhere, or accept it: water and eyes find a seam in line with a jamb."
    )
}

fn check_failed(places: usize) -> FindingWords {
    FindingWords::new(
        format!(
            "{}: this layout breaks rules of the independent check",
            checks::failed(Language::English, places)
        ),
        "Do not cut, order or build by it. Each place is circled and numbered on the sheets and listed on the cover and in the report; what is said there tells what to change in the drawing or the job.",
    )
}
