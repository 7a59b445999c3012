//! Cuts: what a cutter is told makes each piece; figures of known shapes reckoned by hand.

use lapwright::layout::Layout;
use lapwright::layout::piece::{EndCut, Piece, PieceEnd};
use lapwright::model::notch::NotchSide;
use lapwright::write::json;
use serde_json::Value;

use crate::cutcase::{pieces, wrong};
use crate::random_sheets::house;
use crate::support::{advised, broken, dxf, inches, laid_by_a_crew, lay, rect, said, samples};

fn told(layout: &Layout) -> Value {
    serde_json::from_slice(&json::layout(layout)).unwrap()
}

#[test]
fn figures_make_every_piece_of_random_houses() {
    let mut shaped = 0;
    for seed in (1..=15).chain([19, 47, 48, 55, 58, 81, 110, 136]) {
        let (rings, job) = house(seed);
        let drawn: Vec<(&str, &[(f64, f64)])> =
            rings.iter().map(|(l, r)| (*l, r.as_slice())).collect();
        let layout = told(&lay(dxf(&drawn).as_bytes(), &job));
        assert_eq!(wrong(&layout), Vec::<String>::new(), "house {seed}");
        shaped +=
            pieces(&layout).iter().filter(|(_, p)| p["notches"][0]["contour"].is_object()).count();
    }
    assert!(shaped > 10, "only {shaped} pieces have a notch that is no rectangle");
}

#[test]
fn figures_make_every_piece_of_the_samples() {
    for (stem, _) in samples() {
        assert_eq!(wrong(&told(&laid_by_a_crew(&stem))), Vec::<String>::new(), "{stem}");
    }
}

#[test]
fn a_figure_told_wrongly_makes_another_piece() {
    // The check itself: each fault moves a border by more than 1/16 in.
    let sound = told(&laid_by_a_crew("curlew-cottage"));
    assert_eq!(wrong(&sound), Vec::<String>::new());
    for (key, by) in
        [("left", 0.2), ("width", 0.2), ("depth", 0.2), ("short_point", 1.0), ("angle", -3.0)]
    {
        let mut layout = sound.clone();
        let mut changed = false;
        let elevations = layout["elevations"].as_array_mut().unwrap().iter_mut();
        let walls = elevations.flat_map(|e| e["walls"].as_array_mut().unwrap());
        let courses = walls.flat_map(|w| w["courses"].as_array_mut().unwrap());
        let runs = courses.flat_map(|c| c["runs"].as_array_mut().unwrap());
        for p in runs.flat_map(|r| r["pieces"].as_array_mut().unwrap()) {
            let place = if ["short_point", "angle"].contains(&key) {
                let end = &mut p["ends"][0];
                let straight = end["contour"]["points"].as_array().is_some_and(|c| c.len() == 2);
                (straight && end["cut"] == "angled").then_some(&mut end[key])
            } else {
                p["notches"].as_array_mut().unwrap().first_mut().map(|n| &mut n[key])
            };
            if let Some(v) = place
                && !changed
            {
                *v = Value::from(v.as_f64().unwrap() + by);
                changed = true;
            }
        }
        assert!(changed && wrong(&layout).len() == 1, "{key}: {:?}", wrong(&layout));
    }
}

/// A wall 240 by 96 in 8 in courses from 0, laid whole, with one opening or fixture.
fn wall_with(layer: &str, ring: &[(f64, f64)]) -> Layout {
    let mut job = inches();
    job.courses.datum = Some(0.0);
    job.product.length = 300.0;
    let d = dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 96.0)), (layer, ring)]);
    let layout = lay(d.as_bytes(), &job);
    assert_eq!(broken(&layout), Vec::<String>::new());
    layout
}

fn piece_of(layout: &Layout, course: i32) -> Piece {
    layout.pieces().find(|(_, c, ..)| c.index == course).unwrap().3.clone()
}

/// A circle or an arc as chords: center, radius, from and to in degrees.
fn arc(c: (f64, f64), r: f64, from: f64, to: f64) -> Vec<(f64, f64)> {
    (0..=180)
        .map(|i| (from + (to - from) * f64::from(i) / 180.0).to_radians())
        .map(|a| (c.0 + r * a.cos(), c.1 + r * a.sin()))
        .collect()
}

