//! Settings and places that are seldom met together, each on a wall as small as it gets: every rule is
//! kept, and what is laid there is as reckoned by hand.

use lapwright::layout::Layout;
use lapwright::model::house::EdgeKind;
use lapwright::model::seam::Effort;
use lapwright::model::trim::TrimKind;

use crate::small_walls::{job, laid, lengths, of};
use crate::support::{broken, dxf, lay, lay_sets, rect};

/// Low and high ends of the upright sides of one kind at a place.
fn uprights(l: &Layout, kind: EdgeKind, x: f64) -> Vec<(f64, f64)> {
    let edges = l.walls().flat_map(|(_, w)| &w.edges).filter(|e| e.kind == kind);
    let at = edges.filter(|e| (e.from[0] - x).abs() < 0.01 && (e.to[0] - x).abs() < 0.01);
    at.map(|e| (e.from[1].min(e.to[1]), e.from[1].max(e.to[1]))).collect()
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < 0.01
}

#[test]
fn a_joint_of_a_wall_at_an_angle_ends_under_its_gable() {
    // Drawn 240 wide, true 480: the rake rises 60 in 240. The joint at 60 is at 120, its gap 1/2: the rake
    // stands 72 + 119.75 / 4 = 101.9375 high at its left side and 1/8 more at its right.
    let gable = [(0.0, 0.0), (240.0, 0.0), (240.0, 72.0), (120.0, 132.0), (0.0, 72.0)];
    let l = laid(
        &[("A-WALL-OTLN", &gable)],
        "[[movement_joint]]\nelevation = \"elevation\"\nat = 60\n[[angled]]\nwall = \"wall-1\"\nwidth = 480\n",
    );
    for (x, top) in [(119.75, 101.9375), (120.25, 102.0625)] {
        let found = uprights(&l, EdgeKind::Abutment, x);
        assert!(found.len() == 1 && near(found[0].1, top), "{x}: {found:?}");
    }
}

#[test]
fn an_opening_cut_off_on_a_wall_at_an_angle_stays_so() {
    // Drawn 45 to 59 on a wall of 60, twice as wide in truth, with casing of 2: it begins at 2 x 45 - 2, and
    // the casing that the wall's end cuts off ends there.
    let rings: [(&str, &[(f64, f64)]); 2] =
        [("A-WALL-OTLN", &rect(0.0, 0.0, 60.0, 96.0)), ("A-GLAZ", &rect(45.0, 30.0, 59.0, 60.0))];
    let l = laid(&rings, "[[angled]]\nwall = \"wall-1\"\nwidth = 120\n");
    assert!(l.walls().all(|(_, w)| near(w.openings[0].right, 118.0)));
    let text = "[[angled]]\nwall = \"wall-1\"\nwidth = 120\n";
    let mut cased = job(text);
    cased.drawing.casing = 2.0;
    let l = lay(dxf(&rings).as_bytes(), &cased);
    assert_eq!(broken(&l), Vec::<String>::new());
    let (_, w) = l.walls().next().unwrap();
    assert!(near(w.openings[0].left, 88.0) && near(w.openings[0].right, 120.0));
}

#[test]
fn a_first_course_hangs_under_a_zone_whose_foot_lies_off_the_grid() {
    // The butt line below the wall's foot lies 5.34 under it, so the wall as sided reaches down to there.
    let gable = [(0.0, 0.0), (194.759, 0.0), (194.759, 90.666), (94.511, 169.45), (0.0, 90.666)];
    let l = laid(
        &[("A-WALL-OTLN", &gable), ("A-DOOR", &rect(24.467, 0.0, 72.727, 80.0))],
        "[courses]\nhang_below = 12\ndatum = -5.34\n[[zone]]\nname = \"part\"\ncladding = \"shingle\"\n\
         [[zone.region]]\nbottom = 55.56709049689777\n",
    );
    let (_, w) = l.walls().next().unwrap();
    let foot = w.outline.iter().map(|p| p[1]).fold(f64::INFINITY, f64::min);
    assert!(near(foot, -5.34) && near(w.courses[0].bottom, -5.34), "{foot}");
}

