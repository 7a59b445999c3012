//! What the job says of walls by hand: given outright, left out, taken as one, their siding's layer. Areas
//! are reckoned from the drawn rectangles.

use std::fmt::Write;

use lapwright::finding::by_hand::HandFinding;
use lapwright::finding::{Finding, FindingKind, Findings, Severity};
use lapwright::job::file as job_file;
use lapwright::layout::Layout;
use lapwright::layout::wall::LaidWall;
use lapwright::model::house::OpeningKind;
use lapwright::pipeline;

use crate::small_walls::job;
use crate::support::{broken, dxf, rect};

const WALL: &str = "A-WALL-OTLN";

/// A drawing of closed rings with more entities.
fn drawing(rings: &[(&str, &[(f64, f64)])], more: &str) -> String {
    dxf(rings).replace("0\nENDSEC\n", &format!("{more}0\nENDSEC\n"))
}

/// Level lines 8 in apart in a rectangle, as a hatch; upright ones where they are turned.
fn hatch(layer: &str, [x0, y0, x1, y1]: [f64; 4], angle: f64) -> String {
    let mut out = format!(
        "0\nHATCH\n8\n{layer}\n10\n0\n20\n0\n30\n0\n2\nLAP\n70\n0\n71\n0\n91\n1\n92\n7\n72\n0\n73\n1\n93\n4\n"
    );
    for (x, y) in rect(x0, y0, x1, y1) {
        let _ = write!(out, "10\n{x}\n20\n{y}\n");
    }
    let (dx, dy) = if angle == 0.0 { (0, 8) } else { (8, 0) };
    let _ = write!(
        out,
        "97\n0\n75\n0\n76\n1\n52\n0\n41\n1\n77\n0\n78\n1\n53\n{angle}\n43\n0\n44\n0\n45\n{dx}\n46\n{dy}\n79\n0\n98\n0\n"
    );
    out
}

fn line(layer: &str, (x0, y0): (f64, f64), (x1, y1): (f64, f64)) -> String {
    format!("0\nLINE\n8\n{layer}\n10\n{x0}\n20\n{y0}\n11\n{x1}\n21\n{y1}\n")
}

fn title(at: (f64, f64), words: &str) -> String {
    format!("0\nTEXT\n8\nA-ELEV-IDEN\n10\n{}\n20\n{}\n40\n9\n1\n{words}\n", at.0, at.1)
}

/// The layout, every rule kept, or the finding that stops it; and what was found.
fn laid(drawing: &str, more: &str) -> (Result<Layout, Finding>, Vec<Finding>) {
    // Keys of no table stand first in a job file.
    let (bare, tables): (Vec<&str>, Vec<&str>) =
        more.lines().partition(|l| l.starts_with("skip") || l.starts_with("join"));
    let settings = job(&tables.join("\n"));
    let names = job_file::parse(&bare.join("\n"), "job").unwrap();
    let job = lapwright::job::Job { skip: names.skip, join: names.join, ..settings };
    let mut findings = Findings::default();
    let made = pipeline::layout(drawing.as_bytes(), "t.dxf", &job, &mut findings, &mut |_| {});
    let made = made.map(|s| s.house.layout).map_err(|r| *r.0);
    if let Ok(l) = &made {
        assert_eq!(broken(l), Vec::<String>::new());
    }
    (made, findings.all().to_vec())
}

fn whole(drawing: &str, more: &str) -> (Vec<LaidWall>, Vec<Finding>) {
    let (made, found) = laid(drawing, more);
    let l = made.unwrap_or_else(|f| panic!("{f:?}"));
    (l.elevations.clone().into_iter().flat_map(|e| e.walls).collect(), found)
}

fn codes(found: &[Finding]) -> Vec<&'static str> {
    found.iter().map(|f| f.code().word()).collect()
}

fn names(walls: &[LaidWall]) -> Vec<&str> {
    walls.iter().map(|w| w.id.as_str()).collect()
}

fn refused(drawing: &str, more: &str) -> Finding {
    laid(drawing, more).0.expect_err("it is laid out")
}

