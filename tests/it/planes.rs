//! Walls read from patches of drawn siding, each habit of drawing them by itself. Lengths are inches; areas
//! are reckoned by hand beside each drawing.

use lapwright::finding::house::HouseFinding;
use lapwright::finding::{Finding, FindingKind, Findings, Severity};
use lapwright::job::{Job, file as job_file};
use lapwright::layout::Layout;
use lapwright::layout::wall::{LaidElevation, LaidWall};
use lapwright::model::house::{EdgeKind, HiddenBy, OpeningKind};
use lapwright::model::trim::TrimKind;
use lapwright::pipeline;

use crate::support::{broken, inches, lay};

/// Rings of one hatch.
type Rings<'a> = &'a [&'a [(f64, f64)]];

/// A hatch of level lines 4 in apart, one of them at `level`.
fn siding(rings: Rings, level: f64) -> String {
    let mut out = format!(
        "0\nHATCH\n8\nA-WALL-PATT\n10\n0\n20\n0\n30\n0\n2\nLINES\n70\n0\n71\n0\n91\n{}\n",
        rings.len()
    );
    for ring in rings {
        out.push_str(&format!("92\n7\n72\n0\n73\n1\n93\n{}\n", ring.len()));
        ring.iter().for_each(|(x, y)| out.push_str(&format!("10\n{x}\n20\n{y}\n")));
        out.push_str("97\n0\n");
    }
    let family = format!("53\n0\n43\n0\n44\n{level}\n45\n0\n46\n4\n79\n0\n98\n0\n");
    out + "75\n0\n76\n0\n52\n0\n41\n1\n77\n0\n78\n1\n" + &family
}

fn closed(layer: &str, ring: &[(f64, f64)]) -> String {
    let mut out = format!("0\nLWPOLYLINE\n8\n{layer}\n90\n{}\n70\n1\n", ring.len());
    ring.iter().for_each(|(x, y)| out.push_str(&format!("10\n{x}\n20\n{y}\n")));
    out
}

fn line(layer: &str, (x0, y0): (f64, f64), (x1, y1): (f64, f64)) -> String {
    format!("0\nLINE\n8\n{layer}\n10\n{x0}\n20\n{y0}\n11\n{x1}\n21\n{y1}\n")
}

fn title(text: &str, x: f64, y: f64) -> String {
    format!("0\nTEXT\n8\nA-ELEV-IDEN\n10\n{x}\n20\n{y}\n40\n9\n1\n{text}\n")
}

fn rect(x0: f64, y0: f64, x1: f64, y1: f64) -> [(f64, f64); 4] {
    [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]
}

fn text(entities: &[String]) -> String {
    let text = entities.concat();
    format!(
        "0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n1\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n{text}0\nENDSEC\n0\nEOF\n"
    )
}

/// A job in inches, with more under [drawing].
fn job(more: &str) -> Job {
    job_file::parse(&format!("[drawing]\nunit = \"inch\"\n{more}"), "job").unwrap()
}

/// What is found when entities are read with a job.
fn found(entities: &[String], more: &str) -> Vec<Finding> {
    let mut findings = Findings::default();
    let _ = pipeline::reading(text(entities).as_bytes(), "t.dxf", &job(more), &mut findings);
    findings.all().to_vec()
}

fn read(entities: &[String]) -> Layout {
    let layout = lay(text(entities).as_bytes(), &inches());
    assert_eq!(broken(&layout), Vec::<String>::new());
    layout
}

fn only(layout: &Layout) -> &LaidWall {
    let walls: Vec<&LaidWall> = layout.elevations.iter().flat_map(|e| &e.walls).collect();
    assert_eq!(walls.len(), 1, "{:?}", walls.iter().map(|w| &w.outline).collect::<Vec<_>>());
    walls[0]
}

/// Square inches that are sided.
fn net(wall: &LaidWall) -> f64 {
    wall.net_area * 144.0
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= 2.0
}

/// Left, right, foot and head of each opening.
fn openings(wall: &LaidWall) -> Vec<[f64; 4]> {
    wall.openings.iter().map(|o| [o.left, o.right, o.sill, o.head]).collect()
}

/// Inches of board on the walls.
fn boards(l: &Layout) -> f64 {
    l.trims.iter().filter(|t| t.kind == TrimKind::Band).map(|t| t.length).sum()
}

/// Upright sides of a wall that get a post.
fn posts(wall: &LaidWall) -> Vec<f64> {
    let mut out: Vec<f64> = wall
        .edges
        .iter()
        .filter(|e| matches!(e.kind, EdgeKind::OutsideCorner | EdgeKind::InsideCorner))
        .map(|e| e.from[0])
        .collect();
    out.sort_by(f64::total_cmp);
    out
}

#[test]
fn a_casing_cut_out_of_a_hatch_is_the_opening_with_its_casing() {
    // 240 x 108; the hole is 44 x 56, the glass 36 x 48 in it: casing of 4.
    let wall = read(&[
        siding(&[&rect(0.0, 0.0, 240.0, 108.0), &rect(100.0, 36.0, 144.0, 92.0)], 0.0),
        closed("A-GLAZ", &rect(104.0, 40.0, 140.0, 88.0)),
        closed("A-ELEV", &rect(100.0, 36.0, 144.0, 92.0)),
    ]);
    let wall = only(&wall);
    assert_eq!(openings(wall), [[100.0, 144.0, 36.0, 92.0]]);
    assert!(near(net(wall), 240.0 * 108.0 - 44.0 * 56.0), "{}", net(wall));
    assert_eq!(posts(wall).len(), 2);
}

#[test]
fn openings_in_notches_at_foot_and_head_close_them() {
    // A door notch 44 x 84 from the foot and a window notch 60 x 50 down from the soffit.
    let ring = [
        (0.0, 0.0),
        (40.0, 0.0),
        (40.0, 84.0),
        (84.0, 84.0),
        (84.0, 0.0),
        (300.0, 0.0),
        (300.0, 108.0),
        (220.0, 108.0),
        (220.0, 58.0),
        (160.0, 58.0),
        (160.0, 108.0),
        (0.0, 108.0),
    ];
    let l = read(&[
        siding(&[&ring], 0.0),
        closed("A-DOOR", &rect(44.0, 0.0, 80.0, 80.0)),
        closed("A-GLAZ", &rect(164.0, 62.0, 216.0, 104.0)),
    ]);
    let wall = only(&l);
    assert_eq!(openings(wall), [[40.0, 84.0, 0.0, 84.0], [160.0, 220.0, 58.0, 108.0]]);
    assert_eq!(wall.openings[0].kind, OpeningKind::Door);
    assert!(near(net(wall), 300.0 * 108.0 - 44.0 * 84.0 - 60.0 * 50.0), "{}", net(wall));
    // Ends of the wall, not sides of its openings.
    assert!(posts(wall).iter().all(|x| *x < 6.0 || *x > 294.0), "{:?}", posts(wall));
}

#[test]
fn a_notch_of_a_doors_size_is_a_door_though_none_is_drawn_on_its_layer() {
    // 46 x 87 from the foot; its door is loose lines on a layer without a role.
    let ring = [
        (0.0, 0.0),
        (180.0, 0.0),
        (180.0, 87.0),
        (226.0, 87.0),
        (226.0, 0.0),
        (260.0, 0.0),
        (260.0, 108.0),
        (0.0, 108.0),
    ];
    let l = read(&[siding(&[&ring], 0.0), line("FRONT", (184.0, 0.0), (184.0, 83.0))]);
    let wall = only(&l);
    assert_eq!(openings(wall), [[180.0, 226.0, 0.0, 87.0]]);
    assert_eq!(wall.openings[0].kind, OpeningKind::Door);
    assert!(near(net(wall), 260.0 * 108.0 - 46.0 * 87.0), "{}", net(wall));
}

#[test]
fn a_slit_that_leads_to_a_hole_is_closed() {
    // The outer loop runs in through a slit 1/8 in wide to a hole of 40 x 52.
    let ring = [
        (0.0, 0.0),
        (119.9375, 0.0),
        (119.9375, 36.0),
        (100.0, 36.0),
        (100.0, 88.0),
        (140.0, 88.0),
        (140.0, 36.0),
        (120.0625, 36.0),
        (120.0625, 0.0),
        (240.0, 0.0),
        (240.0, 108.0),
        (0.0, 108.0),
    ];
    let l = read(&[siding(&[&ring], 0.0), closed("A-GLAZ", &rect(104.0, 40.0, 136.0, 84.0))]);
    let wall = only(&l);
    assert_eq!(openings(wall), [[100.0, 140.0, 36.0, 88.0]]);
    assert!(near(net(wall), 240.0 * 108.0 - 40.0 * 52.0), "{}", net(wall));
}

#[test]
fn an_opening_that_straddles_two_patches_joins_them() {
    // Two hatches end at a window's casing from 110 to 154, from foot to head of the wall: under it the
    // left one goes on to 132, over it nothing is hatched.
    let left =
        [(0.0, 0.0), (132.0, 0.0), (132.0, 36.0), (110.0, 36.0), (110.0, 108.0), (0.0, 108.0)];
    let right =
        [(132.0, 0.0), (240.0, 0.0), (240.0, 108.0), (154.0, 108.0), (154.0, 36.0), (132.0, 36.0)];
    let l = read(&[
        siding(&[&left], 0.0),
        siding(&[&right], 0.0),
        line("A-ELEV", (132.0, 0.0), (132.0, 36.0)),
        closed("A-GLAZ", &rect(114.0, 40.0, 150.0, 104.0)),
    ]);
    let wall = only(&l);
    assert_eq!(openings(wall), [[110.0, 154.0, 36.0, 108.0]]);
    assert!(near(net(wall), 240.0 * 108.0 - 44.0 * 72.0), "{}", net(wall));
}

#[test]
fn a_band_between_two_patches_is_a_board_of_one_wall() {
    // A band of 10 from 100 to 110 up; the hatch above has its lines 1 3/4 in higher.
    let l = read(&[
        siding(&[&rect(0.0, 0.0, 240.0, 100.0)], 0.0),
        siding(&[&rect(0.0, 110.0, 240.0, 210.0)], 1.75),
        closed("A-ELEV", &rect(0.0, 100.0, 240.0, 110.0)),
    ]);
    let wall = only(&l);
    assert!(near(net(wall), 240.0 * 200.0), "{}", net(wall));
    assert_eq!(wall.bands.len(), 1);
    assert!(wall.hidden.iter().all(|h| h.by == HiddenBy::Band));
    // It is a line in the takeoff: 20 ft of board.
    assert_eq!(boards(&l), 240.0);
}

#[test]
fn boards_between_patches_take_channels_and_no_posts() {
    // Three hatches with boards of 6 between them, from foot to head, all of one plane.
    let l = read(&[
        siding(&[&rect(0.0, 0.0, 100.0, 108.0)], 0.0),
        siding(&[&rect(106.0, 0.0, 200.0, 108.0)], 0.0),
        siding(&[&rect(206.0, 0.0, 300.0, 108.0)], 0.0),
        closed("A-ELEV", &rect(100.0, 0.0, 106.0, 108.0)),
        closed("A-ELEV", &rect(200.0, 0.0, 206.0, 108.0)),
    ]);
    let wall = only(&l);
    assert!(near(net(wall), 288.0 * 108.0), "{}", net(wall));
    let channels = wall.edges.iter().filter(|e| e.kind == EdgeKind::Abutment).count();
    assert_eq!((channels, posts(wall).len()), (4, 2));
    // Two boards of 9 ft.
    assert_eq!(boards(&l), 216.0);
}

#[test]
fn course_lines_at_other_levels_are_another_plane() {
    // Side by side without a line between; the right one's lines stand 2 in higher.
    let l = read(&[
        siding(&[&rect(0.0, 0.0, 120.0, 108.0)], 0.0),
        siding(&[&rect(120.0, 0.0, 240.0, 108.0)], 2.0),
    ]);
    assert_eq!(l.elevations[0].walls.len(), 2);
}

#[test]
fn a_line_where_foot_and_head_step_is_a_break_of_plane() {
    // A wing 120 wide, 96 high beside a part 200 wide, 200 high from 24 lower; one level of lines.
    let l = read(&[
        siding(&[&rect(0.0, 24.0, 120.0, 120.0)], 0.0),
        siding(&[&rect(120.0, 0.0, 320.0, 200.0)], 0.0),
        line("A-ELEV", (120.0, 0.0), (120.0, 200.0)),
    ]);
    let walls = &l.elevations[0].walls;
    assert_eq!(walls.len(), 2);
    assert!(walls.iter().all(|w| posts(w).len() == 2));
    // Without the line it is one wall with a step.
    let l = read(&[
        siding(&[&rect(0.0, 24.0, 120.0, 120.0)], 0.0),
        siding(&[&rect(120.0, 0.0, 320.0, 200.0)], 0.0),
    ]);
    assert!(near(net(only(&l)), 120.0 * 96.0 + 200.0 * 200.0));
}

#[test]
fn a_line_all_the_way_up_is_a_break_of_plane_where_head_and_foot_both_step_over_bands() {
    // A wall 200 in wide, with a band from 82 to 90 in and siding over it up to 120 in; beside it one 24 in wide and 80
    // in high, which goes on under a band from -8 in down to -32 in.
    let parts = |foot: bool| {
        let mut all = vec![
            siding(&[&rect(0.0, 0.0, 200.0, 82.0)], 0.0),
            siding(&[&rect(0.0, 90.0, 200.0, 120.0)], 0.0),
            siding(&[&rect(200.0, 0.0, 224.0, 80.0)], 0.0),
        ];
        all.extend(foot.then(|| siding(&[&rect(200.0, -32.0, 224.0, -8.0)], 0.0)));
        all
    };
    let widths = |foot: bool, up: f64| -> Vec<f64> {
        let lined = [parts(foot), vec![line("A-DETL", (200.0, 0.0), (200.0, up))]].concat();
        let layout = read(&lined);
        let walls = layout.elevations.iter().flat_map(|e| &e.walls);
        let across = |w: &LaidWall| {
            let xs = || w.outline.iter().map(|p| p[0]);
            xs().fold(f64::MIN, f64::max) - xs().fold(f64::MAX, f64::min)
        };
        walls.map(across).collect()
    };
    assert_eq!(widths(true, 80.0), [200.0, 24.0]);
    // A pipe up to 60 in is none; nor is a line where the feet are level.
    assert_eq!(widths(true, 60.0), [224.0]);
    assert_eq!(widths(false, 80.0), [224.0]);
}

#[test]
fn small_notches_are_drawing_detail() {
    // 1 x 3 in the foot and 2 x 2 in the right side.
    let ring = [
        (0.0, 0.0),
        (60.0, 0.0),
        (60.0, 3.0),
        (61.0, 3.0),
        (61.0, 0.0),
        (240.0, 0.0),
        (240.0, 50.0),
        (238.0, 50.0),
        (238.0, 52.0),
        (240.0, 52.0),
        (240.0, 108.0),
        (0.0, 108.0),
    ];
    let l = read(&[siding(&[&ring], 0.0)]);
    let wall = only(&l);
    assert_eq!(wall.outline.len(), 4, "{:?}", wall.outline);
    assert_eq!(net(wall), 240.0 * 108.0);
}

#[test]
fn a_thin_gap_is_a_band_where_lines_are_drawn_along_it() {
    // An inch between two hatches, from 100 to 101 up, 240 long; the lines go on 4 past the wall.
    let hatches = [
        siding(&[&rect(0.0, 0.0, 240.0, 100.0)], 0.0),
        siding(&[&rect(0.0, 101.0, 240.0, 200.0)], 1.0),
    ];
    let lines = [100.0, 101.0].map(|y| line("0", (-4.0, y), (244.0, y)));
    let l = read(&[hatches.as_slice(), &lines].concat());
    let wall = only(&l);
    assert!(near(net(wall), 240.0 * 199.0), "{}", net(wall));
    assert_eq!((wall.bands.len(), boards(&l)), (1, 240.0));
    // One line is the pen's, and so is none.
    for lines in [&lines[..1], &[]] {
        let l = read(&[hatches.as_slice(), lines].concat());
        assert!(near(net(only(&l)), 240.0 * 200.0), "{}", net(only(&l)));
        assert_eq!(only(&l).bands.len(), 0);
    }
}

#[test]
fn gutters_ends_in_the_end_of_a_wall_leave_it_one_corner() {
    // Two notches of 1 1/2 x 5 1/2 in the right end, at 30 and 80 up: less deep than the 2 in that a post
    // hides, which runs past them.
    let notch = |y: f64| [(240.0, y), (238.5, y), (238.5, y + 5.5), (240.0, y + 5.5)];
    let ring = [
        &[(0.0, 0.0), (240.0, 0.0)],
        &notch(30.0)[..],
        &notch(80.0),
        &rect(0.0, 0.0, 240.0, 108.0)[2..],
    ];
    let l = read(&[siding(&[&ring.concat()], 0.0)]);
    assert_eq!(net(only(&l)), 240.0 * 108.0);
    let corners: Vec<(f64, f64, f64)> =
        l.corners.iter().map(|c| (c.sides[0].x, c.low, c.high)).collect();
    assert_eq!(corners, [(0.0, 0.0, 108.0), (240.0, 0.0, 108.0)]);
}

/// The facade that is told as little sided, in percent, where siding of one size is drawn in a front of
/// 600 x 400.
fn little_sided(width: f64, height: f64) -> Option<f64> {
    let corners = rect(0.0, 0.0, 600.0, 400.0);
    let mut drawn = vec![siding(&[&rect(0.0, 0.0, width, height)], 0.0)];
    drawn.extend((0..4).map(|i| line("X", corners[i], corners[(i + 1) % 4])));
    let view = "[[elevation]]\nname = \"S\"\nregion = [-9.0, -9.0, 609.0, 409.0]\n";
    found(&drawn, view).into_iter().find_map(|f| match f.kind {
        FindingKind::House(HouseFinding::FacadeShare { percent }) => Some(percent),
        _ => None,
    })
}

#[test]
fn siding_that_covers_little_of_a_facade_is_told_with_its_share() {
    // 60 x 96 of 600 x 400: 5,760 of 240,000.
    let percent = little_sided(60.0, 96.0).unwrap();
    assert!((percent - 2.4).abs() < 0.01, "{percent}");
    // 300 x 220 are 27.5 percent.
    assert_eq!(little_sided(300.0, 220.0), None);
}

#[test]
fn what_covers_most_of_a_wall_is_no_opening_unless_the_job_accepts_it() {
    // A wall of 240 x 108, and a loop of 180 x 90 over it in which no hole is hatched: 62.5 percent.
    let wall = siding(&[&rect(0.0, 0.0, 240.0, 108.0)], 0.0);
    let large = [wall.clone(), closed("A-GLAZ", &rect(30.0, 9.0, 210.0, 99.0))];
    let told = |drawn: &[String], job: &str| {
        found(drawn, job).into_iter().find_map(|f| match f.kind {
            FindingKind::House(HouseFinding::OpeningTooLarge { height, percent, .. }) => {
                Some((f.severity(), height, percent))
            }
            _ => None,
        })
    };
    let (severity, height, percent) = told(&large, "").unwrap();
    assert_eq!((severity, height), (Severity::Error, 90.0));
    assert!((percent - 62.5).abs() < 0.01, "{percent}");
    // Accepted it is cut: 240 x 108 less 180 x 90.
    let accept = "accept = [\"opening-too-large\"]\n";
    assert_eq!(told(&large, accept).map(|t| t.0), Some(Severity::Warning));
    let job = job(accept);
    let l = lay(text(&large).as_bytes(), &job);
    assert_eq!(net(only(&l)), 240.0 * 108.0 - 180.0 * 90.0);
    // A window of 60 x 48, and an overhead door of 192 x 84, 62 percent of the wall, are openings.
    for ring in [rect(60.0, 30.0, 120.0, 78.0), rect(24.0, 0.0, 216.0, 84.0)] {
        let drawn = [wall.clone(), closed("A-DOOR", &ring)];
        assert_eq!(told(&drawn, ""), None);
    }
}

#[test]
fn a_porch_roof_parts_the_siding_of_one_wall() {
    // 20 in of roof and beam from 90 to 110 up, drawn 12 past the wall at both sides.
    let l = read(&[
        siding(&[&rect(0.0, 0.0, 240.0, 90.0)], 0.0),
        siding(&[&rect(0.0, 110.0, 240.0, 200.0)], 0.0),
        closed("A-ELEV", &rect(-12.0, 90.0, 252.0, 110.0)),
    ]);
    let wall = only(&l);
    assert_eq!(wall.gross_area * 144.0, 240.0 * 180.0);
    assert_eq!(wall.bands.len(), 0);
    let feet = wall.edges.iter().filter(|e| e.kind == EdgeKind::Base).count();
    assert_eq!(feet, 1, "the upper part does not start on the ground");
}

#[test]
fn windows_on_a_band_and_across_it_are_openings_though_none_is_drawn_on_its_layer() {
    // A wall of 300 by 108 with a band from 40 to 50; a window of 40 by 34 on it, and one of 30 from 20 up to
    // the wall's head, where nothing is over it. Two uprights stand in each.
    let lower = [
        (0.0, 0.0),
        (300.0, 0.0),
        (300.0, 40.0),
        (230.0, 40.0),
        (230.0, 20.0),
        (200.0, 20.0),
        (200.0, 40.0),
        (0.0, 40.0),
    ];
    let left = [
        (0.0, 50.0),
        (60.0, 50.0),
        (60.0, 84.0),
        (100.0, 84.0),
        (100.0, 50.0),
        (200.0, 50.0),
        (200.0, 108.0),
        (0.0, 108.0),
    ];
    let right = rect(230.0, 50.0, 300.0, 108.0);
    let uprights: String =
        [(66.0, 52.0, 82.0), (94.0, 52.0, 82.0), (206.0, 24.0, 104.0), (224.0, 24.0, 104.0)]
            .map(|(x, from, to)| line("0", (x, from), (x, to)))
            .concat();
    let all = [siding(&[&lower], 0.0), siding(&[&left], 0.0), siding(&[&right], 0.0), uprights];
    let l = read(&all);
    let wall = only(&l);
    let mut found = openings(wall);
    found.sort_by(|a, b| a[0].total_cmp(&b[0]));
    assert_eq!(found, [[60.0, 100.0, 50.0, 84.0], [200.0, 230.0, 20.0, 108.0]]);
    // The wall less the band, where no opening stands, and the openings.
    let band = 10.0 * (300.0 - 30.0);
    assert!(near(net(wall), 300.0 * 108.0 - band - 40.0 * 34.0 - 30.0 * 88.0), "{}", net(wall));
}

#[test]
fn a_window_without_a_hole_is_cut_out_of_the_siding() {
    let l = read(&[
        siding(&[&rect(0.0, 0.0, 240.0, 108.0)], 0.0),
        closed("A-GLAZ", &rect(104.0, 40.0, 140.0, 88.0)),
    ]);
    assert!(near(net(only(&l)), 240.0 * 108.0 - 36.0 * 48.0));
}

fn named<'a>(l: &'a Layout, name: &str) -> Option<&'a LaidElevation> {
    l.elevations.iter().find(|e| e.name == name)
}

