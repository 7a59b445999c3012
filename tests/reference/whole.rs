//! Random houses through the whole program, each in a process of its own: no panic, no rule broken,
//! areas as shapely has them; time and peak memory of each in a table.
//!
//! `LAPWRIGHT_HOUSES=1000` takes a thousand instead of fifty; `LAPWRIGHT_FIRST_HOUSE` is the first seed.

use std::fmt::Write as _;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use serde_json::Value;

use crate::venv::python;
use crate::watched::{Watched, watched};

/// A run of the program, with what it said of errors.
fn run(folder: &Path, drawing: &Path, out: &Path) -> (Watched, String) {
    let errors = folder.join("errors.txt");
    let mut command = Command::new(env!("CARGO_BIN_EXE_lapwright"));
    command.arg("layout").arg(drawing).arg("--job").arg(drawing.with_extension("toml"));
    command.args(["--no-pictures", "--quiet", "--out"]).arg(out);
    command.stderr(fs::File::create(&errors).unwrap()).stdout(Stdio::null());
    let r = watched(&mut command, None);
    (r, fs::read_to_string(&errors).unwrap())
}

/// What is wrong with a layout, beside what was designed.
fn wrong(layout: &Value, truth: &Value) -> Vec<String> {
    // Every piece made again from a cutter's figures.
    let mut out: Vec<String> = crate::cutcase::wrong(layout).into_iter().take(3).collect();
    let list = |v: &Value| v.as_array().cloned().unwrap_or_default();
    let rules = list(&layout["verify"]["rules"]);
    if rules.len() < 20 {
        out.push(format!("only {} rules were checked", rules.len()));
    }
    for r in &rules {
        let broken = list(&r["violations"]);
        if let Some(first) = broken.first().filter(|_| !proven(layout, r, broken.len())) {
            out.push(format!("{} is broken: {first}", r["rule"]));
        }
    }
    let areas = |house: &Value, key: &str| -> Vec<f64> {
        let walls = list(&house["elevations"]).into_iter().flat_map(|e| list(&e["walls"]));
        let mut all: Vec<f64> = walls
            .filter_map(|w| {
                // Drawn: wall less openings; what of it gets no siding is told apart.
                let bare = list(&w["bare"]).into_iter().filter(|b| b["by"] != "behind-roof");
                let bare: f64 = bare.filter_map(|b| b["area"].as_f64()).sum();
                Some(w[key].as_f64()? + if key == "net_area" { bare } else { 0.0 })
            })
            .collect();
        all.sort_by(f64::total_cmp);
        all
    };
    for key in ["gross_area", "net_area"] {
        let (ours, theirs) = (areas(layout, key), areas(truth, key));
        // 0.01 %, and what rounding to the grid makes of the smallest.
        let same = |(a, b): (&f64, &f64)| (a - b).abs() <= 1e-4 * b.max(1.0);
        if ours.len() != theirs.len() || !ours.iter().zip(&theirs).all(same) {
            out.push(format!("{key}: {ours:?} for {theirs:?}"));
        }
    }
    out
}

/// Whether a rule is broken only as often as the layout says of courses that it proves to have no
/// layout: some drawings have none. `seam/wall.rs` tests such proofs against every sixteenth.
fn proven(layout: &Value, rule: &Value, broken: usize) -> bool {
    let list = |v: &Value| v.as_array().cloned().unwrap_or_default();
    let conflicts = list(&layout["bound"]["conflicts"]);
    let exact = |c: &Value| c["rule"]["proof"] == "no-layout-exists";
    rule["rule"] == "seam-stagger"
        && conflicts.iter().all(exact)
        && conflicts.iter().map(|c| list(&c["breaks"]).len()).sum::<usize>() == broken
}

#[test]
fn random_houses_go_through_the_whole_program() {
    let number =
        |name: &str, or: u32| std::env::var(name).ok().and_then(|n| n.parse().ok()).unwrap_or(or);
    let (count, first) = (number("LAPWRIGHT_HOUSES", 50), number("LAPWRIGHT_FIRST_HOUSE", 1));
    let folder = tempfile::tempdir().unwrap();
    let words = ["--first", &first.to_string(), "--count", &count.to_string()].map(PathBuf::from);
    let drawn = folder.path().join("houses");
    let mut args = vec![drawn.as_path()];
    args.extend(words.iter().map(PathBuf::as_path));
    python("tests/samples/random_houses.py", &args);
    let (mut faults, mut table) = (Vec::new(), String::from("house,seconds,cpu,megabytes\n"));
    let (mut times, mut most, mut without) = (Vec::new(), 0.0_f64, 0);
    for seed in first..first + count {
        let drawing = drawn.join(format!("house-{seed:05}.dxf"));
        let out = folder.path().join("out");
        let (r, told) = run(folder.path(), &drawing, &out);
        let code = r.exit.and_then(|e| e.code());
        let _ = writeln!(table, "{seed},{:.3},{:.2},{:.1}", r.seconds, r.cpu, r.megabytes);
        times.push(r.seconds);
        most = most.max(r.megabytes);
        if code != Some(0) {
            faults.push(format!("house {seed}: exit {code:?}: {}", told.trim()));
            continue;
        }
        let json =
            |path: &Path| -> Value { serde_json::from_slice(&fs::read(path).unwrap()).unwrap() };
        let written = fs::read(out.join("layout.json")).unwrap();
        match lapwright::read::layout_json::layout(&written) {
            Ok(back) if lapwright::write::json::layout(&back) == written => {}
            Ok(_) => faults.push(format!("house {seed}: its layout is written otherwise again")),
            Err(why) => faults.push(format!("house {seed}: its layout is not read: {why}")),
        }
        let layout = json(&out.join("layout.json"));
        without += usize::from(layout["bound"]["conflicts"].is_array());
        let said = wrong(&layout, &json(&drawing.with_extension("json")));
        faults.extend(said.into_iter().map(|s| format!("house {seed}: {s}")));
    }
    let log = Path::new(env!("CARGO_TARGET_TMPDIR")).join("houses.csv");
    fs::write(&log, table).unwrap();
    times.sort_by(f64::total_cmp);
    println!(
        "{count} houses from seed {first}: median {:.2} s, longest {:.2} s, at most {most:.0} MB; {without} with seam rules that cannot all be kept; each in {}",
        times[times.len() / 2],
        times[times.len() - 1],
        log.display()
    );
    assert!(without * 100 <= count.max(100) as usize, "{without} houses break seam rules");
    assert!(faults.is_empty(), "{} faults\n{}", faults.len(), faults.join("\n"));
}