/// Three walls of one front, 20 in apart, 240, 100 and 60 wide and 96 high, with a window on the second.
fn three() -> String {
    drawing(
        &[
            (WALL, &rect(0.0, 0.0, 240.0, 96.0)),
            (WALL, &rect(260.0, 0.0, 360.0, 96.0)),
            (WALL, &rect(380.0, 0.0, 440.0, 96.0)),
            ("A-GLAZ", &rect(290.0, 36.0, 320.0, 84.0)),
        ],
        "",
    )
}

#[test]
fn a_wall_given_outright_is_laid_out_in_the_drawings_own_units() {
    // A drawing in millimeters: 6096 by 2438.4 mm are 20 ft by 8 ft, a window of 3 ft by 4 ft in it, given
    // too, and nothing is drawn on any layer with a role.
    let d = drawing(
        &[("X", &rect(0.0, 0.0, 6096.0, 2438.4))],
        &title((0.0, -600.0), "NORTH ELEVATION"),
    );
    let given = "[[wall]]\nelevation = \"North Elevation\"\noutline = [[0, 0], [6096, 2438.4]]\n[[opening]]\noutline = [[1219.2, 914.4], [2133.6, 2133.6]]\n";
    let settings = format!("[drawing]\nunit = \"mm\"\n[seams]\neffort = \"crew\"\n{given}");
    let job = job_file::parse(&settings, "job").unwrap();
    let mut findings = Findings::default();
    let l = pipeline::layout(d.as_bytes(), "t.dxf", &job, &mut findings, &mut |_| {}).unwrap();
    let e = &l.house.layout.elevations[0];
    assert_eq!((e.name.as_str(), e.walls.len()), ("NORTH ELEVATION", 1));
    let w = &e.walls[0];
    assert_eq!(w.id, "north-1");
    assert!((w.gross_area - 160.0).abs() < 0.01, "{}", w.gross_area);
    assert!((w.net_area - (160.0 - 12.0)).abs() < 0.01, "{}", w.net_area);
    assert_eq!(w.openings[0].kind, OpeningKind::Window);
    // As the job says its title, capitals or not; another name is refused with those there are.
    let titled = three()
        .replace("0\nENDSEC\n", &format!("{}0\nENDSEC\n", title((0.0, -30.0), "NORTH ELEVATION")));
    let fault =
        refused(&titled, "[[wall]]\nelevation = \"Nroth\"\noutline = [[0, 0], [240, 96]]\n");
    let FindingKind::Hand(HandFinding::GivenOutside { named, elevations, .. }) = fault.kind else {
        panic!("{fault:?}")
    };
    assert_eq!((named.as_deref(), elevations.len()), (Some("Nroth"), 1));
}

#[test]
fn a_drawn_wall_gives_way_to_a_given_one() {
    // The given wall is the first two and the 20 in between.
    let (walls, found) = whole(&three(), "[[wall]]\noutline = [[0, 0], [360, 96]]\n");
    // The third drawn wall keeps the name that it has without the given one.
    assert_eq!(names(&walls), ["wall-1", "wall-3"]);
    assert_eq!(walls[0].gross_area, 360.0 * 96.0 / 144.0);
    assert_eq!(walls[0].net_area, (360.0 * 96.0 - 30.0 * 48.0) / 144.0);
    let told: Vec<_> = found
        .iter()
        .filter_map(|f| match &f.kind {
            FindingKind::Hand(HandFinding::WallGivesWay { number, area, percent, .. }) => {
                Some((*number, *area, *percent, f.severity()))
            }
            _ => None,
        })
        .collect();
    assert_eq!(
        told,
        [(1, 160.0, 100.0, Severity::Info), (1, 100.0 * 96.0 / 144.0, 100.0, Severity::Info)]
    );
    assert!(!codes(&found).contains(&"drawn-unused"), "{:?}", codes(&found));
    // One that covers a quarter of a drawn wall says so.
    let (_, found) = whole(&three(), "[[wall]]\noutline = [[0, 0], [60, 96]]\n");
    let way = found.iter().find(|f| f.code().word() == "wall-gives-way").unwrap();
    assert_eq!(way.severity(), Severity::Warning);
    assert!(matches!(way.kind, FindingKind::Hand(HandFinding::WallGivesWay { percent: 25.0, .. })));
}

