//! Level lines along which flashing runs on without a break.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What a level run of flashing lies over.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum FlashedRun {
    /// The level end of a lower roof against the wall.
    Roof,
    /// A deck's ledger: a level side over a lower roof that a door stands on.
    Deck,
    /// A ledge of stone that siding starts on.
    Ledge,
    /// A change of cladding, one over the other.
    Cladding,
    /// A band board with siding over it.
    Band,
}

impl FlashedRun {
    /// Every one, in the order they are told.
    pub const ALL: [FlashedRun; 5] = [
        FlashedRun::Roof,
        FlashedRun::Deck,
        FlashedRun::Ledge,
        FlashedRun::Cladding,
        FlashedRun::Band,
    ];
}

/// The runs over one sort of place.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct FlashedLength {
    /// What they lie over.
    pub over: FlashedRun,
    /// Their length, laps left out, inches.
    pub length: f64,
}
