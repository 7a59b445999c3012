//! Published check values, each with its source: the ids are those of the project's list of trade
//! facts: the US Navy training manual NAVEDTRA 14044, I. S. Griffith's Carpentry
//! (1916), the US Army course EN5156, and printed takeoff pages (see `src/sources`).

use lapwright::model::notch::NotchSide;
use lapwright::units::{feet_inches, sixteenths};

use crate::support::{dxf, inches, laid, lay, rect};

/// `DrawingFact::PitchTable`: the pitch table for 1 to 24 in 12: angle, rafter per foot of run, step
/// of an 8 in course.
const PITCHES: [(f64, f64, f64, f64); 24] = [
    (1.0, 4.764, 12.042, 96.0),
    (2.0, 9.462, 12.166, 48.0),
    (3.0, 14.036, 12.369, 32.0),
    (4.0, 18.435, 12.649, 24.0),
    (5.0, 22.620, 13.000, 19.2),
    (6.0, 26.565, 13.416, 16.0),
    (7.0, 30.256, 13.892, 13.714),
    (8.0, 33.690, 14.422, 12.0),
    (9.0, 36.870, 15.000, 10.667),
    (10.0, 39.806, 15.620, 9.6),
    (11.0, 42.510, 16.279, 8.727),
    (12.0, 45.0, 16.971, 8.0),
    (13.0, 47.291, 17.692, 7.385),
    (14.0, 49.399, 18.439, 6.857),
    (15.0, 51.340, 19.209, 6.4),
    (16.0, 53.130, 20.0, 6.0),
    (17.0, 54.782, 20.809, 5.647),
    (18.0, 56.310, 21.633, 5.333),
    (19.0, 57.724, 22.472, 5.053),
    (20.0, 59.036, 23.324, 4.8),
    (21.0, 60.255, 24.187, 4.571),
    (22.0, 61.390, 25.060, 4.364),
    (23.0, 62.447, 25.942, 4.174),
    (24.0, 63.435, 26.833, 4.0),
];

#[test]
fn gables_of_every_pitch_are_cut_at_the_tables_angle_and_step() {
    for (x, angle, rafter, step) in PITCHES {
        // A gable two panels wide at most: span 240 in.
        let rise = 120.0 * x / 12.0;
        let layout = lay(
            dxf(&[("A-WALL-OTLN", &[(0.0, 0.0), (240.0, 0.0), (120.0, rise)])]).as_bytes(),
            &inches(),
        );
        let w = &layout.elevations[0].walls[0];
        // DrawingFact::GableArea: area = span^2 x / 48 (feet).
        assert!((w.gross_area - 20.0 * 20.0 * x / 48.0).abs() < 0.001, "{x}");
        let first = w.courses[0].runs[0].pieces.first().unwrap();
        assert!((first.ends[0].angle - angle).abs() < 0.002, "{x} in 12: {}", first.ends[0].angle);
        if rise >= 16.0 {
            let short = &w.courses[1].runs[0];
            assert!(
                (short.x0 - w.courses[0].runs[0].x0 - step).abs() < 0.002,
                "{x}: step {}",
                short.x0 - w.courses[0].runs[0].x0
            );
            assert!(
                (first.ends[0].set_back() - step).abs() < 0.01,
                "{x}: set {}",
                first.ends[0].set_back()
            );
        }
        // Rafter length per foot of run, both rakes: DrawingFact::RakeLength.
        let rakes: f64 = layout
            .trims
            .iter()
            .filter(|t| t.kind == lapwright::model::trim::TrimKind::RakeChannel)
            .map(|t| (t.from[0] - t.to[0]).hypot(t.from[1] - t.to[1]))
            .sum();
        let laps = layout
            .trims
            .iter()
            .filter(|t| t.kind == lapwright::model::trim::TrimKind::RakeChannel)
            .count() as f64
            - 2.0;
        assert!((rakes - 0.75 * laps - 20.0 * rafter).abs() < 0.02, "{x}: {rakes}");
    }
}

