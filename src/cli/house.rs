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
use crate::outputs::house::{self, HouseFiles, Wanted};

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

/// Lays a house out by `lay` and writes its files; with its sets it gives the files that were written.
///
/// # Errors
/// Whatever keeps it from being laid out or written.
pub(super) fn written(
    ready: &Ready,
    a: &Layout,
    lay: impl FnOnce(&Loaded) -> Result<LaidSets, Refusal>,
) -> Result<(LaidSets, HouseFiles), Refusal> {
    let Ready { loaded, prices, place, sources } = ready;
    // Told before the search, not after it.
    files::ready(place, sources, a.replace)?;
    let sets = priced(lay(loaded)?, prices.as_ref())?;
    let wanted = Wanted { pictures: !a.no_pictures, overlay_alone: a.overlay == Overlay::Separate };
    let made = house::files(&sets, &loaded.bytes, wanted)?;
    files::write_folder(place, &made.files, sources, a.replace)?;
    Ok((sets, made))
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