#[test]
fn a_joint_beside_which_nothing_is_sided_has_no_channel() {
    // A door from 47 to 93, shingle over it from 24 on: siding stands left of 47 alone.
    let rings: [(&str, &[(f64, f64)]); 2] =
        [("A-WALL-OTLN", &rect(0.0, 0.0, 96.0, 114.0)), ("A-DOOR", &rect(47.0, 0.0, 93.0, 80.0))];
    let joint = "[[movement_joint]]\nelevation = \"elevation\"\nat = 57\n";
    let zone = "[[zone]]\nname = \"part\"\ncladding = \"shingle\"\n[[zone.region]]\nbottom = 24\n";
    let l = laid(&rings, &format!("{joint}{zone}"));
    assert!(uprights(&l, EdgeKind::Abutment, 56.75).is_empty());
    // Over the door, without the shingle, it has two.
    let l = laid(&rings, joint);
    for x in [56.75, 57.25] {
        assert_eq!(uprights(&l, EdgeKind::Abutment, x), [(80.0, 114.0)]);
    }
}

#[test]
fn a_corner_over_a_lower_eave_ends_at_that_eaves_frieze() {
    // The right part is 40 high, the left one 80: the corner between goes from 40 up to the left part's
    // frieze, and the half inch beside the right one's is the board's end.
    let steps = [(0.0, 0.0), (180.0, 0.0), (180.0, 40.0), (70.0, 40.0), (70.0, 80.0), (0.0, 80.0)];
    let l = laid(&[("A-WALL-OTLN", &steps)], "[trim]\nfrieze = 0.5\n");
    assert_eq!(uprights(&l, EdgeKind::OutsideCorner, 70.0), [(40.0, 79.5)]);
    assert_eq!(uprights(&l, EdgeKind::Abutment, 70.0), [(39.5, 40.0)]);
}

#[test]
fn a_slot_begins_at_a_fixture_narrower_than_the_lap() {
    // Panels lap by 5: the first ends 1 past the fixture, which is 2 wide and has 1/4 of room, so its slot is
    // 3 1/4 long; that of the panel under it is as wide as fixture and room.
    let l = laid(
        &[
            ("A-WALL-OTLN", &rect(0.0, 0.0, 200.0, 96.0)),
            ("A-ELEV-OBST", &rect(96.0, 57.0, 98.0, 61.0)),
        ],
        "[product]\nkind = \"vinyl\"\nlap = 5\n[courses]\ndatum = 0\n",
    );
    let slots: Vec<(f64, f64)> = l
        .walls()
        .flat_map(|(_, w)| &w.courses)
        .flat_map(|c| &c.runs)
        .flat_map(|r| &r.pieces)
        .flat_map(|p| p.notches.iter().map(|n| (p.x0 + n.left, p.x0 + n.left + n.width)))
        .filter(|n| n.1 > 98.01)
        .collect();
    assert!(!slots.is_empty());
    assert!(slots.iter().any(|n| near(n.1, 99.0)), "{slots:?}");
    let ends = |x: f64| near(x, 99.0) || near(x, 98.25);
    assert!(slots.iter().all(|n| near(n.0, 95.75) && ends(n.1)), "{slots:?}");
}

#[test]
fn a_window_under_the_room_over_a_roof_shapes_no_notch() {
    // Siding begins 16 over a roof whose top is at 12, from 100 to 200; the first window lies wholly beneath,
    // the second reaches on up through it.
    let l = laid(
        &[
            ("A-WALL-OTLN", &rect(0.0, 0.0, 300.0, 96.0)),
            ("A-ROOF-OTLN", &rect(100.0, 4.0, 200.0, 12.0)),
            ("A-GLAZ", &rect(110.0, 14.0, 120.0, 26.0)),
            ("A-GLAZ", &rect(160.0, 14.0, 172.0, 60.0)),
        ],
        "[courses]\nclear_of_roof = 16\ndatum = 0\n",
    );
    let (_, w) = l.walls().next().unwrap();
    let pieces = w.courses.iter().flat_map(|c| &c.runs).flat_map(|r| &r.pieces);
    let around: Vec<&str> =
        pieces.flat_map(|p| &p.notches).flat_map(|n| &n.around).map(|id| id.as_str()).collect();
    assert!(around.contains(&"wall-W2") && !around.contains(&"wall-W1"), "{around:?}");
}

