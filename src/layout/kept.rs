//! What a layout holds of an earlier one, as that has it: for the check, and for whoever reads what it costs.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::at_hand::BuiltSoFar;
use crate::model::ids::{PanelId, PieceMark, WallId};
use crate::model::source::Source;

/// What is held of an earlier layout.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Kept {
    /// The drawing of the earlier layout.
    pub from: Source,
    /// Walls that are held whole.
    pub walls: Vec<WallId>,
    /// Walls that are laid anew, in whole or in part.
    pub anew: Vec<WallId>,
    /// Pieces that are held, as the earlier layout has them.
    pub pieces: Vec<KeptPiece>,
    /// Panels that they are cut from.
    pub panels: usize,
    /// Pieces of walls laid anew that are cut from what these panels have left.
    pub from_offcuts: usize,
    /// Panels that the house takes on the same course lines where nothing is held.
    pub all_anew: usize,
    /// What is built so far, where the job says what hangs.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub built: Option<BuiltSoFar>,
}

/// A piece as the earlier layout has it, at its place on this one's elevation.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct KeptPiece {
    /// Its mark.
    pub mark: PieceMark,
    /// Its wall, as both layouts name it.
    pub wall: WallId,
    /// Panel it is cut from.
    pub panel: PanelId,
    /// Where it begins and ends on the panel.
    pub cut: [f64; 2],
    /// Where that panel is an offcut that lay on the site: from where to where it goes.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at_hand: Option<[f64; 2]>,
    /// Its left and its right end on the wall.
    pub x: [f64; 2],
    /// Butt line of its course.
    pub bottom: f64,
}
