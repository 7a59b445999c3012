//! Many cases, and what all of them together must show.

use std::path::Path;
use std::sync::Mutex;
use std::sync::atomic::{AtomicUsize, Ordering};

use super::{Case, End, case, end};

/// What became of all cases.
#[derive(Default)]
struct Ends {
    laid: u64,
    conflicts: u64,
    refused: Vec<String>,
    faults: Vec<String>,
}

/// A count from the environment.
fn number(name: &str, or: u64) -> u64 {
    std::env::var(name).ok().and_then(|n| n.parse().ok()).unwrap_or(or)
}

/// Writes a case that breaks a rule into the folder of `LAPWRIGHT_JOBS_KEPT`, to be looked at.
fn keep(seed: u64, case: &Case) {
    let Ok(folder) = std::env::var("LAPWRIGHT_JOBS_KEPT") else { return };
    let at = Path::new(&folder).join(seed.to_string());
    std::fs::write(at.with_extension("dxf"), &case.dxf).expect("the folder is there");
    std::fs::write(at.with_extension("toml"), &case.text).expect("the folder is there");
}

/// The seeds of `LAPWRIGHT_JOB_SEEDS`, with commas between, else those counted.
fn seeds(first: u64, count: u64) -> Vec<u64> {
    match std::env::var("LAPWRIGHT_JOB_SEEDS") {
        Ok(list) => list.split(',').filter_map(|n| n.trim().parse().ok()).collect(),
        Err(_) => (first..first + count).collect(),
    }
}

/// Takes cases on two cores.
fn all(seeds: &[u64]) -> Ends {
    let next = AtomicUsize::new(0);
    let ends = Mutex::new(Ends::default());
    std::thread::scope(|scope| {
        for _ in 0..2 {
            scope.spawn(|| {
                loop {
                    let Some(&seed) = seeds.get(next.fetch_add(1, Ordering::Relaxed)) else {
                        return;
                    };
                    let case = case(seed);
                    let found = end(&case);
                    let mut ends = ends.lock().unwrap();
                    match found {
                        End::Refused(code) => ends.refused.push(code),
                        End::Laid { conflict } => {
                            ends.laid += 1;
                            ends.conflicts += u64::from(conflict);
                        }
                        End::Broken(faults) => {
                            keep(seed, &case);
                            let faults = faults.join("\n  ");
                            ends.faults.push(format!("job {seed}:\n{}  {faults}", case.text));
                        }
                    }
                }
            });
        }
    });
    ends.into_inner().unwrap()
}

/// These cases keep every rule.
pub(crate) fn hold_these(seeds: &[u64]) {
    let ends = all(seeds);
    assert!(ends.faults.is_empty(), "{} faults\n{}", ends.faults.len(), ends.faults.join("\n"));
    assert!(ends.refused.is_empty(), "{:?}", ends.refused);
}

/// Takes `LAPWRIGHT_JOBS` cases, or so many, from `LAPWRIGHT_FIRST_JOB` on.
#[allow(clippy::print_stdout)] // What became of them, for whoever asks with --nocapture.
pub(crate) fn hold(usual: u64) {
    let seeds = seeds(number("LAPWRIGHT_FIRST_JOB", 1), number("LAPWRIGHT_JOBS", usual));
    let (ends, count) = (all(&seeds), seeds.len() as u64);
    println!(
        "{} laid, {} with proven conflicts; {} refused",
        ends.laid,
        ends.conflicts,
        ends.refused.len()
    );
    assert!(ends.faults.is_empty(), "{} faults\n{}", ends.faults.len(), ends.faults.join("\n"));
    // A property of few cases would be none: most jobs are laid out, few have conflicts.
    assert!(ends.laid * 10 >= count * 8, "{} laid; refused: {:?}", ends.laid, ends.refused);
    assert!(ends.conflicts * 10 <= count.max(10), "{} with conflicts", ends.conflicts);
}
