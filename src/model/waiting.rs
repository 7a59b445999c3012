//! Offcuts that wait: from the end of the wall where their panel is opened to the start of the wall that
//! uses them.

use serde::{Deserialize, Serialize};

/// How far an offcut may travel.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum OffcutReach {
    /// It is used on the wall where its panel is opened.
    Wall,
    /// It is used there or on the next wall.
    #[serde(rename = "next wall")]
    NextWall,
    /// It is used on any wall of the house.
    #[default]
    House,
}

impl OffcutReach {
    /// How many walls on, in the order of walls.
    pub fn walls(self) -> usize {
        match self {
            OffcutReach::Wall => 0,
            OffcutReach::NextWall => 1,
            OffcutReach::House => usize::MAX,
        }
    }
}

/// What may wait, and in which order walls are sided.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Waiting {
    /// Most offcuts that wait at the end of a wall; none where any number may.
    pub most: Option<usize>,
    /// How far they may travel.
    pub reach: OffcutReach,
    /// Orders of walls to choose from, by the numbers that runs have; as numbered where there is none.
    pub orders: Vec<Vec<usize>>,
}

impl Waiting {
    /// Whether nothing is asked of offcuts.
    pub fn is_free(&self) -> bool {
        self.most.is_none() && self.reach == OffcutReach::House
    }
}
