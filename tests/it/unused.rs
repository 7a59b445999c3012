//! What is drawn on a layer with a role is used, or told by its layer with the reason; the sum closes.

use std::fmt::Write;

use assert_cmd::Command;
use lapwright::finding::house::HouseFinding;
use lapwright::finding::{Finding, FindingKind, Findings, Severity};
use lapwright::geom::polygon::bounds;
use lapwright::geom::vocabulary::Rect;
use lapwright::job::Job;
use lapwright::model::account::LayerAccount;
use lapwright::model::house::House;
use lapwright::model::unused::Unused;
use lapwright::pipeline;
use lapwright::units::LengthStyle;
use lapwright::wording::findings::words;

use crate::random_sheets::{Dice, house as random_house};
use crate::support::{inches, job, rect, samples};

const GLASS: &str = "A-GLAZ";
const FIXTURE: &str = "A-ELEV-OBST";

/// Something drawn in a cell whose lower left corner is given, and what shall become of it.
struct Sort {
    name: &'static str,
    draw: fn(&str, f64, f64) -> String,
    /// Entities of its layer: those of its blocks each for itself.
    entities: usize,
    /// Why it is not used, on an opening layer.
    left: Option<fn() -> Unused>,
}

fn line(layer: &str, from: (f64, f64), to: (f64, f64)) -> String {
    format!("0\nLINE\n8\n{layer}\n10\n{}\n20\n{}\n11\n{}\n21\n{}\n", from.0, from.1, to.0, to.1)
}

fn ring(layer: &str, corners: &[(f64, f64)], more: &str) -> String {
    let mut out = format!("0\nLWPOLYLINE\n8\n{layer}\n{more}90\n{}\n70\n1\n", corners.len());
    for (x, y) in corners {
        let _ = write!(out, "10\n{x}\n20\n{y}\n");
    }
    out
}

/// A window 30 by 24 in a cell.
fn sash(x: f64, y: f64) -> [(f64, f64); 4] {
    rect(x + 5.0, y + 5.0, x + 35.0, y + 29.0)
}

/// Four lines round a window, the last of them short of the first by `gap`.
fn lines(layer: &str, x: f64, y: f64, gap: f64) -> String {
    let [a, b, c, d] = sash(x, y);
    let short = (a.0 + gap, a.1);
    line(layer, short, b) + &line(layer, b, c) + &line(layer, d, c) + &line(layer, d, a)
}

fn insert(block: &str, layer: &str, x: f64, y: f64) -> String {
    format!("0\nINSERT\n8\n{layer}\n2\n{block}\n10\n{x}\n20\n{y}\n")
}

fn corners(kind: &str, layer: &str, at: &[(f64, f64)], height: f64) -> String {
    let mut out = format!("0\n{kind}\n8\n{layer}\n");
    for (i, (x, y)) in at.iter().enumerate() {
        let z = if i == 2 { height } else { 0.0 };
        let _ = write!(out, "1{i}\n{x}\n2{i}\n{y}\n3{i}\n{z}\n");
    }
    out
}

fn solid(layer: &str, x: f64, y: f64) -> String {
    let [a, b, c, d] = sash(x, y);
    // The third and fourth corners are crossed over (DXF reference, SOLID).
    corners("SOLID", layer, &[a, b, d, c], 0.0)
}

fn two_faces(layer: &str, x: f64, y: f64) -> String {
    let [a, b, c, d] = sash(x, y);
    corners("3DFACE", layer, &[a, b, c, c], 0.0) + &corners("3DFACE", layer, &[a, c, d, d], 0.0)
}

fn hatch(layer: &str, at: &[(f64, f64)], pattern: &str, solid: u8) -> String {
    let mut out = format!(
        "0\nHATCH\n8\n{layer}\n2\n{pattern}\n70\n{solid}\n91\n1\n92\n2\n72\n0\n73\n1\n93\n{}\n",
        at.len()
    );
    for (x, y) in at {
        let _ = write!(out, "10\n{x}\n20\n{y}\n");
    }
    out.push_str("97\n0\n75\n0\n76\n1\n");
    if solid == 0 {
        out.push_str("52\n0\n41\n1\n77\n0\n78\n1\n53\n45\n43\n0\n44\n0\n45\n-2\n46\n2\n79\n0\n");
    }
    out
}

