//! Rows of short strokes under or over courses, and bed joints under them, at their pitch by chance: stone and
//! brick as patterns draw them, broken anywhere and not at openings.

use std::collections::{BTreeMap, BTreeSet};

use super::drawn_lines::DrawnLines;
use super::family::{Link, Span};
use super::pieces::{Piece, is_level};
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
/// The masonry's edge goes over this share of the width of the courses over it, doors left out: of our own
/// choosing, no source.
const EDGE: f64 = 0.5;
/// Bricks and most stones are lower than this, inches (common practice, no source).
const MASONRY: f64 = 14.0;

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

/// Takes the links down to bed joints of masonry that lie a pitch under the last course by chance: another
/// line, the masonry's edge, is drawn between the two, and upright joints stand under the lower one.
pub(super) fn without_bed_joints(pieces: &[Piece], links: &mut Vec<Link>, lines: &DrawnLines) {
    let lowest: BTreeSet<usize> = {
        let high: BTreeSet<usize> = links.iter().map(|l| l.high).collect();
        links.iter().map(|l| l.low).filter(|i| !high.contains(i)).collect()
    };
    let is_bed = |l: &Link| {
        let (low, high) = (pieces[l.low].y, pieces[l.high].y);
        has_edge(lines, (l.x0, l.x1), (low, high)) && has_joints(lines, (l.x0, l.x1), low)
    };
    links.retain(|l| !(lowest.contains(&l.low) && is_bed(l)));
}

/// Whether level lines between two heights go over most of a width.
fn has_edge(lines: &DrawnLines, (x0, x1): Span, (low, high): Span) -> bool {
    let found = lines.within(Rect::new(x0, low + AT, x1, high - AT));
    let level = found.iter().filter(|((p, q), _)| is_level(*p, *q) && p.y > low + AT);
    let inside = level.filter(|((p, _), _)| p.y < high - AT);
    inside.map(|((p, q), _)| q.x.min(x1) - p.x.max(x0)).sum::<f64>() >= EDGE * (x1 - x0)
}

/// Whether upright joints end at a line from below, one every so often.
fn has_joints(lines: &DrawnLines, (x0, x1): Span, y: f64) -> bool {
    let found = lines.within(Rect::new(x0 + AT, y - 2.0 * AT, x1 - AT, y - 2.0 * AT));
    let joint = |(p, q): &Segment| {
        let (low, high) = (p.y.min(q.y), p.y.max(q.y));
        (p.x - q.x).abs() <= AT && (high - y).abs() <= AT && y - low < MASONRY
    };
    let mut at: Vec<f64> = found.iter().filter(|(s, _)| joint(s)).map(|((p, _), _)| p.x).collect();
    at.sort_by(f64::total_cmp);
    at.dedup_by(|b, a| *b - *a < 1.0);
    at.len() >= ROW && at.len() as f64 * SHORT >= x1 - x0
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
