//! Places too narrow for siding get filler boards: reckoned by hand from the drawing beside each. A face of
//! J-channel is 3/4 in and siding shall show by 2 in at least (`courses.least_width`), so that two channels
//! must stand 3 1/2 in apart.

use lapwright::finding::laying::LayingFinding;
use lapwright::layout::Layout;
use lapwright::layout::rule::Rule;
use lapwright::layout::wall::LaidWall;
use lapwright::model::filler::FilledTo;
use lapwright::model::house::EdgeKind;
use lapwright::model::receiver::BareBy;
use lapwright::model::trim::{TrimEnd, TrimKind, TrimPiece};
use lapwright::model::work::{FlashedPlace, WorkStep};
use lapwright::takeoff::quantities;

use crate::faults::{Break, each_is_caught};
use crate::support::{advised, broken, dxf, inches, lay, rect, said};

type Ring<'a> = (&'a str, &'a [(f64, f64)]);

/// Courses of 8 in from 0, laid by the careful crew.
fn laid(rings: &[Ring]) -> Layout {
    let mut job = inches();
    job.courses.datum = Some(0.0);
    job.seams.effort = lapwright::model::seam::Effort::Crew;
    let layout = lay(dxf(rings).as_bytes(), &job);
    assert_eq!(broken(&layout), Vec::<String>::new());
    layout
}

fn wall(l: &Layout) -> &LaidWall {
    &l.elevations[0].walls[0]
}

fn of(l: &Layout, kind: TrimKind) -> Vec<&TrimPiece> {
    l.trims.iter().filter(|t| t.kind == kind).collect()
}

fn places(l: &Layout) -> Vec<[f64; 4]> {
    wall(l).fillers.iter().map(|f| f.place).collect()
}

/// No piece of siding lies within a box.
fn is_free(l: &Layout, [x0, y0, x1, y1]: [f64; 4]) -> bool {
    l.pieces()
        .flat_map(|(.., p)| &p.outline)
        .all(|q| q[0] <= x0 || q[0] >= x1 || q[1] <= y0 || q[1] >= y1)
}

/// Two windows of 30 by 48 in so far apart on a wall of 300 by 108.
fn windows_apart(by: f64) -> Layout {
    laid(&[
        ("A-WALL-OTLN", &rect(0.0, 0.0, 300.0, 108.0)),
        ("A-GLAZ", &rect(50.0, 36.0, 80.0, 84.0)),
        ("A-GLAZ", &rect(80.0 + by, 36.0, 110.0 + by, 84.0)),
    ])
}

pub(crate) fn near_windows() -> Layout {
    windows_apart(1.0)
}

