//! How far a search is, for whoever watches.

/// How far the search is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Progress {
    /// Rounds done.
    pub done: u64,
    /// Rounds in all, at most.
    pub of: u64,
    /// Panels in the best layout so far; 0 before there is one.
    pub panels: usize,
    /// The bound; 0 where several lengths are mixed, whose bound is no number of panels.
    pub bound: usize,
}
