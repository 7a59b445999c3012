//! Places where two things of a drawing end within a hair of each other, or one clears away what the other
//! stands on, each on a wall as small as it gets: every rule is kept, and what is laid is as reckoned by hand.

use lapwright::layout::Layout;
use lapwright::model::house::EdgeKind;
use lapwright::model::trim::TrimKind;

use crate::small_walls::{job, laid, lengths, of};
use crate::support::{broken, dxf, lay_sets, rect};

/// Low and high ends of the upright sides of one kind at a place.
fn uprights(l: &Layout, kind: EdgeKind, x: f64) -> Vec<(f64, f64)> {
    let edges = l.walls().flat_map(|(_, w)| &w.edges).filter(|e| e.kind == kind);
    let at = edges.filter(|e| (e.from[0] - x).abs() < 0.01 && (e.to[0] - x).abs() < 0.01);
    at.map(|e| (e.from[1].min(e.to[1]), e.from[1].max(e.to[1]))).collect()
}

/// Whether spans are these within a hundredth.
fn are(found: &[(f64, f64)], wanted: &[(f64, f64)]) -> bool {
    let near =
        |(a, b): (&(f64, f64), &(f64, f64))| (a.0 - b.0).abs() < 0.01 && (a.1 - b.1).abs() < 0.01;
    found.len() == wanted.len() && found.iter().zip(wanted).all(near)
}

#[test]
fn a_surround_whose_head_a_zone_leaves_a_hair_of_runs_up_its_jamb() {
    // The surround stands from 85.5 to 126.5 and up to 80.5. The zone ends at 85.875: over its 3/8 in of the
    // head goes no board, so that the jamb's runs from the zone's foot, 36, through to 80.5.
    let rings: [(&str, &[(f64, f64)]); 3] = [
        ("A-WALL-OTLN", &rect(0.0, 0.0, 200.0, 100.0)),
        ("A-DOOR", &rect(86.0, 0.0, 126.0, 80.0)),
        ("A-WALL-SHNG", &rect(10.0, 36.0, 85.875, 96.0)),
    ];
    let zone =
        "[[zone]]\nname = \"part\"\nlayers = [\"A-WALL-SHNG\"]\n[zone.product]\nkind = \"vinyl\"\n";
    let sets = lay_sets(dxf(&rings).as_bytes(), &job(&format!("[trim]\nsurround = 0.5\n{zone}")));
    for set in sets.iter() {
        assert_eq!(broken(&set.layout), Vec::<String>::new());
    }
    let part = sets.iter().find(|s| s.layout.zone.is_some()).unwrap();
    assert_eq!(lengths(&part.layout, TrimKind::Surround), [44.5]);
}

#[test]
fn a_post_takes_its_strip_up_to_a_roof_that_leans_less_than_a_mark() {
    // The underside falls 1 in 180, over the left wall by 11/180 = 0.061: at the strip's inner side, 2 in before
    // the corner, it stands 11 - 9/180 = 10.95 high. Nothing is left past that line.
    let rings: [(&str, &[(f64, f64)]); 3] = [
        ("A-WALL-OTLN", &rect(0.0, 0.0, 109.0, 60.0)),
        ("A-WALL-OTLN", &rect(109.0, 0.0, 289.0, 83.0)),
        ("A-ROOF-OTLN", &[(98.0, 11.0), (278.0, 10.0), (278.0, 18.0), (98.0, 19.0)]),
    ];
    let posts =
        "[product]\nkind = \"steel\"\noutside_post_set_back = 2\ninside_post_set_back = 2\n";
    let l = laid(&rings, posts);
    let (_, left) = l.walls().next().unwrap();
    let farthest = left.field.iter().flatten().map(|p| p[0]).fold(0.0, f64::max);
    assert_eq!(farthest, 107.0);
    let beneath = left.field.iter().flatten().filter(|p| p[0] == 107.0 && p[1] < 12.0);
    let top = beneath.map(|p| p[1]).fold(0.0, f64::max);
    assert!((top - 10.95).abs() < 0.005, "{top}");
}

