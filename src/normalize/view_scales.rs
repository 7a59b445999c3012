//! Views that are drawn at a scale of their own on one page.

use super::dimension_texts::agreed_in;
use super::motion::EVERYWHERE;
use super::paper_scale::{LEAST, differ, times};
use crate::finding::lines::LineFinding;
use crate::finding::views::{ViewFinding, ViewScaleBy};
use crate::finding::{Finding, Findings, Refusal};
use crate::geom::polygon::bounds;
use crate::geom::vocabulary::{Point, Rect};
use crate::job::Job;
use crate::job::drawing::known_scale;
use crate::model::linework::{Linework, ViewScale};

/// What is known of the scale of one view, as a share of the one taken.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Own {
    /// Known, and by what.
    Is(f64, ViewScaleBy),
    /// Dimensions in it speak for several.
    Several,
    /// Nothing tells it.
    Unknown,
}

/// Whether views of a page of points may be of several scales: dimensions or what is written speak for more
/// than one.
pub(super) fn are_several(lines: &Linework) -> bool {
    let mut said: Vec<f64> =
        lines.labels.iter().filter_map(|l| times(l.text.content.trim())).collect();
    said.sort_by(f64::total_cmp);
    said.dedup_by(|b, a| !differ(*a, *b));
    said.len() > 1 || agreed_in(lines, EVERYWHERE, LEAST).len() > 1
}

/// The views that are drawn at another scale than the one taken, of those found, each with the box it is
/// drawn in; on `paper` that shows several scales, what is drawn and written in views tells it too.
///
/// # Errors
/// `known-unreadable` for a distance of a view that is none.
pub(super) fn found(
    lines: &Linework,
    views: &[(String, Rect)],
    (job, paper): (&Job, bool),
    findings: &mut Findings,
) -> Result<Vec<ViewScale>, Refusal> {
    let several = paper && are_several(lines);
    let views: Vec<(String, Rect)> =
        views.iter().map(|(v, r)| (v.clone(), drawn_box(lines, *r))).collect();
    let by_job: Vec<Option<f64>> =
        views.iter().map(|(v, _)| of_job(lines, v, job)).collect::<Result<_, _>>()?;
    let drawn: Vec<Own> = views
        .iter()
        .map(|(_, r)| if several { by_dimensions(lines, *r) } else { Own::Unknown })
        .collect();
    let base = base(lines, &views, &drawn, job);
    let mut out = Vec::new();
    for (((view, region), by_job), drawn) in views.iter().zip(by_job).zip(drawn) {
        let written = || written_in(lines, *region).zip(base).map(|(own, base)| own / base);
        let own = match (by_job, drawn) {
            (Some(times), _) => Own::Is(times, ViewScaleBy::Known),
            (None, Own::Unknown) if several => {
                written().map_or(Own::Unknown, |t| Own::Is(t, ViewScaleBy::Written))
            }
            (None, drawn) => drawn,
        };
        let skipped = job.elevation.iter().any(|e| e.skip && e.is_of(view));
        match own {
            Own::Is(times, by) if differ(times, 1.0) && !skipped => {
                let (inches, view) = (times * lines.scale.inches, view.clone());
                let kind = ViewFinding::ViewScaled { view: view.clone(), inches, paper, by };
                findings.push(Finding::new(kind));
                out.push(ViewScale { view, region: *region, times });
            }
            Own::Several | Own::Unknown if several && !skipped => {
                let kind = ViewFinding::ViewScaleUnknown { view: view.clone() };
                findings.push(Finding::new(kind));
            }
            _ => {}
        }
    }
    Ok(out)
}

/// Wider than any drawing: the region of a view that is all of it.
const ALL: f64 = 1e9;

/// The part of a drawing that a region covers: of one that is everywhere, the box round all lines.
fn drawn_box(lines: &Linework, region: Rect) -> Rect {
    if region.width() <= ALL {
        return region;
    }
    let all = lines.strokes.iter().filter_map(|s| bounds(&s.points)).reduce(|a, b| a.union(b));
    all.unwrap_or_default().inflate(1.0, 1.0)
}

/// The scale that the job's distance in a view sets, as a share of the one taken.
fn of_job(lines: &Linework, view: &str, job: &Job) -> Result<Option<f64>, Refusal> {
    let known = job.elevation.iter().filter(|e| e.is_of(view)).find_map(|e| e.known.as_ref());
    let Some(text) = known else { return Ok(None) };
    let unreadable = || Refusal::new(LineFinding::KnownUnreadable { text: text.clone() });
    known_scale(text).map(|k| Some(k / lines.scale.inches)).ok_or_else(unreadable)
}

/// What dimensions in a view say, as a share of the scale taken.
fn by_dimensions(lines: &Linework, region: Rect) -> Own {
    match &agreed_in(lines, region, LEAST)[..] {
        [] => Own::Unknown,
        [one] => Own::Is(one.inches, ViewScaleBy::Dimensions),
        _ => Own::Several,
    }
}

/// The one scale written in a part of a page: how many times as large as on paper things are.
fn written_in(lines: &Linework, region: Rect) -> Option<f64> {
    let here = lines.labels.iter().filter(|l| region.contains(l.text.at));
    let mut said: Vec<f64> = here.filter_map(|l| times(l.text.content.trim())).collect();
    said.sort_by(f64::total_cmp);
    said.dedup_by(|b, a| !differ(*a, *b));
    match said[..] {
        [one] => Some(one),
        _ => None,
    }
}

/// What is written in the view whose scale is the one taken: that of the known distance, or one whose
/// dimensions agree with it. A page that is printed smaller is so as a whole.
fn base(lines: &Linework, views: &[(String, Rect)], drawn: &[Own], job: &Job) -> Option<f64> {
    let k = lines.scale.inches;
    let from = job.drawing.known_from().map(|p| Point::new(p.x * k, p.y * k));
    let with_known = |r: &Rect| from.is_some_and(|p| r.contains(p));
    let agrees = |own: &Own| matches!(own, Own::Is(times, _) if !differ(*times, 1.0));
    let region = views
        .iter()
        .find(|(_, r)| with_known(r))
        .or_else(|| views.iter().zip(drawn).find(|(_, own)| agrees(own)).map(|(v, _)| v))?;
    written_in(lines, region.1)
}
