//! Judges many drawings and tells how far the reading is.
//!
//! `LAPWRIGHT_ARCHITECT_OUT=DIR` writes drawings with their truth into a folder, those of
//! `LAPWRIGHT_ARCHITECT_SEEDS=3,17`, else all that are judged; `LAPWRIGHT_ARCHITECT_REPORT=FILE` the
//! table of faults.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;
use std::path::Path;
use std::{env, fs};

use super::habit::Habit;
use super::judge::{Fault, Verdict, judged};
use super::truth::TrueWall;
use super::{Drawing, drawing, shown};

/// Seeds looked at while the reader is built.
pub(crate) const OPEN: u64 = 1;
/// Seeds never looked at one by one.
pub(crate) const SEALED: u64 = 7_000_001;
/// Of walls that are right, how many a code may stand at and still be an alarm, of 1.
const COMMON: f64 = 0.2;

/// Judged drawings together.
pub(crate) struct Score {
    pub(crate) verdicts: Vec<Verdict>,
    pub(crate) habits: BTreeMap<u64, BTreeSet<Habit>>,
    /// Codes that stand at right walls as well.
    pub(crate) common: BTreeSet<String>,
    /// How many right walls there are, and at how many each code stands.
    pub(crate) at_right: (usize, BTreeMap<String, usize>),
}

/// Seeds given by the environment, else these.
pub(crate) fn seeds(or: impl Iterator<Item = u64>) -> Vec<u64> {
    match env::var("LAPWRIGHT_ARCHITECT_SEEDS") {
        Ok(s) => s.split(',').map(|n| n.trim().parse().unwrap()).collect(),
        Err(_) => or.collect(),
    }
}

/// Habits that fewer than so many of these drawings show, and drawings with fewer than three.
pub(crate) fn seldom(seeds: impl Iterator<Item = u64>, least: usize) -> Vec<String> {
    let mut count: BTreeMap<Habit, usize> = BTreeMap::new();
    let mut out = Vec::new();
    for seed in seeds {
        let shown = shown(seed);
        if shown.len() < 3 {
            out.push(format!("seed {seed}: {shown:?}"));
        }
        for h in shown {
            *count.entry(h).or_default() += 1;
        }
    }
    for h in Habit::ALL {
        let n = count.get(h).copied().unwrap_or_default();
        if n < least {
            out.push(format!("{}: in {n}", h.word()));
        }
    }
    out
}

/// Walls whose true net area is not what its level strips add up to, or is no plausible part of the
/// outline less openings.
pub(crate) fn sums_wrong(seed: u64) -> Vec<String> {
    let of = |w: &TrueWall| {
        let (scanned, most) = (w.scanned(), w.less_openings());
        let is_right = (scanned / w.net - 1.0).abs() < 2e-3
            && w.net <= most * (1.0 + 1e-6)
            && w.net > 0.3 * most;
        (!is_right).then(|| format!("{seed}: {} for {scanned} of {most}", w.net))
    };
    drawing(seed).truth.walls().filter_map(of).collect()
}

/// Draws and judges.
pub(crate) fn score(seeds: &[u64]) -> Score {
    let mut verdicts = Vec::new();
    let mut habits = BTreeMap::new();
    for seed in seeds {
        let d = drawing(*seed);
        kept(&d);
        verdicts.push(judged(&d));
        habits.insert(*seed, d.habits);
    }
    let right: Vec<&BTreeSet<String>> = verdicts.iter().flat_map(|v| &v.at_right).collect();
    let mut count: BTreeMap<&String, usize> = BTreeMap::new();
    for code in right.iter().flat_map(|c| c.iter()) {
        *count.entry(code).or_default() += 1;
    }
    let often = |n: usize| right.len() > 20 && n as f64 > COMMON * right.len() as f64;
    let count: BTreeMap<String, usize> =
        count.into_iter().map(|(code, n)| (code.clone(), n)).collect();
    let common = count.iter().filter(|(_, n)| often(**n)).map(|(c, _)| c.clone()).collect();
    let at_right = (right.len(), count);
    Score { verdicts, habits, common, at_right }
}

fn kept(d: &Drawing) {
    let Ok(folder) = env::var("LAPWRIGHT_ARCHITECT_OUT") else { return };
    let stem = Path::new(&folder).join(format!("architect-{}", d.seed));
    fs::create_dir_all(&folder).unwrap();
    fs::write(stem.with_extension("dxf"), &d.dxf).unwrap();
    let text = serde_json::to_string_pretty(&d.json).unwrap();
    fs::write(stem.with_extension("json"), text).unwrap();
}

impl Score {
    fn share(&self, of: impl Fn(&Verdict) -> bool) -> f64 {
        self.verdicts.iter().filter(|v| of(v)).count() as f64 / self.verdicts.len() as f64
    }

    /// Drawings whose walls are right, of 1.
    pub(crate) fn walls(&self) -> f64 {
        self.share(Verdict::walls_right)
    }

    /// Of those, drawings whose areas are.
    pub(crate) fn areas(&self) -> f64 {
        let right = self.share(|v| v.walls_right() && v.areas_right());
        if self.walls() > 0.0 { right / self.walls() } else { 0.0 }
    }