/// Two elevations that meet, 97 and 66 high, with bands.
fn banded_corner() -> Layout {
    let rings: [(&str, &[(f64, f64)]); 2] = [
        ("A-WALL-OTLN", &rect(0.0, 0.0, 120.0, 97.0)),
        ("A-WALL-OTLN", &rect(1000.0, 0.0, 1120.0, 66.0)),
    ];
    let mut text = String::new();
    for (name, x) in [("FRONT", 0.0), ("RIGHT", 1000.0)] {
        let (left, right) = (x - 200.0, x + 400.0);
        text += &format!(
            "[[elevation]]\nname = \"{name}\"\nregion = [{left:.1}, -200.0, {right:.1}, 300.0]\n"
        );
    }
    for (name, low, high) in [("FRONT", 56, 65), ("RIGHT", 46, 52)] {
        text += &format!("[[band]]\nelevation = \"{name}\"\nbottom = {low}\ntop = {high}\n");
    }
    laid(&rings, &text)
}

#[test]
fn a_post_goes_on_over_bands_that_part_a_corner_at_different_heights() {
    // Siding on the first wall from 0 to 56 and from 65 to 97, on the second to 46 and from 52 to 66: each
    // overlaps the next, so one post stands from 3/4 under the first to 1/4 under the soffit.
    let l = banded_corner();
    let posts = of(&l, TrimKind::OutsidePost).into_iter();
    let mine = posts.filter(|t| t.wall == "front-1" && (t.from[0] - 120.0).abs() < 0.01);
    let heights: Vec<(f64, f64)> =
        mine.map(|t| (t.from[1].min(t.to[1]), t.from[1].max(t.to[1]))).collect();
    assert_eq!(heights, [(-0.75, 96.75)]);
    assert_eq!(l.corners.iter().filter(|c| c.id.starts_with("front-1/right")).count(), 1);
}

#[test]
fn a_band_that_ends_a_hair_inside_a_wall_ends_with_it() {
    // A band from 1/32 in off the wall's left side on leaves no strip of siding there, and one that begins
    // 1/32 in before its right side is none; so with its foot.
    for kind in ["wood", "vinyl"] {
        let sides = |band: &str| {
            let text = format!("[product]\nkind = \"{kind}\"\n{band}");
            let l = laid(&[("A-WALL-OTLN", &rect(0.0, 0.0, 120.0, 96.0))], &text);
            l.walls().flat_map(|(_, w)| w.edges.clone()).collect::<Vec<_>>()
        };
        let band = |bottom: f64, more: &str| {
            sides(&format!(
                "[[band]]\nelevation = \"elevation\"\nbottom = {bottom}\ntop = 54\n{more}"
            ))
        };
        assert_eq!(band(48.0, "left = 0.03125\n"), band(48.0, ""));
        assert_eq!(band(48.0, "left = 0.008\n"), band(48.0, ""));
        assert_eq!(band(48.0, "left = 119.96875\n"), sides(""));
        assert_eq!(band(0.03125, ""), band(0.0, ""));
        // A foot is a strip.
        assert_ne!(band(48.0, "left = 12\n"), band(48.0, ""));
    }
}

#[test]
fn no_slot_is_left_between_a_post_and_a_jamb() {
    // The post takes 3.98 of the wall, to 1/50 in beside the door's jamb at 96: the siding's side there begins
    // over the door's head at 30, and the door has its one other jamb.
    let rings: [(&str, &[(f64, f64)]); 2] =
        [("A-WALL-OTLN", &rect(0.0, 0.0, 100.0, 40.0)), ("A-DOOR", &rect(40.0, 0.0, 96.0, 30.0))];
    let l = laid(&rings, "[product]\nkind = \"steel\"\noutside_post_set_back = 3.98\n");
    let corner = uprights(&l, EdgeKind::OutsideCorner, 96.02);
    assert!(are(&corner, &[(30.0, 40.0)]), "{corner:?}");
    assert!(uprights(&l, EdgeKind::Jamb, 96.02).is_empty());
    assert_eq!(uprights(&l, EdgeKind::Jamb, 40.0), [(0.0, 30.0)]);
}

