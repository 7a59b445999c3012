//! Compares what the program reads with what is true, wall by wall.
//!
//! A true wall is right where one wall of the reading covers it, and that one covers no other. What is
//! wrong has an alarm where a warning or an error stands in its room, or names it.
//!
//! The program gets no job. Only where it refuses the drawing over its unit does the job answer that,
//! and the drawing is run again: an estimator who is asked looks at one dimension.

use std::collections::BTreeSet;

use lapwright::finding::severity::Severity;
use lapwright::finding::{Finding, FindingKind, Findings, Refusal};
use lapwright::job::file;
use lapwright::layout::set::LaidSets;
use lapwright::layout::wall::{LaidElevation, LaidWall};
use lapwright::pipeline;

use super::Drawing;
use super::shape::{P, Rect, bounds, cuts};
use super::truth::TrueWall;

/// No more than what makes the search for seams short: nothing of it is about reading.
const JOB: &str = "[seams]\neffort = \"crew\"\n";
/// Most that an area may be off, of 1.
const AREA: f64 = 0.005;
/// Of a wall's places, how many a reading must cover to meet it, and to be it.
const MEETS: f64 = 0.08;
const COVERS: f64 = 0.75;

/// What is wrong.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Fault {
    /// The program refuses the drawing.
    Refused(String),
    /// It stops short.
    Panicked,
    /// A true wall is not read.
    Missing,
    /// It is read as so many.
    Split(usize),
    /// It is read in part, of 1.
    Part(f64),
    /// It is read as one with another.
    Merged,
    /// What is read is no wall: its square feet.
    NoWall(f64),
    /// A view drawn again is counted again.
    Twice,
    /// Read and true square feet.
    Area(f64, f64),
    /// Read and true openings.
    Openings(usize, usize),
}

impl Fault {
    /// In a word.
    pub(crate) fn word(&self) -> String {
        match self {
            Fault::Refused(code) => format!("refused: {code}"),
            Fault::Panicked => "panic".to_owned(),
            Fault::Missing => "wall not read".to_owned(),
            Fault::Split(_) => "wall read as several".to_owned(),
            Fault::Part(_) => "wall read in part".to_owned(),
            Fault::Merged => "walls read as one".to_owned(),
            Fault::NoWall(_) => "no wall, read as one".to_owned(),
            Fault::Twice => "counted twice".to_owned(),
            Fault::Area(..) => "area".to_owned(),
            Fault::Openings(..) => "openings".to_owned(),
        }
    }

    /// Whether the walls themselves are wrong.
    pub(crate) fn is_of_walls(&self) -> bool {
        !matches!(self, Fault::Area(..) | Fault::Openings(..))
    }
}

/// A fault with where it is and which findings are about that place.
#[derive(Clone, Debug)]
pub(crate) struct Found {
    pub(crate) fault: Fault,
    pub(crate) place: Rect,
    pub(crate) codes: BTreeSet<String>,
}

/// What became of a drawing.
#[derive(Clone, Debug, Default)]
pub(crate) struct Verdict {
    pub(crate) seed: u64,
    pub(crate) faults: Vec<Found>,
    /// Codes of warnings and errors at walls that are right in all, a set a wall.
    pub(crate) at_right: Vec<BTreeSet<String>>,
    /// Most severe first: how many errors and warnings in all.
    pub(crate) errors: usize,
    pub(crate) warnings: usize,
    /// It was refused over its unit, and run again with it.
    pub(crate) asked_unit: bool,
}

impl Verdict {
    pub(crate) fn walls_right(&self) -> bool {
        !self.faults.iter().any(|f| f.fault.is_of_walls())
    }

    pub(crate) fn areas_right(&self) -> bool {
        !self.faults.iter().any(|f| matches!(f.fault, Fault::Area(..)))
    }

    /// Faults without an alarm of their own; codes that stand at right walls too are none.
    pub(crate) fn silent<'a>(
        &'a self,
        common: &'a BTreeSet<String>,
    ) -> impl Iterator<Item = &'a Found> {
        self.faults.iter().filter(|f| f.codes.difference(common).next().is_none())
    }
}

/// A wall as read, in the drawing's coordinates.
struct Read<'a> {
    wall: &'a LaidWall,
    elevation: &'a LaidElevation,
    field: Vec<Vec<P>>,
    inches: f64,
}

