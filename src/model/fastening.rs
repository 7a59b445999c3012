//! Nails, and how lengths change with the weather.

use schemars::JsonSchema;
use serde::Serialize;

/// Room under a nail's head, inches (FACTS SD-25, VSI-H).
pub const UNDER_HEAD: f64 = 1.0 / 32.0;

/// Nails of a house.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct Fastening {
    /// What a panel's nail goes through, from under its head on.
    pub layers: Vec<NailLayer>,
    /// Their sum, inches.
    pub needed: f64,
    /// Length to buy, inches.
    pub length: f64,
    /// Least shank, inches.
    pub shank: f64,
    /// Least head, inches.
    pub head: f64,
    /// Nails by what they hold.
    pub nails: Vec<Nails>,
    /// All of it in sentences.
    pub words: Vec<String>,
}

/// One layer a nail goes through.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct NailLayer {
    /// What.
    pub what: String,
    /// How thick, inches.
    pub thickness: f64,
}

/// Nails of one kind of piece.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct Nails {
    /// What they hold.
    pub what: String,
    /// Greatest spacing, inches.
    pub spacing: f64,
    /// Pieces.
    pub pieces: usize,
    /// Nails: one more than spaces in each piece, posts on both flanges.
    pub nails: f64,
}

/// Change of length between the day of the work and the coldest and hottest day.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct Movement {
    /// Temperature of the siding on the day, F.
    pub installed: f64,
    /// Coldest, F.
    pub lowest: f64,
    /// Hottest, F.
    pub highest: f64,
    /// Length per length and F.
    pub expansion: f64,
    /// By piece.
    pub rows: Vec<Moves>,
    /// All of it in sentences.
    pub words: Vec<String>,
}

/// What one kind of piece does.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct Moves {
    /// Longest piece of its kind.
    pub what: String,
    /// Its length on the day, inches.
    pub length: f64,
    /// Longer on the hottest day, inches.
    pub longer: f64,
    /// Shorter on the coldest, inches.
    pub shorter: f64,
    /// Room there is for it where it has most need of room, inches.
    pub room: f64,
    /// Of that room, how much is needed, inches.
    pub needed: f64,
    /// Whether the room covers it.
    pub covered: bool,
    /// Where the room is, in words.
    pub how: String,
}
