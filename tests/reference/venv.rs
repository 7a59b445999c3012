//! The pinned Python environment, made once and again when the pins change.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::OnceLock;

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

fn run(command: &mut Command, help: &str) -> String {
    let out = command.output().unwrap_or_else(|e| panic!("{command:?}: {e}. {help}"));
    let text = |b: &[u8]| String::from_utf8_lossy(b).into_owned();
    assert!(
        out.status.success(),
        "{command:?} failed. {help}\n{}{}",
        text(&out.stdout),
        text(&out.stderr)
    );
    text(&out.stdout)
}

/// The environment's interpreter.
fn interpreter() -> &'static Path {
    static MADE: OnceLock<PathBuf> = OnceLock::new();
    MADE.get_or_init(|| {
        let help = "The reference tests need python3 with venv and pip: on Debian, apt-get install python3 python3-venv.";
        let pins = root().join("tests/reference/requirements.txt");
        let wanted = std::fs::read_to_string(&pins).unwrap();
        let home = root().join("target/reference-venv");
        let (python, stamp) = (home.join("bin/python"), home.join("pins.txt"));
        if std::fs::read_to_string(&stamp).is_ok_and(|have| have == wanted) {
            return python;
        }
        let _ = std::fs::remove_dir_all(&home);
        run(Command::new("python3").args(["-m", "venv"]).arg(&home), help);
        run(Command::new(&python).args(["-m", "pip", "install", "--quiet", "--requirement"]).arg(&pins), help);
        std::fs::write(&stamp, wanted).unwrap();
        python
    })
}

/// Runs a script of the repository; its standard output.
pub(crate) fn python(script: &str, args: &[&Path]) -> String {
    let mut command = Command::new(interpreter());
    command.env("PYTHONDONTWRITEBYTECODE", "1").arg(root().join(script)).args(args);
    run(&mut command, "")
}
