//! Drawings the program did not make, against what their designer knows of them (areas by shapely):
//! the second set, and random houses.

use std::fs;
use std::path::{Path, PathBuf};

use lapwright::finding::Findings;
use lapwright::job::file as job_file;
use lapwright::layout::Layout;
use lapwright::model::house::{EdgeKind, OpeningKind};
use lapwright::model::item::SidingPiece;
use lapwright::model::seam::Effort;
use lapwright::pipeline;
use serde::Deserialize;

use crate::venv::python;

/// Truth of a drawing; `_about` in the file says what each figure is.
#[derive(Deserialize)]
struct Truth {
    elevations: Vec<Elevation>,
    starter: Starter,
}

#[derive(Deserialize)]
struct Elevation {
    name: Option<String>,
    walls: Vec<Wall>,
    grade: Vec<[f64; 2]>,
}

#[derive(Deserialize)]
struct Wall {
    gross_area: f64,
    net_area: f64,
    openings: Vec<Opening>,
    obstacles: Vec<Obstacle>,
    rakes: Vec<Rake>,
    corners: Vec<Corner>,
}

#[derive(Deserialize)]
struct Opening {
    kind: OpeningKind,
    left: f64,
    right: f64,
    sill: f64,
    head: f64,
    in_siding: Vec<[f64; 4]>,
}

#[derive(Deserialize)]
struct Obstacle {
    mounting_block: bool,
    #[serde(rename = "box")]
    sides: [f64; 4],
}

#[derive(Deserialize)]
struct Rake {
    pitch: f64,
}

#[derive(Deserialize)]
struct Corner {
    tag: String,
    inside: bool,
    bottom: f64,
    top: f64,
}

#[derive(Deserialize)]
struct Starter {
    base: f64,
    bare_top: f64,
}

/// Every `.dxf` of a folder with its layout.
fn laid(folder: &Path) -> Vec<(PathBuf, Truth, Result<Layout, String>)> {
    let mut files: Vec<PathBuf> =
        fs::read_dir(folder).unwrap().map(|e| e.unwrap().path()).collect();
    files.retain(|p| p.extension().is_some_and(|e| e == "dxf"));
    files.sort();
    assert!(!files.is_empty());
    let lay = |drawing: PathBuf| {
        let text = fs::read_to_string(drawing.with_extension("toml")).unwrap();
        let mut job = job_file::parse(&text, "job").unwrap();
        job.seams.effort = Effort::Crew;
        // The truth is that of the drawing, to the drawn corners.
        let product = &mut job.product;
        if product.kind.piece() == SidingPiece::Board {
            (product.corner_board, product.inside_corner_board) = (Some(0.0), Some(0.0));
        } else {
            (product.outside_post_set_back, product.inside_post_set_back) = (Some(0.0), Some(0.0));
        }
        let bytes = fs::read(&drawing).unwrap();
        let made = pipeline::layout(&bytes, "d.dxf", &job, &mut Findings::default(), &mut |_| {});
        let truth = fs::read_to_string(drawing.with_extension("json")).unwrap();
        (
            drawing,
            serde_json::from_str(&truth).unwrap(),
            made.map(|s| s.house.layout).map_err(|e| e.to_string()),
        )
    };
    files.into_iter().map(lay).collect()
}

/// What of the truth a layout misses.
fn missed(truth: &Truth, layout: &Layout) -> Vec<String> {
    let (wanted, got) = (truth.elevations.len(), layout.elevations.len());
    if wanted != got {
        return vec![format!("{got} elevations of {wanted}")];
    }
    let mut out = Vec::new();
    for t in &truth.elevations {
        let named = |e: &&lapwright::layout::wall::LaidElevation| {
            t.name.as_ref().is_none_or(|n| *n == e.name)
        };
        let Some(e) = layout.elevations.iter().find(named) else {
            out.push(format!("no {:?}", t.name));
            continue;
        };
        let mut walls: Vec<&lapwright::layout::wall::LaidWall> = e.walls.iter().collect();
        walls.sort_by(|a, b| left(a).total_cmp(&left(b)));
        if walls.len() != t.walls.len() {
            out.push(format!("{}: {} walls of {}", e.name, walls.len(), t.walls.len()));
            continue;
        }
        if e.grade.len() != t.grade.len()
            || e.grade.iter().zip(&t.grade).any(|(a, b)| !near(a[0], b[0]) || !near(a[1], b[1]))
        {
            out.push(format!("{}: grade {:?} for {:?}", e.name, e.grade, t.grade));
        }
        for (w, t) in walls.into_iter().zip(&t.walls) {
            let said = missed_of_wall(t, w);
            out.extend(said.into_iter().map(|s| format!("{} {}: {s}", e.name, w.id)));
        }
    }
    out
}

fn left(wall: &lapwright::layout::wall::LaidWall) -> f64 {
    wall.outline.iter().map(|p| p[0]).fold(f64::INFINITY, f64::min)
}

/// Within 1/64 in: the grid is 1/1024, and ends that miss by 1/1000 are joined.
fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < 1.0 / 64.0
}

/// Within 0.01 %.
fn same_area(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-4 * b.max(1.0)
}

