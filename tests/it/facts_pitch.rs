//! The pitch table, whole (`DrawingFact::PitchTable`: exact; its rafter column agrees with the
//! framing-square figures printed for 2 to 18 in 12), and rafters worked in print, against `pitch`
//! and against gables laid out.

#![allow(clippy::approx_constant, reason = "figures as the published table prints them")]

use lapwright::model::trim::TrimKind;
use lapwright::pitch;
use lapwright::units::{feet_inches, sixteenths};

use crate::support::{broken, dxf, inches, lay};

/// One line: x, angle, complement, rafter per ft of run in inches and mm, slope factor, gable area
/// over span squared, step of an 8 in course in inches and mm, of 9, 10 and 12 in courses.
type Line = [f64; 12];

/// `DrawingFact::PitchTable`.
const TABLE: [Line; 24] = [
    [1., 4.764, 85.236, 12.042, 305.9, 1.00347, 0.020833, 96.0, 2438.4, 108.0, 120.0, 144.0],
    [2., 9.462, 80.538, 12.166, 309.0, 1.01379, 0.041667, 48.0, 1219.2, 54.0, 60.0, 72.0],
    [3., 14.036, 75.964, 12.369, 314.2, 1.03078, 0.0625, 32.0, 812.8, 36.0, 40.0, 48.0],
    [4., 18.435, 71.565, 12.649, 321.3, 1.05409, 0.083333, 24.0, 609.6, 27.0, 30.0, 36.0],
    [5., 22.620, 67.380, 13.0, 330.2, 1.08333, 0.104167, 19.2, 487.7, 21.6, 24.0, 28.8],
    [6., 26.565, 63.435, 13.416, 340.8, 1.11803, 0.125, 16.0, 406.4, 18.0, 20.0, 24.0],
    [7., 30.256, 59.744, 13.892, 352.9, 1.1577, 0.145833, 13.714, 348.3, 15.429, 17.143, 20.571],
    [8., 33.690, 56.310, 14.422, 366.3, 1.20185, 0.166667, 12.0, 304.8, 13.5, 15.0, 18.0],
    [9., 36.870, 53.130, 15.0, 381.0, 1.25, 0.1875, 10.667, 270.9, 12.0, 13.333, 16.0],
    [10., 39.806, 50.194, 15.620, 396.8, 1.30171, 0.208333, 9.6, 243.8, 10.8, 12.0, 14.4],
    [11., 42.510, 47.490, 16.279, 413.5, 1.35657, 0.229167, 8.727, 221.7, 9.818, 10.909, 13.091],
    [12., 45.0, 45.0, 16.971, 431.1, 1.41421, 0.25, 8.0, 203.2, 9.0, 10.0, 12.0],
    [13., 47.291, 42.709, 17.692, 449.4, 1.47432, 0.270833, 7.385, 187.6, 8.308, 9.231, 11.077],
    [14., 49.399, 40.601, 18.439, 468.4, 1.53659, 0.291667, 6.857, 174.2, 7.714, 8.571, 10.286],
    [15., 51.340, 38.660, 19.209, 487.9, 1.60078, 0.3125, 6.4, 162.6, 7.2, 8.0, 9.6],
    [16., 53.130, 36.870, 20.0, 508.0, 1.66667, 0.333333, 6.0, 152.4, 6.75, 7.5, 9.0],
    [17., 54.782, 35.218, 20.809, 528.5, 1.73405, 0.354167, 5.647, 143.4, 6.353, 7.059, 8.471],
    [18., 56.310, 33.690, 21.633, 549.5, 1.80278, 0.375, 5.333, 135.5, 6.0, 6.667, 8.0],
    [19., 57.724, 32.276, 22.472, 570.8, 1.87268, 0.395833, 5.053, 128.3, 5.684, 6.316, 7.579],
    [20., 59.036, 30.964, 23.324, 592.4, 1.94365, 0.416667, 4.8, 121.9, 5.4, 6.0, 7.2],
    [21., 60.255, 29.745, 24.187, 614.3, 2.01556, 0.4375, 4.571, 116.1, 5.143, 5.714, 6.857],
    [22., 61.390, 28.610, 25.060, 636.5, 2.08833, 0.458333, 4.364, 110.8, 4.909, 5.455, 6.545],
    [23., 62.447, 27.553, 25.942, 658.9, 2.16185, 0.479167, 4.174, 106.0, 4.696, 5.217, 6.261],
    [24., 63.435, 26.565, 26.833, 681.6, 2.23607, 0.5, 4.0, 101.6, 4.5, 5.0, 6.0],
];

