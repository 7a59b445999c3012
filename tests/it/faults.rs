//! Seeded faults: a sound layout broken in one way at a time; the named rule must catch each.

use std::collections::BTreeSet;

use lapwright::layout::Layout;
use lapwright::layout::breach::Breach;
use lapwright::layout::breach::trim::TrimBreach;
use lapwright::layout::breach::wall::CourseBreach;
use lapwright::layout::piece::EndCut;
use lapwright::layout::rule::Rule;
use lapwright::layout::verified::Verify;
use lapwright::layout::violation::{Subject, Violation};
use lapwright::model::notch::{Notch, NotchSide};
use lapwright::model::seam::Dual;
use lapwright::model::trim::{TrimEnd, TrimKind, TrimPiece};
use lapwright::takeoff::quantities;
use lapwright::units::LengthStyle;
use lapwright::verify;
use lapwright::wording::checks;
use lapwright::write::report;

use crate::support::{broken, laid};

/// Breaks a layout in one way.
pub(crate) type Break = fn(&mut Layout);

/// The first run with a seam, of the first elevation that has one.
fn seamed(l: &mut Layout) -> &mut lapwright::layout::course::LaidRun {
    l.elevations
        .iter_mut()
        .flat_map(|e| &mut e.walls)
        .flat_map(|w| &mut w.courses)
        .flat_map(|c| &mut c.runs)
        .find(|r| r.pieces.len() > 2 && r.fixed.is_empty())
        .unwrap()
}

fn piece(
    l: &mut Layout,
    keep: impl Fn(&lapwright::layout::piece::Piece) -> bool,
) -> &mut lapwright::layout::piece::Piece {
    l.elevations
        .iter_mut()
        .flat_map(|e| &mut e.walls)
        .flat_map(|w| &mut w.courses)
        .flat_map(|c| &mut c.runs)
        .flat_map(|r| &mut r.pieces)
        .find(|p| keep(p))
        .unwrap()
}

/// Shifts a piece on the wall.
fn shift(p: &mut lapwright::layout::piece::Piece, dx: f64) {
    p.x0 += dx;
    p.x1 += dx;
    p.outline.iter_mut().for_each(|q| q[0] += dx);
}