#[test]
fn a_given_opening_goes_before_the_drawn_one_and_says_what_it_is() {
    // In place of the window 30 by 48 one of 40 by 60; a door by its place; a vent by its word.
    let given = "[[opening]]\noutline = [[285, 30], [325, 90]]\n[[opening]]\noutline = [[10, 0], [46, 80]]\n[[opening]]\nkind = \"vent\"\noutline = [[100, 60], [112, 60], [112, 72], [100, 72]]\n";
    let (walls, _) = whole(&three(), given);
    let kinds = |w: &LaidWall| w.openings.iter().map(|o| o.kind).collect::<Vec<_>>();
    assert_eq!(kinds(&walls[0]), [OpeningKind::Door, OpeningKind::Vent]);
    assert_eq!(walls[0].net_area, (240.0 * 96.0 - 36.0 * 80.0 - 144.0) / 144.0);
    assert_eq!(walls[1].net_area, (100.0 * 96.0 - 40.0 * 60.0) / 144.0);
    // Outside every wall it is refused as a drawn one is; outside every elevation by its number.
    let fault = refused(&three(), "[[opening]]\noutline = [[242, 20], [258, 40]]\n");
    assert_eq!(fault.code().word(), "opening-outside");
    let fault = refused(&three(), "[[opening]]\noutline = [[9000, 20], [9020, 40]]\n");
    assert!(matches!(fault.kind, FindingKind::Hand(HandFinding::GivenOutside { number: 1, .. })));
}

#[test]
fn names_stay_the_same_when_walls_are_left_out() {
    let (walls, found) = whole(&three(), "skip = [\"wall-2\"]");
    assert_eq!(names(&walls), ["wall-1", "wall-3"]);
    assert!(codes(&found).contains(&"left-out-by-job"));
    // Its window is left out with it, which is meant.
    let unused = found.iter().find(|f| f.code().word() == "drawn-unused").unwrap();
    assert_eq!(unused.severity(), Severity::Info);
    let (walls, _) = whole(&three(), "skip = [\"wall-1\", \"wall-2\"]");
    assert_eq!(names(&walls), ["wall-3"]);
    // An opening alone: siding goes over its place.
    let (walls, _) = whole(&three(), "skip = [\"wall-W1\"]");
    assert_eq!((walls[1].openings.len(), walls[1].net_area), (0, 100.0 * 96.0 / 144.0));
    let fault = refused(&three(), "skip = [\"wall-4\"]");
    let FindingKind::Hand(HandFinding::WallUnknown { named, walls, .. }) = fault.kind else {
        panic!("{fault:?}")
    };
    assert_eq!(named, "wall-4");
    assert_eq!(walls, ["wall-1", "wall-2", "wall-3"]);
}

#[test]
fn a_wall_that_is_given_is_not_left_out_and_leaves_the_names_of_others_as_they_are() {
    // The second wall is left out and given anew, smaller: it stays, under its name.
    let (walls, found) =
        whole(&three(), "skip = [\"wall-2\"]\n[[wall]]\noutline = [[260, 0], [350, 96]]");
    assert_eq!(names(&walls), ["wall-1", "wall-2", "wall-3"]);
    assert_eq!(walls[1].gross_area, 90.0 * 96.0 / 144.0);
    assert!(codes(&found).contains(&"given-stays"));
    assert!(!codes(&found).contains(&"left-out-by-job"));
    // One given between the first two is the fourth: the second that is drawn is the one that is left out.
    let (walls, _) =
        whole(&three(), "skip = [\"wall-2\"]\n[[wall]]\noutline = [[245, 0], [255, 96]]");
    assert_eq!(names(&walls), ["wall-1", "wall-4", "wall-3"]);
    let (walls, _) = whole(&three(), "[[wall]]\noutline = [[245, 0], [255, 96]]");
    assert_eq!(names(&walls), ["wall-1", "wall-4", "wall-2", "wall-3"]);
}

