//! Settings that say nothing about any siding of the job: they are refused rather than passed over.

use super::boards::Boards;
use super::courses::CourseRules;
use super::fasteners::FastenerRules;
use super::fault::Fault;
use super::root::Job;
use super::seams::SeamSettings;
use super::siding::system::{CutEdgeRule, NailHold, SidingSystem};
use super::takeoff::TakeoffRules;
use super::weather::Weather;

/// Which siding a setting is about, its key, and whether the job gives it.
type Setting = (fn(&SidingSystem) -> bool, &'static str, bool);

/// Settings that say nothing about any siding of a job, given or not.
pub fn keys(job: &Job) -> Vec<&'static str> {
    settings(job).filter(|s| about_none(job, s)).map(|s| s.1).collect()
}

/// Whether a setting is about no siding of the job.
fn about_none(job: &Job, s: &Setting) -> bool {
    !job.kinds().any(|k| (s.0)(k.system()))
}

pub(super) fn faults(job: &Job) -> Vec<Fault> {
    settings(job)
        .filter(|s| s.2 && about_none(job, s))
        .map(|(_, key, _)| Fault::of_other_siding(job.product.kind, key))
        .collect()
}

fn settings(job: &Job) -> impl Iterator<Item = Setting> {
    of_joints(job).into_iter().chain(of_edges(job)).chain(of_movement(job))
}

fn of_joints(job: &Job) -> [Setting; 9] {
    let (usual, seams, b) = (Boards::default(), SeamSettings::default(), &job.boards);
    let on_studs = |s: &SidingSystem| s.joints.is_on_studs();
    let evened = |s: &SidingSystem| s.courses.is_evened();
    let lapped = |s: &SidingSystem| s.joints.is_lapped();
    [
        (on_studs, "boards.butt_gap", b.butt_gap.is_some()),
        (on_studs, "boards.stud_spacing", b.stud_spacing != usual.stud_spacing),
        (on_studs, "boards.first_stud", b.first_stud != usual.first_stud),
        (on_studs, "boards.studs_apart", b.studs_apart != usual.studs_apart),
        (evened, "boards.even", b.even != usual.even),
        (on_studs, "boards.starter", b.starter.is_some()),
        (lapped, "seams.stagger", job.seams.stagger != seams.stagger),
        (lapped, "seams.past_obstacle", job.seams.past_obstacle != seams.past_obstacle),
        (lapped, "seams.seam_short_runs", job.seams.seam_short_runs),
    ]
}

fn of_edges(job: &Job) -> [Setting; 6] {
    let (courses, rules) = (CourseRules::default(), TakeoffRules::default());
    let pockets = |s: &SidingSystem| s.receivers.has_pockets();
    let slots = |s: &SidingSystem| s.cut_edge != CutEdgeRule::FaceNails;
    let lugs = |s: &SidingSystem| s.cut_edge == CutEdgeRule::Lugs;
    let slotted = |s: &SidingSystem| s.fastening.through.is_slotted();
    let studs = |s: &SidingSystem| s.fastening.holds == NailHold::Studs;
    let sheathing = FastenerRules::default().sheathing;
    [
        (studs, "fasteners.sheathing", job.fasteners.sheathing != sheathing),
        (pockets, "trim.pocket", job.trim.pocket.is_some()),
        (pockets, "trim.channel_alone", job.trim.channel_alone.is_some()),
        (slots, "courses.slot_spacing", job.courses.slot_spacing != courses.slot_spacing),
        (lugs, "courses.lug_spacing", job.courses.lug_spacing != courses.lug_spacing),
        (slotted, "takeoff.nail_spacing", job.takeoff.nail_spacing != rules.nail_spacing),
    ]
}

fn of_movement(job: &Job) -> [Setting; 5] {
    let (w, mild) = (&job.weather, Weather::default());
    let moves = |s: &SidingSystem| s.movement.is_some();
    [
        (moves, "weather.below_40f", w.below_40f),
        (moves, "weather.installed_f", w.installed_f.is_some()),
        (moves, "weather.lowest_f", w.lowest_f != mild.lowest_f),
        (moves, "weather.highest_f", w.highest_f != mild.highest_f),
        (moves, "weather.expansion", w.expansion.is_some()),
    ]
}