/// Faults of pieces, seams, panels and the bound: what, the rule that catches it, how.
pub(crate) const FAULTS: [(&str, Rule, Break); 52] = [
    ("a piece gone", Rule::FieldCovered, |l| {
        seamed(l).pieces.remove(1);
    }),
    ("a run gone", Rule::FieldCovered, |l| {
        l.elevations[0].walls[0].courses[1].runs.remove(0);
    }),
    ("a course gone", Rule::FieldCovered, |l| {
        l.elevations[1].walls[0].courses.remove(3);
    }),
    ("a piece moved on the wall", Rule::FieldCovered, |l| shift(&mut seamed(l).pieces[1], 3.0)),
    ("a piece over the window", Rule::PiecesInField, |l| {
        let w = &mut l.elevations[1].walls[0];
        let o = w.openings[0].clone();
        let c = w.courses.iter_mut().find(|c| c.bottom > o.sill && c.top < o.head).unwrap();
        let (b, t) = (c.bottom, c.top);
        c.runs[0].pieces[0].outline = vec![[o.left, b], [o.right, b], [o.right, t], [o.left, t]];
    }),
    ("a piece to the corner without its gap", Rule::PiecesInField, |l| {
        let p = &mut l.elevations[1].walls[0].courses[1].runs[0].pieces[0];
        let x = p.x0;
        p.outline.iter_mut().filter(|q| q[0] == x).for_each(|q| q[0] -= 0.25);
    }),
    ("a notch without clearance", Rule::PiecesInField, |l| {
        let p = piece(l, |p| !p.notches.is_empty() && p.outline.len() > 6);
        let xs: Vec<f64> = p.outline.iter().map(|q| q[0]).collect();
        let inner = xs
            .iter()
            .copied()
            .filter(|x| *x > p.x0 + 1.0 && *x < p.x1 - 1.0)
            .fold(f64::INFINITY, f64::min);
        p.outline.iter_mut().filter(|q| q[0] == inner).for_each(|q| q[0] += 0.25);
    }),
    ("two runs over one another", Rule::PiecesOverlap, |l| {
        let c = l
            .elevations
            .iter_mut()
            .flat_map(|e| &mut e.walls)
            .flat_map(|w| &mut w.courses)
            .find(|c| c.runs.len() > 1)
            .unwrap();
        let outline = c.runs[0].pieces[0].outline.clone();
        c.runs[1].pieces[0].outline = outline;
    }),
    ("a course an inch up", Rule::CourseLevels, |l| {
        let c = &mut l.elevations[2].walls[0].courses[2];
        c.bottom += 1.0;
        c.top += 1.0;
    }),
    ("another exposure", Rule::CourseLevels, |l| l.elevations[0].walls[1].courses[0].top += 0.5),
    ("net area forgets an opening", Rule::WallAreas, |l| {
        let w = &mut l.elevations[1].walls[0];
        w.net_area = w.gross_area + 1.0;
    }),
    ("net area too small", Rule::WallAreas, |l| l.elevations[1].walls[0].net_area -= 300.0),
    ("grade drawn higher", Rule::GradeClearance, |l| {
        l.elevations[0].grade.iter_mut().for_each(|p| p[1] += 16.0)
    }),
    ("a start wasted two courses up", Rule::GradeClearance, |l| {
        let datum = l.datum;
        let e = &mut l.elevations[1];
        e.walls[0]
            .edges
            .iter_mut()
            .filter(|s| s.kind == lapwright::model::house::EdgeKind::Base)
            .for_each(|s| {
                s.from[1] = datum + 24.0;
                s.to[1] = datum + 24.0;
            });
    }),
    ("a piece cut an inch long", Rule::RunFilled, |l| {
        let p = &mut seamed(l).pieces[0];
        p.start -= 1.0;
        p.length += 1.0;
    }),
    ("a length told wrongly", Rule::RunFilled, |l| seamed(l).pieces[0].length += 0.25),
    ("another end gap", Rule::RunFilled, |l| seamed(l).gap = 0.375),
    ("a cut end at a seam", Rule::SeamFactoryEnds, |l| {
        seamed(l).pieces[0].ends[1].cut = EndCut::Square
    }),
    ("a seam off the factory end", Rule::SeamFactoryEnds, |l| {
        let p = &mut seamed(l).pieces[1];
        p.start += 2.0;
        p.end += 2.0;
    }),
    ("a factory end claimed", Rule::SeamFactoryEnds, |l| {
        let p = piece(l, |p| p.start > 1.0 && p.ends[0].cut == EndCut::Square);
        p.ends[0].cut = EndCut::Factory;
    }),
    ("a seam said elsewhere", Rule::SeamPlaces, |l| seamed(l).seams[0] += 1.0),
    ("a seam not told", Rule::SeamPlaces, |l| {
        seamed(l).seams.pop();
    }),
    ("a seam over a seam", Rule::SeamStagger, |l| {
        let cs = &mut l.elevations[1].walls[0].courses;
        let seamed =
            |c: &lapwright::layout::course::LaidCourse| c.runs.iter().any(|r| !r.seams.is_empty());
        let i = (1..cs.len()).find(|i| seamed(&cs[*i]) && seamed(&cs[*i - 1])).unwrap();
        let x = cs[i].runs.iter().flat_map(|r| &r.seams).copied().next().unwrap();
        cs[i - 1].runs.iter_mut().flat_map(|r| &mut r.seams).next().map(|s| *s = x + 4.0).unwrap();
    }),
    ("stagger asked wider", Rule::SeamStagger, |l| l.job.seams.stagger = 60.0),
    ("a shorter piece than allowed", Rule::ShortestPiece, |l| {
        // A little more than the shortest there is: another layout would keep it.
        let ends = seamed(l).pieces.iter().map(|p| p.length);
        l.job.seams.shortest = ends.fold(f64::INFINITY, f64::min) + 1.0;
    }),
    ("a piece past the panel's end", Rule::PanelContents, |l| {
        let p = piece(l, |p| p.start == 0.0);
        p.start -= 3.0;
        p.end -= 3.0;
    }),
    ("no saw cut between pieces", Rule::PanelContents, |l| l.job.seams.kerf = 1.5),
    ("a longer panel than stocked", Rule::PanelContents, |l| l.panels[3].stock += 6.0),
    ("an offcut told wrongly", Rule::PanelContents, |l| l.panels[2].offcut += 9.0),
    ("a mark twice", Rule::PieceMarks, |l| {
        let m = seamed(l).pieces[0].mark.clone();
        seamed(l).pieces[1].mark = m;
    }),
    ("a piece on no panel", Rule::PieceMarks, |l| {
        l.panels[5].pieces.clear();
    }),
    ("a piece on two panels", Rule::PieceMarks, |l| {
        let m = l.panels[0].pieces[0].clone();
        l.panels[1].pieces.push(m);
    }),
    ("a rake cut square", Rule::PieceShapes, |l| {
        let p = piece(l, |p| p.ends[0].cut == EndCut::Angled);
        p.ends[0].cut = EndCut::Square;
    }),
    ("a rake cut at another pitch", Rule::PieceShapes, |l| {
        let p = piece(l, |p| p.ends[0].cut == EndCut::Angled && p.ends[0].angle < 30.0);
        p.ends[0].angle += 3.0;
    }),
    ("a short point told wrongly", Rule::PieceShapes, |l| {
        piece(l, |p| p.ends[0].cut == EndCut::Angled).ends[0].short_point += 1.0;
    }),
    ("an end told farther along the piece", Rule::PieceShapes, |l| {
        let end = &mut piece(l, |p| p.ends[1].cut == EndCut::Angled).ends[1];
        end.long_point += 1.0;
        end.short_point += 1.0;
    }),
    ("a rip told wrongly", Rule::PieceShapes, |l| {
        piece(l, |p| p.rip.is_some()).rip.as_mut().unwrap().to += 1.0
    }),
    ("a notch told wider than it is", Rule::NotchPlaces, |l| {
        piece(l, |p| p.notches.iter().any(|n| n.contour.is_none())).notches[0].width += 0.25;
    }),
    ("a notch round nothing", Rule::NotchPlaces, |l| {
        piece(l, |p| !p.notches.is_empty()).notches[0].around = vec!["front-W99".into()];
    }),
    ("a contour moved", Rule::PieceCuts, |l| {
        let p = piece(l, |p| p.ends[0].contour.is_some());
        p.ends[0].contour.as_mut().unwrap().points.iter_mut().for_each(|q| q[0] += 0.5);
    }),
    ("a notch forgotten", Rule::PieceCuts, |l| {
        piece(l, |p| p.notches.iter().any(|n| n.left > 2.0 && n.left + n.width < p.length - 2.0))
            .notches
            .clear()
    }),
    // What a level cut may fall is a quarter of the finest mark on a tape, 1/64 in.
    ("a notch a thirty-second of an inch deeper", Rule::PieceCuts, |l| {
        let level = |n: &Notch| {
            let open = matches!(n.side, NotchSide::Top | NotchSide::Bottom);
            open && n.contour.is_none() && n.width > 8.0
        };
        let p = piece(l, |p| p.rip.is_none() && p.notches.iter().any(level));
        p.notches.iter_mut().find(|n| level(n)).unwrap().depth += 1.0 / 32.0;
    }),
    ("a panel too few counted", Rule::PieceCounts, |l| l.takeoff[0].order -= 1.0),
    ("a jamb channel short", Rule::OpeningChannels, |l| {
        for t in l.trims.iter_mut().filter(|t| t.kind == TrimKind::JambChannel) {
            t.length -= 6.0;
        }
    }),
    ("the rake channels gone", Rule::SideTrim, |l| {
        l.trims.retain(|t| t.kind != TrimKind::RakeChannel)
    }),
    ("a bound raised", Rule::PanelBound, |l| l.bound.panels += 1),
    ("a certificate's sum raised with its bound", Rule::PanelBound, |l| {
        let c = &mut l.bound.certificate;
        c.sum += c.scale;
        c.bound += 1;
        l.bound.panels += 1;
    }),
    ("a certificate of small change", Rule::PanelBound, |l| l.bound.certificate.scale -= 1),
    ("a certificate of another function", Rule::PanelBound, |l| {
        l.bound.certificate.function = Dual::Counted(400)
    }),
    ("a certificate of a function that proves nothing", Rule::PanelBound, |l| {
        l.bound.certificate.function = Dual::Clipped(2000)
    }),
    ("a certificate of no function", Rule::PanelBound, |l| {
        l.bound.certificate.function = Dual::Counted(0)
    }),
    ("a proof claimed", Rule::PanelBound, |l| {
        let c = &mut l.bound.certificate;
        c.proven = !c.proven;
        l.bound.proven = c.proven;
    }),
];

