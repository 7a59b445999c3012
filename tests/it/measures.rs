//! Lengths taped on site: a drawing moved to what was taped of a house is laid out as that house is.

use std::collections::BTreeMap;
use std::path::Path;
use std::process::{Command, Output};

use lapwright::finding::taped::TapedFinding;
use lapwright::finding::{FindingKind, Findings};
use lapwright::geom::vocabulary::Rect;
use lapwright::job::{Job, file as job_file};
use lapwright::language::SheetLanguage;
use lapwright::layout::Layout;
use lapwright::model::measure::Measure;
use lapwright::pipeline;
use lapwright::pipeline::measures::measures;
use lapwright::wording::measures as words;

use crate::smallcase::{APART, JOB, Side, drawing, drawing_apart, house, rect};
use crate::support::broken;

fn job(more: &str) -> Job {
    job_file::parse(&format!("{JOB}{more}"), "job.toml").unwrap()
}

fn laid(sides: &[Side], job: &Job) -> (Layout, Findings) {
    laid_of(&drawing(sides), job)
}

fn laid_of(text: &str, job: &Job) -> (Layout, Findings) {
    let mut findings = Findings::default();
    let sets = pipeline::layout(text.as_bytes(), "t.dxf", job, &mut findings, &mut |_| {});
    (sets.unwrap_or_else(|e| panic!("{e:?} {findings:?}")).house.layout, findings)
}

fn measured(sides: &[Side]) -> Vec<Measure> {
    let text = drawing(sides);
    let read = pipeline::reading(text.as_bytes(), "t.dxf", &job(""), &mut Findings::default());
    measures(&read.unwrap().house, &laid(sides, &job("")).0)
}

/// The house of a seed as it was built: corners, widths, levels and openings off by known amounts.
fn built(seed: u64) -> Vec<Side> {
    let mut sides = house(seed);
    // Front: 1/2 in wider, its right side 1/4 in short at the soffit, the peak 3/4 in up and 3/8 in over; the
    // door 1/2 in to the right, the window 3/4 in to the right, 1/4 in narrower, its sill 3/8 in down.
    let wide = sides[0].width;
    let front = &mut sides[0].rings;
    front[0].1[1].0 += 0.5;
    front[0].1[2].0 += 0.5;
    front[0].1[2].1 -= 0.25;
    front[0].1[3].0 += 0.375;
    front[0].1[3].1 += 0.75;
    for p in &mut front[1].1 {
        p.0 += 0.5;
    }
    for p in &mut front[2].1 {
        p.0 += 0.75;
        if p.1 < 79.0 {
            p.1 -= 0.375;
        }
    }
    let right = front[2].1.iter().map(|p| p.0).fold(0.0, f64::max);
    front[2].1.iter_mut().filter(|p| p.0 > right - 1.0).for_each(|p| p.0 -= 0.25);
    sides[0].width = wide + 0.5;
    // Left: it starts 5/8 in below the floor line at its left corner, and is 1/2 in narrower.
    let deep = sides[3].width;
    let left = &mut sides[3].rings;
    left[0].1[0].1 -= 0.625;
    left[0].1[1].0 -= 0.5;
    left[0].1[2].0 -= 0.5;
    sides[3].width = deep - 0.5;
    // Right: its soffit is 1/2 in lower on both sides.
    sides[1].rings[0].1[2].1 -= 0.5;
    sides[1].rings[0].1[3].1 -= 0.5;
    sides
}

/// The same as it is laid out: where the left side starts out of level, siding starts level from the lower corner.
fn as_laid(seed: u64) -> Vec<Side> {
    let mut sides = built(seed);
    sides[3].rings[0].1[1].1 -= 0.625;
    sides
}

/// What is taped of a house.
fn taped(sides: &[Side]) -> BTreeMap<String, f64> {
    measured(sides).into_iter().map(|m| (m.name, m.drawn)).collect()
}

/// Places of walls, openings and pieces, in order.
fn places(layout: &Layout) -> (Vec<String>, Vec<f64>) {
    let (mut names, mut all) = (Vec::new(), Vec::new());
    for (e, w) in layout.walls() {
        names.push(format!("{} {}", e.name, w.id));
        all.extend(w.outline.iter().flatten());
        for o in &w.openings {
            names.push(o.id.to_string());
            all.extend([o.left, o.right, o.sill, o.head]);
        }
        for c in &w.courses {
            all.extend([c.bottom, c.top]);
            for p in c.runs.iter().flat_map(|r| &r.pieces) {
                names.push(p.mark.to_string());
                all.extend([p.x0, p.x1, p.length]);
            }
        }
    }
    for t in &layout.trims {
        names.push(t.mark.to_string());
        all.push(t.length);
    }
    (names, all)
}

