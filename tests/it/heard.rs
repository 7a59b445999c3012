//! A layout that breaks rules of the check is heard: exit 4, and everything that is written of it says
//! so and shows where. One that no layout could mend is told as such.

use std::path::Path;

use assert_cmd::Command;
use calamine::{Data, Reader, Xlsx};
use lapwright::cli::outcome::Outcome;
use lapwright::finding::Findings;
use lapwright::layout::Layout;
use lapwright::layout::set::{LaidSet, LaidSets};
use lapwright::model::drawing::Shape;
use lapwright::model::sheet::Sheet;
use lapwright::outputs::set;
use lapwright::verify;

use crate::sheets::{legible, of, texts};
use crate::support::{laid_set, root};

const BAR: &str = "CHECK FAILED: ";

fn program(args: &[&str]) -> std::process::Output {
    Command::cargo_bin("lapwright").unwrap().current_dir(root()).args(args).output().unwrap()
}

fn line(layer: &str, a: (f64, f64), b: (f64, f64)) -> String {
    format!("0\nLINE\n8\n{layer}\n10\n{}\n20\n{}\n11\n{}\n21\n{}\n", a.0, a.1, b.0, b.1)
}

/// A wall 20 ft by 8 ft with grade drawn at a height.
fn wall_in_the_ground(dir: &Path, grade: f64) -> String {
    let mut walls = String::from("0\nPOLYLINE\n8\nA-WALL-OTLN\n66\n1\n70\n1\n");
    for (x, y) in [(0.0, 0.0), (240.0, 0.0), (240.0, 96.0), (0.0, 96.0)] {
        walls.push_str(&format!("0\nVERTEX\n8\nA-WALL-OTLN\n10\n{x}\n20\n{y}\n"));
    }
    let grade = line("C-TOPO-PROF", (-60.0, grade), (300.0, grade));
    let dxf = format!("0\nSECTION\n2\nENTITIES\n{walls}0\nSEQEND\n{grade}0\nENDSEC\n0\nEOF\n");
    let path = dir.join("wall.dxf");
    std::fs::write(&path, dxf).unwrap();
    let job = "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n";
    std::fs::write(dir.join("wall.toml"), job).unwrap();
    path.to_string_lossy().into_owned()
}

#[test]
fn a_broken_rule_is_exit_four_in_every_command_quiet_or_not() {
    let dir = tempfile::tempdir().unwrap();
    let d = wall_in_the_ground(dir.path(), 40.0);
    let job = dir.path().join("wall.toml");
    let (d, j) = (d.as_str(), job.to_str().unwrap());
    let out = dir.path().join("out");
    let o = out.to_str().unwrap();
    let cases: [&[&str]; 9] = [
        &["layout", d, "--job", j, "--out", o, "--no-pictures"],
        &["layout", d, "--job", j, "--out", o, "--no-pictures", "--quiet", "--strict"],
        &["takeoff", d, "--job", j],
        &["takeoff", d, "--job", j, "--quiet"],
        &["takeoff", d, "--job", j, "--format", "csv"],
        &["takeoff", d, "--job", j, "--format", "json", "--quiet"],
        &["takeoff", d, "--job", j, "--by", "wall", "--format", "json"],
        &["takeoff", d, "--job", j, "--explain", "panels"],
        &["check", d, "--job", j],
    ];
    for args in cases {
        let r = program(args);
        let (said, told) = (String::from_utf8_lossy(&r.stdout), String::from_utf8_lossy(&r.stderr));
        assert_eq!(r.status.code(), Some(4), "{args:?}: {told}");
        assert!(told.contains(BAR), "{args:?}: {told}");
        let bar = BAR.trim_end_matches(": ");
        assert!(args[0] == "layout" || said.contains(bar), "{args:?}: {said}");
    }
    // The sum that is told is that of its parts: 240 in under the start, 47 3/4 in over the foot with 6 in clear
    // of grade and courses of 8 in, are 79.583 sq ft; the least allowed is a quarter of 160 and rounding.
    let said = String::from_utf8(program(&["check", d, "--job", j]).stdout).unwrap();
    let said = said.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        said.contains("79.583 sq ft too near to finished grade or under it, 0 sq ft in"),
        "{said}"
    );
    assert!(said.contains("bare: 79.583 sq ft, must be 40."), "{said}");
    // What is to be done stands beside it.
    let said = String::from_utf8(program(&["check", d, "--job", j]).stdout).unwrap();
    let said = said.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(said.contains("more than a quarter of the wall is bare"), "{said}");
    assert!(said.contains("Draw the wall's outline down to finished grade only"), "{said}");
    assert!(said.contains("check-failed"), "{said}");
    // A wall that stands in the ground by less than a quarter is laid out: with 6 in clear of grade it
    // is bare to the second course line, 16 in of 96.
    let d = wall_in_the_ground(dir.path(), 8.0);
    let r = program(&["takeoff", &d, "--job", j, "--quiet"]);
    assert_eq!(r.status.code(), Some(0), "{}", String::from_utf8_lossy(&r.stderr));
    assert!(r.stderr.is_empty() && !String::from_utf8_lossy(&r.stdout).contains(BAR));
    // One that stands in it wholly bears no panel, and is no layout that keeps the rules.
    let d = wall_in_the_ground(dir.path(), 95.0);
    let r = program(&["check", &d, "--job", j]);
    assert_eq!(r.status.code(), Some(4));
    let said = String::from_utf8_lossy(&r.stdout);
    let said = said.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(said.contains("no siding on the wall"), "{said}");
}

