//! Every name that a finding uses can be pasted into the job: it is known where the job takes such names.

use lapwright::finding::{Finding, Findings};
use lapwright::job::{Job, file as job_file};
use lapwright::pipeline;
use serde_json::Value;

use crate::support::{dxf, job, rect, samples};

/// Names in a finding, by the key they stand under.
fn names(v: &Value, key: &str, out: &mut Vec<(String, String)>) {
    match v {
        Value::String(s) => out.push((key.to_owned(), s.clone())),
        Value::Array(list) => list.iter().for_each(|v| names(v, key, out)),
        Value::Object(map) => map.iter().for_each(|(k, v)| names(v, k, out)),
        _ => {}
    }
}

/// Codes that say of a name that there is none.
const UNKNOWN: [&str; 6] = [
    "wall-unknown",
    "part-unknown",
    "return-corner-unknown",
    "angled-unknown",
    "siding-layer-empty",
    "given-outside",
];

/// Settings that take a name of this sort, the name pasted.
fn pasted(code: &str, key: &str, name: &str) -> Vec<String> {
    let name = job_file::quoted(name);
    match key {
        "wall" | "walls" | "opening" | "fixture" => vec![format!("skip = [{name}]\n")],
        "elevation" | "elevations" | "view" => vec![
            format!("[[elevation]]\nname = {name}\nskip = true\n"),
            format!("[[band]]\nelevation = {name}\nbottom = 0\ntop = 1\n"),
        ],
        "corner" | "others" if code == "return-not-drawn" => {
            vec![format!("[[return]]\ncorner = {name}\nwidth = 24\n")]
        }
        "layer" => vec![format!("[layers]\nignore = [{name}]\n")],
        _ => Vec::new(),
    }
}

fn read(bytes: &[u8], job: &Job) -> Findings {
    let mut found = Findings::default();
    if let Err(stop) = pipeline::reading(bytes, "t.dxf", job, &mut found)
        && !found.all().contains(&stop.0)
    {
        found.push(*stop.0);
    }
    found
}

/// The job with what a fragment sets.
fn with(job: &Job, fragment: &str) -> Job {
    let more = job_file::parse(fragment, "pasted").unwrap_or_else(|e| panic!("{fragment}: {e:?}"));
    let mut out = job.clone();
    out.skip.extend(more.skip);
    out.elevation.extend(more.elevation);
    out.bands.extend(more.bands);
    out.returns.extend(more.returns);
    for (role, layers) in more.layers {
        out.layers.entry(role).or_default().extend(layers);
    }
    out
}

#[test]
fn every_name_a_finding_uses_can_be_pasted_into_the_job() {
    let small = |rings: &[(&str, &[(f64, f64)])]| dxf(rings).into_bytes();
    let inch = job_file::parse("[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n", "j");
    let inch = inch.unwrap();
    let mut all: Vec<(String, Vec<u8>, Job)> = samples()
        .into_iter()
        .filter(|(stem, _)| ["one-window", "metric"].contains(&stem.as_str()))
        .map(|(stem, path)| {
            let mut job = job(&path);
            job.seams.effort = lapwright::model::seam::Effort::Crew;
            (stem, std::fs::read(path).unwrap(), job)
        })
        .collect();
    let wall = "A-WALL-OTLN";
    let overlapping = small(&[
        (wall, &rect(0.0, 0.0, 240.0, 96.0)),
        (wall, &rect(120.0, 0.0, 360.0, 96.0)),
        ("X-ODD", &rect(0.0, 0.0, 9.0, 9.0)),
    ]);
    all.push(("overlapping".to_owned(), overlapping, inch.clone()));
    // A wall so narrow that posts cover it, a lower one, and a window over its edge.
    let odd = small(&[
        (wall, &rect(0.0, 0.0, 5.0, 96.0)),
        (wall, &rect(5.0, 0.0, 240.0, 110.0)),
        (wall, &rect(900.0, 0.0, 1200.0, 96.0)),
        ("A-GLAZ", &rect(220.0, 30.0, 250.0, 70.0)),
    ]);
    all.push(("odd".to_owned(), odd, inch));
    let mut tried = 0;
    for (stem, bytes, job) in &all {
        let mut findings = Findings::default();
        let _ = pipeline::layout(bytes, "t.dxf", job, &mut findings, &mut |_| {});
        let mut list: Vec<Finding> = findings.all().to_vec();
        list.extend(read(bytes, job).all().iter().cloned());
        let mut fragments: Vec<String> = Vec::new();
        for f in &list {
            let mut found = Vec::new();
            names(&serde_json::to_value(f).unwrap(), "", &mut found);
            let code = f.code().word();
            fragments.extend(found.iter().flat_map(|(key, name)| pasted(code, key, name)));
        }
        fragments.sort();
        fragments.dedup();
        for fragment in fragments {
            let found = read(bytes, &with(job, &fragment));
            let odd = found.all().iter().find(|f| UNKNOWN.contains(&f.code().word()));
            assert!(odd.is_none(), "{stem}: {fragment} gives {odd:?}");
            tried += 1;
        }
    }
    // Walls, elevations, corners, layers.
    assert!(tried >= 20, "{tried}");
}
