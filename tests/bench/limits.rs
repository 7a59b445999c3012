//! Inputs that ask for more than any house does: `cargo bench --bench limits [-- PART OF A NAME]`. Each
//! is given to the program in a process of its own; wall time, processor time, peak memory and the end
//! are printed, and what is over 10 s by both clocks or over 1.5 GB, or ends otherwise than it must, is
//! marked, and fails the run. On a machine that serves others too the processor's time is the one to read.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::print_stdout,
    clippy::disallowed_methods,
    reason = "a bench prints what it measures, and may stop at what is not as it should be"
)]

#[path = "../few_threads/mod.rs"]
mod few_threads;
#[path = "../hostile/mod.rs"]
mod hostile;
#[path = "../watched/mod.rs"]
mod watched;

use std::path::Path;
use std::process::{Command, ExitStatus, Stdio};
use std::time::Duration;

use hostile::{Case, Ends};

const MOST_SECONDS: f64 = 10.0;
/// How much longer a build for development may take where the limit is closer.
const UNOPTIMIZED: f64 = if cfg!(debug_assertions) { 4.0 } else { 1.0 };
const MOST_MEGABYTES: f64 = 1500.0;
/// After this a process is ended and called over.
const PATIENCE: Duration = Duration::from_secs(60);

fn main() {
    let words: Vec<String> = std::env::args().skip(1).filter(|a| !a.starts_with("--")).collect();
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("limits");
    println!("| input | MB | seconds | of processor | MB at most | ends |");
    println!("|---|---:|---:|---:|---:|---|");
    let mut over = 0;
    for case in hostile::cases() {
        if words.iter().all(|w| case.name.contains(w.as_str())) {
            let _ = std::fs::remove_dir_all(&folder);
            std::fs::create_dir_all(&folder).unwrap();
            over += usize::from(!held(&case, &folder));
        }
    }
    let _ = std::fs::remove_dir_all(&folder);
    println!(
        "\n{over} over {MOST_SECONDS} s or {MOST_MEGABYTES} MB, or with another end than they must"
    );
    if over > 0 {
        std::process::exit(1);
    }
}

fn held(case: &Case, folder: &Path) -> bool {
    let at = |name: &str| folder.join(name);
    let input = (case.make)(case.full);
    let (drawing, job) = match case.kind {
        "toml" => (
            hostile::cases()
                .iter()
                .find(|c| c.name.contains("ten miles"))
                .map(|c| (c.make)(900))
                .unwrap(),
            input.clone(),
        ),
        _ => (input.clone(), case.job.as_bytes().to_vec()),
    };
    let drawing_name = match case.kind {
        "svg" => "d.svg",
        "pdf" => "d.pdf",
        _ => "d.dxf",
    };
    std::fs::write(at(drawing_name), drawing).unwrap();
    std::fs::write(at("j.toml"), job).unwrap();
    let size = input.len() as f64 / 1e6;
    drop(input);
    let errors = std::fs::File::create(at("errors")).unwrap();
    let mut command = Command::new(env!("CARGO_BIN_EXE_lapwright"));
    if case.one_thread {
        let Some(limited) = few_threads::command(folder) else {
            println!("| {} | | | | | NOT RUN: no limit of threads can be set here |", case.name);
            return true;
        };
        command = limited;
    }
    command.arg(case.verb).arg(at(drawing_name)).arg("--job").arg(at("j.toml"));
    command.arg("--out").arg(at("out")).stdout(Stdio::null()).stderr(errors);
    let watched::Watched { seconds, cpu, megabytes, exit } =
        watched::watched(&mut command, Some(PATIENCE));
    let said = std::fs::read_to_string(at("errors")).unwrap_or_default();
    let (right, end) = ended(case, exit, &said);
    let held_up = if cpu > 0.0 { seconds.min(cpu) } else { seconds };
    let most = case.seconds.map_or(MOST_SECONDS, |s| s * UNOPTIMIZED);
    let over = held_up > most || megabytes > MOST_MEGABYTES;
    let mark = if over { " **over**" } else { "" };
    println!(
        "| {} | {size:.1} | {seconds:.2} | {cpu:.2} | {megabytes:.0} | {end}{mark} |",
        case.name
    );
    right && !over
}

/// Whether a run ended as it must, and how it did.
fn ended(case: &Case, exit: Option<ExitStatus>, said: &str) -> (bool, String) {
    let code = exit.and_then(|e| e.code());
    let told = |codes: &[&str]| codes.iter().find(|c| said.contains(**c)).map(|c| (*c).to_owned());
    let (right, end) = match &case.ends {
        Ends::Laid => (code == Some(0), "laid out".to_owned()),
        Ends::Told(codes) => {
            (told(codes).is_some() && matches!(code, Some(0 | 1)), told(codes).unwrap_or_default())
        }
        Ends::Refused(codes) => {
            (told(codes).is_some() && code == Some(1), told(codes).unwrap_or_default())
        }
    };
    let end = match exit {
        None => "**not within a minute**".to_owned(),
        Some(e) if !right => {
            format!("**{e}**: {}", said.split_whitespace().take(24).collect::<Vec<_>>().join(" "))
        }
        Some(_) => end,
    };
    (right, end)
}
