//! The Python environment of the reference tests: made once under `target/`, made anew when
//! `requirements.txt` or the interpreter changes.

use std::fs::{self, File};
use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use std::sync::OnceLock;

const REQUIREMENTS: &str = include_str!("requirements.txt");

const NEEDS: &str = "the reference tests need Python 3.11 or later as `python3`, with its venv and \
     pip modules (on Debian: apt-get install python3 python3-venv) and a package index in reach; \
     plain `cargo test` needs none of them";

/// Runs a script of the project (`tests/...`) with these arguments and returns what it printed.
/// Fails the test with the script's own errors if it fails.
pub(crate) fn python(script: &str, args: &[&Path]) -> String {
    let home = environment();
    let output = Command::new(interpreter(home))
        .arg("-B") // leaves no compiled files beside the scripts
        .arg(root().join(script))
        .args(args)
        .current_dir(root())
        .env_remove("PYTHONPATH")
        .env_remove("PYTHONHOME")
        .env("PYTHONUTF8", "1")
        .env("XDG_CACHE_HOME", home.join("cache"))
        .output()
        .unwrap_or_else(|e| panic!("{script} did not start: {e}"));
    assert!(output.status.success(), "{script} failed:\n{}", said(&output));
    String::from_utf8(output.stdout).unwrap_or_else(|e| panic!("{script} printed no UTF-8: {e}"))
}

/// The project's folder.
pub(crate) fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

pub(crate) fn environment() -> &'static Path {
    static HOME: OnceLock<PathBuf> = OnceLock::new();
    HOME.get_or_init(|| {
        let target =
            Path::new(env!("CARGO_TARGET_TMPDIR")).parent().expect("target/tmp is in target");
        let home = target.join("reference-venv");
        // Two runs at once: the second waits here. The lock goes with its process, so a killed run
        // leaves none behind.
        let lock = File::create(target.join("reference-venv.lock")).expect("target/ is writable");
        lock.lock().expect("the lock file can be locked");
        let wanted = format!("{}{REQUIREMENTS}", python_version());
        let stamp = home.join("made-from.txt");
        if fs::read_to_string(&stamp).ok().as_deref() != Some(&*wanted) {
            make(&home);
            // Last, so that a half-made environment has none.
            fs::write(&stamp, wanted).expect("the environment is writable");
        }
        home
    })
}

fn python_version() -> String {
    match Command::new("python3").arg("--version").output() {
        Ok(output) if output.status.success() => {
            String::from_utf8_lossy(&output.stdout).into_owned()
        }
        _ => panic!("no python3: {NEEDS}"),
    }
}

fn make(home: &Path) {
    if home.exists() {
        fs::remove_dir_all(home).expect("the old environment can be removed");
    }
    must(Command::new("python3").args(["-m", "venv"]).arg(home), "making the environment");
    let requirements = root().join("tests/reference/requirements.txt");
    let pip = ["-m", "pip", "--disable-pip-version-check", "--no-input"];
    // Every package is listed, so nothing may come in unpinned.
    must(
        Command::new(interpreter(home))
            .args(pip)
            .args(["install", "--quiet", "--no-deps", "--only-binary", ":all:", "-r"])
            .arg(requirements),
        "installing the pinned packages",
    );
    must(Command::new(interpreter(home)).args(pip).arg("check"), "checking the pinned packages");
}

fn must(command: &mut Command, doing: &str) {
    match command.output() {
        Ok(output) if output.status.success() => {}
        Ok(output) => panic!("{doing} failed: {NEEDS}\n{}", said(&output)),
        Err(e) => panic!("{doing} failed ({e}): {NEEDS}"),
    }
}

fn said(output: &Output) -> String {
    let [out, err] = [&output.stdout, &output.stderr].map(|b| String::from_utf8_lossy(b));
    format!("{out}\n{err}")
}

pub(crate) fn interpreter(home: &Path) -> PathBuf {
    if cfg!(windows) { home.join("Scripts/python.exe") } else { home.join("bin/python") }
}