#[test]
fn between_two_windows_an_inch_apart_stands_a_board_and_no_siding() {
    // 1 in is less than 3 1/2: a board of 1 by 48 in. Gross 300 x 108 = 32400 sq in = 225 sq ft, windows
    // 2 x 30 x 48 = 2880 = 20, the board 48 sq in = 1/3: net 204 2/3.
    let l = near_windows();
    assert_eq!(places(&l), [[80.0, 36.0, 81.0, 84.0]]);
    let boards = of(&l, TrimKind::Filler);
    let [b] = boards[..] else { panic!("{boards:?}") };
    assert_eq!((b.mark.as_str(), b.width, b.length), ("FB1", Some(1.0), 48.0));
    assert!(is_free(&l, [80.0, 36.0, 81.0, 84.0]));
    let w = wall(&l);
    assert!((w.net_area - (225.0 - 20.0 - 1.0 / 3.0)).abs() < 1e-6, "{}", w.net_area);
    let [bare] = w.bare.as_slice() else { panic!("{:?}", w.bare) };
    assert!(bare.by == BareBy::Filler && (bare.area - 1.0 / 3.0).abs() < 1e-6);
    // The opening is as wide as it is drawn, and is flashed so; no channel stands in the slot.
    assert_eq!((w.openings[0].left, w.openings[0].right), (50.0, 80.0));
    assert_eq!(of(&l, TrimKind::JambChannel).len(), 2);
    // Heads go over both and the board: 31 and 30 in, with a face of 3/4 past the outer ends; where they
    // meet, the first laps over the second by a face. Caps likewise, 1 in past the outer ends.
    let lengths = |kind| {
        let mut all: Vec<f64> = of(&l, kind).iter().map(|t| t.length).collect();
        all.sort_by(f64::total_cmp);
        all
    };
    assert_eq!(lengths(TrimKind::HeadChannel), [30.75, 32.5]);
    assert_eq!(lengths(TrimKind::SillChannel), [30.75, 32.5]);
    assert_eq!(lengths(TrimKind::DripCap), [31.0, 32.75]);
    let laps = |t: &&TrimPiece| t.opening.is_some() && t.ends.contains(&TrimEnd::Lap(0.75));
    assert_eq!(l.trims.iter().filter(laps).count(), 3);
    // The two are flashed as one opening of 61 in: 9 in past both jambs under the sill and over the head, and
    // two jambs of 48 + 8 1/2 + 8 1/2 in.
    assert_eq!(lengths(TrimKind::SillFlashing), [79.0]);
    assert_eq!(lengths(TrimKind::HeadFlashing), [79.0]);
    assert_eq!(lengths(TrimKind::JambFlashing), [65.0, 65.0]);
    crate::recount::check(&crate::recount::written(&l), "mulled windows");
    let faults: [(&str, Rule, Break); 1] =
        [("jamb flashing at a mull", Rule::OpeningFlashing, |l| {
            let jamb = l.trims.iter().find(|t| t.kind == TrimKind::JambFlashing).unwrap().clone();
            l.trims.push(TrimPiece { mark: "FJ9".into(), ..jamb });
        })];
    each_is_caught(&l, &faults);
    // One stock length, and a spare one.
    let takeoff = quantities(&l);
    let line = takeoff.line("filler-board").unwrap();
    assert_eq!((line.order, line.length), (1.0, Some(48.0)));
}

#[test]
fn the_cure_is_named_with_its_size_and_place() {
    let l = near_windows();
    let found = l.findings.iter().find(|f| f.code().word() == "filler-board").unwrap();
    let words = said(found);
    assert!(words.contains("FB1 (1\" wide, 4'-0\" long, between wall-W1 and wall-W2)"), "{words}");
    assert!(advised(found).contains("wrap it in coil"), "{}", advised(found));
    assert!(found.at.is_some());
}

#[test]
fn siding_goes_between_windows_from_three_and_a_half_inches_on() {
    assert_eq!(wall(&windows_apart(3.4375)).fillers.len(), 1);
    let l = windows_apart(3.5);
    assert!(wall(&l).fillers.is_empty() && of(&l, TrimKind::Filler).is_empty());
    // Less a gap of 1/4 in at both ends: 3 in.
    assert!(l.pieces().any(|(.., p)| (p.length - 3.0).abs() < 1e-9));
    assert!(!l.findings.iter().any(|f| f.code().word() == "filler-board"));
}

#[test]
fn windows_of_two_heights_take_the_board_into_the_shorter_frame() {
    // The left window from 36 to 84, the right one from 44 to 76: the board is as high as the right one,
    // and above and below it the left one's jamb has its channel.
    let l = laid(&[
        ("A-WALL-OTLN", &rect(0.0, 0.0, 300.0, 108.0)),
        ("A-GLAZ", &rect(50.0, 36.0, 80.0, 84.0)),
        ("A-GLAZ", &rect(82.0, 44.0, 112.0, 76.0)),
    ]);
    assert_eq!(places(&l), [[80.0, 44.0, 82.0, 76.0]]);
    let right: Vec<f64> = wall(&l)
        .edges
        .iter()
        .filter(|e| e.kind == EdgeKind::Jamb && e.from[0] == 80.0)
        .map(|e| (e.to[1] - e.from[1]).abs())
        .collect();
    assert_eq!(right.iter().sum::<f64>(), 48.0 - 32.0);
}

