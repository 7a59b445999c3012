//! Boards of wood and fiber-cement: where they may be joined, and what goes with them.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::length::{Length, length, maybe_length};

/// Joints of boards. Only for `wood` and `fiber-cement`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct Boards {
    /// Gap between the ends of two boards. Left out, 1/8 in for fiber-cement (Journal of Light
    /// Construction on fiber-cement, its gap at trim), none for wood: common practice, no source.
    // TrimFact::FiberCementJoints.
    #[serde(deserialize_with = "maybe_length", alias = "joint_gap")]
    #[schemars(with = "Option<Length>")]
    pub butt_gap: Option<f64>,
    /// Distance of studs, center to center: joints stand on studs (Journal of Light Construction on
    /// fiber-cement), and every board is nailed to each. Default 16 in: common practice, no source.
    // TrimFact::FiberCementJoints.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub stud_spacing: f64,
    /// Center of the first stud from the left end of each wall, as its elevation shows it. Default
    /// 16 in: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub first_stud: f64,
    /// Studs between joints of courses within `seams.clear_courses`. Default 1, the less of "a stud
    /// or two" (Journal of Light Construction on fiber-cement).
    // TrimFact::FiberCementJoints.
    pub studs_apart: u32,
    /// Whether courses are evened between sills, heads and tops, so that butt lines meet them (NAVEDTRA
    /// 14044, usage for wood); `false` keeps `product.exposure` all the way up, as is common for
    /// fiber-cement. Evened courses may take more boards: the report says how many. Default `true`.
    // LayoutFact::WoodMayVary, LayoutFact::ButtsAtOpenings.
    pub even: bool,
    /// Thickness of the starter piece under the first board: that of the head lap it stands in for.
    /// Left out, 1/4 in for fiber-cement (Journal of Light Construction on fiber-cement), 1/4 in for
    /// wood: common practice, no source.
    // TrimFact::FiberCementStarter.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub starter: Option<f64>,
}

impl Default for Boards {
    fn default() -> Self {
        Boards {
            butt_gap: None,
            stud_spacing: 16.0,
            first_stud: 16.0,
            studs_apart: 1,
            even: true,
            starter: None,
        }
    }
}

impl Boards {
    /// Least sideways distance of joints in near courses.
    pub fn apart(&self) -> f64 {
        f64::from(self.studs_apart) * self.stud_spacing
    }
}