/// Everything that may stand in a cell.
#[allow(clippy::too_many_lines)] // One table: a line a sort.
fn sorts() -> Vec<Sort> {
    let used = |name, entities, draw| Sort { name, draw, entities, left: None };
    let left = |name, entities, why, draw| Sort { name, draw, entities, left: Some(why) };
    vec![
        used("a closed loop", 1, |l, x, y| ring(l, &sash(x, y), "")),
        used("a loop with panes and a muntin", 4, |l, x, y| {
            ring(l, &sash(x, y), "")
                + &ring(l, &rect(x + 7.0, y + 7.0, x + 19.0, y + 27.0), "")
                + &ring(l, &rect(x + 21.0, y + 7.0, x + 33.0, y + 27.0), "")
                + &line(l, (x + 5.0, y + 17.0), (x + 35.0, y + 17.0))
        }),
        used("a block", 2, |l, x, y| insert("SASH", l, x, y)),
        used("a SOLID", 1, solid),
        used("two 3DFACEs", 2, two_faces),
        used("a solid HATCH", 1, |l, x, y| hatch(l, &sash(x, y), "SOLID", 1)),
        used("a HATCH of lines", 1, |l, x, y| hatch(l, &sash(x, y), "GLASS", 0)),
        used("lines that meet", 4, |l, x, y| lines(l, x, y, 0.0)),
        used("lines with a gap of 0.1", 4, |l, x, y| lines(l, x, y, 0.1)),
        used("lines with a gap of 0.24", 4, |l, x, y| lines(l, x, y, 0.24)),
        used("a loop of 8 by 8", 1, |l, x, y| ring(l, &rect(x, y, x + 8.0, y + 8.0), "")),
        left("lines with a gap of 0.5", 4, || Unused::OpenLoop, |l, x, y| lines(l, x, y, 0.5)),
        left("one line", 1, || Unused::LooseLines, |l, x, y| line(l, (x, y), (x + 30.0, y + 2.0))),
        left(
            "a REGION",
            1,
            || Unused::NotRead { entity: "REGION".to_owned() },
            |l, x, y| format!("0\nREGION\n8\n{l}\n10\n{x}\n20\n{y}\n70\n1\n1\nmnpq\n"),
        ),
        left(
            "a tilted 3DFACE",
            1,
            || Unused::NotFlat,
            |l, x, y| corners("3DFACE", l, &sash(x, y), 10.0),
        ),
        left(
            "a point",
            1,
            || Unused::PointOnly,
            |l, x, y| format!("0\nPOINT\n8\n{l}\n10\n{}\n20\n{}\n", x + 9.0, y + 9.0),
        ),
        left(
            "an invisible loop",
            1,
            || Unused::Invisible,
            |l, x, y| ring(l, &sash(x, y), "60\n1\n"),
        ),
        left(
            "an external reference",
            1,
            || Unused::ExternalReference { file: "windows.dwg".to_owned() },
            |l, x, y| insert("AWAY", l, x, y),
        ),
        left(
            "an empty block",
            1,
            || Unused::BlockEmpty { block: "EMPTY".to_owned() },
            |l, x, y| insert("EMPTY", l, x, y),
        ),
        left(
            "a block without a definition",
            1,
            || Unused::BlockMissing { block: "NOWHERE".to_owned() },
            |l, x, y| insert("NOWHERE", l, x, y),
        ),
        left(
            "a SPLINE without points",
            1,
            || Unused::Unreadable,
            |l, _, _| format!("0\nSPLINE\n8\n{l}\n70\n0\n71\n99\n40\n0\n10\n0\n20\n0\n"),
        ),
        left("a loop on a sheet", 1, || Unused::OnSheet, |l, x, y| ring(l, &sash(x, y), "67\n1\n")),
    ]
}

/// A wall 40 ft by 25 ft, and more.
fn drawing(tables: &str, entities: &str) -> String {
    let head = |name: &str, flags: u8, path: &str| {
        format!("0\nBLOCK\n8\n0\n2\n{name}\n70\n{flags}\n10\n0\n20\n0\n{path}")
    };
    let pane = ring("0", &sash(0.0, 0.0), "") + &line("0", (20.0, 5.0), (20.0, 29.0));
    let wall = ring("A-WALL-OTLN", &rect(0.0, 0.0, 480.0, 300.0), "");
    [
        tables,
        "0\nSECTION\n2\nBLOCKS\n",
        &head("SASH", 0, ""),
        &pane,
        "0\nENDBLK\n",
        &head("EMPTY", 0, ""),
        "0\nENDBLK\n",
        &head("AWAY", 4, "1\nwindows.dwg\n"),
        "0\nENDBLK\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n",
        &wall,
        entities,
        "0\nENDSEC\n0\nEOF\n",
    ]
    .concat()
}

fn read(drawing: &str, job: &Job) -> (House, Findings) {
    let mut findings = Findings::default();
    let read = pipeline::reading(drawing.as_bytes(), "d.dxf", job, &mut findings);
    (read.unwrap_or_else(|r| panic!("{r}\n{drawing}")).house, findings)
}

fn account<'a>(house: &'a House, layer: &str) -> &'a LayerAccount {
    house.accounts.iter().find(|a| a.layer == layer).unwrap()
}

/// Findings of what is not used, in words.
fn told(findings: &Findings) -> Vec<String> {
    let unused =
        |f: &&Finding| matches!(f.kind, FindingKind::House(HouseFinding::DrawnUnused { .. }));
    let all = findings.all().iter().filter(unused);
    all.map(|f| words(f, LengthStyle::Feet).message).collect()
}

fn closes(house: &House) {
    for a in &house.accounts {
        assert_eq!(a.drawn, a.used + a.unused(), "{a:?}");
        assert!(a.annotations + a.details <= a.entities, "{a:?}");
    }
}

fn opening_boxes(house: &House) -> Vec<Rect> {
    let walls = house.elevations.iter().flat_map(|e| &e.walls);
    walls.flat_map(|w| &w.openings).filter_map(|o| bounds(&o.outline)).collect()
}