fn trim(l: &mut Layout, keep: impl Fn(&TrimPiece) -> bool) -> &mut TrimPiece {
    l.trims.iter_mut().find(|t| keep(t)).unwrap()
}

/// Faults of corners and trim.
pub(crate) const EDGES: [(&str, Rule, Break); 11] = [
    ("trim longer than its stock", Rule::TrimStock, |l| l.trims[0].length = 500.0),
    ("a corner forgotten", Rule::CornerSides, |l| {
        l.corners.remove(0);
    }),
    ("a corner twice", Rule::CornerSides, |l| {
        let again = l.corners[0].clone();
        l.corners.push(again);
    }),
    ("a wall round a corner that stands elsewhere", Rule::CornerSides, |l| {
        l.corners[0].high += 3.0
    }),
    ("a course off at a corner", Rule::CornerCourses, |l| {
        l.elevations[0].walls[0].courses[4].bottom += 1.0
    }),
    ("a post an inch short", Rule::CornerPosts, |l| {
        trim(l, |t| t.kind == TrimKind::OutsidePost).to[1] -= 1.0
    }),
    ("a post counted on both elevations", Rule::CornerPosts, |l| {
        let t = trim(l, |t| t.kind == TrimKind::OutsidePost && t.shared_with.is_some()).clone();
        let side = l.corners.iter().flat_map(|c| c.sides.iter().zip(c.round()));
        let (_, round) = side
            .into_iter()
            .find(|(k, _)| k.wall == t.wall && (k.x - t.from[0]).abs() < 0.1)
            .unwrap();
        let (elevation, wall, x) = (round.elevation.clone(), round.wall.clone(), round.x);
        let ends = ([x, t.from[1]], [x, t.to[1]]);
        l.trims.push(TrimPiece {
            mark: "again".into(),
            elevation,
            wall,
            from: ends.0,
            to: ends.1,
            ..t
        });
    }),
    ("a post said to be shared with nobody", Rule::CornerPosts, |l| {
        trim(l, |t| t.kind == TrimKind::OutsidePost && t.shared_with.is_some()).shared_with = None
    }),
    ("a rake channel cut square at the peak", Rule::RakeChannelCuts, |l| {
        let rake = |t: &TrimPiece| t.ends.iter().any(|e| matches!(e, TrimEnd::Miter(_)));
        trim(l, |t| t.kind == TrimKind::RakeChannel && rake(t)).ends =
            [TrimEnd::Square, TrimEnd::Square]
    }),
    ("flashing that stops at the jamb", Rule::OpeningFlashing, |l| {
        trim(l, |t| t.kind == TrimKind::SillFlashing).length -= 9.0
    }),
    ("a mitered frame with a square jamb", Rule::OpeningChannels, |l| {
        let mitered = |t: &TrimPiece| matches!(t.ends[0], TrimEnd::MiterTab { .. });
        let jamb = trim(l, |t| t.kind == TrimKind::JambChannel && mitered(t));
        jamb.ends[0] = TrimEnd::Tab(0.75)
    }),
];

