//! The datum is searched for (`LayoutFact::OneDatum` to `LayoutFact::NotchRoundSills`): published
//! examples, and what must not matter.

use lapwright::job::Job;
use lapwright::language::Language;
use lapwright::layout::Layout;
use lapwright::layout::rule::Rule;
use lapwright::model::pole::{DatumWeight, FirstCourse, LineKind};
use lapwright::model::receiver::Receiver;
use lapwright::units::LengthStyle;
use lapwright::wording;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

use crate::layouts::house;
use crate::support::{broken, broken_rules, dxf, inches, laid, lay, rect, root};

fn one_window(set: impl Fn(&mut Job)) -> Layout {
    let path = root().join("sample-drawings/one-window.dxf");
    let mut job = crate::support::job(&path);
    set(&mut job);
    lay(&std::fs::read(&path).unwrap(), &job)
}

#[test]
fn a_start_four_inches_lower_brings_sill_and_head_to_course_lines() {
    // Example::DatumShift: double 4 from 0, sill 36 at course 4.5, head 84 at 10.5; 4 in lower they
    // are lines 5 and 11: 40 / 8 and 88 / 8.
    let l = one_window(|job| job.courses.hang_below = 4.0);
    assert_eq!(l.datum, -4.0);
    let line = |kind: LineKind| l.story_pole.lines.iter().find(|x| x.kind == kind).unwrap();
    let (sill, head) = (line(LineKind::Sill), line(LineKind::Head));
    assert_eq!((sill.height, sill.course, sill.over), (36.0, 5 + 1, 0.0));
    assert_eq!((head.height, head.course, head.over), (84.0, 11 + 1, 0.0));
    // At the sill the fifth course loses its hem and the clearance of 1/4 in under the window, 36 in
    // wide with 1/4 in beside it; over the head nothing is cut.
    let notches: Vec<_> = l.pieces().flat_map(|(.., p)| &p.notches).collect();
    assert_eq!(notches.iter().map(|n| (n.width, n.depth)).collect::<Vec<_>>(), [(36.5, 0.25)]);
    // The first course is whole and locks into a starter all along
    // (TrimFact::StarterLocksFirstCourse).
    let w = &l.elevations[0].walls[0];
    let starts = w.edges.iter().filter(|e| e.receiver == Receiver::Starter);
    assert!(starts.map(|e| e.from[1]).eq([-4.0]));
    assert!(w.courses[0].runs.iter().flat_map(|r| &r.pieces).all(|p| p.rip.is_none()));
    // The wall's siding is 4 in higher than drawn: 240 in of it.
    let drawn = one_window(|_| {}).elevations[0].walls[0].net_area;
    assert!((w.net_area - drawn - 240.0 * 4.0 / 144.0).abs() < 1e-6);
    assert_eq!(broken(&l), Vec::<String>::new());
}

#[test]
fn where_nothing_may_hang_the_same_height_is_told_with_what_it_costs() {
    let l = one_window(|_| {});
    assert_eq!(l.datum, 0.0);
    let choices = &l.story_pole.choices;
    assert_eq!(choices.len(), 3);
    let other = choices.iter().find(|c| c.datum == -4.0).expect("the shift by 4 in is not told");
    assert!(other.terms.iter().any(|t| t.weight == DatumWeight::CutStart), "{other:?}");
    // Its first course would be whole if it hung by those 4 in.
    let FirstCourse::Cut { whole_if_hung, .. } = other.effects.first_course else {
        panic!("{other:?}")
    };
    assert_eq!(whole_if_hung, 4.0);
    let words = wording::pole::effects(Language::English, &other.effects, None, LengthStyle::Feet);
    assert!(words.contains("courses.hang_below"), "{words}");
    // Alternatives differ really: an inch or more apart, round the course.
    for (i, a) in choices.iter().enumerate() {
        for b in &choices[..i] {
            let d = (a.datum - b.datum).rem_euclid(8.0);
            assert!(d.min(8.0 - d) >= 1.0, "{} and {}", a.datum, b.datum);
        }
        let sum: f64 = a.terms.iter().map(|t| t.points).sum();
        assert!((sum - a.score).abs() < 1e-9 && a.chosen == (i == 0));
    }
}

