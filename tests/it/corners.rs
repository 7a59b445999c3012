//! Corners paired between elevations, walls round a corner that the job gives, true widths.

use lapwright::finding::{Findings, Severity};
use lapwright::job::Job;
use lapwright::job::file as job_file;
use lapwright::layout::Layout;
use lapwright::layout::backdrop::Backdrops;
use lapwright::layout::rule::Rule;
use lapwright::model::corner::Pairing;
use lapwright::pipeline;
use lapwright::verify;
use lapwright::wording;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

use crate::support::{advised, broken, broken_rules, dxf, rect, said};

/// Room between elevations, so that each has its region.
const APART: f64 = 2000.0;

/// One elevation: name and walls as boxes, at the house's heights.
type Face<'a> = (&'a str, Vec<(f64, f64, f64, f64)>);

/// The drawing of some faces, level with one another, and the job that names their views.
fn drawn(faces: &[Face], inside: &[(usize, f64, f64, f64)], more: &str) -> (String, Job) {
    let mut rings: Vec<(&str, Vec<(f64, f64)>)> = Vec::new();
    let mut text = String::from("[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n");
    for (i, (name, walls)) in faces.iter().enumerate() {
        let dx = i as f64 * APART;
        for (x0, y0, x1, y1) in walls {
            rings.push(("A-WALL-OTLN", rect(x0 + dx, *y0, x1 + dx, *y1).to_vec()));
        }
        let (left, right) = (dx - 500.0, dx + 1400.0);
        text += &format!(
            "[[elevation]]\nname = \"{name}\"\nregion = [{left:.1}, -500.0, {right:.1}, 900.0]\n"
        );
    }
    for (face, x, low, high) in inside {
        let x = x + *face as f64 * APART;
        rings.push(("A-WALL-CNRI", vec![(x, *low), (x, *high)]));
    }
    let rings: Vec<(&str, &[(f64, f64)])> = rings.iter().map(|(l, r)| (*l, &r[..])).collect();
    (dxf(&rings), job_file::parse(&(text + more), "job").unwrap())
}

fn laid(faces: &[Face], more: &str) -> (Layout, Findings) {
    let (drawing, job) = drawn(faces, &[], more);
    let mut notes = Findings::default();
    let l = pipeline::layout(drawing.as_bytes(), "t.dxf", &job, &mut notes, &mut |_| {}).unwrap();
    (l.house.layout, notes)
}

fn box_house(width: f64, depth: f64, high: f64) -> [Face<'static>; 4] {
    let wall = |w: f64| vec![(0.0, 0.0, w, high)];
    [("FRONT", wall(width)), ("RIGHT", wall(depth)), ("REAR", wall(width)), ("LEFT", wall(depth))]
}

fn coded<'a>(notes: &'a Findings, code: &str) -> Vec<&'a lapwright::finding::Finding> {
    notes.all().iter().filter(|n| n.code().word() == code).collect()
}

#[test]
fn a_box_has_four_corners_each_between_neighbors() {
    let (l, notes) = laid(&box_house(360.0, 240.0, 96.0), "");
    let pairs: Vec<(&str, Vec<&str>)> = l
        .corners
        .iter()
        .map(|c| (c.id.as_str(), c.sides.iter().map(|s| s.wall.as_str()).collect()))
        .collect();
    // Seen from outside each elevation's right end is the next one's left end.
    assert_eq!(
        pairs,
        [
            ("front-1/left", vec!["front-1", "left-1"]),
            ("front-1/right", vec!["front-1", "right-1"]),
            ("right-1/right", vec!["right-1", "rear-1"]),
            ("rear-1/right", vec!["rear-1", "left-1"]),
        ]
    );
    assert!(l.corners.iter().all(|c| (c.low, c.high) == (0.0, 96.0) && c.by == Pairing::Wrap));
    assert!(coded(&notes, "return-not-drawn").is_empty());
    assert_eq!(broken(&l), Vec::<String>::new());
    // TrimFact::PostTopGap, TrimFact::PostPastStarter on 8 ft: 96 + 3/4 below - 1/4 short = 96 1/2,
    // four times.
    let posts: Vec<f64> = l
        .trims
        .iter()
        .filter(|t| wording::trim::kind(t.kind).en.contains("post"))
        .map(|t| t.length)
        .collect();
    assert_eq!(posts, [96.5; 4]);
}

