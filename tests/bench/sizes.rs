//! Drawings of 1, 10, 100 and 1,000 houses: `cargo bench --bench sizes [-- MOST HOUSES]`. Time of each
//! part, processor time of the whole and peak memory, and in the same run ezdxf with shapely doing the
//! read-and-area part of the same files. Prints tables in Markdown.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::print_stdout,
    clippy::disallowed_types,
    clippy::disallowed_methods,
    reason = "a bench prints what it measures, and may stop at what is not as it should be"
)]

#[allow(dead_code, reason = "the bench needs a part of it")]
#[path = "../reference/venv.rs"]
mod venv;
#[path = "../watched/mod.rs"]
mod watched;

use std::fmt::Write as _;
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Instant;

use lapwright::finding::Findings;
use lapwright::geom::polygon::{Polygon, total_area};
use lapwright::job::file as job_file;
use lapwright::model::source::Source;
use lapwright::read::{self, Limits};
use lapwright::{annotate, extract, geom, normalize, pipeline, write};

/// The words by which this program asks itself to do one part in a process of its own.
const AREAS: &str = "--areas";
const WHOLE: &str = "--whole";
const JOB: &str = "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n";

/// Reads a drawing on the convention and prints its net area in square feet, by ezdxf and shapely.
const PYTHON: &str = r#"
import sys, ezdxf
from shapely import STRtree
from shapely.geometry import Polygon
from shapely.ops import unary_union
space = ezdxf.readfile(sys.argv[1]).modelspace()
rings = {"A-WALL-OTLN": [], "A-GLAZ": [], "A-DOOR": [], "A-ROOF-OTLN": []}
for p in space.query("POLYLINE LWPOLYLINE"):
    if p.dxf.layer in rings:
        points = p.get_points("xy") if p.dxftype() == "LWPOLYLINE" else [v.dxf.location.vec2 for v in p.vertices]
        rings[p.dxf.layer].append(Polygon(points))
off = rings["A-GLAZ"] + rings["A-DOOR"] + rings["A-ROOF-OTLN"]
tree, area = STRtree(off), 0.0
for wall in rings["A-WALL-OTLN"]:
    area += wall.difference(unary_union([off[i] for i in tree.query(wall)])).area
print(area / 144)
"#;

fn main() {
    let args: Vec<String> = std::env::args().collect();
    match &args[..] {
        [_, word, file, ..] if word == AREAS => areas(Path::new(file)),
        [_, word, file, ..] if word == WHOLE => whole(Path::new(file)),
        _ => {
            let most = args.iter().find_map(|a| a.parse().ok()).unwrap_or(1000);
            tables(most);
        }
    }
}

fn tables(most: usize) {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR"));
    let me = std::env::current_exe().unwrap();
    let python = venv::interpreter(venv::environment());
    let sizes: Vec<usize> = [1, 10, 100, 1000].into_iter().filter(|n| *n <= most).collect();
    let (mut parts, mut both) = (Vec::new(), Vec::new());
    for &n in &sizes {
        let file = folder.join(format!("{n}-houses.dxf"));
        std::fs::write(&file, houses(n)).unwrap();
        let megabytes = std::fs::metadata(&file).unwrap().len() as f64 / 1e6;
        parts.push((n, megabytes, measured(Command::new(&me).arg(WHOLE).arg(&file))));
        let ours = measured(Command::new(&me).arg(AREAS).arg(&file));
        let theirs = measured(Command::new(&python).args(["-c", PYTHON]).arg(&file));
        let area = |r: &Measured| r.said.trim().parse::<f64>().unwrap_or(f64::NAN);
        let (a, b) = (area(&ours), area(&theirs));
        assert!((a - b).abs() <= 1e-4 * b, "{n} houses: {a} sq ft, {b} by shapely");
        both.push((n, ours, theirs));
        std::fs::remove_file(&file).unwrap();
    }
    println!("\n| houses | MB | {} | of processor | MB at most |", PARTS.join(" | "));
    println!("|---:|---:|{}---:|---:|", "---:|".repeat(PARTS.len()));
    for (n, megabytes, r) in &parts {
        let times: Vec<String> = seconds(&r.said).iter().map(|t| format!("{t:.3}")).collect();
        println!("| {n} | {megabytes:.1} | {} | {:.2} | {:.0} |", times.join(" | "), r.cpu, r.peak);
    }
    for pair in parts.windows(2) {
        let (before, after) = (seconds(&pair[0].2.said), seconds(&pair[1].2.said));
        let each = before.iter().zip(&after).map(|(a, b)| format!("x {:.1}", b / a));
        println!(
            "| x {} | x {:.1} | {} | x {:.1} | x {:.1} |",
            pair[1].0 / pair[0].0,
            pair[1].1 / pair[0].1,
            each.collect::<Vec<_>>().join(" | "),
            pair[1].2.cpu / pair[0].2.cpu,
            pair[1].2.peak / pair[0].2.peak
        );
    }
    println!(
        "\n| houses | lapwright, s | of processor | MB | ezdxf and shapely, s | of processor | MB | times as long |"
    );
    println!("|---:|---:|---:|---:|---:|---:|---:|---:|");
    for (n, ours, theirs) in &both {
        println!(
            "| {n} | {:.3} | {:.2} | {:.0} | {:.3} | {:.2} | {:.0} | {:.0} |",
            ours.seconds,
            ours.cpu,
            ours.peak,
            theirs.seconds,
            theirs.cpu,
            theirs.peak,
            theirs.seconds / ours.seconds
        );
    }
}