/// Whether a value rounds to a printed one with `digits` after the point.
fn prints(value: f64, printed: f64, digits: i32) -> bool {
    (value - printed).abs() <= 0.5 * 10f64.powi(-digits) + 1e-9
}

#[test]
fn the_whole_table() {
    for [x, angle, complement, rafter, mm, factor, area, s8, s8_mm, s9, s10, s12] in TABLE {
        assert!(prints(pitch::angle(x), angle, 3), "{x}: {}", pitch::angle(x));
        assert!(prints(pitch::from_square(x), complement, 3), "{x}");
        assert!(prints(pitch::rafter(x, 12.0), rafter, 3), "{x}: {}", pitch::rafter(x, 12.0));
        assert!(prints(pitch::rafter(x, 12.0) * 25.4, mm, 1), "{x}");
        assert!(prints(pitch::slope_factor(x), factor, 5), "{x}");
        assert!(prints(pitch::gable_area(x, 1.0), area, 6), "{x}");
        assert!(prints(pitch::step(x, 8.0) * 25.4, s8_mm, 1), "{x}");
        for (exposure, step) in [(8.0, s8), (9.0, s9), (10.0, s10), (12.0, s12)] {
            assert!(prints(pitch::step(x, exposure), step, 3), "{x}, {exposure} in");
        }
        // A segment's pitch, whichever way it is drawn.
        assert_eq!(pitch::in_twelve(-36.0, 3.0 * x), x);
        assert_eq!(pitch::in_twelve(36.0, -3.0 * x), x);
    }
}

#[test]
fn framing_square_figures_of_gm_01() {
    // DrawingFact::RafterRow: a printed list, to 0.01 in; Navy, Army and Griffith give 13.89, 17.69,
    // 13.42.
    let row = [
        12.17, 12.37, 12.65, 13.0, 13.42, 13.89, 14.42, 15.0, 15.62, 16.28, 16.97, 17.69, 18.44,
        19.21, 20.0, 20.81, 21.63,
    ];
    for (i, printed) in row.into_iter().enumerate() {
        assert!(prints(pitch::rafter(2.0 + i as f64, 12.0), printed, 2), "{printed}");
    }
}

#[test]
fn pitch_as_a_fraction_of_the_span_gm_02() {
    // ARMY (EN5156): 1/6 = 4 in 12, 1/4 = 6, 1/3 = 8, 5/12 = 10, 1/2 = 12, 5/8 = 15, 3/4 = 18.
    for (over, under, x) in [
        (1., 6., 4.),
        (1., 4., 6.),
        (1., 3., 8.),
        (5., 12., 10.),
        (1., 2., 12.),
        (5., 8., 15.),
        (3., 4., 18.),
    ] {
        assert!((pitch::gable_rise(x, 1.0) - over / under).abs() < 1e-12, "{x}");
    }
}

