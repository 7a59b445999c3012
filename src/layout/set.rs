//! What a drawing is laid out to: a set for the house's own siding, and one for each zone with lap
//! siding of its own.

use std::sync::Arc;

use super::backdrop::Backdrops;
use super::finished::Layout;
use crate::model::pdf_base::PdfBase;
use crate::model::takeoff::Takeoff;

/// One siding of a house: its layout, what to order for it, and the source's lines behind it.
#[derive(Clone, Debug, PartialEq)]
pub struct LaidSet {
    /// The layout.
    pub layout: Layout,
    /// What to order, reckoned once.
    pub takeoff: Takeoff,
    /// The source's lines behind it.
    pub backdrops: Backdrops,
}

/// All sets of a drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct LaidSets {
    /// The house's own siding.
    pub house: LaidSet,
    /// Zones with lap siding of their own, as the job names them; seams and panels by themselves, all
    /// on the house's datum.
    pub zones: Vec<LaidSet>,
}

impl LaidSets {
    /// With what an update of the source needs to know of it, where it is a print.
    pub fn on_print(mut self, print: Option<Arc<PdfBase>>) -> Self {
        for set in std::iter::once(&mut self.house).chain(&mut self.zones) {
            let backdrops = std::mem::take(&mut set.backdrops);
            set.backdrops = backdrops.on_print(print.clone());
        }
        self
    }

    /// The house's set, then those of its zones.
    pub fn iter(&self) -> impl Iterator<Item = &LaidSet> {
        std::iter::once(&self.house).chain(&self.zones)
    }

    /// How many places of all sets break a rule of the check.
    pub fn failed_places(&self) -> usize {
        self.iter().map(|s| s.layout.verify.places()).sum()
    }

    /// The same, to be priced.
    pub fn iter_mut(&mut self) -> impl Iterator<Item = &mut LaidSet> {
        std::iter::once(&mut self.house).chain(&mut self.zones)
    }
}
