//! Bytes put into the source.

/// Bytes put in at a place, or in the place of others.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Patch {
    /// First byte replaced.
    pub(super) from: usize,
    /// First byte kept after them.
    pub(super) to: usize,
    /// What stands there instead.
    pub(super) bytes: Vec<u8>,
}