pub(crate) fn assert_alike(a: &Layout, b: &Layout, said: &str) {
    let ((names, places_a), (others, places_b)) = (places(a), places(b));
    assert_eq!(names, others, "{said}");
    assert_eq!(places_a.len(), places_b.len(), "{said}");
    for (i, (x, y)) in places_a.iter().zip(&places_b).enumerate() {
        assert!((x - y).abs() <= 1.0 / 16.0, "{said}: place {i}: {x} {y}");
    }
}

#[test]
fn a_drawing_moved_to_the_tape_is_laid_out_as_the_house_that_was_taped() {
    for seed in 1..=4 {
        let (drawn, truth) = (house(seed), built(seed));
        let mut with_tape = job("");
        with_tape.taped = taped(&truth);
        let (moved, findings) = laid(&drawn, &with_tape);
        assert_alike(&moved, &laid(&as_laid(seed), &job("")).0, &format!("house {seed}"));
        assert_eq!(broken(&moved), Vec::<String>::new());
        assert!(
            !findings.all().iter().any(|f| f.code().word() == "taped-contradicts"),
            "{findings:?}"
        );
        // And it is not the house as drawn.
        assert_ne!(places(&moved).1, places(&laid(&drawn, &job("")).0).1);
    }
}

#[test]
fn taping_the_drawing_itself_moves_nothing() {
    for seed in 1..=3 {
        let sides = house(seed);
        let mut same = job("");
        same.taped = taped(&sides);
        let (moved, plain) = (laid(&sides, &same).0, laid(&sides, &job("")).0);
        assert_eq!(places(&moved), places(&plain), "house {seed}");
    }
}

/// The drawing with its windows as fills instead of loops, with a size written in each.
fn filled(sides: &[Side], fill: impl Fn(&[(f64, f64)]) -> String) -> String {
    let bare: Vec<Side> = sides
        .iter()
        .map(|s| {
            let rings = s.rings.iter().filter(|r| r.0 != "A-GLAZ").cloned().collect();
            Side { rings, ..s.clone() }
        })
        .collect();
    let (mut more, mut x) = (String::new(), 0.0);
    for s in sides {
        for (_, ring) in s.rings.iter().filter(|r| r.0 == "A-GLAZ") {
            let there: Vec<(f64, f64)> = ring.iter().map(|p| (p.0 + x, p.1)).collect();
            more += &fill(&there);
            let at = middle(&there);
            more += &format!("0\nTEXT\n8\nA-NOTE\n10\n{}\n20\n{}\n40\n4\n1\nTYP.\n", at.0, at.1);
        }
        x += s.width + APART;
    }
    drawing(&bare).replace("0\nENDSEC\n0\nEOF\n", &format!("{more}0\nENDSEC\n0\nEOF\n"))
}

fn middle(ring: &[(f64, f64)]) -> (f64, f64) {
    let n = ring.len() as f64;
    (ring.iter().map(|p| p.0).sum::<f64>() / n, ring.iter().map(|p| p.1).sum::<f64>() / n)
}

fn as_hatch(ring: &[(f64, f64)]) -> String {
    let mut out = String::from(
        "0\nHATCH\n8\nA-GLAZ\n10\n0\n20\n0\n30\n0\n2\nSOLID\n70\n1\n71\n0\n91\n1\n92\n2\n72\n0\n73\n1\n93\n4\n",
    );
    ring.iter().for_each(|(x, y)| out += &format!("10\n{x}\n20\n{y}\n"));
    out + "97\n0\n75\n0\n76\n1\n98\n0\n"
}

/// Corners of a SOLID go crosswise.
fn as_solid(ring: &[(f64, f64)]) -> String {
    let mut out = String::from("0\nSOLID\n8\nA-GLAZ\n");
    for (code, i) in [(10, 0), (11, 1), (12, 3), (13, 2)] {
        out += &format!("{code}\n{}\n{}\n{}\n", ring[i].0, code + 10, ring[i].1);
    }
    out
}

