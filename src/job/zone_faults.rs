//! Zones that say too little.

use super::around::WIDEST;
use super::fault::Fault;
use super::root::Job;
use super::zones::{Zone, ZoneRegion};
use crate::finding::job_value::ValueFault;

/// Zones that say too little.
pub(super) fn faults(job: &Job) -> Vec<Fault> {
    let mut out = Vec::new();
    for (i, z) in job.zone.iter().enumerate() {
        out.extend(unclear(job, i, z));
        out.extend(z.regions.iter().enumerate().flat_map(|(k, r)| faults_of(r, i, k)));
    }
    out
}

/// What a zone leaves open: its name, its place, what covers it.
fn unclear(job: &Job, i: usize, z: &Zone) -> Vec<Fault> {
    let mut out = Vec::new();
    let mut fault = |key: &str, make: &dyn Fn(String) -> ValueFault| {
        let key = format!("zone.{i}.{key}");
        out.push(Fault::new([key.clone(), "zone".to_owned()], make(key)));
    };
    let nameless = z.name.trim().is_empty();
    let taken = job.zone[..i].iter().any(|o| o.name.eq_ignore_ascii_case(&z.name));
    if nameless {
        fault("name", &|key| ValueFault::NameEmpty { key });
    } else if taken {
        fault("name", &|key| ValueFault::NameTwice { key, name: z.name.clone() });
    }
    let nowhere = z.layers.is_empty() && z.regions.is_empty();
    if nowhere || z.layers.iter().any(|l| l.trim().is_empty()) {
        fault("layers", &|key| ValueFault::ZoneNowhere { key });
    }
    if !z.stocks.is_empty() && z.product.is_none() {
        let other = format!("zone.{i}.product");
        fault("stock", &|key| ValueFault::NeedsOther { key, other: other.clone() });
    }
    match (z.cladding.trim().is_empty(), z.product.is_some()) {
        (true, false) => fault("cladding", &|key| ValueFault::ZoneUnclad { key }),
        (false, true) => {
            let other = format!("zone.{i}.product");
            fault("cladding", &|key| ValueFault::OneTooMany { key, other: other.clone() });
        }
        _ => {}
    }
    out
}

/// A region that is none, or is farther out than any wall.
fn faults_of(r: &ZoneRegion, zone: usize, region: usize) -> Vec<Fault> {
    let key = |side: &str| format!("zone.{zone}.region.{region}.{side}");
    let sides = [("left", r.left), ("right", r.right), ("bottom", r.bottom), ("top", r.top)];
    let mut out: Vec<Fault> = sides
        .into_iter()
        .filter_map(|(side, v)| Fault::out_of_range(&key(side), v?, -WIDEST, WIDEST))
        .collect();
    let [left, bottom, right, top] = r.sides();
    out.extend(Fault::not_over((&key("right"), right), (&key("left"), left)));
    out.extend(Fault::not_over((&key("top"), top), (&key("bottom"), bottom)));
    if sides.iter().all(|(_, v)| v.is_none()) {
        let key = format!("zone.{zone}.region.{region}");
        let keys = [format!("zone.{zone}.region"), "zone".to_owned()];
        out.push(Fault::new(keys, ValueFault::ZoneRegionWhole { key }));
    }
    out
}
