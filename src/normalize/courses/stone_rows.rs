//! Rows of short strokes under or over courses, at their pitch by chance: stone and brick as patterns draw
//! them, broken anywhere and not at openings.

use std::collections::{BTreeMap, BTreeSet};

use super::drawn_lines::DrawnLines;
use super::family::Link;
use super::pieces::Piece;
use crate::geom::segment::Segment;
use crate::geom::tol::MARK;
use crate::geom::vocabulary::{Point, Rect};

/// Strokes of stone are shorter than this, inches (common practice, no source).
const SHORT: f64 = 24.0;
/// Fewest of them in a row with nothing drawn at their ends: of our own choosing, no source.
const ROW: usize = 3;
/// No farther apart than this, inches: of our own choosing, no source.
const NEAR: f64 = 96.0;
/// An end stands on an upright line, or over the end of a course, but for this, inches: of our own choosing,
/// no source.
const AT: f64 = 0.25;
/// Joints of stone reach no farther than this, in pitches; jambs and corner boards do: of our own choosing, no
/// source.
const JOINT: f64 = 1.5;

/// Takes the links between courses and rows of such strokes.
pub(super) fn without_stone(
    pieces: &[Piece],
    links: &mut Vec<Link>,
    pitch: f64,
    lines: &DrawnLines,
) {
    let short = |i: usize| pieces[i].length() < SHORT;
    let mut beside: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
    for l in links.iter() {
        beside.entry(l.low).or_default().push(l.high);
        beside.entry(l.high).or_default().push(l.low);
    }
    // Courses on both sides: a pier between openings.
    let of_courses = |i: usize, over: bool| {
        let next = beside.get(&i).into_iter().flatten().map(|o| &pieces[*o]);
        next.into_iter().any(|o| o.length() >= SHORT && (o.y > pieces[i].y) == over)
    };
    let is_free = |i: usize| {
        let p = &pieces[i];
        let held = |x: f64| {
            let mut next = beside.get(&i).into_iter().flatten().map(|o| &pieces[*o]);
            next.any(|o| (o.x0 - x).abs() <= AT || (o.x1 - x).abs() <= AT)
                || is_on_line(lines, Point::new(x, p.y), JOINT * pitch)
        };
        let is_pier = of_courses(i, true) && of_courses(i, false);
        !(is_pier || held(p.x0) || held(p.x1))
    };
    let free: BTreeSet<usize> =
        beside.keys().copied().filter(|i| short(*i) && is_free(*i)).collect();
    let is_row = |stroke: usize| {
        let p = &pieces[stroke];
        let from = pieces.partition_point(|q| q.y < p.y - MARK);
        let row = (from..pieces.len()).take_while(|i| pieces[*i].y <= p.y + MARK);
        row.filter(|i| free.contains(i) && p.over(&pieces[*i]) > -NEAR).count() >= ROW
    };
    let rows: BTreeSet<usize> =
        beside.keys().copied().filter(|i| short(*i) && is_row(*i)).collect();
    links.retain(|l| {
        let stone = |a: usize, b: usize| rows.contains(&a) && !short(b);
        !stone(l.low, l.high) && !stone(l.high, l.low)
    });
}

/// Whether a line that is not level, longer than a joint of stone or a slope, passes a place or ends there.
fn is_on_line(lines: &DrawnLines, at: Point, joint: f64) -> bool {
    let here = Rect::new(at.x - AT, at.y - AT, at.x + AT, at.y + AT);
    let holds = |(p, q): &Segment| {
        let (run, rise) = ((q.x - p.x).abs(), (q.y - p.y).abs());
        let passes = match run < AT {
            true => true,
            false => (p.y + (at.x - p.x) / (q.x - p.x) * (q.y - p.y) - at.y).abs() <= AT,
        };
        rise > AT && passes && (run > AT || rise > joint)
    };
    lines.within(here).iter().any(|(s, _)| holds(s))
}