#[test]
fn what_a_zone_leaves_of_a_window_by_a_hair_is_no_opening() {
    // The zone begins 1/64 in under the window's head.
    let sets = lay_sets(
        dxf(&[
            ("A-WALL-OTLN", &rect(0.0, 0.0, 158.0, 85.0)),
            ("A-GLAZ", &rect(98.0, 9.0, 142.0, 33.1875)),
        ])
        .as_bytes(),
        &job(
            "[[zone]]\nname = \"part\"\n[zone.product]\nkind = \"vinyl\"\n[[zone.region]]\nbottom = 33.172\n",
        ),
    );
    let openings = |l: &Layout| l.walls().map(|(_, w)| w.openings.len()).sum::<usize>();
    let found: Vec<usize> = sets.iter().map(|s| openings(&s.layout)).collect();
    assert_eq!(found, [1, 0]);
    for set in sets.iter() {
        assert_eq!(broken(&set.layout), Vec::<String>::new());
    }
}

#[test]
fn a_quarter_inch_of_sill_beside_a_joint_takes_no_undersill() {
    // The joint's gap goes from 55.5 to 56: of the window's sill 11.75 are left on one hand, 0.25 on the
    // other.
    let l = laid(
        &[
            ("A-WALL-OTLN", &rect(0.0, 0.0, 168.0, 96.0)),
            ("A-GLAZ", &rect(43.75, 14.75, 56.25, 40.0)),
        ],
        "[product]\nkind = \"vinyl\"\n[courses]\ndatum = 0\n[[movement_joint]]\nelevation = \"elevation\"\nat = 55.75\n",
    );
    let under: Vec<f64> = of(&l, TrimKind::FinishTrim)
        .iter()
        .filter(|t| t.opening.is_some())
        .map(|t| t.length)
        .collect();
    assert_eq!(under, [11.75]);
    assert!(lengths(&l, TrimKind::SillChannel).len() == 2);
}

#[test]
fn a_board_along_a_roofs_underside_ends_plumb_with_the_roof() {
    // The underside rises 16 in 80 from 16 at 20: a board 5 wide reaches 5 sqrt(1.04) = 5.099 under it.
    let roof = [(20.0, 16.0), (140.0, 40.0), (140.0, 48.0), (20.0, 24.0)];
    let l = laid(
        &[("A-WALL-OTLN", &rect(0.0, 0.0, 100.0, 120.0)), ("A-ROOF-OTLN", &roof)],
        "[trim]\nrake_frieze = 5\n",
    );
    let sides = uprights(&l, EdgeKind::Abutment, 20.0);
    let low = sides.iter().map(|s| s.0).fold(f64::INFINITY, f64::min);
    assert!(near(low, 10.901), "{sides:?}");
    let bare = l.walls().flat_map(|(_, w)| &w.edges).filter(|e| e.kind == EdgeKind::BareBottom);
    assert_eq!(bare.count(), 0);
}

/// Two elevations that meet: a band over the first from 48 to 54, stone under the second up to `foot`.
fn parted_corner(foot: f64, trim: &str) -> Layout {
    let rings: [(&str, &[(f64, f64)]); 2] = [
        ("A-WALL-OTLN", &rect(0.0, 0.0, 120.0, 96.0)),
        ("A-WALL-OTLN", &rect(1000.0, 0.0, 1120.0, 96.0)),
    ];
    let elevation = |name: &str, x: f64| {
        format!(
            "[[elevation]]\nname = \"{name}\"\nregion = [{:.1}, -200.0, {:.1}, 300.0]\n",
            x - 200.0,
            x + 400.0
        )
    };
    let text = format!(
        "{}{}[[band]]\nelevation = \"FRONT\"\nbottom = 48\ntop = 54\n[[zone]]\nname = \"stone\"\ncladding = \"stone\"\n\
         [[zone.region]]\nelevation = \"RIGHT\"\ntop = {foot:?}\n{trim}",
        elevation("FRONT", 0.0),
        elevation("RIGHT", 1000.0)
    );
    laid(&rings, &text)
}

