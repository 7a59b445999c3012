//! Pieces of one run (`Example::RunOfTwentyFiveFeet` to `Example::RunOnColdDay`), where no
//! neighboring course asks for stagger: the least number exactly.

use lapwright::layout::course::LaidRun;

use crate::support::{broken, dxf, inches, lay, rect};

/// The one run of a wall one course high, panels 12 ft 6 in, lap 1 in (plain vinyl,
/// `SidingFact::PlainLap`).
fn run(feet: f64, cold: bool) -> LaidRun {
    let mut job = inches();
    job.product.lap = Some(1.0);
    job.weather.below_40f = cold;
    let wall = rect(0.0, 0.0, feet * 12.0, job.product.exposure);
    let l = lay(dxf(&[("A-WALL-OTLN", &wall)]).as_bytes(), &job);
    assert_eq!(broken(&l), Vec::<String>::new(), "{feet} ft");
    let w = &l.elevations[0].walls[0];
    assert_eq!((w.courses.len(), w.courses[0].runs.len()), (1, 1));
    w.courses[0].runs[0].clone()
}

#[test]
fn the_fewest_pieces_by_hand() {
    // n = ceil((R - 1) / (P - 1)) for usable run R and panel P = 150, worked by hand.
    for (feet, cold, usable, pieces) in [
        (25.0, false, 299.5, 3), // Example::RunOfTwentyFiveFeet: two panels give 299; half an inch makes a third piece
        (12.5, false, 149.5, 1), // Example::RunOfOnePanel: no seam
        (40.0, false, 479.5, 4), // Example::LongRuns
        (60.0, false, 719.5, 5),
        (28.0, false, 335.5, 3),
        (25.0, true, 299.25, 3), // Example::RunOnColdDay: gaps 3/8
    ] {
        let r = run(feet, cold);
        assert_eq!(r.x1 - r.x0 - 2.0 * r.gap, usable, "{feet} ft");
        assert_eq!(r.pieces.len(), pieces, "{feet} ft");
        assert_eq!(r.seams.len(), pieces - 1);
        let sum: f64 = r.pieces.iter().map(|p| p.length).sum();
        assert_eq!(sum - (pieces - 1) as f64, usable);
    }
}

#[test]
fn half_an_inch_less_saves_the_third_piece() {
    // Example::RunOfTwentyFiveFeet from the other side: two panels lapped 1 in cover 299 in, and not
    // a sixteenth more.
    assert_eq!(run(299.5 / 12.0, false).pieces.len(), 2);
    assert_eq!(run((299.5 + 1.0 / 16.0) / 12.0, false).pieces.len(), 3);
}
