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

/// What an elevation sheet holds.
pub fn elevation_description(title: &str, pieces: usize, walls: usize, scale: &str) -> String {
    let walls = if walls == 1 { "one wall".to_owned() } else { format!("{walls} walls") };
    let pieces = counted(pieces, "piece");
    format!("{title}, with {pieces} of siding on {walls}, at {scale}")
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

/// What the heading of cutting sheets says: slots punched, and what else holds cut edges.
pub fn cutting(
    cuts: usize,
    slots: u32,
    (held, held_by): (u32, &str),
    style: LengthStyle,
) -> String {
    let punched = if slots + held > 0 {
        format!("{slots} nail slots and {held} {held_by} overall. ")
    } else {
        String::new()
    };
    format!(
        "{cuts} distinct shaped cuts, seen from the face, NTS; clearances are in the figures. {punched}{}",
        unit_note(style)
    )
}

/// Square cuts.
pub const SQUARE_CUTS: &str = "Square cuts";
/// What that sheet holds.
pub const SQUARE_CUTS_DESCRIPTION: &str =
    "Pieces that are only cut square, by length, with their marks";

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

/// How large a pattern is drawn.
pub fn gable_size(share: f64) -> String {
    if share == 1.0 {
        "FULL SIZE: print at 100 % and measure the bar before use.".to_owned()
    } else {
        format!(
            "Drawn at 1:{share}: the paper does not hold it full size; lay the pattern out by its step."
        )
    }
}

/// A pattern's scale.
pub fn gable_scale(share: f64) -> String {
    if share == 1.0 { "full size".to_owned() } else { format!("1:{share}") }
}

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

/// Head of a pattern's table: by course, or by exposure where exposures differ.
pub fn gable_table(by_course: bool) -> &'static str {
    if by_course { "after course" } else { "step by exposure" }
}

/// The bar that proves a print.
pub fn print_bar(style: LengthStyle, share: f64) -> String {
    let bar = match style {
        LengthStyle::Feet => "4\" on paper",
        LengthStyle::Mm => "100 mm on paper",
    };
    if share == 1.0 { bar.to_owned() } else { format!("{bar}; pattern at 1:{share}") }
}

/// The trim list.
pub const TRIM_LIST: &str = "Trim list";
/// What it holds.
pub const TRIM_LIST_DESCRIPTION: &str = "Trim by stock length with the pieces cut from each";

/// What its heading says.
pub fn trim_list(style: LengthStyle) -> String {
    format!(
        "each stock length with what is cut from it: mark, length, ends other than square (degrees off square). {}",
        unit_note(style)
    )
}

/// The order of work.
pub const ORDER_OF_WORK: &str = "Order of work";
/// What it holds.
pub const ORDER_OF_WORK_DESCRIPTION: &str =
    "What goes on each wall, in order, with restricted access and level checks";
/// Its further sheets.
pub const ORDER_OF_WORK_CONTINUED: &str = "Order of work, continued";
/// Heads of its parts.
pub const ON_EVERY_WALL: &str = "On every wall";
/// The same of nails and weather.
pub const FASTENERS_AND_MOVEMENT: &str = "Fasteners and movement";
/// The same of safety.
pub const BEFORE_YOU_CLIMB: &str = "Before you climb";

/// What its heading says.
pub fn order_of_work() -> String {
    format!("wall by wall. {}", super::work::PRECEDENCE)
}

/// The story pole.
pub const STORY_POLE: &str = "Story pole";
/// What it holds.
pub const STORY_POLE_DESCRIPTION: &str =
    "Butt lines, sills, heads and tops of the whole house at one scale";
/// Its table.
pub const STORY_POLE_TABLE: &str = "Story pole, table";
/// Its further sheets.
pub const STORY_POLE_TABLE_CONTINUED: &str = "Story pole, table, continued";
/// What that holds.
pub const STORY_POLE_TABLE_DESCRIPTION: &str =
    "Every butt line, start, head, sill and top with its height";

/// What the story pole's heading says.
pub fn story_pole(datum: f64, style: LengthStyle) -> String {
    format!(
        "Heights over the floor reference line; butt lines on the stick. Course 1 begins at {}. {}",
        length(style, datum),
        unit_note(style)
    )
}

/// Head of its lines.
pub const LINES_TOP_DOWN: &str = "Lines, top down";
/// Field of the title block.
pub const TYPE_AND_SCALE: &str = "document type, scale";

/// What its table's heading says.
pub fn story_pole_table(style: LengthStyle) -> String {
    format!("every line on the stick, over the floor reference line. {}", unit_note(style))
}

/// How findings are circled on the sheet of problems.
pub const PROBLEMS_KEY: &str = "Circles: errors heavy, warnings dashed, remarks dotted. Findings of one kind have one number, that of the list below.";
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
