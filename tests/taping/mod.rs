//! A house taped at random, as site measures never agree with a drawing: it is laid out, and keeps every rule.

use std::collections::BTreeMap;

use lapwright::finding::Findings;
use lapwright::job::{Job, file as job_file};
use lapwright::model::measure::{Measure, MeasureKind};
use lapwright::pipeline;
use lapwright::pipeline::measures::measures;

use crate::jobcase::Dice;

/// How far off the drawing a length is taped at most, inches: most of them by less, corners out of plumb and tops out
/// of level by as much as 1 in on 8 ft and a little more.
const MOST: f64 = 1.5;

/// What may be said of one drawing.
pub(crate) struct Taped<'a> {
    pub(crate) bytes: &'a [u8],
    pub(crate) name: &'a str,
    /// The job file without what was taped.
    pub(crate) job: &'a str,
}

fn job(text: &str) -> Job {
    job_file::parse(text, "job").expect("a job of this test's own")
}

/// Two blanks in three filled in, to a sixteenth.
fn filled(all: &[Measure], seed: u64) -> BTreeMap<String, f64> {
    let mut dice = Dice::new(seed);
    let mut out = BTreeMap::new();
    for m in all {
        let (blank, far) = (dice.once_in(3), dice.share() * dice.share() * MOST);
        let off = if dice.once_in(2) { -far } else { far };
        if !blank {
            let said = ((m.drawn + off) * 16.0).round() / 16.0;
            // No opening is over the side of its wall: a job that says so is refused.
            let least = if m.kind == MeasureKind::Place { 0.0 } else { f64::NEG_INFINITY };
            out.insert(m.name.clone(), said.max(least));
        }
    }
    out
}

impl Taped<'_> {
    /// Every length worth taping as drawn; none where the drawing is refused.
    fn measures(&self, findings: &mut Findings) -> Option<Vec<Measure>> {
        let job = job(self.job);
        let read = pipeline::reading(self.bytes, self.name, &job, findings).ok()?;
        let sets = pipeline::layout(self.bytes, self.name, &job, findings, &mut |_| {}).ok()?;
        Some(measures(&read.house, &sets.house.layout))
    }

    /// What is wrong with layouts of the house as taped with each of the seeds, and how many were laid out.
    pub(crate) fn faults(&self, seeds: std::ops::Range<u64>) -> (usize, Vec<String>) {
        let Some(all) = self.measures(&mut Findings::default()) else { return (0, Vec::new()) };
        let (mut laid, mut faults) = (0, Vec::new());
        for seed in seeds {
            let mut job = job(self.job);
            job.taped = filled(&all, seed);
            let mut findings = Findings::default();
            let said = format!("{}, taped with {seed}", self.name);
            match pipeline::layout(self.bytes, self.name, &job, &mut findings, &mut |_| {}) {
                Err(r) => faults.push(format!("{said}: {:?}", r.0.kind)),
                Ok(sets) => {
                    laid += 1;
                    let broken = sets.house.layout.verify.violations();
                    faults.extend(broken.map(|v| format!("{said}: {v:?}")));
                }
            }
            if let (Ok(folder), false) = (std::env::var("LAPWRIGHT_JOBS_KEPT"), faults.is_empty()) {
                let lines = job.taped.iter().map(|(k, v)| format!("\"{k}\" = {v}\n"));
                let text = format!("{}[taped]\n{}", self.job, lines.collect::<String>());
                let stem = self.name.replace(['.', ' '], "-");
                let at = std::path::Path::new(&folder).join(format!("{stem}-{seed}.toml"));
                std::fs::write(at, text).expect("the folder is there");
            }
        }
        (laid, faults)
    }
}

/// How many tapings of a drawing: those of `LAPWRIGHT_TAPINGS`, else so many.
pub(crate) fn tapings(usual: u64) -> std::ops::Range<u64> {
    let said = std::env::var("LAPWRIGHT_TAPINGS").ok().and_then(|n| n.parse().ok());
    1..1 + said.unwrap_or(usual)
}
