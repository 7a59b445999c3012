//! `compare` as a user runs it: folders and drawings, files, exit codes, and what is no layout.

use std::fs;
use std::path::Path;

use assert_cmd::Command;

use crate::revisions::{Dice, house};

fn run(dir: &Path, args: &[&str]) -> std::process::Output {
    Command::cargo_bin("lapwright").unwrap().current_dir(dir).args(args).output().unwrap()
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}

const JOB: &str = "[title]\nrevision = \"A\"\n[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n\
    [product]\noutside_post_set_back = 0\ninside_post_set_back = 0\n";

/// A folder with two drawings of a house, their jobs, and the old layout: a window of the front is moved 6 in to
/// the right in the new one.
fn folder() -> tempfile::TempDir {
    let dir = tempfile::tempdir().unwrap();
    let old = house(&mut Dice(4));
    let mut new = old.clone();
    let b = &mut new.faces[0].windows[1];
    *b = [b[0] + 6.0, b[1], b[2] + 6.0, b[3]];
    fs::write(dir.path().join("a.dxf"), old.dxf(false)).unwrap();
    fs::write(dir.path().join("b.dxf"), new.dxf(false)).unwrap();
    fs::write(dir.path().join("a.toml"), JOB).unwrap();
    fs::write(dir.path().join("b.toml"), JOB).unwrap();
    let args =
        ["layout", "a.dxf", "--job", "a.toml", "--out", "a-layout", "--no-pictures", "--quiet"];
    assert!(run(dir.path(), &args).status.success());
    dir
}

#[test]
fn a_folder_and_a_drawing_are_compared_and_written() {
    let dir = folder();
    let done =
        run(dir.path(), &["compare", "a-layout", "b.dxf", "--out", "changes", "--no-pictures"]);
    let told = text(&done.stdout);
    assert_eq!(done.status.code(), Some(0), "{}", text(&done.stderr));
    assert!(told.contains("WHAT THE DRAWING CHANGES (1)"), "{told}");
    assert!(told.contains("1. window front-W2: moved 6\" to the right"), "{told}");
    // The old job says A, the new one too: the next letter.
    assert!(told.contains("Revision B."), "{told}");
    assert!(told.lines().all(|l| l.chars().count() <= 80), "{told}");
    let out = dir.path().join("changes");
    assert_eq!(text(&fs::read(out.join("compare.txt")).unwrap()), told);
    let json: serde_json::Value =
        serde_json::from_slice(&fs::read(out.join("compare.json")).unwrap()).unwrap();
    assert_eq!(json["format"], "lapwright-compare/1");
    assert_eq!(json["changes"][0]["change"], "moved");
    assert_eq!(json["changes"][0]["right"], 6.0);
    rows_of_walls(&out.join("compare.xlsx"), &json);
    assert!(out.join("sheets/01-revisions.svg").exists());
    assert!(out.join("lapwright-files.sha256").exists());
    // Written again over its own, refused where somebody changed it.
    let again = ["compare", "a-layout", "b.dxf", "--out", "changes", "--no-pictures", "--quiet"];
    let done = run(dir.path(), &again);
    assert_eq!((done.status.code(), text(&done.stdout)), (Some(0), String::new()));
    fs::write(out.join("compare.txt"), "mine").unwrap();
    assert_eq!(run(dir.path(), &again).status.code(), Some(1));
    assert_eq!(fs::read_to_string(out.join("compare.txt")).unwrap(), "mine");
}

/// Of each wall the workbook has pieces before and after, and how many of the new ones are cut as they were: that is
/// one number, no change from all the old ones to it.
fn rows_of_walls(at: &Path, json: &serde_json::Value) {
    use calamine::{Data, Reader, Xlsx, open_workbook};
    let mut book: Xlsx<_> = open_workbook(at).unwrap();
    let sheet = book.worksheet_range("By wall").unwrap();
    let rows = |what: &str| -> Vec<Vec<Data>> {
        let of = |r: &&[Data]| r.get(1) == Some(&Data::String(what.to_owned()));
        sheet.rows().filter(of).map(|r| r[3..6].to_vec()).collect()
    };
    let walls = json["walls"].as_array().unwrap();
    let number = |v: &serde_json::Value| Data::Float(v.as_f64().unwrap());
    assert!(!walls.is_empty());
    for (w, (pieces, alike)) in walls.iter().zip(rows("pieces").iter().zip(rows("cut alike"))) {
        assert_eq!(pieces[..2], [number(&w["pieces"][0]), number(&w["pieces"][1])]);
        assert_eq!(alike, [Data::Empty, number(&w["pieces_alike"]), Data::Empty]);
    }
    assert_eq!((rows("pieces").len(), rows("cut alike").len()), (walls.len(), walls.len()));
}

