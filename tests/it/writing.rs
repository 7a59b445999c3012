//! Writing: whoever looks, at whatever moment the program is stopped, finds the old results whole or
//! the new ones; what cannot be written is told, and nothing of the user's is lost.

// When to kill a process is a matter of time; no result is judged by it.
#![allow(clippy::disallowed_methods)]

use std::collections::BTreeMap;
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use lapwright::cli::files::{recovered, write_folder};
use lapwright::cli::place;
use lapwright::outputs::file::OutputFile;
use lapwright::outputs::marker::MARKER;

use crate::support::{dxf, rect};

const PROGRAM: &str = env!("CARGO_BIN_EXE_lapwright");

/// Writes a set into a folder that the user named.
fn write(out: &Path, files: &[OutputFile], replace: bool) {
    write_folder(&place::of(Path::new("a.dxf"), Some(out)), files, &[], replace).unwrap();
}

/// A set as it lies in its folder, but for the list of its files.
fn without_list(mut files: BTreeMap<String, Vec<u8>>) -> BTreeMap<String, Vec<u8>> {
    assert!(files.remove(MARKER).is_some(), "no list of files: {:?}", files.keys());
    files
}

/// A file of a folder by its path in it, and what it holds.
fn contents(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    fn into(at: &Path, above: &str, out: &mut BTreeMap<String, Vec<u8>>) {
        for e in std::fs::read_dir(at).unwrap() {
            let e = e.unwrap();
            let name = format!("{above}{}", e.file_name().to_string_lossy());
            if e.file_type().unwrap().is_dir() {
                into(&e.path(), &format!("{name}/"), out);
            } else {
                out.insert(name, std::fs::read(e.path()).unwrap());
            }
        }
    }
    let mut out = BTreeMap::new();
    into(folder, "", &mut out);
    out
}

fn staged(folder: &Path) -> Vec<String> {
    let all = std::fs::read_dir(folder).unwrap();
    all.map(|e| e.unwrap().file_name().to_string_lossy().into_owned())
        .filter(|n| n.starts_with(".lapwright-"))
        .collect()
}

/// Seeded delays: the same moments in each run of the test, as far as the machine goes.
fn dice(state: &mut u64) -> f64 {
    *state ^= *state << 13;
    *state ^= *state >> 7;
    *state ^= *state << 17;
    (*state % 10_000) as f64 / 10_000.0
}

/// Files that all say which set they are of; one set has a file that the other lacks.
fn set(of: &str) -> Vec<OutputFile> {
    let names = ["layout.json", "overlay.dxf", "sheets/01-x.svg", "sheets/02-y.svg", "report.txt"];
    let mut out: Vec<OutputFile> =
        names.iter().map(|n| ((*n).to_owned(), of.repeat(20_000).into_bytes())).collect();
    if of == "B" {
        out.push(("takeoff-by-wall.csv".to_owned(), b"B".to_vec()));
    }
    out
}

/// No test of its own: what the next one starts and kills. Writes set after set.
#[test]
#[ignore = "started by the test that kills it"]
fn writer() {
    let Some(out) = std::env::var_os("LAPWRIGHT_TEST_WRITER") else { return };
    let sets = [set("A"), set("B")];
    let other = usize::from(!Path::new(&out).join("takeoff-by-wall.csv").exists());
    println!("ready");
    for files in sets.iter().cycle().skip(other) {
        write(Path::new(&out), files, std::env::var_os("LAPWRIGHT_TEST_REPLACES").is_some());
    }
}

/// Folders of stages that hold anything: one that was stopped before it was made is nobody's.
fn staged_and_full(folder: &Path) -> Vec<String> {
    let full = |n: &String| std::fs::read_dir(folder.join(n)).unwrap().next().is_some();
    staged(folder).into_iter().filter(full).collect()
}

#[test]
fn two_hundred_kills_leave_one_set_of_files_or_the_other() {
    kills(200, false);
}

/// Where others' files lie in the folder, files go in one by one: then the next run puts things right.
#[test]
fn a_hundred_kills_among_others_files_are_undone_by_the_next_run() {
    kills(100, true);
}

