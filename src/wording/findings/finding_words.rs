//! A finding in words.

/// A finding in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FindingWords {
    /// What and where, in one sentence or two.
    pub message: String,
    /// What to do about it.
    pub help: String,
}

impl FindingWords {
    pub(super) fn new(message: impl Into<String>, help: impl Into<String>) -> Self {
        FindingWords { message: message.into(), help: help.into() }
    }
}
