//! Of views.

use super::finding_words::FindingWords;
use super::parts::listed;
use crate::finding::Finding;
use crate::finding::views::{JobList, OtherView, ViewFinding};
use crate::units::counted;

pub(super) fn words(found: &ViewFinding, finding: &Finding) -> FindingWords {
    use ViewFinding as F;
    match found {
        F::ViewLeftAlone { title, shows } => left_alone(title, *shows),
        F::ViewSection { title } => FindingWords::new(
            format!("{title}: by its title a section, but siding is hatched in it"),
            "It is laid out. If it only repeats what an elevation shows, name the elevations as [[elevation]] in the job file.",
        ),
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
            let how = if *shared_base {
                "heights are taken from the lowest wall of all views"
            } else {
                "heights are taken from each one's own lowest wall"
            };
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
            let list = match list {
                JobList::Band => "band",
                JobList::Joint => "movement_joint",
                JobList::ZoneRegion => "zone.region",
            };
            FindingWords::new(
                format!(
                    "`{list}` names the elevation `{named}`; the elevations are {}",
                    listed(elevations.iter().map(|e| e.as_str()))
                ),
                "Correct the name in the job file.",
            )
        }
    }
}

fn left_alone(title: &str, shows: OtherView) -> FindingWords {
    let shows = match shows {
        OtherView::Plan => "a plan",
        OtherView::Section => "a section",
        OtherView::Detail => "a detail",
    };
    FindingWords::new(
        format!("{title}: by its title {shows}; it is left alone"),
        "If it is an elevation, name it as [[elevation]] with its region in the job file.",
    )
}
