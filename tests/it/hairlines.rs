//! What is thinner than any tape reads or saw leaves is no panel, no notch and no side: drawings whose
//! levels and jambs miss course lines and panel ends by thousandths of an inch.

use lapwright::job::Job;
use lapwright::layout::Layout;
use lapwright::layout::piece::Piece;
use lapwright::model::notch::{Contour, Notch, NotchSide};
use lapwright::write::json;

use crate::cutcase::wrong;
use crate::support::{broken, dxf, inches, lay, rect};

/// Butt lines every 8 in from `datum`, panels that cover 240 in.
fn job(datum: f64) -> Job {
    let mut job = inches();
    job.courses.datum = Some(datum);
    job.product.length = 300.0;
    job.product.end_gap = Some(0.25);
    job
}

type Rings<'a> = [(&'a str, &'a [(f64, f64)])];

/// A wall of 240 by 96 in with what stands on it, every rule kept and every piece made by its figures.
fn wall_with(rings: &Rings, job: &Job) -> Layout {
    let wall = rect(0.0, 0.0, 240.0, 96.0);
    let all: Vec<(&str, &[(f64, f64)])> =
        [("A-WALL-OTLN", &wall[..])].into_iter().chain(rings.iter().copied()).collect();
    let layout = lay(dxf(&all).as_bytes(), job);
    assert_eq!(broken(&layout), Vec::<String>::new());
    let told = serde_json::from_slice(&json::layout(&layout)).unwrap();
    assert_eq!(wrong(&told), Vec::<String>::new());
    for (.., p) in layout.pieces() {
        let next = p.outline.iter().cycle().skip(1);
        for (a, b) in p.outline.iter().zip(next) {
            // 1/128 in, half the finest mark that any rule has.
            let length = (a[0] - b[0]).hypot(a[1] - b[1]);
            assert!(length > 1.0 / 128.0, "{}: a side of {length} at {a:?}", p.mark);
        }
    }
    layout
}

fn pieces(layout: &Layout, course: i32) -> Vec<&Piece> {
    layout.pieces().filter(|(_, c, ..)| c.index == course).map(|(.., p)| p).collect()
}

#[test]
fn a_bare_fixture_a_hair_lower_than_its_course_ends_the_run_or_has_its_seam() {
    // Grid steps of 1/1024 in: a hair is eight of them, and no cutter tells sixteen apart.
    for steps in [0.0, 7.0, 8.0, 9.0, 10.0, 11.0, 15.0, 17.0, 40.0] {
        let tap = rect(100.0, 39.0, 112.0, 48.0 - steps / 1024.0);
        wall_with(&[("A-ELEV-OBST", &tap)], &job(0.0));
    }
}

#[test]
fn a_wall_a_hair_off_the_course_lines_takes_whole_courses() {
    // 96 in of wall are twelve courses of 8, and no thirteenth of two or three thousandths. The twelfth
    // ends under the soffit: its hem is cut off, 1/4 in under it.
    for off in [0.0, 0.002, -0.002, 0.003, -0.003, 0.0075, -0.0075] {
        let layout = wall_with(&[], &job(off));
        let all: Vec<&Piece> = layout.pieces().map(|(.., p)| p).collect();
        assert_eq!(all.len(), 12, "{off}");
        let rips: Vec<f64> = all.iter().filter_map(|p| Some(p.rip.as_ref()?.to)).collect();
        assert_eq!(rips, [7.75], "{off}");
        assert!(all.iter().all(|p| p.notches.is_empty()), "{off}");
        let gross = layout.elevations[0].walls[0].gross_area;
        // A hundredth of a percent, as far as areas are held to those reckoned outside.
        assert!((gross - 160.0).abs() < 160.0 * 2e-4, "{off}: {gross}");
    }
}

