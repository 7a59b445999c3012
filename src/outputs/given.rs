//! What tables are made of.

use crate::layout::Layout;
use crate::model::takeoff::Takeoff;

/// What tables are made of.
pub(super) struct Given<'a> {
    /// The layout.
    pub(super) layout: &'a Layout,
    /// Its quantities, priced or not.
    pub(super) takeoff: &'a Takeoff,
    /// The drawing's own bytes.
    pub(super) source: &'a [u8],
}
