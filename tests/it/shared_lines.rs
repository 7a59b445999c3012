//! One grade line and one level line drawn under a row of elevations: each view has its part of them.

use lapwright::finding::Findings;
use lapwright::layout::Layout;
use lapwright::model::seam::Effort;
use lapwright::pipeline;

use crate::support::{broken, dxf, inches, rect};

fn open(layer: &str, points: &[(f64, f64)]) -> String {
    let mut out = format!("0\nPOLYLINE\n8\n{layer}\n66\n1\n70\n0\n");
    for (x, y) in points {
        out += &format!("0\nVERTEX\n8\n{layer}\n10\n{x}\n20\n{y}\n");
    }
    out + "0\nSEQEND\n"
}

fn drawn(walls: &[[(f64, f64); 4]], lines: &str) -> (Layout, Findings) {
    let walls: Vec<(&str, &[(f64, f64)])> = walls.iter().map(|w| ("A-WALL-OTLN", &w[..])).collect();
    let end = "0\nENDSEC\n0\nEOF\n";
    let text = dxf(&walls).replace(end, &format!("{lines}{end}"));
    let mut job = inches();
    job.seams.effort = Effort::Crew;
    let mut findings = Findings::default();
    let laid = pipeline::layout(text.as_bytes(), "d.dxf", &job, &mut findings, &mut |_| {});
    (laid.unwrap().house.layout, findings)
}

fn unused(findings: &Findings) -> Vec<String> {
    let told = findings.all().iter().filter(|f| f.code().word() == "drawn-unused");
    told.map(crate::support::said).collect()
}

#[test]
fn each_view_has_its_part_of_a_line_drawn_across_three() {
    // Three walls 240 by 120, 200 apart, on one base. Grade lies 30 in under the first, rises from 30 to 6
    // under it along the second and goes on at that. The level line is 12 in over the base.
    let walls = [0.0, 440.0, 880.0].map(|x| rect(x, 0.0, x + 240.0, 120.0));
    let grade = [(-50.0, -30.0), (440.0, -30.0), (680.0, -6.0), (1200.0, -6.0)];
    let lines =
        open("C-TOPO-PROF", &grade) + &open("A-FLOR-LEVL", &[(-50.0, 12.0), (1200.0, 12.0)]);
    let (l, findings) = drawn(&walls, &lines);
    assert_eq!(broken(&l), Vec::<String>::new());
    assert_eq!(unused(&findings), Vec::<String>::new());
    assert!(findings.all().iter().all(|f| f.code().word() != "level-assumed"));
    let at = |view: usize, x: f64| {
        let g = &l.elevations[view].grade;
        let pair = g.windows(2).find(|p| p[0][0] <= x && x <= p[1][0]).unwrap();
        pair[0][1] + (x - pair[0][0]) / (pair[1][0] - pair[0][0]) * (pair[1][1] - pair[0][1])
    };
    // Heights are over the level line.
    assert!([0.0, 120.0, 240.0].iter().all(|x| at(0, *x) == -42.0));
    assert!([(0.0, -42.0), (120.0, -30.0), (240.0, -18.0)].iter().all(|(x, y)| at(1, *x) == *y));
    assert!([0.0, 240.0].iter().all(|x| at(2, *x) == -18.0));
    let feet = l.elevations.iter().map(|e| e.walls[0].outline.iter().map(|p| p[1]));
    assert!(feet.map(|ys| ys.fold(f64::MAX, f64::min)).all(|y| y == -12.0));
}

#[test]
fn the_end_of_a_neighbors_line_is_none_of_a_view() {
    // The grade of the first wall runs on for 130 in, 30 of them into the part of the second view, whose
    // wall stands 100 in off.
    let walls = [rect(0.0, 0.0, 240.0, 120.0), rect(340.0, 0.0, 580.0, 120.0)];
    let (l, _) = drawn(&walls, &open("C-TOPO-PROF", &[(-50.0, -20.0), (370.0, -20.0)]));
    assert!(!l.elevations[0].grade.is_empty());
    assert!(l.elevations[1].grade.is_empty());
}