#[test]
fn each_sort_of_thing_is_cut_where_it_is_drawn_or_told_with_its_reason() {
    for sort in sorts() {
        let (house, findings) = read(&drawing("", &(sort.draw)(GLASS, 100.0, 100.0)), &inches());
        closes(&house);
        let a = account(&house, GLASS);
        assert_eq!((a.drawn, a.entities), (1, sort.entities), "{}: {a:?}", sort.name);
        let boxes = opening_boxes(&house);
        match &sort.left {
            None => {
                let small = sort.name.contains("8 by 8");
                let [x0, y0, x1, y1] =
                    if small { [100.0, 100.0, 108.0, 108.0] } else { [105.0, 105.0, 135.0, 129.0] };
                assert_eq!(boxes, [Rect::new(x0, y0, x1, y1)], "{}", sort.name);
                assert_eq!(told(&findings), Vec::<String>::new(), "{}", sort.name);
            }
            Some(why) => {
                assert!(boxes.is_empty(), "{}", sort.name);
                assert_eq!((a.used, &a.left[0].why), (0, &why()), "{}", sort.name);
                let told = told(&findings);
                assert_eq!(told.len(), 1, "{}", sort.name);
                assert!(told[0].starts_with("A-GLAZ: 1 drawn, 0 cut, 1 not ("), "{told:?}");
                assert!(findings.count(Severity::Warning) > 0);
            }
        }
    }
}

#[test]
fn random_cells_add_up_by_layer_and_reason() {
    let (sorts, mut dice) = (sorts(), Dice(77));
    for _ in 0..25 {
        let mut entities = String::new();
        // What is expected, counted as it is drawn: things, entities and used of each layer, and reasons.
        let mut expected = [(GLASS, 0, 0, 0, Vec::new()), (FIXTURE, 0, 0, 0, Vec::new())];
        for cell in 0..35u32 {
            let (x, y) = (f64::from(cell % 7) * 66.0 + 8.0, f64::from(cell / 7) * 57.0 + 9.0);
            let sort = &sorts[dice.roll(sorts.len() as u64) as usize];
            let (layer, drawn, all, used, left) = &mut expected[dice.roll(2) as usize];
            entities.push_str(&(sort.draw)(layer, x, y));
            *drawn += 1;
            *all += sort.entities;
            match &sort.left {
                Some(why) => left.push(why()),
                None => *used += 1,
            }
        }
        let (house, findings) = read(&drawing("", &entities), &inches());
        closes(&house);
        for (layer, drawn, all, used, mut left) in expected.into_iter().filter(|e| e.1 > 0) {
            let a = account(&house, layer);
            assert_eq!((a.drawn, a.entities, a.used), (drawn, all, used), "{layer}\n{entities}");
            left.sort();
            let mut found: Vec<Unused> =
                a.left.iter().flat_map(|c| std::iter::repeat_n(c.why.clone(), c.things)).collect();
            found.sort();
            assert_eq!(found, left, "{layer}");
        }
        assert!(told(&findings).len() <= 2, "one warning a layer");
    }
}

#[test]
fn a_layer_says_how_many_were_drawn_and_cut_and_why_the_rest_was_not() {
    let cell = |n: u32| (f64::from(n % 7) * 66.0 + 8.0, f64::from(n / 7) * 57.0 + 9.0);
    let mut entities = String::new();
    for n in 0..12 {
        let (x, y) = cell(n);
        entities.push_str(&ring(GLASS, &sash(x, y), ""));
    }
    let ((x, y), (u, v)) = (cell(12), cell(13));
    entities.push_str(&insert("SASH", "OFF", x, y).replace("SASH", "HIDDEN"));
    entities.push_str(&lines(GLASS, u, v, 0.5));
    // A block on a layer that is off holds a window on the window layer.
    let off = "0\nSECTION\n2\nTABLES\n0\nTABLE\n2\nLAYER\n70\n1\n0\nLAYER\n2\nOFF\n70\n0\n62\n-7\n6\nCONTINUOUS\n0\nENDTAB\n0\nENDSEC\n";
    let hidden = format!(
        "0\nBLOCK\n8\n0\n2\nHIDDEN\n70\n0\n10\n0\n20\n0\n{}0\nENDBLK\n",
        ring(GLASS, &sash(0.0, 0.0), "")
    );
    let text = drawing(off, &entities).replacen("0\nBLOCK\n", &format!("{hidden}0\nBLOCK\n"), 1);
    let (house, findings) = read(&text, &inches());
    assert_eq!(opening_boxes(&house).len(), 12);
    let told = told(&findings);
    let expected = "A-GLAZ: 14 drawn, 12 cut, 2 not (open loop of 4 lines 0.5 in apart, block on a hidden layer)";
    assert_eq!(told, [expected]);
}

#[test]
fn layers_off_and_frozen_are_told_unless_the_job_reads_them() {
    for flags in ["70\n1\n62\n7\n", "70\n0\n62\n-7\n"] {
        let tables = format!(
            "0\nSECTION\n2\nTABLES\n0\nTABLE\n2\nLAYER\n70\n1\n0\nLAYER\n2\n{GLASS}\n{flags}6\nCONTINUOUS\n0\nENDTAB\n0\nENDSEC\n"
        );
        let text =
            drawing(&tables, &(ring(GLASS, &sash(9.0, 9.0), "") + &lines(GLASS, 99.0, 9.0, 0.0)));
        let (_, findings) = read(&text, &inches());
        assert_eq!(told(&findings), ["A-GLAZ: 2 drawn, 0 cut, 2 not (2 on hidden layer)"]);
        let mut all = inches();
        all.drawing.hidden_layers = true;
        let (house, findings) = read(&text, &all);
        assert_eq!((opening_boxes(&house).len(), told(&findings).len()), (2, 0));
    }
}

