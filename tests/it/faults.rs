//! Seeded faults: a sound layout broken in one way at a time; the named rule must catch each.

use lapwright::layout::Layout;
use lapwright::layout::piece::EndCut;
use lapwright::model::seam::Dual;
use lapwright::model::trim::{TrimEnd, TrimKind, TrimPiece};
use lapwright::verify;

use crate::support::broken;

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

const COVER: &str = "pieces cover the whole field";
const OUTSIDE: &str = "pieces stay in the field and out of its clearances";
const LAPS: &str = "pieces overlap only at laps";
pub(crate) const LEVEL: &str = "a course is at one level on every wall";
const AREA: &str = "net area is gross area less openings";
pub(crate) const GRADE: &str = "starts keep clear of grade in whole courses";
const FILL: &str = "pieces and laps fill each run less its gaps";
const FACTORY: &str = "a seam joins two factory ends";
const MIDDLE: &str = "seams stand at the middle of their laps";
const STAGGER: &str = "seams of near courses keep the stagger";
const SHORT: &str = "no piece of a seamed run is shorter than the shortest";
const FITS: &str = "what is cut from a panel fits it, with a saw cut between";
const MARKS: &str = "every piece has one mark and one panel";
const SHAPE: &str = "ends, angles and rips agree with what shows on the wall";
const NOTCH: &str = "notches stand where openings bite into a course";
const CUTS: &str = "cuts as told make each piece out of its strip";
const COUNT: &str = "counts agree with pieces";
pub(crate) const FRAME: &str = "channels close round every opening";
const SIDES: &str = "every side has its trim";
const STOCK: &str = "trim fits its stock";
pub(crate) const BOUND: &str = "the panel bound follows from the runs";