#[test]
fn staggered_windows_take_a_board_as_high_as_one_of_them() {
    // Left 36 to 76, right 44 to 84, 1 in apart: neither covers the other. The board goes along the whole
    // jamb of one.
    let l = laid(&[
        ("A-WALL-OTLN", &rect(0.0, 0.0, 300.0, 108.0)),
        ("A-GLAZ", &rect(50.0, 36.0, 80.0, 76.0)),
        ("A-GLAZ", &rect(81.0, 44.0, 111.0, 84.0)),
    ]);
    let [f] = wall(&l).fillers.as_slice() else { panic!("{:?}", wall(&l).fillers) };
    assert_eq!((f.width, f.length), (1.0, 40.0));
    assert!(is_free(&l, f.place));
}

#[test]
fn a_window_near_the_corner_post_has_a_board_up_to_it() {
    // The post's set-back is 0 here, its face 1 in (3/4 in of pocket and the gap): with a channel and 2 in
    // of siding 3 3/4 in is the least.
    let at = |x: f64| {
        laid(&[
            ("A-WALL-OTLN", &rect(0.0, 0.0, 300.0, 108.0)),
            ("A-GLAZ", &rect(x, 36.0, x + 30.0, 84.0)),
        ])
    };
    let l = at(3.0);
    assert_eq!(places(&l), [[0.0, 36.0, 3.0, 84.0]]);
    assert!(is_free(&l, [0.0, 36.0, 3.0, 84.0]));
    let found = l.findings.iter().find(|f| f.code().word() == "filler-board").unwrap();
    assert!(said(found).contains("between the outside corner and wall-W1"), "{}", said(found));
    assert!(wall(&at(3.75)).fillers.is_empty());
}

/// A wall of 300 in with a window from 4 in off the corner, whose post holds siding 2 in off it.
pub(crate) fn window_beside_a_post() -> Layout {
    let job = "[drawing]\nunit = \"inch\"\n[courses]\ndatum = 0\n[seams]\neffort = \"crew\"\n\
        [product]\noutside_post_set_back = 2\n";
    let job = lapwright::job::file::parse(job, "job").unwrap();
    let rings: [Ring; 2] =
        [("A-WALL-OTLN", &rect(0.0, 0.0, 300.0, 108.0)), ("A-GLAZ", &rect(4.0, 36.0, 34.0, 84.0))];
    lay(dxf(&rings).as_bytes(), &job)
}

#[test]
fn the_frame_round_a_board_at_a_post_ends_at_its_pocket() {
    // 2 in are left between the pocket's bottom at 2 and the window at 4: a board. Head, sill, cap and
    // undersill trim go from 2 to the window's right side at 34, where head and sill reach on by a face of
    // 3/4 and the cap by 1 in: 32 3/4, 32 3/4, 33 and 32 in. None runs into the post.
    let l = window_beside_a_post();
    assert_eq!(broken(&l), Vec::<String>::new());
    assert_eq!(places(&l), [[2.0, 36.0, 4.0, 84.0]]);
    for (kind, length) in [
        (TrimKind::HeadChannel, 32.75),
        (TrimKind::SillChannel, 32.75),
        (TrimKind::DripCap, 33.0),
        (TrimKind::FinishTrim, 32.0),
    ] {
        let mine: Vec<&TrimPiece> =
            of(&l, kind).into_iter().filter(|t| t.opening.is_some()).collect();
        let [t] = mine[..] else { panic!("{kind:?}: {mine:?}") };
        assert_eq!((t.from[0], t.length, &t.ends[0]), (2.0, length, &TrimEnd::Square), "{kind:?}");
    }
}