#[test]
fn a_partial_view_is_not_counted_twice() {
    // The north wall of 300 x 108, and 120 of it drawn again to the right of it.
    let l = read(&[
        siding(&[&rect(0.0, 0.0, 300.0, 108.0)], 0.0),
        title("NORTH ELEVATION", 60.0, -30.0),
        siding(&[&rect(600.0, 0.0, 720.0, 108.0)], 0.0),
        title("PARTIAL NORTH ELEVATION", 600.0, -30.0),
    ]);
    assert!(named(&l, "NORTH ELEVATION").is_some());
    assert_eq!(l.elevations.len(), 1);
    // By itself it is all there is.
    let l = read(&[
        siding(&[&rect(600.0, 0.0, 720.0, 108.0)], 0.0),
        title("PARTIAL NORTH ELEVATION", 600.0, -30.0),
    ]);
    assert_eq!(l.elevations.len(), 1);
}

#[test]
fn no_corner_runs_through_siding_that_goes_on_past_it() {
    // A part 120 wide, 240 high, with a wing 60 wide on its left from 100 to 140: the left side stands on
    // its line below the wing and above it, and nothing stands there in between.
    let ring = [
        (0.0, 0.0),
        (120.0, 0.0),
        (120.0, 240.0),
        (0.0, 240.0),
        (0.0, 140.0),
        (-60.0, 140.0),
        (-60.0, 100.0),
        (0.0, 100.0),
    ];
    let l = read(&[siding(&[&ring], 0.0)]);
    let sides = l.corners.iter().flat_map(|c| &c.sides).filter(|s| s.x == 60.0);
    let mut heights: Vec<(f64, f64)> = sides.map(|s| (s.low, s.high)).collect();
    heights.sort_by(|a, b| a.0.total_cmp(&b.0));
    assert_eq!(heights, [(0.0, 100.0), (140.0, 240.0)]);
    // Without the wing, and with a gap in its place, one corner goes through: a roof parts the siding.
    let l = read(&[
        siding(&[&rect(0.0, 0.0, 120.0, 100.0)], 0.0),
        siding(&[&rect(0.0, 120.0, 120.0, 240.0)], 0.0),
        closed("A-ELEV", &rect(-12.0, 100.0, 132.0, 120.0)),
    ]);
    assert_eq!(l.corners.len(), 2);
}