/// Each fault put into a sound layout is caught by its rule; `faults_more` puts all of them.
pub(crate) fn each_is_caught(sound: &Layout, faults: &[(&str, Rule, Break)]) {
    assert_eq!(broken(sound), Vec::<String>::new());
    for (what, rule, fault) in faults {
        let mut layout = sound.clone();
        fault(&mut layout);
        let found = verify::check(&layout);
        let mut hits = found.rules.iter().filter(|r| r.rule == *rule);
        let hit = hits.next().unwrap_or_else(|| panic!("{rule:?} was not looked at"));
        let others: Vec<Rule> =
            found.rules.iter().filter(|r| !r.passes()).map(|r| r.rule).collect();
        assert!(!hit.passes(), "{what}: {rule:?} did not catch it; caught by {others:?}");
        for check in &found.rules {
            for v in &check.violations {
                assert_eq!(v.rule, check.rule, "{what}");
                named_and_placed(what, &layout, v);
                worded(what, v);
            }
        }
        let written = serde_json::to_string(&found).unwrap();
        let read: Verify = serde_json::from_str(&written).unwrap();
        assert!(read == found, "{what}: not the same when it is read back");
    }
}

/// Whether a violation has no place: counts, the proof and lengths summed over the house are of the
/// whole house; the story pole is of every wall; a panel that no wall shows a piece of is nowhere.
fn is_nowhere(layout: &Layout, v: &Violation) -> bool {
    if let Subject::Panel { panel } = &v.subject {
        let panel = layout.panels.iter().find(|p| p.id == *panel).unwrap();
        let shown: BTreeSet<_> = layout.pieces().map(|(.., p)| &p.mark).collect();
        return panel.pieces.iter().all(|m| !shown.contains(m));
    }
    let exposure = matches!(v.breach, Breach::Course(CourseBreach::Exposure { .. }));
    let covers = v.breach == Breach::Trim(TrimBreach::CoverLength);
    exposure || covers || matches!(v.breach, Breach::Count(_))
}

