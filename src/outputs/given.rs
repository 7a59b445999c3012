//! What tables are made of.

use crate::layout::Layout;
use crate::layout::backdrop::Backdrops;
use crate::model::takeoff::Takeoff;

/// What tables are made of.
pub(super) struct Given<'a> {
    /// The layout.
    pub(super) layout: &'a Layout,
    /// The source's lines and texts behind it.
    pub(super) backdrops: &'a Backdrops,
    /// Its quantities, priced or not.
    pub(super) takeoff: &'a Takeoff,
    /// The drawing's own bytes.
    pub(super) source: &'a [u8],
}
