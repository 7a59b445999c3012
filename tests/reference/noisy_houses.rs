//! Drawing noise changes nothing: random houses drawn with ezdxf, tilted by a little or with every
//! corner a little off, are ordered as the clean ones are.
//!
//! `LAPWRIGHT_NOISY=200` takes that many houses instead of twenty, `LAPWRIGHT_FIRST_NOISY` is the first
//! seed, `LAPWRIGHT_JITTERS` how often each is jittered.

use std::fs;
use std::path::Path;

use lapwright::job::Job;
use lapwright::job::file as job_file;
use lapwright::layout::Layout;
use lapwright::model::seam::Effort;
use serde_json::Value;

use crate::noise::{Noisy, differ, tried};
use crate::venv::python;

/// Inches in a unit of the drawing (`DrawingFact::Inch`).
fn inches(unit: &str) -> f64 {
    match unit {
        "inch" => 1.0,
        "foot" => 12.0,
        "mm" => 1.0 / 25.4,
        "cm" => 10.0 / 25.4,
        "m" => 1000.0 / 25.4,
        other => panic!("no unit: {other}"),
    }
}

/// A house as it is drawn, its job, and its layout by a careful crew.
struct House {
    source: Vec<u8>,
    job: Job,
    crew: Layout,
    /// The same by a short search, and by the one that the job asks for, once they were needed.
    searched: [Option<Layout>; 2],
}

fn by(source: &[u8], job: &Job, effort: Effort) -> Result<Layout, String> {
    let mut job = job.clone();
    job.seams.effort = effort;
    tried(source, &job).map(|(layout, _)| layout)
}

impl House {
    fn read(path: &Path) -> Self {
        let source = fs::read(path).unwrap();
        let text = fs::read_to_string(path.with_extension("toml")).unwrap();
        let job = job_file::parse(&text, "job").unwrap();
        let crew = by(&source, &job, Effort::Crew).unwrap();
        House { source, job, crew, searched: [None, None] }
    }

    /// What differs where it is drawn with noise. Starting each run with the last offcut, a hair decides
    /// of which panel a piece is cut, and of all that come after: where only panels differ, both are
    /// laid by a search, at last by the one that is ordered by.
    fn differs(&mut self, noisy: &[u8]) -> Vec<String> {
        let other = match by(noisy, &self.job, Effort::Crew) {
            Ok(other) => other,
            Err(why) => return vec![why],
        };
        let mut found = differ(&self.crew, &other);
        for (effort, searched) in
            [Effort::Brief, self.job.seams.effort].into_iter().zip(&mut self.searched)
        {
            if found.is_empty() || !found.iter().all(|f| f.starts_with("Panels")) {
                break;
            }
            let clean =
                searched.get_or_insert_with(|| by(&self.source, &self.job, effort).unwrap());
            found = differ(clean, &by(noisy, &self.job, effort).unwrap());
        }
        found
    }
}

#[test]
fn random_houses_with_noise_are_ordered_as_clean_ones() {
    let number =
        |name: &str, or: u64| std::env::var(name).ok().and_then(|n| n.parse().ok()).unwrap_or(or);
    let (first, count) = (number("LAPWRIGHT_FIRST_NOISY", 1), number("LAPWRIGHT_NOISY", 20));
    let jitters = number("LAPWRIGHT_JITTERS", 3);
    let folder = tempfile::tempdir().unwrap();
    let words = [first, count].map(|n| n.to_string());
    let args = ["--first", &words[0], "--count", &words[1]].map(Path::new);
    python("tests/samples/random_houses.py", &[&[folder.path()], &args[..]].concat());
    let mut faults = Vec::new();
    for seed in first..first + count {
        let path = folder.path().join(format!("house-{seed:05}.dxf"));
        let mut house = House::read(&path);
        let truth: Value =
            serde_json::from_slice(&fs::read(path.with_extension("json")).unwrap()).unwrap();
        let by = 0.03 / inches(truth["habits"]["unit"].as_str().unwrap());
        let noises = [("tilted".to_owned(), Noisy::tilted(0.01))].into_iter();
        let jittered = |i| (format!("jitter {i}"), Noisy::jittered(by, 100 * seed + i));
        for (name, mut noise) in noises.chain((0..jitters).map(jittered)) {
            let noisy = noise.bytes(&house.source);
            let found = house.differs(&noisy);
            if !found.is_empty() {
                faults.push(format!("house {seed}, {name}: {}", found.join("; ")));
            }
        }
    }
    let all = count * (jitters + 1);
    assert!(faults.is_empty(), "{} of {all}\n{}", faults.len(), faults.join("\n"));
}