#[test]
fn pictures_prices_and_strict() {
    let dir = folder();
    fs::write(dir.path().join("p.csv"), "item,unit,price,currency\ncartons,carton,400,USD\n")
        .unwrap();
    let args = ["compare", "a-layout/layout.json", "b.dxf", "--prices", "p.csv", "--strict"];
    let done = run(dir.path(), &args);
    assert_eq!(done.status.code(), Some(3), "{}", text(&done.stderr));
    assert!(text(&done.stdout).contains("COST AT YOUR PRICES"), "{}", text(&done.stdout));
    // The same house: nothing, and the code says so.
    let done = run(dir.path(), &["compare", "a-layout", "a.dxf", "--strict", "--format", "json"]);
    assert_eq!(done.status.code(), Some(0));
    let json: serde_json::Value = serde_json::from_slice(&done.stdout).unwrap();
    assert_eq!(json["changes"].as_array().unwrap().len(), 0);
    assert_eq!(json["remarks"][0]["is"], "same-file");
    let done = run(dir.path(), &["compare", "a-layout", "b.dxf", "--out", "c", "--quiet"]);
    assert_eq!(done.status.code(), Some(0));
    assert!(dir.path().join("c/compare.pdf").metadata().unwrap().len() > 1000);
    assert!(dir.path().join("c/sheets/01-revisions.png").exists());
}

#[test]
fn zones_are_read_with_the_layout_whichever_way_it_is_named() {
    let dir = folder();
    let at = |name: &str| dir.path().join(name);
    // What hangs from 60 in up is vinyl, a set of its own with its own folder.
    let zone = "[[zone]]\nname = \"Upper\"\n[[zone.region]]\nbottom = 60\n[zone.product]\nkind = \"vinyl\"\n";
    fs::write(at("a.toml"), format!("{JOB}{zone}")).unwrap();
    let args = ["layout", "a.dxf", "--job", "a.toml", "--out", "z", "--no-pictures", "--quiet"];
    assert!(run(dir.path(), &args).status.success());
    let panels = |old: &str| {
        let done = run(dir.path(), &["compare", old, "b.dxf", "--format", "json"]);
        let told = text(&done.stderr);
        assert_eq!(done.status.code(), Some(0), "{old}: {told}");
        let json: serde_json::Value = serde_json::from_slice(&done.stdout).unwrap();
        json["panels"][0].as_u64().unwrap()
    };
    let count = |file: &str| {
        let json: serde_json::Value = serde_json::from_slice(&fs::read(at(file)).unwrap()).unwrap();
        json["panels"].as_array().unwrap().len() as u64
    };
    let both = count("z/layout.json") + count("z/zone-1-upper/layout.json");
    assert_eq!((panels("z"), panels("z/layout.json")), (both, both));
    assert_eq!(panels("z/zone-1-upper/layout.json"), count("z/zone-1-upper/layout.json"));
    // Without the zone's folder the layout is not whole: it is told, not compared as a house without that siding.
    fs::rename(at("z/zone-1-upper"), at("elsewhere")).unwrap();
    for old in ["z", "z/layout.json"] {
        let done = run(dir.path(), &["compare", old, "b.dxf", "--format", "json"]);
        let told = text(&done.stderr);
        assert_eq!(done.status.code(), Some(1), "{old}: {told}");
        assert!(told.contains("no-layout-folder") && told.contains("zone-1-upper"), "{told}");
    }
}

#[test]
fn what_is_no_layout_is_refused_by_name() {
    let dir = folder();
    let at = |name: &str| dir.path().join(name);
    fs::create_dir(at("none")).unwrap();
    fs::create_dir(at("older")).unwrap();
    fs::write(at("older/layout.json"), "{ \"format\": \"lapwright-layout/1\" }").unwrap();
    fs::create_dir(at("broken")).unwrap();
    fs::write(at("broken/layout.json"), "{ \"format\": \"lapwright-layout/2\", ").unwrap();
    for (old, code, says) in [
        ("none", "no-layout-folder", "there is no layout.json"),
        ("older", "layout-format", "lapwright-layout/1"),
        ("broken", "layout-unreadable", "line 1"),
        ("nowhere", "file-unreadable", "nowhere"),
        ("a.toml", "", ""),
    ] {
        let done = run(dir.path(), &["compare", old, "b.dxf", "--out", "out"]);
        let told = text(&done.stderr);
        assert_eq!(done.status.code(), Some(1), "{old}: {told}");
        assert!(told.contains(code) && told.contains(says), "{old}: {told}");
        assert!(!at("out").exists(), "{old}");
    }
    // A folder that holds what is compared is no place for what comes of it.
    let done = run(dir.path(), &["compare", "a-layout", "b.dxf", "--out", "a-layout", "--replace"]);
    assert_eq!(done.status.code(), Some(1));
    assert!(at("a-layout/layout.json").exists());
}
