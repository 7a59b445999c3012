//! What became of one thing.

use crate::model::unused::Unused;

/// What became of a thing.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Fate {
    Used,
    /// A part or a texture of something, or an aside.
    Detail,
    Left(Unused),
}

impl Fate {
    /// Which of two says more of a thing that stands in two views.
    pub(super) fn weight(&self) -> usize {
        match self {
            Fate::Used => 2,
            Fate::Detail => 1,
            Fate::Left(_) => 0,
        }
    }
}
