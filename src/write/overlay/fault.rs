//! Why a source cannot take the overlay.

/// Why a source cannot take the overlay.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum OverlayError {
    /// A binary file: its overlay is written as a drawing of its own.
    #[error("the source is a binary DXF")]
    Binary,
    /// No ENTITIES section to splice into.
    #[error("the source has no complete ENTITIES section")]
    NoEntities,
}
