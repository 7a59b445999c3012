//! The commands as a user runs them.

use assert_cmd::Command;

use crate::support::root;

fn run(args: &[&str]) -> std::process::Output {
    Command::cargo_bin("lapwright").unwrap().current_dir(root()).args(args).output().unwrap()
}

#[test]
fn the_main_job_writes_every_file_of_the_contract() {
    let dir = tempfile::tempdir().unwrap();
    let out = dir.path().join("one");
    let o = out.to_str().unwrap();
    let args = [
        "layout",
        "sample-drawings/one-window.dxf",
        "--job",
        "sample-drawings/one-window.toml",
        "--out",
        o,
    ];
    for _ in 0..2 {
        // The second run replaces the first.
        let result = run(&args);
        assert!(result.status.success(), "{}", String::from_utf8_lossy(&result.stderr));
    }
    for name in [
        "layout.json",
        "overlay.dxf",
        "sheets.pdf",
        "takeoff.csv",
        "cut-list.csv",
        "report.txt",
        "review.html",
        "sheets/01-cover.svg",
        "sheets/01-cover.png",
    ] {
        assert!(out.join(name).metadata().unwrap().len() > 100, "{name}");
    }
    assert_eq!(std::fs::read_dir(dir.path()).unwrap().count(), 1, "something temporary was left");
    let json: serde_json::Value =
        serde_json::from_slice(&std::fs::read(out.join("layout.json")).unwrap()).unwrap();
    assert_eq!(json["format"], "lapwright-layout/2");
    for key in [
        "drawing",
        "job",
        "datum",
        "elevations",
        "panels",
        "bound",
        "trims",
        "takeoff",
        "verify",
        "findings",
    ] {
        assert!(!json[key].is_null(), "{key}");
    }
    assert_eq!(
        json["bound"]["best"].as_u64().unwrap() as usize,
        json["panels"].as_array().unwrap().len()
    );
    assert!(std::fs::read(out.join("sheets.pdf")).unwrap().starts_with(b"%PDF"));
}

#[test]
fn strict_exits_with_three_on_warnings() {
    let dir = tempfile::tempdir().unwrap();
    let o = dir.path().join("out");
    // Without its job the R12 sample names no unit: a warning.
    let args = [
        "layout",
        "sample-drawings/r12.dxf",
        "--out",
        o.to_str().unwrap(),
        "--no-pictures",
        "--strict",
    ];
    assert_eq!(run(&args).status.code(), Some(3));
}

#[test]
fn standard_input_is_read() {
    let bytes = std::fs::read(root().join("sample-drawings/one-wall.dxf")).unwrap();
    let out = Command::cargo_bin("lapwright")
        .unwrap()
        .args(["takeoff", "-", "--format", "json"])
        .write_stdin(bytes)
        .output()
        .unwrap();
    let lines: serde_json::Value = serde_json::from_slice(&out.stdout).unwrap();
    assert_eq!(lines[0]["id"], "panels");
}

#[test]
fn check_and_layers_tell_what_was_read() {
    let text =
        String::from_utf8(run(&["check", "sample-drawings/curlew-cottage.dxf"]).stdout).unwrap();
    assert!(text.contains("front-2") && text.contains("24'-0\" wide"), "{text}");
    let text =
        String::from_utf8(run(&["layers", "sample-drawings/curlew-cottage.dxf"]).stdout).unwrap();
    assert!(text.lines().any(|l| l.contains("A-WALL-OTLN") && l.contains("wall")), "{text}");
}

#[test]
fn wrong_usage_exits_with_two() {
    assert_eq!(run(&["lay"]).status.code(), Some(2));
    assert_eq!(run(&["layout"]).status.code(), Some(2));
}

#[test]
fn the_takeoff_table_fits_eighty_columns() {
    let text =
        String::from_utf8(run(&["takeoff", "sample-drawings/curlew-cottage.dxf"]).stdout).unwrap();
    assert!(text.lines().count() > 8 && text.lines().all(|l| l.chars().count() <= 80), "{text}");
}

