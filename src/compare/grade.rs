//! Finished grade of an elevation.

use super::changed::{On, Told};
use super::shape::{Shift, differs};
use crate::geom::vocabulary::Xy;
use crate::layout::wall::LaidElevation;
use crate::model::change::{How, Subject};

/// Tells how grade lies against what it was, along the walls.
pub(super) fn grade(
    (old, new): (&LaidElevation, &LaidElevation),
    shift: Shift,
    (left, right): (f64, f64),
    on: &On,
    told: &mut Told,
) {
    let was = shift.ring(&old.grade);
    let is = &new.grade;
    let place = |lines: &[&[Xy]]| {
        let ys: Vec<f64> = lines.iter().flat_map(|l| l.iter()).map(|p| p[1]).collect();
        let low = ys.iter().copied().fold(f64::INFINITY, f64::min);
        vec![[left, low, right, ys.iter().copied().fold(low, f64::max)]]
    };
    let none = (None, None);
    match (was.is_empty(), is.is_empty()) {
        (true, true) => {}
        (true, false) => {
            let how = How::Added { size: None, openings: 0 };
            told.tell(on, Subject::Grade, none, how, place(&[is]));
        }
        (false, true) => {
            let how = How::Removed { size: None, openings: 0 };
            told.tell(on, Subject::Grade, none, how, place(&[&was]));
        }
        (false, false) => {
            let Some((highest, lowest)) = between(&was, is, (left, right)) else { return };
            let how = if differs(highest, lowest) {
                How::Regraded { highest, lowest }
            } else if differs(highest, 0.0) {
                How::Raised { up: highest }
            } else {
                return;
            };
            told.tell(on, Subject::Grade, none, how, place(&[is]));
        }
    }
}

/// The most and the least that one line lies over another between two places; `None` where they have no
/// length in common.
fn between(was: &[Xy], is: &[Xy], (left, right): (f64, f64)) -> Option<(f64, f64)> {
    let ends = |l: &[Xy]| Some((l.first()?[0].min(l.last()?[0]), l.first()?[0].max(l.last()?[0])));
    let (a, b) = (ends(was)?, ends(is)?);
    let (from, to) = (a.0.max(b.0).max(left), a.1.min(b.1).min(right));
    if to <= from {
        return None;
    }
    let all = was.iter().chain(is).map(|p| p[0]).filter(|x| *x > from && *x < to);
    let over = all.chain([from, to]).filter_map(|x| Some(at(is, x)? - at(was, x)?));
    over.fold(None, |span: Option<(f64, f64)>, d| {
        Some(span.map_or((d, d), |(high, low)| (high.max(d), low.min(d))))
    })
}

/// Height of a line at a place.
fn at(line: &[Xy], x: f64) -> Option<f64> {
    let here = |p: &&[Xy]| p[0][0].min(p[1][0]) <= x && x <= p[0][0].max(p[1][0]);
    let p = line.windows(2).find(here)?;
    let run = p[1][0] - p[0][0];
    let share = if run.abs() < 1e-9 { 0.0 } else { (x - p[0][0]) / run };
    Some(p[0][1] + share * (p[1][1] - p[0][1]))
}
