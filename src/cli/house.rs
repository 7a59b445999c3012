//! One house of a call: what is read of it, where it goes, and its laying out.

use std::path::PathBuf;

use super::args::{Layout, Overlay, Reading};
use super::files;
use super::inputs::fingerprint;
use super::loading::{Loaded, load, sources};
use super::place::Place;
use super::takeoff::{Prices, priced, prices};
use crate::finding::job::{JobFinding, JobSource};
use crate::finding::{FindingKind, Findings, Refusal};
use crate::job::Job;
use crate::layout::set::LaidSets;
use crate::model::change::Comparison;
use crate::outputs::compare as comparison;
use crate::outputs::house::{self, HouseFiles, Wanted};
use crate::pipeline;

/// A house to lay out.
#[derive(Debug)]
pub(super) struct House {
    /// Its name: that of its drawing, or of its job where that names the drawing.
    pub(super) name: String,
    /// The drawing and its job.
    pub(super) reading: Reading,
    /// Where it goes.
    pub(super) place: Place,
    /// Why it is not even known what its drawing is.
    pub(super) fault: Option<Refusal>,
}

/// A house that is read, with its prices: ready to be laid out.
pub(super) struct Ready {
    /// The drawing and its job.
    pub(super) loaded: Loaded,
    /// Prices, where there are any.
    pub(super) prices: Option<Prices>,
    /// Where it goes, with the fingerprint of what it is made of.
    pub(super) place: Place,
    /// What is read, and so must not be written.
    pub(super) sources: Vec<PathBuf>,
}

/// Reads a house. What the options say of the sheets is told apart, as wrong usage.
pub(super) fn ready(
    house: &House,
    a: &Layout,
    findings: &mut Findings,
) -> Result<Result<Ready, Refusal>, Refusal> {
    let mut loaded = load(&house.reading, findings)?;
    // Prices are read first: a fault in them shall not wait for the search.
    let list = a.prices.clone().or_else(|| loaded.price_list());
    let prices = prices(list.as_deref())?;
    if let Err(usage) = with_options(&mut loaded.job, a) {
        return Ok(Err(usage));
    }
    let mut sources = sources(&house.reading, &loaded);
    sources.extend(a.prices.clone());
    let made_of = fingerprint(&loaded, prices.as_ref().map(|p| p.bytes.as_slice()), a);
    let place = Place { made_of: Some(made_of), ..house.place.clone() };
    Ok(Ok(Ready { loaded, prices, place, sources }))
}

/// A house that is laid out and written.
pub(super) struct Written {
    pub(super) sets: LaidSets,
    pub(super) made: HouseFiles,
    /// How much taped lengths change of the house as drawn, where any were taped.
    pub(super) by_tape: Option<usize>,
}

/// Lays a house out by `lay` and writes its files; with its sets it gives the files that were written. Where
/// lengths were taped, what they change of the house as drawn is among them.
///
/// # Errors
/// Whatever keeps it from being laid out or written.
pub(super) fn written(
    ready: &Ready,
    a: &Layout,
    lay: impl FnOnce(&Loaded) -> Result<LaidSets, Refusal>,
) -> Result<Written, Refusal> {
    let Ready { loaded, prices, place, sources } = ready;
    // Told before the search, not after it.
    files::ready(place, sources, a.replace)?;
    let sets = priced(lay(loaded)?, prices.as_ref())?;
    let wanted = Wanted { pictures: !a.no_pictures, overlay_alone: a.overlay == Overlay::Separate };
    let mut made = house::files(&sets, &loaded.bytes, wanted)?;
    // What is held follows from an earlier layout, and not from the tape alone.
    let changes = if a.keep.is_none() { by_tape(loaded, prices.as_ref(), &sets)? } else { None };
    if let Some(changes) = &changes {
        let files = comparison::report(&sets, changes);
        made.at_top.extend(files.iter().map(|(name, _)| name.clone()));
        made.files.extend(files);
    }
    files::write_folder(place, &made.files, sources, a.replace)?;
    Ok(Written { sets, made, by_tape: changes.map(|c| c.changes.len()) })
}

/// What taped lengths change of the house as it is drawn; nothing where none was taped, or where the house as
/// drawn cannot be laid out.
fn by_tape(
    loaded: &Loaded,
    prices: Option<&Prices>,
    sets: &LaidSets,
) -> Result<Option<Comparison>, Refusal> {
    // What is built follows from an earlier layout too.
    if loaded.job.taped.is_empty() || !loaded.job.built.is_empty() {
        return Ok(None);
    }
    let mut job = loaded.job.clone();
    job.taped.clear();
    let (bytes, name) = (&loaded.bytes, &loaded.name);
    let drawn = pipeline::layout(bytes, name, &job, &mut Findings::default(), &mut |_| {});
    let Ok(drawn) = drawn else { return Ok(None) };
    Ok(Some(pipeline::compared(&priced(drawn, prices)?, sets, None)))
}

/// Paper and scale of the command line, over the job's.
fn with_options(job: &mut Job, a: &Layout) -> Result<(), Refusal> {
    let sheet = &mut job.sheet;
    sheet.paper = a.paper.clone().unwrap_or(std::mem::take(&mut sheet.paper));
    sheet.scale = a.scale.clone().or(sheet.scale.take());
    // The job was in order as the file gives it: what is not now is an option's fault.
    job.validate().map_err(|Refusal(mut why)| {
        if let FindingKind::Job(JobFinding::JobValue { source, .. }) = &mut why.kind {
            *source = JobSource::CommandLine;
        }
        Refusal(why)
    })
}
