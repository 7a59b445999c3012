//! A process watched to its end: wall time, and peak memory where the system tells it. Measures; nothing
//! is judged by it but by those who ask.

use std::path::PathBuf;
use std::process::{Command, ExitStatus};
use std::time::{Duration, Instant};

/// How a process went.
pub(crate) struct Watched {
    /// Wall time.
    pub seconds: f64,
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
    let status = PathBuf::from(format!("/proc/{}/status", child.id()));
    let mut peak = 0.0_f64;
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
        std::thread::sleep(Duration::from_millis(2));
    };
    Watched { seconds: started.elapsed().as_secs_f64(), megabytes: peak, exit }
}