#[allow(clippy::print_stdout)] // The count is for whoever asks.
fn kills(kills: usize, in_place: bool) {
    let dir = tempfile::tempdir().unwrap();
    let out = dir.path().join("out");
    let sets = [set("A"), set("B")].map(|s| s.into_iter().collect::<BTreeMap<_, _>>());
    let began = Instant::now();
    write(&out, &set("A"), false);
    let one = began.elapsed();
    let stages = if in_place { out.clone() } else { dir.path().to_owned() };
    let mine = out.join("sheets/mine.txt");
    if in_place {
        std::fs::write(&mine, "mine").unwrap();
    }
    let (mut state, mut seen, mut caught) = (0x9e37_79b9_7f4a_7c15_u64, [0; 2], 0);
    let (mut reach, mut before) = (one.mul_f64(1.6), 0);
    for kill in 0..kills {
        let mut child = Command::new(std::env::current_exe().unwrap());
        child.args(["writing::writer", "--exact", "--ignored", "--nocapture"]);
        child.env("LAPWRIGHT_TEST_WRITER", &out);
        if in_place {
            child.env("LAPWRIGHT_TEST_REPLACES", "yes");
        }
        let mut child = child.stdout(Stdio::piped()).stderr(Stdio::null()).spawn().unwrap();
        let mut lines = BufReader::new(child.stdout.take().unwrap()).lines();
        assert!(lines.any(|l| l.unwrap().contains("ready")), "the writer did not start");
        // Anywhere in the first set or the next.
        std::thread::sleep(reach.mul_f64(dice(&mut state)));
        child.kill().unwrap();
        child.wait().unwrap();
        caught += usize::from(!staged(&stages).is_empty());
        if in_place {
            recovered(&out);
            assert_eq!(std::fs::read_to_string(&mine).unwrap(), "mine");
        }
        let mut found = without_list(contents(&out));
        found.remove("sheets/mine.txt");
        let which = sets.iter().position(|s| *s == found);
        let names: Vec<(&String, usize)> = found.iter().map(|(n, b)| (n, b.len())).collect();
        let which = which.unwrap_or_else(|| panic!("kill {kill} left a mix: {names:?}"));
        seen[which] += 1;
        // On a machine that slows down a set takes longer than it took at first.
        let slower = if which == before { 1.15 } else { 0.87 };
        reach = reach.mul_f64(slower).min(Duration::from_secs(2));
        before = which;
    }
    println!("{kills} kills, {caught} in the midst of writing; a set takes {one:?}");
    // Most were stopped in the midst of it; the next run clears up after them.
    let enough = [caught > kills / 4, seen[0] > kills / 20, seen[1] > kills / 20];
    assert!(enough.iter().all(|e| *e), "{caught} in the midst, {seen:?}");
    write(&out, &set("A"), in_place);
    assert_eq!(staged_and_full(&stages), [""; 0]);
    let mut found = without_list(contents(&out));
    assert_eq!(found.remove("sheets/mine.txt").is_some(), in_place);
    assert!(found == sets[0]);
}

/// Kills of the program itself: 15, or as many as `LAPWRIGHT_KILLS` says.
#[test]
fn the_program_killed_at_any_moment_leaves_old_results_or_new() {
    let kills: u32 =
        std::env::var("LAPWRIGHT_KILLS").ok().and_then(|n| n.parse().ok()).unwrap_or(15);
    let dir = tempfile::tempdir().unwrap();
    let out = dir.path().join("out");
    let source = |width: f64| dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, width, 40.0))]);
    let drawings = [("a.dxf", source(120.0)), ("b.dxf", source(150.0))];
    let job = dir.path().join("job.toml");
    std::fs::write(&job, "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n").unwrap();
    for (name, text) in &drawings {
        std::fs::write(dir.path().join(name), text).unwrap();
    }
    let start = |name: &str| {
        let mut c = Command::new(PROGRAM);
        c.arg("layout").arg(dir.path().join(name)).arg("--job").arg(&job);
        c.args(["--no-pictures", "--quiet", "--out"]).arg(&out).spawn().unwrap()
    };
    // Whole runs: what each drawing gives, how long it takes, and how long it writes.
    let (mut whole, mut takes, mut writes) = (Vec::new(), Duration::ZERO, Duration::ZERO);
    for (name, _) in &drawings {
        let (began, mut child, mut first) = (Instant::now(), start(name), None);
        while child.try_wait().unwrap().is_none() {
            if first.is_none() && !staged(dir.path()).is_empty() {
                first = Some(Instant::now());
            }
        }
        takes = began.elapsed();
        writes = first.map_or(writes, |f| f.elapsed());
        whole.push(contents(&out));
    }
    assert!(whole[0] != whole[1] && whole[0].len() > 8);
    let (mut state, mut caught) = (0x0ddb_1a5e_5bad_5eed_u64, 0);
    for kill in 0..kills {
        let mut child = start(drawings[kill as usize % 2].0);
        let share = dice(&mut state);
        if kill % 3 == 0 {
            // At any moment of the run.
            std::thread::sleep(takes.mul_f64(share));
        } else {
            // At any moment of the writing.
            while staged(dir.path()).is_empty() && child.try_wait().unwrap().is_none() {}
            std::thread::sleep(writes.mul_f64(share));
        }
        let _ = child.kill();
        child.wait().unwrap();
        caught += usize::from(!staged(dir.path()).is_empty());
        let found = contents(&out);
        assert!(whole.contains(&found), "kill {kill} left a mix: {:?}", found.keys());
        for (name, text) in &drawings {
            assert_eq!(&std::fs::read_to_string(dir.path().join(name)).unwrap(), text);
        }
    }
    println!(
        "{kills} kills, {caught} in the midst of writing; a run {takes:?}, writing {writes:?}"
    );
    assert!(start("a.dxf").wait().unwrap().success());
    assert_eq!(staged_and_full(dir.path()), [""; 0]);
    assert!(contents(&out) == whole[0]);
}

