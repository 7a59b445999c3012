//! The finished layout of one siding.

use std::ops::{Deref, DerefMut};

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::bound::Bound;
use super::format::LayoutFormat;
use super::laid::LaidHouse;
use super::verified::Verify;
use crate::finding::Finding;
use crate::model::fastening::{Fastening, Movement};
use crate::model::quantity::TakeoffLine;
use crate::model::work::WorkOrder;

/// A laid-out house with all that is reckoned of it. It reads as the [`LaidHouse`] that it is of.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Layout {
    /// Always `lapwright-layout/2`.
    pub format: LayoutFormat,
    /// The house as laid.
    #[serde(flatten)]
    pub laid: LaidHouse,
    /// The proof of how few panels there can be.
    pub bound: Bound,
    /// The order of work.
    pub work: WorkOrder,
    /// Nails: length, spacing, counts.
    pub fastening: Fastening,
    /// How lengths change with the weather, and whether gaps cover it.
    pub movement: Movement,
    /// What to buy.
    pub takeoff: Vec<TakeoffLine>,
    /// What was checked.
    pub verify: Verify,
    /// Findings.
    pub findings: Vec<Finding>,
}

impl Deref for Layout {
    type Target = LaidHouse;

    fn deref(&self) -> &LaidHouse {
        &self.laid
    }
}

impl DerefMut for Layout {
    fn deref_mut(&mut self) -> &mut LaidHouse {
        &mut self.laid
    }
}