#[test]
fn siding_round_a_corner_joins_posts_however_little_it_shares_of_their_height() {
    let posts = |l: &Layout| -> Vec<(f64, f64)> {
        let of_corner = of(l, TrimKind::OutsidePost).into_iter();
        let mine = of_corner.filter(|t| t.wall == "front-1" && (t.from[0] - 120.0).abs() < 0.01);
        mine.map(|t| (t.from[1].min(t.to[1]), t.from[1].max(t.to[1]))).collect()
    };
    // From 3/4 under the siding to 1/4 under the soffit: one post where a quarter inch is shared.
    assert_eq!(posts(&parted_corner(47.75, "")), [(-0.75, 95.75)]);
    // Where none is shared there are two, the upper one's foot beside the lower one's top: by 1/2 in, which
    // is no splice though lengths of one post lap by as much.
    assert_eq!(
        posts(&parted_corner(48.0, "[trim]\npost_lap = 0.5\n")),
        [(-0.75, 47.75), (47.25, 95.75)]
    );
}

#[test]
fn a_run_may_end_at_a_post_over_a_block_that_stands_before_it() {
    // The block hides the wall's left end up to 79.5; with its room an eighth of the course is left over it.
    let l = laid(
        &[
            ("A-WALL-OTLN", &rect(136.5, 0.0, 215.0, 147.0)),
            ("A-ELEV-MBLK", &rect(135.0, 68.25, 140.5, 79.5)),
        ],
        "[courses]\ndatum = -0.125\n",
    );
    let (_, w) = l.walls().next().unwrap();
    let course = w.courses.iter().find(|c| near(c.top, 79.875)).unwrap();
    assert_eq!(course.runs.iter().map(|r| r.x0).collect::<Vec<_>>(), [0.0]);
}

#[test]
fn a_run_that_falls_all_along_ends_where_it_is_lowest() {
    // Under a roof that falls 1 in 180, beside a block.
    laid(
        &[
            ("A-WALL-OTLN", &rect(109.0, 0.0, 289.0, 83.0)),
            ("A-ROOF-OTLN", &[(98.0, 11.0), (278.0, 10.0), (278.0, 18.0), (98.0, 19.0)]),
            ("A-ELEV-MBLK", &rect(122.0, 6.0, 130.0, 12.0)),
        ],
        "[courses]\ndatum = 0\n",
    );
}

#[test]
fn a_peak_beside_a_joint_is_ripped_to_its_height() {
    // The joint's gap ends 0.23 left of the peak: with the end gap the last piece begins 0.02 right of it,
    // and what its rake leaves beside its own end is ripped off.
    let gable = [(0.0, 0.0), (176.25, 0.0), (176.25, 88.25), (57.828, 163.781), (0.0, 88.25)];
    let l = laid(
        &[("A-WALL-OTLN", &gable)],
        "[product]\nkind = \"vinyl\"\n[courses]\ndatum = 0\n[[movement_joint]]\nelevation = \"elevation\"\nat = 57.347\n",
    );
    let (_, w) = l.walls().next().unwrap();
    let top = w.courses.last().unwrap();
    let right = top.runs.last().unwrap().pieces.last().unwrap();
    let high = right.outline.iter().map(|p| p[1]).fold(0.0, f64::max);
    assert!(right.rip.as_ref().is_some_and(|r| near(r.to, high - top.bottom)), "{right:?}");
}