#[test]
fn every_command_tells_it() {
    let folder = tempfile::tempdir().unwrap();
    let region = sorts().into_iter().find(|s| s.name == "a REGION").unwrap();
    let text = drawing("", &(region.draw)(GLASS, 100.0, 100.0));
    std::fs::write(folder.path().join("d.dxf"), text).unwrap();
    std::fs::write(
        folder.path().join("j.toml"),
        "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n",
    )
    .unwrap();
    for command in ["layout", "takeoff", "check", "layers"] {
        let out = Command::cargo_bin("lapwright")
            .unwrap()
            .current_dir(folder.path())
            .args([command, "d.dxf", "--job", "j.toml"])
            .output()
            .unwrap();
        let said = String::from_utf8_lossy(&[out.stdout, out.stderr].concat()).into_owned();
        let flat = said.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(flat.contains("WARNING drawn-unused"), "{command}: {said}");
        assert!(flat.contains("A-GLAZ: 1 drawn, 0 cut, 1 not (REGION)"), "{command}: {said}");
        // A type that has no name here leaves none out.
        assert!(flat.contains("[on A-GLAZ, line ") && !flat.contains("[ on"), "{command}: {said}");
    }
    let report = std::fs::read_dir(folder.path())
        .unwrap()
        .map(|e| e.unwrap().path().join("report.txt"))
        .find(|p| p.exists())
        .map(|p| std::fs::read_to_string(p).unwrap())
        .unwrap_or_default();
    assert!(report.contains("drawn-unused"), "{report}");
}

/// Every way of being asked for a first job says what is not used as `check` does: an external reference
/// stands in the file itself, not in what is read of it.
#[test]
fn start_and_guesses_tell_it_too() {
    let region = sorts().into_iter().find(|s| s.name == "a REGION").unwrap();
    let cases = [
        (
            (region.draw)(GLASS, 100.0, 100.0),
            "drawn-unused",
            "A-GLAZ: 1 drawn, 0 cut, 1 not (REGION)",
        ),
        (insert("AWAY", "0", 0.0, 0.0), "block-external", "windows.dwg"),
    ];
    for (entities, code, words) in cases {
        let folder = tempfile::tempdir().unwrap();
        std::fs::write(folder.path().join("d.dxf"), drawing("", &entities)).unwrap();
        let said = |args: &[&str]| {
            let mut program = Command::cargo_bin("lapwright").unwrap();
            let out = program.current_dir(folder.path()).args(args).output().unwrap();
            assert_eq!(out.status.code(), Some(0), "{args:?}");
            let said = String::from_utf8_lossy(&[out.stdout, out.stderr].concat()).into_owned();
            said.split_whitespace().collect::<Vec<_>>().join(" ")
        };
        for args in [&["start", "d.dxf"][..], &["layers", "d.dxf", "--suggest"]] {
            let said = said(args);
            assert!(said.contains(&format!("WARNING {code}")) && said.contains(words), "{said}");
        }
        // The first job counts it, and lists it among what is left to answer.
        let job = std::fs::read_to_string(folder.path().join("d.toml")).unwrap();
        assert!(job.contains("1 warning") && job.contains(&format!("# {code}: ")), "{job}");
    }
}

#[test]
fn layers_of_a_reference_that_is_not_bound_have_their_roles() {
    // As some programs write the contents of a reference into the drawing: FILE|LAYER.
    let bound = read(&drawing("", &ring("site$0$A-GLAZ", &sash(9.0, 9.0), "")), &inches()).0;
    let loose = read(&drawing("", &ring("site|A-GLAZ", &sash(9.0, 9.0), "")), &inches()).0;
    assert_eq!(opening_boxes(&bound), [Rect::new(14.0, 14.0, 44.0, 38.0)]);
    assert_eq!(opening_boxes(&loose), opening_boxes(&bound));
}

