//! What breaks the rules of fields, areas and courses.

use crate::layout::breach::wall::{CourseBreach, FieldBreach};
use crate::layout::violation::Figure;
use crate::units::LengthStyle;
use crate::wording::{figure, names};

/// A place on a wall: `12.5, 24 in`.
fn point([x, y]: [f64; 2], style: LengthStyle) -> String {
    let unit = format!(" {}", style.unit());
    format!("{}, {}", figure::length(x, style).trim_end_matches(&unit), figure::length(y, style))
}

/// What mends a wall that is bare.
const MEND_BARE: &str = "Draw the wall's outline down to finished grade only, and roofs in front of it as roofs; check that the view is upright and where the grade line runs";

fn area(square_feet: f64, style: LengthStyle) -> String {
    figure::figure(Figure::SquareFeet(square_feet), style)
}

pub(super) fn field(breach: &FieldBreach, style: LengthStyle) -> String {
    let side = |kind| names::edge(kind);
    match breach {
        FieldBreach::Uncovered => "area without siding".to_owned(),
        FieldBreach::Beyond => "siding beyond the limit of siding or in its clearances".to_owned(),
        FieldBreach::LaidTwice => "siding over siding other than at a lap".to_owned(),
        FieldBreach::OutsideWall => "limit of siding beyond the wall".to_owned(),
        FieldBreach::InOpenings => "limit of siding inside openings".to_owned(),
        FieldBreach::AreaMissing => {
            "net area less the area to side, beside what steps, roofs and boards take".to_owned()
        }
        FieldBreach::NoSiding { grade } => format!(
            "no siding on the wall; {} of it too near to finished grade or under it. {MEND_BARE}: net area",
            area(*grade, style)
        ),
        FieldBreach::TooBare { grade, clearance } => format!(
            "more than a quarter of the wall is bare: {} too near to finished grade or under it, {} in clearances. {MEND_BARE}: bare",
            area(*grade, style),
            area(*clearance, style)
        ),
        FieldBreach::Unaccounted => {
            "wall without siding that no grade, roof, board or clearance accounts for".to_owned()
        }
        FieldBreach::NetOfOutline => {
            "net area and bare wall beside the outline less what hides it and openings".to_owned()
        }
        FieldBreach::GrossArea => "gross area beside that of the outline".to_owned(),
        FieldBreach::NetArea => "net area and bare wall beside gross area less openings".to_owned(),
        FieldBreach::SideUnnamed { from, to } => {
            format!("no named side from {} to {}", point(*from, style), point(*to, style))
        }
        FieldBreach::SideElsewhere { side: kind, from, to } => format!(
            "{} named from {} to {}, where the limit of siding does not run",
            side(*kind),
            point(*from, style),
            point(*to, style)
        ),
        FieldBreach::SideDirection { side: kind } => {
            format!("side named {} does not run as one does", side(*kind))
        }
        FieldBreach::SideBorder { side: kind } => {
            format!("side named {} does not border what it says", side(*kind))
        }
        FieldBreach::SideReceiver { side: kind, receiver, needed } => format!(
            "{} has {}, needs {}",
            side(*kind),
            names::receiver(*receiver),
            names::receiver(*needed)
        ),
        FieldBreach::SidePitch { side: kind } => format!("slope given for the {}", side(*kind)),
        FieldBreach::ZoneGross => "gross area beside that of the outline".to_owned(),
        FieldBreach::ZoneNet => "net area".to_owned(),
        FieldBreach::ZoneLaid => "siding laid on other cladding".to_owned(),
        other => bare(other).to_owned(),
    }
}

fn bare(breach: &FieldBreach) -> &'static str {
    match breach {
        FieldBreach::BareUntold => "bare wall that is not told",
        FieldBreach::BareSided => "told as bare where siding goes",
        FieldBreach::BareMisnamed => "told as too near to grade where it is not",
        FieldBreach::BareOverRoofs => "told as bare over lower roofs",
        FieldBreach::BareBehindRoofs => "wall told as behind lower roofs",
        FieldBreach::BareArea => "area of bare wall beside that of its outline",
        FieldBreach::TooNarrow => "siding between two sides too near for it",
        FieldBreach::FillerNeedless => "filler board where siding has room: width",
        FieldBreach::FillerInOpening => "filler board in an opening",
        FieldBreach::FillerBoard => "length of filler board of the width told",
        FieldBreach::FillerArea => "area under filler boards",
        FieldBreach::BlockMoved => "mounting block moved from where it is drawn by",
        FieldBreach::BlockBites => "bite of a mounting block that moving it would spare",
        _ => "",
    }
}

pub(super) fn course(breach: &CourseBreach) -> String {
    match breach {
        CourseBreach::Exposure { course: None } => "exposure".to_owned(),
        CourseBreach::Exposure { course: Some(n) } => {
            format!("exposure of course {} of the story pole", i64::from(*n) + 1)
        }
        CourseBreach::Order => "courses do not go up one by one".to_owned(),
        CourseBreach::ButtLine => "butt line off its level".to_owned(),
        CourseBreach::TopLine => "top off the next butt line".to_owned(),
        CourseBreach::NearGrade => "clearance of siding to grade".to_owned(),
        CourseBreach::StartTooHigh => {
            "the start could be a course lower: clearance to grade".to_owned()
        }
    }
}
