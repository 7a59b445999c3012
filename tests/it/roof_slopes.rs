//! Lower roofs along walls: where water is turned out, and what their slopes are cut by. Reckoned by hand.

use lapwright::job::Job;
use lapwright::layout::set::LaidSet;
use lapwright::model::basis::Basis;
use lapwright::model::work::{FlashedPlace, WorkStep};

use crate::sheets::texts;
use crate::support::{broken, dxf, inches, lay_set, rect, sheets};

/// A wall so wide and 10 ft high, and a lean-to roof falling from 80 in at its left end to 20 in at 120 in:
/// 6 in 12.
fn lean_to(wide: f64) -> LaidSet {
    lean_to_under(wide, &inches())
}

fn lean_to_under(wide: f64, job: &Job) -> LaidSet {
    let roof = [(0.0, 20.0), (120.0, 20.0), (0.0, 80.0)];
    let wall = rect(0.0, 0.0, wide, 120.0);
    let drawing = dxf(&[("A-WALL-OTLN", &wall), ("A-ROOF-OTLN", &roof)]);
    let set = lay_set(drawing.as_bytes(), job);
    assert_eq!(broken(&set.layout), Vec::<String>::new(), "{wide}");
    set
}

fn ordered(set: &LaidSet, id: &str) -> Option<f64> {
    let mut lines = set.takeoff.lines.iter().filter(|l| l.item.id() == id);
    lines.next().map(|l| l.order)
}

#[test]
fn a_kick_out_stands_where_the_roof_ends_and_the_wall_goes_on() {
    // The whole slope: hypot(120, 60) = 134.2 in, and 4 in round the corner at its top: 138.2 in, 11.5 ft; its
    // foot stands 10 ft from the wall's end.
    let set = lean_to(240.0);
    assert_eq!(ordered(&set, "step-flashing"), Some(12.0));
    assert_eq!(ordered(&set, "kick-out"), Some(1.0));
    assert_eq!(told(&set), [true, true, true]);
    // The roof runs on past the corner: hypot(110, 55) = 123.0 in, and 4 in round both corners: 131.0 in,
    // 10.9 ft; water falls clear of the wall.
    let set = lean_to(110.0);
    assert_eq!(ordered(&set, "step-flashing"), Some(11.0));
    assert_eq!(ordered(&set, "kick-out"), None);
    assert_eq!(told(&set), [false, false, false]);
}

/// Whether a kick-out is in the order of work, in the key of a sheet, and a detail.
fn told(set: &LaidSet) -> [bool; 3] {
    let steps = set.layout.work.walls.iter().flat_map(|w| &w.steps);
    let flashed = steps.filter_map(|s| match s {
        WorkStep::Barrier { flashing } => Some(flashing),
        _ => None,
    });
    let sheets = sheets(set);
    let says = |details: bool, words: &str| {
        let of = sheets.iter().filter(|s| s.title.starts_with("Details") == details);
        of.flat_map(texts).any(|t| t.content.contains(words))
    };
    assert!(says(false, "step flashing: 4 x 4 in"));
    [
        flashed.flatten().any(|p| *p == FlashedPlace::KickOut),
        says(false, "kick-out: large"),
        says(true, "ick-out"),
    ]
}

#[test]
fn step_flashing_runs_behind_corner_posts() {
    // The same roofs where panels stop 2 or 5 in short of both corners, at the posts: the flashing is as
    // long as without posts, hypot(110, 55) along the roof that runs past the corner, and that one needs no
    // kick-out: no wall goes on past the corner.
    for (back, wide, outs) in [(2.0, 110.0, None), (2.0, 240.0, Some(1.0)), (5.0, 110.0, None)] {
        let mut job = inches();
        job.product.outside_post_set_back = Some(back);
        let set = lean_to_under(wide, &job);
        let bare = lean_to(wide);
        let slope = |set: &LaidSet| {
            set.takeoff.lines.iter().find(|l| l.item.id() == "step-flashing").unwrap().net
        };
        assert!((slope(&set) - slope(&bare)).abs() < 1e-3, "{wide}: {}", slope(&set));
        if wide < 120.0 {
            assert!((slope(&set) * 12.0 - f64::hypot(110.0, 55.0) - 8.0).abs() < 0.01);
        }
        assert_eq!(ordered(&set, "kick-out"), outs, "{back}, {wide}");
        crate::recount::check(&crate::recount::written(&set.layout), "behind posts");
    }
}

#[test]
fn step_flashing_is_turned_round_the_corners_it_ends_at() {
    // As a level run is: a roof that meets a corner sheds water at it, and a wall goes on round it. Along
    // hypot(120, 60) = 134.2 in stand 27 pieces (26.8 of 5 in) and one more; its top is at the corner, where
    // another is bent round. Along hypot(110, 55) = 123.0 in 25 (24.6) and one, and one at either end.
    let basis = |wide: f64, job: &Job| {
        let set = lean_to_under(wide, job);
        crate::recount::check(&crate::recount::written(&set.layout), "turned");
        let line = set.takeoff.lines.iter().find(|l| l.item.id() == "step-flashing").unwrap();
        (line.basis.clone(), line.net * 12.0)
    };
    let slopes = |pieces, turned, turn| Basis::RoofSlopes { pieces, exposure: 5.0, turned, turn };
    let (said, inches_long) = basis(240.0, &inches());
    assert_eq!(said, slopes(29, 1, 4.0));
    assert!((inches_long - f64::hypot(120.0, 60.0) - 4.0).abs() < 0.01, "{inches_long}");
    let mut job = inches();
    job.takeoff.flashing_lap = 6.0;
    let (said, inches_long) = basis(110.0, &job);
    assert_eq!(said, slopes(28, 2, 6.0));
    assert!((inches_long - f64::hypot(110.0, 55.0) - 12.0).abs() < 0.01, "{inches_long}");
}

#[test]
fn a_house_without_a_gable_has_no_gable_pattern() {
    let titles: Vec<String> = sheets(&lean_to(240.0)).into_iter().map(|s| s.title).collect();
    assert!(titles.contains(&"Lower roof pattern, 6 in 12".to_owned()), "{titles:?}");
    assert!(titles.iter().all(|t| !t.contains("Gable")), "{titles:?}");
}

#[test]
fn a_slope_that_steps_farther_than_half_a_panel_has_no_pattern() {
    // 1/2 in 12: a course of 8 in steps 12 x 8 / (1/2) = 192 in, more than a panel of 150 is long.
    let roof = [(0.0, 20.0), (120.0, 20.0), (0.0, 25.0)];
    let wall = rect(0.0, 0.0, 240.0, 120.0);
    let drawing = dxf(&[("A-WALL-OTLN", &wall), ("A-ROOF-OTLN", &roof)]);
    let set = lay_set(drawing.as_bytes(), &inches());
    assert_eq!(broken(&set.layout), Vec::<String>::new());
    let titles: Vec<String> = sheets(&set).into_iter().map(|s| s.title).collect();
    assert!(titles.iter().all(|t| !t.contains("pattern")), "{titles:?}");
}