#[test]
fn a_layer_whose_name_alone_speaks_of_openings_is_a_warning_in_every_command() {
    let speaks = |entities: &str, job: &Job| -> Vec<String> {
        let (_, findings) = read(&drawing("", entities), job);
        let mine = findings.all().iter().filter(|f| f.code().word() == "layer-speaks");
        mine.map(|f| words(f, LengthStyle::Feet).message).collect()
    };
    let told = |layer: &str, of: &str, n: &str| {
        vec![format!(
            "layer {layer} has no role, though its name speaks of {of}: {n} on walls, not cut; siding is laid over it"
        )]
    };
    // A loop with its pane, a block, and four lines are three things; what stands off the wall is none.
    let windows = ring("Windows", &sash(9.0, 9.0), "")
        + &ring("Windows", &rect(20.0, 20.0, 40.0, 34.0), "")
        + &insert("SASH", "Windows", 100.0, 9.0)
        + &lines("Windows", 200.0, 9.0, 0.0)
        + &ring("Windows", &sash(900.0, 9.0), "");
    assert_eq!(speaks(&windows, &inches()), told("Windows", "windows", "3 things"));
    let door = ring("TUER-NEU", &rect(60.0, 0.0, 96.0, 80.0), "");
    assert_eq!(speaks(&door, &inches()), told("TUER-NEU", "doors", "1 thing"));
    // A casing round a window that is cut, a tag, and what the job ignores or names speak of nothing new.
    let cut = ring(GLASS, &sash(9.0, 9.0), "");
    let casing = ring("Window trim", &rect(10.0, 10.0, 48.0, 42.0), "");
    assert_eq!(speaks(&(cut + &casing), &inches()), Vec::<String>::new());
    let tag = ring("Window-Tags", &rect(10.0, 10.0, 18.0, 18.0), "");
    assert_eq!(speaks(&tag, &inches()), Vec::<String>::new());
    for role in ["window", "ignore"] {
        let job = format!("[drawing]\nunit = \"inch\"\n[layers]\n{role} = [\"Windows\"]\n");
        let job = lapwright::job::file::parse(&job, "job").unwrap();
        assert_eq!(
            speaks(&windows.replace("INSERT", "POINT"), &job),
            Vec::<String>::new(),
            "{role}"
        );
    }
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("d.dxf"), drawing("", &windows)).unwrap();
    let job = "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n";
    std::fs::write(folder.path().join("j.toml"), job).unwrap();
    for command in ["layout", "takeoff", "check", "layers"] {
        let mut program = Command::cargo_bin("lapwright").unwrap();
        let args = [command, "d.dxf", "--job", "j.toml"];
        let out = program.current_dir(folder.path()).args(args).output().unwrap();
        let said = String::from_utf8_lossy(&[out.stdout, out.stderr].concat()).into_owned();
        let flat = said.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(flat.contains("WARNING layer-speaks"), "{command}: {said}");
    }
}

#[test]
fn where_nothing_can_be_laid_out_it_is_told_what_was_not_used() {
    // The only wall has a corner beyond all that is held.
    let folder = tempfile::tempdir().unwrap();
    let text = crate::support::dxf(&[(
        "A-WALL-OTLN",
        &[(0.0, 0.0), (240.0, 0.0), (240.0, 1e300), (0.0, 96.0)],
    )]);
    std::fs::write(folder.path().join("d.dxf"), text).unwrap();
    for command in ["layout", "takeoff", "check"] {
        let out = Command::cargo_bin("lapwright")
            .unwrap()
            .current_dir(folder.path())
            .args([command, "d.dxf"])
            .output()
            .unwrap();
        assert_eq!(out.status.code(), Some(1), "{command}");
        let said = String::from_utf8_lossy(&[out.stdout, out.stderr].concat()).into_owned();
        let flat = said.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(flat.contains("no-walls"), "{command}: {said}");
        for words in ["WARNING numbers-absurd", "0 laid out, 1 not (too far out)"] {
            assert_eq!(flat.matches(words).count(), 1, "{command}: {said}");
        }
    }
}

#[test]
fn hundreds_of_loose_lines_are_one_warning() {
    let many: String = (0..400u32)
        .map(|n| {
            let (x, y) = (f64::from(n % 20) * 23.0 + 5.0, f64::from(n / 20) * 14.0 + 5.0);
            line(GLASS, (x, y), (x + 9.0, y))
        })
        .collect();
    let (_, findings) = read(&drawing("", &many), &inches());
    assert_eq!(told(&findings), ["A-GLAZ: 400 drawn, 0 cut, 400 not (400 loose lines)"]);
}

#[test]
fn walls_stone_and_fixtures_may_be_filled_areas_and_loops_with_gaps() {
    let wall = rect(600.0, 0.0, 900.0, 120.0);
    let gaped = [(1200.2, 0.0), (1500.0, 0.0), (1500.0, 120.0), (1200.0, 120.0), (1200.0, 0.0)];
    let sides: String = gaped.windows(2).map(|w| line("A-WALL-OTLN", w[0], w[1])).collect();
    let text = drawing(
        "",
        &(hatch("A-WALL-OTLN", &wall, "SOLID", 1)
            + &sides
            + &hatch("A-WALL-BASE", &rect(0.0, 0.0, 480.0, 24.0), "STONE", 0)
            + &corners(
                "SOLID",
                FIXTURE,
                &[(50.0, 60.0), (60.0, 60.0), (50.0, 75.0), (60.0, 75.0)],
                0.0,
            )),
    );
    let (house, findings) = read(&text, &inches());
    assert_eq!(told(&findings), Vec::<String>::new());
    let walls: Vec<_> = house.elevations.iter().flat_map(|e| &e.walls).collect();
    let mut areas: Vec<f64> =
        walls.iter().map(|w| w.faces.iter().map(|f| f.area()).sum()).collect();
    areas.sort_by(f64::total_cmp);
    // 300 by 120, the same, and 480 by 300 less 24 in of stone.
    assert_eq!(areas, [36_000.0, 36_000.0, 132_480.0]);
    assert_eq!(walls.iter().map(|w| w.obstacles.len()).sum::<usize>(), 1);
}

