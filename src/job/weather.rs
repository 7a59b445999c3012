//! The day the siding goes up, and the place's temperatures.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Siding's temperature on the day, F, where the job says nothing: common practice, no source.
const MILD: f64 = 60.0;
/// The same on a cold day: under the 40 F at which the gap changes (siding association's manual,
/// horizontal siding).
// SidingFact::ColdEndGap.
const COLD: f64 = 35.0;

/// The day's weather, and the place's.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct Weather {
    /// Installed below 40 F (4.4 C): end gaps 3/8 in rather than 1/4 in (siding association's manual,
    /// horizontal siding).
    // SidingFact::EndGap, SidingFact::ColdEndGap.
    pub below_40f: bool,
    /// Temperature of the siding when it goes up, F; left out, 60 F, or 35 F on a day below 40 F:
    /// common practice, no source.
    pub installed_f: Option<f64>,
    /// Lowest temperature the siding gets to, F. Default 20: a swing of 100 F to the highest, as
    /// published figures take it (CAN/CGSB-41.24); the place's own, no source.
    // SidingFact::FullSwing.
    pub lowest_f: f64,
    /// Highest temperature the siding gets to, F: a sunny wall is hotter than the air. Default 120:
    /// see the lowest.
    pub highest_f: f64,
    /// Growth of the siding, length per length and F. Left out, 4.5e-5 for vinyl, the ceiling for
    /// rigid PVC (CAN/CGSB-41.24; 3.0e-5 to 3.6e-5 are typical, from memory), 6.5e-6 for steel
    /// (handbooks of structural steel, from memory).
    // SidingFact::PvcExpansion, SidingFact::UsualExpansion.
    pub expansion: Option<f64>,
}

impl Default for Weather {
    fn default() -> Self {
        Weather {
            below_40f: false,
            installed_f: None,
            lowest_f: 20.0,
            highest_f: 120.0,
            expansion: None,
        }
    }
}

impl Weather {
    /// Temperature on the day in force, F.
    pub fn installed(&self) -> f64 {
        self.installed_f.unwrap_or(if self.below_40f { COLD } else { MILD })
    }

    /// Whether the cold day's gap is in force.
    pub fn cold(&self) -> bool {
        self.below_40f || self.installed_f.is_some_and(|f| f < 40.0)
    }
}