    /// Drawings with something wrong that has no alarm.
    pub(crate) fn silent(&self) -> Vec<u64> {
        let of = self.verdicts.iter().filter(|v| v.silent(&self.common).next().is_some());
        of.map(|v| v.seed).collect()
    }

    /// How far it is, in one line.
    pub(crate) fn line(&self) -> String {
        let openings =
            |v: &Verdict| v.faults.iter().any(|f| matches!(f.fault, Fault::Openings(..)));
        format!(
            "{} drawings: walls right in {:.1} %, areas within 0.5 % in {:.1} % of those, openings \
             miscounted in {:.1} %, the unit asked for in {}, wrong without an alarm {}",
            self.verdicts.len(),
            self.walls() * 100.0,
            self.areas() * 100.0,
            self.share(openings) * 100.0,
            self.verdicts.iter().filter(|v| v.asked_unit).count(),
            self.silent().len(),
        )
    }

    /// The same of the drawings that nobody looks at.
    fn sealed(&self) -> String {
        let of: Vec<&Verdict> = self.verdicts.iter().filter(|v| v.seed >= SEALED).collect();
        let right = of.iter().filter(|v| v.walls_right()).count();
        let silent = of.iter().filter(|v| v.silent(&self.common).next().is_some()).count();
        format!(
            "of them {} sealed: walls right in {right}, wrong without an alarm {silent}",
            of.len()
        )
    }

    /// At how many right walls each code stands.
    fn alarms_at_right(&self) -> String {
        let (right, codes) = &self.at_right;
        let mut out = format!("{:<44}{:>9}\n", format!("code, at {right} right walls"), "walls");
        for (code, n) in codes {
            let _ = writeln!(out, "{code:<44}{n:>9}");
        }
        out + "\n"
    }

    /// Faults by kind and by habit.
    pub(crate) fn table(&self) -> String {
        let mut out = format!(
            "{}\n{}\ncodes that stand at right walls too: {:?}\n\n",
            self.line(),
            self.sealed(),
            self.common
        );
        let mut kinds: BTreeMap<String, (BTreeSet<u64>, BTreeSet<u64>)> = BTreeMap::new();
        for v in &self.verdicts {
            let silent: BTreeSet<String> = v.silent(&self.common).map(|f| f.fault.word()).collect();
            for f in &v.faults {
                let word = f.fault.word();
                let e = kinds.entry(word.clone()).or_default();
                e.0.insert(v.seed);
                if silent.contains(&word) {
                    e.1.insert(v.seed);
                }
            }
        }
        out += &self.alarms_at_right();
        let some = |s: &BTreeSet<u64>| {
            s.iter()
                .filter(|n| **n < SEALED)
                .take(8)
                .map(u64::to_string)
                .collect::<Vec<_>>()
                .join(" ")
        };
        let _ = writeln!(out, "{:<44}{:>9}{:>8}  seeds", "fault", "drawings", "silent");
        for (word, (all, silent)) in &kinds {
            let first = some(if silent.is_empty() { all } else { silent });
            let _ = writeln!(out, "{word:<44}{:>9}{:>8}  {first}", all.len(), silent.len());
        }
        let _ = writeln!(
            out,
            "\n{:<26}{:>9}{:>13}{:>13}{:>8}  seeds with walls wrong",
            "habit", "drawings", "walls wrong", "areas wrong", "silent"
        );
        let silent = self.silent();
        for h in Habit::ALL {
            let with: Vec<&Verdict> =
                self.verdicts.iter().filter(|v| self.habits[&v.seed].contains(h)).collect();
            let part = |of: &dyn Fn(&&Verdict) -> bool| {
                let n = with.iter().filter(|v| of(v)).count();
                format!("{:.0} %", 100.0 * n as f64 / with.len().max(1) as f64)
            };
            let wrong: BTreeSet<u64> =
                with.iter().filter(|v| !v.walls_right()).map(|v| v.seed).collect();
            let _ = writeln!(
                out,
                "{:<26}{:>9}{:>13}{:>13}{:>8}  {}",
                h.word(),
                with.len(),
                part(&|v| !v.walls_right()),
                part(&|v| !v.areas_right()),
                with.iter().filter(|v| silent.contains(&v.seed)).count(),
                some(&wrong),
            );
        }
        out
    }

    /// Each drawing with its faults.
    pub(crate) fn list(&self) -> String {
        let mut out = String::new();
        for v in self.verdicts.iter().filter(|v| v.seed < SEALED) {
            let habits: Vec<&str> = self.habits[&v.seed].iter().map(|h| h.word()).collect();
            let _ = writeln!(
                out,
                "seed {} ({} errors, {} warnings): {}",
                v.seed,
                v.errors,
                v.warnings,
                habits.join(", ")
            );
            for f in &v.faults {
                let p = f.place;
                let _ = writeln!(
                    out,
                    "    {:?} in {:.0},{:.0} to {:.0},{:.0}; told: {:?}",
                    f.fault, p.x0, p.y0, p.x1, p.y1, f.codes
                );
            }
        }
        out
    }

    /// Writes the tables where the environment asks for it; drawings of sealed seeds are never listed.
    pub(crate) fn report(&self) {
        if let Ok(path) = env::var("LAPWRIGHT_ARCHITECT_REPORT") {
            fs::write(path, format!("{}\n{}", self.table(), self.list())).unwrap();
        }
    }
}
