//! What is asked of the architect about a house that is laid out. Reckoned by hand.

use std::fmt::Write;

use lapwright::finding::house::{HouseFinding, ShortOf};
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

/// A wall of 20 ft by 8 ft whose foot is cut around a chair 28 in wide and 30 in high, by six slants.
pub(crate) const CHAIR: [(f64, f64); 11] = [
    (0.0, 0.0),
    (100.0, 0.0),
    (103.0, 15.0),
    (107.0, 27.0),
    (112.0, 30.0),
    (118.0, 30.0),
    (123.0, 26.0),
    (126.0, 12.0),
    (128.0, 0.0),
    (240.0, 0.0),
    (240.0, 96.0),
];

#[test]
fn a_foot_cut_around_a_chair_is_asked_about_and_takes_no_full_size_patterns() {
    let mut wall = CHAIR.to_vec();
    wall.push((0.0, 96.0));
    let ragged = |found: &[LayingFinding]| -> Vec<(usize, [f64; 2])> {
        let of = found.iter().filter_map(|f| match f {
            LayingFinding::RaggedFoot { edges, size, .. } => Some((*edges, *size)),
            _ => None,
        });
        of.collect()
    };
    let (found, sheets) = asked(&[("A-WALL-OTLN", &wall)], "");
    let [(edges, [wide, high])] = ragged(&found)[..] else { panic!("{found:?}") };
    assert_eq!(edges, 6);
    // The clearance of the siding over a slope is in it, 1/2 in a side and a little more along steep ones.
    assert!((wide - 28.0).abs() < 1.25 && (high - 30.0).abs() < 1.0, "{wide} x {high}");
    assert!(!sheets.contains("Lower roof pattern, 7.2 in 12"));
    // The two slopes of a porch roof are none.
    let (front, porch) =
        (rect(0.0, 0.0, 240.0, 96.0), [(60.0, 40.0), (120.0, 60.0), (180.0, 40.0)]);
    let (found, sheets) = asked(&[("A-WALL-OTLN", &front), ("A-ROOF-OTLN", &porch)], "");
    assert_eq!(ragged(&found), []);
    assert!(sheets.contains("Lower roof pattern, 4 in 12"));
}

#[test]
fn siding_that_stops_short_of_roof_or_wall_is_asked_about() {
    let short = |rings: &[(&str, &[(f64, f64)])]| -> Vec<(ShortOf, f64, f64)> {
        let mut findings = Findings::default();
        let job = job_file::parse(JOB, "job").unwrap();
        pipeline::layout(dxf(rings).as_bytes(), "t.dxf", &job, &mut findings, &mut |_| {}).unwrap();
        let asked = findings.all().iter().filter_map(|f| match &f.kind {
            FindingKind::House(HouseFinding::SidingStopsShort {
                short_of, width, length, ..
            }) => Some((*short_of, *width, *length)),
            _ => None,
        });
        asked.collect()
    };
    let wall = rect(0.0, 0.0, 240.0, 96.0);
    // A roof line 6 in over the whole top of 20 ft; at the top, or 30 in over it, nothing is asked.
    let under = |y: f64| {
        let roof = rect(-12.0, y, 252.0, 150.0);
        short(&[("A-WALL-OTLN", &wall), ("A-ROOF-OTLN", &roof)])
    };
    assert_eq!(under(102.0), [(ShortOf::Roof, 6.0, 240.0)]);
    assert!(under(96.0).is_empty() && under(126.0).is_empty() && under(90.0).is_empty());
    // A band drawn in the strip closes it.
    let (roof, band) = (rect(-12.0, 102.0, 252.0, 150.0), rect(0.0, 96.0, 240.0, 102.0));
    let closed = [("A-WALL-OTLN", &wall[..]), ("A-ROOF-OTLN", &roof), ("A-WALL-BAND", &band)];
    assert!(short(&closed).is_empty());
    // A gable's rake, 4 in 12 over 120 in, under a roof whose line runs 3 in over it, square to the slope:
    // 120 x sqrt(1 + 1/9) = 126.49 in long.
    let gable = [(0.0, 0.0), (240.0, 0.0), (240.0, 96.0), (120.0, 136.0), (0.0, 96.0)];
    let up = 3.0 * (10.0f64 / 9.0).sqrt();
    let roof =
        [(0.0, 96.0 + up), (120.0, 136.0 + up), (240.0, 96.0 + up), (240.0, 200.0), (0.0, 200.0)];
    let [one, other] = short(&[("A-WALL-OTLN", &gable), ("A-ROOF-OTLN", &roof)])[..] else {
        panic!()
    };
    for (of, width, length) in [one, other] {
        assert_eq!(of, ShortOf::Roof);
        assert!((width - 3.0).abs() < 0.01 && (length - 126.49).abs() < 1.5, "{width} {length}");
    }
    // Two walls 4 in apart; 30 in apart is none of its business.
    let beside =
        |x: f64| short(&[("A-WALL-OTLN", &wall), ("A-WALL-OTLN", &rect(x, 0.0, x + 120.0, 90.0))]);
    assert_eq!(beside(244.0), [(ShortOf::Wall, 4.0, 90.0)]);
    assert!(beside(270.0).is_empty());
}
