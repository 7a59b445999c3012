//! How the work goes on.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// How the work goes on.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct WorkRules {
    /// Courses from one check of level to the next. Default 5 (siding association's manual,
    /// horizontal siding; Journal of Light Construction on vinyl siding: every fifth or sixth).
    // SidingFact::LevelChecks.
    pub level_check: u32,
    /// From where walls are mostly seen: laps show their edge away from there. Default the entrance
    /// (siding association's manual, an older edition; Journal of Light Construction on vinyl
    /// siding).
    // SidingFact::LapsFaceAway.
    pub seen_from: SeenFrom,
    /// The same of an elevation, by its name.
    pub seen_from_by_elevation: BTreeMap<String, SeenFrom>,
    /// The order in which walls are sided: names of walls or of elevations; walls left out come last. Left out,
    /// walls go round the house from a corner of its back, the way that takes least.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub walls: Vec<String>,
}

impl Default for WorkRules {
    fn default() -> Self {
        WorkRules {
            level_check: 5,
            seen_from: SeenFrom::default(),
            walls: Vec::new(),
            seen_from_by_elevation: BTreeMap::new(),
        }
    }
}

impl WorkRules {
    /// From where an elevation is seen.
    pub fn seen(&self, elevation: &str) -> SeenFrom {
        let named =
            self.seen_from_by_elevation.iter().find(|(n, _)| n.eq_ignore_ascii_case(elevation));
        named.map_or(self.seen_from, |(_, s)| *s)
    }
}

/// From where a wall is mostly seen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum SeenFrom {
    /// Its first door; the left end where it has none.
    #[default]
    Entrance,
    /// Its left end.
    Left,
    /// Its middle.
    Middle,
    /// Its right end.
    Right,
}
