//! The first job of a drawing: the best guess, with the views as the drawing shows them.

use super::head::lines_of;
use super::suggest::{roles, suggested, tried};
use crate::extract::shown_views;
use crate::finding::{Findings, Refusal, Severity};
use crate::job::Job;
use crate::job::first::FirstJob;
use crate::model::drawing::Drawing;
use crate::model::trial::JobGuess;
use crate::read;
use crate::real::Real;

/// The first job of a drawing: the best that is found, at least as good as none.
///
/// # Errors
/// When the drawing cannot be read at all.
pub fn first_job(bytes: &[u8], name: &str) -> Result<FirstJob, Refusal> {
    let mut read_with = Findings::default();
    let drawing = read::drawing(bytes, name, &read::Limits::default(), &mut read_with)?;
    let found = suggested(&drawing, &Job::default());
    let mut out = FirstJob {
        drawing: name.to_owned(),
        guess: found.jobs.into_iter().next().unwrap_or_default(),
        layers: roles(&drawing, &Job::default()),
        plain: found.plain,
        ..FirstJob::default()
    };
    if let Ok(lines) = lines_of(&drawing, &out.job(), &mut Findings::default()) {
        out.unit = lines.scale.unit.map(|u| (u, lines.scale.basis));
        out.views = shown_views(&lines, &out.job());
        out.views.iter_mut().for_each(|v| v.region = rounded(v.region));
    }
    settle(&mut out, &drawing);
    tell_of_reading(&mut out, &read_with);
    Ok(out)
}

/// What was found in the file itself holds whatever the job: told and counted with the rest.
fn tell_of_reading(out: &mut FirstJob, read_with: &Findings) {
    let count = |s: Severity| read_with.all().iter().filter(|f| f.severity() == s).count();
    for reached in [&mut out.plain, &mut out.guess.reached] {
        reached.errors += count(Severity::Error);
        reached.warnings += count(Severity::Warning);
        reached.remarks += count(Severity::Info);
        reached.usable &= reached.errors == 0;
    }
    out.findings.splice(0..0, read_with.all().iter().cloned());
}

/// Leaves out, one by one, what makes the reading worse.
fn settle(out: &mut FirstJob, drawing: &Drawing) {
    let named = out.elevations().all(|v| !v.name.trim().is_empty());
    out.regions = named && out.elevations().next().is_some();
    let least =
        if out.guess.reached.usable { out.guess.reached.clone() } else { out.plain.clone() };
    let (mut reached, mut found) = tried(drawing, &out.job());
    if out.regions && !reached.is_as_good_as(&least) {
        out.regions = false;
        (reached, found) = tried(drawing, &out.job());
    }
    if !reached.is_as_good_as(&out.plain) {
        (out.guess, out.unit) = (JobGuess::default(), None);
        (reached, found) = tried(drawing, &out.job());
    }
    out.guess.reached = reached;
    out.findings = found.all().to_vec();
}

/// A region in figures that can be read: out to the next hundredth of its size.
fn rounded([x0, y0, x1, y1]: [f64; 4]) -> [f64; 4] {
    let size = (x1 - x0).max(y1 - y0).max(f64::MIN_POSITIVE);
    let step = 10f64.powi(size.decimal_log().floor() as i32 - 2);
    let out = |v: f64, up: bool| {
        let steps = v / step;
        let whole = if up { steps.ceil() } else { steps.floor() };
        // Ten to a negative power is no binary fraction.
        if step < 1.0 { whole / (1.0 / step).round() } else { whole * step }
    };
    [out(x0, false), out(y0, false), out(x1, true), out(y1, true)]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn regions_are_rounded_outward() {
        assert_eq!(rounded([-48.3, -96.0, 288.2, 192.0]), [-49.0, -96.0, 289.0, 192.0]);
        assert_eq!(rounded([0.123, 0.0, 8.0, 2.0]), [0.12, 0.0, 8.0, 2.0]);
        assert_eq!(rounded([0.0, 0.0, 12345.0, 10.0]), [0.0, 0.0, 12400.0, 100.0]);
    }
}
