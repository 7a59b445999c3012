//! What stands between two lines a course apart, and shows that they are no courses: bed joints, casings, rows
//! of shingles.

use std::collections::BTreeSet;

use super::drawn_lines::DrawnLines;
use super::family::Link;
use super::pieces::{Piece, is_level};
use crate::geom::segment::Segment;
use crate::geom::vocabulary::Rect;

/// How near lines between stand to even parts, of the way from line to line.
const EVEN: f64 = 0.03;
/// A line of a casing stands this share of a course off others at least, and reaches this far past its frame
/// at each end, inches, at the far end past the other frames beside it (common practice, no source).
const CASED: (f64, f64, f64, f64) = (0.08, 1.0, 12.0, 120.0);
/// A casing's line farther than this from a course line, inches, is no part of it (prints round their points).
const BESIDE: f64 = 1.0 / 16.0;

/// A band's edges are drawn over this share of the width, and stand this share of a course apart at least: of our
/// own choosing, no source.
const BAND: (f64, f64) = (0.9, 0.6);

/// Whether two lines a course apart are none of siding, by what stands between them.
pub(super) fn is_crossed(pieces: &[Piece], l: &Link) -> bool {
    is_divided(pieces, l) || is_cased(pieces, l) || is_parted(pieces, l)
}

/// Whether a band fits between two lines: its two edges are drawn over nearly all of their width, most of the
/// way from one to the other apart. `seconds` are second lines of boards.
pub(super) fn is_banded(
    pieces: &[Piece],
    l: &Link,
    lines: &DrawnLines,
    seconds: &BTreeSet<usize>,
) -> bool {
    let (low, high) = (pieces[l.low].y, pieces[l.high].y);
    let found = lines.within(Rect::new(l.x0, low + BESIDE, l.x1, high - BESIDE));
    let own = |s: &usize| pieces[l.low].strokes.contains(s) || pieces[l.high].strokes.contains(s);
    let inside = |(p, q): &Segment| {
        let y = p.y.midpoint(q.y);
        is_level(*p, *q) && y > low + BESIDE && y < high - BESIDE
    };
    let across = found.iter().filter(|(s, stroke)| {
        let ((p, q), wide) = (s, l.x1 - l.x0);
        let over = q.x.min(l.x1) - p.x.max(l.x0);
        inside(s) && !own(stroke) && !seconds.contains(stroke) && over >= BAND.0 * wide
    });
    let heights: Vec<f64> = across.map(|((p, q), _)| p.y.midpoint(q.y)).collect();
    let (foot, head) =
        heights.iter().fold((f64::MAX, f64::MIN), |(a, b), y| (a.min(*y), b.max(*y)));
    head - foot >= BAND.1 * (high - low)
}

/// Whether lines between two stand at even parts of the way from one to the other: bed joints of brick of
/// which each third stands a course off.
fn is_divided(pieces: &[Piece], l: &Link) -> bool {
    let (low, high) = (pieces[l.low].y, pieces[l.high].y);
    let step = high - low;
    let from = pieces.partition_point(|p| p.y <= low + 0.1 * step);
    let inner = pieces[from..].iter().take_while(|p| p.y < high - 0.1 * step);
    let across = |p: &&Piece| p.x1.min(l.x1) - p.x0.max(l.x0) > 0.5 * (l.x1 - l.x0);
    let shares: Vec<f64> = inner.filter(across).map(|p| (p.y - low) / step).collect();
    let at = |share: f64| shares.iter().any(|s| (s - share).abs() <= EVEN);
    at(1.0 / 3.0) && at(2.0 / 3.0)
}

/// Whether one of two lines is the frame of a window, and the casing's line stands between them.
fn is_cased(pieces: &[Piece], l: &Link) -> bool {
    let (low, high) = (pieces[l.low].y, pieces[l.high].y);
    let from = pieces.partition_point(|p| p.y <= low + BESIDE);
    let inner = || pieces[from..].iter().take_while(|p| p.y < high - BESIDE);
    let (casing, row) = (CASED.1..=CASED.2, CASED.1..=CASED.3);
    [l.low, l.high].into_iter().map(|i| &pieces[i]).any(|frame| {
        let whole = (frame.x0 - l.x0).abs() < 0.1 && (frame.x1 - l.x1).abs() < 0.1;
        let round = |c: &Piece| {
            let out = (frame.x0 - c.x0, c.x1 - frame.x1);
            casing.contains(&out.0.min(out.1)) && row.contains(&out.0.max(out.1))
        };
        whole && inner().any(|c| round(c) && !is_repeated(pieces, c, high - low))
    })
}

/// Whether a line as long as two stands between them, which is no course of a wall that is printed over the
/// other one: two rows of shingles with another between.
fn is_parted(pieces: &[Piece], l: &Link) -> bool {
    let (low, high) = (pieces[l.low].y, pieces[l.high].y);
    let step = high - low;
    let from = pieces.partition_point(|p| p.y <= low + CASED.0 * step);
    let mut inner = pieces[from..].iter().take_while(|p| p.y < high - CASED.0 * step);
    let near = |a: f64, b: f64| (a - b).abs() <= CASED.2;
    inner.any(|c| {
        let along = c.x1.min(l.x1) - c.x0.max(l.x0) > 0.8 * (l.x1 - l.x0);
        along && near(c.x0, l.x0) && near(c.x1, l.x1) && !goes_on(pieces, c, step)
    })
}

/// Whether a line a course over or under another stands along most of it.
fn goes_on(pieces: &[Piece], c: &Piece, step: f64) -> bool {
    [c.y - step, c.y + step].into_iter().any(|y| {
        let from = pieces.partition_point(|p| p.y < y - CASED.0 * step);
        let level = pieces[from..].iter().take_while(|p| p.y <= y + CASED.0 * step);
        level.map(|p| p.over(c).max(0.0)).sum::<f64>() > 0.5 * c.length()
    })
}

/// Whether a line as long and as far to the side stands a course over or under another: then it is a course
/// of a wall that is printed over the other one, and no casing.
fn is_repeated(pieces: &[Piece], c: &Piece, step: f64) -> bool {
    [c.y - step, c.y + step].into_iter().any(|y| {
        let from = pieces.partition_point(|p| p.y < y - CASED.0 * step);
        let level = pieces[from..].iter().take_while(|p| p.y <= y + CASED.0 * step);
        level.into_iter().any(|p| (p.x0 - c.x0).abs() < 0.5 && (p.x1 - c.x1).abs() < 0.5)
    })
}