#[test]
fn a_notch_under_a_round_head_opens_as_wide_as_the_arc_there() {
    // Half round over a 36 in window, springing at 40, crown at 58: the course from 56 to 64 meets it
    // 16 in up, where it is 2 sqrt(18^2 - 16^2) = 16.4924 wide; 1/4 in aside that is 16.9924, 1/4 in up
    // 2 sqrt(18^2 - 15.75^2) = 17.4284, and the wider counts.
    // The crown, 2 in up, with 1/4 in over it.
    let mut ring = vec![(82.0, 20.0), (118.0, 20.0)];
    ring.extend(arc((100.0, 40.0), 18.0, 0.0, 180.0));
    let p = piece_of(&wall_with("A-GLAZ", &ring), 7);
    assert_eq!(p.notches.len(), 1);
    let n = &p.notches[0];
    let half = (18.0_f64 * 18.0 - 15.75 * 15.75).sqrt();
    assert_eq!(n.side, NotchSide::Bottom);
    // The piece begins 1/4 in from the corner's pocket.
    let middle = n.left + n.width / 2.0 + p.x0;
    assert!((n.width - 2.0 * half).abs() < 1.0 / 32.0, "{}", n.width);
    assert!((middle - 100.0).abs() < 1.0 / 64.0, "{middle}");
    assert!((n.depth - 2.25).abs() < 1.0 / 64.0, "{}", n.depth);
    let c = n.contour.as_ref().unwrap();
    assert!(c.spacing.is_some());
    // Every point to mark lies on the arc moved 1/4 in aside or 1/4 in up, whichever is farther out.
    for q in &c.points {
        let (x, y) = ((q[0] + p.x0 - 100.0).abs(), q[1] + 16.0);
        let aside = 18.0 - (x - 0.25).max(0.0).hypot(y);
        let up = 18.0 - x.hypot(y - 0.25);
        let off = aside.max(up).abs();
        assert!(off < 1.0 / 32.0, "{q:?} is {off} off the arc");
    }
}

#[test]
fn an_end_beside_a_round_fixture_is_shaped_and_a_plumb_one_square() {
    // A bare fixture 16 in round takes the courses from 40 to 56 whole at its middle: ends are bowed.
    let layout = wall_with("A-ELEV-OBST", &arc((100.0, 48.0), 8.0, 0.0, 360.0));
    let (.., p) = layout.pieces().find(|(_, c, ..)| c.index == 5).unwrap();
    assert_eq!(p.ends[0], PieceEnd::square(EndCut::Factory, 0.0));
    assert_eq!((p.ends[1].cut, p.ends[1].long_point), (EndCut::Shaped, p.length));
    // The hole is the circle moved 1/4 in aside and 1/4 in up or down, whole 1/4 in under the butt line
    // at 40. On that line, 8 in under the middle, its half width is 1/4 + sqrt(8^2 - 7.75^2) = 2.2343;
    // on the top line, through the middle, 8 1/4: the end is set back 8.25 - 2.2343 = 6.0157. The piece
    // begins at 1/4: its long point is 100 - 2.2343 - 1/4 = 97.5157 along it.
    let half = 0.25 + (8.0_f64 * 8.0 - 7.75 * 7.75).sqrt();
    assert!((p.ends[1].set_back() - (8.25 - half)).abs() < 1.0 / 64.0, "{:?}", p.ends[1]);
    assert!((p.ends[1].long_point - (99.75 - half)).abs() < 1.0 / 64.0, "{:?}", p.ends[1]);
}

