//! How one part is laid.

/// How one part is laid.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Placed {
    /// One piece, from this panel.
    One { panel: usize },
    /// The part's way of that number: the first piece of length `a` from `first`, the last from
    /// `last`; whole panels between.
    Seamed { way: usize, a: i64, first: usize, last: usize },
}
