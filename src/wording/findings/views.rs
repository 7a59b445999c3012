//! Of views.

use super::finding_words::FindingWords;
use super::parts::listed;
use crate::finding::Finding;
use crate::finding::views::{JobList, OtherView, Tells, ViewFinding, ViewScaleBy};
use crate::model::ids::ElevationName;
use crate::model::turn::Turn;
use crate::units::counted;

/// Points to the inch of paper.
const POINTS: f64 = 72.0;

pub(super) fn words(found: &ViewFinding, finding: &Finding) -> FindingWords {
    use ViewFinding as F;
    match found {
        F::ViewLeftAlone { title, shows } => left_alone(title, *shows),
        F::ViewSection { title } => FindingWords::new(
            format!("{title}: by its title a section, but siding is hatched in it"),
            "It is laid out. If it only repeats what an elevation shows, name the elevations as [[elevation]] in the job file.",
        ),
        F::ViewDoubted { view } => doubted(view),
        F::ViewTurned { view, turn, tells, accepted } => turned(view, *turn, tells, *accepted),
        F::ViewSetUpright { view, turn } => set_upright(view, *turn),
        F::ViewScaled { view, inches, paper, by } => scaled(view, (*inches, *paper), *by),
        F::ViewScaleUnknown { view } => of_unknown_scale(view),
        F::ViewSkipped { view } => skipped(view),
        F::VariantTaken { variant, built, left_out } => variant_taken(variant, built, left_out),
        F::VariantUnknown { variant, variants } => variant_unknown(variant, variants),
        F::ModelMirrored {} => mirrored(),
        F::ViewUntitled { untitled, views } => FindingWords::new(
            format!(
                "{untitled} of {views} views without a frame or a title: numbered left to right"
            ),
            "Draw a frame on A-ELEV-FRAM and a title on A-ELEV-IDEN, or name the views as [[elevation]] in the job file.",
        ),
        F::OutsideViews { lines } => FindingWords::new(
            format!(
                "{} of walls or openings outside every view, left out",
                counted(*lines, "line")
            ),
            "Draw a frame round that view on A-ELEV-FRAM, or name its region in the job file.",
        ),
        F::LevelAssumed { elevations, shared_base } => {
            let how = heights_from(*shared_base);
            FindingWords::new(
                format!(
                    "no floor reference line is drawn in {}; {how}",
                    listed(elevations.iter().map(|e| e.as_str()))
                ),
                "Draw the first-floor line across each elevation on A-FLOR-LEVL, so that courses meet at the corners.",
            )
        }
        F::WallsTooMany { walls, most } => FindingWords::new(
            format!(
                "{} has {walls} walls; the most that are laid out is {most}",
                finding.elevation.as_deref().unwrap_or("an elevation")
            ),
            "Check what is on the wall layer, or frame each elevation as a view of its own.",
        ),
        F::PartUnknown { list, named, elevations } => {
            part_unknown(*list, named, &listed(elevations.iter().map(|e| e.as_str())))
        }
    }
}

fn variant_taken(
    variant: &str,
    built: &[ElevationName],
    left_out: &[ElevationName],
) -> FindingWords {
    let built = listed(built.iter().map(|e| e.as_str()));
    FindingWords::new(
        format!("variant {variant} is built: {built}{}", left_out_too(left_out)),
        "Nothing to do. To build another variant of this drawing, give it a job of its own with `model.variant`.",
    )
}

fn mirrored() -> FindingWords {
    FindingWords::new(
        "the house is built the other way round from the drawing: left is right, east is west",
        "Nothing to do. Sheets show the house as it is built; the overlay lies on the drawing as it is drawn.",
    )
}

fn left_out_too(left_out: &[ElevationName]) -> String {
    match left_out {
        [] => String::new(),
        all => format!("; left out: {}", listed(all.iter().map(|e| e.as_str()))),
    }
}

fn variant_unknown(variant: &str, variants: &[String]) -> FindingWords {
    let there = match variants {
        [] => "no title has a letter of its own".to_owned(),
        all => format!("titles have {}", listed(all.iter().map(String::as_str))),
    };
    FindingWords::new(
        format!("no elevation is titled with the variant {variant}; {there}"),
        "Correct `model.variant` in the job file, or give each variant's elevations its letter: FRONT ELEVATION B.",
    )
}

