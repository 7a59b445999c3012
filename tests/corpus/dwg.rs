//! DWG and DXF of one drawing, saved by other people: both read alike, entity by entity, whether layers
//! are shown apart (a converter of the house's sheets wrote every layer off).

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use lapwright::geom::flatten::path_points;
use lapwright::geom::vocabulary::Point;
use lapwright::model::drawing::{Drawing, Shape, Space};

use crate::{corpus, read};

/// Pairs of one drawing: DWG, DXF.
fn pairs() -> Vec<(PathBuf, PathBuf)> {
    let of = |dwg: &str, dxf: &str| (corpus().join(dwg), corpus().join(dxf));
    let sample = |version: &str, tail: &str| {
        let stem = format!("stress/acadsharp_MIT_sample_{version}");
        of(&format!("{stem}.dwg"), &format!("{stem}{tail}.dxf"))
    };
    vec![
        of("house/H1_south_east.dwg", "house/H1_south_east.dxf"),
        of("house/H2_north_west.dwg", "house/H2_north_west.dxf"),
        sample("AC1015", "_ascii"),
        sample("AC1018", ""),
        sample("AC1024", ""),
        sample("AC1032", "_ascii"),
    ]
}

/// Points to the ten-thousandth of a unit; a distance that far apart is the same in any drawing. Of points
/// on one another, as where an arc ends a bit off where it began, one.
fn places(points: impl IntoIterator<Item = Point>) -> String {
    let rounded = |v: f64| (v * 1e4).round() / 1e4 + 0.0;
    let mut out: Vec<String> =
        points.into_iter().map(|p| format!("{} {};", rounded(p.x), rounded(p.y))).collect();
    out.dedup();
    if out.len() > 1 && out.first() == out.last() {
        out.pop();
    }
    out.concat()
}

/// What is drawn, as text: sort, points, words.
fn sketch(shape: &Shape) -> String {
    let curve = |path| -> String {
        path_points(path, 0.01).into_iter().map(|(points, _)| places(points)).collect()
    };
    match shape {
        Shape::Polyline(line) => format!("line {} {}", line.closed, places(line.points(0.01))),
        Shape::Curve(path) => format!("curve {}", curve(path)),
        Shape::Hatch(hatch) => {
            let loops: String = hatch.loops.iter().map(curve).collect();
            let families: String = hatch
                .families
                .iter()
                .map(|f| {
                    let offset = Point::new(f.offset.0, f.offset.1);
                    format!("{:.4} {} {}", f.angle, places([f.base, offset]), f.dashes.len())
                })
                .collect();
            format!("hatch {} {} {loops} {families}", hatch.solid, hatch.pattern)
        }
        Shape::Text(t) => {
            format!("text {} {:.4} {:.4} {}", t.content, t.height, t.angle, places([t.at]))
        }
        Shape::Dimension(d) => format!(
            "dimension {} {:?} {:?}",
            places([d.from, d.to, d.line]),
            d.angle.map(|a| (a * 1e4).round() / 1e4),
            d.text
        ),
        Shape::Point(at) => format!("point {}", places([*at])),
        _ => "other".to_owned(),
    }
}

/// How many of each there are, by layer and space.
fn counted(drawing: &Drawing) -> BTreeMap<String, usize> {
    let mut out = BTreeMap::new();
    for item in &drawing.items {
        let sheet = matches!(item.space, Space::Paper(_));
        let layer = &drawing.layers[item.layer].name;
        *out.entry(format!("{layer} {sheet} {}", sketch(&item.shape))).or_insert(0) += 1;
    }
    out
}

fn of(path: &Path) -> Drawing {
    read(path).0.unwrap_or_else(|r| panic!("{}: {r:?}", path.display()))
}

#[test]
fn dwg_and_dxf_of_one_drawing_read_alike() {
    for (dwg, dxf) in pairs() {
        let (ours, theirs) = (of(&dwg), of(&dxf));
        assert!(ours.items.len() > 50, "{}: {} items", dwg.display(), ours.items.len());
        let (a, b) = (counted(&ours), counted(&theirs));
        let apart = |x: &BTreeMap<String, usize>, y: &BTreeMap<String, usize>| -> Vec<String> {
            x.iter()
                .filter(|(k, n)| y.get(*k) != Some(n))
                .map(|(k, n)| format!("{n} {k}"))
                .collect()
        };
        let (more, fewer) = (apart(&a, &b), apart(&b, &a));
        assert!(
            more.is_empty() && fewer.is_empty(),
            "{}: {} of {} only in the DWG, {} only in the DXF:\n{:.9000}\n---\n{:.9000}",
            dwg.display(),
            more.len(),
            ours.items.len(),
            fewer.len(),
            more.join("\n"),
            fewer.join("\n")
        );
        let names = |d: &Drawing| -> Vec<String> {
            let mut names: Vec<_> = d.layers.iter().map(|l| l.name.clone()).collect();
            names.sort();
            names
        };
        assert_eq!(names(&ours), names(&theirs), "{}", dwg.display());
        assert_eq!(ours.groups.len(), theirs.groups.len(), "{}", dwg.display());
        assert_eq!(ours.viewports.len(), theirs.viewports.len(), "{}", dwg.display());
        assert_eq!(ours.unit, theirs.unit, "{}", dwg.display());
    }
}

/// Files of every version changed at random end in a drawing or a named refusal.
#[test]
fn mutants_of_each_version_end_in_a_drawing_or_a_refusal() {
    for (dwg, _) in pairs() {
        let whole = std::fs::read(&dwg).unwrap();
        let (read, refused) = crate::dwgcase::mutants::run(&whole, 0..100);
        assert_eq!(read + refused, 100, "{}", dwg.display());
    }
}
