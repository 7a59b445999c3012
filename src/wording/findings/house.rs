//! Of walls, openings and fixtures.

use super::finding_words::FindingWords;
use super::no_walls;
use super::parts::{elevation, listed, number, on_layer};
use super::planes;
use super::unused;
use crate::finding::Finding;
use crate::finding::house::{HouseFinding, OnWall, ShortOf, WallsOf};
use crate::geom::vocabulary::Xy;
use crate::model::ids::WallId;
use crate::units::{LengthStyle, Unit, counted};

pub(super) fn words(found: &HouseFinding, finding: &Finding, style: LengthStyle) -> FindingWords {
    use HouseFinding as F;
    let layer = on_layer(finding);
    match found {
        F::NoWalls { wall_layers, layers, seen } => {
            no_walls::words(wall_layers, layers, seen, style)
        }
        F::WallOpen { bare, gap, drawn_gap, unit, from, to } => {
            wall_open(&layer, *bare, &open_by(*gap, *drawn_gap, *unit), [*from, *to])
        }
        F::WallCrosses { first, second } => wall_crosses(&layer, *first, *second),
        F::WallsOverlap { area, walls } => walls_overlap(&layer, *area, walls, style),
        F::WallTooFine { corners, most } => wall_too_fine(&layer, *corners, *most),
        F::WallTooBig { width, height, most_width, most_height } => {
            wall_too_big(&layer, [*width, *height], [*most_width, *most_height], style)
        }
        F::WallTooFull { of_what, count, most } => wall_too_full(&layer, *of_what, *count, *most),
        F::OutlineTooFine { corners, most } => FindingWords::new(
            format!(
                "an outline{layer} has {corners} corners, where {most} are the most that are laid out"
            ),
            "Simplify the outline: chords 1/64 in off a curve are fine enough.",
        ),
        F::OutlinesTooMany { count, most } => FindingWords::new(
            format!(
                "{}{count} outlines of the sort of those{layer}, where {most} are the most that are laid out",
                elevation(finding)
            ),
            "Look for a pattern that stands on the layer, or draw one outline round them.",
        ),
        F::GradeTooFine { points, most } => grade_too_fine(finding, *points, *most),
        F::WallsFromHatch { walls, line_spacings } => from_hatch(walls, line_spacings, style),
        F::WallsFromLines { walls } => from_lines(walls),
        F::WallFoot { layer } => wall_foot(layer),
        F::FacesLeft { faces } => faces_left(*faces),
        F::SideLeans { lean, length } => side_leans(*lean, *length, style),
        F::DrawnUnused { layer, role, drawn, used, left, .. } => {
            unused::words(layer, *role, [*drawn, *used], left, style)
        }
        F::LayerSpeaks { layer, role, things } => unused::speaks(layer, *role, *things),
        F::OpeningOutside { accepted } => opening_outside(&layer, *accepted),
        F::OpeningStraddles { past } => straddles(&layer, *past, style),
        F::OpeningSize { says, stated, drawn, openings } => {
            opening_size(says, [*stated, *drawn], *openings, style)
        }
        F::FixtureOutside {} => fixture_outside(&layer),
        F::SidingStopsShort { wall, short_of, width, length } => {
            stops_short(wall, *short_of, *width, *length, style)
        }
        F::JointInOpening {} => joint_in_opening(),
        F::PlaneAssumed { .. }
        | F::SidingDetail { .. }
        | F::OpeningsOffSiding { .. }
        | F::OpeningTooLarge { .. }
        | F::FacadeShare { .. }
        | F::WallDoubted { .. } => planes::words(found, &layer, style),
    }
}

fn grade_too_fine(finding: &Finding, points: usize, most: usize) -> FindingWords {
    FindingWords::new(
        format!(
            "{}the lines of grade have {points} points, where {most} are the most that are laid out",
            elevation(finding)
        ),
        "Simplify the line of grade: a point where its slope changes is enough.",
    )
}

fn joint_in_opening() -> FindingWords {
    FindingWords::new(
        "a joint of the building runs through an opening, which is taken as two",
        "Move the joint, or the opening, to where it is.",
    )
}

fn stops_short(
    wall: &str,
    short_of: ShortOf,
    width: f64,
    length: f64,
    style: LengthStyle,
) -> FindingWords {
    let to = match short_of {
        ShortOf::Roof => "the roof line",
        ShortOf::Wall => "the next wall",
    };
    FindingWords::new(
        format!(
            "{wall} stops {} short of {to} over {}: a strip of {:.1} sq ft gets no siding, and is counted as wall without siding",
            style.short(width),
            style.length(length),
            width * length / 144.0
        ),
        "Is it sided? Draw the outline to where siding ends, or say what covers the strip.",
    )
}

/// A place in drawing units.
fn place(p: Xy) -> String {
    format!("({:.3}, {:.3})", p[0], p[1])
}

/// A gap in inches, and in the drawing's own measure where that is neither feet nor inches.
fn open_by(gap: f64, drawn_gap: f64, unit: Option<Unit>) -> String {
    let inches = LengthStyle::Feet.short(gap);
    match unit {
        Some(Unit::Inch | Unit::Foot) => inches,
        Some(unit) => format!("{inches}, {} {}", number(drawn_gap), unit.word()),
        None => format!("{inches}, {} drawing units", number(drawn_gap)),
    }
}

fn wall_open(layer: &str, bare: bool, gap: &str, [from, to]: [Xy; 2]) -> FindingWords {
    let what = if bare { "an area without siding" } else { "a wall" };
    FindingWords::new(
        format!(
            "the outline of {what}{layer} is open by {gap} between {} and {}",
            place(from),
            place(to)
        ),
        "Close the outline in the drawing. Gaps up to `weld` under [drawing], 1/16 in unless the job sets it, are joined by the program.",
    )
}