#[test]
fn two_elevations_that_disagree_about_a_corner_are_told() {
    let mut faces = box_house(360.0, 240.0, 96.0);
    faces[1].1[0].3 = 104.0;
    let (l, notes) = laid(&faces, "");
    // Both of its corners: with the front and with the rear.
    let told = coded(&notes, "corner-heights-disagree");
    assert_eq!(told.len(), 2);
    assert!(said(told[0]).contains("8'-0\"") && said(told[0]).contains("8'-8\""));
    assert!(told[0].at.is_some() && told[0].severity() == Severity::Warning);
    assert!(l.corners.iter().all(|c| c.sides.len() == 2));
    // The post is as long as the longer wall needs.
    let mut posts: Vec<f64> = l
        .trims
        .iter()
        .filter(|t| wording::trim::kind(t.kind).en.contains("post"))
        .map(|t| t.length)
        .collect();
    posts.sort_by(f64::total_cmp);
    assert_eq!(posts, [96.5, 96.5, 104.5, 104.5]);
    assert_eq!(broken(&l), Vec::<String>::new());
}

#[test]
fn a_part_below_a_lower_roof_has_the_post_of_the_corner_it_stands_in() {
    // The front begins 20 up; the left wall is parted from 40 to 50 up. Its lower part meets the front
    // from 20 to 40, so both parts and the front share one post from the ground: 104 + 3/4 - 1/4.
    let mut faces = box_house(360.0, 240.0, 104.0);
    faces[0].1[0].1 = 20.0;
    faces[3].1 = vec![(0.0, 0.0, 240.0, 40.0), (0.0, 50.0, 240.0, 104.0)];
    let (l, _) = laid(&faces, "");
    assert_eq!(l.corners.len(), 4);
    let posts: Vec<f64> = l
        .trims
        .iter()
        .filter(|t| wording::trim::kind(t.kind).en.contains("post"))
        .map(|t| t.length)
        .collect();
    assert_eq!(posts, [104.5; 4]);
    assert_eq!(broken(&l), Vec::<String>::new());
}

/// A front whose middle part stands forward: its returns are drawn nowhere.
fn bay() -> [Face<'static>; 4] {
    let mut faces = box_house(360.0, 240.0, 96.0);
    faces[0].1 =
        vec![(0.0, 0.0, 120.0, 96.0), (120.0, 0.0, 240.0, 88.0), (240.0, 0.0, 360.0, 96.0)];
    faces
}