#[test]
fn gable_of_wy_05() {
    let layout = laid("one-gable");
    let w = &layout.elevations[0].walls[0];
    assert!((w.gross_area - 48.0).abs() < 1e-6);
    let widths: Vec<f64> = w.courses.iter().map(|c| c.runs[0].x1 - c.runs[0].x0).collect();
    let expected = [288.0, 240.0, 192.0, 144.0, 96.0, 48.0];
    assert_eq!(widths.len(), 6);
    assert!(widths.iter().zip(expected).all(|(a, b)| (a - b).abs() < 0.01), "{widths:?}");
    // Rake 12 ft 7 13/16 in.
    assert_eq!(feet_inches(144.0f64.hypot(48.0)), "12'-7 13/16\"");
}

#[test]
fn gables_of_wy_06_and_wy_07() {
    for (span, pitch, area) in
        [(28.0, 6.0, 98.0), (30.0, 8.0, 150.0), (36.0, 12.0, 324.0), (20.0, 3.0, 25.0)]
    {
        let (w, h) = (span * 12.0, span * 6.0 * pitch / 12.0);
        let layout = lay(
            dxf(&[("A-WALL-OTLN", &[(0.0, 0.0), (w, 0.0), (w / 2.0, h)])]).as_bytes(),
            &inches(),
        );
        assert!((layout.elevations[0].walls[0].net_area - area).abs() < 1e-3, "{span}");
    }
    // Gambrel: 28 and 18 ft wide, 6 and 5 ft high: 183 sq ft.
    let gambrel = [(0.0, 0.0), (336.0, 0.0), (276.0, 72.0), (168.0, 132.0), (60.0, 72.0)];
    let layout = lay(dxf(&[("A-WALL-OTLN", &gambrel)]).as_bytes(), &inches());
    assert!((layout.elevations[0].walls[0].net_area - 183.0).abs() < 1e-3);
}

/// `Example::RunOfTwentyFiveFeet` to `Example::RunOnColdDay` lap 1 in: their panels are plain vinyl.
fn plain(cold: bool) -> lapwright::job::Job {
    let mut job = inches();
    job.product.lap = Some(1.0);
    job.weather.below_40f = cold;
    job
}

#[test]
fn pieces_of_walls_of_wy_01_to_wy_04() {
    for (feet, pieces, cold) in [
        (25.0, 3, false),
        (12.5, 1, false),
        (40.0, 4, false),
        (60.0, 5, false),
        (28.0, 3, false),
        (25.0, 3, true),
    ] {
        let layout = lay(
            dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, feet * 12.0, 24.0))]).as_bytes(),
            &plain(cold),
        );
        for c in &layout.elevations[0].walls[0].courses {
            // A crew may need one more piece for stagger's sake, never one less.
            let n = c.runs[0].pieces.len();
            assert!(n == pieces || (pieces > 1 && n == pieces + 1), "{feet} ft: {n}");
        }
        let fewest = layout.elevations[0].walls[0]
            .courses
            .iter()
            .map(|c| c.runs[0].pieces.len())
            .min()
            .unwrap();
        assert_eq!(fewest, pieces, "{feet} ft");
        let gap = if cold { 0.375 } else { 0.25 };
        let run = &layout.elevations[0].walls[0].courses[0].runs[0];
        assert!((run.x1 - run.x0 - 2.0 * run.gap - (feet * 12.0 - 2.0 * gap)).abs() < 1e-9);
    }
}

#[test]
fn foam_meets_foam_at_a_lap_of_twice_the_set_back() {
    // SidingFact::FoamSetBack, SidingFact::FoamLap (common practice, no source),
    // SidingFact::FoamButtsFoam: 2 x 5/8 = 1 1/4.
    let layout = laid("one-wall");
    let run = layout.pieces().map(|(_, _, r, _)| r).find(|r| r.pieces.len() > 1).unwrap();
    assert_eq!(run.pieces[0].x1 - run.pieces[1].x0, 1.25);
}

