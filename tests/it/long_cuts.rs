//! A cut with more points to mark than a column of its sheet holds goes on in the next one.

use lapwright::annotate;
use lapwright::job::paper::PAPERS;
use lapwright::layout::Layout;
use lapwright::layout::backdrop::Backdrops;

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
fn a_list_of_points_longer_than_a_column_goes_on_in_the_next() {
    let mut layout = waves();
    assert_eq!(broken(&layout), Vec::<String>::new());
    let contours = layout.pieces().flat_map(|(.., p)| &p.notches).filter_map(|n| n.contour.clone());
    let longest = contours.max_by_key(|c| c.points.len()).unwrap();
    assert!(longest.points.len() > 900, "{} points", longest.points.len());
    let style = layout.job.sheet.lengths;
    let wanted: Vec<String> = longest
        .points
        .iter()
        .map(|q| format!("{} / {}", style.short(q[0]), style.short(q[1])))
        .collect();
    for paper in PAPERS {
        layout.job.sheet.paper = paper.name.to_owned();
        let sheets = annotate::sheets(&layout, &Backdrops::default());
        let cutting = sheets.iter().filter(|s| s.title.starts_with("Cutting sheet"));
        let mut words = Vec::new();
        for s in cutting {
            legible(paper.name, s);
            let between =
                |t: &&str| !t.ends_with("continued") && *t != "continued after this column";
            words.extend(texts(s).map(|t| t.content.as_str()).filter(between));
        }
        let all = words.join(" ");
        let list = all
            .split("from left / from bottom: ")
            .find(|l| l.matches(" / ").count() >= wanted.len());
        let list = list.unwrap_or_else(|| panic!("{}: no list holds every point", paper.name));
        let mut rest = list;
        for point in &wanted {
            let at = rest.find(point.as_str());
            let at = at.unwrap_or_else(|| panic!("{}: {point} is missing", paper.name));
            rest = &rest[at + point.len()..];
        }
    }
}