#[test]
fn rafters_worked_in_print_wx_04_to_wx_06() {
    // (run in ft, x, printed in, exact in, sixteenths apart allowed): Example::RafterOfSeven, Navy,
    // prints 111.12 from the figure 13.89 and calls it 111 1/8; Example::RafterOfSix, Griffith, 167.75
    // from 13.42; Example::RafterOfThirteen ARMY 182.79.
    for (run, x, printed, exact) in [
        (8.0, 7.0, 111.12, 111.140),
        (12.5, 6.0, 167.75, 167.705),
        (10.0 + 1.0 / 3.0, 13.0, 182.79, 182.815),
    ] {
        let r = pitch::rafter(x, run * 12.0);
        assert!(prints(r, exact, 3), "{r}");
        assert!((r - printed).abs() < 0.05, "{r}");
    }
    assert_eq!(sixteenths(pitch::rafter(7.0, 96.0)), sixteenths(111.125));
    assert_eq!(feet_inches(pitch::rafter(13.0, 124.0)), "15'-2 13/16\"");
}

#[test]
fn gables_of_wy_05_and_wy_06() {
    // Span in ft, x: rise, area, rake in ft.
    for (span, x, rise, area, rake) in [
        (24.0, 4.0, 4.0, 48.0, 12.649),
        (28.0, 6.0, 7.0, 98.0, 15.652),
        (30.0, 8.0, 10.0, 150.0, 18.028),
        (36.0, 12.0, 18.0, 324.0, 25.456),
        (20.0, 3.0, 2.5, 25.0, 10.308),
    ] {
        assert_eq!(pitch::gable_rise(x, span), rise);
        assert!((pitch::gable_area(x, span) - area).abs() < 1e-9);
        assert!(prints(pitch::rafter(x, span / 2.0), rake, 3));
        // The program's own gable: area, rakes, and every rule kept.
        let (w, h) = (span * 12.0, rise * 12.0);
        let gable = [(0.0, 0.0), (w, 0.0), (w / 2.0, h)];
        let layout = lay(dxf(&[("A-WALL-OTLN", &gable)]).as_bytes(), &inches());
        let wall = &layout.elevations[0].walls[0];
        assert!((wall.net_area - area).abs() < 1e-6);
        for e in wall.edges.iter().filter(|e| e.pitch.is_some()) {
            assert!((e.pitch.unwrap() - x).abs() < 0.001, "{span}: {:?}", e.pitch);
            let long = (e.from[0] - e.to[0]).hypot(e.from[1] - e.to[1]);
            assert!((long / 12.0 - rake).abs() < 0.001);
        }
        assert_eq!(broken(&layout), Vec::<String>::new());
    }
}

#[test]
fn gables_of_other_exposures_step_by_the_table() {
    for [x, angle, .., s9, s10, s12] in TABLE.into_iter().filter(|l| l[0] >= 3.0) {
        for (exposure, step) in [(9.0, s9), (10.0, s10), (12.0, s12)] {
            let mut job = inches();
            job.product.exposure = exposure;
            let gable = [(0.0, 0.0), (288.0, 0.0), (144.0, 12.0 * x)];
            let layout = lay(dxf(&[("A-WALL-OTLN", &gable)]).as_bytes(), &job);
            let w = &layout.elevations[0].walls[0];
            for (i, pair) in w.courses.windows(2).enumerate() {
                let (low, high) = (&pair[0].runs[0], &pair[1].runs[0]);
                assert!((high.x0 - low.x0 - step).abs() < 0.002, "{x}, {exposure} in, {i}");
                assert!((low.x1 - high.x1 - step).abs() < 0.002, "{x}, {exposure} in, {i}");
                // DrawingFact::RakeStep: long edge less short edge is one step a rake.
                let (first, last) = (&low.pieces[0], low.pieces.last().unwrap());
                for (a, set) in [&first.ends[0], &last.ends[1]].map(|e| (e.angle, e.set_back())) {
                    assert!((a - angle).abs() < 0.01, "{x}, {exposure} in: {a}");
                    let one = step.min(low.pieces[0].length);
                    assert!(low.pieces.len() > 1 || (set - one).abs() < 0.01, "{x}: {set}");
                }
            }
            let rakes = layout.trims.iter().filter(|t| t.kind == TrimKind::RakeChannel);
            assert!(rakes.count() >= 2);
        }
    }
}