#[test]
fn a_view_drawn_as_a_block_holds_its_windows_each_for_itself() {
    let inner = ring(GLASS, &sash(50.0, 50.0), "") + &ring(GLASS, &sash(200.0, 50.0), "");
    let bound = |more: &str, layer: &str| {
        let block =
            format!("0\nBLOCK\n8\n0\n2\nVIEW\n70\n0\n10\n0\n20\n0\n{inner}{more}0\nENDBLK\n");
        let text = drawing("", &insert("VIEW", layer, 0.0, 0.0));
        text.replacen("0\nBLOCK\n", &format!("{block}0\nBLOCK\n"), 1)
    };
    // Windows alone, as a bound reference brings them; and with a level line and a title.
    for (more, layer) in
        [("", "0"), ("", GLASS), (&line("A-FLOR-LEVL", (0.0, 0.0), (480.0, 0.0))[..], "0")]
    {
        let (house, findings) = read(&bound(more, layer), &inches());
        let boxes = opening_boxes(&house);
        assert_eq!(boxes, [Rect::new(55.0, 55.0, 85.0, 79.0), Rect::new(205.0, 55.0, 235.0, 79.0)]);
        assert_eq!(told(&findings), Vec::<String>::new());
    }
}

/// An SVG of a wall 480 by 300 and more.
fn svg(more: &str) -> String {
    format!(
        "<svg xmlns='http://www.w3.org/2000/svg' width='480in' height='300in' viewBox='0 0 480 300'>\
         <style>path,rect,line,polyline{{fill:none;stroke:#000}}</style>\
         <clipPath id='small'><rect x='300' y='200' width='9' height='9'/></clipPath>\
         <clipPath id='page'><path d='M0 0h480v300h-480z'/></clipPath>\
         <defs><g id='sash'><rect width='40' height='40'/></g></defs>\
         <g id='A-WALL-OTLN'><rect width='480' height='300'/></g>{more}</svg>"
    )
}

#[test]
fn shapes_of_an_svg_are_cut_or_told_too() {
    let rect = |more: &str| format!("<rect x='50' y='40' width='40' height='40' {more}/>");
    let layer = |inner: &str| format!("<g id='A-GLAZ'>{inner}</g>");
    let used = [
        layer(&rect("")),
        layer(&rect("clip-path='url(#page)'")),
        layer("<use href='#sash' x='50' y='40'/>"),
        layer("<polyline points='50,40 90,40 90,80 50,80 50,40'/>"),
        layer("<path d='M50 40h40v40h-40v-39.9'/>"),
        layer(&format!("{}<text x='60' y='60'>W1</text>", rect(""))),
    ];
    for drawing in used {
        let (house, findings) = read(&svg(&drawing), &inches());
        // Up is the other way in an SVG.
        let boxes = opening_boxes(&house);
        assert_eq!(boxes, [Rect::new(50.0, 220.0, 90.0, 260.0)], "{drawing}");
        assert_eq!(told(&findings), Vec::<String>::new(), "{drawing}");
        closes(&house);
    }
    let left = [
        (layer(&rect("display='none'")), "1 not (invisible)"),
        (layer(&rect("style='stroke-width:2; display: none'")), "1 not (invisible)"),
        (layer(&rect("visibility='hidden'")), "1 not (invisible)"),
        (layer(&rect("style='fill:none;stroke:none'")), "1 not (neither line nor fill)"),
        (layer(&rect("clip-path='url(#small)'")), "1 not (clipped away)"),
        (format!("<g clip-path='url(#small)'>{}</g>", layer(&rect(""))), "1 not (clipped away)"),
        (format!("<g style='display:none'>{}</g>", layer(&rect(""))), "1 not (hidden layer)"),
        (layer("<image x='50' y='40' width='40' height='40' href='w.png'/>"), "1 not (image)"),
        (layer("<use href='#none' x='50' y='40'/>"), "1 not (block `none` not defined)"),
        (layer("<path d='M50 40h40v40'/>"), "1 not (loose line)"),
    ];
    for (drawing, reason) in left {
        let (house, findings) = read(&svg(&drawing), &inches());
        assert!(opening_boxes(&house).is_empty(), "{drawing}");
        assert_eq!(told(&findings), [format!("A-GLAZ: 1 drawn, 0 cut, {reason}")], "{drawing}");
        closes(&house);
    }
}

#[test]
fn lines_that_mark_nothing_and_areas_that_do_not_close_are_told() {
    let cases = [
        (
            "A-WALL-JNTC",
            line("A-WALL-JNTC", (100.0, 0.0), (100.0, 20.0)),
            "line that marks nothing there",
        ),
        (
            "A-WALL-CNRI",
            line("A-WALL-CNRI", (100.0, 0.0), (100.0, 90.0)),
            "line that marks nothing there",
        ),
        ("A-WALL-BAND", line("A-WALL-BAND", (0.0, 40.0), (480.0, 40.0)), "loose line"),
        (
            "A-ROOF-OTLN",
            [
                ((20.0, 50.0), (120.0, 50.0)),
                ((120.0, 50.0), (120.0, 56.0)),
                ((120.0, 56.0), (20.0, 56.0)),
            ]
            .map(|(a, b)| line("A-ROOF-OTLN", a, b))
            .concat(),
            "open loop of 3 lines 6 in apart",
        ),
        (
            "C-TOPO-PROF",
            hatch("C-TOPO-PROF", &rect(0.0, -9.0, 480.0, 9.0), "EARTH", 0),
            "hatch pattern that is not read",
        ),
    ];
    for (layer, entities, reason) in cases {
        let (house, findings) = read(&drawing("", &entities), &inches());
        assert_eq!(told(&findings), [format!("{layer}: 1 drawn, 0 used, 1 not ({reason})")]);
        closes(&house);
    }
}