#[test]
fn a_shifted_datum_brings_sill_and_head_to_course_lines() {
    // Example::DatumShift: sill 36, head 84 above the start; 4 in down both are butt lines. No
    // face is notched then: over the head a whole panel starts, and under the sill, 3 ft wide, only the
    // nail hem of the panel below is cut off, with the usual 1/4 in at each side and under it.
    let path = crate::support::root().join("sample-drawings/one-window.dxf");
    let bytes = std::fs::read(&path).unwrap();
    let mut job = crate::support::job(&path);
    let notches =
        |l: &lapwright::layout::Layout| l.pieces().filter(|(.., p)| !p.notches.is_empty()).count();
    let cut = lay(&bytes, &job);
    assert!(notches(&cut) >= 2);
    job.courses.datum = Some(-4.0);
    let clean = lay(&bytes, &job);
    assert_eq!(notches(&clean), 1);
    let (_, course, _, under) = clean.pieces().find(|(.., p)| !p.notches.is_empty()).unwrap();
    assert_eq!(course.bottom, 36.0 - 8.0);
    let [cut] = under.notches.as_slice() else { panic!("{:?}", under.notches) };
    assert_eq!((cut.side, cut.width, cut.depth), (NotchSide::Top, 36.5, 0.25));
    let w = &clean.elevations[0].walls[0];
    assert!(
        w.courses.iter().any(|c| c.bottom == 36.0) && w.courses.iter().any(|c| c.bottom == 84.0)
    );
}

#[test]
fn growth_that_uses_up_the_gaps_wy_10() {
    // 12 ft 6 in, 1/4 in at each end, 4.5e-5 /F (CAN/CGSB-41.24, table 1): 74.1 F; 3/8: 111.1 F.
    for (gap, f, expected) in
        [(0.25, 4.5e-5, 74.1), (0.25, 3.5e-5, 95.2), (0.375, 4.5e-5, 111.1), (0.375, 3.0e-5, 166.7)]
    {
        let job = lapwright::job::Job::default();
        let rise = gap / (job.product.length / 2.0 * f);
        assert!((rise - expected).abs() < 0.06, "{rise}");
    }
    // SidingFact::EndGap, SidingFact::ColdEndGap.
    let gap = lapwright::job::Job::default().siding().end_gap;
    assert_eq!((gap.usual, gap.cold), (0.25, 0.375));
}

#[test]
fn rafters_of_wx_04_to_wx_06() {
    // Printed (Navy, Griffith, Army) and exact; the book of Example::RafterOfThirteen rounds up to
    // 15 ft 3 in.
    let rake = |run: f64, x: f64| run * (144.0 + x * x).sqrt();
    assert_eq!(sixteenths(rake(8.0, 7.0)), sixteenths(111.125)); // 9 ft 3 1/8 in
    assert!((rake(12.5, 6.0) - 167.75).abs() < 0.06);
    assert!((rake(10.0 + 1.0 / 3.0, 13.0) - 182.79).abs() < 0.03);
    // The program's own channel along such a rake: span 16 ft, 7 in 12.
    let layout = lay(
        dxf(&[("A-WALL-OTLN", &[(0.0, 0.0), (192.0, 0.0), (96.0, 56.0)])]).as_bytes(),
        &inches(),
    );
    let channel = layout
        .trims
        .iter()
        .find(|t| t.kind == lapwright::model::trim::TrimKind::RakeChannel)
        .unwrap();
    assert_eq!(feet_inches(channel.length), "9'-3 1/8\"");
}

