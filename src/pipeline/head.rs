//! The head of the flow: from bytes to a house, the only part that can fail.

use super::letters;
use super::measures::{self, Tape};
use super::pages::limits;
use crate::finding::files::{FileFinding, OverlayReason};
use crate::finding::{Finding, Findings, Refusal};
use crate::fingerprint::sha256;
use crate::job::Job;
use crate::model::account::LayerAccount;
use crate::model::drawing::Drawing;
use crate::model::house::House;
use crate::model::linework::{LayerUse, Linework};
use crate::model::pdf_base::PdfBase;
use crate::{extract, normalize, read, write};

/// What the head of the flow found: enough for a layout.
#[derive(Debug)]
pub struct Reading {
    /// The drawing as read.
    pub drawing: Drawing,
    /// Its lines in inches, with roles.
    pub lines: Linework,
    /// The house.
    pub house: House,
    /// What was taped of it, by which it is moved.
    pub(super) tape: Tape,
}

/// Reads a drawing as far as the house.
///
/// # Errors
/// A [`Refusal`] when the drawing or the job cannot be used; what else was found is in `findings`.
pub fn reading(
    bytes: &[u8],
    name: &str,
    job: &Job,
    findings: &mut Findings,
) -> Result<Reading, Refusal> {
    let (mut drawing, mut lines) = (Drawing::default(), Linework::default());
    let (house, tape) = house_of(bytes, name, job, findings, (&mut drawing, &mut lines))?;
    overlay_apart(bytes).into_iter().for_each(|f| findings.push(f));
    Ok(Reading { drawing, lines, house, tape })
}

/// What `check` has to show: the drawing as far as it could be read, and the house or why there is
/// none.
#[derive(Debug)]
pub struct Checked {
    /// The drawing as read; empty where the file could not be read at all.
    pub drawing: Drawing,
    /// Its lines in inches; empty where no scale was found.
    pub lines: Linework,
    /// The house, or what stopped the reading.
    pub house: Result<House, Refusal>,
    /// What was taped of it, by which it is moved.
    pub(super) tape: Tape,
    /// SHA-256 of the file.
    pub fingerprint: String,
}

/// Reads a drawing as far as it goes; every finding is in `findings`, the one that stopped it too.
/// The bytes are let go as soon as they are read: a large drawing is not held beside its lines.
pub fn checked(bytes: Vec<u8>, name: &str, job: &Job, findings: &mut Findings) -> Checked {
    let mut kept = Drawing { name: name.to_owned(), ..Default::default() };
    let mut lines = Linework::default();
    let fingerprint = sha256(&bytes);
    let apart = overlay_apart(&bytes);
    let house = house_of(bytes, name, job, findings, (&mut kept, &mut lines));
    if let (Ok(_), Some(apart)) = (&house, apart) {
        findings.push(apart);
    }
    if let Err(Refusal(stop)) = &house
        && !findings.all().contains(stop)
    {
        findings.push(*stop.clone());
    }
    let (house, tape) = match house {
        Ok((house, tape)) => (Ok(house), tape),
        Err(why) => (Err(why), Tape::default()),
    };
    Checked { drawing: kept, lines, house, tape, fingerprint }
}

/// The head of the flow. What it got as far as is left in `kept` and `lines`; the bytes, where they
/// are its own, are let go once read.
fn house_of(
    bytes: impl AsRef<[u8]>,
    name: &str,
    job: &Job,
    findings: &mut Findings,
    (kept, lines): (&mut Drawing, &mut Linework),
) -> Result<(House, Tape), Refusal> {
    job.validate()?;
    *kept = read::drawing(bytes.as_ref(), name, &limits(job), findings)?;
    drop(bytes);
    *lines = upright(kept, job, findings)?;
    normalize::settle(lines, job, findings);
    let mut house = extract::house(lines, job, findings)?;
    // Which length is which is known of the house as drawn.
    let tape = measures::tape(lines, &house, job, findings);
    tape.move_house(lines, &mut house, findings);
    letters::tell(name, job, (lines, &house), findings);
    findings.refuse_on_error()?;
    Ok((house, tape))
}

/// Lines of a drawing that is read, as [`reading`] has them.
///
/// # Errors
/// As [`reading`].
pub(super) fn lines_of(
    drawing: &Drawing,
    job: &Job,
    findings: &mut Findings,
) -> Result<Linework, Refusal> {
    job.validate()?;
    let mut lines = upright(drawing, job, findings)?;
    normalize::settle(&mut lines, job, findings);
    Ok(lines)
}

/// Lines of the drawing, not yet on the grid, views brought to one scale and those set upright that the job says are
/// not.
fn upright(kept: &Drawing, job: &Job, findings: &mut Findings) -> Result<Linework, Refusal> {
    let mut lines = normalize::in_inches(kept, job, findings)?;
    if normalize::may_differ_in_scale(kept, &lines, job) {
        let mut trial = lines.clone();
        normalize::settle(&mut trial, job, &mut Findings::default());
        let views = extract::views_found(&trial, job);
        normalize::to_one_scale(&mut lines, kept, &views, job, findings)?;
    }
    if job.elevation.iter().any(|v| v.turn.is_some()) {
        // Which view is which is known of lines that are closed: of a copy, as it is drawn.
        let mut trial = lines.clone();
        normalize::settle(&mut trial, job, &mut Findings::default());
        for turn in extract::turns(&trial, job, findings)? {
            normalize::turned(&mut lines, &turn, findings);
        }
    }
    if job.model.mirrored {
        let axis = extract::mirror_axis(&lines);
        normalize::mirrored(&mut lines, axis, findings);
    }
    Ok(lines)
}

/// What an update of a PDF at its end needs to know of it; none of another source.
#[cfg(feature = "pdf-in")]
pub(super) fn print_base(bytes: &[u8], job: &Job) -> Option<PdfBase> {
    read::is_pdf(bytes).then(|| read::pdf_base(bytes, &limits(job)))?
}

/// What an update of a PDF needs to know of it: none is read.
#[cfg(not(feature = "pdf-in"))]
pub(super) fn print_base(_: &[u8], _: &Job) -> Option<PdfBase> {
    None
}

/// Says of a DXF that its overlay is no copy of it; of an SVG that goes without saying.
fn overlay_apart(source: &[u8]) -> Option<Finding> {
    if read::is_svg(source) {
        return None;
    }
    let reason = write::overlay::takes(source).err()?;
    let reason = match () {
        () if read::is_wide(source) => OverlayReason::WideSource,
        () if read::is_dwg(source) => OverlayReason::DwgSource,
        () if !read::is_pdf(source) => reason,
        () if write::pdf_update::takes(source) => OverlayReason::PdfSource,
        () => OverlayReason::PdfEnd,
    };
    Some(Finding::new(FileFinding::OverlayApart { reason }))
}

/// The layers of a drawing with their roles, and what became of all that is drawn on those with one;
/// nothing of that where the drawing cannot be laid out, for which the findings say why.
///
/// # Errors
/// When the drawing cannot be read.
pub fn layers(
    bytes: &[u8],
    name: &str,
    job: &Job,
    findings: &mut Findings,
) -> Result<(Vec<LayerUse>, Vec<LayerAccount>), Refusal> {
    let drawing = read::drawing(bytes, name, &limits(job), findings)?;
    let layers = normalize::roles::layer_roles(&drawing, job);
    let house = normalize::linework(&drawing, job, findings)
        .and_then(|lines| extract::house(&lines, job, findings));
    Ok((layers, house.map(|h| h.accounts).unwrap_or_default()))
}