fn missed_of_wall(t: &Wall, w: &lapwright::layout::wall::LaidWall) -> Vec<String> {
    let mut out = Vec::new();
    for (what, a, b) in
        [("gross", w.gross_area, t.gross_area), ("net", w.net_area + w.bare_area(), t.net_area)]
    {
        if !same_area(a, b) {
            out.push(format!("{what} area {a:.3} for {b:.3}"));
        }
    }
    for o in &t.openings {
        let drawn = [o.left, o.sill, o.right, o.head];
        let found = w.openings.iter().any(|x| {
            let sides = [x.left, x.sill, x.right, x.head];
            let is = |box_: &[f64; 4]| sides.iter().zip(box_).all(|(a, b)| near(*a, *b));
            x.kind == o.kind && (is(&drawn) || o.in_siding.iter().any(is))
        });
        if !found {
            out.push(format!("no {:?} at {drawn:?}", o.kind));
        }
    }
    let parts: usize = t.openings.iter().map(|o| o.in_siding.len()).sum();
    if !(t.openings.len()..=parts.max(t.openings.len())).contains(&w.openings.len()) {
        out.push(format!("{} openings for {}", w.openings.len(), t.openings.len()));
    }
    for o in &t.obstacles {
        if !w.obstacles.iter().any(|x| is_obstacle(x, o)) {
            out.push(format!("no fixture at {:?}", o.sides));
        }
    }
    for r in &t.rakes {
        let is = |e: &&lapwright::layout::wall::LaidEdge| {
            e.pitch.is_some_and(|p| (p - r.pitch).abs() < 0.02)
        };
        if !w.edges.iter().any(|e| is(&e)) {
            out.push(format!("no rake at {} in 12", r.pitch));
        }
    }
    out
}

fn is_obstacle(x: &lapwright::layout::wall::LaidObstacle, o: &Obstacle) -> bool {
    let ends = |axis: usize| {
        let all = x.outline.iter().map(|p| p[axis]);
        (all.clone().fold(f64::INFINITY, f64::min), all.fold(f64::NEG_INFINITY, f64::max))
    };
    let ((x0, x1), (y0, y1)) = (ends(0), ends(1));
    // A circle's chords stand inside it.
    let about = |a: f64, b: f64| (a - b).abs() < 1.0 / 16.0;
    // A mounting block goes up or down by half an inch at most, out of a course it would be cut into.
    let moved = y0 - o.sides[1];
    let by = if x.mounting_block && moved.abs() <= 0.5 + 1e-6 { moved } else { 0.0 };
    x.mounting_block == o.mounting_block
        && [x0, y0 - by, x1, y1 - by].iter().zip(&o.sides).all(|(a, b)| about(*a, *b))
}

/// Tagged corners and the starter's perimeter: for houses whose stone and grade are sound.
fn missed_round_the_house(truth: &Truth, layout: &Layout) -> Vec<String> {
    let mut out = Vec::new();
    let corners = truth.elevations.iter().flat_map(|e| &e.walls).flat_map(|w| &w.corners);
    for c in corners {
        let kind = if c.inside { EdgeKind::InsideCorner } else { EdgeKind::OutsideCorner };
        let mut seen = 0;
        for e in &layout.elevations {
            let edges = e.walls.iter().flat_map(|w| &w.edges);
            let its = edges.filter(|x| x.tag.as_ref() == Some(&c.tag) && x.kind == kind);
            let ys: Vec<f64> = its.flat_map(|x| [x.from[1], x.to[1]]).collect();
            if ys.is_empty() {
                continue;
            }
            seen += 1;
            let low = ys.iter().copied().fold(f64::INFINITY, f64::min);
            let high = ys.iter().copied().fold(f64::NEG_INFINITY, f64::max);
            if !near(low, c.bottom) || !near(high, c.top) {
                out.push(format!("{} stands {low}..{high} in {}", c.tag, e.name));
            }
        }
        if seen != 2 {
            out.push(format!("{} is a {kind:?} in {seen} elevations", c.tag));
        }
    }
    let level = |kind: EdgeKind| -> f64 {
        let edges = layout.elevations.iter().flat_map(|e| &e.walls).flat_map(|w| &w.edges);
        edges.filter(|x| x.kind == kind).map(|x| x.to[0] - x.from[0]).sum()
    };
    for (kind, wanted) in
        [(EdgeKind::Base, truth.starter.base), (EdgeKind::BareTop, truth.starter.bare_top)]
    {
        if !near(level(kind), wanted) {
            out.push(format!("{kind:?} runs {} for {wanted}", level(kind)));
        }
    }
    out
}

#[test]
fn the_second_set_reads_as_it_was_designed() {
    let folder = tempfile::tempdir().unwrap();
    python("tests/samples/second_set.py", &[folder.path()]);
    let mut wrong = Vec::new();
    for (drawing, truth, layout) in laid(folder.path()) {
        let layout = layout.unwrap();
        let mut said = missed(&truth, &layout);
        said.extend(missed_round_the_house(&truth, &layout));
        wrong.extend(said.into_iter().map(|s| format!("{}: {s}", drawing.display())));
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn fifty_random_houses_read_as_they_were_designed() {
    let folder = tempfile::tempdir().unwrap();
    python("tests/samples/random_houses.py", &[folder.path(), "--first".as_ref(), "1".as_ref()]);
    let mut wrong = Vec::new();
    for (drawing, truth, layout) in laid(folder.path()) {
        let said = match &layout {
            Ok(layout) => missed(&truth, layout),
            Err(refused) => vec![format!("refused: {refused}")],
        };
        let name = drawing.file_stem().unwrap().display().to_string();
        wrong.extend(said.into_iter().map(|s| format!("{name}: {s}")));
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}
