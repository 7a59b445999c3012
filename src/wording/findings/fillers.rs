//! Of places too narrow for siding, and of blocks moved.

use super::finding_words::FindingWords;
use super::parts::first_of;
use crate::model::filler::{FilledTo, FillerSide, PlacedFiller};
use crate::model::ids::OpeningId;
use crate::model::item::SidingPiece;
use crate::units::{LengthStyle, counted};
use crate::wording::lists;
use crate::wording::takeoff::items::piece;

/// Most boards named in one finding.
const NAMED: usize = 6;

/// Of skirt boards alone.
const SKIRT: &str = "Rip a flat trim board to the width, or wrap it in coil, with the flashing up behind it. Siding starts whole on it; without it a strip under `courses.least_strip` would be left. Another `courses.datum`, or a smaller `courses.least_strip`, does without it.";

pub(super) fn words(
    wall: &str,
    fillers: &[PlacedFiller],
    least: f64,
    of: SidingPiece,
    style: LengthStyle,
) -> FindingWords {
    let each: Vec<String> = fillers.iter().map(|f| board(f, style)).collect();
    let width = format!(
        "Siding is laid where {} of it shows (`courses.least_width`): ask the architect for that room if siding is wanted there.",
        style.short(least)
    );
    let is_skirt = |f: &&PlacedFiller| f.between.iter().any(|s| s.to == FilledTo::Course);
    let skirts = fillers.iter().filter(is_skirt).count() == fillers.len();
    let board = if skirts { "skirt board" } else { "filler board" };
    let gets = match fillers.len() {
        1 => format!("takes no {}, and gets a {board}", piece(of).en),
        _ => format!("take no {}, and get {board}s", piece(of).en),
    };
    let told = format!(
        "{wall}: {} {gets}: {}",
        counted(fillers.len(), "narrow place"),
        first_of(&each, NAMED)
    );
    if skirts {
        return FindingWords::new(told, SKIRT);
    }
    FindingWords::new(
        told,
        format!(
            "Rip a flat trim board to the width, or wrap it in coil, and flash it; run the trim of an opening around it too. {width}"
        ),
    )
}

/// Openings edge to edge.
pub(super) fn joined(wall: &str, pairs: &[[OpeningId; 2]]) -> FindingWords {
    let each: Vec<String> = pairs.iter().map(|[a, b]| format!("{a} and {b}")).collect();
    FindingWords::new(
        format!(
            "{wall}: openings stand edge to edge and are taken as units joined by a mullion: {}. No channel, jamb flashing or sealant is counted between them",
            first_of(&each, NAMED)
        ),
        "Ask how the joint is closed: a mullion cover, its flashing and sealant come with the units. If they are framed apart, draw the space between them.",
    )
}

fn board(f: &PlacedFiller, style: LengthStyle) -> String {
    let marks: Vec<String> = f.boards.iter().map(|m| m.to_string()).collect();
    let size = format!("{} wide, {} long", style.short(f.width), style.length(f.length));
    format!("{} ({size}, {})", lists::joined(&marks), between(f))
}

fn between(f: &PlacedFiller) -> String {
    let [a, b] = &f.between;
    format!("between {} and {}", side(a), side(b))
}

/// An opening by its name, another side by what it is.
fn side(s: &FillerSide) -> String {
    s.opening.as_ref().map_or_else(|| filled_to(s.to).to_owned(), |id| id.to_string())
}

fn filled_to(to: FilledTo) -> &'static str {
    match to {
        FilledTo::Opening => "an opening",
        FilledTo::OutsideCorner => "the outside corner",
        FilledTo::InsideCorner => "the inside corner",
        FilledTo::WallEnd => "the end of the wall",
        FilledTo::Eave => "the soffit",
        FilledTo::BareAbove => "the band or bare area above",
        FilledTo::BareBelow => "the band or bare area below",
        FilledTo::Start => "the bottom of the wall",
        FilledTo::LowerRoof => "the lower roof",
        FilledTo::Course => "the first whole course",
    }
}