/// Faults of it.
pub(crate) const AT_POST: [(&str, Rule, Break); 1] =
    [("a head channel run into the post", Rule::OpeningChannels, |l| {
        let mut heads = l.trims.iter_mut().filter(|t| t.kind == TrimKind::HeadChannel);
        let t = heads.next().unwrap();
        (t.from[0], t.to[0]) = (t.from[0] - 0.75, t.to[0] - 0.75);
    })];

#[test]
fn a_head_near_the_soffit_has_a_board_over_it() {
    // From the head at 106 to the soffit at 108: 2 in, less than 3 1/2.
    let l = laid(&[
        ("A-WALL-OTLN", &rect(0.0, 0.0, 300.0, 108.0)),
        ("A-GLAZ", &rect(50.0, 60.0, 80.0, 106.0)),
    ]);
    let [f] = wall(&l).fillers.as_slice() else { panic!("{:?}", wall(&l).fillers) };
    assert_eq!((f.place, f.width, f.length), ([50.0, 106.0, 80.0, 108.0], 2.0, 30.0));
    assert_eq!(f.between.each_ref().map(|s| s.to), [FilledTo::Opening, FilledTo::Eave]);
    // No head channel and no cap: siding meets no head.
    assert!(of(&l, TrimKind::HeadChannel).is_empty() && of(&l, TrimKind::DripCap).is_empty());
}

/// 1.643 in stand between the head at 91.25 in and a frieze board of 2.107 in under a soffit at 95. The board
/// goes on up to the frieze; the frame has one sill, 32 in and a 3/4 in face at each end, and no second one in
/// the 0.0004 in that rounding to 1/1024 in may leave.
#[test]
fn a_head_near_a_frieze_board_off_the_grid_has_one_sill() {
    let mut job = inches();
    (job.courses.datum, job.trim.frieze) = (Some(0.0), 2.107);
    let window = rect(100.0, 40.0, 132.0, 91.25);
    let wall = rect(0.0, 0.0, 240.0, 95.0);
    let l = lay(dxf(&[("A-WALL-OTLN", &wall), ("A-GLAZ", &window)]).as_bytes(), &job);
    assert_eq!(broken(&l), Vec::<String>::new());
    let sills: Vec<f64> = of(&l, TrimKind::SillChannel).iter().map(|t| t.length).collect();
    assert_eq!(sills, [33.5]);
}

/// Stone 14 1/4 in high along 15 ft of a wall, siding 304 mm over it: from 26.2185 in, a course line at 27.75. The
/// 1.53 in between take a skirt board, and no sliver of siding stays under it in the 0.0003 in that rounding to
/// 1/1024 in leaves: the field is one ring.
#[test]
fn no_sliver_stays_between_a_clearance_off_the_grid_and_a_skirt_board() {
    let mut job = inches();
    (job.courses.datum, job.courses.clear_of_ledge) = (Some(3.75), Some(304.0 / 25.4));
    // 1.6063 in.
    job.product.outside_post_set_back = Some(40.8 / 25.4);
    let wall_of = rect(0.0, 0.0, 240.0, 96.0);
    let stone = rect(0.0, 0.0, 180.0, 14.25);
    let l = lay(dxf(&[("A-WALL-OTLN", &wall_of), ("A-WALL-BASE", &stone)]).as_bytes(), &job);
    assert_eq!(wall(&l).fillers.len(), 1, "{:?}", wall(&l).fillers);
    assert_eq!(wall(&l).field.len(), 1, "{:?}", wall(&l).field);
    assert_eq!(broken(&l), Vec::<String>::new());
}

#[test]
fn windows_over_one_another_have_a_board_between_them() {
    let l = laid(&[
        ("A-WALL-OTLN", &rect(0.0, 0.0, 300.0, 108.0)),
        ("A-GLAZ", &rect(50.0, 20.0, 80.0, 52.0)),
        ("A-GLAZ", &rect(50.0, 54.0, 80.0, 90.0)),
    ]);
    assert_eq!(places(&l), [[50.0, 52.0, 80.0, 54.0]]);
    // The jambs go on beside the board: 32 + 2 + 36 in on each hand.
    let jambs = wall(&l).edges.iter().filter(|e| e.kind == EdgeKind::Jamb);
    assert_eq!(jambs.map(|e| (e.to[1] - e.from[1]).abs()).sum::<f64>(), 140.0);
}

