//! Drawings without wall outlines: siding hatches, and loose lines in Shift-JIS, against areas by
//! shapely.

use std::fs;
use std::path::Path;

use lapwright::finding::Findings;
use lapwright::job::file as job_file;
use lapwright::layout::Layout;
use lapwright::layout::wall::LaidElevation;
use lapwright::pipeline;
use serde_json::Value;

use crate::venv::python;

fn lay(path: &Path, job: &str) -> Layout {
    let job = job_file::parse(job, "job").unwrap();
    let bytes = fs::read(path).unwrap();
    pipeline::layout(&bytes, "d.dxf", &job, &mut Findings::default(), &mut |_| {})
        .unwrap()
        .house
        .layout
}

/// Within 0.01 %, and every opening found.
fn agrees(layout: &Layout, e: &LaidElevation, truth: &Value) {
    let elevation = &e.name;
    let [w] = &e.walls[..] else { panic!("{elevation}: {} walls", e.walls.len()) };
    for (got, key) in [(w.gross_area, "gross"), (w.net_area + w.bare_area(), "net")] {
        let wanted = truth[key].as_f64().unwrap();
        assert!((got - wanted).abs() <= 1e-4 * wanted, "{elevation} {key}: {got} for {wanted}");
    }
    assert_eq!(w.openings.len() as u64, truth["openings"].as_u64().unwrap(), "{elevation}");
    assert!(layout.verify.rules.iter().all(|r| r.violations.is_empty()), "{elevation}");
}

#[test]
fn walls_from_hatches_and_from_loose_lines_have_the_areas_shapely_gives() {
    let dir = tempfile::tempdir().unwrap();
    python("tests/samples/raw_ways.py", &[dir.path()]);
    let text = fs::read_to_string(dir.path().join("truth.json")).unwrap();
    let truth: Value = serde_json::from_str(&text).unwrap();

    // Holes, a notch at a door and a keyhole slit; titles stand on the sheet; the plan is left alone.
    let hatched = lay(&dir.path().join("hatched.dxf"), "");
    let sides = truth["hatched"].as_object().unwrap();
    assert_eq!(hatched.elevations.len(), sides.len());
    for (name, t) in sides {
        let all: Vec<_> = hatched.elevations.iter().map(|e| e.name.to_string()).collect();
        let e = hatched.elevations.iter().find(|e| e.name == *name);
        agrees(&hatched, e.unwrap_or_else(|| panic!("{name} is not among {all:?}")), t);
    }

    let job = "[drawing]\nunit = 'mm'\n[layers]\nwall = ['外壁']\nwindow = ['建具']";
    let loose = lay(&dir.path().join("lines_sjis.dxf"), job);
    let fronts = truth["lines_sjis"].as_array().unwrap();
    assert_eq!(loose.elevations.len(), fronts.len());
    // Without a title, or with one in another script, they are told apart by their place.
    for (e, t) in loose.elevations.iter().zip(fronts) {
        agrees(&loose, e, t);
    }
}