#[test]
fn a_strip_at_the_start_as_thin_as_noise_is_left_out_and_the_check_agrees() {
    // Courses of 51 mm from -1.75: the first line over the foot stands at 0.25787, on the grid at 0.2578125.
    // Less the clearance of 1/4 in there are 8/1024 of the first course, which is no strip.
    let l = laid(
        &[("A-WALL-OTLN", &rect(0.0, 0.0, 152.0, 40.0))],
        "[product]\nkind = \"vinyl\"\nexposure = \"51mm\"\n[courses]\ndatum = -1.75\n",
    );
    let (_, w) = l.walls().next().unwrap();
    assert_eq!((w.courses[0].index, w.courses[0].bottom), (1, 0.2578125));
}

#[test]
fn siding_that_meets_a_post_past_its_corner_alone_ends_in_a_channel() {
    // Corner boards take 3.5; the left rake rises 89 in 115 and the right one falls 89 in 71. Siding starts
    // 9 1/16 over the zone's foot at 78.8125, at 87.875, over the corners' tops at 86: beside the boards'
    // lines it stands up to 86 + 3.5 x 89 / 115 = 88.709 and 86 + 3.5 x 89 / 71 = 90.387.
    let gable = [(0.0, 0.0), (186.0, 0.0), (186.0, 86.0), (115.0, 175.0), (0.0, 86.0)];
    let zone = "[[zone]]\nname = \"part\"\n[zone.product]\nkind = \"wood\"\ncorner_board = 3.5\n[[zone.region]]\nbottom = 78.8125\n";
    let text = format!("[courses]\nclear_of_ledge = 9.0625\n[product]\nkind = \"wood\"\n{zone}");
    let sets = lay_sets(dxf(&[("A-WALL-OTLN", &gable)]).as_bytes(), &job(&text));
    let part = &sets.iter().find(|s| s.layout.zone.is_some()).unwrap().layout;
    assert_eq!(broken(part), Vec::<String>::new());
    for (x, top) in [(3.5, 88.709), (182.5, 90.387)] {
        let found = uprights(part, EdgeKind::Abutment, x);
        assert!(are(&found, &[(87.875, top)]), "{x}: {found:?}");
    }
}

#[test]
fn seams_keep_off_jambs_where_they_are() {
    // Courses of 8 from 0. What one of them keeps off is beside it, under it or over it.
    let lines = |window: &[(f64, f64)], index: i32| {
        let l = laid(
            &[("A-WALL-OTLN", &rect(0.0, 0.0, 300.0, 120.0)), ("A-GLAZ", window)],
            "[product]\nkind = \"vinyl\"\nexposure = 8\n[courses]\ndatum = 0\n",
        );
        let (_, w) = l.walls().next().unwrap();
        let course = w.courses.iter().find(|c| c.index == index).unwrap();
        course.avoid.iter().map(|x| (x * 16.0).round() / 16.0).collect::<Vec<f64>>()
    };
    // Jambs lean in by 12 in 48, a quarter: at 72 the window reaches from 108 to 152, at 80 from 110 to 150, and
    // it ends at 88.
    let leaning = [(100.0, 40.0), (160.0, 40.0), (148.0, 88.0), (112.0, 88.0)];
    assert_eq!(lines(&leaning, 10), [108.0, 110.0, 150.0, 152.0]);
    // Under its sill; from 16 to 40 it only touches.
    assert_eq!(lines(&leaning, 4), [100.0, 160.0]);
    assert_eq!(lines(&leaning, 3), Vec::<f64>::new());
    // An L: its right part ends at 56, three courses under the upper ones, whose own jamb is at 124.
    let l =
        [(100.0, 40.0), (160.0, 40.0), (160.0, 56.0), (124.0, 56.0), (124.0, 88.0), (100.0, 88.0)];
    assert_eq!(lines(&l, 9), [100.0, 124.0]);
    assert_eq!(lines(&l, 7), [100.0, 124.0, 160.0]);
    assert_eq!(lines(&l, 5), [100.0, 160.0]);
}

