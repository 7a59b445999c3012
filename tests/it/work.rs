//! The order of work: laps face away from the viewer (`SidingFact::LapsFaceAway`,
//! `SidingFact::BeginFarthest`), level is checked every five courses (`SidingFact::LevelChecks`),
//! places with restricted access say how panels get in (`LayoutFact::RestrictedAccess`).

use lapwright::job::SeenFrom;
use lapwright::language::Language;
use lapwright::layout::Layout;
use lapwright::model::corner::Hand;
use lapwright::model::fastening::{Fastened, MovingPiece};
use lapwright::model::item::SidingPiece;
use lapwright::model::trim::TrimStock;
use lapwright::model::work::{
    AccessSide, Begins, FlashedPlace, InstallMethod, Viewpoint, WallWork, WorkRule, WorkStep,
};
use lapwright::units::LengthStyle;
use lapwright::wording;

use crate::support::{dxf, inches, laid, lay, rect};

/// The work on a wall: walls are told in the order they are sided.
fn of_wall<'a>(l: &'a Layout, wall: &str) -> &'a WallWork {
    l.work.walls.iter().find(|w| w.wall == *wall).unwrap()
}

/// Of two pieces at a seam the one nearer to the viewer goes on later, over the other.
fn laps_look_away(l: &Layout) -> usize {
    let mut seen = 0;
    for (_, w) in l.walls() {
        let work = of_wall(l, &w.id);
        for r in w.courses.iter().flat_map(|c| &c.runs).filter(|r| !r.seams.is_empty()) {
            let order = &work.runs.iter().find(|o| o.run == r.id.as_str()).unwrap().order;
            assert_eq!(order.len(), r.pieces.len());
            let at = |i: usize| order.iter().position(|m| *m == r.pieces[i].mark.as_str()).unwrap();
            for (i, s) in r.seams.iter().enumerate() {
                let (near, far) = if *s < work.seen_from { (i + 1, i) } else { (i, i + 1) };
                assert!(at(near) > at(far), "{} at {s}", r.id);
                seen += 1;
            }
        }
    }
    seen
}

#[test]
fn laps_face_away_from_the_door_or_from_where_the_job_says() {
    let l = laid("curlew-cottage");
    assert!(laps_look_away(&l) > 100);
    let front = of_wall(&l, "front-1");
    // By design the front door stands from 150 to 186.
    let door = Viewpoint::Door { opening: "front-D1".into() };
    assert_eq!((front.seen_from, &front.viewpoint), (168.0, &door));
    let wall = dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 480.0, 96.0))]);
    for (from, x, begins) in [
        (SeenFrom::Left, 0.0, Begins::Right),
        (SeenFrom::Right, 480.0, Begins::Left),
        (SeenFrom::Entrance, 0.0, Begins::Right),
    ] {
        let mut job = inches();
        job.work.seen_from = from;
        let l = lay(wall.as_bytes(), &job);
        assert_eq!(l.work.walls[0].seen_from, x);
        assert!(l.work.walls[0].runs.iter().all(|r| r.begins == begins), "{from:?}");
        assert!(laps_look_away(&l) >= 12);
    }
    // Named for one elevation only, letter case aside.
    let mut job = inches();
    let name = lay(wall.as_bytes(), &job).elevations[0].name.to_lowercase();
    job.work.seen_from_by_elevation.insert(name, SeenFrom::Right);
    assert_eq!(lay(wall.as_bytes(), &job).work.walls[0].seen_from, 480.0);
}

#[test]
fn level_is_checked_every_fifth_course_at_one_height_all_round() {
    let l = laid("curlew-cottage");
    for (_, w) in l.walls() {
        let work = of_wall(&l, &w.id);
        let numbers: Vec<i32> = w.courses.iter().map(|c| c.index + 1).collect();
        let top = *numbers.last().unwrap();
        let wanted: Vec<i32> = numbers.iter().copied().filter(|n| n % 5 == 0 && *n < top).collect();
        assert_eq!(work.level_checks, wanted, "{}", w.id);
        assert!(work.level_checks.len() >= 2);
    }
    assert_eq!(of_wall(&l, "front-2").level_checks, [5, 10, 15, 20]);
}

