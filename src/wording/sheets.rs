//! Titles, descriptions and headings of sheets.

use super::sheet_lengths::{length, short, unit_note};
use crate::units::{LengthStyle, counted};

/// Scale of a sheet that has none.
pub const NTS: &str = "NTS";
/// Scale of a sheet whose unit nothing proves.
pub const DO_NOT_SCALE: &str = "  DO NOT SCALE";

/// Wall that gets no siding.
pub const NO_SIDING: &str = "no siding";

/// A height from the lowest to the highest line of a dimension string.
pub fn overall(length: &str) -> String {
    format!("{length} overall")
}

/// A title, or what it is from the second sheet on.
pub fn title(title: &str, first: bool) -> String {
    if first { title.to_owned() } else { format!("{title}, continued") }
}

/// A title as the index of sheets names it: parts and pages of one thing are one.
pub fn in_index(title: &str) -> &str {
    let whole = title.strip_suffix(", continued").unwrap_or(title);
    if whole.contains("pattern") {
        return PATTERNS;
    }
    let cut = [", part ", ", page "].into_iter().filter_map(|s| whole.find(s)).min();
    let whole = cut.map_or(whole, |at| &whole[..at]);
    for list in [STORY_POLE, CUT_LIST] {
        if whole.starts_with(list) {
            return list;
        }
    }
    whole
}

/// Full-size patterns in the index of sheets.
const PATTERNS: &str = "Patterns, full size";

/// The cover.
pub const COVER: &str = "Cover";

/// Its further sheets.
pub const COVER_CONTINUED: &str = "Cover, continued";

/// What the cover holds.
pub fn cover_description(drawing: &str) -> String {
    format!("Totals, proof, assumptions, questions and cautions of the siding layout of {drawing}")
}

/// What the cover is of.
pub fn cover_subtitle(drawing: &str, zone: Option<&str>) -> String {
    let zone = zone.map_or(String::new(), |z| format!(", zone {z}"));
    format!("Siding layout of {drawing}{zone}")
}

/// The elevations of the house on one sheet.
pub const ELEVATIONS: &str = "Elevations";

/// The same on several.
pub fn elevations(number: usize, count: usize) -> String {
    format!("{ELEVATIONS}, {number} of {count}")
}

/// What a sheet of elevations holds.
pub fn elevations_description(title: &str, elevations: usize, scale: &str) -> String {
    let count = counted(elevations, "elevation");
    format!("{title}: {count} with names of walls and openings, courses and seams, at {scale}")
}

/// The name of a wall.
pub fn wall(prefix: &str) -> String {
    format!("wall {prefix}")
}

/// Marks that were left off an elevation sheet.
pub fn marks_left_off(count: usize) -> String {
    format!("{} found no room: see the cut list and the trim list.", counted(count, "mark"))
}

/// Places that break a rule whose names were left off an elevation sheet.
pub fn failed_left_off(count: usize) -> String {
    format!("{count} places of the failed check found no room for their numbers: see the cover.")
}

/// The cut list.
pub const CUT_LIST: &str = "Cut list";
/// What it holds.
pub fn cut_list_description(piece: &str) -> String {
    format!("Stock {piece}s with the pieces cut from each")
}

/// Panels of a cut list.
#[derive(Clone, Copy, Debug)]
pub struct CutCount {
    /// All.
    pub all: usize,
    /// Those that are cut.
    pub cut: usize,
    /// Those laid whole.
    pub whole: usize,
}

/// What the cut list's heading says. `piece` names one stock length, `lengths` what the letters of
/// stock lengths mean, with a space behind it, or nothing.
pub fn cut_list(count: CutCount, piece: &str, lengths: &str, style: LengthStyle) -> String {
    format!(
        "{} of {} {piece}s are cut, {} are laid whole. {lengths}Gray is left over; rip to: height of the piece, n: notches. {}",
        count.cut,
        count.all,
        count.whole,
        unit_note(style)
    )
}

/// Cutting sheets.
pub const CUTTING: &str = "Cutting sheet";
/// What they hold.
pub const CUTTING_DESCRIPTION: &str =
    "Each distinct cut with its dimensions and the marks of its pieces";
