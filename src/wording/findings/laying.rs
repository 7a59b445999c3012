//! Of what is laid out.

use super::fillers;
use super::finding_words::FindingWords;
use super::parts::{elevation, first_of, number};
use crate::finding::Finding;
use crate::finding::laying::{LayingFinding, NotchPlace, ThinNotch};
use crate::language::Language;
use crate::model::fastening::PieceMovement;
use crate::model::ids::WallId;
use crate::model::item::SidingPiece;
use crate::model::receiver::BareBy;
use crate::units::LengthStyle;
use crate::wording::checks;
use crate::wording::lists::joined;
use crate::wording::movement;
use crate::wording::seams;
use crate::wording::takeoff::advice;
use crate::wording::takeoff::items::{piece, pieces};

/// Most marks named in one finding.
const NAMED: usize = 6;

pub(super) fn words(found: &LayingFinding, finding: &Finding, style: LengthStyle) -> FindingWords {
    use LayingFinding as F;
    let on = elevation(finding);
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
        F::BlockMoved { wall, blocks } => fillers::blocks(&format!("{on}{wall}"), blocks, style),
        F::PeakLeft { wall, height } => peak_left(&format!("{on}{wall}"), &style.short(*height)),
        F::FillerBoard { wall, fillers, least, piece } => {
            fillers::words(&format!("{on}{wall}"), fillers, *least, *piece, style)
        }
        F::OpeningsJoined { wall, pairs } => fillers::joined(&format!("{on}{wall}"), pairs),
        F::PanelShort { wall, pieces, stud_spacing, piece } => {
            let marks: Vec<String> = pieces.iter().map(|p| p.to_string()).collect();
            panel_short(&format!("{on}{wall}"), &marks, &style.short(*stud_spacing), *piece)
        }
        F::NotchThin { wall, notches, least, piece } => {
            notch_thin(&format!("{on}{wall}"), notches, *least, *piece, style)
        }
        F::MovementGap { row, installed, highest } => {
            movement_gap(row, [*installed, *highest], style)
        }
        F::SeamRulesConflict { courses, rule, remedies } => {
            conflict(finding, courses, &seams::broken(rule, style), seams::remedies(remedies))
        }
        F::SeamOnJamb { wall, courses, within, piece } => {
            seam_on_jamb(&format!("{on}{wall}"), courses, &style.short(*within), *piece)
        }
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

fn peak_left(wall: &str, height: &str) -> FindingWords {
    FindingWords::new(
        format!(
            "{wall}: the peak is {height} over the last course line, too low for a piece, and is left to the trim along the rakes"
        ),
        "Close what shows in the peak with a piece of coil or trim.",
    )
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

fn panel_short(wall: &str, marks: &[String], studs: &str, of: SidingPiece) -> FindingWords {
    let pieces = match marks.len() {
        1 => "a piece is".to_owned(),
        n => format!("{n} pieces are"),
    };
    let table = match of {
        SidingPiece::Board => "boards",
        SidingPiece::Panel => "courses",
    };
    FindingWords::new(
        format!(
            "{wall}: {pieces} shorter than the {studs} between studs and cannot be nailed to two: {}",
            first_of(marks, NAMED)
        ),
        format!(
            "Put blocking or nailable sheathing behind them, or cover the place with a wider trim; `{table}.stud_spacing` sets the spacing."
        ),
    )
}

fn notch_thin(
    wall: &str,
    notches: &[ThinNotch],
    least: f64,
    of: SidingPiece,
    style: LengthStyle,
) -> FindingWords {
    let place = |place: NotchPlace| match place {
        NotchPlace::LeftEnd => "at the left end",
        NotchPlace::RightEnd => "at the right end",
        NotchPlace::Under => "under it",
        NotchPlace::Over => "over it",
    };
    let one = |n: &ThinNotch| {
        let board = n.board.as_ref().map_or(String::new(), |b| {
            let [high, long] = [b.high, b.long].map(|l| style.short(l));
            format!("; a board {high} high and {long} long at {} closes it", b.opening)
        });
        format!("{} ({} {}{board})", n.piece, style.short(n.left), place(n.place))
    };
    let each: Vec<String> = notches.iter().map(one).collect();
    FindingWords::new(
        format!(
            "{wall}: notches leave less than {} of their {}s: {}",
            style.short(least),
            piece(of).en,
            first_of(&each, NAMED)
        ),
        format!(
            "Close the place with a filler or trim board, or cut the {} in two there and handle the pieces with care; the report's other heights of the datum (`courses.datum`, `courses.hang_below`) say whether one leaves no such place. `courses.least_strip` sets the limit.",
            piece(of).en
        ),
    )
}

fn movement_gap(
    row: &PieceMovement,
    [installed, highest]: [f64; 2],
    style: LengthStyle,
) -> FindingWords {
    let covered = row
        .rise_covered
        .map_or(String::new(), |rise| format!(" The gap covers a rise of {rise:.0} F."));
    FindingWords::new(
        format!(
            "{} of {}: {} longer at {} F than at {} F, {} of it to take up; the room is {} ({})",
            movement::piece(row.piece).en,
            style.length(row.length),
            movement::fine(Language::English, style, row.longer),
            number(highest),
            number(installed),
            movement::fine(Language::English, style, row.needed),
            movement::fine(Language::English, style, row.room.unwrap_or(0.0)),
            movement::room(row.room_at).en
        ),
        format!(
            "Work on a warmer day, leave a larger gap as the manufacturer says, or set `weather` and `weather.expansion` to the place and the product.{covered}"
        ),
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

fn seam_on_jamb(on: &str, courses: &[i32], within: &str, of: SidingPiece) -> FindingWords {
    let numbers: Vec<String> = courses.iter().map(i32::to_string).collect();
    let (word, courses) =
        if numbers.len() == 1 { ("course", "course") } else { ("courses", "each") };
    FindingWords::new(
        format!(
            "{on}: within {within} of a jamb line over or under an opening is a seam of {word} {}; no place was found for it with as few {}s",
            joined(&numbers),
            piece(of).en
        ),
        format!(
            "Cut an extra piece so that {courses} has its seam elsewhere, or accept it: water and eyes find a seam in line with a jamb."
        ),
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
