//! What no layout is under.

/// What no layout is under, and how much of it functions alone tell: against that the room left over is
/// judged.
#[derive(Clone, Copy, Debug)]
pub(super) struct Least {
    pub panels: usize,
    pub by_functions: usize,
}

impl Least {
    /// Told by functions alone.
    pub(super) fn by_functions(panels: usize) -> Self {
        Least { panels, by_functions: panels }
    }
}