fn wall_crosses(layer: &str, first: Xy, second: Xy) -> FindingWords {
    FindingWords::new(
        format!(
            "the wall outline{layer} crosses itself: its sides near {} and {} cut each other",
            place(first),
            place(second)
        ),
        "Redraw the outline so that it goes once round the wall.",
    )
}

fn walls_overlap(layer: &str, area: f64, walls: &[WallId], style: LengthStyle) -> FindingWords {
    let which = match walls {
        [a, b] => format!("wall outlines {a} and {b}"),
        _ => "two wall outlines".to_owned(),
    };
    FindingWords::new(
        format!("{which}{layer} overlap by {:.1} {}", style.area(area), style.area_unit()),
        "Draw each wall once: end the one behind where the one in front hides it. Or leave one out under `skip` in the job file.",
    )
}

fn wall_too_fine(layer: &str, corners: usize, most: usize) -> FindingWords {
    FindingWords::new(
        format!("a wall outline{layer} has {corners} corners; the most that is laid out is {most}"),
        "Draw the wall's outline anew, with lines from corner to corner and arcs for curves.",
    )
}

fn wall_too_big(
    layer: &str,
    [width, height]: [f64; 2],
    [most_width, most_height]: [f64; 2],
    style: LengthStyle,
) -> FindingWords {
    FindingWords::new(
        format!(
            "a wall outline{layer} is {} wide and {} high; the most that is laid out is {} by {}",
            style.length(width),
            style.length(height),
            style.length(most_width),
            style.length(most_height)
        ),
        "Check the unit or the known distance: the drawing may be at another scale than the job says.",
    )
}

fn wall_too_full(layer: &str, of_what: OnWall, count: usize, most: usize) -> FindingWords {
    let what = match of_what {
        OnWall::Openings => "openings",
        OnWall::Fixtures => "fixtures",
    };
    FindingWords::new(
        format!("a wall{layer} has {count} {what}; the most that is laid out is {most}"),
        "Draw the wall as several outlines, or take off the layer what is none.",
    )
}

/// `2 walls of Front, 1 wall of Back`.
fn walls_of(walls: &[WallsOf]) -> String {
    listed(walls.iter().map(|w| format!("{} of {}", counted(w.walls, "wall"), w.elevation)))
}

fn from_hatch(walls: &[WallsOf], line_spacings: &[f64], style: LengthStyle) -> FindingWords {
    let spacings: Vec<String> = line_spacings.iter().map(|s| style.short(*s)).collect();
    let apart = if spacings.is_empty() {
        String::new()
    } else {
        format!(
            " Their lines are {} apart, which is a texture and not laid out from",
            spacings.join(" or ")
        )
    };
    FindingWords::new(
        format!("no outline is drawn round {}: taken from siding hatches.{apart}", walls_of(walls)),
        "Check each wall on the sheet. A closed outline on A-WALL-OTLN takes precedence over hatches. Channels follow the hatch's edge round each opening, which is the opening with its drawn casing.",
    )
}

fn from_lines(walls: &[WallsOf]) -> FindingWords {
    FindingWords::new(
        format!(
            "no outline is drawn round {}: taken from the faces of loose lines",
            walls_of(walls)
        ),
        "Check each wall and opening on the sheet. A closed outline on A-WALL-OTLN takes precedence over loose lines.",
    )
}

fn wall_foot(layer: &str) -> FindingWords {
    FindingWords::new(
        format!("the wall is taken to start at the level line on layer {layer}, from side to side"),
        "If the siding starts lower, draw the wall as a closed outline on A-WALL-OTLN.",
    )
}

fn faces_left(faces: usize) -> FindingWords {
    FindingWords::new(
        format!("{} of loose lines, taken for neither wall nor opening", counted(faces, "face")),
        "Left out. If one is a wall, draw it as a closed outline on A-WALL-OTLN.",
    )
}

fn side_leans(lean: f64, length: f64, style: LengthStyle) -> FindingWords {
    FindingWords::new(
        format!(
            "a side that should be level or vertical leans by {} over {}",
            style.short(lean),
            style.length(length)
        ),
        "Draw it with the orthogonal lock on.",
    )
}

fn opening_outside(layer: &str, accepted: bool) -> FindingWords {
    FindingWords::new(
        format!("an opening{layer} lies outside every wall"),
        if accepted {
            "It is left out, since the job accepts this. Ask which wall it belongs to."
        } else {
            "Move it into its wall, or close the wall's outline round it. To leave such openings out, put \"opening-outside\" into `accept` under [drawing]."
        },
    )
}

fn opening_size(
    says: &str,
    [stated, drawn]: [[f64; 2]; 2],
    openings: usize,
    style: LengthStyle,
) -> FindingWords {
    let (is, drawn) = (style.size(stated[0], stated[1]), style.size(drawn[0], drawn[1]));
    let many = counted(openings, "opening");
    let are = if openings == 1 { "is" } else { "are" };
    FindingWords::new(
        format!("{says} is {is}, but {many} with it {are} drawn {drawn}"),
        "The drawn size is cut. Ask which of the two is right: a larger one takes casing or several units in.",
    )
}

fn fixture_outside(layer: &str) -> FindingWords {
    FindingWords::new(
        format!("a fixture{layer} lies on no wall; it is left out"),
        "Move it onto its wall, or off the fixture layer.",
    )
}

fn straddles(layer: &str, past: f64, style: LengthStyle) -> FindingWords {
    FindingWords::new(
        format!("an opening{layer} reaches {} out of its wall", style.short(past)),
        "Move the opening or the outline; the part outside is left out.",
    )
}