/// What [`whole`] times, in order.
const PARTS: [&str; 6] = ["read", "normalize", "extract", "lay", "sheets", "write"];

fn seconds(said: &str) -> Vec<f64> {
    let all: Vec<f64> = said.split_whitespace().filter_map(|t| t.parse().ok()).collect();
    assert_eq!(all.len(), PARTS.len(), "{said}");
    all
}

/// Seconds of each part of the main job, without pictures, by a careful crew.
fn whole(file: &Path) {
    let job = job_file::parse(JOB, "job").unwrap();
    let bytes = std::fs::read(file).unwrap();
    let mut notes = Findings::default();
    let mut from = Instant::now();
    let mut lap = || {
        let took = from.elapsed().as_secs_f64();
        from = Instant::now();
        println!("{took}");
    };
    let drawing = read::drawing(&bytes, "d", &Limits::default(), &mut notes).unwrap();
    lap();
    let lines = normalize::linework(&drawing, &job, &mut notes).unwrap();
    lap();
    let house = extract::house(&lines, &job, &mut notes).unwrap();
    lap();
    let source = Source { inches_per_unit: lines.scale.inches, ..Source::default() };
    let set = pipeline::lay(&house, &source, &job, &mut notes, &mut |_| {});
    lap();
    let sheets = annotate::sheets(&set.layout, &set.backdrops);
    let svgs: Vec<String> = sheets.iter().map(write::svg::document).collect();
    lap();
    drop((sheets, svgs));
    let outputs = lapwright::outputs::set::files(&set, &bytes, false).unwrap();
    assert!(outputs.len() > 8);
    lap();
}

/// Net area of all walls, square feet.
fn areas(file: &Path) {
    let job = job_file::parse(JOB, "job").unwrap();
    let bytes = std::fs::read(file).unwrap();
    let read = pipeline::reading(&bytes, "d", &job, &mut Findings::default()).unwrap();
    let walls = read.house.elevations.iter().flat_map(|e| &e.walls);
    let net = walls.map(|w| {
        let holes: Vec<Polygon> =
            w.openings.iter().map(|o| Polygon::simple(o.outline.clone()).wound()).collect();
        total_area(&geom::boolean::difference(&w.faces, &geom::boolean::union_all(&holes)))
    });
    println!("{}", net.sum::<f64>() / 144.0);
}

struct Measured {
    seconds: f64,
    cpu: f64,
    /// Megabytes.
    peak: f64,
    said: String,
}

fn measured(command: &mut Command) -> Measured {
    let said = Path::new(env!("CARGO_TARGET_TMPDIR")).join("said.txt");
    let out = std::fs::File::create(&said).unwrap();
    let r = watched::watched(command.stdout(out).stderr(Stdio::inherit()), None);
    assert!(r.exit.is_some_and(|e| e.success()), "{:?}", r.exit);
    let said = std::fs::read_to_string(&said).unwrap();
    Measured { seconds: r.seconds, cpu: r.cpu, peak: r.megabytes, said }
}