/// A violation says what it concerns by an id, and where on an elevation of the house.
fn named_and_placed(what: &str, layout: &Layout, v: &Violation) {
    let of_house = matches!(v.subject, Subject::House);
    assert!(!of_house || is_nowhere(layout, v), "{what}: the house in {v:?}");
    let Some(at) = &v.at else {
        assert!(is_nowhere(layout, v), "{what}: no place in {v:?}");
        return;
    };
    let elevation = layout.elevations.iter().find(|e| e.name == at.elevation);
    let elevation = elevation.unwrap_or_else(|| panic!("{what}: no such elevation, {v:?}"));
    let points = || elevation.walls.iter().flat_map(|w| &w.outline);
    for axis in [0, 1] {
        let (low, high) =
            points().map(|p| p[axis]).fold((f64::MAX, f64::MIN), |(a, b), x| (a.min(x), b.max(x)));
        // Where a fault moves things off the wall, the place is off it as far.
        let near = at.point[axis] >= low - 36.0 && at.point[axis] <= high + 36.0;
        assert!(near, "{what}: {low} to {high}, {v:?}");
    }
}

/// Its sentence is of words and numbers alone.
fn worded(what: &str, v: &Violation) {
    for style in [LengthStyle::Feet, LengthStyle::Mm] {
        let words = checks::violation(v, style);
        for code in ["inf", "NaN", "Some(", "None", "{", "::", "_", "  "] {
            assert!(!words.contains(code), "{what}: {words}");
        }
    }
}

#[test]
fn two_hundred_faults_are_two_hundred() {
    let mut layout = laid("curlew-cottage");
    let mut spoiled = BTreeSet::new();
    let walls = layout.elevations.iter_mut().flat_map(|e| &mut e.walls);
    let runs = walls.flat_map(|w| &mut w.courses).flat_map(|c| &mut c.runs);
    let square = runs.flat_map(|r| &mut r.pieces).filter(|p| p.ends[0].contour.is_none());
    for p in square.take(200) {
        p.ends[0].angle = 80.0;
        spoiled.insert(p.mark.to_string());
    }
    assert_eq!(spoiled.len(), 200, "the sample has too few pieces");
    layout.verify = verify::check(&layout);
    let ends = layout.verify.rules.iter().find(|r| r.rule == Rule::PieceShapes).unwrap();
    let marks: BTreeSet<String> = ends
        .violations
        .iter()
        .map(|v| match &v.subject {
            Subject::Piece { piece } => piece.to_string(),
            other => panic!("{other:?}"),
        })
        .collect();
    assert_eq!((ends.violations.len(), marks), (200, spoiled));
    assert_eq!(layout.verify.violations().count(), 200);
    // Fifty are printed, the count is whole, and all are in `layout.json`.
    let text = report::text(&layout, &quantities(&layout));
    let of_rule = text.split(checks::rule(Rule::PieceShapes).en).nth(1).unwrap();
    let row = of_rule.lines().next().unwrap();
    assert!(row.ends_with("200 FAIL"), "{row}");
    assert!(of_rule.contains("and 150 more"), "{of_rule}");
    assert_eq!(of_rule.matches("left end is square cut").count(), 50);
    let json: serde_json::Value =
        serde_json::from_slice(&lapwright::write::json::layout(&layout)).unwrap();
    let rules = json["verify"]["rules"].as_array().unwrap();
    let written = rules.iter().find(|r| r["rule"] == "piece-shapes").unwrap();
    assert_eq!(written["violations"].as_array().unwrap().len(), 200);
}
