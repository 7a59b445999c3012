//! A stock panel and the parts that are cut from it.

/// A stock panel that is cut.
#[derive(Clone, Debug, Default)]
pub(super) struct Panel {
    /// Its kind, which never changes.
    pub kind: usize,
    /// The part whose run begins with a piece from its right end.
    pub left_hand: Option<usize>,
    /// The part whose run ends with a piece from its left end.
    pub right_hand: Option<usize>,
    /// Parts that are one piece from its middle.
    pub ones: Vec<usize>,
    /// Room left, each piece charged one kerf.
    pub free: i64,
}

impl Panel {
    /// Whether it holds both end pieces: only a run of one piece can use what is left.
    pub(super) fn locked(&self) -> bool {
        self.left_hand.is_some() && self.right_hand.is_some()
    }

    pub(super) fn empty(&self) -> bool {
        self.left_hand.is_none() && self.right_hand.is_none() && self.ones.is_empty()
    }

    /// How many pieces are cut from it.
    pub(super) fn count(&self) -> usize {
        self.ones.len()
            + usize::from(self.left_hand.is_some())
            + usize::from(self.right_hand.is_some())
    }

    /// All parts with a piece from it.
    pub(super) fn parts(&self) -> impl Iterator<Item = usize> + '_ {
        self.left_hand.iter().chain(&self.right_hand).chain(&self.ones).copied()
    }
}
