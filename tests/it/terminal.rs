//! What the program says of itself, and how it ends: help, manual page, completions, color,
//! silence, exit codes.

use assert_cmd::Command;
use clap::{CommandFactory, Parser};
use lapwright::cli::args::Arguments;

use crate::support::root;

fn program() -> Command {
    let mut c = Command::cargo_bin("lapwright").unwrap();
    c.current_dir(root());
    c
}

fn said(args: &[&str]) -> String {
    let o = program().args(args).output().unwrap();
    assert!(o.status.success(), "{args:?}: {}", String::from_utf8_lossy(&o.stderr));
    String::from_utf8(o.stdout).unwrap()
}

/// Names of the commands, and the long options of each.
fn commands() -> Vec<(String, Vec<String>)> {
    let all = Arguments::command();
    let of = |c: &clap::Command| {
        let longs = c.get_arguments().filter_map(|a| a.get_long().map(str::to_owned));
        (c.get_name().to_owned(), longs.collect())
    };
    all.get_subcommands().map(of).collect()
}

#[test]
fn every_help_has_an_example_that_the_program_takes() {
    let names: Vec<String> = commands().into_iter().map(|c| c.0).collect();
    assert!(names.len() >= 8, "{names:?}");
    let mut pages = vec![said(&["--help"])];
    pages.extend(names.iter().map(|n| said(&[n, "--help"])));
    for page in pages {
        assert!(page.lines().all(|l| l.chars().count() <= 80), "{page}");
        let examples: Vec<&str> =
            page.lines().filter_map(|l| l.trim().strip_prefix("lapwright ")).collect();
        assert!(page.contains("Example") && !examples.is_empty(), "{page}");
        for line in examples {
            // Up to where the shell takes over.
            let words = line.split_whitespace().take_while(|w| !["<", ">", "&&"].contains(w));
            let taken = Arguments::try_parse_from(std::iter::once("lapwright").chain(words));
            assert!(taken.is_ok(), "{line}: {:?}", taken.err());
        }
    }
}

#[test]
fn the_manual_page_tells_of_every_command_and_option() {
    let page = said(&["man"]);
    assert!(page.contains(".TH lapwright 1") && page.contains(".SH NAME"));
    let plain = page.replace("\\-", "-");
    for (name, options) in commands() {
        assert!(plain.contains(&format!(".SH {}\n", name.to_uppercase())), "{name}");
        // There is no page of its own to look into.
        assert!(!plain.contains(&format!("lapwright-{name}(1)")), "{name}");
        for o in options {
            assert!(plain.contains(&format!("--{o}")), "{name} --{o}");
        }
    }
    for code in ["0  done", "1  the drawing", "2  wrong usage", "3  done, with warnings"] {
        assert!(plain.contains(code), "{code}");
    }
    assert!(plain.contains("NO_COLOR"));
}

#[test]
fn completions_know_every_command_and_option() {
    for shell in ["bash", "zsh", "fish", "elvish", "powershell"] {
        let script = said(&["completions", shell]);
        for (name, options) in commands() {
            assert!(script.contains(&name), "{shell}: {name}");
            // fish writes `-l option`.
            assert!(options.iter().all(|o| script.contains(o.as_str())), "{shell}: {name}");
        }
    }
}

#[test]
fn no_color_keeps_color_off() {
    let help = |no_color: Option<&str>| {
        let mut c = program();
        c.args(["takeoff", "--help"]).env("CLICOLOR_FORCE", "1").env_remove("NO_COLOR");
        if let Some(v) = no_color {
            c.env("NO_COLOR", v);
        }
        String::from_utf8(c.output().unwrap().stdout).unwrap()
    };
    // Color comes when it is asked for, so that there is something to keep off.
    assert!(help(None).contains('\u{1b}'));
    assert!(!help(Some("1")).contains('\u{1b}'));
    // Findings carry none where there is no terminal.
    let o = program().args(["check", "no-such.dxf"]).output().unwrap();
    assert!(!o.stderr.is_empty() && !o.stderr.contains(&0x1b));
}