#[test]
fn a_corner_without_a_partner_is_asked_for_and_the_job_can_answer() {
    let (before, notes) = laid(&bay(), "");
    let asked = coded(&notes, "return-not-drawn");
    // Right and left sides of the middle part, and of its neighbors: drawn as outside corners.
    let open: Vec<&str> =
        before.corners.iter().filter(|c| c.by == Pairing::Open).map(|c| c.id.as_str()).collect();
    assert_eq!(open, ["front-1/right", "front-2/left", "front-2/right", "front-3/left"]);
    assert_eq!(asked.len(), 4);
    assert!(said(asked[1]).starts_with("return: confirm width"));
    let help = advised(asked[1]);
    assert!(help.contains("[[return]] corner = \"front-2/left\""), "{help}");
    // Its place in the source: the foot of the middle part's left side.
    assert_eq!(asked[1].at.map(|p| (p.x, p.y)), Some((120.0, 0.0)));

    let answer = "[[return]]\ncorner = \"front-2/left\"\nto = \"front-1/right\"\nwidth = \"2'-0\\\"\"\n\
        [[return]]\ncorner = \"front-2/right\"\nwidth = 24\nheight = 80\n\
        [[return]]\ncorner = \"front-3/left\"\nwidth = 0\n";
    let (l, notes) = laid(&bay(), answer);
    assert!(coded(&notes, "return-not-drawn").is_empty());
    assert_eq!(broken(&l), Vec::<String>::new());
    assert_eq!(l.elevations.len(), 6);
    let wall = |id: &str| l.walls().find(|(_, w)| w.id == id).unwrap();
    // As high as its corner, 88; 24 x 88 / 144 = 14 2/3 sq ft. The second is 24 x 80.
    assert!((wall("return-1").1.net_area - 24.0 * 88.0 / 144.0).abs() < 1e-9);
    assert!((wall("return-2").1.net_area - 24.0 * 80.0 / 144.0).abs() < 1e-9);
    // Courses of 8 in from one datum: 11 and 10 of them.
    assert_eq!(wall("return-1").1.courses.len(), 11);
    assert_eq!(wall("return-2").1.courses.len(), 10);
    // Seen from outside, the middle part's left neighbor has it on its right.
    let first = l.corners.iter().find(|c| c.id == "front-2/left").unwrap();
    assert_eq!(
        (first.by, first.sides[1].wall.as_str(), first.sides[1].x),
        (Pairing::Job, "return-1", 24.0)
    );
    // Panels, squares and posts of the new walls are bought too.
    let squares = |l: &Layout| l.takeoff.iter().find(|t| t.id == "squares").unwrap().net;
    assert!((squares(&l) - squares(&before) - 24.0 * 168.0 / 14400.0).abs() < 1e-9);
    // A sheet each.
    let sheets = lapwright::annotate::sheets(&l, &Backdrops::default());
    assert!(
        sheets.iter().any(|s| s.title.starts_with("Wall ") && s.title.contains("at front-2/left"))
    );
}

#[test]
fn courses_that_do_not_meet_at_a_corner_are_caught() {
    let (l, _) = laid(&box_house(360.0, 240.0, 96.0), "");
    let rule = Rule::CornerCourses;
    let found = |l: &Layout| {
        verify::check(l)
            .rules
            .into_iter()
            .find(|r| r.rule == rule)
            .map(|r| (r.checked, r.violations.len()))
    };
    // 12 courses of 8 in; the lowest butt line is the foot of both: 11 lines inside, from both walls,
    // at four corners.
    assert_eq!(found(&l), Some((88, 0)));
    let mut off = l.clone();
    off.elevations[1].walls[0].courses[3].bottom += 1.0;
    // The line of the right wall meets none at both its ends, and its neighbors' lines none of it.
    assert_eq!(found(&off), Some((88, 4)));
}

/// A window that reaches into the corner post, its sill 3/4 in over the butt line at 32: siding under it is cut 1 in
/// lower, at 31 3/4, so that no siding stands on that line there, though it does round the corner.
#[test]
fn no_butt_line_is_asked_for_where_a_sill_takes_the_course_over_it() {
    let mut drawing: Vec<(&str, Vec<(f64, f64)>)> = Vec::new();
    for at in [0.0, APART] {
        drawing.push(("A-WALL-OTLN", rect(at, 0.0, at + 240.0, 96.0).to_vec()));
    }
    drawing.push(("A-GLAZ", rect(190.0, 32.75, 239.0, 70.0).to_vec()));
    let rings: Vec<(&str, &[(f64, f64)])> = drawing.iter().map(|(l, r)| (*l, &r[..])).collect();
    let (_, mut job) = drawn(&box_house(240.0, 240.0, 96.0)[..2], &[], "");
    (job.courses.datum, job.courses.notch_clearance) = (Some(0.0), 1.0);
    let l = crate::support::lay(dxf(&rings).as_bytes(), &job);
    let front = &l.elevations[0].walls[0];
    let ends = |bottom: f64| {
        let course = front.courses.iter().find(|k| k.bottom == bottom).unwrap();
        course.runs.iter().map(|r| r.x1).fold(0.0, f64::max)
    };
    assert!(ends(24.0) > 230.0 && ends(32.0) < 200.0, "{} {}", ends(24.0), ends(32.0));
    assert_eq!(broken(&l), Vec::<String>::new());
}

