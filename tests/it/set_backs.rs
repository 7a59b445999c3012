//! Set-backs at corners: where siding ends, every figure reckoned by hand from the drawing. Double 4, so
//! courses of 8 in; end gap 1/4 in (`SidingFact::EndGap`); foam-backed lap 1 1/4 in. Set-backs are common
//! practice without a source: 2 in outside, 1 in inside.

use lapwright::finding::{Finding, Findings};
use lapwright::job::Job;
use lapwright::job::file as job_file;
use lapwright::language::Language;
use lapwright::layout::Layout;
use lapwright::layout::wall::LaidWall;
use lapwright::model::trim::{TrimKind, TrimPiece};
use lapwright::pipeline;
use lapwright::wording::siding::edges_as_drawn;

use crate::small_walls::{lengths, of};
use crate::support::{advised, broken, dxf, lay_sets, rect, said};

/// A ring on its layer.
type Ring<'a> = (&'a str, &'a [(f64, f64)]);

fn job(more: &str) -> Job {
    let text = format!("[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n{more}");
    job_file::parse(&text, "job").unwrap()
}

/// A drawing laid out with all rules kept, and what was found of it.
fn laid(rings: &[Ring], more: &str) -> (Layout, Findings) {
    let mut found = Findings::default();
    let drawing = dxf(rings);
    let sets =
        pipeline::layout(drawing.as_bytes(), "t.dxf", &job(more), &mut found, &mut |_| {}).unwrap();
    let layout = sets.house.layout;
    assert_eq!(broken(&layout), Vec::<String>::new(), "{more}");
    (layout, found)
}

fn coded<'a>(found: &'a Findings, code: &str) -> Vec<&'a Finding> {
    found.all().iter().filter(|f| f.code().word() == code).collect()
}

/// Left end and length of every piece of a wall, course by course.
fn pieces(w: &LaidWall) -> Vec<(f64, f64)> {
    let runs = w.courses.iter().flat_map(|c| &c.runs);
    runs.flat_map(|r| &r.pieces).map(|p| (p.x0, p.length)).collect()
}

/// Pocket bottoms of a wall's runs, each once.
fn pockets(w: &LaidWall) -> Vec<(f64, f64)> {
    let mut out: Vec<(f64, f64)> =
        w.courses.iter().flat_map(|c| &c.runs).map(|r| (r.x0, r.x1)).collect();
    out.dedup();
    out
}

fn wall<'a>(l: &'a Layout, id: &str) -> &'a LaidWall {
    l.walls().find(|(_, w)| w.id == id).unwrap().1
}

#[test]
fn a_wall_of_twenty_five_feet_takes_two_panels_a_course_between_its_posts() {
    // 300 in. From corner to corner 300 less two gaps is 299 1/2, more than two panels of 150 lapped
    // by 1 1/4 reach, 298 3/4: three. Between pockets 2 in off either corner it is 296, 295 1/2 to
    // cover: two.
    let ring = rect(0.0, 0.0, 300.0, 8.0);
    let bare = laid(&[("A-WALL-OTLN", &ring)], "[product]\noutside_post_set_back = 0\n").0;
    assert_eq!(bare.panels.len(), 3);
    let (l, _) = laid(&[("A-WALL-OTLN", &ring)], "");
    assert_eq!(l.panels.len(), 2);
    let w = wall(&l, "wall-1");
    assert_eq!(pockets(w), [(2.0, 298.0)]);
    // From 2 1/4; the pieces lapped by 1 1/4 cover 295 1/2: together 296 3/4.
    let all = pieces(w);
    assert_eq!(all[0].0, 2.25);
    assert!((all.iter().map(|p| p.1).sum::<f64>() - 296.75).abs() < 1e-9, "{all:?}");
    // Starter between the posts, 1/4 off them and between lengths: 295 1/2 of 10 ft stock is 120,
    // 120 and 55. Finish trim along the top of 296, of 12 ft lapped by 3/4: 144, 144, 9 1/2.
    assert_eq!(lengths(&l, TrimKind::Starter), [120.0, 120.0, 55.0]);
    assert_eq!(lengths(&l, TrimKind::FinishTrim), [144.0, 144.0, 9.5]);
    // Posts stand at the drawn corners, as high as ever: 8 - 1/4 + 3/4.
    let posts: Vec<(f64, f64)> =
        of(&l, TrimKind::OutsidePost).iter().map(|t| (t.from[0], t.length)).collect();
    assert_eq!(posts, [(0.0, 8.5), (300.0, 8.5)]);
    // The wall is as large as it is drawn: 300 x 8 sq in.
    assert!((w.net_area * 144.0 - 2400.0).abs() < 1e-6);
}

