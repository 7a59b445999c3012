//! Bulges of polylines (`DrawingFact::Bulge`, `DrawingFact::Sagitta`, `Example::ArchedTops`), through
//! the reader and the whole program.

use lapwright::geom::flatten::{arc_of, bulge_points};
use lapwright::geom::vocabulary::Point;

use crate::support::{broken, inches, lay};

#[test]
fn radius_and_sagitta_of_wy_08_and_dr_06() {
    // DrawingFact::Bulge: bulge = tan(angle / 4): 90 degrees 0.414213562, 60 degrees 0.267949192, 180
    // degrees 1. DrawingFact::Sagitta: sagitta = |b| c / 2, radius = c (1 + b^2) / (4 |b|).
    for (degrees, bulge) in [(90.0, 0.414213562), (60.0, 0.267949192), (180.0, 1.0)] {
        for chord in [10.0, 36.0, 150.0] {
            for sign in [1.0, -1.0] {
                let (a, b) = (Point::new(3.0, 7.0), Point::new(3.0 + chord, 7.0));
                let (_, radius, _, sweep) = arc_of(a, b, sign * bulge).unwrap();
                assert!((sweep.to_degrees() - sign * degrees).abs() < 1e-6);
                assert!((radius - chord * (1.0 + bulge * bulge) / (4.0 * bulge)).abs() < 1e-9);
                let points = bulge_points(a, b, sign * bulge, 1e-4);
                // From left to right a positive bulge passes below its chord.
                let deep = points.iter().map(|p| (7.0 - p.y) * sign).fold(0.0, f64::max);
                assert!((deep - bulge * chord / 2.0).abs() < 1e-9, "{degrees}, {chord}: {deep}");
            }
        }
    }
    // Example::ArchedTops, as printed: 10 in chord: radius 7.0711, sagitta 2.0711.
    let (_, radius, ..) = arc_of(Point::new(0.0, 0.0), Point::new(10.0, 0.0), 0.414213562).unwrap();
    assert!((radius - 7.0711).abs() < 5e-5);
    assert!((0.414213562 * 10.0 / 2.0 - 2.0711f64).abs() < 5e-5);
}

/// A wall of 20 x 10 ft and a window 36 in wide, 24 in high under the springing, headed by a bulge.
fn window(bulge: f64) -> String {
    let mut out = String::from("0\nSECTION\n2\nENTITIES\n");
    let ring = |layer: &str, points: &[(f64, f64, f64)]| {
        let mut s = format!("0\nPOLYLINE\n8\n{layer}\n66\n1\n70\n1\n");
        for (x, y, b) in points {
            s.push_str(&format!("0\nVERTEX\n8\n{layer}\n10\n{x}\n20\n{y}\n42\n{b}\n"));
        }
        s + "0\nSEQEND\n"
    };
    let wall = [(0.0, 0.0, 0.0), (240.0, 0.0, 0.0), (240.0, 120.0, 0.0), (0.0, 120.0, 0.0)];
    out.push_str(&ring("A-WALL-OTLN", &wall));
    let head = [(100.0, 40.0, 0.0), (136.0, 40.0, 0.0), (136.0, 64.0, bulge), (100.0, 64.0, 0.0)];
    out.push_str(&ring("A-GLAZ", &head));
    out + "0\nENDSEC\n0\nEOF\n"
}

#[test]
fn a_window_headed_by_a_bulge_takes_its_segment_of_the_circle() {
    // Example::ArchedTops: 36 wide, bulge 1: radius 18, half a circle of 508.94 sq in = 3.534 sq ft.
    // For others the segment: r^2 (t - sin t) / 2.
    for (bulge, sagitta) in [(1.0, 18.0), (0.414213562, 7.456), (0.267949192, 4.823)] {
        let l = lay(window(bulge).as_bytes(), &inches());
        let w = &l.elevations[0].walls[0];
        let o = &w.openings[0];
        assert!((o.head - 64.0 - sagitta).abs() < 0.001, "{bulge}: {}", o.head);
        let (r, t) = (18.0 * (1.0 + bulge * bulge) / (2.0 * bulge), 4.0 * bulge.atan());
        let segment = r * r * (t - t.sin()) / 2.0;
        if bulge == 1.0 {
            assert!((segment - 508.94f64).abs() < 0.005 && (segment / 144.0 - 3.534).abs() < 5e-4);
        }
        let taken = (w.gross_area - w.net_area) * 144.0 - 36.0 * 24.0;
        // Chords within 1/64 in of the curve lose less than that along it.
        let along = r * t;
        assert!(taken <= segment + 0.02 && taken > segment - along / 64.0, "{bulge}: {taken}");
        assert_eq!(broken(&l), Vec::<String>::new(), "{bulge}");
    }
}