/// A folder with a drawing in it, and results of an earlier run.
fn house() -> (tempfile::TempDir, BTreeMap<String, Vec<u8>>) {
    let dir = tempfile::tempdir().unwrap();
    std::fs::write(dir.path().join("a.dxf"), dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 96.0))]))
        .unwrap();
    let (code, err) = said(program(dir.path(), &[]));
    assert_eq!(code, Some(0), "{err}");
    let before = contents(dir.path());
    (dir, before)
}

fn program(at: &Path, more: &[&str]) -> Command {
    let mut c = Command::new(PROGRAM);
    c.current_dir(at).args(["layout", "a.dxf", "--no-pictures", "--out", "out"]).args(more);
    c
}

fn said(mut c: Command) -> (Option<i32>, String) {
    let o = c.output().unwrap();
    let err = String::from_utf8_lossy(&o.stderr).replace(['\n', '│'], " ");
    (o.status.code(), err.split_whitespace().collect::<Vec<_>>().join(" "))
}

#[track_caller]
fn refused(c: Command, code: &str, words: &[&str]) {
    let (exit, err) = said(c);
    assert_eq!(exit, Some(1), "{err}");
    assert!(err.contains(code) && err.contains("help:"), "{err}");
    words.iter().for_each(|w| assert!(err.contains(w), "`{w}` not in: {err}"));
}

/// The program under a shell that first does `before`.
#[cfg(unix)]
fn under(at: &Path, before: &str) -> Command {
    let mut c = Command::new("sh");
    c.current_dir(at).args(["-c", &format!("{before} exec \"$0\" \"$@\""), PROGRAM]);
    c.args(["layout", "a.dxf", "--no-pictures", "--out", "out"]);
    c
}

#[test]
#[cfg(unix)]
fn a_full_disk_is_told_and_old_results_stay_whole() {
    let (dir, before) = house();
    // The system refuses files beyond 4 kB, as a disk without room does, in the midst of the writing.
    refused(
        under(dir.path(), "trap '' XFSZ; ulimit -f 8;"),
        "out-failed",
        &["too large", "untouched"],
    );
    assert!(contents(dir.path()) == before);
}

#[test]
#[cfg(target_os = "linux")]
fn a_disk_without_room_or_rights_is_told_and_nothing_is_left_on_it() {
    let (dir, before) = house();
    let mount = |with: &str| {
        format!(
            "mkdir -p m && mount -t tmpfs {with} tmpfs m 2>/dev/null || exit 77; cp a.dxf m 2>/dev/null;"
        )
    };
    for (with, words) in [("-o size=16k", "No space left"), ("-o ro", "Read-only")] {
        // A namespace of its own: nothing stays mounted.
        let script = format!(
            "{} \"$0\" layout a.dxf --no-pictures --out m/out; echo \"exit $?\" >&2; ls -A m >&2",
            mount(with)
        );
        let mut c = Command::new("unshare");
        c.current_dir(dir.path()).args(["-m", "sh", "-c", &script, PROGRAM]);
        let Ok(o) = c.output() else { return println!("skipped: there is no unshare") };
        let err = String::from_utf8_lossy(&o.stderr).replace(['\n', '│'], " ");
        let err = err.split_whitespace().collect::<Vec<_>>().join(" ");
        if o.status.code() == Some(77) || err.contains("unshare failed") {
            return println!("skipped: nothing may be mounted here: {err}");
        }
        assert!(err.contains("out-failed") && err.contains(words), "{err}");
        let left = err.split("exit 1").nth(1).unwrap_or("no exit 1").trim();
        assert!(left == "a.dxf" || left.is_empty(), "{left}");
    }
    let after: BTreeMap<_, _> =
        contents(dir.path()).into_iter().filter(|f| !f.0.starts_with("m/")).collect();
    assert!(after == before);
}

#[test]
fn what_is_no_folder_or_cannot_become_one_is_told() {
    let (dir, before) = house();
    let mut c = Command::new(PROGRAM);
    c.current_dir(dir.path()).args(["layout", "a.dxf", "--out", "a.dxf/deeper"]);
    refused(c, "out-failed", &["a.dxf/deeper"]);
    let mut c = Command::new(PROGRAM);
    c.current_dir(dir.path()).args(["layout", "a.dxf", "--out", "a.dxf"]);
    refused(c, "out-refused", &["is a file"]);
    assert!(contents(dir.path()) == before);
}

