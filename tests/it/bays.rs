//! Bays: walls of one elevation that meet at an angle share a post, and the angle is told.

use lapwright::finding::Findings;
use lapwright::language::Language;
use lapwright::layout::Layout;
use lapwright::layout::rule::Rule;
use lapwright::model::corner::{CornerKind, Pairing};
use lapwright::model::post_angle::PostAngle;
use lapwright::model::trim::TrimKind;
use lapwright::pipeline;
use lapwright::wording::takeoff::advice::advice;

use crate::faults::{Break, each_is_caught};
use crate::small_walls::of;
use crate::support::{advised, broken, dxf, rect, said, sheets};

/// A front of 30 ft with a bay of three sides in its middle: cants drawn 34 in wide that are 48.
const FRONTS: [f64; 6] = [0.0, 120.0, 154.0, 206.0, 240.0, 360.0];

const CANTS: &str =
    "[[angled]]\nwall = \"front-2\"\nwidth = 48\n[[angled]]\nwall = \"front-4\"\nwidth = 48\n";

fn laid(inside: &[f64], more: &str) -> (lapwright::layout::set::LaidSet, Findings) {
    let walls: Vec<_> = FRONTS.windows(2).map(|w| rect(w[0], 0.0, w[1], 108.0)).collect();
    let lines: Vec<_> = inside.iter().map(|x| [(*x, 0.0), (*x, 108.0)]).collect();
    let walls = walls.iter().map(|r| ("A-WALL-OTLN", &r[..]));
    let rings: Vec<(&str, &[(f64, f64)])> =
        walls.chain(lines.iter().map(|l| ("A-WALL-CNRI", &l[..]))).collect();
    let text = format!(
        "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n[[elevation]]\nname = \"FRONT\"\nregion = [-50.0, -50.0, 400.0, 150.0]\n{more}"
    );
    let job = lapwright::job::file::parse(&text, "job").unwrap();
    let mut found = Findings::default();
    let sets =
        pipeline::layout(dxf(&rings).as_bytes(), "t.dxf", &job, &mut found, &mut |_| {}).unwrap();
    assert_eq!(broken(&sets.house.layout), Vec::<String>::new());
    (sets.house, found)
}

fn posts(l: &Layout) -> (usize, usize) {
    (of(l, TrimKind::OutsidePost).len(), of(l, TrimKind::InsidePost).len())
}

fn pockets(l: &Layout, wall: &str) -> (f64, f64) {
    let w = l.walls().find(|(_, w)| w.id == wall).unwrap().1;
    let r = &w.courses[0].runs[0];
    (r.x0, r.x1)
}