#[test]
fn check_tells_what_later_stages_warn_of() {
    let dir = tempfile::tempdir().unwrap();
    let d = wall_in_the_ground(dir.path(), -20.0);
    // A wall 8 ft high in courses of 7 from 3 in beneath it leaves a strip at its top.
    let job = dir.path().join("seven.toml");
    let text = "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n[product]\nexposure = 7\n[courses]\ndatum = -3\n";
    std::fs::write(&job, text).unwrap();
    let args = [d.as_str(), "--job", job.to_str().unwrap()];
    let check = program(&[&["check"], &args[..]].concat());
    let said = String::from_utf8_lossy(&check.stdout).into_owned();
    assert!(said.contains("strip-thin"), "{said}");
    assert_eq!(check.status.code(), Some(0), "{said}");
    let strict = program(&[&["check"], &args[..], &["--strict"]].concat());
    assert_eq!(strict.status.code(), Some(3));
    let names = std::fs::read_dir(dir.path()).unwrap().count();
    assert_eq!(names, 3, "check wrote a layout");
}

#[test]
fn check_tells_whatever_a_layout_tells() {
    for (stem, path) in crate::support::samples() {
        let dir = tempfile::tempdir().unwrap();
        let layout = crate::support::laid_by_a_crew(&stem);
        let job = std::fs::read_to_string(path.with_extension("toml")).unwrap();
        let keep = |l: &&str| !l.trim_start().starts_with("effort");
        let job: String = job.lines().filter(keep).map(|l| format!("{l}\n")).collect();
        let crew = "[seams]\neffort = \"crew\"\n";
        let job = match job.contains("[seams]\n") {
            true => job.replace("[seams]\n", crew),
            false => job + crew,
        };
        let file = dir.path().join("j.toml");
        std::fs::write(&file, job).unwrap();
        let check = program(&["check", path.to_str().unwrap(), "--job", file.to_str().unwrap()]);
        let said = String::from_utf8_lossy(&check.stdout).into_owned();
        assert!(layout.findings.len() > 1, "{stem}");
        for f in &layout.findings {
            assert!(said.contains(&format!(" {}", f.code().word())), "{stem}: {f:?}\n{said}");
        }
    }
}

/// The sample house with faults put into it, and checked again.
fn broken(stem: &str, faults: &[crate::faults::Break]) -> LaidSet {
    let mut set = laid_set(stem);
    faults.iter().for_each(|fault| fault(&mut set.layout));
    set.layout.verify = verify::check(&set.layout);
    assert!(!set.layout.verify.passes());
    set
}

fn pieces_gone(l: &mut Layout) {
    for c in [2, 5] {
        l.elevations[1].walls[0].courses[c].runs[0].pieces.remove(0);
    }
}

fn sets(house: LaidSet) -> LaidSets {
    LaidSets { house, zones: Vec::new() }
}

#[test]
fn the_exit_code_follows_from_the_check_before_anything_else() {
    let sound = sets(laid_set("one-gable"));
    assert_eq!(Outcome::of(&sound, &Findings::default(), false).code(), 0);
    let failed = sets(broken("curlew-cottage", &[pieces_gone]));
    for strict in [false, true] {
        assert_eq!(Outcome::of(&failed, &Findings::default(), strict).code(), 4);
    }
    // A zone's own set counts as the house's does.
    let zone = LaidSets { zones: vec![failed.house], ..sound };
    assert_eq!(Outcome::of(&zone, &Findings::default(), false), Outcome::CheckFailed);
}

