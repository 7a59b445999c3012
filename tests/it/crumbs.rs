//! Crumbs, reckoned by hand from the drawing beside each: strips under the least (2 in) are told with the datum,
//! peaks under it are left to their channels, blocks are moved out of a course that they would bite by 1/2 in
//! at most, and no length of trim along a wall is under 2 in.

use lapwright::language::Language;
use lapwright::layout::Layout;
use lapwright::layout::rule::Rule;
use lapwright::layout::wall::LaidObstacle;
use lapwright::model::pole::{DatumEffects, StripPlace};
use lapwright::model::trim::TrimKind;
use lapwright::units::LengthStyle;
use lapwright::wording::pole;

use crate::faults::{Break, each_is_caught};
use crate::support::{broken, dxf, inches, lay, rect, said};

type Ring<'a> = (&'a str, &'a [(f64, f64)]);

/// Courses of 8 in from a datum, or from where the search has it.
fn laid(datum: Option<f64>, rings: &[Ring]) -> Layout {
    let mut job = inches();
    job.courses.datum = datum;
    job.seams.effort = lapwright::model::seam::Effort::Crew;
    let layout = lay(dxf(rings).as_bytes(), &job);
    assert_eq!(broken(&layout), Vec::<String>::new());
    layout
}

fn effects(l: &Layout) -> &DatumEffects {
    &l.story_pole.choices.iter().find(|c| c.chosen).unwrap().effects
}

const PEAKED: [(f64, f64); 5] =
    [(120.0, 60.0), (180.0, 60.0), (180.0, 80.0), (150.0, 94.0), (120.0, 80.0)];

