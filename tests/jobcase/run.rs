//! Many cases, and what all of them together must show.

use std::sync::Mutex;
use std::sync::atomic::{AtomicU64, Ordering};

use super::{End, case, end};

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

/// Takes cases on two cores.
fn all(first: u64, count: u64) -> Ends {
    let next = AtomicU64::new(first);
    let ends = Mutex::new(Ends::default());
    std::thread::scope(|scope| {
        for _ in 0..2 {
            scope.spawn(|| {
                loop {
                    let seed = next.fetch_add(1, Ordering::Relaxed);
                    if seed >= first + count {
                        return;
                    }
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

/// Takes `LAPWRIGHT_JOBS` cases, or so many, from `LAPWRIGHT_FIRST_JOB` on.
#[allow(clippy::print_stdout)] // What became of them, for whoever asks with --nocapture.
pub(crate) fn hold(usual: u64) {
    let count = number("LAPWRIGHT_JOBS", usual);
    let ends = all(number("LAPWRIGHT_FIRST_JOB", 1), count);
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