/// Middles of the circles of a sheet, paper inches.
fn circles(s: &Sheet) -> Vec<(f64, f64)> {
    let faults = s.drawing.items.iter().filter(|i| s.drawing.layers[i.layer].name == "faults");
    let rings = faults.filter_map(|i| match &i.shape {
        Shape::Polyline(p) if p.closed && p.vertices.len() == 24 => Some(p),
        _ => None,
    });
    let mean = |p: &lapwright::model::drawing::Polyline| {
        let n = p.vertices.len() as f64;
        let sum = |f: fn(&lapwright::model::drawing::Vertex) -> f64| p.vertices.iter().map(f);
        (sum(|v| v.at.x).sum::<f64>() / n, sum(|v| v.at.y).sum::<f64>() / n)
    };
    rings.map(mean).collect()
}

#[test]
fn every_sheet_says_so_and_every_place_is_circled_numbered_and_named() {
    let set = broken("curlew-cottage", &[pieces_gone]);
    let layout = &set.layout;
    let verify = &layout.verify;
    let sheets = lapwright::annotate::sheets(layout, &set.backdrops);
    let words = format!("{BAR}{} places", verify.places());
    for s in &sheets {
        legible("broken", s);
        let said = texts(s).filter(|t| t.content.starts_with(&words)).count();
        assert!(said >= 1, "{}: no bar", s.name);
        let layers: Vec<&str> = s.drawing.layers.iter().map(|l| l.name.as_str()).collect();
        // Red, and in a frame that shows without color.
        let frame = s.drawing.layers.iter().find(|l| l.name == "alarm-frame").unwrap();
        assert!(layers.contains(&"alarm") && frame.pen.width >= 1.0, "{}: {layers:?}", s.name);
    }
    let placed: Vec<_> = verify.numbered().filter(|(_, v)| v.at.is_some()).collect();
    assert!(placed.len() > 2);
    for (number, v) in placed {
        let at = v.at.as_ref().unwrap();
        let of: Vec<&Sheet> =
            sheets.iter().filter(|s| s.title.contains(at.elevation.as_str())).collect();
        let mark = format!("FAIL {number}");
        let named = |t: &str| t == mark || t.starts_with(&format!("{mark}: "));
        let marks = of.iter().flat_map(|s| texts(s)).filter(|t| named(&t.content)).count();
        assert_eq!(marks, 1, "{mark} on {}", at.elevation);
        assert!(of.iter().any(|s| !circles(s).is_empty()), "{mark} is not circled");
        // The cover lists it in words.
        let cover = sheets.iter().filter(|s| s.title.starts_with("Cover"));
        let listed = cover.flat_map(texts).any(|t| t.content.starts_with(&format!("{mark}: ")));
        assert!(listed, "{mark} is not on the cover");
    }
    // A sound layout has none of it.
    let set = laid_set("curlew-cottage");
    for s in lapwright::annotate::sheets(&set.layout, &set.backdrops) {
        assert!(texts(&s).all(|t| !t.content.contains("CHECK FAILED")), "{}", s.name);
        assert!(s.drawing.layers.iter().all(|l| l.name != "alarm"));
    }
}

