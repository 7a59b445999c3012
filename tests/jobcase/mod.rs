//! Jobs drawn at random from the schema of the job file, over small drawings made here: what any job that
//! is accepted must keep. Every seed is a case of its own, the same on every machine.
#![allow(dead_code, reason = "each test that takes this in uses a part")]

mod drawing;
pub(crate) mod run;
mod settings;

use lapwright::finding::Findings;
use lapwright::job::Job;
use lapwright::job::file as job_file;
use lapwright::layout::Layout;
use lapwright::layout::breach::Breach;
use lapwright::layout::breach::wall::FieldBreach;
use lapwright::layout::rule::Rule;
use lapwright::layout::violation::{Subject, Violation};
use lapwright::model::ids::RunId;
use lapwright::pipeline;
use lapwright::wording::checks;

/// Marsaglia's xorshift64 (2003).
pub(crate) struct Dice(u64);

impl Dice {
    /// Near seeds are spread by Knuth's constant.
    pub(crate) fn new(seed: u64) -> Self {
        let mut dice = Dice(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) ^ 0x5851_f42d_4c95_7f2d);
        dice.0 |= 1;
        (0..4).for_each(|_| _ = dice.roll(2));
        dice
    }

    /// A whole number below `n`, which is over 0.
    pub(crate) fn roll(&mut self, n: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        ((self.0 >> 11) % n as u64) as usize
    }

    /// Once in `n` times.
    pub(crate) fn once_in(&mut self, n: usize) -> bool {
        self.roll(n) == 0
    }

    /// One of a list.
    pub(crate) fn of<T: Clone>(&mut self, list: &[T]) -> T {
        list[self.roll(list.len())].clone()
    }

    /// From 0 to 1.
    pub(crate) fn share(&mut self) -> f64 {
        self.roll(1 << 30) as f64 / (1u64 << 30) as f64
    }
}

/// A drawing with a job that is accepted.
pub(crate) struct Case {
    /// The job file.
    pub(crate) text: String,
    pub(crate) job: Job,
    pub(crate) dxf: String,
}

/// The case of a seed.
pub(crate) fn case(seed: u64) -> Case {
    let mut dice = Dice::new(seed);
    let drawn = drawing::drawn(&mut dice);
    let text = settings::job_text(&mut dice, &drawn);
    let job = job_file::parse(&text, "job.toml").expect("settings were tried one by one");
    Case { text, job, dxf: drawn.dxf }
}

/// Settings for a drawing in inches that is made elsewhere: see `tests/fuzz/targets/jobs.rs`.
pub(crate) fn settings_of(seed: u64) -> Job {
    let drawn = drawing::Drawn {
        dxf: String::new(),
        unit: "inch",
        elevations: vec!["elevation".to_owned()],
        width: 240.0,
        height: 96.0,
        zone_layer: true,
    };
    let text = settings::job_text(&mut Dice::new(seed), &drawn);
    job_file::parse(&text, "job.toml").expect("settings were tried one by one")
}

/// What became of a case.
pub(crate) enum End {
    /// The drawing cannot be used with this job, and it is said why.
    Refused(String),
    /// Laid out; whether a proven conflict is named in it.
    Laid { conflict: bool },
    /// Laid out, with rules broken.
    Broken(Vec<String>),
}

/// Lays a case out and checks it.
pub(crate) fn end(case: &Case) -> End {
    let mut findings = Findings::default();
    let laid =
        pipeline::layout(case.dxf.as_bytes(), "c.dxf", &case.job, &mut findings, &mut |_| {});
    let sets = match laid {
        Ok(sets) => sets,
        Err(why) => return End::Refused(why.0.code().word().to_owned()),
    };
    let (mut faults, mut conflict) = (Vec::new(), false);
    for set in sets.iter() {
        faults.extend(wrong(&set.layout));
        conflict |= !set.layout.bound.conflicts.is_empty();
    }
    if faults.is_empty() { End::Laid { conflict } } else { End::Broken(faults) }
}

/// Broken rules of a layout that no proven conflict accounts for.
fn wrong(layout: &Layout) -> Vec<String> {
    let mut out = Vec::new();
    assert!(layout.verify.rules.len() > 20, "only {} rules", layout.verify.rules.len());
    for rule in layout.verify.rules.iter().filter(|r| !r.passes()) {
        let open = rule.violations.iter().filter(|v| !proven(layout, rule.rule, v));
        let open = open.filter(|v| !bare(v));
        for violation in open.take(2) {
            let style = layout.job.sheet.lengths;
            let words = checks::violation(violation, style);
            out.push(format!("{}: {words}", checks::rule(rule.rule).en));
        }
    }
    out
}

/// Whether a wall is told as bare by a clearance to grade or roof that the job asks for: the alarm that is meant,
/// where exposure and clearance are large on a small wall.
fn bare(violation: &Violation) -> bool {
    let wanted =
        |b: &FieldBreach| matches!(b, FieldBreach::NoSiding { .. } | FieldBreach::TooBare { .. });
    matches!(&violation.breach, Breach::Field(b) if wanted(b))
}

/// Whether a rule of seams is broken by a run of a conflict that is proven to have no layout.
fn proven(layout: &Layout, rule: Rule, violation: &Violation) -> bool {
    let seams = [Rule::SeamStagger, Rule::ShortestPiece, Rule::JointStagger, Rule::JointsOnStuds];
    let named = |s: &Subject| {
        let runs: Vec<&RunId> = match s {
            Subject::Run { run } => vec![run],
            Subject::Piece { piece } => layout
                .walls()
                .flat_map(|(_, w)| &w.courses)
                .flat_map(|c| &c.runs)
                .filter(|r| r.pieces.iter().any(|p| p.mark == *piece))
                .map(|r| &r.id)
                .collect(),
            _ => Vec::new(),
        };
        let conflicts = layout.bound.conflicts.iter().filter(|c| c.proven());
        conflicts.flat_map(|c| &c.runs).any(|run| runs.contains(&run))
    };
    seams.contains(&rule)
        && (named(&violation.subject) || violation.other.as_ref().is_some_and(named))
}