#[test]
fn a_return_at_no_corner_or_a_known_one_is_refused() {
    let refused = |more: &str| {
        let (drawing, job) = drawn(&bay(), &[], more);
        let e =
            pipeline::layout(drawing.as_bytes(), "t", &job, &mut Findings::default(), &mut |_| {});
        said(&e.unwrap_err().0)
    };
    let m = refused("[[return]]\ncorner = \"front-9/left\"\nwidth = 24\n");
    assert!(m.contains("no wall has") && m.contains("front-2/left"), "{m}");
    let m = refused("[[return]]\ncorner = \"right-1/left\"\nwidth = 24\n");
    assert!(m.contains("both of whose walls are known"), "{m}");
    assert!(job_file::parse("[[return]]\ncorner = \"a\"\n", "job").is_err(), "a width is needed");
}

#[test]
fn a_wall_at_an_angle_is_laid_out_at_its_true_width() {
    // A bay's side at 45 degrees, 34 in wide: an elevation shows 34 cos 45 = 24.04 of it. Here 24 drawn
    // and 33.94 true: 24 x sqrt 2. A window of 12 drawn is 16.97 wide.
    let faces: [Face; 1] = [("FRONT", vec![(0.0, 0.0, 24.0, 96.0), (24.0, 0.0, 144.0, 96.0)])];
    let (drawing, job) = drawn(&faces, &[], "[[angled]]\nwall = \"front-1\"\nwidth = 33.9375\n");
    let window = dxf(&[("A-GLAZ", &rect(6.0, 32.0, 18.0, 72.0))]);
    let drawing =
        drawing.replace("0\nENDSEC\n0\nEOF\n", window.split("ENTITIES\n").nth(1).unwrap());
    let l = pipeline::layout(drawing.as_bytes(), "t", &job, &mut Findings::default(), &mut |_| {})
        .unwrap()
        .house
        .layout;
    assert_eq!(broken(&l), Vec::<String>::new());
    let (e, w) = l.walls().find(|(_, w)| w.id == "front-1").unwrap();
    assert!((w.gross_area - 33.9375 * 96.0 / 144.0).abs() < 1e-6, "{}", w.gross_area);
    let o = &w.openings[0];
    assert!((o.right - o.left - 16.97).abs() < 0.01 && (o.left - 8.48).abs() < 0.01);
    // Shrunk again, it lies over the source.
    let x = |x: f64| e.to_source[0] * x + e.to_source[4];
    assert!((x(0.0)).abs() < 1e-6 && (x(33.9375) - 24.0).abs() < 1e-6);
    // There a dimension tells the true width: 2'-9 15/16".
    let told: Vec<String> = lapwright::annotate::overlay(&l, &Default::default())
        .items
        .into_iter()
        .filter_map(|i| match i.shape {
            lapwright::model::drawing::Shape::Dimension(d) => d.text,
            _ => None,
        })
        .collect();
    assert!(told.iter().any(|t| t == "2'-9 15/16\""), "{told:?}");
    // Placed by the job.
    let (_, job) = drawn(
        &faces,
        &[],
        "[[angled]]\nwall = \"front-1\"\nwidth = 33.9375\nopenings = { front-W1 = 5 }\n",
    );
    let l = pipeline::layout(drawing.as_bytes(), "t", &job, &mut Findings::default(), &mut |_| {})
        .unwrap()
        .house
        .layout;
    let (_, w) = l.walls().find(|(_, w)| w.id == "front-1").unwrap();
    assert_eq!(w.openings[0].left, 5.0);
    assert_eq!(broken(&l), Vec::<String>::new());
    // A surround of 2 is 2 wide on it: 12 x 1.4141 and 2 on either side.
    let more = "[[angled]]\nwall = \"front-1\"\nwidth = 33.9375\n[trim]\nsurround = 2\n";
    let (_, job) = drawn(&faces, &[], more);
    let l = pipeline::layout(drawing.as_bytes(), "t", &job, &mut Findings::default(), &mut |_| {})
        .unwrap()
        .house
        .layout;
    let (_, w) = l.walls().find(|(_, w)| w.id == "front-1").unwrap();
    let o = &w.openings[0];
    assert!((o.right - o.left - 16.97 - 4.0).abs() < 0.01, "{}", o.right - o.left);
    assert_eq!(broken(&l), Vec::<String>::new());
}

