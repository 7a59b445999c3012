//! Halves of a panel that is ripped along its whole length.

use serde::{Deserialize, Serialize};

/// Which half of a ripped panel a piece is cut from, where both serve.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema,
)]
#[serde(rename_all = "lowercase")]
pub enum Half {
    /// The part with the butt edge and the lock.
    Lower,
    /// The part with the nail hem, or the head of a board.
    Upper,
}
