//! Where courses start and what they keep clear of.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::length::{Length, length, maybe_length};
use super::weights::DatumWeights;

/// Where courses start and what they keep clear of.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct CourseRules {
    /// Butt line of the first course above the level line; left out, the best height that a search
    /// over the free height of the first course finds (siding association's manual, horizontal
    /// siding; NAVEDTRA 14044).
    // LayoutFact::OneDatum to LayoutFact::NotchRoundSills.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub datum: Option<f64>,
    /// How far the first course may hang below the drawn bottom of a wall, where it keeps its
    /// clearance to grade and the starter still has a ground to nail to (Journal of Light
    /// Construction on vinyl siding: the starter line stands about 2 in over the butt line). Default
    /// 0: the drawn bottom is where siding begins.
    // TrimFact::StarterOverEdge.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub hang_below: f64,
    /// Clearance to finished grade. Default 6 in (siding association on IRC R703: edition not shown;
    /// for wood IRC R317.1, from memory).
    // TrimFact::GradeClearance.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub clear_of_grade: f64,
    /// Clearance to roofs and decks below. Left out, 1/2 in for panels (siding association on IRC
    /// R703), 2 in for wood and fiber-cement (Ontario Building Code: 50 mm for cladding that moisture
    /// harms).
    // TrimFact::RoofClearance, TrimFact::BoardRoofClearance.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub clear_of_roof: Option<f64>,
    /// Clearance to the flashing on a ledge of stone or on a band below. Left out, none for panels,
    /// whose starter stands on it, 1/4 in for wood and fiber-cement: common practice, no source.
    // TrimFact::LedgeClearance.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub clear_of_ledge: Option<f64>,
    /// Thinnest strip that may be left of a panel before it is reported. Default 2 in: common
    /// practice, no source.
    // LayoutFact::LeastTopCourse.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub least_strip: f64,
    /// Least width of siding that shows between the trim at two sides of it: two openings, an opening and
    /// a corner, a head and a soffit. A narrower place gets a filler board. Default 2 in: common practice,
    /// no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub least_width: f64,
    /// How far a mounting block may be moved up or down to keep it out of a course that it would cut by no
    /// more. Default 1/2 in: common practice, no source. 0 leaves blocks where they are drawn.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub block_shift: f64,
    /// Clearance on each side of a notch and over a cut edge under a sill. Default 1/4 in
    /// (common practice).
    // TrimFact::FixtureClearance.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub notch_clearance: f64,
    /// Spacing of studs, by which pieces too short to be nailed to two are told. Default 16 in: common
    /// practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub stud_spacing: f64,
    /// Spacing of nail slots punched along a ripped top edge, and of the trim nails through a cut
    /// edge that takes no lugs (steel). Default 16 in (common practice, no source).
    // TrimFact::NailSlots.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub slot_spacing: f64,
    /// Spacing of snap-lock lugs along an edge in finish trim, where the siding takes lugs: vinyl.
    /// Default 6 in (siding association on windy places).
    // TrimFact::UndersillLugs.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub lug_spacing: f64,
    /// What the search for the datum weighs.
    pub weights: DatumWeights,
}

impl Default for CourseRules {
    fn default() -> Self {
        CourseRules {
            datum: None,
            hang_below: 0.0,
            clear_of_grade: 6.0,
            clear_of_roof: None,
            clear_of_ledge: None,
            least_strip: 2.0,
            least_width: 2.0,
            block_shift: 0.5,
            notch_clearance: 0.25,
            stud_spacing: 16.0,
            slot_spacing: 16.0,
            lug_spacing: 6.0,
            weights: DatumWeights::default(),
        }
    }
}
