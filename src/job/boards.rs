//! Boards of wood and fibre-cement: where they may be joined, and what goes with them.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::fault::Fault;
use super::length::{Length, length, maybe_length};
use super::{CourseRules, Job, Kind, SeamSettings, TakeoffRules, Weather, product};

/// Joints of boards. Only for `wood` and `fibre-cement`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct Boards {
    /// Gap between the ends of two boards. Left out, 1/8 in for fibre-cement (FACTS SD-132, JLC-F,
    /// its gap at trim), none for wood: common practice, no source.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub joint_gap: Option<f64>,
    /// Distance of studs, centre to centre: joints stand on studs (FACTS SD-132, JLC-F), and every
    /// board is nailed to each. Default 16 in: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub stud_spacing: f64,
    /// Centre of the first stud from the left end of each wall, as its elevation shows it. Default
    /// 16 in: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub first_stud: f64,
    /// Studs between joints of courses within `seams.clear_courses`. Default 1, the less of "a stud
    /// or two" (FACTS SD-132, JLC-F).
    pub studs_apart: u32,
    /// Thickness of the starter piece under the first board: that of the head lap it stands in for.
    /// Left out, 1/4 in for fibre-cement (FACTS SD-131, JLC-F), 1/4 in for wood: common practice, no
    /// source.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub starter: Option<f64>,
}

impl Default for Boards {
    fn default() -> Self {
        Boards {
            joint_gap: None,
            stud_spacing: 16.0,
            first_stud: 16.0,
            studs_apart: 1,
            starter: None,
        }
    }
}

impl Boards {
    /// Gap at a joint in force.
    pub fn gap(&self, kind: Kind) -> f64 {
        self.joint_gap.unwrap_or(if kind == Kind::FibreCement { 0.125 } else { 0.0 })
    }

    /// Thickness of the starter piece in force.
    pub fn starter(&self) -> f64 {
        self.starter.unwrap_or(0.25)
    }

    /// Least sideways distance of joints in near courses.
    pub fn apart(&self) -> f64 {
        f64::from(self.studs_apart) * self.stud_spacing
    }
}

/// Settings that say nothing about the siding picked: they are refused rather than passed over.
pub(super) fn faults(job: &Job) -> Vec<Fault> {
    let kind = job.product.kind;
    let (usual, seams, rules) =
        (Boards::default(), SeamSettings::default(), TakeoffRules::default());
    let courses = CourseRules::default();
    let (b, w, mild) = (&job.boards, &job.weather, Weather::default());
    let of_boards = [
        ("boards.joint_gap", b.joint_gap.is_some()),
        ("boards.stud_spacing", b.stud_spacing != usual.stud_spacing),
        ("boards.first_stud", b.first_stud != usual.first_stud),
        ("boards.studs_apart", b.studs_apart != usual.studs_apart),
        ("boards.starter", b.starter.is_some()),
    ];
    let of_panels = [
        ("seams.stagger", job.seams.stagger != seams.stagger),
        ("seams.past_obstacle", job.seams.past_obstacle != seams.past_obstacle),
        ("seams.seam_short_runs", job.seams.seam_short_runs),
        ("trim.pocket", job.trim.pocket.is_some()),
        ("trim.channel_alone", job.trim.channel_alone.is_some()),
        ("courses.slot_spacing", job.courses.slot_spacing != courses.slot_spacing),
        ("courses.lug_spacing", job.courses.lug_spacing != courses.lug_spacing),
        ("takeoff.nail_spacing", job.takeoff.nail_spacing != rules.nail_spacing),
        ("weather.below_40f", w.below_40f),
        ("weather.installed_f", w.installed_f.is_some()),
        ("weather.lowest_f", w.lowest_f != mild.lowest_f),
        ("weather.highest_f", w.highest_f != mild.highest_f),
        ("weather.expansion", w.expansion != mild.expansion),
    ];
    let (boards, panels) = (job.kinds().any(Kind::is_board), job.kinds().any(|k| !k.is_board()));
    let idle = [(boards, &of_boards[..]), (panels, &of_panels[..])];
    idle.into_iter()
        .filter(|(laid, _)| !laid)
        .flat_map(|(_, set)| set)
        .filter(|(_, given)| *given)
        .map(|(key, _)| product::of_other_siding(kind, key))
        .collect()
}