#[test]
fn strips_panels_and_notches_that_leave_too_little_are_told_with_their_places() {
    // 97 in high: a strip of 97 - 1/4 - 96 = 3/4 in. A window 10 in from the left corner: panels of
    // 10 - 2 x 1/4 = 9 1/2 in beside it, and its sill at 57 1/4: cut at 57, 1 in left under it in the
    // course from 56.
    let mut job = inches();
    job.courses.datum = Some(0.0);
    job.product.length = 300.0;
    let d = dxf(&[
        ("A-WALL-OTLN", &rect(1000.0, 500.0, 1240.0, 597.0)),
        ("A-GLAZ", &rect(1010.0, 557.25, 1034.0, 584.0)),
    ]);
    let layout = lay(d.as_bytes(), &job);
    let told = |code: &str| {
        let mut of = layout.findings.iter().filter(|n| n.code().word() == code);
        let n = of.next().unwrap_or_else(|| panic!("no {code}"));
        assert!(of.next().is_none(), "{code} twice");
        assert!(!advised(n).is_empty());
        (said(n), n.at.unwrap())
    };
    let (strip, at) = told("strip-thin");
    assert!(strip.contains("3/4\" high"), "{strip}");
    assert!((at.x - 1120.0).abs() < 0.01 && (at.y - 596.375).abs() < 0.01, "{at:?}");
    // Courses from 64 and 72: two; at the head 84 the course from 80 is notched.
    let (short, at) = told("panel-short");
    assert!(short.contains("2 pieces are"), "{short}");
    assert!((at.x - 1005.0).abs() < 0.01, "{at:?}");
    let (notch, at) = told("notch-thin");
    assert!(notch.contains("1\" under it"), "{notch}");
    assert!((at.x - 1022.0).abs() < 0.01 && (at.y - 560.0).abs() < 0.01, "{at:?}");
}

#[test]
fn a_panel_goes_round_a_mounting_block_and_keeps_its_seams_off() {
    // A block 8 by 6 at 100 to 108 and 41 to 47, in the course from 40: with 1/4 in all round a hole
    // 8 1/2 long and 6 1/2 high, 3/4 up, 100 - 1/4 - 1/4 from the piece's left end.
    let p = piece_of(&wall_with("A-ELEV-MBLK", &rect(100.0, 41.0, 108.0, 47.0)), 5);
    assert_eq!(p.notches.len(), 1);
    let n = &p.notches[0];
    assert_eq!(n.side, NotchSide::Hole);
    assert_eq!((n.left, n.width, n.depth, n.foot), (99.5, 8.5, 6.5, Some(0.75)));
    assert!(n.contour.is_none());
}

#[test]
fn a_bare_round_fixture_is_slotted_to_and_trimmed_to_by_two_panels() {
    // A pipe 4 in round its middle at 100, 44, in the course from 40 to 48. The first panel ends 1 in
    // past it, at 103: 102 3/4 long; the second begins a lap of 1 1/4 before, at 101 3/4. The hole is
    // the circle moved 1/4 in aside and 1/4 in up or down, 97 3/4 to 102 1/4 and 41 3/4 to 46 1/4: the
    // second is trimmed by what of it lies right of 101 3/4, 1/2 deep. There, 1 3/4 right of the middle,
    // it is 2 (1/4 + sqrt(2^2 - 1.5^2)) = 3.146 high.
    let layout = wall_with("A-ELEV-OBST", &arc((100.0, 44.0), 2.0, 0.0, 360.0));
    let pieces: Vec<Piece> =
        layout.pieces().filter(|(_, c, ..)| c.index == 5).map(|(.., p)| p.clone()).collect();
    assert_eq!(pieces.len(), 2);
    let near = |a: f64, b: f64| (a - b).abs() < 1.0 / 16.0;
    let (first, second) = (&pieces[0].notches, &pieces[1].notches);
    assert!(near(pieces[0].length, 102.75), "{}", pieces[0].length);
    assert_eq!((first.len(), first[0].side), (1, NotchSide::Right));
    // From 97 3/4, 1/4 less along the piece, to the end at 103; 4 1/2 high, 1 3/4 up.
    assert!(near(first[0].left, 97.5) && near(first[0].width, 5.25), "{:?}", first[0]);
    assert!(near(first[0].depth, 4.5) && near(first[0].foot.unwrap(), 1.75), "{:?}", first[0]);
    assert_eq!((second.len(), second[0].side), (1, NotchSide::Left));
    let high = 2.0 * (0.25 + (4.0_f64 - 1.5 * 1.5).sqrt());
    assert!(near(second[0].width, 0.5) && near(second[0].depth, high), "{:?}", second[0]);
    let told = told(&layout);
    assert_eq!(wrong(&told), Vec::<String>::new());
}
