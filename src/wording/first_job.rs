//! The first job of a drawing in words: its comments.

use crate::finding::views::OtherView;
use crate::model::source::UnitBasis;

/// Over the file: `of` is the drawing's name, `job` the file's own.
pub fn head(of: &str, job: &str) -> Vec<String> {
    vec![
        format!("The first job of {of}: what the drawing is read as, and what is left to answer."),
        "A line that begins with # says something, or is a setting that is off: take its # away to turn it on.".to_owned(),
        "`lapwright template DIR` writes a job file with every setting explained.".to_owned(),
        format!("Next: lapwright check {of} --job {job} --out check"),
        "That writes problems.svg, the drawing with each finding circled.".to_owned(),
    ]
}

/// The line by which the job goes on from the office's file beside it.
pub fn extends(office: &str) -> String {
    format!("extends = \"{office}\"\n\n")
}

/// What reading with the job comes to.
pub fn with_job(said: &str) -> String {
    format!("As read with this job: {said}.")
}

/// Over `skip` and `join`.
pub const BY_NAME: &str = "Walls, openings and fixtures to leave out, and walls that are one plane, by the names that check and the sheets use.";

/// Over the title.
pub const TITLE: &str = "What the title block says.";

/// What a unit was taken by.
pub fn unit_by(basis: UnitBasis) -> &'static str {
    match basis {
        UnitBasis::Header => "as the drawing's header says: measure a door to be sure",
        UnitBasis::Job => "as its sizes speak for: measure a door to be sure",
        _ => "by the sizes of what is drawn: measure a door to be sure",
    }
}

/// Where no unit is known.
pub const NO_UNIT: &str = "The unit is not known: say it, or a known distance.";

/// Over layers that have their role by agreed names.
pub const AGREED: &str = "Taken by their names, without a line here:";

/// Over layers without a role.
pub const NO_ROLE: &str = "Layers without a role, with how much is drawn on them:";

/// Over the views.
pub const VIEWS: &str = "Views: left, bottom, right and top in drawing units. `skip = true` leaves one out; `siding_layer` names the layer of its siding.";

/// Over views whose regions are off.
pub const VIEWS_OFF: &str = "Views as the drawing shows them; it is read by its own titles and frames, and these regions are off.";

/// Where there is none.
pub const NO_VIEWS: &str = "No view with walls is found. Say where each elevation is, in drawing units, and which layer its siding is on.";

/// A view that is left alone.
pub fn left_alone(title: &str, shows: OtherView) -> String {
    let shows = match shows {
        OtherView::Plan => "a plan",
        OtherView::Section => "a section",
        OtherView::Detail => "a detail",
        OtherView::Interior => "an elevation of a room",
        OtherView::Partial => "part of a view that is drawn whole too",
    };
    format!("Left alone, by its title {shows}: {title}")
}

/// Over walls and openings given outright.
pub const OUTRIGHT: &str =
    "What the drawing does not show as you see it, give outright, in drawing units.";

/// Over the questions.
pub const QUESTIONS: &str = "Left to answer. `lapwright explain CODE` tells more of each.";

/// Where there are none.
pub const NO_QUESTIONS: &str =
    "Nothing is left to answer by the reading alone; a layout may ask more.";

/// More findings of one code.
pub fn more_like_it(count: usize) -> String {
    format!("and {count} more like it")
}
