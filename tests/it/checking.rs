//! `check` with its picture, `template`, `--known`, and the reader's limits.

use std::path::Path;

use assert_cmd::Command;
use lapwright::finding::Findings;
use lapwright::read::{self, Limits};

use crate::support::root;

fn program(args: &[&str]) -> std::process::Output {
    Command::cargo_bin("lapwright").unwrap().current_dir(root()).args(args).output().unwrap()
}

/// A drawing of these entities.
fn dxf(entities: &str) -> String {
    format!("0\nSECTION\n2\nENTITIES\n{entities}0\nENDSEC\n0\nEOF\n")
}

/// A closed rectangle on a layer.
fn rect(layer: &str, x0: f64, y0: f64, x1: f64, y1: f64) -> String {
    let vertex = |(x, y)| format!("0\nVERTEX\n8\n{layer}\n10\n{x}\n20\n{y}\n");
    let corners = [(x0, y0), (x1, y0), (x1, y1), (x0, y1)].map(vertex).concat();
    format!("0\nPOLYLINE\n8\n{layer}\n66\n1\n70\n1\n{corners}0\nSEQEND\n8\n{layer}\n")
}

fn text(path: &Path) -> String {
    std::fs::read_to_string(path).unwrap()
}

#[test]
fn check_circles_what_it_finds_and_leaves_a_layout_alone() {
    let dir = tempfile::tempdir().unwrap();
    let drawing = dir.path().join("gap.dxf");
    // A wall whose last inches are missing.
    let open = "0\nLWPOLYLINE\n8\nA-WALL-OTLN\n90\n4\n70\n0\n10\n0\n20\n0\n10\n240\n20\n0\n10\n240\n20\n96\n10\n0\n20\n90\n";
    std::fs::write(&drawing, dxf(open)).unwrap();
    let out = dir.path().join("house");
    std::fs::create_dir(&out).unwrap();
    std::fs::write(out.join("layout.json"), "kept").unwrap();
    let o = program(&["check", drawing.to_str().unwrap(), "--out", out.to_str().unwrap()]);
    assert_eq!(o.status.code(), Some(1));
    assert_eq!(text(&out.join("layout.json")), "kept");
    let list = text(&out.join("check.txt"));
    assert!(list.contains("ERROR wall-open"), "{list}");
    assert_eq!(list, String::from_utf8(o.stdout).unwrap());
    let svg = text(&out.join("problems.svg"));
    let tree = usvg::Tree::from_str(&svg, &usvg::Options::default()).unwrap();
    assert!(tree.size().width() > 100.0);
    let faults = svg.split("class=\"faults\"").nth(1).expect("nothing is circled");
    assert!(faults.split("</g>").next().unwrap().contains("<path"));
    assert!(svg.contains("wall-open") && svg.contains("1 error,"), "{svg}");
    let mut names: Vec<_> =
        std::fs::read_dir(&out).unwrap().map(|e| e.unwrap().file_name()).collect();
    names.sort();
    // The results, the list of them, and what was there; nothing temporary.
    assert_eq!(names, ["check.txt", "lapwright-files.sha256", "layout.json", "problems.svg"]);
}

#[test]
fn check_never_writes_over_the_drawing() {
    let dir = tempfile::tempdir().unwrap();
    let drawing = dir.path().join("problems.svg");
    std::fs::copy(root().join("tests/samples/front.svg"), &drawing).unwrap();
    let before = std::fs::read(&drawing).unwrap();
    let o = program(&["check", drawing.to_str().unwrap(), "--out", dir.path().to_str().unwrap()]);
    assert_eq!(o.status.code(), Some(1));
    assert!(String::from_utf8_lossy(&o.stderr).contains("out-refused"));
    assert_eq!(std::fs::read(&drawing).unwrap(), before);
}

#[test]
fn a_known_distance_is_taken_from_the_command_line() {
    let dir = tempfile::tempdir().unwrap();
    let drawing = dir.path().join("d.dxf");
    // A wall 2 wide and 1 high in units of nobody.
    std::fs::write(&drawing, dxf(&rect("A-WALL-OTLN", 0.0, 0.0, 2.0, 1.0))).unwrap();
    let d = drawing.to_str().unwrap();
    let o = program(&["check", d, "--known", "0,0 2,0 = 16'-0\""]);
    let said = String::from_utf8_lossy(&o.stdout).into_owned();
    assert!(o.status.success(), "{said}");
    assert!(said.contains("16'-0\" wide, 8'-0\" high"), "{said}");
    let o = program(&["check", d, "--known", "nonsense"]);
    assert_eq!(o.status.code(), Some(2));
    assert!(String::from_utf8_lossy(&o.stderr).contains("known-unreadable"));
}