#[test]
fn where_every_wall_is_left_out_that_is_why_there_is_none() {
    let fault = refused(&three(), "skip = [\"wall-1\", \"wall-2\", \"wall-3\"]");
    assert_eq!(fault.code().word(), "no-walls");
    let words = crate::support::said(&fault);
    let why = "the job leaves out every wall that was found: wall-1, wall-2, wall-3";
    assert!(words.contains(why) && !words.contains("neither"), "{words}");
}

#[test]
fn one_of_two_walls_that_overlap_can_be_left_out_by_name() {
    let d = dxf(&[(WALL, &rect(0.0, 0.0, 240.0, 96.0)), (WALL, &rect(120.0, 0.0, 360.0, 96.0))]);
    assert_eq!(refused(&d, "").code().word(), "walls-overlap");
    assert!(crate::support::said(&refused(&d, "")).contains("wall-2"));
    assert_eq!(names(&whole(&d, "skip = [\"wall-2\"]").0), ["wall-1"]);
}

#[test]
fn joined_walls_are_one_plane_with_what_is_drawn_between() {
    // Nothing is drawn in the first gap of 20 in; in the second stands a window of 12 in with a casing of
    // 4 in at each side, 30 to 70 up, and 26 in of nothing over it and under it.
    let window = rect(364.0, 30.0, 376.0, 70.0);
    let d = dxf(&[
        (WALL, &rect(0.0, 0.0, 240.0, 96.0)),
        (WALL, &rect(260.0, 0.0, 360.0, 96.0)),
        (WALL, &rect(380.0, 0.0, 440.0, 96.0)),
        ("A-GLAZ", &window),
    ]);
    let (walls, found) = whole(&d, "join = [[\"wall-2\", \"wall-3\"]]");
    assert_eq!(names(&walls), ["wall-1", "wall-2"]);
    let w = &walls[1];
    // What is bare over and under the window is no wall: 180 by 96 less 20 by 56.
    assert_eq!(w.gross_area, (180.0 * 96.0 - 20.0 * 56.0) / 144.0);
    // The window takes the width of the gap, and its own height.
    let around: Vec<f64> = w.openings[0].outline.iter().map(|p| p[0]).collect();
    assert_eq!(around.iter().copied().fold(0.0, f64::max), 380.0);
    assert_eq!(around.iter().copied().fold(1e9, f64::min), 360.0);
    assert_eq!(w.net_area, 160.0 * 96.0 / 144.0);
    let joined = found.iter().find(|f| f.code().word() == "walls-joined").unwrap();
    assert_eq!(joined.severity(), Severity::Warning);
    let FindingKind::Hand(HandFinding::WallsJoined { openings, bare, .. }) = &joined.kind else {
        panic!("{joined:?}")
    };
    assert_eq!((*openings, *bare), (1, 20.0 * (96.0 - 40.0) / 144.0));
    // All three, and a wall between that is not named.
    let (walls, _) = whole(&d, "join = [[\"wall-1\", \"wall-2\", \"wall-3\"]]");
    assert_eq!((walls.len(), walls[0].net_area), (1, 400.0 * 96.0 / 144.0));
    let fault = refused(&d, "join = [[\"wall-1\", \"wall-3\"]]");
    assert!(crate::support::said(&fault).contains("wall-2 stands between"), "{fault:?}");
}

#[test]
fn a_board_drawn_between_joined_walls_parts_them_as_one() {
    // Two fields over each other, 10 in apart, lines along both: a band board. 240 in of it are ordered.
    let lines = line("0", (0.0, 60.0), (240.0, 60.0)) + &line("0", (0.0, 70.0), (240.0, 70.0));
    let d = drawing(
        &[(WALL, &rect(0.0, 0.0, 240.0, 60.0)), (WALL, &rect(0.0, 70.0, 240.0, 130.0))],
        &lines,
    );
    let (walls, found) = whole(&d, "join = [[\"wall-1\", \"wall-2\"]]");
    assert_eq!((walls.len(), walls[0].net_area), (1, 240.0 * 120.0 / 144.0));
    let joined = found.iter().find(|f| f.code().word() == "walls-joined").unwrap();
    assert_eq!(joined.severity(), Severity::Info);
    assert!(crate::support::said(joined).contains("between them 1 board"), "{joined:?}");
    assert!(!walls[0].bands.is_empty());
}