impl<'a> Read<'a> {
    fn of(elevation: &'a LaidElevation, wall: &'a LaidWall) -> Self {
        let [a, b, c, d, e, f] = elevation.to_source;
        let put = |p: &[f64; 2]| [a * p[0] + c * p[1] + e, b * p[0] + d * p[1] + f];
        let field = wall.field.iter().map(|r| r.iter().map(put).collect()).collect();
        Read { wall, elevation, field, inches: 1.0 / (a * d - b * c).abs().sqrt() }
    }

    fn holds(&self, p: P) -> bool {
        cuts(&self.field, p[1]).iter().any(|(x0, x1)| p[0] > *x0 && p[0] < *x1)
    }

    fn room(&self) -> Rect {
        bounds(&self.field.concat())
    }

    /// What is sided as drawn: what the program keeps clear of grade and roofs is siding in the drawing.
    fn net(&self) -> f64 {
        self.wall.net_area + self.wall.bare_area()
    }

    /// Whether a finding names it.
    fn named_by(&self, finding: &str) -> bool {
        let ids = self.wall.openings.iter().map(|o| o.id.as_str());
        ids.chain([self.wall.id.as_str()]).any(|id| finding.contains(&format!("\"{id}\"")))
    }
}

/// Places well spread over what is sided.
fn places(wall: &TrueWall) -> Vec<P> {
    let rings = wall.siding.rings();
    let room = wall.siding.bounds();
    let mut out = Vec::new();
    let levels = 24;
    for k in 0..levels {
        let y = room.y0 + (f64::from(k) + 0.47) / f64::from(levels) * room.height();
        for (x0, x1) in cuts(&rings, y) {
            let count = ((x1 - x0) / room.width() * 24.0).floor() as usize;
            for i in 0..count {
                out.push([x0 + (i as f64 + 0.5) / count as f64 * (x1 - x0), y]);
            }
        }
    }
    out
}

/// The program's main call; no result where it panics.
fn run(drawing: &Drawing, job: &str) -> (Findings, Option<Result<LaidSets, Refusal>>) {
    let job = file::parse(job, "job.toml").unwrap();
    let mut findings = Findings::default();
    let call = std::panic::AssertUnwindSafe(|| {
        let bytes = drawing.dxf.as_bytes();
        pipeline::layout(bytes, "drawing.dxf", &job, &mut findings, &mut |_| {})
    });
    let result = std::panic::catch_unwind(call).ok();
    (findings, result)
}

/// Runs the program's main call and compares.
pub(crate) fn judged(drawing: &Drawing) -> Verdict {
    let mut verdict = Verdict { seed: drawing.seed, ..Verdict::default() };
    let (mut findings, mut result) = run(drawing, JOB);
    if matches!(&result, Some(Err(r)) if r.0.code().word().starts_with("unit")) {
        verdict.asked_unit = true;
        let job = format!("[drawing]\nunit = \"{}\"\n{JOB}", drawing.unit);
        (findings, result) = run(drawing, &job);
    }
    let everywhere =
        drawing.truth.walls().fold(Rect::new(f64::MAX, f64::MAX, f64::MIN, f64::MIN), |a, w| {
            Rect::new(
                a.x0.min(w.room.x0),
                a.y0.min(w.room.y0),
                a.x1.max(w.room.x1),
                a.y1.max(w.room.y1),
            )
        });
    let stop = |fault: Fault, code: &str| Found {
        fault,
        place: everywhere,
        codes: BTreeSet::from([code.to_owned()]),
    };
    match result {
        None => verdict.faults.push(Found { codes: BTreeSet::new(), ..stop(Fault::Panicked, "") }),
        Some(Err(refusal)) => {
            let code = refusal.0.code().word();
            verdict.faults.push(stop(Fault::Refused(code.to_owned()), code));
        }
        Some(Ok(sets)) => {
            compare(drawing, &sets.house.layout.laid.elevations, &findings, &mut verdict)
        }
    }
    verdict.errors = findings.count(Severity::Error);
    verdict.warnings = findings.count(Severity::Warning) - verdict.errors;
    verdict
}

