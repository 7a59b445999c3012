//! What a page asks of the program, without a browser.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test or bench may stop at the first thing that is not as it should be"
)]

use lapwright::browser::calls;
use lapwright::finding::Findings;
use lapwright::job::file;
use lapwright::outputs::house::{self, Wanted};
use lapwright::pipeline;
use lapwright::units::LengthStyle;
use serde_json::Value;

fn sample(name: &str) -> Vec<u8> {
    std::fs::read(format!("{}/sample-drawings/{name}", env!("CARGO_MANIFEST_DIR"))).unwrap()
}

fn text(name: &str) -> String {
    String::from_utf8(sample(name)).unwrap()
}

/// A job of the samples as another reader of TOML has it: of its plain `key = value` lines alone.
fn toml_of(name: &str) -> Value {
    let (mut out, mut section) = (serde_json::Map::new(), String::new());
    for line in text(name).lines().map(|l| l.split(" #").next().unwrap().trim().to_owned()) {
        if let Some(head) = line.strip_prefix('[').and_then(|l| l.strip_suffix(']')) {
            section = head.to_owned();
        } else if let Some((key, value)) = line.split_once(" = ").filter(|_| !line.starts_with('#'))
        {
            let of =
                out.entry(section.clone()).or_insert_with(|| Value::Object(Default::default()));
            of.as_object_mut().unwrap().insert(key.to_owned(), json(value));
        }
    }
    Value::Object(out)
}

fn json(text: &str) -> Value {
    serde_json::from_str(text).unwrap()
}

#[test]
fn what_is_seen_stands_in_the_coordinates_of_the_drawing() {
    let seen =
        json(&calls::look(&sample("one-window.dxf"), "one-window.dxf", &text("one-window.toml")));
    assert_eq!(seen["stopped"], false);
    assert_eq!(seen["walls"].as_array().unwrap().len(), 1);
    let opening = &seen["openings"][0];
    assert_eq!(opening["kind"], "window");
    let unit = seen["inches"].as_f64().unwrap();
    let at: Vec<f64> =
        opening["outline"].as_array().unwrap().iter().map(|v| v.as_f64().unwrap()).collect();
    // Its outline, times the inches of a unit, is as wide and high as it is said to be.
    let span = |off: usize| {
        let all = at.iter().skip(off).step_by(2);
        all.clone().fold(f64::MIN, |a, v| a.max(*v)) - all.fold(f64::MAX, |a, v| a.min(*v))
    };
    assert_eq!(opening["size"], LengthStyle::Feet.size(span(0) * unit, span(1) * unit));
    // What the job says is told key by key, and no default.
    assert_eq!(seen["said"], toml_of("one-window.toml"));
    // It lies in its wall and in the box round all that is shown.
    let bounds: Vec<f64> =
        seen["bounds"].as_array().unwrap().iter().map(|v| v.as_f64().unwrap()).collect();
    for p in at.chunks(2) {
        assert!(p[0] > bounds[0] && p[0] < bounds[2] && p[1] > bounds[1] && p[1] < bounds[3]);
    }
}

#[test]
fn a_job_that_is_none_leaves_the_drawing_to_be_seen() {
    let seen = json(&calls::look(&sample("one-window.dxf"), "d.dxf", "courses = 7"));
    assert_eq!(seen["stopped"], true);
    assert!(!seen["layers"].as_array().unwrap().is_empty());
    assert_eq!(seen["findings"][0]["severity"], "error");
    // What is no drawing at all is told, too.
    let seen = json(&calls::look(b"no drawing", "d.dxf", ""));
    assert_eq!((&seen["stopped"], &seen["bounds"]), (&Value::Bool(true), &Value::Null));
    assert!(!seen["findings"].as_array().unwrap().is_empty());
    assert!(calls::lay(b"no drawing", "d.dxf", "", false, &mut |_| {}).told.refused);
}

#[test]
fn a_layout_has_the_files_that_the_command_writes() {
    let (bytes, job) = (sample("one-window.dxf"), text("one-window.toml"));
    let laid = calls::lay(&bytes, "one-window.dxf", &job, true, &mut |_| {});
    let mut findings = Findings::default();
    let job = file::read(&job, "one-window.toml", &mut findings).unwrap();
    let sets =
        pipeline::layout(&bytes, "one-window.dxf", &job, &mut findings, &mut |_| {}).unwrap();
    let wanted = Wanted { pictures: true, overlay_alone: false };
    let told = house::files(&sets, &bytes, wanted).unwrap();
    assert!(laid.files == told.files);
    assert!(laid.told.summary.contains("panels") && laid.told.alarm.is_empty());
    // The archive holds them all, and none of the time or the machine.
    let packed = calls::pack(&laid.files).unwrap();
    assert_eq!(Some(&packed), calls::pack(&told.files).as_ref());
    let count = u16::from_le_bytes([packed[packed.len() - 12], packed[packed.len() - 11]]);
    assert_eq!(usize::from(count), laid.files.len());
}