#[test]
fn places_with_restricted_access_say_how_panels_get_in() {
    // Ten inches of wall between the corner and a window of five courses: both receivers fixed, down
    // from the top. The same beside an opening up to the soffit: from below, before the course under
    // it. A single course beside a mounting block: one receiver held.
    let spots = |rings: &[(&str, &[(f64, f64)])]| {
        let mut all: Vec<(&str, &[(f64, f64)])> = Vec::new();
        let wall = rect(0.0, 0.0, 240.0, 96.0);
        all.push(("A-WALL-OTLN", &wall));
        all.extend(rings);
        let l = lay(dxf(&all).as_bytes(), &inches());
        l.work.walls[0].restricted.clone()
    };
    let open = spots(&[("A-GLAZ", &rect(10.0, 32.0, 50.0, 72.0))]);
    assert_eq!(open.len(), 1);
    assert_eq!((open[0].from_course, open[0].to_course), (5, 9));
    assert_eq!(open[0].install, InstallMethod::SlideDown { before_course: 10 });
    let is_window =
        |s: &AccessSide| matches!(s, AccessSide::Opening { opening } if opening.ends_with("-W1"));
    assert_eq!(open[0].between[0], AccessSide::OutsideCorner);
    assert!(is_window(&open[0].between[1]), "{open:?}");

    let shut = spots(&[("A-GLAZ", &rect(10.0, 32.0, 50.0, 96.0))]);
    assert_eq!(shut.len(), 1);
    assert_eq!((shut[0].from_course, shut[0].to_course), (5, 12));
    assert_eq!(shut[0].install, InstallMethod::SlideUp { before_course: 4 });

    let block = spots(&[
        ("A-GLAZ", &rect(100.0, 32.0, 140.0, 72.0)),
        ("A-ELEV-MBLK", &rect(82.0, 47.0, 88.0, 57.0)),
    ]);
    assert!(!block.is_empty());
    // Held is the window's channel, not the block that is fixed already.
    for s in &block {
        let InstallMethod::HoldOneReceiver { held } = s.install else { panic!("{s:?}") };
        let side = &s.between[usize::from(held == Hand::Right)];
        assert!(is_window(side), "{s:?}");
        let words = wording::restricted::sentence(Language::English, s, LengthStyle::Feet);
        assert!(words.contains("-W1 with one nail"), "{words}");
    }
}

#[test]
fn every_wall_has_its_work_in_order() {
    let l = laid("curlew-cottage");
    assert_eq!(l.work.walls.len(), 6);
    for w in &l.work.walls {
        let steps = wording::work::steps(Language::English, w, LengthStyle::Feet);
        let at = |what: &str| steps.iter().position(|s| s.starts_with(what));
        // LayoutFact::OrderOfWork: barrier and flashing, posts, starter, channels, panels, undersill
        // trim.
        let order: Vec<usize> =
            ["Barrier", "Corner posts", "Start", "Frames", "Siding", "Before the"]
                .into_iter()
                .filter_map(at)
                .collect();
        assert!(order.windows(2).all(|p| p[0] < p[1]) && order.len() >= 5, "{steps:?}");
        // What is flashed stands on the wall: every opening once.
        let WorkStep::Barrier { flashing } = &w.steps[0] else { panic!("{:?}", w.steps) };
        let wall = l.walls().find(|(_, x)| x.id == w.wall.as_str()).unwrap().1;
        let openings = flashing.iter().find_map(|f| match f {
            FlashedPlace::Openings { openings } => Some(openings.len()),
            _ => None,
        });
        assert_eq!(openings.unwrap_or(0), wall.openings.len(), "{}", w.wall);
        // Marks of a step stand on the wall's own trim.
        for s in &w.steps {
            let marks = match s {
                WorkStep::Start { marks, cut: None, .. } | WorkStep::Channels { marks } => marks,
                WorkStep::Start { cut: Some(cut), .. } => &cut.held_in,
                _ => continue,
            };
            let on = |m: &str| l.trims.iter().any(|t| t.mark == m && t.wall == wall.id);
            assert!(!marks.is_empty() && marks.iter().all(|m| on(m)), "{s:?}");
        }
    }
    // Lengths of the rules are the job's.
    let lugs = l.work.everywhere.iter().find_map(|r| match r {
        WorkRule::HoldCutEdges { lug_spacing, .. } => Some(*lug_spacing),
        _ => None,
    });
    assert_eq!(lugs, Some(l.job.courses.lug_spacing));
    // Read back, the order of work is the same.
    let json = serde_json::to_string(&l.work).unwrap();
    assert_eq!(serde_json::from_str::<lapwright::model::work::WorkOrder>(&json).unwrap(), l.work);
    let pole = serde_json::to_string(&l.story_pole).unwrap();
    let pole: lapwright::model::pole::PoleTable = serde_json::from_str(&pole).unwrap();
    assert_eq!((pole.tried, pole.choices.len()), (l.story_pole.tried, l.story_pole.choices.len()));
}