/// Faults of pieces, seams, panels and the bound: what, the rule that catches it, how.
pub(crate) const FAULTS: [(&str, &str, Break); 51] = [
    ("a piece gone", COVER, |l| {
        seamed(l).pieces.remove(1);
    }),
    ("a run gone", COVER, |l| {
        l.elevations[0].walls[0].courses[1].runs.remove(0);
    }),
    ("a course gone", COVER, |l| {
        l.elevations[1].walls[0].courses.remove(3);
    }),
    ("a piece moved on the wall", COVER, |l| shift(&mut seamed(l).pieces[1], 3.0)),
    ("a piece over the window", OUTSIDE, |l| {
        let w = &mut l.elevations[1].walls[0];
        let o = w.openings[0].clone();
        let c = w.courses.iter_mut().find(|c| c.bottom > o.sill && c.top < o.head).unwrap();
        let (b, t) = (c.bottom, c.top);
        c.runs[0].pieces[0].outline = vec![[o.left, b], [o.right, b], [o.right, t], [o.left, t]];
    }),
    ("a piece to the corner without its gap", OUTSIDE, |l| {
        let p = &mut l.elevations[1].walls[0].courses[1].runs[0].pieces[0];
        let x = p.x0;
        p.outline.iter_mut().filter(|q| q[0] == x).for_each(|q| q[0] -= 0.25);
    }),
    ("a notch without clearance", OUTSIDE, |l| {
        let p = piece(l, |p| !p.notches.is_empty() && p.outline.len() > 6);
        let xs: Vec<f64> = p.outline.iter().map(|q| q[0]).collect();
        let inner = xs
            .iter()
            .copied()
            .filter(|x| *x > p.x0 + 1.0 && *x < p.x1 - 1.0)
            .fold(f64::INFINITY, f64::min);
        p.outline.iter_mut().filter(|q| q[0] == inner).for_each(|q| q[0] += 0.25);
    }),
    ("two runs over one another", LAPS, |l| {
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
    ("a course an inch up", LEVEL, |l| {
        let c = &mut l.elevations[2].walls[0].courses[2];
        c.bottom += 1.0;
        c.top += 1.0;
    }),
    ("another exposure", LEVEL, |l| l.elevations[0].walls[1].courses[0].top += 0.5),
    ("net area forgets an opening", AREA, |l| {
        let w = &mut l.elevations[1].walls[0];
        w.net_area = w.gross_area + 1.0;
    }),
    ("net area too small", AREA, |l| l.elevations[1].walls[0].net_area -= 300.0),
    ("grade drawn higher", GRADE, |l| l.elevations[0].grade.iter_mut().for_each(|p| p[1] += 16.0)),
    ("a start wasted two courses up", GRADE, |l| {
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
    ("a piece cut an inch long", FILL, |l| {
        let p = &mut seamed(l).pieces[0];
        p.start -= 1.0;
        p.length += 1.0;
    }),
    ("a length told wrongly", FILL, |l| seamed(l).pieces[0].length += 0.25),
    ("another end gap", FILL, |l| seamed(l).gap = 0.375),
    ("a cut end at a seam", FACTORY, |l| seamed(l).pieces[0].ends[1].cut = EndCut::Square),
    ("a seam off the factory end", FACTORY, |l| {
        let p = &mut seamed(l).pieces[1];
        p.start += 2.0;
        p.end += 2.0;
    }),
    ("a factory end claimed", FACTORY, |l| {
        let p = piece(l, |p| p.start > 1.0 && p.ends[0].cut == EndCut::Square);
        p.ends[0].cut = EndCut::Factory;
    }),
    ("a seam said elsewhere", MIDDLE, |l| seamed(l).seams[0] += 1.0),
    ("a seam not told", MIDDLE, |l| {
        seamed(l).seams.pop();
    }),
    ("a seam over a seam", STAGGER, |l| {
        let cs = &mut l.elevations[1].walls[0].courses;
        let seamed =
            |c: &lapwright::layout::course::LaidCourse| c.runs.iter().any(|r| !r.seams.is_empty());
        let i = (1..cs.len()).find(|i| seamed(&cs[*i]) && seamed(&cs[*i - 1])).unwrap();
        let x = cs[i].runs.iter().flat_map(|r| &r.seams).copied().next().unwrap();
        cs[i - 1].runs.iter_mut().flat_map(|r| &mut r.seams).next().map(|s| *s = x + 4.0).unwrap();
    }),
    ("stagger asked wider", STAGGER, |l| l.job.seams.stagger = 60.0),
    ("a shorter piece than allowed", SHORT, |l| l.job.seams.shortest = 149.0),
    ("a piece past the panel's end", FITS, |l| {
        let p = piece(l, |p| p.start == 0.0);
        p.start -= 3.0;
        p.end -= 3.0;
    }),
    ("no saw cut between pieces", FITS, |l| l.job.seams.kerf = 1.5),
    ("a longer panel than stocked", FITS, |l| l.panels[3].stock += 6.0),
    ("an offcut told wrongly", FITS, |l| l.panels[2].offcut += 9.0),
    ("a mark twice", MARKS, |l| {
        let m = seamed(l).pieces[0].mark.clone();
        seamed(l).pieces[1].mark = m;
    }),
    ("a piece on no panel", MARKS, |l| {
        l.panels[5].pieces.clear();
    }),
    ("a piece on two panels", MARKS, |l| {
        let m = l.panels[0].pieces[0].clone();
        l.panels[1].pieces.push(m);
    }),
    ("a rake cut square", SHAPE, |l| {
        let p = piece(l, |p| p.ends[0].cut == EndCut::Angled);
        p.ends[0].cut = EndCut::Square;
    }),
    ("a rake cut at another pitch", SHAPE, |l| {
        let p = piece(l, |p| p.ends[0].cut == EndCut::Angled && p.ends[0].angle < 30.0);
        p.ends[0].angle += 3.0;
    }),
    ("a short point told wrongly", SHAPE, |l| {
        piece(l, |p| p.ends[0].cut == EndCut::Angled).ends[0].short_point += 1.0;
    }),
    ("an end told farther along the piece", SHAPE, |l| {
        let end = &mut piece(l, |p| p.ends[1].cut == EndCut::Angled).ends[1];
        end.long_point += 1.0;
        end.short_point += 1.0;
    }),
    ("a rip told wrongly", SHAPE, |l| {
        piece(l, |p| p.rip.is_some()).rip.as_mut().unwrap().to += 1.0
    }),
    ("a notch told wider than it is", NOTCH, |l| {
        piece(l, |p| p.notches.iter().any(|n| n.contour.is_none())).notches[0].width += 0.25;
    }),
    ("a notch round nothing", NOTCH, |l| {
        piece(l, |p| !p.notches.is_empty()).notches[0].around = vec!["front-W99".into()];
    }),
    ("a contour moved", CUTS, |l| {
        let p = piece(l, |p| p.ends[0].contour.is_some());
        p.ends[0].contour.as_mut().unwrap().points.iter_mut().for_each(|q| q[0] += 0.5);
    }),
    ("a notch forgotten", CUTS, |l| {
        piece(l, |p| p.notches.iter().any(|n| n.left > 2.0 && n.left + n.width < p.length - 2.0))
            .notches
            .clear()
    }),
    ("a panel too few counted", COUNT, |l| l.takeoff[0].order -= 1.0),
    ("a jamb channel short", FRAME, |l| {
        for t in l.trims.iter_mut().filter(|t| t.kind == TrimKind::JambChannel) {
            t.length -= 6.0;
        }
    }),
    ("the rake channels gone", SIDES, |l| l.trims.retain(|t| t.kind != TrimKind::RakeChannel)),
    ("a bound raised", BOUND, |l| l.bound.panels += 1),
    ("a certificate's sum raised with its bound", BOUND, |l| {
        let c = &mut l.bound.certificate;
        c.sum += c.scale;
        c.bound += 1;
        l.bound.panels += 1;
    }),
    ("a certificate of small change", BOUND, |l| l.bound.certificate.scale -= 1),
    ("a certificate of another function", BOUND, |l| {
        l.bound.certificate.function = Dual::Counted(400)
    }),
    ("a certificate of a function that proves nothing", BOUND, |l| {
        l.bound.certificate.function = Dual::Clipped(2000)
    }),
    ("a certificate of no function", BOUND, |l| l.bound.certificate.function = Dual::Counted(0)),
    ("a proof claimed", BOUND, |l| {
        let c = &mut l.bound.certificate;
        c.proven = !c.proven;
        l.bound.proven = c.proven;
    }),
];

const CORNERS: &str = "every corner side is part of one corner";
const MEET: &str = "courses meet at every paired corner";
const POSTS: &str = "every corner has its post, as high as the corner";
const RAKES: &str = "rake channels are cut to the pitch";
pub(crate) const FLASHING: &str = "flashing round openings has the published sizes";

fn trim(l: &mut Layout, keep: impl Fn(&TrimPiece) -> bool) -> &mut TrimPiece {
    l.trims.iter_mut().find(|t| keep(t)).unwrap()
}

/// Faults of corners and trim.
pub(crate) const EDGES: [(&str, &str, Break); 11] = [
    ("trim longer than its stock", STOCK, |l| l.trims[0].length = 500.0),
    ("a corner forgotten", CORNERS, |l| {
        l.corners.remove(0);
    }),
    ("a corner twice", CORNERS, |l| l.corners.push(l.corners[0].clone())),
    ("a wall round a corner that stands elsewhere", CORNERS, |l| l.corners[0].high += 3.0),
    ("a course off at a corner", MEET, |l| l.elevations[0].walls[0].courses[4].bottom += 1.0),
    ("a post an inch short", POSTS, |l| trim(l, |t| t.kind == TrimKind::OutsidePost).to[1] -= 1.0),
    ("a post counted on both elevations", POSTS, |l| {
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
    ("a post said to be shared with nobody", POSTS, |l| {
        trim(l, |t| t.kind == TrimKind::OutsidePost && t.shared_with.is_some()).shared_with = None
    }),
    ("a rake channel cut square at the peak", RAKES, |l| {
        let rake = |t: &TrimPiece| t.ends.iter().any(|e| matches!(e, TrimEnd::Mitre(_)));
        trim(l, |t| t.kind == TrimKind::RakeChannel && rake(t)).ends =
            [TrimEnd::Square, TrimEnd::Square]
    }),
    ("flashing that stops at the jamb", FLASHING, |l| {
        trim(l, |t| t.kind == TrimKind::SillFlashing).length -= 9.0
    }),
    ("a mitred frame with a square jamb", FRAME, |l| {
        let mitred = |t: &TrimPiece| matches!(t.ends[0], TrimEnd::MitreTab { .. });
        let jamb = trim(l, |t| t.kind == TrimKind::JambChannel && mitred(t));
        jamb.ends[0] = TrimEnd::Tab(0.75)
    }),
];

/// Each fault put into a sound layout is caught by its rule; `faults_more` puts all of them.
pub(crate) fn each_is_caught(sound: &Layout, faults: &[(&str, &str, Break)]) {
    assert_eq!(broken(sound), Vec::<String>::new());
    for (what, rule, fault) in faults {
        let mut layout = sound.clone();
        fault(&mut layout);
        let found = verify::check(&layout);
        let mut hits = found.rules.iter().filter(|r| r.rule == *rule);
        let hit = hits.next().unwrap_or_else(|| panic!("no rule `{rule}`"));
        let all = found.rules.iter().filter(|r| !r.violations.is_empty());
        let others: Vec<&str> = all.map(|r| r.rule.as_str()).collect();
        assert!(
            !hit.violations.is_empty(),
            "{what}: `{rule}` did not catch it; caught by {others:?}"
        );
    }
}