#[test]
fn a_post_that_a_shorter_tail_makes_one_length_is_cut_no_longer_than_it() {
    // Siding from 0 to 53, the post hung 1/4 in short of the soffit: 52 3/4 in over the starter. A length of
    // 134.84 cm is 53.0866 in, so the tail is 0.3366 in instead of 3/4: 344 whole 1024ths of an inch.
    let wall = rect(0.0, 0.0, 240.0, 53.0);
    let l = laid(&[("A-WALL-OTLN", &wall)], "[trim]\noutside_post = \"134.84cm\"\n");
    assert_eq!(lengths(&l, TrimKind::OutsidePost), [52.75 + 344.0 / 1024.0; 2]);
}

#[test]
fn a_fixture_is_cut_out_of_the_part_over_a_band_that_parts_a_piece() {
    // A board's joint stands on the stud at 176, a band begins 1/8 in right of it: the piece that begins there
    // is parted by the band, and the pipe from 200 to 204 1/2 is in its upper part, cut out with 1/4 in all round.
    let text = "[drawing]\nunit = \"inch\"\n[courses]\ndatum = 311.64\n[product]\nkind = \"fiber-cement\"\n\
                width = \"1219mm\"\n[seams]\neffort = \"crew\"\n[[band]]\nelevation = \"elevation\"\n\
                bottom = 51.1728\ntop = 57.2713\nleft = 176.126\n";
    let job = lapwright::job::file::parse(text, "job").unwrap();
    let rings: [(&str, &[(f64, f64)]); 3] = [
        ("A-WALL-OTLN", &rect(0.0, 0.0, 314.25, 120.0)),
        ("A-DOOR", &rect(80.25, 0.0, 137.0, 78.5)),
        ("A-ELEV-OBST", &rect(200.0, 64.5, 204.5, 76.5)),
    ];
    let l = crate::support::lay(dxf(&rings).as_bytes(), &job);
    assert_eq!(broken(&l), Vec::<String>::new());
    let pieces: Vec<_> = l.pieces().map(|p| p.3).collect();
    let parted: Vec<_> = pieces.iter().filter(|p| !p.more.is_empty()).collect();
    assert_eq!(parted.len(), 1, "{:?}", pieces.iter().map(|p| (p.x0, p.x1)).collect::<Vec<_>>());
    let hole = &parted[0].holes[0];
    let span = |i: usize| {
        let all = || hole.iter().map(|p| p[i]);
        (all().fold(f64::MAX, f64::min), all().fold(f64::MIN, f64::max))
    };
    assert!(are(&[span(0), span(1)], &[(199.75, 204.75), (64.25, 76.75)]), "{hole:?}");
    // The cut list tells it.
    assert_eq!(parted[0].notches.iter().filter(|n| n.around == ["wall-F1"]).count(), 1);
}

