//! The seam problem and its answer: where panels end in each run, and which panel each piece is
//! cut from.
//!
//! Lengths are inches on whole steps, a tape's 1/16 or finer. A **run** goes from receiver to receiver;
//! its *cover* is `x1 - x0 - 2 gap`. Along a run the seams stand one panel less one lap apart, so one free number
//! a run, the length of its first piece, fixes them all. A **seam** position is the middle of its
//! lap.

pub use super::at_openings::{AtOpenings, LeastAtOpenings};
use super::conflict::Conflict;
use super::ids::{ElevationName, RunId};
use super::price_list::PriceList;
pub use super::stock_weight::StockWeight;
use super::waiting::Waiting;
use serde::{Deserialize, Serialize};

/// How hard the search for fewer panels tries: an iteration budget, never a clock.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema,
)]
#[serde(rename_all = "lowercase")]
pub enum Effort {
    /// The careful-crew method only: the offcut starts the next course where stagger allows.
    Crew,
    /// A short search.
    Brief,
    /// The default.
    #[default]
    Usual,
    /// A long one.
    Long,
}

/// Most stock lengths that one layout mixes. The house is solved once with each alone, and where an end
/// piece is cut from is tried for every pair of lengths; no supplier's list of one panel is near as long.
pub const MOST_STOCKS: usize = 8;

/// A seam no farther from a jamb line than this, inches, stands on it: common practice, no source.
pub const ON_JAMB: f64 = 1.5;

/// Steps of a stair of seams differ by less than the first and are shorter than the second, inches:
/// common practice, no source.
pub const STAIR: (i64, i64) = (2, 60);

/// Seams nearer than this, inches, stand in one line: common practice, no source.
pub const IN_LINE: i64 = 3;

/// Most that one panel weighs beside others in what is kept least.
pub const MOST_WEIGHT: i64 = 1_000_000;

/// The rules seams are placed by. Defaults: see the job.
#[derive(Clone, Debug, PartialEq)]
pub struct SeamRules {
    /// Steps of an inch that everything is counted in. A length between two is taken to the nearer.
    pub steps: i64,
    /// The lengths of stock panels, at least one; [`MOST_STOCKS`] are mixed at most, more are passed over.
    pub stocks: Vec<StockWeight>,
    /// Lap at a seam.
    pub lap: f64,
    /// Gap at each end of a run.
    pub gap: f64,
    /// Width of a saw or snip cut between two pieces of one panel.
    pub kerf: f64,
    /// Shortest piece in a run of more than one.
    pub shortest: f64,
    /// Least sideways distance between seams of near courses.
    pub stagger: f64,
    /// Courses that must lie between two seams in one line: courses less than this plus one apart
    /// keep `stagger`.
    pub clear_courses: u32,
    /// Wished distance of a seam from a jamb line above or below an opening.
    pub jamb: f64,
    /// Whether a run that one panel covers may still get a seam.
    pub seam_short_runs: bool,
    /// Search budget.
    pub effort: Effort,
    /// Seed of the search.
    pub seed: u64,
}

impl SeamRules {
    /// Length of a stock panel, the first where several are mixed; 0 where none is given.
    pub fn stock(&self) -> f64 {
        self.stocks.first().map_or(0.0, |s| s.length)
    }

    /// The same rules with panels of one length alone.
    pub fn with_one(&self, length: f64) -> Self {
        SeamRules { stocks: vec![StockWeight::single(length, 1)], ..self.clone() }
    }
}

#[cfg(test)]
impl SeamRules {
    /// Rules by the job's defaults for panels of a length, inches, laid as a crew does: for unit tests.
    pub(crate) fn usual(stock: f64) -> Self {
        SeamRules {
            steps: 16,
            stocks: vec![StockWeight::single(stock, 1)],
            lap: 1.25,
            gap: 0.25,
            kerf: 0.125,
            shortest: 24.0,
            stagger: 24.0,
            clear_courses: 3,
            jamb: 6.0,
            seam_short_runs: false,
            effort: Effort::Crew,
            seed: 1,
        }
    }
}