#[test]
fn stone_and_heads_a_hair_off_a_course_line_leave_no_hairline() {
    for off in [0.001, -0.001, 0.004, -0.004, 0.007, -0.007] {
        // Stone to the third butt line, a window from the fifth to the ninth.
        let (stone, window) =
            (rect(0.0, 0.0, 240.0, 24.0 + off), rect(100.0, 40.0 + off, 130.0, 72.0 - off));
        let layout = wall_with(&[("A-WALL-BASE", &stone), ("A-GLAZ", &window)], &job(0.0));
        assert!(pieces(&layout, 2).is_empty(), "{off}");
        // Whole under, beside and over it.
        let counts: Vec<usize> = (3..12).map(|k| pieces(&layout, k).len()).collect();
        assert_eq!(counts, [1, 1, 2, 2, 2, 2, 1, 1, 1], "{off}");
        // The hem of the fifth is cut off under the sill, that of the twelfth under the soffit.
        let cut = |k: i32| pieces(&layout, k)[0].clone();
        let notches: Vec<(f64, f64)> = cut(4).notches.iter().map(|n| (n.width, n.depth)).collect();
        assert_eq!(notches, [(30.5, 0.25)], "{off}");
        assert_eq!(cut(11).rip.map(|r| r.to), Some(7.75), "{off}");
        let others = layout.pieces().filter(|(_, c, ..)| ![4, 11].contains(&c.index));
        assert!(others.map(|(.., p)| p).all(|p| p.rip.is_none() && p.notches.is_empty()), "{off}");
    }
}

#[test]
fn a_clearance_that_ends_a_hair_off_a_course_line_parts_the_course() {
    // A sill 1/4 in and some thousandths over the butt line at 40: the cut, 1/4 in under it, would
    // leave thousandths of an inch of a panel; a head as far under the one at 72 likewise.
    for off in [0.001, 0.003, 0.007, -0.003] {
        let window = rect(100.0, 40.25 + off, 130.0, 71.75 - off);
        let layout = wall_with(&[("A-GLAZ", &window)], &job(0.0));
        let counts: Vec<usize> = (4..10).map(|k| pieces(&layout, k).len()).collect();
        assert_eq!(counts, [1, 2, 2, 2, 2, 1], "{off}");
    }
}

#[test]
fn a_jamb_a_hair_off_a_panel_end_leaves_no_sliver() {
    // A window whose left jamb, 1/4 in aside, lies thousandths inside the run's end 1/4 in off the
    // corner; its sill is in the middle of a course.
    for off in [0.001, 0.004, 0.007] {
        let window = rect(0.5 + off, 44.0, 30.0, 72.0);
        let layout = wall_with(&[("A-GLAZ", &window)], &job(0.0));
        let cut = pieces(&layout, 5);
        assert_eq!(cut.len(), 1);
        // One notch, out of the panel's upper corner: 30 1/4 less 1/4 wide, from 43 3/4 to 48 deep.
        let n = &cut[0].notches;
        assert_eq!((n.len(), n[0].side, n[0].left), (1, NotchSide::Top, 0.0), "{off}");
        assert!((n[0].width - 30.0).abs() < 0.01 && (n[0].depth - 4.25).abs() < 0.01, "{n:?}");
    }
}

#[test]
fn a_jamb_a_hair_off_a_seam_leaves_no_sliver() {
    // A tap without a block to x = 106: the first panel ends 1 in past it (TrimFact::CutAtObstacle).
    // A window stands over it from the middle of the course up, its notch thousandths short of that
    // end.
    let tap = rect(100.0, 42.0, 106.0, 44.0);
    for off in [0.001, 0.004, 0.007] {
        let window = rect(107.25 - off, 47.0, 140.0, 72.0);
        let layout = wall_with(&[("A-ELEV-OBST", &tap), ("A-GLAZ", &window)], &job(0.0));
        let cut = pieces(&layout, 5);
        assert_eq!((cut.len(), cut[0].x1), (2, 107.0), "{off}");
        let sides: Vec<NotchSide> = cut[0].notches.iter().map(|n| n.side).collect();
        assert_eq!(sides, [NotchSide::Right], "{off}");
    }
}

/// A wall of the given outline, checked as [`wall_with`] does.
fn wall_of(outline: &[(f64, f64)]) -> Layout {
    // Beside a whole wall, which gives the courses their lines.
    let whole = rect(-250.0, 0.0, -10.0, 96.0);
    let both = [("A-WALL-OTLN", &whole[..]), ("A-WALL-OTLN", outline)];
    let layout = lay(dxf(&both).as_bytes(), &job(0.0));
    assert_eq!(broken(&layout), Vec::<String>::new());
    let told = serde_json::from_slice(&json::layout(&layout)).unwrap();
    assert_eq!(wrong(&told), Vec::<String>::new());
    layout
}