fn compare(drawing: &Drawing, read: &[LaidElevation], findings: &Findings, out: &mut Verdict) {
    let read: Vec<Read> =
        read.iter().flat_map(|e| e.walls.iter().map(move |w| Read::of(e, w))).collect();
    let told = Told::of(findings);
    let views = &drawing.truth.views;
    let all: Vec<(&TrueWall, &str, bool)> = views
        .iter()
        .flat_map(|v| v.walls.iter().map(move |w| (w, v.title.as_str(), v.again)))
        .collect();
    let share = |t: &TrueWall| -> Vec<f64> {
        let at = places(t);
        let held = |r: &Read| at.iter().filter(|p| r.holds(**p)).count() as f64 / at.len() as f64;
        read.iter().map(held).collect()
    };
    let shares: Vec<Vec<f64>> = all.iter().map(|(t, ..)| share(t)).collect();
    let inches = drawing.truth.inches;
    for (i, (truth, title, again)) in all.iter().enumerate() {
        let met: Vec<usize> = (0..read.len()).filter(|r| shares[i][*r] >= MEETS).collect();
        let mut faults = Vec::new();
        if *again {
            faults.extend((!met.is_empty()).then_some(Fault::Twice));
        } else {
            match met.as_slice() {
                [] => faults.push(Fault::Missing),
                [one] => faults.extend(of_one(&read[*one], truth, &shares, i, *one)),
                more => faults.push(Fault::Split(more.len())),
            }
        }
        let own: Vec<&Read> = met.iter().map(|r| &read[*r]).collect();
        let place = truth.room.grown(24.0 / inches);
        let is_scale = own.first().is_some_and(|r| (r.inches / inches - 1.0).abs() > 1e-3);
        let codes = told.about(place, &own, title, is_scale);
        if faults.is_empty() && !*again {
            out.at_right.push(codes.clone());
        }
        out.faults.extend(faults.into_iter().map(|fault| Found {
            fault,
            place,
            codes: codes.clone(),
        }));
    }
    for (r, one) in read.iter().enumerate() {
        if shares.iter().all(|s| s[r] < MEETS) {
            let place = one.room().grown(24.0 / inches);
            let codes = told.about(place, &[one], one.elevation.name.as_str(), false);
            out.faults.push(Found { fault: Fault::NoWall(one.net()), place, codes });
        }
    }
}

/// A true wall that one wall of the reading meets.
fn of_one(read: &Read, truth: &TrueWall, shares: &[Vec<f64>], i: usize, r: usize) -> Vec<Fault> {
    let mut out = Vec::new();
    if shares.iter().enumerate().any(|(k, s)| k != i && s[r] >= MEETS) {
        out.push(Fault::Merged);
        return out;
    }
    if shares[i][r] < COVERS {
        out.push(Fault::Part(shares[i][r]));
    }
    if (read.net() / truth.net - 1.0).abs() > AREA {
        out.push(Fault::Area(read.net(), truth.net));
    }
    if read.wall.openings.len() != truth.openings.len() {
        out.push(Fault::Openings(read.wall.openings.len(), truth.openings.len()));
    }
    out
}

/// Warnings and errors, each with its text as data.
struct Told<'a>(Vec<(&'a Finding, String)>);

impl<'a> Told<'a> {
    fn of(findings: &'a Findings) -> Self {
        // How siding is laid out is no question of how the drawing was read, nor is what posts it takes.
        let of_reading = |f: &&Finding| {
            !matches!(f.kind, FindingKind::Laying(_)) && f.code().word() != "set-back-taken"
        };
        let firm = findings.all().iter().filter(|f| f.severity() >= Severity::Warning);
        let firm = firm.filter(of_reading);
        Told(firm.map(|f| (f, serde_json::to_string(&f.kind).unwrap())).collect())
    }

    /// Codes of those that stand in a room, or name one of these walls or, without a place, its view.
    /// Where the scale is wrong, what is said of the whole drawing is about it.
    fn about(&self, place: Rect, walls: &[&Read], title: &str, is_scale: bool) -> BTreeSet<String> {
        let about = |f: &Finding, text: &str| {
            // What is said of the unit is about nothing but the scale.
            if !is_scale && f.code().word().starts_with("unit") {
                return false;
            }
            let mut at = f.at.iter().chain(&f.also);
            let of_view = f.at.is_none()
                && f.elevation.as_ref().is_some_and(|e| e.as_str().eq_ignore_ascii_case(title));
            at.any(|p| place.holds([p.x, p.y]))
                || walls.iter().any(|w| w.named_by(text))
                || of_view
                || is_scale && f.at.is_none() && f.elevation.is_none()
        };
        let of = self.0.iter().filter(|(f, text)| about(f, text));
        of.map(|(f, _)| f.code().word().to_owned()).collect()
    }
}