#[test]
fn boards_take_turns_on_their_studs() {
    // Boards of 144 reach over 9 studs of 16: four courses near one another take the 0th, 2nd, 4th and 6th
    // of every 9, two studs apart, whatever their windows leave; so there is a layout.
    let mut rings: Vec<(&str, Vec<(f64, f64)>)> =
        vec![("A-WALL-OTLN", rect(0.0, 0.0, 419.173, 127.795).to_vec())];
    for (x0, y0, x1, y1) in [(51.378, 32.638, 60.591, 64.843), (218.032, 32.756, 236.024, 98.425)] {
        rings.push(("A-GLAZ", rect(x0, y0, x1, y1).to_vec()));
    }
    rings.push(("A-DOOR", rect(266.693, 0.0, 311.063, 80.0).to_vec()));
    let rings: Vec<(&str, &[(f64, f64)])> = rings.iter().map(|(l, r)| (*l, &r[..])).collect();
    let mut job =
        job("[boards]\nstuds_apart = 2\n[product]\nkind = \"fiber-cement\"\nend_gap = 0.8125\n");
    job.seams.effort = Effort::Brief;
    let l = lay(dxf(&rings).as_bytes(), &job);
    assert_eq!(broken(&l), Vec::<String>::new());
    assert!(l.bound.conflicts.is_empty(), "{:?}", l.bound.conflicts);
}

#[test]
fn panels_end_on_sixteenths_past_a_fixture_whatever_their_lap() {
    // A lap of 5/16 has its middle between two marks. The fixture ends at 123.2, or mirrored at 180: the
    // panel ends on the mark at or before that, 123 3/16 or 180, and the next one begins 5/16 before its end.
    for (left, right, end) in [(120.0, 123.2, 123.1875), (176.8, 180.0, 180.0)] {
        let l = laid(
            &[
                ("A-WALL-OTLN", &rect(0.0, 0.0, 300.0, 40.0)),
                ("A-ELEV-OBST", &rect(left, 7.0, right, 10.0)),
            ],
            "past_obstacle = 0\n[courses]\ndatum = 0\n[product]\nkind = \"steel\"\nlap = 0.3125\n",
        );
        let runs = l.walls().flat_map(|(_, w)| &w.courses).flat_map(|c| &c.runs);
        let fixed: Vec<_> = runs.filter(|r| !r.fixed.is_empty()).collect();
        assert!(!fixed.is_empty());
        for r in fixed {
            let at = |p: &lapwright::layout::piece::Piece| (p.x1 - end).abs() < 1e-6;
            let i = r.pieces.iter().position(at).expect("a panel ends at the fixture");
            assert!((r.pieces[i + 1].x0 - (end - 0.3125)).abs() < 1e-6, "{:?}", r.pieces[i + 1]);
        }
    }
}

#[test]
fn a_joint_beside_a_corner_board_leaves_no_course_to_meet() {
    // The board takes 3 1/2 in of the wall; to the joint's gap there is less than two end gaps.
    let joint =
        "[product]\nkind = \"wood\"\n[[movement_joint]]\nelevation = \"RIGHT\"\nat = 3.96\n";
    parted_corner(0.0, joint);
}

#[test]
fn flashing_reaches_past_a_side_too_short_for_trim() {
    // A slot in the window's side leaves 0.9 in of jamb over it: the head over it and the sill in the slot
    // go back along one another, and both reach 9 in past the window's side. Sill and head of 42 + 2 x 9, in
    // the slot 7 + 9.
    let shape = [
        (30.0, 20.0),
        (72.0, 20.0),
        (72.0, 43.0),
        (65.0, 43.0),
        (65.0, 47.0),
        (72.0, 47.0),
        (72.0, 47.9),
        (30.0, 47.9),
    ];
    for mirrored in [false, true] {
        let shape = shape.map(|(x, y)| if mirrored { (102.0 - x, y) } else { (x, y) });
        let l = laid(
            &[("A-WALL-OTLN", &rect(0.0, 0.0, 102.0, 80.0)), ("A-GLAZ", &shape)],
            "[courses]\ndatum = 0\n",
        );
        for kind in [TrimKind::SillFlashing, TrimKind::HeadFlashing] {
            let mut found = lengths(&l, kind);
            found.sort_by(f64::total_cmp);
            assert!(found.len() == 2 && near(found[0], 16.0) && near(found[1], 60.0), "{found:?}");
        }
    }
}