#[test]
fn a_circle_stands_where_the_place_is() {
    // One wall 10 ft wide on one sheet: the circle's distance from the wall's sides by its scale.
    let set = broken(
        "one-wall",
        &[|l: &mut Layout| {
            l.elevations[0].walls[0].courses[3].runs[0].pieces.clear();
        }],
    );
    let layout = &set.layout;
    let e = &layout.elevations[0];
    let sheets = lapwright::annotate::sheets(layout, &set.backdrops);
    let sheet = *of(&sheets, e).first().unwrap();
    let walls =
        sheet.drawing.items.iter().filter(|i| sheet.drawing.layers[i.layer].name == "walls");
    let walls = walls.filter_map(|i| match &i.shape {
        // The key shows a line of that kind too.
        Shape::Polyline(p) if p.closed => Some(p.vertices.iter().map(|v| [v.at.x, v.at.y])),
        _ => None,
    });
    let spread = |points: Vec<[f64; 2]>, axis: usize| {
        points.iter().fold((f64::MAX, f64::MIN), |(a, b), p| (a.min(p[axis]), b.max(p[axis])))
    };
    let paper: Vec<[f64; 2]> = walls.flatten().collect();
    // The heavy outline is the limit of siding, between the pockets of the posts.
    let outline: Vec<[f64; 2]> = e.walls.iter().flat_map(|w| w.field.concat()).collect();
    let drawn = circles(sheet);
    let expected = layout.verify.violations().filter_map(|v| v.at.as_ref());
    for at in expected.map(|p| p.point) {
        let place = |axis: usize| {
            let ((p0, p1), (h0, h1)) = (spread(paper.clone(), axis), spread(outline.clone(), axis));
            p0 + (at[axis] - h0) / (h1 - h0) * (p1 - p0)
        };
        let (x, y) = (place(0), place(1));
        let near = drawn.iter().any(|c| (c.0 - x).hypot(c.1 - y) < 0.05);
        assert!(near, "{at:?} at {x}, {y}: {drawn:?}");
    }
}

#[test]
fn every_file_says_so() {
    let set = broken(
        "one-gable",
        &[|l: &mut Layout| {
            l.elevations[0].walls[0].courses[2].runs[0].pieces.remove(0);
        }],
    );
    let source = std::fs::read(root().join("sample-drawings/one-gable.dxf")).unwrap();
    let files = set::files(&set, &source, false).unwrap();
    let mut seen = 0;
    for (name, bytes) in &files {
        if name.ends_with(".xlsx") {
            let mut book = Xlsx::new(std::io::Cursor::new(bytes.clone())).unwrap();
            let sheets = book.sheet_names();
            assert!(sheets.len() >= 7);
            for sheet in sheets {
                let range = book.worksheet_range(&sheet).unwrap();
                let first = range.get_value((0, 0)).unwrap_or(&Data::Empty).to_string();
                assert!(first.starts_with(BAR), "{sheet}: {first}");
            }
            continue;
        }
        let text = String::from_utf8_lossy(bytes);
        assert!(text.contains("CHECK FAILED"), "{name}");
        seen += 1;
        if name.ends_with(".csv") {
            let first = text.lines().next().unwrap();
            assert!(first.trim_start_matches('"').starts_with(BAR), "{name}: {first}");
            // Its rows are all as long, as RFC 4180 asks.
            let rows = csv::ReaderBuilder::new().flexible(false).from_reader(bytes.as_slice());
            assert!(rows.into_records().all(|r| r.is_ok()), "{name}");
        }
    }
    assert!(seen > 12, "{seen} files");
    // On the overlay the place is circled, numbered and named, on a layer of its own.
    let overlay = files.iter().find(|f| f.0 == "overlay.dxf").unwrap();
    let drawing = dxf::Drawing::load(&mut std::io::Cursor::new(&overlay.1)).unwrap();
    let failed: Vec<_> = drawing.entities().filter(|e| e.common.layer == "Z-ELEV-FAIL").collect();
    let named = failed.iter().any(|e| match &e.specific {
        dxf::entities::EntityType::Text(t) => t.value.starts_with("FAIL 1: "),
        _ => false,
    });
    assert!(named && failed.len() >= 4, "{}", failed.len());
}

#[test]
fn a_sound_layout_says_nothing_of_it() {
    let set = laid_set("one-gable");
    let source = std::fs::read(root().join("sample-drawings/one-gable.dxf")).unwrap();
    for (name, bytes) in set::files(&set, &source, false).unwrap() {
        assert!(!String::from_utf8_lossy(&bytes).contains("CHECK FAILED"), "{name}");
    }
}

