//! `start` writes the first job of a drawing beside it, `layers --suggest` prints jobs that lead to a
//! layout: each reads, and leads to the same or a better result than no job.

use std::path::Path;
use std::process::Command;

use lapwright::finding::Findings;
use lapwright::job::first::FirstJob;
use lapwright::job::{Job, file as job_file};
use lapwright::model::linework::Role;
use lapwright::pipeline;
use lapwright::write::{first_job, layers};

use crate::support::{dxf, rect, root, samples};

/// Walls and openings, and the area of the walls as drawn; none where there is no layout.
fn walls(bytes: &[u8], job: &Job) -> Option<(usize, usize, f64)> {
    let house = pipeline::reading(bytes, "t.dxf", job, &mut Findings::default()).ok()?.house;
    let all = || house.elevations.iter().flat_map(|e| &e.walls);
    let area = all().flat_map(|w| &w.faces).map(lapwright::geom::polygon::Polygon::area).sum();
    Some((all().count(), all().map(|w| w.openings.len()).sum(), area))
}

/// The first job as it is written, read back.
fn started(bytes: &[u8], name: &str) -> (FirstJob, Job, String) {
    let first = pipeline::first_job(bytes, name).unwrap();
    let text = first_job::text(&first, "t.toml");
    let job = job_file::parse(&text, "t.toml").unwrap_or_else(|e| panic!("{name}: {e:?}\n{text}"));
    (first, job, text)
}

fn text(layer: &str, at: (f64, f64), words: &str) -> String {
    format!("0\nTEXT\n8\n{layer}\n10\n{}\n20\n{}\n40\n9\n1\n{words}\n", at.0, at.1)
}

#[test]
fn the_first_job_of_every_sample_leads_to_the_same_or_a_better_result() {
    let mut drawings: Vec<(String, Vec<u8>)> =
        samples().into_iter().map(|(stem, path)| (stem, std::fs::read(path).unwrap())).collect();
    drawings
        .push(("front".to_owned(), std::fs::read(root().join("tests/samples/front.svg")).unwrap()));
    for (name, bytes) in &drawings {
        let (_, job, text) = started(bytes, name);
        let (plain, with) = (walls(bytes, &Job::default()), walls(bytes, &job));
        match (plain, with) {
            (None, _) => {}
            (Some(plain), Some(with)) => {
                assert_eq!((with.0, with.1 >= plain.1), (plain.0, true), "{name}\n{text}");
                assert!(
                    (with.2 - plain.2).abs() <= 0.001 * plain.2,
                    "{name}: {} {}",
                    with.2,
                    plain.2
                );
            }
            (Some(_), None) => panic!("{name} is not laid out with its first job:\n{text}"),
        }
    }
}

/// A front of 20 ft by 8 ft with a window on layers that no one agreed on, a title, and a border round all.
fn odd() -> String {
    let rings: [(&str, &[(f64, f64)]); 3] = [
        ("BLATT", &rect(-200.0, -200.0, 500.0, 300.0)),
        ("7", &rect(0.0, 0.0, 240.0, 96.0)),
        ("Fenster", &rect(40.0, 30.0, 76.0, 80.0)),
    ];
    dxf(&rings).replace(
        "0\nENDSEC\n",
        &format!("{}0\nENDSEC\n", text("0", (0.0, -30.0), "SOUTH ELEVATION")),
    )
}

#[test]
fn a_guess_is_told_where_it_leads_to_a_layout_and_never_the_border() {
    let bytes = odd().into_bytes();
    let inch = job_file::parse("[drawing]\nunit = \"inch\"\n", "j").unwrap();
    let found = pipeline::suggestions(&bytes, "t.dxf", &inch).unwrap();
    assert!(!found.plain.usable);
    let best = &found.jobs[0];
    let names = |role: Role| -> Vec<&str> {
        best.layers.iter().filter(|g| g.role == role).map(|g| g.layer.as_str()).collect()
    };
    assert_eq!((names(Role::Wall), names(Role::Window)), (vec!["7"], vec!["Fenster"]));
    // 240 by 96 less a window of 36 by 50.
    assert!((best.reached.area - (240.0 * 96.0 - 1800.0) / 144.0).abs() < 0.01);
    assert_eq!((best.reached.walls, best.reached.openings), (1, 1));
    let fragment = layers::fragment(&found);
    assert!(!fragment.contains("BLATT"), "{fragment}");
    let job = job_file::parse(&fragment, "j").unwrap();
    assert_eq!(job.layers[&Role::Wall], ["7"]);
    // A drawing that reads as it is gets none.
    let wall = rect(0.0, 0.0, 240.0, 96.0);
    let found = pipeline::suggestions(dxf(&[("A-WALL-OTLN", &wall)]).as_bytes(), "t.dxf", &inch);
    let found = found.unwrap();
    assert!(found.plain.usable && found.jobs.is_empty(), "{found:?}");
    assert!(layers::fragment(&found).contains("No guess leads"));
}

