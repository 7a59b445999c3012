//! Printed tables of coverage, cartons, openings and rounding, against the code that counts.

use lapwright::job::Job;
use lapwright::layout::Layout;
use lapwright::units::{MM_PER_INCH, Unit, feet_inches, inches_fraction, parse_length, sixteenths};

use crate::support::{dxf, inches, lay, rect};

/// A wall of 100 sq ft sided with panels of this size, one to a carton.
fn square(exposure: f64, length: f64) -> Layout {
    let mut job: Job = inches();
    job.product.exposure = exposure;
    job.product.length = length;
    job.product.carton = 1;
    job.takeoff.area_waste = 0.0;
    lay(dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 120.0, 120.0))]).as_bytes(), &job)
}

fn line<'a>(l: &'a Layout, item: &str) -> &'a lapwright::model::quantity::TakeoffLine {
    l.takeoff.iter().find(|t| t.id == *item).unwrap()
}

/// `TakeoffFact::CoveragePerPiece`, coverage a piece (sq ft) and pieces a square, by length and
/// exposure of 6, 7, 8, 9, 10, 12 in.
const COVERAGE: [(f64, [(f64, f64); 6]); 6] = [
    (144.0, [(6.0, 16.67), (7.0, 14.29), (8.0, 12.5), (9.0, 11.11), (10.0, 10.0), (12.0, 8.33)]),
    (
        145.0,
        [
            (6.042, 16.55),
            (7.049, 14.19),
            (8.056, 12.41),
            (9.062, 11.03),
            (10.069, 9.93),
            (12.083, 8.28),
        ],
    ),
    (
        150.0,
        [(6.25, 16.0), (7.292, 13.71), (8.333, 12.0), (9.375, 10.67), (10.417, 9.6), (12.5, 8.0)],
    ),
    (
        200.0,
        [(8.333, 12.0), (9.722, 10.29), (11.111, 9.0), (12.5, 8.0), (13.889, 7.2), (16.667, 6.0)],
    ),
    (
        240.0,
        [(10.0, 10.0), (11.667, 8.57), (13.333, 7.5), (15.0, 6.67), (16.667, 6.0), (20.0, 5.0)],
    ),
    (
        300.0,
        [(12.5, 8.0), (14.583, 6.86), (16.667, 6.0), (18.75, 5.33), (20.833, 4.8), (25.0, 4.0)],
    ),
];

#[test]
fn coverage_a_piece_and_pieces_a_square() {
    for (length, row) in COVERAGE {
        for ((each, a_square), exposure) in row.into_iter().zip([6.0, 7.0, 8.0, 9.0, 10.0, 12.0]) {
            let l = square(exposure, length);
            let (cartons, squares) = (line(&l, "cartons"), line(&l, "squares"));
            assert!((l.elevations[0].walls[0].net_area - 100.0).abs() < 1e-9);
            let covers = 100.0 * squares.order / cartons.order;
            // Half of the last printed digit: 9.0625 stands as 9.062.
            assert!((covers - each).abs() <= 0.000501, "{length}, {exposure}: {covers}");
            assert!((100.0 / covers - a_square).abs() <= 0.00501, "{length}, {exposure}");
            // Net area alone would buy the next whole piece.
            assert_eq!(l.bound.by_area, (a_square - 0.005).ceil() as usize, "{length}, {exposure}");
        }
    }
}

#[test]
fn panels_in_two_squares_tk_03() {
    // D4 12-6 = 24; D5 12-0 = 20; D6 12-6 = 16; D4 16-8 = 18; D6 16-8 = 12; D4 20-0 = 15; D5 20-0 =
    // 12; D4 25-0 = 12; D6 25-0 = 8; D4.5 12-1 = 22, which is 199.4 sq ft.
    for (exposure, length, carton, feet) in [
        (8.0, 150.0, 24, 200.0),
        (10.0, 144.0, 20, 200.0),
        (12.0, 150.0, 16, 200.0),
        (8.0, 200.0, 18, 200.0),
        (12.0, 200.0, 12, 200.0),
        (8.0, 240.0, 15, 200.0),
        (10.0, 240.0, 12, 200.0),
        (8.0, 300.0, 12, 200.0),
        (12.0, 300.0, 8, 200.0),
        (9.0, 145.0, 22, 199.375),
    ] {
        let mut job = inches();
        job.product.exposure = exposure;
        job.product.length = length;
        job.product.carton = carton;
        // A wall of one course takes one carton.
        let wall = rect(0.0, 0.0, 120.0, exposure);
        let l = lay(dxf(&[("A-WALL-OTLN", &wall)]).as_bytes(), &job);
        assert_eq!(line(&l, "cartons").order, 1.0);
        assert!((line(&l, "squares").order * 100.0 - feet).abs() < 1e-9, "{exposure}, {length}");
    }
}

