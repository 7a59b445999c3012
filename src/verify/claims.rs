//! What is checked.

use std::ops::Deref;

use crate::layout::Layout;
use crate::layout::bound::Bound;
use crate::layout::laid::LaidHouse;
use crate::model::quantity::TakeoffLine;
use crate::model::work::WorkOrder;

/// A house as laid, with what is claimed of it that the check counts again. Reads as the house.
#[derive(Clone, Copy, Debug)]
pub struct Claims<'a> {
    /// The house as laid.
    pub laid: &'a LaidHouse,
    /// How few panels there can be.
    pub bound: &'a Bound,
    /// What to buy.
    pub takeoff: &'a [TakeoffLine],
    /// The order of work, with what is cut for each wall and what waits.
    pub work: &'a WorkOrder,
}

impl Deref for Claims<'_> {
    type Target = LaidHouse;

    fn deref(&self) -> &LaidHouse {
        self.laid
    }
}

impl<'a> From<&'a Layout> for Claims<'a> {
    fn from(layout: &'a Layout) -> Self {
        Claims {
            laid: &layout.laid,
            bound: &layout.bound,
            takeoff: &layout.takeoff,
            work: &layout.work,
        }
    }
}