#[test]
fn windows_that_are_fills_are_moved_with_what_is_written_in_them() {
    let (drawn, truth) = (house(2), built(2));
    let mut with_tape = job("");
    with_tape.taped = taped(&truth);
    for fill in [as_hatch, as_solid] {
        let text = filled(&drawn, fill);
        let (moved, _) = laid_of(&text, &with_tape);
        assert_alike(&moved, &laid(&as_laid(2), &job("")).0, "fills");
        // The words stand in the middle of each window as they did.
        let texts = |job: &Job| -> Vec<Vec<Rect>> {
            let read = pipeline::reading(text.as_bytes(), "t.dxf", job, &mut Findings::default());
            read.unwrap().house.elevations.iter().map(|e| e.texts.clone()).collect()
        };
        let (before, after) = (texts(&job("")), texts(&with_tape));
        let mut words = 0;
        for (i, (was, is)) in drawn.iter().zip(&truth).enumerate() {
            let glass = |s: &Side| -> Vec<(f64, f64)> {
                s.rings.iter().filter(|r| r.0 == "A-GLAZ").map(|r| middle(&r.1)).collect()
            };
            for (was, is) in glass(was).into_iter().zip(glass(is)) {
                let on = |t: &&(Rect, Rect)| (t.0.x0 - was.0).abs() < 1.0 && t.0.contains(was);
                let both: Vec<(Rect, Rect)> =
                    before[i].iter().copied().zip(after[i].iter().copied()).collect();
                let (from, to) = both.iter().find(on).unwrap();
                let off = to.center() - from.center();
                assert!((off.x - (is.0 - was.0)).abs() <= 1.0 / 16.0, "{off:?} {was:?} {is:?}");
                assert!((off.y - (is.1 - was.1)).abs() <= 1.0 / 16.0, "{off:?} {was:?} {is:?}");
                words += 1;
            }
        }
        assert_eq!(words, 3);
    }
}

#[test]
fn what_stands_near_two_elevations_is_moved_once() {
    // A door 12 in from the left corner of a side that is drawn 24 in beside the front.
    let wall = |w: f64| ("A-WALL-OTLN", rect(0.0, 0.0, w, 96.0));
    let side = |title: &str, width: f64, mut rings: Vec<_>| {
        rings.push(("A-ELEV-FRAM", rect(-11.0, -60.0, width + 11.0, 120.0)));
        Side { title: title.to_owned(), width, rings }
    };
    let sides = vec![
        side("FRONT ELEVATION", 240.0, vec![wall(240.0)]),
        side("RIGHT ELEVATION", 200.0, vec![wall(200.0), ("A-DOOR", rect(12.0, 0.0, 48.0, 80.0))]),
    ];
    let text = drawing_apart(&sides, 24.0);
    let mut wider = job("");
    wider.taped = [("front-1/foot-width".to_owned(), 246.0)].into();
    let ends = |job: &Job| -> Vec<[f64; 2]> {
        let layout = laid_of(&text, job).0;
        let wall = layout.walls().find(|(_, w)| w.id == *"right-1").unwrap().1;
        let door = &wall.openings[0];
        let x = wall.outline.iter().map(|p| p[0]).fold(f64::MAX, f64::min);
        vec![[x, x + 200.0], [door.left - x, door.right - x]]
    };
    assert_eq!(ends(&job(""))[1], [12.0, 48.0]);
    assert_eq!(ends(&wider)[1], [12.0, 48.0]);
    let front = laid_of(&text, &wider).0;
    let front = front.walls().find(|(_, w)| w.id == *"front-1").unwrap().1;
    assert_eq!(front.outline.iter().map(|p| p[0]).fold(0.0, f64::max), 246.0);
}

#[test]
fn a_taped_length_that_cannot_be_is_refused_in_a_job_too() {
    for (said, ok) in [
        ("\"front-1/foot-width\" = -240", false),
        ("\"front-1/foot-width\" = \"9000'\"", false),
        ("\"front-1/left-lean\" = 240", false),
        ("\"front-1/left-foot\" = -24", true),
    ] {
        let read = job_file::parse(&format!("{JOB}[taped]\n{said}\n"), "job.toml");
        assert_eq!(read.is_ok(), ok, "{said}");
        if let Err(e) = read {
            assert_eq!(e.0.code().word(), "job-value", "{said}");
        }
    }
}

