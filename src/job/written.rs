//! The siding as a job file gives it: what is left out follows the kind.

use schemars::JsonSchema;
use serde::Deserialize;

use super::length::{Length, maybe_length};
use super::siding::kind::Siding;

/// The siding, as a job file gives it.
#[derive(Clone, Debug, Default, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
#[schemars(rename = "ProductWritten")]
pub(super) struct Written {
    /// What it is: panels of `foam-backed` vinyl, the default, plain `vinyl` or `steel`; boards of
    /// `wood` or `fiber-cement`.
    pub(super) kind: Siding,
    /// Height of a course; left out, `faces` times `face_height`. Default 8 in, a double 4
    /// (usage of the trade). Boards: what is aimed at, evened between sills, heads and tops; 2 in
    /// less than a wood board's width (NAVEDTRA 14044), for fiber-cement its width less the head lap.
    // SidingFact::DoubleFour, SidingFact::WoodExposure.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Length")]
    pub(super) exposure: Option<f64>,
    /// Boards a panel shows: 1 single, 2 double, 3 triple. Left out, as many as `face_height` goes
    /// into `exposure`. Default 2 (usage of the trade).
    // SidingFact::DoubleFour.
    pub(super) faces: Option<u32>,
    /// Height of one of the boards a panel shows; left out, `exposure` by `faces`, 4 in where that
    /// is left out too (usage of the trade).
    // SidingFact::DoubleFour.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub(super) face_height: Option<f64>,
    /// Stock length. Default 12 ft 6 in, 24 panels of D4 to two squares; steel 12 ft 6 in,
    /// wood 16 ft, fiber-cement 12 ft: common practice, no source.
    // TakeoffFact::PanelsInTwoSquares.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Length")]
    pub(super) length: Option<f64>,
    /// A second stock length of the same panel: short for two `[[stock]]`, `length` and this.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub(super) second_length: Option<f64>,
    /// What a panel of `second_length` costs, one of `length` costing 1.
    pub(super) second_cost: Option<f64>,
    /// Panels of `second_length` in a carton. Left out, as many as `carton`.
    pub(super) second_carton: Option<u32>,
    /// How far the foam stops short of the vinyl at each factory end, foam-backed siding only.
    /// Default 5/8 in (common practice, no source).
    // SidingFact::FoamSetBack.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Length")]
    pub(super) foam_set_back: Option<f64>,
    /// Lap at a seam; left out, twice the foam's set-back, so that foam meets foam (common practice;
    /// siding association's manual, horizontal siding), 1 in for plain vinyl, half the factory notch
    /// (siding association's manual, horizontal siding), and 1 1/4 in for steel: from memory.
    // SidingFact::FoamLap, SidingFact::FoamButtsFoam, SidingFact::PlainLap.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub(super) lap: Option<f64>,
    /// End gap; left out, 1/4 in, or 3/8 in below 40 F (siding association's manual, horizontal
    /// siding). Vinyl panels of 20 ft and more want the gap their manufacturer states (siding
    /// association's manual, horizontal siding). Steel: 1/8 in, from memory. Boards: 1/8 in to caulk
    /// (Journal of Light Construction on fiber-cement; wood common practice, no source).
    // SidingFact::EndGap, SidingFact::ColdEndGap, SidingFact::LongPanelGap,
    // TrimFact::FiberCementJoints.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub(super) end_gap: Option<f64>,
    /// Height of the nail hem over the exposed face: a notch from the top is cut through it too.
    /// Default 1 1/4 in: common practice, no source.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Length")]
    pub(super) hem: Option<f64>,
    /// Height of the lock behind the butt edge: a strip that keeps no more of a panel cannot be
    /// held. Default 3/4 in: common practice, no source.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Length")]
    pub(super) lock: Option<f64>,
    /// Panels in a carton. Default 24, two squares of D4 at 12 ft 6 in (shop pages); steel 12,
    /// one square: common practice, no source; boards are sold singly: 1.
    // TakeoffFact::CartonOfTwoSquares, TakeoffFact::PanelsInTwoSquares.
    pub(super) carton: Option<u32>,
    /// Color, as it shall be ordered.
    #[serde(alias = "colour")]
    pub(super) color: String,
    /// Width of a board, `wood` and `fiber-cement` only. Left out, 8 in for wood (NAVEDTRA 14044),
    /// 8 1/4 in for fiber-cement: from memory.
    // SidingFact::WoodExposure.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub(super) width: Option<f64>,
    /// Least lap of a board's head under the next, `wood` and `fiber-cement` only. Left out, 1 in
    /// for wood (NAVEDTRA 14044), 1 1/4 in for fiber-cement (Journal of Light Construction on
    /// fiber-cement).
    // SidingFact::WoodLap, TrimFact::FiberCementLap.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub(super) head_lap: Option<f64>,
    /// Least exposure a board may get when courses are evened, `wood` and `fiber-cement` only. Left
    /// out, 1 in less than `exposure`: common practice, no source.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub(super) exposure_least: Option<f64>,
    /// Greatest exposure, `wood` and `fiber-cement` only. Left out, all that the head lap leaves of
    /// the width.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub(super) exposure_most: Option<f64>,
    /// Thickness of a board at its butt, for the nails, `wood` and `fiber-cement` only. Left out,
    /// 1/2 in for wood (California Redwood Association), 5/16 in for fiber-cement: from memory.
    // Example::NailsThroughBoards.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub(super) thickness: Option<f64>,
    /// Set-back of outside corner posts: distance along the wall from the drawn corner to where a
    /// panel's end would touch, the bottom of the post's pocket; the end gap comes on top. Panels only.
    /// A `trim.corner_cover` takes its place, nothing is added. 0: panels run to the drawn corner. Left
    /// out, 2 in: common practice, no source; measure the post.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub(super) outside_post_set_back: Option<f64>,
    /// How wide the face of an outside corner post shows on each wall. Panels only. Left out, 1 in more
    /// than the set-back: common practice, no source.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub(super) outside_post_face: Option<f64>,
    /// Set-back of inside corner posts, likewise; of posts alone: two J-channels in an inside corner
    /// have none, one has the depth of its pocket on the wall that is sided second. Left out, 1 in:
    /// common practice, no source; measure the post.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub(super) inside_post_set_back: Option<f64>,
    /// How wide the face of an inside corner post shows on each wall. Panels only. Left out, 1 in more
    /// than the set-back: common practice, no source.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub(super) inside_post_face: Option<f64>,
    /// Set-back of outside posts for corners that are not square, as of bays. Panels only. Left out, by
    /// geometry: a square post's, where the faces of a post bent to the angle are as wide and stand off
    /// the sheathing by its pocket: 2 11/16 in at 135 degrees. Common practice, no source; measure the post.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub(super) angled_outside_post_set_back: Option<f64>,
    /// Set-back of inside posts for corners that are not square, likewise: 5/16 in at 135 degrees.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub(super) angled_inside_post_set_back: Option<f64>,
    /// How wide a corner board shows on each wall of an outside corner, `wood` and `fiber-cement` only;
    /// boards end at its edge, less the gap. A `trim.corner_cover` takes its place, nothing is added. 0:
    /// boards run to the drawn corner. Left out, 3 1/2 in: common practice, no source.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub(super) corner_board: Option<f64>,
    /// How wide the strip in an inside corner shows on each wall, `wood` and `fiber-cement` only. Left
    /// out, 1 in: common practice, no source.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub(super) inside_corner_board: Option<f64>,
}