#[test]
fn a_views_siding_layer_is_its_siding_and_nothing_else() {
    // One front hatched on two layers, level on both: boards on S, shadow lines on T.
    let d = drawing(
        &[],
        &(hatch("S", [0.0, 0.0, 240.0, 96.0], 0.0)
            + &hatch("T", [260.0, 0.0, 360.0, 96.0], 0.0)
            + &title((0.0, -30.0), "SOUTH ELEVATION")),
    );
    assert_eq!(whole(&d, "").0.len(), 2);
    let (walls, _) = whole(&d, "[[elevation]]\nname = \"South Elevation\"\nsiding_layer = \"S\"\n");
    assert_eq!((walls.len(), walls[0].gross_area), (1, 160.0));
    let fault = refused(&d, "[[elevation]]\nname = \"South Elevation\"\nsiding_layer = \"Q\"\n");
    let FindingKind::Hand(HandFinding::SidingLayerEmpty { named, layers, .. }) = fault.kind else {
        panic!("{fault:?}")
    };
    assert_eq!((named.as_str(), layers), ("Q", vec!["S".to_owned(), "T".to_owned()]));
    // Its lines serve too: courses of 8 in between two sides.
    let mut courses = line("C", (0.0, 0.0), (0.0, 96.0)) + &line("C", (240.0, 0.0), (240.0, 96.0));
    for k in 0..=12 {
        let y = 8.0 * f64::from(k);
        courses += &line("C", (0.0, y), (240.0, y));
    }
    let view =
        "[[elevation]]\nname = \"South\"\nregion = [-50, -50, 300, 150]\nsiding_layer = \"C\"\n";
    let (walls, _) = whole(&drawing(&[], &courses), view);
    assert_eq!((walls.len(), walls[0].gross_area), (1, 160.0));
}

#[test]
fn a_hatch_layer_named_as_wall_is_a_siding_layer() {
    // Upright lines are no lap siding by themselves; stray lines lie on the layer.
    let stray = line("CLAD", (0.0, 40.0), (50.0, 44.0)) + &line("CLAD", (0.0, 0.0), (0.0, 96.0));
    let d = drawing(&[], &(hatch("CLAD", [0.0, 0.0, 240.0, 96.0], 90.0) + &stray));
    assert_eq!(refused(&d, "").code().word(), "no-walls");
    let (walls, _) = whole(&d, "[layers]\nwall = [\"CLAD\"]\n");
    assert_eq!((walls.len(), walls[0].gross_area), (1, 160.0));
    // Where some of its hatches are level, these alone are siding.
    let d = d.replace(
        "0\nENDSEC\n",
        &format!("{}0\nENDSEC\n", hatch("CLAD", [0.0, 100.0, 240.0, 148.0], 0.0)),
    );
    let (walls, _) = whole(&d, "[layers]\nwall = [\"CLAD\"]\n");
    assert_eq!((walls.len(), walls[0].gross_area), (1, 80.0));
}

#[test]
fn faults_of_what_is_given_stand_at_their_place() {
    let at = |text: &str| {
        let refused = job_file::parse(text, "job.toml").unwrap_err().0;
        let FindingKind::Job(kind) = refused.kind else { panic!("{:?}", refused.kind) };
        format!("{kind:?}")
    };
    let found = at("skip = [\"a-1\", \"a-1\"]\n");
    assert!(found.contains("NamedTwice") && found.contains("line: 1, column: 16"), "{found}");
    let found = at("join = [[\"a-1\", \"a-2\"], [\"a-3\"]]\n");
    assert!(found.contains("JoinsNothing") && found.contains("column: 25"), "{found}");
    let found = at("[[wall]]\noutline = [[0, 0], [0, 9]]\n");
    assert!(found.contains("OutlineEmpty") && found.contains("line: 2, column: 11"), "{found}");
    let found = at("[[opening]]\nkind = \"hatch\"\noutline = [[0, 0], [4, 9]]\n");
    assert!(found.contains("overhead-door"), "{found}");
    let found = at("[[elevation]]\nname = \"S\"\nsiding_layer = \"\"\n");
    assert!(found.contains("NameEmpty"), "{found}");
}
