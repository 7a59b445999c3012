//! Pieces that end under a level board and beside a slope: a plain rip with an end cut to the slope. Places by hand.

use lapwright::finding::Findings;
use lapwright::job::file as job_file;
use lapwright::layout::Layout;
use lapwright::layout::piece::Piece;
use lapwright::pipeline;

use crate::smallcase::{JOB, Side, drawing, rect};
use crate::support::broken;

/// A gable 20 ft wide, 96 in high at its eaves, under slopes of so many in 12, with a board across from 110 to 118.
fn gable(pitch: f64) -> String {
    let outline =
        vec![(0.0, 0.0), (240.0, 0.0), (240.0, 96.0), (120.0, 96.0 + 10.0 * pitch), (0.0, 96.0)];
    drawing(&[Side {
        title: "FRONT ELEVATION".to_owned(),
        width: 240.0,
        rings: vec![("A-WALL-OTLN", outline), ("A-WALL-BAND", rect(0.0, 110.0, 240.0, 118.0))],
    }])
}

fn laid(text: &str, more: &str) -> Layout {
    let job = job_file::parse(&format!("{JOB}{more}"), "job").unwrap();
    let mut findings = Findings::default();
    let sets = pipeline::layout(text.as_bytes(), "t.dxf", &job, &mut findings, &mut |_| {});
    sets.unwrap_or_else(|e| panic!("{e:?} {findings:?}")).house.layout
}

/// Pieces of the course whose butt line stands there.
fn course(layout: &Layout, bottom: f64) -> Vec<&Piece> {
    let all = layout.walls().flat_map(|(_, w)| &w.courses);
    let at = all.filter(|c| (c.bottom - bottom).abs() < 1e-6);
    at.flat_map(|c| &c.runs).flat_map(|r| &r.pieces).collect()
}

#[test]
fn under_a_board_in_a_gable_panels_are_ripped_and_raked_without_a_point() {
    for pitch in [3.0, 4.0, 5.0, 6.0, 8.0, 12.0] {
        let layout = laid(&gable(pitch), "[courses]\ndatum = 0\n");
        assert_eq!(broken(&layout), Vec::<String>::new(), "{pitch}");
        let pieces = course(&layout, 104.0);
        assert!(!pieces.is_empty());
        for p in &pieces {
            // 1/4 in of room under the board, which is 6 in over the butt line.
            let top = p.outline.iter().map(|q| q[1]).fold(0.0, f64::max);
            assert!((top - 109.75).abs() < 0.01, "{pitch}: {top}");
            assert!(p.notches.is_empty(), "{pitch}: {:?}", p.notches);
        }
        // The slope is 8 in farther in for every `pitch` x 8 / 12 in up; siding stands 1/4 in inside it.
        let ends = |x: f64| {
            let corners = pieces.iter().flat_map(|p| &p.outline);
            corners.filter(|q| (q[0] - x).abs() < 0.01).count()
        };
        let slope = |y: f64| (y - 96.0) * 12.0 / pitch + 0.25;
        for x in [slope(104.0), slope(109.75), 240.0 - slope(104.0), 240.0 - slope(109.75)] {
            assert_eq!(
                ends(x),
                1,
                "{pitch}: {x} {:?}",
                pieces.iter().map(|p| &p.outline).collect::<Vec<_>>()
            );
        }
    }
}

/// A wall that starts level at 3 in over its floor line and then up along a porch roof of 4 in 12.
#[test]
fn over_the_foot_of_a_roof_panels_are_ripped_and_raked_without_a_point() {
    let outline = vec![(0.0, 3.0), (120.0, 3.0), (240.0, 43.0), (240.0, 96.0), (0.0, 96.0)];
    let text = drawing(&[Side {
        title: "FRONT ELEVATION".to_owned(),
        width: 240.0,
        rings: vec![("A-WALL-OTLN", outline)],
    }]);
    let layout = laid(&text, "[courses]\ndatum = 0\nclear_of_roof = 0\n");
    assert_eq!(broken(&layout), Vec::<String>::new());
    for p in course(&layout, 0.0) {
        assert!(p.notches.is_empty(), "{:?} {:?}", p.notches, p.outline);
        assert!(p.outline.len() <= 5, "{:?}", p.outline);
    }
}
