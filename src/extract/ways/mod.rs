//! Three ways to a wall, in this order: closed outlines on wall layers; the boundaries of siding
//! hatches; the arrangement of loose lines where the job names a layer or a region. The report says
//! which was used.

pub(super) mod drawn_courses;
pub(super) mod faces_of;
mod foot;
pub(super) mod gable;
pub(super) mod hatch;
pub(super) mod loose;
pub(super) mod recess;

use super::outline::Outline;
use crate::diag::{Note, Notes};
use crate::job::Job;
use crate::model::house::WallWay;
use crate::model::linework::{Linework, Role};

/// Every wall outline that the whole drawing shows. Those of hatches carry no openings yet: these
/// are settled view by view.
pub(crate) fn outlines(lines: &Linework, job: &Job, notes: &mut Notes) -> Vec<Outline> {
    let soup = loose::layers(lines);
    let drawn = hatch::exposures(lines);
    let mut out: Vec<Outline> = lines
        .strokes
        .iter()
        .filter(|s| s.role == Some(Role::Wall) && s.closed && s.points.len() >= 3)
        .filter(|s| !soup.contains(&s.layer))
        .map(|s| Outline {
            ring: s.points.clone(),
            way: WallWay::Outline,
            layer: s.layer,
            origin: s.origin.clone(),
            exposure: hatch::exposure_over(&drawn, &s.points),
            openings: Vec::new(),
        })
        .collect();
    out.extend(hatch::outlines(lines, &out));
    out.extend(loose::outlines(lines, &soup, job, notes));
    out
}

/// Says which way was taken where it was not the agreed one.
pub(super) fn report(views: &[(&str, &[Outline])], notes: &mut Notes) {
    let by = |way: WallWay| -> Vec<(&str, Vec<&Outline>)> {
        views
            .iter()
            .map(|(name, all)| (*name, all.iter().filter(|o| o.way == way).collect::<Vec<_>>()))
            .filter(|(_, o)| !o.is_empty())
            .collect()
    };
    let listed = |found: &[(&str, Vec<&Outline>)]| {
        let each = found.iter().map(|(name, o)| match o.len() {
            1 => format!("1 wall of {name}"),
            n => format!("{n} walls of {name}"),
        });
        each.collect::<Vec<_>>().join(", ")
    };
    let hatched = by(WallWay::Hatch);
    if !hatched.is_empty() {
        let drawn: std::collections::BTreeSet<String> = hatched
            .iter()
            .flat_map(|(_, o)| o.iter().filter_map(|o| o.exposure))
            .map(crate::units::inches_fraction)
            .collect();
        let message = format!(
            "no outline is drawn round {}: taken from siding hatches. Their lines are {} apart, which is a texture and not laid out from",
            listed(&hatched),
            drawn.into_iter().collect::<Vec<_>>().join(" or ")
        );
        let help = "Check each wall on the sheet. A closed outline on A-WALL-OTLN goes before hatches. Channels follow the hatch's edge round each opening, which is the opening with its drawn casing.";
        notes.push(Note::info("walls-from-hatch", message, help));
    }
    let loose = by(WallWay::Arrangement);
    if !loose.is_empty() {
        let message = format!(
            "no outline is drawn round {}: taken from the faces of loose lines",
            listed(&loose)
        );
        let help = "Check each wall and opening on the sheet. A closed outline on A-WALL-OTLN goes before loose lines.";
        notes.push(Note::warning("walls-from-lines", message, help));
    }
}