/// A window whose head rises to a point at 94: two inches under the course line at 96.
fn peaked() -> Layout {
    laid(Some(0.0), &[("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 120.0)), ("A-GLAZ", &PEAKED)])
}

#[test]
fn a_strip_over_a_sloping_head_is_told_with_its_height() {
    // From the top of the head at 94 to the course line at 96, less the clearance of 1/4 in: 1 3/4.
    let l = peaked();
    let thin = &effects(&l).thin_strips;
    assert_eq!(thin.len(), 1, "{thin:?}");
    assert_eq!((thin[0].place, thin[0].least), (StripPlace::OverHeads, Some(1.75)));
    let words = pole::effects(Language::English, effects(&l), None, LengthStyle::Feet);
    assert!(words.contains("over heads (least 1 3/4\")"), "{words}");
    assert!(!words.contains("no strip under"), "{words}");
}

#[test]
fn what_is_told_of_strips_is_what_is_laid() {
    // What the search says of the datum it takes is what is laid on it: none told where none is laid.
    let l = laid(None, &[("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 120.0)), ("A-GLAZ", &PEAKED)]);
    let told = &effects(&l).thin_strips;
    let least: f64 = l
        .pieces()
        .flat_map(|(_, c, _, p)| p.notches.iter().map(move |n| c.top - c.bottom - n.depth))
        .fold(f64::MAX, f64::min);
    assert!(told.is_empty() == (least >= 2.0), "{told:?} {least}");
}

/// A gable over a wall: its peak so far over the course line at 80. Its rakes rise 1 in 1.
fn gable(over: f64) -> Layout {
    let (h, half) = (80.0 + over - 40.0, 80.0 + over - 40.0);
    let ring = [(0.0, 0.0), (2.0 * half, 0.0), (2.0 * half, 40.0), (half, 40.0 + h), (0.0, 40.0)];
    laid(Some(0.0), &[("A-WALL-OTLN", &ring)])
}

#[test]
fn a_peak_under_two_inches_is_left_to_its_channels() {
    // 1 in over the line less the gap of 1/4 in along each rake of 45 degrees: 3/4 in.
    let l = gable(1.0);
    assert!(l.pieces().all(|(_, c, ..)| c.index < 10));
    let found = l.findings.iter().find(|f| f.code().word() == "peak-left").unwrap();
    assert!(said(found).contains("the peak is 1\" over the last course line"), "{}", said(found));
    // 2 1/4 in are left at 2 1/2.
    let l = gable(2.5);
    assert!(l.pieces().any(|(_, c, ..)| c.index == 10));
    assert!(!l.findings.iter().any(|f| f.code().word() == "peak-left"));
}

/// A wall with a block of 6 by 6 in whose foot stands at a height.
fn block_at(y: f64) -> Layout {
    let block = rect(100.0, y, 106.0, y + 6.0);
    laid(Some(0.0), &[("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 96.0)), ("A-ELEV-MBLK", &block)])
}

fn block(l: &Layout) -> &LaidObstacle {
    &l.elevations[0].walls[0].obstacles[0]
}

#[test]
fn a_block_that_bites_a_quarter_inch_is_moved_out_of_the_course() {
    // From 42 to 48, with 1/4 in round it to 48 1/4: the course from 48 would be notched by 1/4.
    let l = block_at(42.0);
    assert!(block(&l).mounting_block, "the layer is a block's");
    assert_eq!((block(&l).moved, block(&l).outline[0][1]), (Some(-0.25), 41.75));
    let cut: Vec<i32> =
        l.pieces().filter(|(.., p)| !p.notches.is_empty()).map(|(_, c, ..)| c.index).collect();
    assert_eq!(cut, [5]);
    let found = l.findings.iter().find(|f| f.code().word() == "block-moved").unwrap();
    assert!(said(found).contains("down 1/4\""), "{}", said(found));
    // From 40 it is moved up, from 41 it cuts one course as it stands, from 44 two in earnest.
    assert_eq!(block(&block_at(40.0)).moved, Some(0.25));
    assert_eq!(block(&block_at(41.0)).moved, None);
    assert_eq!(block(&block_at(44.0)).moved, None);
}

#[test]
fn a_block_as_high_as_its_course_is_moved_onto_it() {
    // 8 in from 40 1/8 with two thousandths of room round it: an eighth over the course of 40 to 48. On the
    // course it bites four thousandths of the one under it, which no saw takes.
    let mut job = inches();
    (job.courses.datum, job.courses.notch_clearance) = (Some(0.0), 0.002);
    let at = rect(100.0, 40.125, 106.0, 48.125);
    let rings: [Ring; 2] = [("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 96.0)), ("A-ELEV-MBLK", &at)];
    let l = lay(dxf(&rings).as_bytes(), &job);
    assert!((block(&l).moved.unwrap() + 0.127).abs() < 0.004, "{:?}", block(&l).moved);
    assert_eq!(broken(&l), [""; 0]);
    // It parts that course, and no piece beside it is notched.
    assert!(l.pieces().all(|(.., p)| p.notches.is_empty()));
    assert_eq!(l.elevations[0].walls[0].courses[5].runs.len(), 2);
}

#[test]
fn a_block_that_bites_a_hair_is_out_of_the_course_and_nothing_is_told() {
    // From 41 3/4 and 1/128 to 47 3/4 and 1/128: its room ends 1/128 in over the course line of 48.
    let l = block_at(41.75 + 1.0 / 128.0);
    assert_eq!((block(&l).moved, block(&l).outline[0][1]), (Some(-1.0 / 128.0), 41.75));
    assert_eq!(broken(&l), [""; 0]);
    assert!(!l.findings.iter().any(|f| f.code().word() == "block-moved"));
}

#[test]
fn no_trim_along_a_wall_is_under_two_inches() {
    // A foot with a step of 1 1/2 in: no channel stands along it. An eave of 144 1/2 in in undersill trim of
    // 144: the last length takes from the one before.
    let ring = [(0.0, 0.0), (72.0, 0.0), (72.0, 1.5), (144.5, 1.5), (144.5, 92.0), (0.0, 92.0)];
    let l = laid(Some(0.0), &[("A-WALL-OTLN", &ring)]);
    let along = l.trims.iter().filter(|t| t.opening.is_none());
    let short: Vec<(&str, f64)> =
        along.filter(|t| t.length < 2.0).map(|t| (t.mark.as_str(), t.length)).collect();
    assert!(short.is_empty(), "{short:?}");
    let top: Vec<f64> = l
        .trims
        .iter()
        .filter(|t| t.kind == TrimKind::FinishTrim && t.from[1] == 92.0)
        .map(|t| t.length)
        .collect();
    assert_eq!(top, [143.25, 2.0]);
}

/// Faults of strips.
pub(crate) const STRIPS: [(&str, Rule, Break); 2] = [
    ("a strip that the datum is said not to leave", Rule::LeastStrips, |l| {
        l.story_pole.choices[0].effects.thin_strips.clear()
    }),
    ("a strip told higher than it is", Rule::LeastStrips, |l| {
        l.story_pole.choices[0].effects.thin_strips[0].least = Some(1.9)
    }),
];

/// Faults of crumbs on a wall with a block and a gable.
pub(crate) const CRUMBS: [(&str, Rule, Break); 4] = [
    ("a peak too low for a piece", Rule::Crumbs, |l| l.job.courses.least_strip = 7.0),
    ("a block that bites a course", Rule::Crumbs, |l| {
        let o = &mut l.elevations[0].walls[0].obstacles[0];
        o.outline.iter_mut().for_each(|p| p[1] += 0.25);
        o.moved = None;
    }),
    ("a block moved too far", Rule::Crumbs, |l| {
        l.elevations[0].walls[0].obstacles[0].moved = Some(0.75)
    }),
    ("a length of trim too short to cut", Rule::Crumbs, |l| {
        l.trims.iter_mut().find(|t| t.kind == TrimKind::Starter).unwrap().length = 1.0
    }),
];

/// A gable with a block that is moved.
pub(crate) fn crumbs() -> Layout {
    let ring = [(0.0, 0.0), (88.0, 0.0), (88.0, 40.0), (44.0, 84.0), (0.0, 40.0)];
    let block = rect(30.0, 26.0, 36.0, 32.0);
    laid(Some(0.0), &[("A-WALL-OTLN", &ring), ("A-ELEV-MBLK", &block)])
}

pub(crate) fn strips() -> Layout {
    peaked()
}

#[test]
fn faults_of_crumbs_are_caught() {
    each_is_caught(&crumbs(), &CRUMBS);
    each_is_caught(&strips(), &STRIPS);
}
