//! What of the job's own walls, openings and names cannot be taken as it stands.

use std::collections::BTreeSet;

use super::by_hand::ring;
use super::fault::Fault;
use super::root::Job;
use crate::finding::job_value::ValueFault;
use crate::geom::polygon::{bounds, signed_area};

/// What cannot be taken.
pub(super) fn faults(job: &Job) -> Vec<Fault> {
    let walls = job.walls.iter().enumerate();
    let mut out: Vec<Fault> =
        walls.filter_map(|(i, w)| outline(format!("wall.{i}.outline"), &w.outline)).collect();
    let openings = job.openings.iter().enumerate();
    out.extend(openings.filter_map(|(i, o)| outline(format!("opening.{i}.outline"), &o.outline)));
    out.extend(names(job));
    out.extend(siding_layers(job));
    out
}

/// An outline that goes round nothing.
fn outline(key: String, points: &[[f64; 2]]) -> Option<Fault> {
    let keys = [key.clone(), key.rsplit_once('.').map_or_else(String::new, |k| k.0.to_owned())];
    if points.iter().flatten().any(|v| !v.is_finite()) {
        return Some(Fault::new(keys, ValueFault::NotFinite { key }));
    }
    let ring = ring(points);
    let flat = bounds(&ring).is_none_or(|b| b.width() <= 0.0 || b.height() <= 0.0);
    let around = ring.len() >= 3 && !flat && signed_area(&ring) != 0.0;
    let points = points.len();
    (!around).then(|| Fault::new(keys, ValueFault::OutlineEmpty { key, points }))
}

/// Names left out or joined, each once; one alone is joined to nothing.
fn names(job: &Job) -> Vec<Fault> {
    let mut out = Vec::new();
    let mut taken: BTreeSet<&str> = BTreeSet::new();
    let each = job.skip.iter().enumerate().map(|(i, n)| (format!("skip.{i}"), "skip", n));
    let joined = job.join.iter().enumerate().flat_map(|(i, list)| {
        list.iter().enumerate().map(move |(k, n)| (format!("join.{i}.{k}"), "join", n))
    });
    for (key, list, name) in each.chain(joined) {
        let keys = [key.clone(), list.to_owned()];
        if name.trim().is_empty() {
            out.push(Fault::new(keys, ValueFault::NameEmpty { key }));
        } else if !taken.insert(name) {
            out.push(Fault::new(keys, ValueFault::NamedTwice { key, name: name.clone() }));
        }
    }
    for (i, list) in job.join.iter().enumerate().filter(|(_, list)| list.len() < 2) {
        let key = format!("join.{i}");
        let keys = [key.clone(), "join".to_owned()];
        out.push(Fault::new(keys, ValueFault::JoinsNothing { key, names: list.len() }));
    }
    out
}

/// Layers of siding without a name.
fn siding_layers(job: &Job) -> Vec<Fault> {
    let given = job.elevation.iter().enumerate();
    given
        .filter(|(_, v)| v.siding_layer.as_ref().is_some_and(|l| l.trim().is_empty()))
        .map(|(i, _)| {
            let key = format!("elevation.{i}.siding_layer");
            Fault::new([key.clone()], ValueFault::NameEmpty { key })
        })
        .collect()
}