#[test]
fn a_fault_of_the_job_is_told_without_the_programs_own_names() {
    let dir = tempfile::tempdir().unwrap();
    let d = wall_in_the_ground(dir.path(), -20.0);
    let job = dir.path().join("wrong.toml");
    let j = job.to_str().unwrap();
    for wrong in [
        "[product]\nlength = true\n",
        "[product]\nlength = [1, 2]\n",
        "[product]\nlength = { a = 1 }\n",
        "[courses]\nexposure_x = 1\n",
        "[courses]\ndatum = 2026-01-01\n",
        "product = 3\n",
        "[trim]\npost_below = []\n",
        "[[return]]\ncorner = \"front-1/left\"\nwidth = {}\n",
        "[product]\nkind = 7\n",
        "[drawing]\nunit = []\n",
        "[[zone]]\nname = 3\n",
        "[seams]\neffort = \"hard\"\n",
    ] {
        std::fs::write(&job, wrong).unwrap();
        let r = program(&["check", &d, "--job", j]);
        let told = String::from_utf8_lossy(&r.stderr).into_owned();
        assert_eq!(r.status.code(), Some(1), "{wrong}: {told}");
        assert!(told.contains("job-"), "{wrong}: {told}");
        for inner in ["untagged", "variant of", "struct ", "Written", "expected enum"] {
            assert!(!told.contains(inner), "{wrong}: {told}");
        }
    }
    for key in ["length", "exposure"] {
        std::fs::write(&job, format!("[product]\n{key} = false\n")).unwrap();
        let told = program(&["check", &d, "--job", j]).stderr;
        assert!(String::from_utf8_lossy(&told).contains("not a length"), "{key}");
    }
}

#[test]
fn faults_of_arguments_are_usage_and_two_changed_letters_are_understood() {
    let o = program(&["layout", "sample-drawings/one-wall.dxf", "--known", "foo"]);
    assert_eq!(o.status.code(), Some(2));
    for (given, meant) in [("--jbo", "--job"), ("--otu", "--out"), ("--quite", "--quiet")] {
        let o = program(&["layout", "sample-drawings/one-wall.dxf", given, "x"]);
        let told = String::from_utf8_lossy(&o.stderr).into_owned();
        assert_eq!(o.status.code(), Some(2), "{told}");
        assert!(told.contains(&format!("'{meant}'")), "{given}: {told}");
    }
}

#[test]
fn what_was_drawn_in_millimeters_is_printed_as_it_was_drawn() {
    // A wall 960 mm by 2400 mm at 12,340 mm: none of it on the grid of 1/1024 in.
    let dir = tempfile::tempdir().unwrap();
    let ring = [(12340.0, 70.0), (16300.0, 70.0), (16300.0, 2470.0), (12340.0, 2470.0)];
    let window = [(13300.0, 970.0), (14260.0, 970.0), (14260.0, 1930.0), (13300.0, 1930.0)];
    let mut text = String::from("0\nSECTION\n2\nENTITIES\n");
    for (layer, points) in [("A-WALL-OTLN", ring), ("A-GLAZ", window)] {
        text.push_str(&format!("0\nPOLYLINE\n8\n{layer}\n66\n1\n70\n1\n"));
        for (x, y) in points {
            text.push_str(&format!("0\nVERTEX\n8\n{layer}\n10\n{x}\n20\n{y}\n"));
        }
        text.push_str("0\nSEQEND\n");
    }
    text.push_str("0\nENDSEC\n0\nEOF\n");
    let drawing = dir.path().join("mm.dxf");
    std::fs::write(&drawing, &text).unwrap();
    let job = dir.path().join("mm.toml");
    let words = "[drawing]\nunit = \"mm\"\n[sheet]\nlengths = \"mm\"\n[seams]\neffort = \"crew\"\n[courses]\ndatum = \"0mm\"\n";
    std::fs::write(&job, words).unwrap();
    let out = dir.path().join("out");
    let o = program(&[
        "layout",
        drawing.to_str().unwrap(),
        "--job",
        job.to_str().unwrap(),
        "--out",
        out.to_str().unwrap(),
        "--no-pictures",
    ]);
    assert_eq!(o.status.code(), Some(0), "{}", String::from_utf8_lossy(&o.stderr));
    let said = String::from_utf8_lossy(&o.stderr).into_owned();
    let mut all = vec![("terminal".to_owned(), said)];
    for name in ["cut-list.csv", "story-pole.csv", "report.txt", "overlay.dxf"] {
        all.push((name.to_owned(), std::fs::read_to_string(out.join(name)).unwrap()));
    }
    // The window stands 960 mm in and is 960 mm wide: no figure lies off one of these by noise.
    for (name, text) in &all {
        for word in text.split(|c: char| !(c.is_ascii_digit() || c == '.')) {
            let Ok(v) = word.parse::<f64>() else { continue };
            for drawn in [960.0, 1920.0, 2400.0, 12340.0, 13300.0, 14260.0, 16300.0, 2470.0] {
                let off: f64 = (v - drawn).abs();
                assert!(off == 0.0 || off > 0.0249, "{name}: {word} for {drawn}");
            }
        }
    }
    let overlay = &all.iter().find(|a| a.0 == "overlay.dxf").unwrap().1;
    for drawn in ["12340", "16300", "2470"] {
        let there = overlay.lines().any(|l| l.trim().trim_end_matches(".0") == drawn);
        assert!(there, "{drawn} is not in the overlay");
    }
}