#[test]
fn a_board_beside_a_window_and_the_window_are_one_notch() {
    // A board of 3/4 in along the left side of a window 44 x 56, from its sill up to the eave.
    let l = read(&[
        closed("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 108.0)),
        closed("A-GLAZ", &rect(100.0, 36.0, 144.0, 92.0)),
        closed("A-WALL-BAND", &rect(99.25, 36.0, 100.0, 108.0)),
    ]);
    let wall = only(&l);
    assert!(near(net(wall), 240.0 * 108.0 - 44.0 * 56.0 - 0.75 * 72.0), "{}", net(wall));
    // Under the sill both are cut round at once: 44 3/4 and the end gap, 1/4 in, on either side.
    let pieces = wall.courses.iter().flat_map(|c| &c.runs).flat_map(|r| &r.pieces);
    let widths: Vec<f64> = pieces.flat_map(|p| &p.notches).map(|n| n.width).collect();
    assert!(widths.contains(&45.25), "{widths:?}");
}

#[test]
fn a_door_before_stone_is_an_opening_where_it_rises_into_the_siding() {
    // Siding 256 x 183 over stone 43 high; a garage door 96 x 82 with a leaf of level joints alone stands before
    // both: a notch of 96 x 39 in the siding's foot. Sides that end at the siding's foot are no door's.
    let ring = [
        (0.0, 43.0),
        (136.0, 43.0),
        (136.0, 82.0),
        (232.0, 82.0),
        (232.0, 43.0),
        (256.0, 43.0),
        (256.0, 226.0),
        (0.0, 226.0),
    ];
    let wall = |foot: f64| {
        let mut all = vec![siding(&[&ring], 43.0), line("X", (136.0, 82.0), (232.0, 82.0))];
        all.extend([136.0, 232.0].map(|x| line("X", (x, foot), (x, 82.0))));
        all.extend([20.0, 41.0, 61.0].map(|y| line("X", (136.0, y), (232.0, y))));
        read(&all)
    };
    let door = wall(0.0);
    // Heights are over the foot of the siding.
    assert_eq!(openings(only(&door)), [[136.0, 232.0, 0.0, 39.0]]);
    assert!(near(net(only(&door)), 256.0 * 183.0 - 96.0 * 39.0), "{}", net(only(&door)));
    assert_eq!(openings(only(&wall(43.0))), [[0.0; 4]; 0]);
}

#[test]
fn siding_that_no_wall_comes_of_is_told_where_it_is_drawn() {
    // A wall of 240 x 108, and in another view six strips of 240 x 1 1/2 in, too narrow for a panel.
    let strip = |k: f64| siding(&[&rect(600.0, 20.0 * k, 840.0, 20.0 * k + 1.5)], 0.0);
    let mut all = vec![siding(&[&rect(0.0, 0.0, 240.0, 108.0)], 0.0)];
    all.extend([title("NORTH ELEVATION", 60.0, -30.0), title("SOUTH ELEVATION", 660.0, -30.0)]);
    let lost = |all: &[String]| {
        let told = found(all, "").into_iter().filter(|f| f.code().word() == "lines-no-siding");
        told.map(|f| (f.severity(), f.at.is_some_and(|p| p.x > 600.0))).collect::<Vec<_>>()
    };
    assert_eq!(lost(&all), []);
    all.extend((0..6).map(|k| strip(f64::from(k))));
    assert_eq!(lost(&all), [(Severity::Warning, true)]);
}