#[test]
fn a_window_wall_between_posts_of_its_own_set_back() {
    // 144 wide with a window from 54 to 90: beside it 54 less 1 1/2 at the post and two gaps is 52,
    // from 1 3/4 on the left and from 90 1/4 on the right. Under and over it 144 less 3 and two gaps:
    // 140 1/2.
    let rings: [Ring; 2] =
        [("A-WALL-OTLN", &rect(0.0, 0.0, 144.0, 96.0)), ("A-GLAZ", &rect(54.0, 32.0, 90.0, 72.0))];
    let more = "[product]\noutside_post_set_back = \"1 1/2\\\"\"\n[courses]\ndatum = 0\n";
    let (l, found) = laid(&rings, more);
    let all = pieces(wall(&l, "wall-1"));
    let beside = [(1.75, 52.0), (90.25, 52.0)];
    assert!(all.iter().all(|p| *p == (1.75, 140.5) || beside.contains(p)), "{all:?}");
    assert_eq!(all.iter().filter(|p| beside.contains(p)).count(), 10);
    // Given, so it is not asked for; there is no inside corner to ask of.
    assert!(coded(&found, "set-back-taken").is_empty());
    // Channels stand at the drawn opening: 36 + 2 x 3/4.
    assert_eq!(lengths(&l, TrimKind::HeadChannel), [37.5]);
}

#[test]
fn a_rake_goes_on_rising_over_the_post() {
    // 24 ft span, 4 in 12 from 40 up. The pocket is at 2, where the rake stands 2 / 3 over 40: the end
    // of the course over 40 is plumb for 2/3 in, then follows the rake. One gap beyond the rake's own
    // line, 3 (y - 40) + 1/4, it is at 24 1/4 at the top, 22 from where the piece begins, 2 1/4.
    let gable = [(0.0, 0.0), (288.0, 0.0), (288.0, 40.0), (144.0, 88.0), (0.0, 40.0)];
    let more =
        "[product]\nlength = 300\nend_gap = 0.25\n[courses]\ndatum = 0\n[trim]\nj_channel = 192\n";
    let (l, _) = laid(&[("A-WALL-OTLN", &gable)], more);
    let w = wall(&l, "wall-1");
    let sixth = &w.courses[5].runs[0].pieces[0];
    assert_eq!((sixth.x0, sixth.length), (2.25, 283.5));
    let cut = &sixth.ends[0].contour.as_ref().unwrap().points;
    let wanted = [[0.0, 0.0], [0.0, 2.0 / 3.0], [22.0, 8.0]];
    let near = |p: &[f64; 2], q: &[f64; 2]| (p[0] - q[0]).hypot(p[1] - q[1]) < 0.005;
    assert!(cut.iter().zip(&wanted).all(|(p, q)| near(p, q)), "{cut:?}");
    // The post stops where its corner does: 40 - 1/4 + 3/4. Rake channels from pocket to peak, 142 wide:
    // 142 x sqrt(1 + 1/9) = 149.681 (slope factor 1.05409 of Example::GableOfFour).
    assert_eq!(lengths(&l, TrimKind::OutsidePost), [40.5; 2]);
    assert!(lengths(&l, TrimKind::RakeChannel).iter().all(|x| (x - 149.681).abs() < 0.005));
}