#[test]
fn courses_are_rounded_up_tk_12_gm_12() {
    // Example::HouseOfDoubleFour, Example::WholeCourses and DrawingFact::CoursesOfHeights:
    // 96 in = 12.00 of D4; 97 1/8 = 12.14; 99 = 12.375; 108 = 13.5; 109 1/8 = 13.64; 99 in of D5 =
    // 9.9.
    for (high, exposure, exact) in [
        (96.0, 8.0, 12.0),
        (97.125, 8.0, 12.14),
        (99.0, 8.0, 12.375),
        (108.0, 8.0, 13.5),
        (109.125, 8.0, 13.64),
        (99.0, 10.0, 9.9),
    ] {
        let mut job = inches();
        job.product.exposure = exposure;
        let wall = rect(0.0, 0.0, 120.0, high);
        let l = lay(dxf(&[("A-WALL-OTLN", &wall)]).as_bytes(), &job);
        let courses = &l.elevations[0].walls[0].courses;
        assert_eq!(courses.len(), f64::ceil(exact) as usize, "{high}");
        // The top course is ripped to what is left, less the clearance under the eave's trim. Where the
        // eave is on a course line a whole course is left, 8 in: its nail hem would stand over the line,
        // so it is cut off as well.
        let kept = (exact - (f64::ceil(exact) - 1.0)) * exposure;
        let top = courses.last().unwrap();
        let to = top.runs[0].pieces[0].rip.as_ref().unwrap().to;
        assert!((to + job.courses.notch_clearance - kept).abs() < 0.05, "{high}: {to}");
    }
}

#[test]
fn areas_of_nominal_openings_tk_23() {
    // TakeoffFact::CallSizes: width and height in inches, sq ft.
    for (w, h, feet) in [
        (24.0, 36.0, 6.0),
        (30.0, 36.0, 7.5),
        (30.0, 48.0, 10.0),
        (32.0, 48.0, 10.667),
        (32.0, 60.0, 13.333),
        (36.0, 36.0, 9.0),
        (36.0, 48.0, 12.0),
        (36.0, 60.0, 15.0),
        (36.0, 72.0, 18.0),
        (48.0, 36.0, 12.0),
        (48.0, 48.0, 16.0),
        (48.0, 60.0, 20.0),
        (60.0, 48.0, 20.0),
        (72.0, 48.0, 24.0),
        (72.0, 60.0, 30.0),
        (32.0, 80.0, 17.778),
        (36.0, 80.0, 20.0),
        (72.0, 80.0, 40.0),
        (108.0, 84.0, 63.0),
        (192.0, 84.0, 112.0),
    ] {
        let rings = [
            ("A-WALL-OTLN", &rect(0.0, 0.0, 288.0, 120.0)[..]),
            ("A-GLAZ", &rect(40.0, 12.0, 40.0 + w, 12.0 + h)[..]),
        ];
        let l = lay(dxf(&rings).as_bytes(), &inches());
        let wall = &l.elevations[0].walls[0];
        let taken = wall.gross_area - wall.net_area;
        assert!((taken - feet).abs() < 0.0006, "{w} x {h}: {taken}");
    }
}

#[test]
fn lengths_round_to_the_sixteenth_half_up_gm_07_gm_09() {
    // DrawingFact::RoundHalfUp: 0.12 in x 16 = 1.92, use 2/16 = 1/8.
    assert_eq!(inches_fraction(0.12), "1/8\"");
    assert_eq!(sixteenths(0.12), 2);
    for n in 0..4096i64 {
        let exact = n as f64 / 16.0;
        assert_eq!(sixteenths(exact), n);
        assert_eq!(sixteenths(exact + 1.0 / 32.0), n + 1); // half goes up
        assert_eq!(sixteenths(exact + 1.0 / 32.0 - 1.0 / 1024.0), n);
        // What is written is read back as what it was rounded to.
        assert_eq!(parse_length(&feet_inches(exact), Unit::Inch), Some(exact));
        assert_eq!(parse_length(&inches_fraction(exact), Unit::Inch), Some(exact));
    }
    // DrawingFact::Sixteenths: sixteenths as decimals.
    for (text, decimal) in [
        ("1/16\"", 0.0625),
        ("1/8\"", 0.125),
        ("3/16\"", 0.1875),
        ("1/4\"", 0.25),
        ("5/16\"", 0.3125),
        ("3/8\"", 0.375),
        ("7/16\"", 0.4375),
        ("1/2\"", 0.5),
        ("9/16\"", 0.5625),
        ("5/8\"", 0.625),
        ("11/16\"", 0.6875),
        ("3/4\"", 0.75),
        ("13/16\"", 0.8125),
        ("7/8\"", 0.875),
        ("15/16\"", 0.9375),
    ] {
        assert_eq!(inches_fraction(decimal), text);
    }
}

#[test]
fn inches_and_millimeters_gm_08() {
    assert_eq!(MM_PER_INCH, 25.4);
    for (unit, inches) in [
        (Unit::Inch, 1.0),
        (Unit::Foot, 12.0),
        (Unit::Mm, 1.0 / 25.4),
        (Unit::Cm, 1.0 / 2.54),
        (Unit::M, 100.0 / 2.54),
    ] {
        assert!((unit.inches() - inches).abs() < 1e-12);
    }
    // DrawingFact::FeetInches: spellings a drafter uses.
    for text in ["12-6", "12'6", "12'-6\"", "12ft 6in"] {
        assert_eq!(parse_length(text, Unit::Inch), Some(150.0), "{text}");
    }
    assert_eq!(parse_length("12' 6 1/2\"", Unit::Inch), Some(150.5));
}