#[test]
fn a_zone_goes_with_a_wall_at_an_angle_or_is_refused() {
    let faces: [Face; 1] = [("FRONT", vec![(0.0, 0.0, 24.0, 96.0), (24.0, 0.0, 144.0, 96.0)])];
    let angled = "[[angled]]\nwall = \"front-1\"\nwidth = 36\n";
    let zone = "[[zone]]\nname = \"Panel\"\n";
    let laid = |right: u32, rest: &str| {
        let region = format!("[[zone.region]]\nright = {right}\nbottom = 48\n");
        let (drawing, job) = drawn(&faces, &[], &format!("{angled}{zone}{rest}{region}"));
        pipeline::layout(drawing.as_bytes(), "t", &job, &mut Findings::default(), &mut |_| {})
            .map(|sets| sets.house.layout)
    };
    // Drawn 24 x 48, true 36 x 48: 12 sq ft.
    let l = laid(24, "cladding = \"shingle\"\n").unwrap();
    assert_eq!(broken(&l), Vec::<String>::new());
    let zones: Vec<f64> =
        l.elevations.iter().flat_map(|e| &e.zones).map(|z| z.gross_area).collect();
    assert_eq!(zones, [12.0]);
    // One that goes on to the next wall, and siding of its own, are not widened with it.
    for (right, rest) in
        [(60, "cladding = \"shingle\"\n"), (24, "product = { kind = \"vinyl\" }\n")]
    {
        let e = laid(right, rest).unwrap_err();
        let message = said(&e.0);
        assert!(message.contains("true width"), "{message}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, failure_persistence: None, rng_seed: RngSeed::Fixed(4), ..ProptestConfig::default() })]

    #[test]
    fn courses_meet_at_every_corner_of_random_boxes(
        width in 10u32..50, depth in 8u32..40, high in 80u32..200, feet in prop::collection::vec(0u32..40, 4), part in 20u32..60,
    ) {
        let mut faces = box_house(f64::from(width * 12), f64::from(depth * 12), f64::from(high));
        // Each wall has a foot of its own, as foundations step.
        for (face, foot) in faces.iter_mut().zip(&feet) {
            face.1[0].1 = f64::from(*foot);
        }
        // The left part of the front stands back: its side is given by the job.
        let split = f64::from(part).min(f64::from(width * 12) / 2.0);
        let front = faces[0].1[0];
        faces[0].1 = vec![(front.0, front.1, split, front.3), (split, front.1, front.2, front.3)];
        let more = "[[return]]\ncorner = \"front-1/right\"\nto = \"front-2/left\"\nwidth = 30\n";
        let (l, _) = laid(&faces, more);
        prop_assert_eq!(l.corners.len(), 6);
        prop_assert!(l.corners.iter().all(|c| c.sides.len() == 2));
        // A quick crew may not keep the stagger of seams; that is no matter of corners.
        let found: Vec<Rule> = broken_rules(&l).into_iter().filter(|r| *r != Rule::SeamStagger).collect();
        prop_assert_eq!(found, Vec::<Rule>::new());
        // Reckoned here again from pieces: butt lines of pieces that end at a corner.
        for c in &l.corners {
            let at = |k: usize| -> Vec<i64> {
                let s = &c.sides[k];
                let near = |x: f64| (x - s.x).abs() < 0.5;
                let mut out: Vec<i64> = l.pieces().filter(|(w, _, _, p)| w.id == s.wall && (near(p.x0) || near(p.x1))).map(|(_, c, ..)| (c.bottom * 64.0).round() as i64).collect();
                out.dedup();
                let low = c.sides.iter().map(|s| s.low).fold(0.0, f64::max);
                out.retain(|y| *y as f64 / 64.0 > low);
                out
            };
            prop_assert_eq!(at(0), at(1));
        }
    }
}