#[test]
fn what_fillers_leave_too_narrow_is_filled_as_well() {
    // Two windows 1 in apart, both 2 in under the soffit: a board between, and boards over all 61 in.
    let l = laid(&[
        ("A-WALL-OTLN", &rect(0.0, 0.0, 300.0, 108.0)),
        ("A-GLAZ", &rect(50.0, 60.0, 80.0, 106.0)),
        ("A-GLAZ", &rect(81.0, 60.0, 111.0, 106.0)),
    ]);
    assert!(is_free(&l, [50.0, 60.0, 111.0, 108.0]));
    let area: f64 = wall(&l).fillers.iter().map(|f| f.width * f.length).sum();
    assert!((area - (46.0 + 61.0 * 2.0)).abs() < 1e-6, "{area}");
}

#[test]
fn a_strip_of_a_quarter_inch_names_its_cure() {
    // The soffit 1/2 in over the course line at 104: 1/4 in is left.
    let l = laid(&[("A-WALL-OTLN", &rect(0.0, 0.0, 300.0, 104.5))]);
    let found = l.findings.iter().find(|f| f.code().word() == "strip-thin").unwrap();
    assert!(said(found).contains("1/4\" high"), "{}", said(found));
    assert!(advised(found).contains("a filler or frieze board 1/2\" high"), "{}", advised(found));
}

#[test]
fn boards_leave_no_less_to_show_than_panels() {
    // Boards butt against casings without a face: 2 in apart there is room, under it none.
    let job = "[drawing]\nunit = \"inch\"\n[product]\nkind = \"fiber-cement\"\ncorner_board = 0\n\
        inside_corner_board = 0\n[seams]\neffort = \"crew\"\n";
    let job = lapwright::job::file::parse(job, "job").unwrap();
    for (by, fillers) in [(1.5, 1), (2.5, 0)] {
        let l = lay(
            dxf(&[
                ("A-WALL-OTLN", &rect(0.0, 0.0, 300.0, 108.0)),
                ("A-GLAZ", &rect(50.0, 36.0, 80.0, 84.0)),
                ("A-GLAZ", &rect(80.0 + by, 36.0, 110.0 + by, 84.0)),
            ])
            .as_bytes(),
            &job,
        );
        assert_eq!(broken(&l), Vec::<String>::new());
        assert_eq!(wall(&l).fillers.len(), fillers);
    }
}

#[test]
fn the_least_width_is_the_jobs() {
    let mut job = inches();
    job.courses.least_width = 4.0;
    let rings: [Ring; 3] = [
        ("A-WALL-OTLN", &rect(0.0, 0.0, 300.0, 108.0)),
        ("A-GLAZ", &rect(50.0, 36.0, 80.0, 84.0)),
        ("A-GLAZ", &rect(85.0, 36.0, 115.0, 84.0)),
    ];
    let l = lay(dxf(&rings).as_bytes(), &job);
    // 5 in is less than 5 1/2.
    assert_eq!(places(&l), [[80.0, 36.0, 85.0, 84.0]]);
    let told = l.findings.iter().find_map(|f| match &f.kind {
        lapwright::finding::FindingKind::Laying(LayingFinding::FillerBoard { least, .. }) => {
            Some(*least)
        }
        _ => None,
    });
    assert_eq!(told, Some(4.0));
}

