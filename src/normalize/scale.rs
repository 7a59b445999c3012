//! Which unit the drawing is in, and how sure that is. Never silent: the header is right in fewer
//! than half of real drawings (`DrawingFact::UnitsUnproved`), so it is one vote beside the sizes in the
//! views. What the job states wins, with a warning where sizes speak against it.

use super::paper_scale::{self, is_paper, written};
use super::sizes::Sizes;
use crate::finding::lines::{HeightInUnit, LineFinding, PaperScaleBy};
use crate::finding::{Finding, Findings, Refusal};
use crate::job::Job;
use crate::model::drawing::Drawing;
use crate::model::linework::{Linework, Scale};
use crate::model::source::UnitBasis;
use crate::units::Unit;

/// What the header's word weighs, as [`Sizes::speaks`] counts.
const HEADER: i32 = 3;
/// A unit that sizes speak for by so much more than for the job's is told.
const MUCH: i32 = 4;

/// Settles the scale: the job's unit, a known distance, or what header and sizes speak for.
pub(super) fn settle(
    drawing: &Drawing,
    lines: &Linework,
    job: &Job,
    findings: &mut Findings,
) -> Result<Scale, Refusal> {
    let sizes = Sizes::of(lines, job);
    if let Some(text) = &job.drawing.known {
        let scale = known(text, &sizes, job, findings)?;
        if is_paper(drawing) {
            let taken = Some((scale.inches, PaperScaleBy::Known));
            paper_scale::tell(drawing, lines, taken, findings);
        }
        return Ok(scale);
    }
    if is_paper(drawing) {
        if let Some(inches) = paper_scale::by_dimensions(lines) {
            let taken = Some((inches, PaperScaleBy::Dimensions));
            paper_scale::tell(drawing, lines, taken, findings);
            let basis = UnitBasis::Dimensions;
            return Ok(Scale { inches, unit: None, basis, proved: true });
        }
        paper_scale::tell(drawing, lines, None, findings);
        return Err(Refusal::new(LineFinding::ScaleUnknown { written: written(drawing) }));
    }
    let (unit, basis) = match job.drawing.unit {
        Some(unit) => {
            doubt(&sizes, unit, findings);
            (unit, UnitBasis::Job)
        }
        None => by_votes(&sizes, drawing.unit, findings)?,
    };
    let proved = sizes.proves(unit);
    findings.push(Finding::new(LineFinding::UnitTaken { unit, basis, proved }));
    Ok(Scale { inches: unit.inches(), unit: Some(unit), basis, proved })
}

/// How high the walls of a view stand in a unit.
fn height(sizes: &Sizes, unit: Unit) -> HeightInUnit {
    HeightInUnit { unit, height: sizes.height(unit) }
}

/// A finding of sizes, with where the walls stand.
fn of_walls(sizes: &Sizes, kind: LineFinding) -> Finding {
    let finding = Finding::new(kind);
    match sizes.at {
        Some(p) => finding.at(p),
        None => finding,
    }
}

/// The unit that sizes speak for most, `own` before others, then the one in which walls are nearest to
/// stories.
fn likely(sizes: &Sizes, votes: impl Fn(Unit) -> i32, own: Option<Unit>) -> Unit {
    let mut all = Unit::ALL.to_vec();
    all.sort_by(|a, b| {
        let first = |u: Unit| own != Some(u);
        let order = votes(*b).cmp(&votes(*a)).then(first(*a).cmp(&first(*b)));
        order.then(sizes.off(*a).total_cmp(&sizes.off(*b)))
    });
    all.first().copied().unwrap_or(Unit::Inch)
}

/// Warns of a unit that the job states and sizes speak against. It is taken all the same: whoever wrote
/// the job knows more than the drawing says.
fn doubt(sizes: &Sizes, unit: Unit, findings: &mut Findings) {
    let other = likely(sizes, |u| sizes.speaks(u), Some(unit));
    let much = sizes.speaks(other) - sizes.speaks(unit) >= MUCH;
    if sizes.may_be(sizes.height(unit)) && !much {
        return;
    }
    let (tallest, basis) = (height(sizes, unit), UnitBasis::Job);
    let likely = Some(height(sizes, other)).filter(|l| l.unit != unit);
    let kind = LineFinding::UnitImplausible { basis, tallest, likely, stated: true };
    findings.push(of_walls(sizes, kind));
}

/// The unit by the votes of header and sizes.
fn by_votes(
    sizes: &Sizes,
    header: Option<Unit>,
    findings: &mut Findings,
) -> Result<(Unit, UnitBasis), Refusal> {
    let votes = |u: Unit| sizes.speaks(u) + HEADER * i32::from(header == Some(u));
    let unit = likely(sizes, votes, header.or(Some(Unit::Inch).filter(|_| sizes.walls == 0.0)));
    let by_sizes = || match sizes.dimensions_fit(unit) {
        Some(true) => UnitBasis::Dimensions,
        _ if sizes.walls > 0.0 => UnitBasis::WallAndDoorSizes,
        _ => UnitBasis::Custom,
    };
    let basis = if header == Some(unit) { UnitBasis::Header } else { by_sizes() };
    if !sizes.may_be(sizes.height(unit)) && !sizes.proves(unit) {
        let tallest = height(sizes, unit);
        let kind = LineFinding::UnitImplausible { basis, tallest, likely: None, stated: false };
        return Err(of_walls(sizes, kind).into());
    }
    if header != Some(unit) {
        let header = header.map(|h| height(sizes, h));
        let taken = Some(height(sizes, unit)).filter(|t| t.height > 0.0);
        let kind = LineFinding::UnitAssumed { unit, basis, header, taken };
        findings.push(of_walls(sizes, kind));
    } else if !sizes.proves(unit) && sizes.walls > 0.0 {
        // The header alone decides between units that sizes speak for alike.
        let alike =
            |u: &Unit| *u != unit && sizes.off(*u) == 1.0 && sizes.speaks(*u) >= sizes.speaks(unit);
        if let Some(other) = Unit::ALL.into_iter().find(alike) {
            let (taken, other) = (height(sizes, unit), height(sizes, other));
            findings.push(of_walls(sizes, LineFinding::UnitUnsure { taken, other }));
        }
    }
    Ok((unit, basis))
}

/// The scale that the job's known distance sets.
fn known(text: &str, sizes: &Sizes, job: &Job, findings: &mut Findings) -> Result<Scale, Refusal> {
    let Some(inches) = job.drawing.known_scale() else {
        return Err(Refusal::new(LineFinding::KnownUnreadable { text: text.to_owned() }));
    };
    let (basis, height) = (UnitBasis::KnownDistance, sizes.walls * inches);
    if !sizes.may_be(height) {
        let tallest = HeightInUnit { unit: Unit::Inch, height };
        let kind = LineFinding::UnitImplausible { basis, tallest, likely: None, stated: true };
        findings.push(of_walls(sizes, kind));
    }
    Ok(Scale { inches, unit: None, basis, proved: true })
}
