//! A process watched to its end: wall time, and processor time and peak memory where the system tells
//! them. Measures; nothing is judged by it but by those who ask.

use std::path::PathBuf;
use std::process::{Command, ExitStatus};
use std::time::{Duration, Instant};

/// How a process went.
pub(crate) struct Watched {
    /// Wall time.
    pub seconds: f64,
    /// Processor time of all its threads, seconds, to a hundredth: the same however many others the
    /// machine serves. 0 where the system does not tell it.
    pub cpu: f64,
    /// Most resident memory, MB; 0 where the system does not tell it.
    pub megabytes: f64,
    /// How it ended; none if it was killed when patience was out.
    pub exit: Option<ExitStatus>,
}

/// Starts a process and watches it; one that takes longer than `patience` is killed.
#[allow(clippy::disallowed_methods, reason = "time is what is measured here")]
pub(crate) fn watched(command: &mut Command, patience: Option<Duration>) -> Watched {
    let started = Instant::now();
    let mut child = command.spawn().unwrap();
    let of = |file: &str| PathBuf::from(format!("/proc/{}/{file}", child.id()));
    let (status, stat) = (of("status"), of("stat"));
    let (mut peak, mut cpu) = (0.0_f64, 0.0_f64);
    let exit = loop {
        if let Some(exit) = child.try_wait().unwrap() {
            break Some(exit);
        }
        if patience.is_some_and(|p| started.elapsed() > p) {
            child.kill().unwrap();
            child.wait().unwrap();
            break None;
        }
        let text = std::fs::read_to_string(&status).unwrap_or_default();
        let line = text.lines().find_map(|l| l.strip_prefix("VmHWM:"));
        let kib = line.and_then(|l| l.trim().trim_end_matches(" kB").parse().ok()).unwrap_or(0.0);
        peak = peak.max(kib * 1024.0 / 1e6);
        cpu = cpu.max(ticks(&std::fs::read_to_string(&stat).unwrap_or_default()) / TICKS);
        std::thread::sleep(Duration::from_millis(2));
    };
    Watched { seconds: started.elapsed().as_secs_f64(), cpu, megabytes: peak, exit }
}

/// Ticks to a second, as Linux counts them for whoever asks.
const TICKS: f64 = 100.0;

/// Processor time in a process's `stat`: user's and system's are the 14th and 15th word, and the second,
/// its name in brackets, may hold blanks.
fn ticks(stat: &str) -> f64 {
    let after = stat.rsplit_once(')').map_or("", |(_, rest)| rest);
    after.split_whitespace().skip(11).take(2).filter_map(|w| w.parse::<f64>().ok()).sum()
}