/// Faults of two windows an inch apart.
pub(crate) const NARROW: [(&str, Rule, Break); 6] = [
    ("siding where the trim leaves too little of it", Rule::NarrowPlaces, |l| {
        l.job.courses.least_width = 60.0
    }),
    ("a filler wider than any need", Rule::NarrowPlaces, |l| {
        l.job.courses.least_width = 0.0;
        l.job.trim.channel_face = 0.25;
    }),
    ("a filler without its board", Rule::NarrowPlaces, |l| {
        l.trims.retain(|t| t.kind != TrimKind::Filler)
    }),
    ("a board of another width", Rule::NarrowPlaces, |l| {
        l.trims.iter_mut().filter(|t| t.kind == TrimKind::Filler).for_each(|t| t.width = Some(0.5))
    }),
    ("a filler over glass", Rule::NarrowPlaces, |l| {
        let f = &mut l.elevations[0].walls[0].fillers[0];
        (f.place[0], f.place[2]) = (78.0, 79.0);
    }),
    ("fillers told as more than they cover", Rule::NarrowPlaces, |l| {
        l.elevations[0].walls[0].bare[0].area += 1.0
    }),
];

#[test]
fn faults_of_fillers_are_caught() {
    each_is_caught(&near_windows(), &NARROW);
    each_is_caught(&window_beside_a_post(), &AT_POST);
}

/// A wall of 36 ft by 220 in with a level roof before all of it, up to a height.
fn over_roof(top: f64) -> Layout {
    laid(&[
        ("A-WALL-OTLN", &rect(0.0, 0.0, 432.0, 220.0)),
        ("A-ROOF-OTLN", &rect(-12.0, 96.0, 444.0, top)),
    ])
}

#[test]
fn a_thin_strip_over_a_level_roof_is_a_skirt_board() {
    // Courses of 8 in from 0. Siding keeps 1/2 in over a roof whose top is at 126, and panels 1/4 in more in their
    // channel: of the course from 120 to 128 a strip of 1 1/4 in would be left, under the least of 2. A board of
    // 1 1/2 in closes 126 1/2 to 128, from one corner to the other: 36 ft.
    let l = over_roof(126.0);
    assert_eq!(places(&l), [[0.0, 126.5, 432.0, 128.0]]);
    let filler = &wall(&l).fillers[0];
    assert_eq!(filler.between.clone().map(|s| s.to), [FilledTo::LowerRoof, FilledTo::Course]);
    // Siding starts whole over it, on a starter, and no channel stands on the roof.
    let over = |p: &&lapwright::layout::piece::Piece| p.outline.iter().all(|q| q[1] > 127.0);
    assert!(
        l.pieces()
            .map(|(.., p)| p)
            .filter(over)
            .all(|p| p.rip.as_ref().is_none_or(|r| r.from == 0.0))
    );
    assert!(of(&l, TrimKind::RoofChannel).is_empty());
    let starts = of(&l, TrimKind::Starter);
    assert!(starts.iter().any(|t| t.from[1] == 128.0), "{starts:?}");
    // Gross 660 sq ft; 90 behind the roof and 432 x 1/2 in = 1.5 over it bare; the board 432 x 1.5 in = 4.5.
    assert!((wall(&l).net_area - (660.0 - 90.0 - 1.5 - 4.5)).abs() < 1e-3);
    // The flashing behind it is the roof's still: 36 ft, and 4 in round both corners.
    let line = |id: &str| quantities(&l).line(id).map(|l| (l.net, l.order));
    assert_eq!(line("roof-flashing"), Some((36.0, 0.0)));
    assert_eq!(line("ledge-flashing"), None);
    crate::recount::check(&crate::recount::written(&l), "skirt board");
    let found = l.findings.iter().find(|f| f.code().word() == "filler-board").unwrap();
    let words = said(found);
    assert!(
        words.contains(
            "1 1/2\" wide, 36'-0\" long, between the lower roof and the first whole course"
        ),
        "{words}"
    );
    assert!(words.contains("gets a skirt board: FB1, FB2 and FB3 ("), "{words}");
    assert!(advised(found).contains("starts whole on it"), "{}", advised(found));
    // It is flashed as over the roof that it stands on, in the order of work too, and drawn as a detail.
    let flashed = |place: FlashedPlace| {
        l.work
            .walls
            .iter()
            .flat_map(|w| &w.steps)
            .any(|s| matches!(s, WorkStep::Barrier { flashing } if flashing.contains(&place)))
    };
    assert!(flashed(FlashedPlace::LevelRoof) && !flashed(FlashedPlace::Ledge));
    assert!(!l.findings.iter().any(|f| f.code().word() == "strip-thin"));
    // An inch lower 2 1/4 in are left, and siding goes down to the roof.
    assert!(wall(&over_roof(125.0)).fillers.is_empty());
    // On the line, none is left.
    assert!(wall(&over_roof(127.5)).fillers.is_empty());
    let faults: [(&str, Rule, Break); 2] = [
        ("a skirt board that ends beside a course line", Rule::NarrowPlaces, |l| {
            let f = &mut l.elevations[0].walls[0].fillers[0];
            (f.place[3], f.width) = (f.place[3] + 0.25, f.width + 0.25);
        }),
        ("a skirt board that no thin strip asks for", Rule::NarrowPlaces, |l| {
            let f = &mut l.elevations[0].walls[0].fillers[0];
            (f.place[3], f.width) = (f.place[3] + 8.0, f.width + 8.0);
        }),
    ];
    each_is_caught(&l, &faults);
}

