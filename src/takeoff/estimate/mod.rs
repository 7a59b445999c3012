//! Further lines of an estimate, each off until the job turns it on or gives it.

mod barrier;
mod eaves;
mod given;
mod labor;
mod sealant;

pub(super) use labor::line as labor;

use crate::layout::laid::LaidHouse;
use crate::model::quantity::TakeoffLine;

/// Every line that the job asks for, but labor, which is reckoned from all others.
pub(super) fn lines(layout: &LaidHouse) -> Vec<TakeoffLine> {
    let mut out = barrier::lines(layout);
    out.extend(sealant::lines(layout));
    out.extend(eaves::lines(layout));
    out.extend(given::lines(layout));
    out
}
