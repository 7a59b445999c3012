//! Every code of the register is raised by some drawing, job or command, through the program's own flow:
//! a code without an input here fails, and so does an input that does not raise its code.

use assert_cmd::Command;
use lapwright::finding::{Finding, FindingCode, Findings};
use lapwright::job::file;
use lapwright::pipeline;
use lapwright::read::{self, Limits};

use crate::raising_inputs::{Input, input};

/// Everything found, the refusal last.
fn found(drawing: &[u8], job: &str) -> Vec<Finding> {
    let mut findings = Findings::default();
    let job = match file::read(job, "job.toml", &mut findings) {
        Ok(job) => job,
        Err(refusal) => return vec![*refusal.0],
    };
    let laid = pipeline::layout(drawing, "d.dxf", &job, &mut findings, &mut |_| {});
    let mut all = findings.all().to_vec();
    match laid {
        Ok(sets) => {
            all.extend(sets.house.layout.findings.clone());
            let files = lapwright::outputs::set::files(&sets.house, drawing, false);
            all.extend(files.err().map(|r| *r.0));
        }
        Err(refusal) => all.push(*refusal.0),
    }
    all
}

/// What the terminal says of a command in a folder with `d.dxf` and the named files.
fn said(args: &[&str], files: &[(&str, &str)]) -> String {
    let dir = tempfile::tempdir().unwrap();
    for (name, text) in files {
        std::fs::write(dir.path().join(name), text).unwrap();
    }
    let out = Command::cargo_bin("lapwright")
        .unwrap()
        .current_dir(dir.path())
        .args(args)
        .output()
        .unwrap();
    // `measure` tells what it leaves out beside what it writes.
    assert!(out.status.code() != Some(0) || args[0] == "measure", "{args:?}");
    String::from_utf8_lossy(&out.stderr).into_owned()
}

#[cfg(target_os = "linux")]
fn said_to_a_full_device() -> String {
    let full = std::fs::OpenOptions::new().write(true).open("/dev/full").unwrap();
    let out = std::process::Command::new(env!("CARGO_BIN_EXE_lapwright"))
        .args(["schema", "job"])
        .stdout(full)
        .output()
        .unwrap();
    String::from_utf8_lossy(&out.stderr).into_owned()
}

/// What is said where no thread is to be had; none where no system can be told to give none.
fn said_with_one_thread() -> Option<String> {
    let dir = tempfile::tempdir().unwrap();
    let wall = crate::support::rect(0.0, 0.0, 240.0, 96.0);
    std::fs::write(dir.path().join("d.dxf"), crate::support::dxf(&[("A-WALL-OTLN", &wall)]))
        .unwrap();
    let out = crate::few_threads::command(dir.path())?
        .args(["layout", "d.dxf", "--out", "out"])
        .output()
        .unwrap();
    let said = String::from_utf8_lossy(&out.stderr).into_owned();
    assert_eq!(out.status.code(), Some(1), "{said}");
    assert!(!dir.path().join("out").exists(), "something was written");
    // What needs no workbook needs no threads.
    let told = crate::few_threads::command(dir.path())?.args(["check", "d.dxf"]).output().unwrap();
    assert_eq!(told.status.code(), Some(0), "{}", String::from_utf8_lossy(&told.stderr));
    Some(said)
}

fn is_raised(code: FindingCode) -> Result<(), String> {
    let is = |f: &Finding| f.code() == code;
    let raised = match input(code) {
        None => return Err(format!("{code}: no input raises it")),
        Some(Input::Drawing { bytes, job }) => {
            let all = found(&bytes, &job);
            if !all.iter().any(is) {
                let codes: Vec<&str> = all.iter().map(|f| f.code().word()).collect();
                return Err(format!("{code}: only {codes:?}"));
            }
            // As the register says, so it is in the layout and back.
            for f in all.iter().filter(|f| is(f)) {
                assert!(code.severities().contains(&f.severity()), "{code}");
                let text = serde_json::to_string(f).unwrap();
                let back: Finding = serde_json::from_str(&text).unwrap();
                assert_eq!(back, *f, "{text}");
            }
            true
        }
        // The default takes half a gigabyte to reach.
        Some(Input::SmallLimits { bytes, limits }) => reads_to(&bytes, &limits, code),
        Some(Input::Command { args, files }) => said(&args, &files).contains(code.word()),
        #[cfg(target_os = "linux")]
        Some(Input::FullDevice) => said_to_a_full_device().contains(code.word()),
        #[cfg(not(target_os = "linux"))]
        Some(Input::FullDevice) => true,
        Some(Input::OneThread) => said_with_one_thread().is_none_or(|s| s.contains(code.word())),
        Some(Input::LayoutFile { bytes }) => {
            read::layout_json::layout(&bytes).is_err_and(|r| r.0.code() == code)
        }
        // One code at most goes without.
        Some(Input::NoneKnown) => code.word() == "write-failed",
    };
    if raised { Ok(()) } else { Err(format!("{code}: not raised")) }
}

fn reads_to(bytes: &[u8], limits: &Limits, code: FindingCode) -> bool {
    let mut findings = Findings::default();
    let _ = read::drawing(bytes, "d.dxf", limits, &mut findings);
    findings.all().iter().any(|f| f.code() == code)
}

#[test]
fn every_code_is_raised_by_an_input() {
    let codes = FindingCode::all();
    assert!(codes.len() > 70);
    let missing: Vec<String> = codes.into_iter().filter_map(|c| is_raised(c).err()).collect();
    assert!(missing.is_empty(), "{}", missing.join("\n"));
}

#[test]
fn codes_are_words_and_each_is_there_once() {
    let mut words: Vec<&str> = FindingCode::all().iter().map(|c| c.word()).collect();
    let all = words.len();
    words.sort_unstable();
    words.dedup();
    assert_eq!(words.len(), all);
    let plain = |w: &&str| w.chars().all(|c| c.is_ascii_lowercase() || c == '-');
    assert!(words.iter().all(plain), "{words:?}");
    for code in FindingCode::all() {
        assert_eq!(FindingCode::named(code.word()), Some(code));
    }
}
