//! A curve with more points than a list can tell is drawn full size.

use lapwright::annotate;
use lapwright::job::paper::PAPERS;
use lapwright::layout::Layout;
use lapwright::layout::backdrop::Backdrops;
use lapwright::model::drawing::Shape;

use crate::sheets::{legible, texts};
use crate::support::{broken, dxf, inches, lay, rect};

/// A window under a wave of 3 in: 240 in of its head lie in one course, marked every quarter inch or
/// nearer.
fn waves() -> Layout {
    let mut ring = vec![(30.0, 24.0), (270.0, 24.0)];
    ring.extend((0..=1920).map(|i| {
        let x = 270.0 - f64::from(i) / 8.0;
        (x, 60.0 + 1.5 * (x / 3.0 * std::f64::consts::TAU).sin())
    }));
    let mut job = inches();
    job.courses.datum = Some(0.0);
    job.product.length = 320.0;
    job.product.end_gap = Some(0.25);
    let d = dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 300.0, 96.0)), ("A-GLAZ", &ring)]);
    lay(d.as_bytes(), &job)
}

#[test]
fn a_curve_of_more_points_than_a_column_holds_is_a_full_size_pattern() {
    let mut layout = waves();
    assert_eq!(broken(&layout), Vec::<String>::new());
    let contours = layout.pieces().flat_map(|(.., p)| &p.notches).filter_map(|n| n.contour.clone());
    let longest = contours.max_by_key(|c| c.points.len()).unwrap();
    assert!(longest.points.len() > 900, "{} points", longest.points.len());
    for paper in PAPERS {
        layout.job.sheet.paper = paper.name.to_owned();
        let sheets = annotate::sheets(&layout, &Backdrops::default());
        let cutting: Vec<_> =
            sheets.iter().filter(|s| s.title.starts_with("Cutting sheet")).collect();
        cutting.iter().for_each(|s| legible(paper.name, s));
        let words: Vec<&str> =
            cutting.iter().flat_map(|s| texts(s)).map(|t| t.content.as_str()).collect();
        let said = words.join(" ").contains("full-size pattern");
        assert!(said, "{}", paper.name);
        // Pages of the pattern overlap: together they show at least the curve's whole length.
        let length = |line: &[(f64, f64)]| -> f64 {
            line.windows(2).map(|q| (q[1].0 - q[0].0).hypot(q[1].1 - q[0].1)).sum()
        };
        let whole = length(&longest.points.iter().map(|q| (q[0], q[1])).collect::<Vec<_>>());
        let mut drawn = 0.0;
        for s in sheets.iter().filter(|s| s.title.starts_with("Curve pattern")) {
            legible(paper.name, s);
            let walls = s.drawing.layers.iter().position(|l| l.name == "walls").unwrap();
            for i in s.drawing.items.iter().filter(|i| i.layer == walls) {
                if let Shape::Polyline(p) = &i.shape {
                    let line: Vec<_> = p.vertices.iter().map(|v| (v.at.x, v.at.y)).collect();
                    drawn += length(&line);
                }
            }
        }
        assert!(drawn > whole - 0.1, "{}: {drawn} of {whole} in", paper.name);
    }
}