/// A front of 120 and a left side of 60 that meet in an inside corner: the front's right, the left
/// side's left.
fn with_inside_corner(more: &str) -> (Layout, Findings) {
    let rings: [Ring; 4] = [
        ("A-WALL-OTLN", &rect(0.0, 0.0, 120.0, 96.0)),
        ("A-WALL-OTLN", &rect(500.0, 0.0, 560.0, 96.0)),
        ("A-WALL-CNRI", &[(120.0, 0.0), (120.0, 96.0)]),
        ("A-WALL-CNRI", &[(500.0, 0.0), (500.0, 96.0)]),
    ];
    let views = "[[elevation]]\nname = \"FRONT\"\nregion = [-50.0, -50.0, 200.0, 150.0]\n[[elevation]]\nname = \"LEFT\"\nregion = [450.0, -50.0, 700.0, 150.0]\n";
    laid(&rings, &format!("{more}{views}"))
}

#[test]
fn an_inside_corner_has_a_set_back_of_its_own() {
    // Outside 2, inside 1: the front's pockets at 2 and 119, the left side's at 1 and 58.
    let (l, found) = with_inside_corner("");
    assert_eq!(pockets(wall(&l, "front-1")), [(2.0, 119.0)]);
    assert_eq!(pockets(wall(&l, "left-1")), [(1.0, 58.0)]);
    let asked = coded(&found, "set-back-taken");
    assert_eq!(asked.len(), 1);
    let words = said(asked[0]);
    assert!(words.contains("2\" off outside") && words.contains("1\" off inside"), "{words}");
    assert!(words.contains("common practice, no source"), "{words}");
    assert!(advised(asked[0]).contains("`product.outside_post_set_back`"));
    // 1/2 in given for the inside, 2 1/4 outside.
    let given = "[product]\noutside_post_set_back = 2.25\ninside_post_set_back = 0.5\n";
    let (l, found) = with_inside_corner(given);
    assert_eq!(pockets(wall(&l, "front-1")), [(2.25, 119.5)]);
    assert_eq!(pockets(wall(&l, "left-1")), [(0.5, 57.75)]);
    assert!(coded(&found, "set-back-taken").is_empty());
}

#[test]
fn j_channels_in_an_inside_corner_have_no_post_to_stand_back_for() {
    // Two channels have their backs in the corner. One has its back against the siding of the wall sided
    // first, by the depth of its pocket, 1 1/8 for foam-backed panels: the front is sided first, the
    // left side, last in the order of the corner's sides, bears the channel.
    let (l, found) = with_inside_corner("[trim]\ninside_corner = \"two-channels\"\n");
    assert_eq!(pockets(wall(&l, "front-1")), [(2.0, 120.0)]);
    assert_eq!(pockets(wall(&l, "left-1")), [(0.0, 58.0)]);
    assert!(!said(coded(&found, "set-back-taken")[0]).contains("inside"));
    let (l, _) = with_inside_corner("[trim]\ninside_corner = \"one-channel\"\n");
    let borne: Vec<&TrimPiece> = of(&l, TrimKind::CornerChannel);
    assert!(borne.iter().all(|t| t.wall == "left-1") && borne.len() == 1);
    assert_eq!(pockets(wall(&l, "front-1")), [(2.0, 120.0)]);
    assert_eq!(pockets(wall(&l, "left-1")), [(1.125, 58.0)]);
}

#[test]
fn a_corner_cover_takes_the_place_of_the_posts_set_back() {
    let ring = rect(0.0, 0.0, 120.0, 96.0);
    let rings: [Ring; 1] = [("A-WALL-OTLN", &ring)];
    let (l, found) = laid(&rings, "[trim]\ncorner_cover = 4\n");
    // 4, not 4 + 2. What the cover says is not asked for.
    assert_eq!(pockets(wall(&l, "wall-1")), [(4.0, 116.0)]);
    assert!(coded(&found, "set-back-taken").is_empty());
    assert!(
        edges_as_drawn(Language::English, &l.job).contains("take the place of the posts' set-back")
    );
    // A cover narrower than the set-back does not move the pocket of the post behind it.
    let (l, _) = laid(&rings, "[trim]\ncorner_cover = 1\n");
    assert_eq!(pockets(wall(&l, "wall-1")), [(2.0, 118.0)]);
}