/// A run between two receivers.
#[derive(Clone, Debug, PartialEq)]
pub struct SeamRun {
    /// Name, unique in the house.
    pub id: RunId,
    /// Number of the wall it is on, of the house's walls.
    pub wall: usize,
    /// Pocket bottom on the left, elevation inches (the long point of an angled end).
    pub x0: f64,
    /// Pocket bottom on the right.
    pub x1: f64,
    /// Places where a seam must stand, from obstacles without a mounting block: middles of laps whose ends
    /// are whole steps. Sorted.
    pub fixed: Vec<f64>,
    /// Intervals where no seam may stand (mounting blocks).
    pub barred: Vec<(f64, f64)>,
    /// From where to where its panels are notched over heads and under sills: the openings themselves.
    pub notched: Vec<(f64, f64)>,
}

/// The runs of one course of one elevation.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SeamCourse {
    /// Level counted from the house's datum; the same on every elevation.
    pub index: i32,
    /// Jamb lines that cross or touch this course.
    pub avoid: Vec<f64>,
    /// Ripped along its length.
    pub ripped: bool,
    /// Left to right.
    pub runs: Vec<SeamRun>,
}

/// One elevation's courses, bottom up.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SeamElevation {
    /// Name.
    pub name: ElevationName,
    /// Middles of entrances, which seams should keep away from.
    pub entrances: Vec<f64>,
    /// Courses, bottom up.
    pub courses: Vec<SeamCourse>,
}

/// All runs of a house that one product covers.
#[derive(Clone, Debug, PartialEq)]
pub struct SeamProblem {
    /// Rules in force.
    pub rules: SeamRules,
    /// Elevations; offcuts travel between them.
    pub elevations: Vec<SeamElevation>,
    /// How many of them may wait, and the orders of walls.
    pub waiting: Waiting,
}

/// A piece of a run, left to right.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cut {
    /// Number of the panel, from 0.
    pub panel: usize,
    /// Where it begins on the panel, from the panel's left end.
    pub start: f64,
    /// Where it ends on the panel.
    pub end: f64,
}

/// The answer for one run.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct RunPlan {
    /// The run's name.
    pub id: RunId,
    /// Its pieces, left to right.
    pub pieces: Vec<Cut>,
    /// Middles of its laps, elevation inches, left to right: one fewer than pieces.
    pub seams: Vec<f64>,
}

/// Proof of how few panels any layout under the rules can have: a dual-feasible function whose
/// values, summed over the least that each run can take, no packing can undercut (Fekete and
/// Schepers, 2001).
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, schemars::JsonSchema)]
pub struct Certificate {
    /// Panels in the layout.
    pub panels: usize,
    /// No layout under the rules has fewer than this.
    pub bound: usize,
    /// `panels == bound`.
    pub proven: bool,
    /// The function.
    pub function: Dual,
    /// Steps of an inch that lengths are counted in.
    #[serde(default = "on_tape", skip_serializing_if = "is_on_tape")]
    pub steps: i64,
    /// Sum of the function over all runs, times `scale`.
    pub sum: i64,
    /// What one whole panel is worth in `sum`.
    pub scale: i64,
    /// What the bound leaves out.
    pub excludes: Vec<Exclusion>,
    /// Where prices of pieces show more than any function does: `sum` and `scale` are then in these
    /// prices, and `function` is left as length.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub prices: Option<PriceList>,
    /// Where stock lengths are mixed, what is kept least is the weight of all panels, and this its proof;
    /// `sum` and `scale` are then of that weight, `bound` the fewest panels that it leaves possible, and
    /// `proven` says that the weight is the least.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mixed: Option<MixedProof>,
}

