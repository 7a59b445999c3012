//! The finished layout, in the shape of `layout.json` (`lapwright-layout/2`): lengths inches,
//! angles degrees, areas square feet. It holds facts alone: each of its texts is a word of an
//! enumeration, a name, or comes from the drawing or the job.
//!
//! Heights and places are elevation inches: x from the elevation's leftmost wall point, y from the
//! house's floor reference line.

pub mod backdrop;
pub mod bound;
pub mod breach;
pub(crate) mod by_wall;
pub mod course;
pub mod format;
pub(crate) mod from_drawn;
pub mod laid;
pub mod piece;
pub mod rule;
pub mod set;
pub mod slopes;
pub mod verified;
pub mod violation;
pub mod wall;

use std::ops::{Deref, DerefMut};

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use self::bound::Bound;
use self::format::LayoutFormat;
use self::laid::LaidHouse;
use self::verified::Verify;
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