#[test]
fn what_the_drawing_itself_leaves_out_is_a_note() {
    // A window in stone, and a plan beside the elevation.
    let stone =
        ring("A-WALL-BASE", &rect(0.0, 0.0, 480.0, 40.0), "") + &ring(GLASS, &sash(9.0, 2.0), "");
    let plan = ring("A-WALL-OTLN", &rect(2000.0, 0.0, 2300.0, 200.0), "")
        + &ring(GLASS, &sash(2100.0, 90.0), "")
        + "0\nTEXT\n8\nA-ELEV-IDEN\n10\n2100\n20\n-30\n40\n12\n1\nFLOOR PLAN\n";
    for (entities, reason) in
        [(stone, "on another cladding"), (plan, "in a plan, section or detail")]
    {
        let (house, findings) = read(&drawing("", &entities), &inches());
        closes(&house);
        let told = told(&findings);
        assert!(
            told.iter().any(|t| *t == format!("A-GLAZ: 1 drawn, 0 cut, 1 not ({reason})")),
            "{told:?}"
        );
        let warned = findings.all().iter().filter(|f| {
            matches!(f.kind, FindingKind::House(HouseFinding::DrawnUnused { .. }))
                && f.severity() == Severity::Warning
        });
        assert_eq!(warned.count(), 0);
    }
}

#[test]
fn a_block_of_unread_entities_inserted_often_asks_for_no_more_than_a_drawing() {
    let many = "0\nREGION\n8\n0\n".repeat(1000);
    let block = format!("0\nBLOCK\n8\n0\n2\nMANY\n70\n0\n10\n0\n20\n0\n{many}0\nENDBLK\n");
    let array = insert("MANY", GLASS, 50.0, 50.0) + "70\n1000\n71\n1000\n44\n1\n45\n1\n";
    let text = drawing("", &array).replacen("0\nBLOCK\n", &format!("{block}0\nBLOCK\n"), 1);
    let limits = lapwright::read::Limits { items: 50_000, ..Default::default() };
    let mut findings = Findings::default();
    let read = lapwright::read::drawing(text.as_bytes(), "d", &limits, &mut findings).unwrap();
    let left: usize = read.left_out.iter().map(|l| l.count).sum();
    assert!((50_000..=52_000).contains(&left), "{left}");
    assert!(findings.all().iter().any(|f| f.code().word() == "items-too-many"));
}

#[test]
fn samples_and_random_houses_draw_nothing_in_vain_and_every_entity_is_counted() {
    for (stem, path) in samples() {
        let bytes = std::fs::read(&path).unwrap();
        let mut findings = Findings::default();
        let read = pipeline::reading(&bytes, &stem, &job(&path), &mut findings).unwrap();
        assert_eq!(told(&findings), Vec::<String>::new(), "{stem}");
        closes(&read.house);
        for a in &read.house.accounts {
            // Another count of the same: items of the layer as the reader gives them.
            let of_layer = |i: usize| read.drawing.layers[i].name == a.layer;
            let items = read.drawing.items.iter().filter(|i| of_layer(i.layer)).count();
            assert_eq!(a.entities, items, "{stem}, {}", a.layer);
            assert_eq!((a.unused(), a.used), (0, a.drawn), "{stem}, {}", a.layer);
        }
    }
    for seed in 1..=20 {
        let (rings, _) = random_house(seed);
        let list: Vec<(&str, &[(f64, f64)])> = rings.iter().map(|(l, r)| (*l, &r[..])).collect();
        let (house, findings) = read(&crate::support::dxf(&list), &inches());
        closes(&house);
        for a in &house.accounts {
            assert_eq!(a.entities, list.iter().filter(|(l, _)| *l == a.layer).count(), "{seed}");
        }
        assert_eq!(told(&findings), Vec::<String>::new(), "{seed}");
    }
}

#[test]
fn tags_of_windows_and_doors_are_no_openings_and_not_missed() {
    // A window with its tag, a hexagon 14 in wide on the layer of window tags, and the tag of a door.
    let [a, b] = [(210.0, 50.0), (250.0, 50.0)].map(|(x, y)| {
        let corner = |i: u8| (std::f64::consts::FRAC_PI_3 * f64::from(i)).sin_cos();
        let hexagon: Vec<(f64, f64)> =
            (0..6).map(corner).map(|(s, c)| (x + 7.0 * c, y + 7.0 * s)).collect();
        (hexagon, (x, y))
    });
    let tag = |layer: &str, (at, (x, y)): &(Vec<(f64, f64)>, (f64, f64))| {
        let text = format!("0\nTEXT\n8\n{layer}\n10\n{x}\n20\n{y}\n40\n5\n1\nW12\n");
        ring(layer, at, "") + &text + &line(layer, (*x + 7.0, *y), (*x + 30.0, *y))
    };
    let entities =
        ring(GLASS, &sash(100.0, 100.0), "") + &tag("A-GLAZ-IDEN", &a) + &tag("A-DOOR-IDEN", &b);
    let (house, findings) = read(&drawing("", &entities), &inches());
    assert_eq!(opening_boxes(&house), [Rect::new(105.0, 105.0, 135.0, 129.0)]);
    assert_eq!(told(&findings), Vec::<String>::new());
    // A job with a list of its own of what is ignored has no windows of them either.
    let mut own = inches();
    own.layers.insert(lapwright::model::linework::Role::Ignore, vec!["NOTES".to_owned()]);
    let (house, _) = read(&drawing("", &entities), &own);
    assert_eq!(opening_boxes(&house).len(), 1);
    // Other parts of windows are theirs.
    assert_eq!(own.role_of("A-GLAZ-SILL"), Some(lapwright::model::linework::Role::Window));
}

