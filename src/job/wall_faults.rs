//! What of walls, bands and joints given by the job cannot be laid out.

use super::around::WIDEST;
use super::fault::Fault;
use super::root::Job;

/// Narrowest wall round a corner, inches: two posts or channels meet in a narrower one, and nothing shows
/// between. Of our own choosing: no source.
const LEAST_RETURN: f64 = 3.0;

/// What cannot be laid out.
pub(super) fn faults(job: &Job) -> Vec<Fault> {
    let mut out = walls(job);
    out.extend(parts(job));
    out
}

/// Walls that no elevation shows, or shows too short.
fn walls(job: &Job) -> Vec<Fault> {
    let mut out = Vec::new();
    let mut check = |key: String, value: f64, least: f64| {
        out.extend(Fault::out_of_range(&key, value, least, WIDEST));
    };
    for (i, r) in job.returns.iter().enumerate() {
        // None is a wall without siding.
        let least = if r.width == 0.0 { 0.0 } else { LEAST_RETURN };
        check(format!("return.{i}.width"), r.width, least);
        check(format!("return.{i}.height"), r.height.unwrap_or(1.0), 1.0);
    }
    for (i, a) in job.angled.iter().enumerate() {
        check(format!("angled.{i}.width"), a.width, 1.0);
        for (name, left) in &a.openings {
            check(format!("angled.{i}.openings.{name}"), *left, 0.0);
        }
    }
    out
}

/// Bands and joints.
fn parts(job: &Job) -> Vec<Fault> {
    let mut out = Vec::new();
    let mut far = |key: String, value: f64| {
        out.extend(Fault::out_of_range(&key, value, -WIDEST, WIDEST));
    };
    for (i, b) in job.bands.iter().enumerate() {
        for (key, value) in
            [("bottom", Some(b.bottom)), ("top", Some(b.top)), ("left", b.left), ("right", b.right)]
        {
            value.into_iter().for_each(|v| far(format!("band.{i}.{key}"), v));
        }
    }
    job.movement_joints
        .iter()
        .enumerate()
        .for_each(|(i, j)| far(format!("movement_joint.{i}.at"), j.at));
    for (i, b) in job.bands.iter().enumerate() {
        let key = |side: &str| format!("band.{i}.{side}");
        out.extend(Fault::not_over((&key("top"), b.top), (&key("bottom"), b.bottom)));
        if let (Some(left), Some(right)) = (b.left, b.right) {
            out.extend(Fault::not_over((&key("right"), right), (&key("left"), left)));
        }
    }
    out
}