#[test]
fn a_bay_has_one_post_at_each_corner_and_its_angle_is_told() {
    // Ends of the front and the bay's two front corners turn outward, where the cants meet the house
    // inward: 4 and 2. A bay stands out of its wall, whether lines say so or not.
    for inside in [&[][..], &[118.0, 242.0]] {
        let (set, found) = laid(inside, CANTS);
        let l = &set.layout;
        assert_eq!(posts(l), (4, 2));
        let shared: Vec<(&str, CornerKind, Option<f64>)> = l
            .corners
            .iter()
            .filter(|c| c.by == Pairing::Neighbor)
            .map(|c| (c.id.as_str(), c.kind, c.angle))
            .collect();
        // 34 of 48 is the cosine of 44.9 degrees: walls drawn for 45, so 135 between faces.
        let (out, inw) = (CornerKind::Outside, CornerKind::Inside);
        assert_eq!(
            shared,
            [
                ("front-1/right", inw, Some(135.0)),
                ("front-2/right", out, Some(135.0)),
                ("front-3/right", out, Some(135.0)),
                ("front-4/right", inw, Some(135.0)),
            ]
        );
        // Set-backs: 2 in at the square ends; 2 11/16 in outside and 5/16 in inside at 135 degrees (see
        // `posts_stand_back_by_their_angle`), on either wall.
        assert_eq!(pockets(l, "front-1"), (2.0, 119.6875));
        assert_eq!(pockets(l, "front-2"), (0.3125, 45.3125));
        assert_eq!(pockets(l, "front-3"), (156.6875, 203.3125));
        // Each is asked for: finding, sheet and takeoff. Only the two ends of the front are open.
        let coded = |code: &str| found.all().iter().filter(|f| f.code().word() == code).count();
        assert_eq!(coded("post-angle"), 4);
        let asked = found.all().iter().find(|f| f.code().word() == "post-angle").unwrap();
        assert!(said(asked).contains("135 degrees"), "{}", said(asked));
        assert_eq!(l.corners.iter().filter(|c| c.by == Pairing::Open).count(), 2);
        let words: Vec<String> = set.takeoff.advice.iter().map(|a| advice(a, &l.job)).collect();
        assert!(words.iter().any(|w| w.contains("4 corners are for 135 degrees")), "{words:?}");
        // Posts of 9 ft 1/2 in from lengths of 10 ft, one each: the two ends of the front are square, two
        // outside and two inside corners have posts for 135 degrees, each sort with its spare one.
        let order = |id: &str| set.takeoff.line(id).map(|l| (l.order, l.counts.len()));
        assert_eq!(order("outside-corner-post"), Some((2.0, 2)));
        assert_eq!(order("outside-corner-post-135"), Some((2.0, 2)));
        assert_eq!(order("inside-corner-post"), None);
        assert_eq!(order("inside-corner-post-135"), Some((2.0, 2)));
        assert_eq!(order("spare-outside-corner-post-135"), Some((1.0, 0)));
        let item = &set.takeoff.line("outside-corner-post-135").unwrap().item;
        let named =
            lapwright::wording::takeoff::items::item(Language::English, item, l.job.sheet.lengths);
        assert_eq!(named, "outside corner post, 135 degrees");
        // On the sheet of each of its walls.
        let drawn = sheets(&set);
        for side in l.corners.iter().filter(|c| c.angle.is_some()).flat_map(|c| &c.sides) {
            let (_, w) = l.walls().find(|(_, w)| w.id == side.wall).unwrap();
            let own = crate::sheets::of_wall(&drawn, crate::sheets::prefix(w));
            let said = own.iter().any(|s| format!("{s:?}").contains("post for 135"));
            assert!(said, "{}", side.wall);
        }
    }
}

#[test]
fn a_return_of_no_width_makes_two_corners_one() {
    // The same front: the job says of each corner that nothing lies between its two walls. The lines at the
    // bay's feet say which turn inward; nobody told an angle, so each is asked for.
    let none = |i: usize| {
        format!(
            "[[return]]\ncorner = \"front-{i}/right\"\nto = \"front-{}/left\"\nwidth = 0\n",
            i + 1
        )
    };
    let all: String = (1..5).map(none).collect();
    let (set, found) = laid(&[120.0, 240.0], &all);
    assert_eq!(posts(&set.layout), (4, 2), "{:#?}", set.layout.corners);
    let by = |by: Pairing| set.layout.corners.iter().filter(|c| c.by == by).count();
    assert_eq!((by(Pairing::Neighbor), by(Pairing::Open), by(Pairing::Bare)), (4, 2, 0));
    let coded = |code: &str| found.all().iter().filter(|f| f.code().word() == code).count();
    assert_eq!((coded("post-angle"), coded("return-corner-unknown")), (4, 0));
    let order = |id: &str| set.takeoff.line(id).map(|l| l.order);
    assert_eq!(order("outside-corner-post-angled"), Some(2.0));
    assert_eq!(order("inside-corner-post-angled"), Some(2.0));
    assert_eq!(order("outside-corner-post"), Some(2.0));
}

#[test]
fn posts_for_an_angle_have_a_price_of_their_own() {
    assert!(lapwright::model::line_names::is_line("inside-corner-post-135"));
    assert!(lapwright::model::line_names::is_line("outside-corner-post-angled"));
    assert!(!lapwright::model::line_names::is_line("j-channel-135"));
}