#[test]
fn a_group_is_a_layer_and_a_class_only_where_no_group_is_named() {
    let rect = "<rect x='50' y='40' width='40' height='40'";
    let window = [Rect::new(50.0, 220.0, 90.0, 260.0)];
    let cut = [
        // A class is a style.
        format!("<g id='A-GLAZ'>{rect} class='thin'/></g>"),
        format!("<g id='A-GLAZ'><g class='thin'>{rect}/></g></g>"),
        format!("<g id='A-GLAZ'>{rect} class='A-WALL-OTLN'/></g>"),
        // A group that a program had to call something is part of the layer round it.
        format!("<g id='A-GLAZ'><g id='g17'><g id='g-4'>{rect}/></g></g></g>"),
        // So is a thing with a label of its own.
        format!("<g data-name='A-GLAZ'>{rect} label='kitchen window'/></g>"),
        // A layer in a layer.
        format!("<g id='A-WALL-OTLN'><g id='A-GLAZ'>{rect}/></g></g>"),
        // Without a group, or in one without a name, the class tells.
        format!("{rect} class='A-GLAZ'/>"),
        format!("{rect} id='r1' class='A-GLAZ'/>"),
        format!("<g id='g10'>{rect} class='A-GLAZ'/></g>"),
        format!("<g id='g10'><g class='A-GLAZ'>{rect}/></g></g>"),
    ];
    for drawing in cut {
        let (house, _) = read(&svg(&drawing), &inches());
        assert_eq!(opening_boxes(&house), window, "{drawing}");
    }
    // A group without any name but what a program made up is listed by that.
    let (_, findings) = read(&svg(&format!("<g id='g10'>{rect}/></g>")), &inches());
    let said: Vec<String> = findings.all().iter().map(crate::support::said).collect();
    assert!(said.iter().any(|s| s.contains("g10")), "{said:?}");
}

#[test]
fn a_model_of_a_building_names_its_parts_by_class() {
    // As programs write it that draw from a model: a number for an id, styles, and the sort of part.
    let id = "part-7f3c0a1e-52d4-4b7a-9c1d-0e8f6a5b4c3";
    let part = |n: usize, sort: &str, at: [f64; 4]| {
        let [x, y, w, h] = at;
        format!(
            "<g id='{id}{n}' data-name='Part {n}' class='cut {sort} gray'>\
             <rect class='thin' x='{x}' y='{y}' width='{w}' height='{h}'/></g>"
        )
    };
    let wall = part(1, "IfcWall", [0.0, 0.0, 300.0, 100.0]);
    let window = part(2, "IfcWindow", [50.0, 20.0, 40.0, 40.0]);
    let text = format!(
        "<svg xmlns='http://www.w3.org/2000/svg' width='300in' height='100in' viewBox='0 0 300 100'>{wall}{window}</svg>"
    );
    let job = "[layers]\nwall = [\"IfcWall\"]\nwindow = [\"IfcWindow\"]\n";
    let job = lapwright::job::file::parse(job, "job").unwrap();
    let (house, _) = read(&text, &job);
    assert_eq!(opening_boxes(&house), [Rect::new(50.0, 40.0, 90.0, 80.0)]);
    // A class of no such name goes before a number as well.
    let text = text.replace("IfcWall", "Walls").replace("cut ", "").replace(" gray", "");
    let text = text.replace("data-name", "data-part");
    let job = "[layers]\nwall = [\"Walls\"]\nwindow = [\"IfcWindow\"]\n";
    let job = lapwright::job::file::parse(job, "job").unwrap();
    let (house, _) = read(&text, &job);
    assert_eq!(opening_boxes(&house), [Rect::new(50.0, 40.0, 90.0, 80.0)]);
}

#[test]
fn pens_stand_in_for_layers_where_an_svg_names_none() {
    // A page as a converter makes it: groups with numbers, a wall in one pen and a window in another.
    let text = String::from(
        "<svg xmlns='http://www.w3.org/2000/svg' width='300in' height='100in' viewBox='0 0 300 100'>\
        <g id='surface1'><g id='g12' transform='scale(2)'>\
        <path d='M0 0H150V50H0Z' fill='none' stroke='#000' stroke-width='0.35'/></g>\
        <g id='g13'><path d='M50 20H90V60H50Z' fill='none' stroke='#808080' stroke-width='0.25'/></g></g></svg>",
    );
    let job = "[layers]\nwall = [\"stroke 0.7 black\"]\nwindow = [\"stroke 0.25 gray 50 %\"]\n";
    let job = lapwright::job::file::parse(job, "job").unwrap();
    let (house, _) = read(&text, &job);
    // The pen of the first is twice as wide as written: its group is drawn at twice the size.
    assert_eq!(opening_boxes(&house), [Rect::new(50.0, 40.0, 90.0, 80.0)]);
}