#[test]
fn blanks_are_taken_as_drawn_and_told() {
    let (drawn, truth) = (house(2), built(2));
    let all = taped(&truth);
    let mut third = job("");
    third.taped = all
        .iter()
        .enumerate()
        .filter(|(i, _)| i % 3 != 0)
        .map(|(_, (k, v))| (k.clone(), *v))
        .collect();
    let (layout, findings) = laid(&drawn, &third);
    assert_eq!(broken(&layout), Vec::<String>::new());
    let told = findings.all().iter().find_map(|f| match &f.kind {
        FindingKind::Taped(TapedFinding::Taken { taken, as_drawn, named }) => {
            Some((*taken, *as_drawn, named.clone()))
        }
        _ => None,
    });
    let (taken, as_drawn, named) = told.unwrap();
    assert_eq!((taken + as_drawn, taken), (all.len(), third.taped.len()));
    assert!(!named.is_empty() && named.iter().all(|n| !third.taped.contains_key(n)));
    // What was taped holds: measured again, each of these lengths is there, but for what hangs on a blank beside it.
    let mut alone = job("");
    alone.taped = [("front-1/foot-width".to_owned(), drawn[0].width + 1.0)].into();
    let layout = laid(&drawn, &alone).0;
    let wall = layout.walls().find(|(_, w)| w.id == *"front-1").unwrap().1;
    let right = wall.outline.iter().map(|p| p[0]).fold(0.0, f64::max);
    assert_eq!(right, drawn[0].width + 1.0, "the top has the difference of the foot");
    assert_eq!(wall.outline.iter().filter(|p| p[0] == right).count(), 2);
}

#[test]
fn what_does_not_close_is_named_with_its_error() {
    let sides = house(2);
    let mut odd = job("");
    // Both widths as drawn and the left side plumb: the right side cannot lean by 1 in.
    let w = sides[1].width;
    let said = [("foot-width", w), ("top-width", w), ("left-lean", 0.0), ("right-lean", 1.0)];
    odd.taped = said.map(|(k, v)| (format!("right-1/{k}"), v)).into();
    let (_, findings) = laid(&sides, &odd);
    let off = findings.all().iter().find_map(|f| match &f.kind {
        FindingKind::Taped(TapedFinding::Contradicts { wall, measures, off }) => {
            Some((wall.to_string(), measures.len(), *off))
        }
        _ => None,
    });
    assert_eq!(off, Some(("right-1".to_owned(), 4, -1.0)));
    // A window that would come to lie over the door stays as it is drawn, and is told.
    let mut over = job("");
    over.taped = [("front-W1/place".to_owned(), 50.0)].into();
    let (layout, findings) = laid(&sides, &over);
    assert!(findings.all().iter().any(|f| f.code().word() == "taped-contradicts"));
    let front = layout.walls().next().unwrap().1;
    let drawn = sides[0].rings[2].1.iter().map(|p| p.0).fold(f64::MAX, f64::min);
    assert!(front.openings.iter().any(|o| o.left == drawn));
}

#[test]
fn the_worst_come_first_and_are_counted() {
    // A wall of 20 ft by 8 ft without openings, panels of 12 ft 6 in: twelve courses of 8 in, two pieces each.
    let sides = vec![Side {
        title: "FRONT ELEVATION".to_owned(),
        width: 240.0,
        rings: vec![("A-WALL-OTLN", rect(0.0, 0.0, 240.0, 96.0))],
    }];
    let quick = job("[courses]\ndatum = 0\n[product]\nexposure = 8\n");
    let text = drawing(&sides);
    let house = pipeline::reading(text.as_bytes(), "t.dxf", &quick, &mut Findings::default())
        .unwrap()
        .house;
    let all = measures(&house, &laid(&sides, &quick).0);
    let of = |name: &str| all.iter().find(|m| m.name == format!("front-1/{name}")).unwrap();
    // Every course ends at the right side; one alone at the foot, one under the soffit.
    assert_eq!(of("foot-width").spoils.pieces, 12);
    assert_eq!(of("left-foot").spoils.pieces, 1);
    assert_eq!(of("right-height").spoils.pieces, 1);
    assert_eq!(
        (of("foot-width").drawn, of("left-height").drawn, of("left-lean").drawn),
        (240.0, 96.0, 0.0)
    );
    let counts: Vec<usize> = all.iter().map(|m| m.spoils.pieces).collect();
    assert!(counts.is_sorted_by(|a, b| a >= b), "{counts:?}");
}