#[test]
fn posts_stand_back_by_their_angle() {
    // A post's faces stand a pocket, 1 1/8 in, off the sheathing. Where they meet, a square post's edge is
    // 1 1/8 in past the corner along either wall; bent to 135 degrees, 1.125 x cot(67.5 deg) = 1.125 x
    // 0.41421 = 0.466 in. The pocket stays as far from the edge as it was: 2 + 1.125 - 0.466 = 2.659 in off an
    // outside corner, 42.5 sixteenths: 2 11/16. In an inside corner the edge comes nearer by as much:
    // 1 - 0.659 = 0.341 in, 5.5 sixteenths: 5/16.
    // At 149 degrees cot(74.5 deg) = 0.27732: 2 + 1.125 x 0.72268 = 2.813 in, 2 13/16.
    use lapwright::job::{InsideCorner, Job};
    let (out, inw) = (CornerKind::Outside, CornerKind::Inside);
    let at = |job: &Job, kind, angle| job.set_backs().at_angle((kind, false), angle);
    let mut job = Job::default();
    assert_eq!((at(&job, out, 90.0), at(&job, inw, 90.0)), (2.0, 1.0));
    assert_eq!((at(&job, out, 135.0), at(&job, inw, 135.0)), (2.6875, 0.3125));
    assert_eq!(at(&job, out, 149.0), 2.8125);
    // A pocket of 3/4 in: 0.75 x 0.58579 = 0.439: 2.439 and 0.561 in, 2 7/16 and 9/16.
    job.trim.pocket = Some(0.75);
    assert_eq!((at(&job, out, 135.0), at(&job, inw, 135.0)), (2.4375, 0.5625));
    // What is measured holds; the square post's own figure is another.
    job.product.angled_outside_post_set_back = Some(3.25);
    job.product.outside_post_set_back = Some(2.5);
    assert_eq!((at(&job, out, 135.0), job.set_backs().outside), (3.25, 2.5));
    // A cover over the post reaches as far as it does.
    job.trim.corner_cover = 3.5;
    assert_eq!(at(&job, out, 135.0), 3.5);
    // One channel stands against siding that lies a pocket off the wall sided first: its foot meets it
    // 0.75 / sin 135 deg = 1.061 in from the corner, 1 1/16. Two have their backs in the corner.
    job.trim.inside_corner = InsideCorner::OneChannel;
    assert_eq!(at(&job, inw, 135.0), 1.0625);
    assert_eq!(job.set_backs().at_angle((inw, true), 135.0), 0.0);
    job.trim.inside_corner = InsideCorner::TwoChannels;
    assert_eq!(at(&job, inw, 135.0), 0.0);
    // Boards are ripped to the angle and keep their width.
    let wood = lapwright::job::file::parse("[product]\nkind = \"wood\"\n", "job").unwrap();
    assert_eq!((at(&wood, out, 135.0), at(&wood, inw, 135.0)), (3.5, 1.0));
}

#[test]
fn a_bay_is_laid_by_the_set_backs_of_its_angle() {
    // Measured posts of 3 and 1/2 in; one channel in the inside corners; wood with corner boards.
    let product = |text: &str| format!("[product]\n{text}\n{CANTS}");
    let given = "angled_outside_post_set_back = 3\nangled_inside_post_set_back = 0.5";
    let (set, found) = laid(&[], &product(given));
    assert_eq!(pockets(&set.layout, "front-2"), (0.5, 45.0));
    let asked = |found: &Findings| {
        let one = found.all().iter().find(|f| f.code().word() == "set-back-taken");
        one.map(said).unwrap_or_default()
    };
    // The square ends of the front are still asked for, the measured ones no more.
    assert!(
        asked(&found).contains("2\" off outside corners (common practice"),
        "{}",
        asked(&found)
    );
    let (set, found) = laid(&[], CANTS);
    let words = asked(&found);
    let part = "2\" off outside corners, 2 11/16\" off outside corners of 135 degrees and 5/16\" off inside corners of 135 degrees";
    assert!(words.contains(part), "{words}");
    let one = found.all().iter().find(|f| f.code().word() == "set-back-taken").unwrap();
    let keys = "`product.angled_outside_post_set_back` and `product.angled_inside_post_set_back`";
    assert!(advised(one).contains(keys), "{}", advised(one));
    // The sheets say so too.
    let drawn = format!("{:?}", sheets(&set));
    assert!(drawn.contains("at 135 degrees"));
    let (set, _) = laid(&[], &format!("[trim]\ninside_corner = \"one-channel\"\n{CANTS}"));
    // Both walls of such a corner are of one elevation: each bears a channel, 1.125 / sin 135 deg = 1.591 in
    // off, 1 9/16.
    assert_eq!(pockets(&set.layout, "front-2").0, 1.5625);
    let (set, _) = laid(&[], &product("kind = \"wood\""));
    assert_eq!(pockets(&set.layout, "front-2"), (1.0, 44.5));
}

