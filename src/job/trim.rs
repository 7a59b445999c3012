//! Trim: stock lengths, gaps and colors.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::length::{Length, length, maybe_length};
use super::map_schema::named_by;
use super::trim_style::{FrameCut, InsideCorner, TopFinish};
use crate::model::trim::TrimStock;

/// Trim.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct TrimRules {
    /// Stock of starter strip. Default 10 ft (a lumber yard's estimating page).
    // TakeoffFact::StarterByPerimeter.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub starter: f64,
    /// Stock of outside corner posts. Default 10 ft (Journal of Light Construction on vinyl siding).
    // TrimFact::PostStock.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub outside_post: f64,
    /// Stock of inside corner posts. Default 10 ft (Journal of Light Construction on vinyl siding).
    // TrimFact::PostStock.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub inside_post: f64,
    /// Stock of J-channel. Default 12 ft 6 in (a lumber yard's estimating page).
    // TakeoffFact::ChannelsByOpening.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub j_channel: f64,
    /// Stock of flexible J-channel, for curves of openings. Default 12 ft: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub flexible_channel: f64,
    /// Stock of finish trim. Default 12 ft (a lumber yard's estimating page).
    // TakeoffFact::UndersillByLength.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub finish_trim: f64,
    /// Stock of drip cap. Default 10 ft: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub drip_cap: f64,
    /// Face of the J-channel. Default 3/4 in (common practice).
    // TrimFact::WindowFrame.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub channel_face: f64,
    /// Length of a water tab. Default 3/4 in (common practice).
    // TrimFact::HeadTabs.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub tab: f64,
    /// Pocket of posts and channels to order: how far panels stand off the wall, and play. Left out,
    /// 1 1/8 in for foam-backed siding, 3/4 in for plain vinyl: common
    /// practice, no source.
    // TrimFact::FoamPocket, TrimFact::PocketDepth.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub pocket: Option<f64>,
    /// A cut under a sill that falls no more than this over the lower edge of a face, where the
    /// panel stands out farthest, fills the channel by itself; any other is held by finish trim in
    /// it. Left out, 1 in for foam-backed siding (the figure common practice, no
    /// source), 0 for plain vinyl (siding association on windy places).
    // TrimFact::UndersillInChannel, TrimFact::UndersillLugs.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub channel_alone: Option<f64>,
    /// Gap between the top of a corner post or board and the soffit. Left out, 1/4 in for posts (siding
    /// association's manual, accessories), none for corner boards (common practice, no source).
    // TrimFact::PostTopGap.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub post_top_gap: Option<f64>,
    /// How far a corner post or board runs below the starter; less where that saves a splice. Left out, 3/4
    /// in for posts (siding association's manual, accessories), even with it for corner boards (common
    /// practice, no source).
    // TrimFact::PostPastStarter.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub post_below: Option<f64>,
    /// Lap of a spliced corner post. Default 3/4 in (siding association's manual, accessories;
    /// Journal of Light Construction on vinyl siding).
    // TrimFact::PostSplice.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub post_lap: f64,
    /// How much of the nail flange is cut off the upper length of a spliced post. Default 1 in, which
    /// leaves 1/4 in over the lap to move (siding association's manual, accessories; Journal of Light
    /// Construction on vinyl siding).
    // TrimFact::PostSplice.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub post_cut_back: f64,
    /// What takes the panels in an inside corner: `post`, `one-channel` or `two-channels`. Default
    /// `post` (siding association's manual, accessories names all three).
    // TrimFact::InsideCorner.
    pub inside_corner: InsideCorner,
    /// How channels round an opening meet: `miter` or `square`. Default `miter` (common
    /// practice).
    // TrimFact::WindowFrame.
    pub frame: FrameCut,
    /// What finishes the top of a wall under a level soffit: `finish-trim`, `two-piece`, `top-panel`
    /// or `crown`. Default `finish-trim` (siding association on windy places; the others common
    /// practice).
    // TrimFact::UndersillLugs, TrimFact::TopFinish.
    pub top: TopFinish,
    /// Height of a frieze board under level soffits; the siding ends below it. Default 0, none: common
    /// practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub frieze: f64,
    /// Width of a frieze board along rakes, square to them; the siding ends at its lower edge. Default
    /// 0, none: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub rake_frieze: f64,
    /// Width of a flat surround outside the drawn edge of every opening, and outside `drawing.casing`
    /// where there is one: they add up. Channels go round it. Default 0, none: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub surround: f64,
    /// How far a wide cover of outside corners reaches on each wall; the siding ends at it. It takes the
    /// place of the corner posts' set-back, nothing is added; one narrower than the set-back changes
    /// nothing. Default 0, none: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub corner_cover: f64,
    /// Stock of decorative trim: surrounds, boards, corner covers, top finishes. Default 12 ft: common
    /// practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub decorative: f64,
    /// Room between the two J-channels at a movement joint of the building. Default 1/2 in: common
    /// practice, no source, as are the two channels.
    // LayoutFact::MovementJoints.
    #[serde(deserialize_with = "length", alias = "joint_gap")]
    #[schemars(with = "Length")]
    pub movement_gap: f64,
    /// Gap between starter strips, and to a corner post. Left out, 1/4 in (Journal of Light
    /// Construction on vinyl siding), none for the starter piece of boards (common practice, no source).
    // TrimFact::StarterGaps.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub starter_gap: Option<f64>,
    /// How far above the butt line of the first course the line is snapped that the starter's top edge is
    /// set to; below it where negative. Default 2 in (Journal of Light Construction on vinyl siding: it
    /// varies by product).
    // TrimFact::StarterOverEdge.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub starter_line: f64,
    /// How far a drip cap reaches past each jamb. Default 1 in: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub drip_cap_past: f64,
    /// Color of each stock, as it shall be ordered; left out, the panels' color.
    #[serde(alias = "colours")]
    #[schemars(transform = named_by::<TrimStock>)]
    pub colors: BTreeMap<TrimStock, String>,
}

impl Default for TrimRules {
    fn default() -> Self {
        TrimRules {
            starter: 120.0,
            outside_post: 120.0,
            inside_post: 120.0,
            j_channel: 150.0,
            flexible_channel: 144.0,
            finish_trim: 144.0,
            drip_cap: 120.0,
            channel_face: 0.75,
            tab: 0.75,
            pocket: None,
            channel_alone: None,
            post_top_gap: None,
            post_below: None,
            post_lap: 0.75,
            post_cut_back: 1.0,
            inside_corner: InsideCorner::Post,
            top: TopFinish::FinishTrim,
            frieze: 0.0,
            rake_frieze: 0.0,
            surround: 0.0,
            corner_cover: 0.0,
            decorative: 144.0,
            movement_gap: 0.5,
            frame: FrameCut::Miter,
            starter_gap: None,
            starter_line: 2.0,
            drip_cap_past: 1.0,
            colors: BTreeMap::new(),
        }
    }
}