/// A cut whose words go on elsewhere.
pub const CONTINUED_AFTER_COLUMN: &str = "continued after this column";

/// A cutting sheet's title: from which cut to which it shows.
pub fn cutting_title((first, last): (usize, usize)) -> String {
    if first == last {
        format!("{CUTTING}, cut {first}")
    } else {
        format!("{CUTTING}, cuts {first} to {last}")
    }
}

/// A cut's name, before the pieces it makes.
pub fn cut(number: usize, marks: &str) -> String {
    format!("cut {number}: {marks}")
}

/// A cut that goes on in another column.
pub fn cut_continued(number: usize) -> String {
    format!("cut {number}, continued")
}

/// In place of a length, where pieces of several lengths are cut alike.
pub const LENGTHS_ABOVE: &str = "lengths: see above";

/// Pieces that are a cut's mirror image.
pub fn mirrored(marks: &str) -> String {
    format!("mirrored: {marks}")
}

/// What the heading of cutting sheets says: slots punched, and what else holds cut edges; `over` is what a
/// panel has over its face.
pub fn cutting(
    cuts: usize,
    slots: u32,
    (held, held_by): (u32, &str),
    over: &str,
    style: LengthStyle,
) -> String {
    // Boards have neither.
    let hem = if over == "nail hem" {
        format!("; {over} above and lock below where they stay")
    } else {
        String::new()
    };
    let punched = match (slots, held) {
        (0, 0) => String::new(),
        (0, n) => format!("{n} {held_by} overall. "),
        (n, 0) => format!("{n} nail slots overall. "),
        (slots, held) => format!("{slots} nail slots and {held} {held_by} overall. "),
    };
    format!(
        "{cuts} shaped cuts, seen from the face, NTS{hem}. Heights are over the butt edge, clearances are in the figures. {punched}{}",
        unit_note(style)
    )
}

/// What a pattern is cut along.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum PatternPlace {
    /// A lower roof alone.
    #[default]
    LowerRoof,
    /// The rakes of a gable.
    Gable,
}

/// What a pattern is.
pub fn pattern_name(place: PatternPlace) -> &'static str {
    match place {
        PatternPlace::Gable => "Gable pattern",
        PatternPlace::LowerRoof => "Lower roof pattern",
    }
}

/// A pattern's title.
pub fn gable_title(place: PatternPlace, pitch: f64) -> String {
    format!("{}, {pitch} in 12", pattern_name(place))
}

/// What it holds.
pub fn gable_description(pitch: f64) -> String {
    format!("Pattern of the end cut at {pitch} in 12, with its step per course")
}

/// The figures of a pattern: its pitch with the angle off the long edge, step and exposure.
pub fn gable(pitch: f64, angle: f64, step: f64, exposure: f64, style: LengthStyle) -> String {
    format!(
        "{pitch} in 12: step {} in a course of {}; {angle:.1}° from the long edge, {:.1}° from square",
        short(style, step),
        short(style, exposure),
        90.0 - angle
    )
}

/// The scale of a pattern.
pub const FULL_SIZE: &str = "full size";
/// How a pattern is printed.
pub const FULL_SIZE_NOTE: &str = "FULL SIZE: print at 100 % and measure the bar before use; where it takes several pages, lay cross on cross and paste.";

/// A page of a pattern.
pub fn tile(title: &str, page: usize, pages: usize) -> String {
    if pages == 1 { title.to_owned() } else { format!("{title}, page {page} of {pages}") }
}

/// A slope's step on its pattern.
pub fn step(length: &str) -> String {
    format!("step {length}")
}

/// A slope's steps, so that errors of single ones do not add up: after each course, or where exposures differ by
/// exposure.
pub fn gable_steps(by_course: bool, rows: &[String]) -> String {
    let head = if by_course { "Step after course" } else { "Step by exposure" };
    format!("{head} {}", rows.join(",  "))
}