#[test]
fn movement_is_told_and_warned_of_where_gaps_do_not_cover_it() {
    let wall = dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 300.0, 96.0))]);
    let of = |installed: f64, highest: f64| {
        let mut job = inches();
        job.weather.installed_f = Some(installed);
        job.weather.highest_f = highest;
        lay(wall.as_bytes(), &job)
    };
    let warned =
        |l: &Layout| l.findings.iter().filter(|n| n.code().word() == "movement-gap").count();
    // Example::RiseOfGaps: 1/4 in gaps cover a rise of 74.1 F of a 12 ft 6 in panel at 4.5e-5 /F.
    assert_eq!(warned(&of(46.0, 120.0)), 0);
    let hot = of(45.0, 120.0);
    assert_eq!(warned(&hot), 1);
    let row = hot.movement.rows.iter().find(|r| r.piece == MovingPiece::Panel).unwrap();
    assert!((row.longer - 150.0 * 4.5e-5 * 75.0).abs() < 1e-9 && !row.covered);
    // Below 40 F the gap is 3/8 in (SidingFact::ColdEndGap): 111.1 F are covered.
    let cold = of(10.0, 120.0);
    assert_eq!((cold.job.end_gap(), warned(&cold)), (0.375, 0));
    assert_eq!(warned(&of(8.0, 120.0)), 1);
}

#[test]
fn nails_are_counted_by_what_they_hold() {
    let mut job = inches();
    job.fasteners.post_spacing = Some(12.0);
    job.fasteners.foam_board = 1.0;
    let wall = dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 150.0, 96.0))]);
    let l = lay(wall.as_bytes(), &job);
    // NailFact::NailLength: 3/4 + 1 + 1 1/4 = 3.
    assert_eq!(l.fastening.length, 3.0);
    let of = |holds: Fastened| l.fastening.nails.iter().find(|n| n.holds == holds).unwrap();
    let panels = of(Fastened::Siding(SidingPiece::Panel));
    // 12 panels of 149 1/2 in: ten spaces of 16 and one nail more.
    assert_eq!((panels.pieces, panels.nails), (12, 12.0 * 11.0));
    // Two posts 96 1/2 in high: nine spaces of 12 and one more, on both flanges.
    let posts = of(Fastened::Trim(TrimStock::OutsidePost));
    assert_eq!((posts.pieces, posts.nails), (2, 40.0));
    let bought: f64 = l.takeoff.iter().filter(|t| t.id.ends_with("-nails")).map(|t| t.net).sum();
    let counted: f64 = l.fastening.nails.iter().map(|n| n.nails).sum();
    assert!((bought * 1000.0 - counted).abs() < 1e-6);
}

#[test]
fn no_seam_stands_in_a_strip_thinner_than_the_least() {
    // Heads 1 3/4 in under a course line leave 1 1/2 in over them; walls long enough for other places.
    let windows = [(60.0, 100.0), (170.0, 230.0), (300.0, 360.0), (430.0, 470.0)];
    let mut rings: Vec<(&str, Vec<(f64, f64)>)> =
        vec![("A-WALL-OTLN", rect(0.0, 0.0, 520.0, 96.0).to_vec())];
    for (a, b) in windows {
        rings.push(("A-GLAZ", rect(a, 32.0, b, 78.25).to_vec()));
    }
    let rings: Vec<(&str, &[(f64, f64)])> = rings.iter().map(|(l, r)| (*l, &r[..])).collect();
    let mut job = inches();
    job.courses.datum = Some(0.0);
    let l = lay(dxf(&rings).as_bytes(), &job);
    let course = l.elevations[0].walls[0].courses.iter().find(|c| c.bottom == 72.0).unwrap();
    assert!(!course.runs[0].seams.is_empty());
    for s in course.runs.iter().flat_map(|r| &r.seams) {
        assert!(windows.iter().all(|(a, b)| *s < a - 0.6 || *s > b + 0.6), "{s}");
    }
}

#[test]
fn the_line_for_the_starter_is_snapped_where_the_job_says() {
    // The butt line is at 0; its line stands 2 in over it where nothing is said, or by the job's figure, below it
    // where that is negative.
    let wall = rect(0.0, 0.0, 300.0, 96.0);
    for (line, said) in [
        (None, "snap the line for its top edge 2\" above them, at 0'-2\""),
        (Some(1.75), "snap the line for its top edge 1 3/4\" above them, at 0'-1 3/4\""),
        (Some(-0.5), "snap the line for its top edge 1/2\" below them, at -0'-0 1/2\""),
    ] {
        let mut job = inches();
        job.courses.datum = Some(0.0);
        job.trim.starter_line = line.unwrap_or(job.trim.starter_line);
        let set = crate::support::lay_set(dxf(&[("A-WALL-OTLN", &wall)]).as_bytes(), &job);
        let text = lapwright::write::report::text(&set.layout, &set.takeoff);
        let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(text.contains(said), "{said}: {text}");
    }
}