#[test]
fn undersill_trim_goes_where_siding_is_on_both_sides_of_a_filler() {
    // Stone from 15 to 45 ends 2 in under a window from 10 to 50: a filler stands between, and siding goes up to
    // the sill in the 5 in on either side.
    let l = laid(
        &[
            ("A-WALL-OTLN", &rect(0.0, 0.0, 60.0, 120.0)),
            ("A-GLAZ", &rect(10.0, 19.5, 50.0, 93.0)),
            ("A-WALL-BASE", &rect(15.0, 0.0, 45.0, 17.5)),
        ],
        "[courses]\ndatum = 0\n",
    );
    let (_, w) = l.walls().next().unwrap();
    assert!(w.fillers.iter().any(|f| (f.place[1], f.place[3]) == (17.5, 19.5)), "{:?}", w.fillers);
    let sills = of(&l, TrimKind::FinishTrim).into_iter().filter(|t| t.opening.is_some());
    let spans: Vec<(f64, f64)> = sills.map(|t| (t.from[0], t.to[0])).collect();
    assert!(are(&spans, &[(10.0, 15.0), (45.0, 50.0)]), "{spans:?}");
}

#[test]
fn a_hem_that_an_eave_a_hair_over_the_line_cuts_off_is_made_good() {
    // The eave stands 3/64 in over the line at 152. Without a clearance 1/16 in still comes off with the hem.
    let l = laid(
        &[("A-WALL-OTLN", &rect(0.0, 0.0, 200.0, 152.0 + 3.0 / 64.0))],
        "[courses]\ndatum = 0\nnotch_clearance = 0\n[product]\nkind = \"vinyl\"\n",
    );
    let (_, w) = l.walls().next().unwrap();
    let top = w.courses.iter().find(|c| c.bottom == 144.0).unwrap();
    let works = top.runs.iter().flat_map(|r| &r.pieces).map(|p| &p.edge_work);
    assert!(works.clone().count() > 0);
    assert!(works.into_iter().all(|w| w.lugs + w.trim_nails + w.slots > 0));
}

#[test]
fn a_peak_a_hair_under_a_course_line_keeps_clear_of_its_long_rake() {
    // The two rakes, less 1/8 in each, meet 1/256 in under the line at 152. Put on the line, the peak would bring
    // 31 in of the flatter side 1/64 in nearer to its rake.
    let gable =
        [(2.0, 0.0), (221.125, 0.0), (221.125, 113.041), (156.115, 152.041), (2.0, 112.355)];
    laid(&[("A-WALL-OTLN", &gable)], "[courses]\ndatum = 0\n[product]\nkind = \"steel\"\n");
}

#[test]
fn a_wall_that_rises_past_its_neighbor_at_an_angle_has_two_corners_in_one_line() {
    // Up to the neighbor's roof at 84 an inside corner, over it an outside one: a band from 80 to 90 parts them.
    let rings: [(&str, &[(f64, f64)]); 2] = [
        ("A-WALL-OTLN", &rect(0.0, 0.0, 120.0, 84.0)),
        ("A-WALL-OTLN", &rect(120.0, 0.0, 200.0, 133.0)),
    ];
    let end = "0\nENDSEC\n0\nEOF\n";
    let line = "0\nLINE\n8\nA-WALL-CNRI\n10\n120\n20\n0\n11\n120\n21\n84\n";
    let drawing = dxf(&rings).replace(end, &format!("{line}{end}"));
    let job =
        job("[[angled]]\nwall = \"wall-1\"\nwidth = 240\n[[band]]\nelevation = \"elevation\"\n\
                   bottom = 80\ntop = 90\n");
    let l = crate::support::lay(drawing.as_bytes(), &job);
    assert_eq!(broken(&l), Vec::<String>::new());
    let of_wall = |kind: EdgeKind| {
        let edges = l.walls().filter(|(_, w)| *w.id == *"wall-2").flat_map(|(_, w)| &w.edges);
        let mine = edges.filter(|e| e.kind == kind && e.from[0] < 140.0 && e.to[0] < 140.0);
        mine.map(|e| (e.from[1].min(e.to[1]), e.from[1].max(e.to[1]))).collect::<Vec<_>>()
    };
    assert!(are(&of_wall(EdgeKind::InsideCorner), &[(0.0, 80.0)]));
    assert!(are(&of_wall(EdgeKind::OutsideCorner), &[(90.0, 133.0)]));
}