#[test]
fn a_first_job_is_one_that_the_drawing_is_read_with() {
    let answer = json(&calls::start(&sample("one-window.dxf"), "one-window.dxf"));
    let job = answer["job"]["text"].as_str().unwrap();
    assert_eq!(
        json(&calls::look(&sample("one-window.dxf"), "one-window.dxf", job))["stopped"],
        false
    );
    assert!(json(&calls::start(b"no drawing", "d.dxf"))["refused"]["why"][0]["code"].is_string());
}

/// The job after a change.
fn changed(job: &str, change: &str) -> String {
    json(&calls::edit(job, change))["job"]["text"].as_str().unwrap_or("REFUSED").to_owned()
}

#[test]
fn a_change_leaves_all_else_in_the_job_as_it_was() {
    let job = "# Mine.\n[courses] # of panels\nstud_spacing = 16 # as built\n\n[[elevation]]\nname = \"front\"\n";
    let set = changed(job, r#"{"at": ["courses", "stud_spacing"], "set": 24}"#);
    assert_eq!(set, job.replace("= 16 #", "= 24 #"));
    assert_eq!(changed(&set, r#"{"at": ["courses", "stud_spacing"], "set": 16}"#), job);
    // A value in a table that is not there yet, and out again.
    let unit = changed(job, r#"{"at": ["drawing", "unit"], "set": "inch"}"#);
    assert!(unit.contains("[drawing]\nunit = \"inch\"\n"), "{unit}");
    assert!(!changed(&unit, r#"{"at": ["drawing", "unit"], "set": null}"#).contains("unit ="));
    // Tables of a list: a new one, one found by its name, one taken out.
    let wall = changed(job, r#"{"at": ["wall"], "add": {"outline": [[0, 0], [240, 96.5]]}}"#);
    assert!(wall.ends_with("[[wall]]\noutline = [[0, 0], [240, 96.5]]\n"), "{wall}");
    assert!(!changed(&wall, r#"{"at": ["wall"], "drop": 0}"#).contains("outline"));
    let view = r#"{"at": ["elevation"], "merge": [["name", "front"], ["region", [0, 0, 9, 9]]]}"#;
    let region = changed(job, view);
    assert_eq!(region, format!("{job}region = [0, 0, 9, 9]\n"));
    let other = changed(&region, &view.replace("front", "back"));
    assert_eq!(other.matches("[[elevation]]").count(), 2);
    // A list of names.
    let skip = changed(job, r#"{"at": ["skip"], "add": "front-2"}"#);
    let skip = changed(&skip, r#"{"at": ["skip"], "add": "front-3"}"#);
    assert!(skip.contains("skip = [\"front-2\", \"front-3\"]"), "{skip}");
    assert!(file::parse(&skip, "job.toml").is_ok());
}

#[test]
fn what_would_be_no_job_is_refused_and_said_why() {
    let why = |job: &str, change: &str| json(&calls::edit(job, change))["refused"]["why"].clone();
    let low = why("", r#"{"at": ["courses", "stud_spacing"], "set": -3}"#);
    assert_eq!(low[0]["code"], "job-value");
    assert!(low[0]["message"].as_str().unwrap().contains("stud_spacing"), "{low}");
    assert_eq!(why("[", r#"{"at": ["skip"], "add": "a"}"#)[0]["code"], "job-unreadable");
    // What fits nothing says nothing of why; none of it ends the program.
    for change in [
        "",
        "[]",
        r#"{"at": [], "set": 1}"#,
        r#"{"at": ["skip"], "drop": 4}"#,
        r#"{"at": ["skip", "x"], "set": 1}"#,
    ] {
        assert_eq!(why("skip = [\"front-1\"]\n", change), serde_json::json!([]), "{change}");
    }
}

#[test]
fn the_settings_are_those_of_the_schema() {
    let schema = json(&calls::settings());
    assert!(schema["properties"]["courses"].is_object());
}