/// The title of a curve's pattern.
pub fn curve_title(around: &str) -> String {
    format!("Curve pattern, {around}")
}

/// What it holds.
pub fn curve_description(around: &str) -> String {
    format!("Full-size pattern of the curved cuts at {around}, course by course")
}

/// How it is used.
pub const CURVE_USE: &str = "Thin level lines are butt lines: lay them on the butt edge of the piece and on the top of its face, and mark along the heavy curve. Clearances are in it.";

/// Walls a pattern is for.
pub fn gable_walls<T: std::fmt::Display>(walls: &[T]) -> String {
    format!("Used on {}.", super::lists::commas(walls))
}

/// How a pattern is used.
pub fn gable_use(place: PatternPlace, piece: &str, end_gap_place: &str) -> String {
    let turned = match place {
        PatternPlace::Gable => "Turn it over for the other rake; a peak takes both.",
        PatternPlace::LowerRoof => "Turn it over for a roof that falls the other way.",
    };
    format!(
        "Mark it on a scrap of {piece} from butt line to butt line, cut it, try it on the wall, then copy it; keep the end gap {end_gap_place}. {turned}"
    )
}

/// The bar that proves a print.
pub fn print_bar(style: LengthStyle, pages: usize) -> String {
    let bar = match style {
        LengthStyle::Feet => "4\" on paper",
        LengthStyle::Mm => "100 mm on paper",
    };
    if pages == 1 { bar.to_owned() } else { format!("{bar}; crosses: where pages meet") }
}

/// The trim list.
pub const TRIM_LIST: &str = "Trim list";
/// The order of work.
pub const ORDER_OF_WORK: &str = "Order of work";
/// Heads of its parts.
pub const ON_EVERY_WALL: &str = "On every wall";
/// The same of nails and weather.
pub const FASTENERS_AND_MOVEMENT: &str = "Fasteners and movement";
/// The same of safety.
pub const BEFORE_YOU_CLIMB: &str = "Before you climb";

/// The story pole.
pub const STORY_POLE: &str = "Story pole";
/// What it holds.
pub const STORY_POLE_DESCRIPTION: &str = "Butt lines, sills, heads and tops of the whole house with their heights, and what holds on every wall";
/// What the story pole's heading says.
pub fn story_pole(datum: f64, style: LengthStyle) -> String {
    format!(
        "Heights over the floor reference line; butt lines on the stick. Course 1 begins at {}. {}",
        length(style, datum),
        unit_note(style)
    )
}

/// Head of the datum.
pub const DATUM: &str = "Datum";
/// Columns of its lines.
pub const LINE_HEADS: [&str; 4] = ["height", "course", "over butt", "what"];
/// Head of its lines.
pub const LINES_TOP_DOWN: &str = "Lines, top down";
/// Field of the title block.
pub const TYPE_AND_SCALE: &str = "document type, scale";

/// How findings are circled on the sheet of problems.
pub const PROBLEMS_KEY: &str = "Circles: errors heavy, warnings dashed, remarks dotted. Findings of one kind have one number, that of the list below. Rulers: drawing units, as places are told.";
/// What that sheet holds.
pub const PROBLEMS_DESCRIPTION: &str =
    "The drawing in gray; each finding is circled, numbered and listed below.";
/// A drawing without findings.
pub const NOTHING_TO_REPORT: &str = "Nothing to report.";

/// Further findings of a kind.
pub fn more_of_kind(count: usize) -> String {
    format!("and {count} more of the kind in check.txt")
}

/// Kinds of findings that the sheet of problems leaves to the list.
pub fn more_in_check(count: usize) -> String {
    format!("and {} more in check.txt", counted(count, "kind"))
}

/// A place that the picture of findings does not hold.
pub fn outside_picture(x: f64, y: f64) -> String {
    format!(" at {x:.3}, {y:.3}, outside the picture")
}

/// Further places that a finding has.
pub fn more_places(more: usize) -> String {
    format!("; {more} more {} circled", if more == 1 { "place" } else { "places" })
}

/// A finding without one place.
pub const NO_ONE_PLACE: &str = " (no one place)";