fn part_unknown(list: JobList, named: &str, elevations: &str) -> FindingWords {
    let list = match list {
        JobList::Band => "band",
        JobList::Joint => "movement_joint",
        JobList::ZoneRegion => "zone.region",
        JobList::Elevation => "elevation",
    };
    FindingWords::new(
        format!("`{list}` names the elevation `{named}`; the elevations are {elevations}"),
        "Correct the name in the job file.",
    )
}

fn heights_from(shared_base: bool) -> &'static str {
    if shared_base {
        "heights are taken from the lowest wall of all views"
    } else {
        "heights are taken from each one's own lowest wall"
    }
}

fn left_alone(title: &str, shows: OtherView) -> FindingWords {
    let shows = match shows {
        OtherView::Plan => "a plan",
        OtherView::Section => "a section",
        OtherView::Detail => "a detail",
        OtherView::Partial => "part of a view that is drawn whole too",
        OtherView::Interior => "an elevation of a room",
    };
    FindingWords::new(
        format!("{title}: by its title {shows}; it is left alone"),
        "If it is an elevation, name it as [[elevation]] with its region in the job file.",
    )
}

/// How a view that needs a turn is drawn.
fn drawn(turn: Turn) -> &'static str {
    match (turn.mirror, turn.top()) {
        (false, 0) => "upright",
        (false, 1) => "on its side, its top to the left",
        (false, 2) => "upside down",
        (false, _) => "on its side, its top to the right",
        (true, 0) => "mirrored, left for right",
        (true, 2) => "upside down and mirrored",
        (true, _) => "on its side and mirrored",
    }
}

fn set_upright(view: &str, turn: Turn) -> FindingWords {
    FindingWords::new(
        format!("{view} is drawn {}; it is set upright as the job says", drawn(turn)),
        "Nothing to do; the overlay lies over the view as it is drawn.",
    )
}

fn scaled(view: &str, (inches, paper): (f64, bool), by: ViewScaleBy) -> FindingWords {
    let by = match by {
        ViewScaleBy::Known => "the distance known in it",
        ViewScaleBy::Dimensions => "dimensions beside their lines",
        ViewScaleBy::Written => "what is written in it and in a view whose scale is known",
    };
    let scale = if paper {
        format!("1:{:.1}", inches * POINTS)
    } else {
        format!("{inches:.4} in to the drawing's unit")
    };
    FindingWords::new(
        format!(
            "{view} is drawn at another scale than the rest: it is laid out at {scale}, by {by}"
        ),
        "Compare one long length of it on the sheets with the drawing. If it is off, name the view as [[elevation]] in the job file and give a distance in it: `known`.",
    )
}

fn of_unknown_scale(view: &str) -> FindingWords {
    FindingWords::new(
        format!(
            "{view}: the page shows views in several scales, and nothing tells which is this one's"
        ),
        "Name the view as [[elevation]] in the job file and give a distance in it: `known`. Or leave it out: `skip`.",
    )
}

fn skipped(view: &str) -> FindingWords {
    FindingWords::new(
        format!("{view} is left out, since the job skips it"),
        "Take `skip` out of the job file if it is to be laid out.",
    )
}

fn doubted(view: &str) -> FindingWords {
    FindingWords::new(
        format!(
            "{view} may be drawn upside down: its windows have sills at one height and heads at several"
        ),
        format!(
            "Look which way it stands. If it stands on its head, draw it upright, or add to the job file [[elevation]] with name = \"{view}\" and turn = 180; turn = 0 says that it is right and ends the question."
        ),
    )
}

fn turned(view: &str, turn: Turn, tells: &[Tells], accepted: bool) -> FindingWords {
    let tell = |t: &Tells| match t {
        Tells::Title => "how its title reads",
        Tells::Text => "how its text reads",
        Tells::Gables => "its gables",
        Tells::Doors => "where its doors stand",
        Tells::Grade => "where grade lies",
        Tells::LevelLine => "where the floor reference line lies",
        Tells::Roofs => "where its roofs lie",
        Tells::Heads => "its heads and sills",
        Tells::TitlePlace => "where its title stands",
    };
    let message = format!("{view} is drawn {}, by {}", drawn(turn), listed(tells.iter().map(tell)));
    let value = if turn.mirror { format!("\"{}\"", turn.word()) } else { turn.word().to_owned() };
    FindingWords::new(
        message,
        if accepted {
            "It is laid out as the job says. Look whether `turn` under [[elevation]] is right."
                .to_owned()
        } else {
            format!(
                "Draw it upright. Or add to the job file [[elevation]] with name = \"{view}\" and turn = {value}, which sets it upright for the layout; turn = 0 takes it as it is drawn, skip = true leaves it out."
            )
        },
    )
}