/// Faults of posts in corners that are not square.
const ANGLES: [(&str, Rule, Break); 4] = [
    ("siding reckoned to posts of another angle", Rule::CornerSetBacks, |l| {
        let mut bent = l.corners.iter_mut().filter(|c| c.angle.is_some());
        bent.next().unwrap().angle = Some(120.0);
    }),
    ("a square post in a corner of 135 degrees", Rule::CornerPosts, |l| {
        l.trims.iter_mut().for_each(|t| t.angle = None)
    }),
    ("a post for another angle", Rule::CornerPosts, |l| {
        let mut bent = l.trims.iter_mut().filter(|t| t.angle.is_some());
        bent.next().unwrap().angle = Some(PostAngle::Degrees(150));
    }),
    ("bent posts ordered as square ones", Rule::TrimStock, |l| {
        let of = |id: &str| l.takeoff.iter().position(|t| t.id == *id).unwrap();
        let (bent, square) = (of("outside-corner-post-135"), of("outside-corner-post"));
        l.takeoff[square].order += l.takeoff[bent].order;
        l.takeoff[bent].order = 0.0;
    }),
];

#[test]
fn posts_for_the_wrong_angle_are_caught() {
    each_is_caught(&laid(&[], CANTS).0.layout, &ANGLES);
}

#[test]
fn one_tag_on_both_sides_makes_two_corners_one() {
    // Two walls meet at 120 in, each with the tag B at its foot.
    let rings = [rect(0.0, 0.0, 120.0, 108.0), rect(120.0, 0.0, 240.0, 108.0)];
    let walls: Vec<(&str, &[(f64, f64)])> = rings.iter().map(|r| ("A-WALL-OTLN", &r[..])).collect();
    let one = |texts: &[(&str, f64, f64)]| {
        let tag = |(t, x, y): &(&str, f64, f64)| {
            format!("0\nTEXT\n8\nA-WALL-IDEN\n10\n{x}\n20\n{y}\n40\n6\n1\n{t}\n")
        };
        let tags: String = texts.iter().map(tag).collect();
        let drawing = dxf(&walls).replace("0\nENDSEC\n0\nEOF", &format!("{tags}0\nENDSEC\n0\nEOF"));
        let job = lapwright::job::file::parse(
            "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n",
            "job",
        );
        let l = crate::support::lay(drawing.as_bytes(), &job.unwrap());
        assert_eq!(broken(&l), Vec::<String>::new());
        posts(&l)
    };
    assert_eq!(one(&[]), (4, 0));
    assert_eq!(one(&[("B", 112.0, 3.0), ("B", 123.0, 3.0)]), (3, 0));
}

#[test]
fn walls_side_by_side_that_no_one_says_stand_at_an_angle_have_posts_of_their_own() {
    // Two planes one behind the other show the same two lines in one place: a corner each.
    let (set, found) = laid(&[], "");
    assert_eq!(posts(&set.layout), (10, 0));
    assert!(found.all().iter().all(|f| f.code().word() != "post-angle"));
}

#[test]
fn a_canted_end_turns_outward() {
    // One wall at an angle: it is no bay, and its corner is as drawn.
    let (set, _) = laid(&[], "[[angled]]\nwall = \"front-5\"\nwidth = 140\n");
    let shared: Vec<_> = set.layout.corners.iter().filter(|c| c.by == Pairing::Neighbor).collect();
    assert_eq!(shared.len(), 1);
    // 120 of 140: 31.0 degrees, 149 between the faces.
    assert_eq!((shared[0].kind, shared[0].angle), (CornerKind::Outside, Some(149.0)));
}
