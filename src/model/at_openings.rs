//! Seams at openings, counted.

use serde::{Deserialize, Serialize};

/// Seams at openings.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema,
)]
pub struct AtOpenings {
    /// In a notch over a head or under a sill, or nearer to one than the job's distance from jambs.
    pub in_notches: usize,
    /// On a jamb line: 1 1/2 in from it at most.
    pub on_jambs: usize,
    /// Nearer to a jamb line than the job's distance.
    pub near_jambs: usize,
}