#[test]
fn the_first_job_names_views_layers_and_unit_and_asks_what_is_left() {
    let (_, job, text) = started(odd().as_bytes(), "odd.dxf");
    assert_eq!(job.layers[&Role::Wall], ["7"]);
    assert!(job.drawing.unit.is_some(), "{text}");
    assert_eq!(job.elevation.len(), 1, "{text}");
    assert_eq!(job.elevation[0].name, "SOUTH ELEVATION");
    // Every corner of the one wall is a question, with the setting that answers it.
    assert!(text.contains("#skip = ") && text.contains("[[wall]]"), "{text}");
    assert_eq!(walls(odd().as_bytes(), &job).map(|w| (w.0, w.1)), Some((1, 1)));
    // Hostile names stay within their line.
    let hostile = "x\"] # \\u000a [seams";
    let wall = rect(0.0, 0.0, 240.0, 96.0);
    let (_, job, _) = started(dxf(&[(hostile, &wall)]).as_bytes(), "a\nb.dxf");
    assert!(job.seams == Job::default().seams);
}

fn run(args: &[&str], at: &Path) -> std::process::Output {
    Command::new(env!("CARGO_BIN_EXE_lapwright")).args(args).current_dir(at).output().unwrap()
}

#[test]
fn start_writes_beside_the_drawing_and_never_over_a_file() {
    let dir = tempfile::tempdir().unwrap();
    std::fs::write(dir.path().join("house.dxf"), odd()).unwrap();
    let out = run(&["start", "house.dxf"], dir.path());
    let words = String::from_utf8_lossy(&out.stderr).into_owned();
    assert_eq!(out.status.code(), Some(0), "{words}");
    assert!(words.contains("house.toml") && words.contains("1 wall"), "{words}");
    let file = dir.path().join("house.toml");
    let first = std::fs::read_to_string(&file).unwrap();
    job_file::parse(&first, "house.toml").unwrap();
    std::fs::write(&file, "# mine\n").unwrap();
    let out = run(&["start", "house.dxf"], dir.path());
    assert_eq!(out.status.code(), Some(1));
    assert!(String::from_utf8_lossy(&out.stderr).contains("house.toml"));
    assert_eq!(std::fs::read_to_string(&file).unwrap(), "# mine\n");
    // What is no drawing gets no job.
    std::fs::write(dir.path().join("no.dxf"), "nothing").unwrap();
    assert_eq!(run(&["start", "no.dxf"], dir.path()).status.code(), Some(1));
    assert!(!dir.path().join("no.toml").exists());
}

#[test]
fn a_layer_of_level_lines_is_no_guess_where_they_are_no_siding() {
    // A stair in section: a closed box of 240 x 96 on one layer with level lines at eight heights at odd
    // distances, which as outlines make walls.
    let heights = [0.0, 7.0, 19.0, 22.0, 41.0, 60.0, 64.0, 96.0];
    let level = heights.map(|y| drawn_line((0.0, y), (240.0, y)));
    let plumb = [0.0, 240.0].map(|x| drawn_line((x, 0.0), (x, 96.0)));
    let entities = level.concat() + &plumb.concat();
    let bytes = format!("0\nSECTION\n2\nENTITIES\n{entities}0\nENDSEC\n0\nEOF\n");
    let inch = job_file::parse("[drawing]\nunit = \"inch\"\n", "j").unwrap();
    let found = pipeline::suggestions(bytes.as_bytes(), "t.dxf", &inch).unwrap();
    assert!(!found.plain.usable && found.jobs.is_empty(), "{found:?}");
    // With the layer as wall there would be one.
    let named = job_file::parse("[drawing]\nunit = \"inch\"\n[layers]\nwall = [\"SECT\"]\n", "j");
    assert!(walls(bytes.as_bytes(), &named.unwrap()).is_some());
}

#[test]
fn loops_as_small_as_headers_are_no_guess_at_walls() {
    // Four loops of 30 x 30, 6 1/4 sq ft each, and one of 60 x 30, 12 1/2 sq ft.
    let jobs = |loops: &[[(f64, f64); 4]]| {
        let rings: Vec<(&str, &[(f64, f64)])> = loops.iter().map(|l| ("HEADER", &l[..])).collect();
        let inch = job_file::parse("[drawing]\nunit = \"inch\"\n", "j").unwrap();
        pipeline::suggestions(dxf(&rings).as_bytes(), "t.dxf", &inch).unwrap().jobs.len()
    };
    let loops = [0.0, 100.0, 200.0, 300.0].map(|x| rect(x, 0.0, x + 30.0, 30.0));
    assert_eq!(jobs(&loops), 0);
    assert_eq!(jobs(&[rect(0.0, 0.0, 60.0, 30.0)]), 1);
}

fn drawn_line(a: (f64, f64), b: (f64, f64)) -> String {
    format!("0\nLINE\n8\nSECT\n10\n{}\n20\n{}\n11\n{}\n21\n{}\n", a.0, a.1, b.0, b.1)
}