#[test]
fn boards_end_at_corner_boards() {
    // Corner boards of 3 1/2 in on either wall: 192 - 7 = 185, less two gaps of 1/8.
    let ring = rect(0.0, 0.0, 192.0, 120.0);
    let rings: [Ring; 1] = [("A-WALL-OTLN", &ring)];
    let (l, found) = laid(&rings, "[product]\nkind = \"wood\"\n");
    let all = pieces(wall(&l, "wall-1"));
    assert!(all.iter().all(|p| *p == (3.625, 184.75)), "{all:?}");
    let asked = coded(&found, "set-back-taken");
    assert!(advised(asked[0]).contains("`product.corner_board`"));
    assert!(!said(asked[0]).contains("anel") && !said(asked[0]).contains("post"));
    // None at all is said.
    let (l, found) = laid(&rings, "[product]\nkind = \"wood\"\ncorner_board = 0\n");
    assert!(pieces(wall(&l, "wall-1")).iter().all(|p| *p == (0.125, 191.75)));
    assert!(coded(&found, "set-back-taken").is_empty());
    let words = edges_as_drawn(Language::English, &l.job);
    assert!(words.contains("no width in the job") && words.contains("no casing"), "{words}");
}

#[test]
fn a_wall_narrower_than_its_posts_is_told_and_bears_no_siding() {
    // 3 in between two outside corners of 2 in each.
    let rings: [Ring; 2] = [
        ("A-WALL-OTLN", &rect(0.0, 0.0, 120.0, 96.0)),
        ("A-WALL-OTLN", &rect(140.0, 0.0, 143.0, 96.0)),
    ];
    let (l, found) = laid(&rings, "");
    assert!(pieces(wall(&l, "wall-2")).is_empty());
    let told = coded(&found, "wall-behind-posts");
    assert_eq!(told.len(), 1);
    assert!(said(told[0]).contains("3\" wide"), "{}", said(told[0]));
}

#[test]
fn an_upper_story_that_stands_out_keeps_its_own_corners() {
    // One outline: 12 to 228 up to 96, then 0 to 240. The lower corners take nothing of the wall over
    // them, and the other way about.
    let ring = [
        (12.0, 0.0),
        (228.0, 0.0),
        (228.0, 96.0),
        (240.0, 96.0),
        (240.0, 192.0),
        (0.0, 192.0),
        (0.0, 96.0),
        (12.0, 96.0),
    ];
    let (l, _) = laid(&[("A-WALL-OTLN", &ring)], "[courses]\ndatum = 0\n");
    let w = wall(&l, "wall-1");
    assert_eq!(pockets(w), [(14.0, 226.0), (2.0, 238.0)]);
    assert_eq!(w.courses.len(), 24);
}

#[test]
fn a_zone_has_the_set_back_of_its_own_product() {
    let text = "[[zone]]\nname = \"Upper\"\n[[zone.region]]\nbottom = 96\n[zone.product]\nkind = \"vinyl\"\noutside_post_set_back = 1.5\n";
    let ring = rect(0.0, 0.0, 120.0, 192.0);
    let drawing = dxf(&[("A-WALL-OTLN", &ring)]);
    let sets = lay_sets(drawing.as_bytes(), &job(text));
    let layouts: Vec<&Layout> = sets.iter().map(|s| &s.layout).collect();
    let [house, upper] = layouts[..] else { panic!("{} sets", layouts.len()) };
    for (l, wanted) in [(house, (2.0, 118.0)), (upper, (1.5, 118.5))] {
        assert_eq!(broken(l), Vec::<String>::new());
        let w = l.walls().next().unwrap().1;
        assert_eq!(pockets(w), [wanted]);
    }
}