#[test]
fn clearance_to_grade_limits_how_far_a_start_hangs() {
    // Grade 8 in below the wall, 6 in of clearance (TrimFact::GradeClearance): 2 in are left, so 4
    // cannot be had.
    let draw = |grade: f64| {
        dxf(&[
            ("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 104.0)),
            ("A-GLAZ", &rect(90.0, 36.0, 126.0, 84.0)),
            ("C-TOPO-PROF", &[(-20.0, grade), (260.0, grade), (120.0, grade)]),
        ])
    };
    let mut job = inches();
    job.courses.hang_below = 4.0;
    let low = |grade: f64| {
        let l = lay(draw(grade).as_bytes(), &job);
        assert_eq!(broken(&l), Vec::<String>::new());
        l.datum
    };
    assert_eq!(low(-10.0), -4.0);
    assert!(low(-8.0) > -4.0);
}

#[test]
fn the_job_may_fix_the_datum_and_hears_what_else_could_be() {
    let l = one_window(|job| job.courses.datum = Some(-1.0));
    let choices = &l.story_pole.choices;
    assert_eq!((l.datum, choices[0].datum, choices[0].chosen), (-1.0, -1.0, true));
    assert_eq!(choices.len(), 3);
    assert!(choices[1].score < choices[0].score && !choices[1].chosen);
}

#[test]
fn courses_of_common_wall_heights() {
    // DrawingFact::CoursesOfHeights: 96 in = 12.00 courses of D4, 97 1/8 = 12.14, 99 = 12.375, 108 =
    // 13.5, 109 1/8 = 13.64; Example::WholeCourses: 96 in has no vertical waste;
    // Example::HouseOfDoubleFour: 99 in takes 13 courses.
    for (height, courses, printed) in [
        (96.0, 12, 12.00),
        (97.125, 13, 12.14),
        (99.0, 13, 12.375),
        (108.0, 14, 13.5),
        (109.125, 14, 13.64),
    ] {
        let l = lay(dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, height))]).as_bytes(), &inches());
        assert_eq!(l.elevations[0].walls[0].courses.len(), courses, "{height}");
        let eave = l.story_pole.lines.iter().find(|x| x.kind == LineKind::Eave).unwrap();
        let count = f64::from(eave.course - 1) + eave.over / 8.0;
        assert!((count - printed).abs() < 0.005, "{height}: {count}");
    }
}

#[test]
fn several_foundations_start_on_courses_of_one_pole() {
    // Bottoms 0, 16 and 24 in up are whole courses of 8; one 19 in up is 3 in off. With 3 in to hang
    // all four start whole, from one stick (LayoutFact::LowestStart).
    let walls = [(0.0, 0.0), (300.0, 16.0), (600.0, 24.0), (900.0, 19.0)];
    let rings: Vec<[(f64, f64); 4]> =
        walls.iter().map(|(x, y)| rect(*x, *y, x + 200.0, 120.0)).collect();
    let rings: Vec<(&str, &[(f64, f64)])> = rings.iter().map(|r| ("A-WALL-OTLN", &r[..])).collect();
    let mut job = inches();
    job.courses.hang_below = 3.0;
    let l = lay(dxf(&rings).as_bytes(), &job);
    let mut starts = Vec::new();
    for (_, w) in l.walls() {
        let first = w.courses.first().unwrap();
        assert!(first.runs.iter().flat_map(|r| &r.pieces).all(|p| p.rip.is_none()), "{}", w.id);
        starts.push(first.bottom - l.datum);
    }
    assert!(starts.iter().all(|s| s % 8.0 == 0.0), "{starts:?}");
    assert_eq!(broken(&l), Vec::<String>::new());
}

#[test]
fn a_weight_of_the_job_turns_the_choice() {
    // Whoever does not mind a cut first course gets sills and heads on lines.
    let l = one_window(|job| job.courses.weights.cut_start = 0.0);
    assert_eq!(l.datum, -4.0);
    assert_eq!(broken(&l), Vec::<String>::new());
}

