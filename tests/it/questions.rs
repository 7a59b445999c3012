//! What is asked of the architect about a house that is laid out. Reckoned by hand.

use std::fmt::Write;

use lapwright::finding::laying::LayingFinding;
use lapwright::finding::{FindingKind, Findings};
use lapwright::job::file as job_file;
use lapwright::model::receiver::BareBy;
use lapwright::pipeline;

use crate::support::{dxf, rect};

const JOB: &str = "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n[courses]\ndatum = 0\n";

/// What is found of a drawing, and the sheets that come of it.
fn asked(rings: &[(&str, &[(f64, f64)])], job: &str) -> (Vec<LayingFinding>, String) {
    let mut findings = Findings::default();
    let job = job_file::parse(&format!("{JOB}{job}"), "job").unwrap();
    let drawing = dxf(rings);
    let sets =
        pipeline::layout(drawing.as_bytes(), "t.dxf", &job, &mut findings, &mut |_| {}).unwrap();
    let laying = findings.all().iter().filter_map(|f| match &f.kind {
        FindingKind::Laying(l) => Some(l.clone()),
        _ => None,
    });
    let sheets = lapwright::annotate::sheets(&sets.house.layout, &sets.house.backdrops);
    (laying.collect(), sheets.iter().map(lapwright::write::svg::document).collect())
}

fn bare(found: &[LayingFinding]) -> Vec<(BareBy, f64)> {
    let bare = found.iter().filter_map(|f| match f {
        LayingFinding::WallBare { by, area, .. } => Some((*by, *area)),
        _ => None,
    });
    bare.collect()
}

#[test]
fn wall_between_the_start_and_grade_is_asked_about_and_named_on_the_sheet() {
    // As in `bare_wall.rs`: 30 sq ft under steps of 8 in at grade that rises 24 in along 360.
    let wall = rect(0.0, 0.0, 360.0, 104.0);
    let grade = [(0.0, -10.0), (360.0, 14.0), (180.0, 2.0)];
    let (found, sheets) = asked(&[("A-WALL-OTLN", &wall), ("C-TOPO-PROF", &grade)], "");
    let [(BareBy::NearGrade, area)] = bare(&found)[..] else { panic!("{found:?}") };
    assert!((area - 30.0).abs() < 0.02, "{area}");
    assert!(sheets.contains("no siding"));
    // Level ground far below asks nothing.
    let (found, sheets) = asked(&[("A-WALL-OTLN", &wall)], "");
    assert!(bare(&found).is_empty() && !sheets.contains("no siding"));
}

#[test]
fn wall_behind_a_roof_is_asked_about() {
    // 120 x 30 in of roof before the wall: 25 sq ft. A clearance over it is flashed, and asks nothing.
    let (found, sheets) = asked(
        &[
            ("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 96.0)),
            ("A-ROOF-OTLN", &rect(60.0, 40.0, 180.0, 70.0)),
        ],
        "",
    );
    let [(BareBy::BehindRoof, area)] = bare(&found)[..] else { panic!("{found:?}") };
    assert!((area - 25.0).abs() < 0.02, "{area}");
    assert!(sheets.contains("no siding"));
}

#[test]
fn a_post_that_runs_down_past_stone_is_asked_about_where_the_stone_does_not_turn_the_corner() {
    // Stone 30 in high on the front; on the right side as high, or none.
    let past = |stone_right: bool| -> Vec<f64> {
        let boxes = [rect(0.0, 0.0, 240.0, 96.0), rect(2000.0, 0.0, 2240.0, 96.0)];
        let stone = [rect(0.0, 0.0, 240.0, 30.0), rect(2000.0, 0.0, 2240.0, 30.0)];
        let mut rings: Vec<(&str, &[(f64, f64)])> =
            boxes.iter().map(|b| ("A-WALL-OTLN", &b[..])).collect();
        rings.push(("A-WALL-BASE", &stone[0]));
        if stone_right {
            rings.push(("A-WALL-BASE", &stone[1]));
        }
        let mut job = String::new();
        for (name, x) in [("FRONT", 0), ("RIGHT", 2000)] {
            let region = format!("[{}.0, -500.0, {}.0, 900.0]", x - 500, x + 1400);
            let _ = write!(job, "[[elevation]]\nname = \"{name}\"\nregion = {region}\n");
        }
        let found = asked(&rings, &job).0;
        let posts = found.iter().filter_map(|f| match f {
            LayingFinding::PostPastStone { by, .. } => Some(*by),
            _ => None,
        });
        posts.collect()
    };
    // Siding of the right side starts at the floor, that of the front on the stone's top, 30 in up.
    let [by] = past(false)[..] else { panic!("{:?}", past(false)) };
    assert!((by - 30.0).abs() < 1.0, "{by}");
    assert!(past(true).is_empty());
}