#[test]
fn sheets_to_tape_by_are_legible_and_name_each_length_once() {
    // The cottage has walls with more lengths than one sheet holds.
    let dir = concat!(env!("CARGO_MANIFEST_DIR"), "/sample-drawings/curlew-cottage");
    let bytes = std::fs::read(format!("{dir}.dxf")).unwrap();
    let text = std::fs::read_to_string(format!("{dir}.toml")).unwrap();
    let mut job = job_file::parse(&text, "job").unwrap();
    job.seams.effort = lapwright::model::seam::Effort::Crew;
    let house = pipeline::reading(&bytes, "c", &job, &mut Findings::default()).unwrap().house;
    let mut layout = crate::support::lay(&bytes, &job);
    let all = measures(&house, &layout);
    for say in [SheetLanguage::En, SheetLanguage::Es, SheetLanguage::Both] {
        layout.job.sheet.language = say;
        let sheets = lapwright::annotate::measures(&layout, &all);
        assert!(sheets.len() > layout.walls().count(), "no wall goes on: {}", sheets.len());
        let mut said: BTreeMap<&str, usize> = BTreeMap::new();
        for s in &sheets {
            crate::sheets::legible(&format!("measure {say:?}"), s);
            crate::sheets::texts(s).for_each(|t| *said.entry(&t.content).or_default() += 1);
            let whole: Vec<&str> = crate::sheets::texts(s).map(|t| t.content.as_str()).collect();
            // What to do and the caution stand on each sheet, whole.
            for sentence in [words::HOW, words::CAUTION] {
                let all = say.each().iter().all(|l| whole.join(" ").contains(sentence.of(*l)));
                assert!(all, "{say:?}: {whole:?}");
            }
        }
        // What is to be taped, and what an error spoils, as often as there are such lengths.
        let of: Vec<String> = all
            .iter()
            .flat_map(|m| say.each().iter().map(move |l| (m, *l)))
            .flat_map(|(m, l)| [words::what(l, m), words::spoils(l, &m.spoils)])
            .collect();
        for text in &of {
            let count = of.iter().filter(|t| *t == text).count();
            assert_eq!(said.get(text.as_str()), Some(&count), "{say:?}: {text}");
        }
        let english = said.contains_key("width at the foot");
        assert_eq!(english, say != SheetLanguage::Es);
    }
}

fn run(at: &Path, args: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_lapwright")).args(args).current_dir(at).output().unwrap()
}

#[test]
fn the_table_goes_out_is_filled_in_and_comes_back() {
    let dir = tempfile::tempdir().unwrap();
    let at = dir.path();
    std::fs::write(at.join("h.dxf"), drawing(&house(3))).unwrap();
    std::fs::write(at.join("h.toml"), JOB).unwrap();
    let o = run(at, &["measure", "h.dxf", "--job", "h.toml"]);
    assert_eq!(o.status.code(), Some(0), "{}", String::from_utf8_lossy(&o.stderr));
    let folder = at.join("h-measure");
    for name in ["measure.pdf", "measure/01-front-1.svg"] {
        assert!(folder.join(name).metadata().unwrap().len() > 1000, "{name}");
    }
    let table = folder.join("measured.csv");
    let text = std::fs::read_to_string(&table).unwrap();
    // One blank is filled in, as a spreadsheet saves it.
    let line = text.lines().find(|l| l.contains("front-1/foot-width")).unwrap();
    let width = house(3)[0].width;
    let filled = line.replacen(",\"\",", &format!(",{},", width + 2.0), 1);
    assert_ne!(line, filled);
    std::fs::write(&table, text.replace(line, &filled)).unwrap();
    let args = [
        "layout",
        "h.dxf",
        "--job",
        "h.toml",
        "--measured",
        "h-measure/measured.csv",
        "--no-pictures",
    ];
    let o = run(at, &args);
    assert_eq!(o.status.code(), Some(0), "{}", String::from_utf8_lossy(&o.stderr));
    let layout = std::fs::read(at.join("h-layout/layout.json")).unwrap();
    let layout = lapwright::read::layout_json::layout(&layout).unwrap();
    let right = layout.elevations[0].walls[0].outline.iter().map(|p| p[0]).fold(0.0, f64::max);
    assert_eq!(right, width + 2.0);
    // What that changes of the house as drawn stands beside it, as a comparison tells it.
    let told = String::from_utf8_lossy(&o.stderr).into_owned();
    assert!(told.contains("compare.txt"), "{told}");
    let report = std::fs::read_to_string(at.join("h-layout/compare.txt")).unwrap();
    assert!(report.contains("wall front-1: right side 2\" to the right"), "{report}");
    let json = std::fs::read(at.join("h-layout/compare.json")).unwrap();
    let json: serde_json::Value = serde_json::from_slice(&json).unwrap();
    // The peak stands where it stood: the right rake is flatter.
    assert_eq!(json["changes"].as_array().unwrap().len(), 2, "{report}");
    // What was filled in is not written over.
    let o = run(at, &["measure", "h.dxf", "--job", "h.toml"]);
    assert_eq!(o.status.code(), Some(1));
    assert!(std::fs::read_to_string(&table).unwrap().contains(&filled));
}