#[test]
fn the_pole_table_holds_every_butt_line_and_opening_once() {
    let l = laid("curlew-cottage");
    let lines = &l.story_pole.lines;
    let butts: Vec<f64> =
        lines.iter().filter(|x| x.kind == LineKind::Butt).map(|x| x.height).collect();
    assert!(butts.windows(2).all(|p| p[1] - p[0] == 8.0), "{butts:?}");
    for (e, w) in l.walls() {
        for o in &w.openings {
            let here: Vec<_> = lines
                .iter()
                .filter(|x| x.kind == LineKind::Head && x.names.iter().any(|n| *n == *o.id))
                .collect();
            assert_eq!(here.len(), 1, "{}", o.id);
            assert!((here[0].height - o.head).abs() < 0.01);
            assert!(here[0].elevations.contains(&e.name));
            let of_course = f64::from(here[0].course - 1) * 8.0 + l.datum + here[0].over;
            assert!((of_course - o.head).abs() < 0.01);
        }
    }
}

/// What was chosen and told, without numbers' last bits.
fn told(l: &Layout) -> Vec<(i64, i64)> {
    let whole = |v: f64| (v * 1000.0).round() as i64;
    l.story_pole.choices.iter().map(|c| (whole(c.datum), whole(c.score))).collect()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 12, failure_persistence: None, rng_seed: RngSeed::Fixed(4), ..ProptestConfig::default() })]

    #[test]
    fn place_hand_and_unit_keep_the_datum(h in house(), dx in -5000i32..5000, dy in -5000i32..5000, hang in 0u8..5) {
        let mut job = inches();
        job.seams.effort = lapwright::model::seam::Effort::Crew;
        // Half of them do not mind a cut first course, so that heights all round are chosen.
        job.courses.hang_below = f64::from(hang);
        job.courses.weights.cut_start = if hang % 2 == 0 { 0.0 } else { 4.0 };
        let at = |job: &Job, map: &dyn Fn((f64, f64)) -> (f64, f64)| lay(h.drawn(map).as_bytes(), job);
        let here = at(&job, &|p| p);
        let mut metric = job.clone();
        metric.drawing.unit = Some(lapwright::units::Unit::Mm);
        let others = [
            at(&job, &|(x, y)| (x + f64::from(dx), y + f64::from(dy))),
            at(&job, &|(x, y)| (h.width - x, y)),
            at(&metric, &|(x, y)| (x * 25.4, y * 25.4)),
        ];
        for other in &others {
            prop_assert_eq!(told(&here), told(other));
        }
        let found: Vec<Rule> = broken_rules(&here).into_iter().filter(|r| here.bound.conflicts.is_empty() || ![Rule::SeamStagger, Rule::ShortestPiece].contains(r)).collect();
        prop_assert_eq!(found, Vec::<Rule>::new());
    }

    #[test]
    fn heads_and_sills_raised_by_one_course_keep_the_choice(h in house()) {
        let mut job = inches();
        job.seams.effort = lapwright::model::seam::Effort::Crew;
        job.courses.weights.cut_start = 0.0;
        // A tall wall, so that raised windows stay in it, and none that stands on its bottom.
        let windows: Vec<[(f64, f64); 4]> = h.openings.iter().map(|(a, b, c, d)| rect(*a, b + 8.0, *c, d + 8.0)).collect();
        let draw = |up: f64| {
            let raised: Vec<Vec<(f64, f64)>> = windows.iter().map(|w| w.iter().map(|(x, y)| (*x, y + up)).collect()).collect();
            let wall = rect(0.0, 0.0, h.width, 163.0);
            let mut rings: Vec<(&str, &[(f64, f64)])> = vec![("A-WALL-OTLN", &wall)];
            rings.extend(raised.iter().map(|o| ("A-GLAZ", &o[..])));
            dxf(&rings)
        };
        let (low, high) = (lay(draw(0.0).as_bytes(), &job), lay(draw(8.0).as_bytes(), &job));
        prop_assert_eq!(told(&low), told(&high));
    }
}