#[test]
fn what_no_post_can_be_is_refused() {
    for (text, key) in [
        // Of a face of 2 in nothing would cover the end of a panel 2 1/4 off the corner.
        ("[product]\noutside_post_face = 2\n", "product.outside_post_set_back"),
        ("[product]\ncorner_board = 4\n", "product.corner_board"),
        ("[product]\nkind = \"wood\"\noutside_post_face = 4\n", "product.outside_post_face"),
        (
            "[product]\ninside_post_set_back = 1\n[trim]\ninside_corner = \"two-channels\"\n",
            "product.inside_post_set_back",
        ),
        ("[product]\noutside_post_set_back = 13\n", "product.outside_post_set_back"),
    ] {
        let refused = job_file::parse(text, "job").unwrap_err();
        assert!(said(&refused.0).contains(key), "{text}: {}", said(&refused.0));
    }
    let fits = "[product]\noutside_post_set_back = 1.75\noutside_post_face = 2\n";
    assert!(job_file::parse(fits, "job").is_ok());
}

#[test]
fn a_wall_that_hangs_over_a_lower_one_goes_on_behind_the_post_between_them() {
    // The left 200 in start at 104, over something lower; the right 100 in at -8, with an inside corner
    // between. Siding below stands 1 in off it: what lies over that inch is no start of its own.
    let outline =
        [(200.0, -8.0), (300.0, -8.0), (300.0, 150.0), (0.0, 150.0), (0.0, 104.0), (200.0, 104.0)];
    let inside = [(200.0, -8.0), (200.0, 104.0)];
    let grade = [(-10.0, -20.0), (310.0, -20.0)];
    let rings: [Ring; 3] =
        [("A-WALL-OTLN", &outline), ("A-WALL-CNRI", &inside), ("C-TOPO-PROF", &grade)];
    let (l, _) = laid(&rings, "[courses]\ndatum = -8\n");
    assert_eq!(l.walls().next().unwrap().1.courses[0].runs[0].x0, 201.0);
}

#[test]
fn a_casing_is_added_outside_the_drawn_edge_of_openings() {
    // A window drawn from 100 to 136 and from 36 to 84, its casing 3 in wide: channels from 97 to 139 and from 33
    // to 87, and panels 1/4 in off them. 300 x 96 in less 42 x 54 are 184.25 sq ft. Without a casing they stand at
    // the drawn edge: 300 x 96 less 36 x 48, 188 sq ft. Either is said.
    let rings = [
        ("A-WALL-OTLN", &rect(0.0, 0.0, 300.0, 96.0)[..]),
        ("A-GLAZ", &rect(100.0, 36.0, 136.0, 84.0)[..]),
    ];
    for (more, edge, foot, area) in
        [("casing = 3\n", [97.0, 139.0], 33.0, 184.25), ("", [100.0, 136.0], 36.0, 188.0)]
    {
        let text = format!(
            "[drawing]\nunit = \"inch\"\n{more}[courses]\ndatum = 0\n[seams]\neffort = \"crew\"\n"
        );
        let job = lapwright::job::file::parse(&text, "job").unwrap();
        let set = crate::support::lay_set(dxf(&rings).as_bytes(), &job);
        let l = &set.layout;
        assert_eq!(broken(l), Vec::<String>::new());
        let w = wall(l, "wall-1");
        assert!((w.net_area - area).abs() < 1e-6, "{more}: {}", w.net_area);
        let sill = l.trims.iter().find(|t| t.kind == TrimKind::SillChannel).unwrap();
        assert!(sill.from[1] <= foot && sill.from[1] > foot - 1.0, "{sill:?}");
        // Beside the window, from course to course.
        let beside = w.courses.iter().filter(|c| c.bottom >= 40.0 && c.top <= 80.0);
        let ends: Vec<f64> = beside
            .flat_map(|c| c.runs.iter().flat_map(|r| &r.pieces))
            .flat_map(|p| [p.x0, p.x1])
            .filter(|x| (90.0..146.0).contains(x))
            .collect();
        assert!(!ends.is_empty());
        let at = |x: &f64| *x == edge[0] - 0.25 || *x == edge[1] + 0.25;
        assert!(ends.iter().all(at), "{ends:?}");
        let report = lapwright::write::report::text(l, &set.takeoff);
        let report = report.split_whitespace().collect::<Vec<_>>().join(" ");
        assert_eq!(report.contains("no casing is given"), more.is_empty(), "{report}");
    }
}