#[test]
fn whole_house_of_wx_07_to_wx_10() {
    // The siding shop's page: 60 x 28 ft, walls 99 in: 13 courses of D4, 10 of D5; the source's area counts whole
    // courses: 176 ft x 104 in = 1525.33 sq ft (printed 1524, cut at 8.66).
    for (exposure, courses, area) in [(8.0, 13, 1525.33), (10.0, 10, 1466.67)] {
        let mut job = inches();
        job.product.exposure = exposure;
        let walls: Vec<[(f64, f64); 4]> =
            [(0.0, 720.0), (900.0, 336.0), (1400.0, 720.0), (2300.0, 336.0)]
                .iter()
                .map(|(x, w)| rect(*x, 0.0, x + w, 99.0))
                .collect();
        let rings: Vec<(&str, &[(f64, f64)])> =
            walls.iter().map(|w| ("A-WALL-OTLN", &w[..])).collect();
        let layout = lay(dxf(&rings).as_bytes(), &job);
        assert!(layout.walls().all(|(_, w)| w.courses.len() == courses));
        let width: f64 =
            layout.walls().map(|(_, w)| w.courses[0].runs[0].x1 - w.courses[0].runs[0].x0).sum();
        assert!((width / 12.0 * courses as f64 * exposure / 12.0 - area).abs() < 0.01);
    }
    // 96 in is exactly 12 courses (Example::WholeCourses).
    assert_eq!(laid("one-wall").elevations[0].walls[0].courses.len(), 12);
}

#[test]
fn areas_of_wx_09_wx_11_and_wx_12() {
    let area = |points: &[(f64, f64)]| {
        lay(dxf(&[("A-WALL-OTLN", points)]).as_bytes(), &inches()).elevations[0].walls[0].net_area
    };
    // The siding shop: gable 30 ft base, 6 ft high: 90; the carpenter: 25 x 8 wall and 8 ft gable: 300;
    // the lumber yard: 56, 12.
    assert!((area(&[(0.0, 0.0), (360.0, 0.0), (180.0, 72.0)]) - 90.0).abs() < 1e-3);
    assert!(
        (area(&[(0.0, 0.0), (300.0, 0.0), (300.0, 96.0), (150.0, 192.0), (0.0, 96.0)]) - 300.0)
            .abs()
            < 1e-3
    );
    assert!((area(&[(0.0, 0.0), (336.0, 0.0), (168.0, 48.0)]) - 56.0).abs() < 1e-3);
    assert!((area(&[(0.0, 0.0), (72.0, 0.0), (0.0, 48.0)]) - 12.0).abs() < 1e-3);
}

#[test]
fn a_round_headed_window_takes_its_half_circle_wy_08() {
    let layout = laid("curlew-cottage");
    let w = layout.elevations[0]
        .walls
        .iter()
        .find(|w| w.openings.iter().any(|o| o.outline.len() > 8))
        .unwrap();
    let o = w.openings.iter().find(|o| o.outline.len() > 8).unwrap();
    let ring: Vec<lapwright::geom::vocabulary::Point> =
        o.outline.iter().map(|p| (p[0], p[1]).into()).collect();
    let area = lapwright::geom::polygon::signed_area(&ring).abs();
    // 36 x 24 under the springing and half a circle of radius 18: 508.94 sq in.
    assert!((area - 864.0 - 508.94).abs() < 0.6, "{area}");
    assert_eq!((o.right - o.left, o.head - o.sill), (36.0, 42.0));
}

#[test]
fn frame_of_sd_104() {
    // 36 x 48 opening, 3/4 in face: head and sill 37 1/2, jambs 49 1/2.
    let layout = laid("one-window");
    use lapwright::model::trim::TrimKind::{HeadChannel, JambChannel, SillChannel};
    for (kind, length) in [(HeadChannel, 37.5), (SillChannel, 37.5), (JambChannel, 49.5)] {
        assert!(
            layout.trims.iter().filter(|t| t.kind == kind).all(|t| t.length == length),
            "{kind:?}"
        );
    }
    assert_eq!(layout.trims.iter().filter(|t| t.kind == JambChannel).count(), 2);
}

#[test]
fn panels_of_two_squares_tk_03() {
    for (exposure, feet, pieces) in [
        (8.0, 12.5, 24.0),
        (10.0, 12.0, 20.0),
        (12.0, 12.5, 16.0),
        (8.0, 16.0 + 2.0 / 3.0, 18.0),
        (12.0, 25.0, 8.0),
    ] {
        assert!((exposure / 12.0 * feet * pieces - 200.0f64).abs() < 1e-9);
    }
    // The default product's carton is two squares.
    let p = lapwright::job::Product::default();
    assert_eq!(f64::from(p.carton) * p.exposure * p.length / 144.0, 200.0);
}