#[test]
fn the_job_schema_knows_every_key_of_the_sample() {
    let schema = String::from_utf8(run(&["schema", "job"]).stdout).unwrap();
    let value: serde_json::Value = serde_json::from_str(&schema).unwrap();
    for key in
        ["title", "drawing", "layers", "product", "courses", "seams", "trim", "takeoff", "sheet"]
    {
        assert!(!value["properties"][key].is_null(), "{key}");
    }
}

#[test]
fn guesses_at_layers_are_a_job_file_that_reads() {
    // A wall of 20 ft by 8 ft and a window on layers that no job names.
    let hostile = "\"fenster] #x";
    let wall = crate::support::rect(0.0, 0.0, 240.0, 96.0);
    let window = crate::support::rect(40.0, 30.0, 76.0, 80.0);
    let drawing = crate::support::dxf(&[("Aussenwand", &wall), (hostile, &window)]);
    let dir = tempfile::tempdir().unwrap();
    let path = dir.path().join("d.dxf");
    std::fs::write(&path, drawing).unwrap();
    let out = std::process::Command::new(env!("CARGO_BIN_EXE_lapwright"))
        .args(["layers", "--suggest"])
        .arg(&path)
        .output()
        .unwrap();
    assert!(out.status.success());
    let text = String::from_utf8(out.stdout).unwrap();
    let job = lapwright::job::file::parse(&text, "job").unwrap();
    use lapwright::model::linework::Role;
    assert_eq!(job.layers[&Role::Wall], ["Aussenwand"]);
    assert_eq!(job.layers[&Role::Window], [hostile]);
}

#[test]
fn paper_and_scale_are_taken_and_what_there_is_none_of_is_told() {
    let dir = tempfile::tempdir().unwrap();
    let out = dir.path().join("one");
    let with = |more: &[&str]| {
        let mut args = vec!["layout", "sample-drawings/one-window.dxf", "--no-pictures", "--job"];
        args.extend(["sample-drawings/one-window.toml", "--out", out.to_str().unwrap()]);
        args.extend(more);
        run(&args)
    };
    for more in [
        ["--paper", "ARCH Q"],
        ["--paper", ""],
        ["--scale", "1/5\" = 1'-0\""],
        ["--scale", "one to fifty"],
    ] {
        let result = with(&more);
        let words = String::from_utf8_lossy(&result.stderr).into_owned();
        // An option that says nothing is wrong usage.
        assert_eq!(result.status.code(), Some(2), "{more:?}");
        assert!(words.contains(more[0]), "{more:?}: {words}");
        assert!(!out.exists(), "{more:?} wrote something");
    }
    let result = with(&["--paper", "a3", "--scale", "1:25", "--overlay", "separate"]);
    assert!(result.status.success(), "{}", String::from_utf8_lossy(&result.stderr));
    // A3 is 420 mm wide (ISO 216, DrawingFact::IsoPaper).
    let svg = std::fs::read_to_string(out.join("sheets/01-cover.svg")).unwrap();
    assert!(svg.contains("width=\"16.535in\""), "{}", &svg[..300]);
    // 20 ft at 1:25 is 9.6 in: one part; its sheet names the scale.
    let sheet = std::fs::read_to_string(out.join("sheets/04-wall-w1.svg")).unwrap();
    assert!(sheet.contains(">\n1:25\n<"), "no scale on the sheet");
    let alone = std::fs::read(out.join("overlay-alone.dxf")).unwrap();
    let both = std::fs::read(out.join("overlay.dxf")).unwrap();
    let entities = |b: &[u8]| {
        let d = dxf::Drawing::load(&mut std::io::Cursor::new(b.to_vec())).unwrap();
        d.entities().filter(|e| e.common.layer.starts_with("Z-ELEV-IDEN")).count()
    };
    assert!(alone.len() < both.len() && entities(&alone) == entities(&both));
}