fn rightmost(layout: &Layout, course: i32) -> &Piece {
    let all = pieces(layout, course).into_iter();
    all.max_by(|a, b| a.x0.total_cmp(&b.x0)).unwrap()
}

#[test]
fn what_is_cut_short_of_the_face_is_measured_from_a_rip() {
    // Two slopes of 4 in 12 end 1/10 in over the level top between them: the notch is measured from
    // where they end, so the panel is ripped there.
    let top = [
        (0., 0.),
        (240., 0.),
        (240., 48.),
        (150., 78.),
        (150., 77.9),
        (90., 77.9),
        (90., 78.),
        (0., 48.),
    ];
    let layout = wall_of(&top);
    let p = rightmost(&layout, 9);
    let heights = || p.outline.iter().map(|q| q[1] - 72.0);
    let high = heights().fold(f64::MIN, f64::max);
    let rip = p.rip.as_ref().unwrap();
    assert!(high < 7.0 && rip.from == 0.0 && (rip.to - high).abs() < 1e-6, "{p:?}");
    // Each end keeps 1/4 in along the wall from its slope and from the plumb step: 78 - 2 (1/4) / 3. The
    // level top keeps 1/4 in up from the siding: 77.9 - 1/4. Drawn to 1/1024.
    assert!((rip.to - 5.83333).abs() < 1.0 / 512.0, "{p:?}");
    let notch = &p.notches[0];
    assert!(notch.side == NotchSide::Top && (notch.depth - 0.18333).abs() < 1.0 / 512.0, "{p:?}");

    // A piece that hangs by its point: both its ends lean one way, and are measured
    // from the point.
    let layout = wall_of(&[(40.0, 1.0), (100.0, 25.0), (76.0, 25.0)]);
    let p = rightmost(&layout, 0);
    let low = p.outline.iter().map(|q| q[1]).fold(f64::MAX, f64::min);
    let rip = p.rip.as_ref().unwrap();
    assert!(low > 1.0 && (rip.from - low).abs() < 1e-6 && rip.to == 8.0, "{p:?}");

    // A foot ripped and a peak in one course: the rip keeps no more than shows.
    let layout = wall_of(&[(0.0, 52.0), (21.0, 52.0), (10.5, 55.5)]);
    let p = rightmost(&layout, 6);
    let high = p.outline.iter().map(|q| q[1] - 48.0).fold(f64::MIN, f64::max);
    let rip = p.rip.as_ref().unwrap();
    assert!(high < 7.5 && rip.from >= 4.0 && (rip.to - high).abs() < 1e-6, "{p:?}");
}

#[test]
fn a_wall_of_chords_keeps_every_rule() {
    // Round walls: their sides pass through every slope, level and plumb among them.
    for (radius, chords) in [(60.0, 120), (60.0, 361), (100.0, 360)] {
        let at = |i: u32| f64::from(i) / f64::from(chords) * std::f64::consts::TAU;
        let ring: Vec<(f64, f64)> =
            (0..chords).map(|i| (radius * at(i).cos(), radius * at(i).sin())).collect();
        let mut job = inches();
        job.seams.effort = lapwright::model::seam::Effort::Crew;
        let layout = lay(dxf(&[("A-WALL-OTLN", &ring)]).as_bytes(), &job);
        assert_eq!(broken(&layout), Vec::<String>::new(), "{radius}, {chords}");
    }
}

#[test]
fn a_notch_that_opens_in_a_point_is_told_as_wide_as_it_reaches() {
    // A round fixture beside a panel's end touches its foot in a point and goes 1/4 in into it.
    let points = vec![[0.0, 2.7], [0.19, 2.0], [0.25, 1.3], [0.16, 0.5], [0.027, 0.0]];
    let notch = |width: f64, contour: Option<Vec<[f64; 2]>>| Notch {
        side: NotchSide::Bottom,
        left: 0.0,
        width,
        depth: 2.7,
        foot: None,
        around: vec![],
        contour: contour.map(|points| Contour { points, spacing: None }),
    };
    assert_eq!(notch(0.027, Some(points.clone())).told_width(), 0.25);
    assert_eq!(notch(8.0, Some(points)).told_width(), 8.0);
    assert_eq!(notch(0.027, None).told_width(), 0.027);
}
