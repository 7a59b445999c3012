//! The panel count and its proof.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::model::conflict::Conflict;
use crate::model::ids::WallId;
use crate::model::seam::{AtOpenings, Certificate, Dual, Exclusion};

/// The panel count and the proof.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Bound {
    /// Least possible.
    pub panels: usize,
    /// In this layout.
    pub best: usize,
    /// Whether they are the same; where two stock lengths are mixed, whether what is bought is the least.
    pub proven: bool,
    /// What is kept least.
    pub kept_least: KeptLeast,
    /// How the bound was found.
    pub method: BoundMethod,
    /// What it leaves out.
    pub excludes: Vec<Exclusion>,
    /// The certificate, for the checker.
    pub certificate: Certificate,
    /// What reuse of ripped halves saves, where the job asks for it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reuse: Option<HalvesReused>,
    /// What the careful-crew method takes.
    pub crew: usize,
    /// What elevations take where each is laid and cut by itself, no offcut carried to another, as a
    /// short search finds: panels, or their weight where stock lengths are mixed. None for a house of
    /// one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub each_elevation: Option<i64>,
    /// What net area and ten percent would buy.
    pub by_area: usize,
    /// What the other short-run policy would take, when solved.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub other_policy: Option<usize>,
    /// Boards that the other way of courses would take: of one exposure all the way up where these are
    /// evened, evened where these are not. Left out for panels.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub other_courses: Option<usize>,
    /// Rules that could not be kept.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub conflicts: Vec<Conflict>,
    /// Where seams stand beside openings and one another.
    #[serde(default)]
    pub seams: SeamPlaces,
}

/// Where seams stand beside openings and one another, counted from what is laid.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct SeamPlaces {
    /// All seams.
    pub seams: usize,
    /// Of them at openings.
    pub at_openings: AtOpenings,
    /// No layout of these runs has fewer of a sort, each sort by itself. Not reckoned for joints of
    /// boards, which stand on studs.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub least: Option<AtOpenings>,
    /// The same in turn, neighbors two at a time: no layout has fewer in notches; none with so few there has fewer
    /// on jamb lines; none with so few of both has fewer near them.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub least_in_turn: Option<AtOpenings>,
    /// Stairs: seams of three courses, one over the other, that step alike.
    pub stairs: usize,
    /// Ladders: two seams in one line with only the clear courses between.
    pub ladders: usize,
    /// Where seams stand on jamb lines.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub on_jambs: Vec<SeamPlace>,
}

/// Where a seam is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct SeamPlace {
    /// Its wall.
    pub wall: WallId,
    /// Its course, counted from the datum.
    pub course: i32,
    /// Inches from the elevation's left.
    pub x: f64,
}

/// What a layout keeps least.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum KeptLeast {
    /// Panels, all of one length.
    #[default]
    Panels,
    /// Length bought, where stock lengths are mixed.
    Length,
    /// Cost, where each stock length has one.
    Cost,
}

/// How a bound was found: by functions of a share of a panel (see [`Dual`]), or by prices.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "stocks", rename_all = "kebab-case")]
pub enum BoundMethod {
    /// One function, for the one stock length.
    One {
        /// The function.
        function: Dual,
    },
    /// Prices of pieces, the one stock length: see [`PriceList`](crate::model::price_list::PriceList).
    Prices {
        /// How many: of end pieces and of runs without a seam.
        prices: usize,
    },
    /// A function for each stock length; a piece is worth the least of them.
    Mixed {
        /// The functions, in the order of the stock lengths.
        functions: Vec<Dual>,
    },
}

impl Default for BoundMethod {
    fn default() -> Self {
        BoundMethod::One { function: Dual::Length }
    }
}

/// What reuse of ripped halves saves.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct HalvesReused {
    /// Panels that serve two courses.
    pub saved: usize,
    /// Panels cut, those included.
    pub cut: usize,
}