#[test]
fn quiet_prints_nothing_but_what_was_asked_for() {
    let dir = tempfile::tempdir().unwrap();
    let out = dir.path().join("out");
    // Without its job the R12 sample names no unit: a warning.
    let layout = |more: &[&str]| {
        let mut c = program();
        c.args(["layout", "sample-drawings/r12.dxf", "--no-pictures", "--out"]).arg(&out);
        c.args(more).output().unwrap()
    };
    let o = layout(&["--quiet"]);
    assert_eq!((o.status.code(), o.stdout.len(), o.stderr.len()), (Some(0), 0, 0));
    let o = layout(&["--quiet", "--strict"]);
    assert_eq!((o.status.code(), o.stdout.len(), o.stderr.len()), (Some(3), 0, 0));
    assert!(!layout(&[]).stderr.is_empty());
    let takeoff = |more: &[&str]| {
        program().args(["takeoff", "sample-drawings/r12.dxf"]).args(more).output().unwrap()
    };
    let (loud, quiet) = (takeoff(&[]), takeoff(&["--quiet"]));
    assert!(String::from_utf8_lossy(&loud.stderr).contains("warning"));
    assert!(quiet.stderr.is_empty() && quiet.stdout == loud.stdout && !quiet.stdout.is_empty());
}

#[test]
fn exit_codes_are_those_of_the_contract() {
    let dir = tempfile::tempdir().unwrap();
    let file = |name: &str, text: &str| {
        let path = dir.path().join(name);
        std::fs::write(&path, text).unwrap();
        path.to_str().unwrap().to_owned()
    };
    let bad_job = file("bad.toml", "[product]\nlenght = 150\n");
    let bad_value = file("value.toml", "[product]\ncarton = 0\n");
    let bad_prices = file("bad.csv", "item,price\n");
    let not_dxf = file("not.dxf", "no drawing at all");
    let wall = "sample-drawings/one-wall.dxf";
    let into = dir.path().join("out");
    let into = into.to_str().unwrap();
    for (code, args) in [
        (0, vec!["check", wall]),
        (0, vec!["takeoff", wall, "--explain", "panels"]),
        (1, vec!["layout", &not_dxf, "--out", into]),
        (1, vec!["layout", "no-such-file.dxf", "--out", into]),
        (1, vec!["layout", wall, "--job", &bad_job, "--out", into]),
        (1, vec!["layout", wall, "--job", &bad_value, "--out", into]),
        (1, vec!["layout", wall, "--prices", &bad_prices, "--out", into]),
        (1, vec!["takeoff", wall, "--prices", &bad_prices]),
        (2, vec!["takeoff", wall, "--explain", "no such line"]),
        (2, vec!["takeoff", wall, "--format", "yaml"]),
        (2, vec!["takeoff", wall, "--explain", "panels", "--format", "json"]),
        (2, vec!["layout", wall, "--paper", "A9", "--out", into]),
        (2, vec!["schema"]),
        (2, vec![]),
    ] {
        let o = program().args(&args).output().unwrap();
        let err = String::from_utf8_lossy(&o.stderr).into_owned();
        assert_eq!(o.status.code(), Some(code), "{args:?}: {err}");
        assert!(code == 0 || !err.is_empty(), "{args:?}");
        assert!(code == 0 || o.stdout.is_empty(), "{args:?}");
    }
    assert!(!std::path::Path::new(into).exists());
}

#[test]
fn schemas_are_json_that_names_its_draft() {
    for of in ["job", "layout", "takeoff"] {
        let v: serde_json::Value = serde_json::from_str(&said(&["schema", of])).unwrap();
        assert_eq!(v["$schema"], "https://json-schema.org/draft/2020-12/schema", "{of}");
        assert!(v["properties"].as_object().unwrap().len() > 9, "{of}");
    }
}

#[test]
#[cfg(target_os = "linux")]
fn what_stops_a_check_is_told_once_on_one_terminal() {
    let dir = tempfile::tempdir().unwrap();
    let drawing = dir.path().join("none.dxf");
    std::fs::write(&drawing, "0\nSECTION\n2\nENTITIES\n0\nENDSEC\n0\nEOF\n").unwrap();
    let told = |text: &[u8]| String::from_utf8_lossy(text).matches("nothing to side").count();
    // Apart, the list and the terminal each have it.
    let o = program().arg("check").arg(&drawing).output().unwrap();
    assert_eq!((told(&o.stdout), told(&o.stderr), o.status.code()), (1, 1, Some(1)));
    // `script` runs it on a terminal of its own.
    let line = format!("{} check {}", env!("CARGO_BIN_EXE_lapwright"), drawing.display());
    let mut on_terminal = std::process::Command::new("script");
    let Ok(o) = on_terminal.args(["-qec", &line, "/dev/null"]).output() else {
        return println!("skipped: there is no `script`");
    };
    assert_eq!(told(&o.stdout), 1, "{}", String::from_utf8_lossy(&o.stdout));
}