/// Houses of four framed elevations, in rows of ten on one sheet of model space.
fn houses(n: usize) -> String {
    let mut out = String::from("0\nSECTION\n2\nENTITIES\n");
    for h in 0..n {
        let (x, y) = (2600.0 * (h % 10) as f64, 600.0 * (h / 10) as f64);
        for (side, name) in ["FRONT", "RIGHT", "REAR", "LEFT"].into_iter().enumerate() {
            let gable = side % 2 == 1;
            elevation(&mut out, x + 650.0 * side as f64, y, &format!("{name} OF HOUSE {h}"), gable);
        }
    }
    out.push_str("0\nENDSEC\n0\nEOF\n");
    out
}

fn elevation(out: &mut String, x: f64, y: f64, name: &str, gable: bool) {
    let (w, h) = (if gable { 336.0 } else { 528.0 }, 108.0);
    ring(
        out,
        "A-ELEV-FRAM",
        &[
            (x - 40.0, y - 80.0),
            (x + 580.0, y - 80.0),
            (x + 580.0, y + 400.0),
            (x - 40.0, y + 400.0),
        ],
    );
    let mut wall = vec![(x, y - 8.0), (x + w, y - 8.0), (x + w, y + h)];
    if gable {
        wall.push((x + w / 2.0, y + h + w / 4.0));
    }
    wall.push((x, y + h));
    ring(out, "A-WALL-OTLN", &wall);
    for i in 0..4 {
        let (left, sill) = (x + 30.0 + 80.0 * f64::from(i), y + 32.0);
        ring(out, "A-GLAZ", &rect(left, sill, 36.0, 54.0));
        // Panes and meeting rails, as blocks and loose lines bring them.
        ring(out, "A-GLAZ", &rect(left + 2.0, sill + 2.0, 32.0, 24.0));
        ring(out, "A-GLAZ", &rect(left + 2.0, sill + 28.0, 32.0, 24.0));
    }
    if !gable {
        ring(out, "A-DOOR", &rect(x + 400.0, y - 8.0, 36.0, 84.0));
        ring(
            out,
            "A-ROOF-OTLN",
            &[
                (x - 16.0, y + h - 4.0),
                (x + w + 16.0, y + h - 4.0),
                (x + w - 80.0, y + h + 96.0),
                (x + 80.0, y + h + 96.0),
            ],
        );
        for i in 0..12 {
            let at = y + h + 8.0 * f64::from(i);
            line(out, "A-ROOF-PATT", (x, at), (x + w, at));
        }
    }
    line(out, "A-FLOR-LEVL", (x - 30.0, y), (x + w + 30.0, y));
    line(out, "C-TOPO-PROF", (x - 36.0, y - 20.0), (x + w + 36.0, y - 24.0));
    let _ = write!(out, "0\nTEXT\n8\nA-ELEV-IDEN\n10\n{x}\n20\n{}\n40\n9\n1\n{name}\n", y - 64.0);
    for (tag, at) in [("A", x + 4.0), ("B", x + w - 8.0)] {
        let _ = write!(out, "0\nTEXT\n8\nA-WALL-IDEN\n10\n{at}\n20\n{y}\n40\n3\n1\n{tag}\n");
    }
}

fn rect(x: f64, y: f64, w: f64, h: f64) -> [(f64, f64); 4] {
    [(x, y), (x + w, y), (x + w, y + h), (x, y + h)]
}

fn ring(out: &mut String, layer: &str, points: &[(f64, f64)]) {
    let _ = write!(out, "0\nPOLYLINE\n8\n{layer}\n66\n1\n70\n1\n");
    for (x, y) in points {
        let _ = write!(out, "0\nVERTEX\n8\n{layer}\n10\n{x}\n20\n{y}\n30\n0\n");
    }
    out.push_str("0\nSEQEND\n");
}

fn line(out: &mut String, layer: &str, a: (f64, f64), b: (f64, f64)) {
    let _ =
        write!(out, "0\nLINE\n8\n{layer}\n10\n{}\n20\n{}\n11\n{}\n21\n{}\n", a.0, a.1, b.0, b.1);
}