#[test]
fn a_thin_strip_over_a_ledge_is_a_skirt_board() {
    // Stone up to 22 1/2 in before half of the wall: 24 less that and 1/4 in leaves 1 1/4 in of the third course.
    let l = laid(&[
        ("A-WALL-OTLN", &rect(0.0, 0.0, 300.0, 108.0)),
        ("A-WALL-BASE", &rect(0.0, 0.0, 150.0, 22.5)),
    ]);
    let [x0, y0, x1, y1] = places(&l)[0];
    assert_eq!((x0, y0, x1, y1), (0.0, 22.5, 150.0, 24.0));
    assert_eq!(wall(&l).fillers[0].between[0].to, FilledTo::BareBelow);
    crate::recount::check(&crate::recount::written(&l), "skirt board over stone");
}

#[test]
fn a_thin_strip_over_a_head_names_the_board_that_closes_it() {
    // One panel a course. The head at 94 in: over it 96 less 94 and 1/4 in leaves 1 3/4 in. A board 2 in high, as long as the head.
    let l = laid(&[
        ("A-WALL-OTLN", &rect(0.0, 0.0, 148.0, 120.0)),
        ("A-GLAZ", &rect(50.0, 46.0, 86.0, 94.0)),
    ]);
    let found = l.findings.iter().find(|f| f.code().word() == "notch-thin").unwrap();
    let words = said(found);
    let board = "(1 3/4\" over it; a board 2\" high and 36\" long at wall-W1 closes it)";
    assert!(words.contains(board), "{words}");
}

#[test]
fn windows_that_touch_are_flashed_as_one_and_others_by_themselves() {
    // Three units of 30 by 48 in side by side: 90 + 18 = 108 in under and over them, two jambs.
    let row = |third: (f64, f64)| {
        laid(&[
            ("A-WALL-OTLN", &rect(0.0, 0.0, 300.0, 108.0)),
            ("A-GLAZ", &rect(50.0, 36.0, 80.0, 84.0)),
            ("A-GLAZ", &rect(80.0, 36.0, 110.0, 84.0)),
            ("A-GLAZ", &rect(110.0, third.0, 140.0, third.1)),
        ])
    };
    let lengths = |l: &Layout, kind| of(l, kind).iter().map(|t| t.length).collect::<Vec<f64>>();
    let l = row((36.0, 84.0));
    crate::recount::check(&crate::recount::written(&l), "touching windows");
    assert_eq!(lengths(&l, TrimKind::SillFlashing), [108.0]);
    assert_eq!(lengths(&l, TrimKind::JambFlashing), [65.0, 65.0]);
    // The third 8 in higher is an opening by itself: 60 + 18 and 30 + 18.
    let l = row((44.0, 92.0));
    assert_eq!(lengths(&l, TrimKind::SillFlashing), [78.0, 48.0]);
    assert_eq!(of(&l, TrimKind::JambFlashing).len(), 4);
}