impl Default for Certificate {
    fn default() -> Self {
        Certificate {
            panels: 0,
            bound: 0,
            proven: false,
            function: Dual::default(),
            steps: on_tape(),
            sum: 0,
            scale: 0,
            excludes: Vec::new(),
            prices: None,
            mixed: None,
        }
    }
}

fn on_tape() -> i64 {
    16
}

fn is_on_tape(steps: &i64) -> bool {
    *steps == on_tape()
}

/// What a bound leaves out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(tag = "leaves_out", rename_all = "kebab-case")]
pub enum Exclusion {
    /// Stagger of seams and their distance from jambs, which could only raise it.
    SeamPlaces,
    /// Joints on studs and off those of near courses, which could only raise it.
    JointsOnStuds,
    /// How many offcuts may wait, which could only raise it.
    OffcutsWaiting,
    /// Reuse of the other half of ripped courses.
    RippedHalves,
    /// The same, where the layout reuses some: what it takes fewer than the bound counts.
    ReusedHalves {
        /// Panels saved.
        saved: usize,
    },
}

/// The proof for several stock lengths: a piece is worth the least that the functions of the lengths it
/// fits say, each times its panel's weight (rounded down to whole parts of `scale`), so that no panel of
/// any length is cut into pieces worth more than its weight.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, schemars::JsonSchema)]
pub struct MixedProof {
    /// The lengths, in the job's order.
    pub stocks: Vec<StockShare>,
    /// Weight of all panels of the layout.
    pub weight: i64,
    /// No layout under the rules weighs less, its panels being whole.
    pub bound: i64,
    /// Weight of the whole cartons that are bought for it, spare panels included: what is kept least.
    #[serde(default)]
    pub bought: i64,
}

/// One of several stock lengths.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, schemars::JsonSchema)]
pub struct StockShare {
    /// Its length, inches.
    pub length: f64,
    /// What one such panel weighs: its length in whole numbers without a common divisor, or its cost.
    pub weight: i64,
    /// The function for panels of this length; that of the first is the certificate's too.
    pub function: Dual,
    /// Panels of it in the layout.
    pub panels: usize,
    /// Panels of it that the house takes where no other length is used, as the search found; left
    /// out where the rules could not be kept with it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub alone: Option<usize>,
    /// Weight of the whole cartons that are bought for these.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub alone_bought: Option<i64>,
    /// Panels of it that the careful-crew method takes, using no other length.
    pub crew: usize,
}

/// Dual-feasible functions of a share x of a panel (Fekete and Schepers, Mathematical Programming
/// 91, 2001).
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum Dual {
    /// x itself: the length bound.
    #[default]
    Length,
    /// u^k: x where (k+1) x is whole, else floor((k+1) x) / k.
    Rounded(i64),
    /// U^e: 0 below e, 1 above 1 - e, x between; e in sixteenths of panel and kerf.
    Clipped(i64),
    /// phi^e: pieces over half a panel by what they leave, others by how many e go in.
    Counted(i64),
}

/// The seams of a house.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SeamPlan {
    /// One a run, in the problem's order.
    pub runs: Vec<RunPlan>,
    /// Panels used; pieces name them by number from 0.
    pub panels: usize,
    /// The order of walls it is for, by the numbers that runs have.
    pub order: Vec<usize>,
    /// Length of each panel by number, where several lengths are mixed; else empty, all being of the
    /// rules' one.
    pub stocks: Vec<f64>,
    /// The proof.
    pub certificate: Certificate,
    /// Panels the careful-crew method takes on the same house.
    pub crew_panels: usize,
    /// Panels if runs that one panel covers might be seamed too (the other policy), when solved.
    pub other_policy_panels: Option<usize>,
    /// Rules that could not be kept.
    pub conflicts: Vec<Conflict>,
    /// How few seams any layout of these runs has at openings, where that was reckoned.
    pub least_at_openings: Option<LeastAtOpenings>,
}
