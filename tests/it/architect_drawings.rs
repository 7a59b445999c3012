//! Elevations as architects draw them, read without a job file.

use crate::architect::drawing;
use crate::architect::run::{OPEN, SEALED, score, seeds, seldom, sums_wrong};

/// Thresholds: walls right of all drawings, areas of those that are read.
const WALLS: f64 = 0.95;
const AREAS: f64 = 0.98;

#[test]
fn a_seed_is_one_drawing() {
    for seed in [OPEN, SEALED] {
        assert!(drawing(seed).dxf == drawing(seed).dxf);
        assert_ne!(drawing(seed).dxf, drawing(seed + 1).dxf);
    }
}

#[test]
fn what_is_true_adds_up() {
    let wrong: Vec<String> = (OPEN..OPEN + 40).flat_map(sums_wrong).collect();
    assert!(wrong.is_empty(), "{wrong:#?}");
}

/// Of 300 drawings each habit is in 60 at least, and each has three or more.
#[test]
fn every_habit_is_drawn_often() {
    let seldom = seldom((OPEN..OPEN + 200).chain(SEALED..SEALED + 100), 60);
    assert!(seldom.is_empty(), "{seldom:#?}");
}

/// The first twenty: none is wrong without an alarm.
#[test]
fn twenty_drawings_are_read_or_told() {
    let s = score(&(OPEN..OPEN + 20).collect::<Vec<u64>>());
    assert!(s.silent().is_empty() && s.walls() >= WALLS, "{}: {:?}", s.line(), s.silent());
}

#[test]
#[ignore = "not there yet: of the 200 open drawings the walls are right in all, areas in 99 %, none is wrong without an alarm; of the 100 others walls are right in 98, areas in all of those, and 1 drawing is wrong without an alarm; of 700 more, seeds 5001 to 5700, walls are right in 99 %"]
fn thirty_drawings_are_read_as_a_person_reads_them() {
    let s = score(&seeds((OPEN..OPEN + 20).chain(SEALED..SEALED + 10)));
    s.report();
    println!("{}", s.line());
    assert!(s.silent().is_empty(), "wrong without an alarm: {}", s.silent().len());
    assert!(s.walls() >= WALLS && s.areas() >= AREAS, "{}", s.line());
}

/// Each was read wrong once, and no word of it: a jog of noise at a corner (5209, 5417), a house of three stories in
/// inches under a header of millimeters (5550), roofs with more lines than the walls under them (5082), a few bed
/// joints of stone beside doors (4001), a hipped porch roof before a band (5076).
#[test]
fn drawings_that_were_once_misread_are_read() {
    let s = score(&[4001, 5076, 5082, 5209, 5417, 5550]);
    assert!(s.walls() == 1.0 && s.areas() == 1.0 && s.silent().is_empty(), "{}", s.line());
}