#[test]
fn the_template_holds_the_agreed_layers_and_replaces_nothing() {
    let dir = tempfile::tempdir().unwrap();
    let out = dir.path().join("for-the-architect");
    let o = program(&["template", out.to_str().unwrap()]);
    assert!(o.status.success(), "{}", String::from_utf8_lossy(&o.stderr));
    let names = ["template.dxf", "convention.svg", "convention.pdf", "job.toml", "office.toml"];
    assert!(names.iter().all(|n| out.join(n).metadata().unwrap().len() > 1000));
    // Another library reads it, with every layer a job may draw on.
    let other = dxf::Drawing::load_file(out.join("template.dxf").to_str().unwrap()).unwrap();
    let layers: Vec<&str> = other.layers().map(|l| l.name.as_str()).collect();
    for (_, name) in lapwright::job::layers::AGREED_LAYERS {
        assert!(name.contains('*') || name == "DEFPOINTS" || layers.contains(&name), "{name}");
    }
    assert_eq!(other.entities().count(), 0);
    // What an architect draws in it is read, in the unit it states.
    let mut drawn = text(&out.join("template.dxf"));
    let at = drawn.find("ENTITIES\n").unwrap() + "ENTITIES\n".len();
    drawn.insert_str(at, &rect("A-WALL-OTLN", 0.0, 0.0, 240.0, 96.0));
    let mine = dir.path().join("mine.dxf");
    std::fs::write(&mine, drawn).unwrap();
    let job = out.join("job.toml");
    let args = ["check", mine.to_str().unwrap(), "--job", job.to_str().unwrap()];
    let o = program(&args);
    let said = String::from_utf8_lossy(&o.stdout).into_owned();
    assert!(
        said.contains("20'-0\" wide, 8'-0\" high")
            && said.contains("1 inch, by the drawing's header"),
        "{said}"
    );
    // Nothing there is replaced.
    std::fs::write(&job, "# mine").unwrap();
    let o = program(&["template", out.to_str().unwrap()]);
    assert_eq!(o.status.code(), Some(1));
    assert_eq!(text(&job), "# mine");
}

fn codes(bytes: &[u8], limits: &Limits) -> Vec<&'static str> {
    let mut notes = Findings::default();
    read::drawing(bytes, "d", limits, &mut notes).unwrap();
    notes.all().iter().map(|n| n.code().word()).collect()
}

#[test]
fn every_limit_is_told_when_it_is_met() {
    let wall = rect("A-WALL-OTLN", 0.0, 0.0, 240.0, 96.0);
    let small = || Limits { vertices: 3, points: 6, items: 3, loops: 2, ..Limits::default() };
    let bytes = dxf(&wall);
    assert!(codes(bytes.as_ref(), &Limits::default()).iter().all(|c| !c.contains("too-many")));
    let old = "0\nPOLYLINE\n8\n0\n66\n1\n70\n0\n".to_owned()
        + &"0\nVERTEX\n8\n0\n10\n1\n20\n2\n".repeat(5)
        + "0\nSEQEND\n8\n0\n";
    assert!(codes(dxf(&old).as_ref(), &small()).contains(&"vertices-too-many"));
    let line = "0\nLINE\n8\n0\n10\n0\n20\n0\n11\n1\n21\n1\n";
    let limits = Limits { items: 100, ..small() };
    let once = |limits: &Limits| {
        let all = codes(dxf(&line.repeat(9)).as_ref(), limits);
        all.into_iter().filter(|c| c.ends_with("-too-many")).collect::<Vec<_>>()
    };
    assert_eq!(once(&limits), ["points-too-many"]);
    let limits = Limits { points: 100, ..small() };
    assert_eq!(once(&limits), ["items-too-many"]);
    let hatch = "0\nHATCH\n8\n0\n70\n0\n91\n3\n92\n2\n72\n0\n73\n1\n93\n3\n10\n0\n20\n0\n10\n1\n20\n0\n10\n0\n20\n1\n";
    assert!(codes(dxf(hatch).as_ref(), &small()).contains(&"hatch-loops"));
    let far = "0\nLINE\n8\n0\n10\n2e9\n20\n0\n11\n1\n21\n1\n";
    assert!(codes(dxf(far).as_ref(), &small()).contains(&"numbers-absurd"));
    // However many there are, they are one finding.
    let many = codes(dxf(&far.repeat(9)).as_ref(), &Limits::default());
    assert_eq!(many.iter().filter(|c| **c == "numbers-absurd").count(), 1);
    let wild = "0\nSPLINE\n8\n0\n70\n0\n71\n99\n40\n0\n10\n0\n20\n0\n";
    assert!(codes(dxf(wild).as_ref(), &small()).contains(&"entity-broken"));
}