/// Two windows of four sides edge to edge, their sills 40 in up, the outer jambs 30 in long, the inner ones 60.
fn joined_units() -> Layout {
    let mut job = inches();
    job.courses.datum = Some(0.0);
    job.seams.effort = lapwright::model::seam::Effort::Crew;
    job.estimate.sealant = true;
    let rings: [Ring; 3] = [
        ("A-WALL-OTLN", &rect(0.0, 0.0, 260.0, 136.0)),
        ("A-GLAZ", &[(80.0, 40.0), (130.0, 40.0), (130.0, 100.0), (80.0, 70.0)]),
        ("A-GLAZ", &[(130.0, 40.0), (180.0, 40.0), (180.0, 70.0), (130.0, 100.0)]),
    ];
    let layout = lay(dxf(&rings).as_bytes(), &job);
    assert_eq!(broken(&layout), Vec::<String>::new());
    layout
}

#[test]
fn units_joined_by_a_mullion_have_nothing_along_the_joint_and_are_asked_about() {
    let l = joined_units();
    assert!(places(&l).is_empty());
    // Channels and flashing at the outer jambs alone: 30 in, and 8 1/2 in past both ends.
    let lengths = |kind| of(&l, kind).iter().map(|t| t.length).collect::<Vec<_>>();
    assert_eq!(of(&l, TrimKind::JambChannel).len(), 2);
    assert_eq!(lengths(TrimKind::JambFlashing), [47.0, 47.0]);
    // Sealant behind an outer jamb and a sloped head of each: 30 and the square root of 50 x 50 + 30 x 30 in.
    let sealant = l.takeoff.iter().find(|line| line.id == *"sealant").unwrap();
    let bead = 2.0 * (30.0 + 3400.0_f64.sqrt());
    assert!((sealant.length.unwrap() - bead).abs() < 0.01, "{sealant:?}");
    let found = l.findings.iter().find(|f| f.code().word() == "openings-joined").unwrap();
    let words = said(found);
    assert!(words.contains("joined by a mullion: wall-W1 and wall-W2"), "{words}");
    assert!(advised(found).contains("mullion cover"), "{}", advised(found));
    let faults: [(&str, Rule, Break); 1] =
        [("flashing along the joint of units", Rule::OpeningFlashing, |l| {
            let jamb = l.trims.iter().find(|t| t.kind == TrimKind::JambFlashing).unwrap().clone();
            l.trims.push(TrimPiece { mark: "FJ9".into(), ..jamb });
        })];
    each_is_caught(&l, &faults);
    // With a space between them, a filler board closes it, and with more room there is siding.
    for by in [1.0, 4.0] {
        let l = windows_apart(by);
        assert!(!l.findings.iter().any(|f| f.code().word() == "openings-joined"), "{by}");
    }
}

#[test]
fn the_frieze_board_that_is_told_leaves_no_strip_under_the_soffit() {
    // 97 1/2 in of wall, courses of 8 from 0: 1 1/2 in of the thirteenth are left. A frieze board as high takes
    // its place, and of 13 panels 12 are left.
    let with = |frieze: f64| {
        let mut job = inches();
        (job.courses.datum, job.trim.frieze) = (Some(0.0), frieze);
        lay(dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 140.0, 97.5))]).as_bytes(), &job)
    };
    let l = with(0.0);
    let found = l.findings.iter().find(|f| f.code().word() == "strip-thin").unwrap();
    assert!(advised(found).contains("frieze board 1 1/2\" high"), "{}", advised(found));
    let cured = with(1.5);
    assert!(!cured.findings.iter().any(|f| f.code().word() == "strip-thin"));
    assert_eq!((l.panels.len(), cured.panels.len()), (13, 12));
    assert_eq!(broken(&cured), Vec::<String>::new());
}