#[test]
fn nothing_of_the_users_in_a_folder_of_results_is_lost() {
    let (dir, _) = house();
    let out = dir.path().join("out");
    let put = |name: &str| {
        let path = out.join(name);
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(&path, "mine").unwrap();
        path
    };
    for name in ["notes.txt", "sheets/marked-up.pdf", "report.txt.d/mine", "sheets/old/01-x.svg"] {
        let path = put(name);
        let shown = match name.split_once('/') {
            Some(("sheets", rest)) => format!("sheets/{}", rest.split('/').next().unwrap()),
            _ => name.split('/').next().unwrap().to_owned(),
        };
        refused(
            program(dir.path(), &[]),
            "out-refused",
            &[&shown, "what Lapwright did not write", "nothing was written"],
        );
        assert_eq!(std::fs::read_to_string(&path).unwrap(), "mine");
        std::fs::remove_file(&path).unwrap();
        let _ = std::fs::remove_dir(path.parent().unwrap());
    }
    // A folder where a file of ours would go.
    std::fs::remove_file(out.join("report.txt")).unwrap();
    put("report.txt/mine");
    refused(program(dir.path(), &[]), "out-refused", &["report.txt"]);
    assert_eq!(std::fs::read_to_string(out.join("report.txt/mine")).unwrap(), "mine");
}

#[test]
fn what_a_run_reads_is_never_written() {
    let (dir, _) = house();
    let out = dir.path().join("out");
    // The takeoff of the last run, with prices written in, lies where this one goes.
    std::fs::write(
        out.join("takeoff.csv"),
        "item,unit,price,order multiple,currency\npanels,piece,9,1,USD\n",
    )
    .unwrap();
    let before = contents(dir.path());
    let prices = ["--prices", "out/takeoff.csv"];
    refused(program(dir.path(), &prices), "out-refused", &["out/takeoff.csv", "lies in out"]);
    let mut inside = Command::new(PROGRAM);
    inside.current_dir(&out).args(["layout", "../a.dxf", "--out", "."]);
    refused(inside, "out-refused", &["the folder you are in"]);
    assert!(contents(dir.path()) == before);
    // A drawing by the name of what `check` writes.
    let svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\"/>";
    std::fs::write(dir.path().join("problems.svg"), svg).unwrap();
    let mut check = Command::new(PROGRAM);
    check.current_dir(dir.path()).args(["check", "problems.svg", "--out", "."]);
    refused(check, "out-refused", &["problems.svg", "what this run reads"]);
    assert_eq!(std::fs::read_to_string(dir.path().join("problems.svg")).unwrap(), svg);
}

#[test]
#[cfg(unix)]
fn a_linked_folder_stays_a_link() {
    let (dir, _) = house();
    let at = |n: &str| dir.path().join(n);
    std::fs::rename(at("out"), at("real")).unwrap();
    std::os::unix::fs::symlink("real", at("out")).unwrap();
    std::fs::remove_file(at("real/report.txt")).unwrap();
    let (code, err) = said(program(dir.path(), &[]));
    assert_eq!(code, Some(0), "{err}");
    assert!(at("out").is_symlink() && at("real/report.txt").exists());
}

#[test]
fn a_reader_that_goes_away_is_no_fault() {
    let (dir, _) = house();
    let mut child = Command::new(PROGRAM)
        .current_dir(dir.path())
        .args(["takeoff", "a.dxf", "--quiet", "--format", "json"])
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    // Gone before a byte is written.
    drop(child.stdout.take());
    let o = child.wait_with_output().unwrap();
    assert_eq!((o.status.code(), String::from_utf8_lossy(&o.stderr).as_ref()), (Some(0), ""));
}

#[test]
#[cfg(target_os = "linux")]
fn an_output_that_takes_nothing_is_told() {
    let (dir, _) = house();
    for args in [&["takeoff", "a.dxf", "--quiet"][..], &["check", "a.dxf"], &["schema", "job"]] {
        let mut c = Command::new(PROGRAM);
        c.current_dir(dir.path()).args(args);
        c.stdout(std::fs::OpenOptions::new().write(true).open("/dev/full").unwrap());
        refused_to(c);
    }
    fn refused_to(mut c: Command) {
        let o = c.stderr(Stdio::piped()).spawn().unwrap().wait_with_output().unwrap();
        let err = String::from_utf8_lossy(&o.stderr).into_owned();
        assert!(o.status.code() == Some(1) && err.contains("out-failed"), "{err}");
    }
}