/// A wall in which no three courses can keep their seams 60 in apart: with panels of 150 in a run of 299
/// takes its first seam within 103 in, and three places in turn need 120.
fn crowded() -> LaidSet {
    let ring = [(0.0, 0.0), (299.5, 0.0), (299.5, 72.0), (0.0, 72.0)];
    let drawing = crate::support::dxf(&[("A-WALL-OTLN", &ring)]);
    let job = "[drawing]\nunit = \"inch\"\n[product]\nlength = 150\n[seams]\neffort = \"brief\"\nstagger = 60\nclear_courses = 2\n";
    let job = lapwright::job::file::parse(job, "job").unwrap();
    crate::support::lay_set(drawing.as_bytes(), &job)
}

#[test]
fn what_no_layout_avoids_is_told_as_such_and_is_no_failure() {
    let set = crowded();
    let verify = &set.layout.verify;
    assert!(verify.passes(), "{:?}", verify.violations().next());
    assert!(verify.unavoidable().count() > 0);
    let sheets = lapwright::annotate::sheets(&set.layout, &set.backdrops);
    let cover: Vec<_> = sheets.iter().filter(|s| s.title.starts_with("Cover")).collect();
    let said = |words: &str| cover.iter().any(|s| texts(s).any(|t| t.content.contains(words)));
    assert!(said("Proven: no layout keeps") && said("X1"), "the cover does not name it");
    assert!(sheets.iter().all(|s| texts(s).all(|t| !t.content.contains("CHECK FAILED"))));
    let all = sets(set);
    assert_eq!(Outcome::of(&all, &Findings::default(), false), Outcome::Done);
    assert_eq!(Outcome::of(&all, &Findings::default(), true), Outcome::Warned);
}

#[test]
fn a_proof_excuses_nothing_that_another_layout_avoids() {
    use lapwright::layout::rule::Rule;
    use lapwright::layout::violation::Subject;
    let layout = crowded().layout;
    let failures = |l: &Layout| {
        let all = verify::check(l);
        let of = all.rules.iter().find(|r| r.rule == Rule::SeamStagger).unwrap();
        (of.violations.len(), of.unavoidable.len())
    };
    let (before, proven) = failures(&layout);
    assert_eq!(before, 0);
    // Two neighbors that break nothing between them, brought over one another.
    let named: Vec<String> = layout
        .verify
        .unavoidable()
        .flat_map(|v| [Some(&v.subject), v.other.as_ref()].into_iter().flatten())
        .filter_map(|s| match s {
            Subject::Run { run } => Some(run.to_string()),
            _ => None,
        })
        .collect();
    assert!(!named.is_empty());
    let mut worse = 0;
    for course in 0..layout.elevations[0].walls[0].courses.len() - 1 {
        let mut broken = layout.clone();
        let courses = &mut broken.elevations[0].walls[0].courses;
        let below = courses[course].runs[0].seams.clone();
        courses[course + 1].runs[0].seams = below;
        let (failed, excused) = failures(&broken);
        worse += usize::from(failed > 0);
        assert!(failed > 0 || excused >= proven, "course {course}: {failed} and {excused}");
    }
    // Where the courses round them leave room.
    assert!(worse >= 1, "{worse} of the changed layouts fail");
    // A wider wall has room: the same two neighbors one over the other are a failure.
    let ring = [(0.0, 0.0), (440.0, 0.0), (440.0, 72.0), (0.0, 72.0)];
    let drawing = crate::support::dxf(&[("A-WALL-OTLN", &ring)]);
    let mut layout = crate::support::lay(drawing.as_bytes(), &crate::support::inches());
    assert!(layout.verify.passes());
    let courses = &mut layout.elevations[0].walls[0].courses;
    courses[3].runs[0].seams = courses[2].runs[0].seams.clone();
    let (failed, excused) = failures(&layout);
    assert!(failed > 0 && excused == 0, "{failed} and {excused}");
}
