//! Openings that stand on a band, hang under it or stand across it: siding then stops at both as at one
//! gap, which is parted into the board and what is drawn on it.

use super::together::BOARD;
use crate::extract::ink::Ink;
use crate::geom::boolean::{difference, intersection, union_all};
use crate::geom::polygon::{Polygon, sides, total_area};
use crate::geom::vocabulary::{Point, Rect};

/// Edges of boards and casings nearer to each other than this are one, inches: pens and rounded figures.
const SAME: f64 = 1.0;
/// Steps smaller than this are drawing detail, inches: less than the face of one course (common practice,
/// no source).
const DETAIL: f64 = 4.0;
/// The least width and height of an opening in a board, inches.
const LEAST: f64 = 14.0;
/// An opening is no longer than this times its other side.
const LONG: f64 = 5.0;
/// Uprights that stand in the drawn frame of an opening, at least.
const FRAME: usize = 2;

/// A part of a gap over one stretch: where it stands across, its foot and its head.
#[derive(Clone, Copy, Debug)]
struct Chord {
    x: (f64, f64),
    y: (f64, f64),
}

/// Openings that stand in the same gaps as a board does, and what is left of the gaps.
pub(super) fn openings(
    gaps: Vec<Polygon>,
    siding: &[Polygon],
    ink: &Ink,
) -> (Vec<Polygon>, Vec<Polygon>) {
    let (mut found, mut rest) = (Vec::new(), Vec::new());
    for gap in across_boards(gaps, siding) {
        let boxes = match board(&gap) {
            Some(board) => stand_on(&gap, board),
            None => Vec::new(),
        };
        let framed = boxes.into_iter().filter(|b| ink.uprights_in(*b) >= FRAME);
        let framed = framed.filter(|b| !is_roof(&gap, *b));
        let boxes: Vec<Polygon> = framed.map(|b| Polygon::rect(b.x0, b.y0, b.x1, b.y1)).collect();
        if boxes.is_empty() {
            rest.push(gap);
            continue;
        }
        let whole = std::slice::from_ref(&gap);
        rest.extend(difference(whole, &boxes));
        found.extend(boxes.iter().flat_map(|b| intersection(whole, std::slice::from_ref(b))));
    }
    (found, rest)
}

/// Whether a box in a gap is a lower roof up to its hip: beside the box the edge of the gap slopes down away from it, in
/// a line with its upper corner.
fn is_roof(gap: &Polygon, b: Rect) -> bool {
    let falls = |(p, q): (Point, Point)| {
        let (high, low) = if p.y > q.y { (p, q) } else { (q, p) };
        let (run, rise) = (low.x - high.x, high.y - low.y);
        if run.abs() <= SAME || rise <= SAME || high.y > b.y1 + SAME || high.y < b.y0 {
            return false;
        }
        let corner = if run > 0.0 { b.x1 } else { b.x0 };
        let out = (low.x - corner) * run.signum();
        // Over the board courses end somewhere along the slope, each by itself.
        let top = high.x - run / rise * (b.y1 - high.y);
        out > SAME && (top - corner).abs() <= DETAIL
    };
    sides(&gap.outer).any(falls)
}

/// Gaps with those made one that stand over one another, as wide as one another, at both sides of a board:
/// an opening up to the head of its wall has siding above it nowhere, and so its part before the board is
/// no gap by itself.
fn across_boards(gaps: Vec<Polygon>, siding: &[Polygon]) -> Vec<Polygon> {
    let boxes: Vec<Rect> = gaps.iter().map(Polygon::bounds).collect();
    let mut between = Vec::new();
    for low in &boxes {
        for high in &boxes {
            let apart = high.y0 - low.y1;
            let alike = same(low.x0, high.x0) && same(low.x1, high.x1);
            if !alike || !(SAME..=BOARD).contains(&apart) {
                continue;
            }
            let (x0, x1) = (low.x0.max(high.x0), low.x1.min(high.x1));
            let part = Polygon::rect(x0, low.y1, x1, high.y0);
            let covered = intersection(siding, std::slice::from_ref(&part));
            if total_area(&covered) <= 0.01 * part.area() {
                between.push(part);
            }
        }
    }
    if between.is_empty() {
        return gaps;
    }
    union_all(&[gaps, between].concat())
}

/// The parts of a gap between the places where its edge has a corner, left to right.
fn chords(gap: &Polygon) -> Vec<Chord> {
    let mut xs: Vec<f64> = gap.rings().flatten().map(|p| p.x).collect();
    xs.sort_by(f64::total_cmp);
    xs.dedup_by(|b, a| *b - *a < SAME / 4.0);
    let mut out = Vec::new();
    for w in xs.windows(2) {
        let middle = f64::midpoint(w[0], w[1]);
        let mut ys: Vec<f64> = gap.rings().flat_map(|r| crossings(r, middle)).collect();
        ys.sort_by(f64::total_cmp);
        out.extend(ys.chunks_exact(2).map(|y| Chord { x: (w[0], w[1]), y: (y[0], y[1]) }));
    }
    out
}

/// Heights at which a ring crosses an upright line.
fn crossings(ring: &[Point], x: f64) -> Vec<f64> {
    let next = ring.iter().cycle().skip(1);
    let sides = ring.iter().zip(next).filter(|(a, b)| (a.x > x) != (b.x > x));
    sides.map(|(a, b)| a.y + (x - a.x) / (b.x - a.x) * (b.y - a.y)).collect()
}

/// Foot and head of the board in a gap: of what is no higher than boards are, that which runs farthest.
fn board(gap: &Polygon) -> Option<(f64, f64)> {
    let b = gap.bounds();
    if b.height() <= BOARD || b.width() <= BOARD {
        return None;
    }
    let mut sums: Vec<((f64, f64), f64)> = Vec::new();
    for c in chords(gap).iter().filter(|c| (DETAIL..=BOARD).contains(&(c.y.1 - c.y.0))) {
        let alike = |s: &&mut ((f64, f64), f64)| same(s.0.0, c.y.0) && same(s.0.1, c.y.1);
        let wide = c.x.1 - c.x.0;
        match sums.iter_mut().find(alike) {
            Some(sum) => sum.1 += wide,
            None => sums.push((c.y, wide)),
        }
    }
    let most = sums.into_iter().max_by(|a, b| a.1.total_cmp(&b.1))?;
    (most.1 >= BOARD).then_some(most.0)
}

fn same(a: f64, b: f64) -> bool {
    (a - b).abs() <= SAME
}

/// What of a gap sticks out over or under its board, as boxes about as high as wide.
fn stand_on(gap: &Polygon, (foot, head): (f64, f64)) -> Vec<Rect> {
    let mut out: Vec<Chord> = Vec::new();
    for c in chords(gap) {
        let over = c.y.1 > head + DETAIL && c.y.0 <= head + SAME;
        let under = c.y.0 < foot - DETAIL && c.y.1 >= foot - SAME;
        let y = match (under, over) {
            (true, true) => c.y,
            (false, true) => (head, c.y.1),
            (true, false) => (c.y.0, foot),
            (false, false) => continue,
        };
        let goes_on =
            |last: &&mut Chord| same(last.x.1, c.x.0) && same(last.y.0, y.0) && same(last.y.1, y.1);
        match out.last_mut().filter(goes_on) {
            Some(last) => last.x.1 = c.x.1,
            None => out.push(Chord { x: c.x, y }),
        }
    }
    let boxes = out.iter().map(|c| Rect::new(c.x.0, c.y.0, c.x.1, c.y.1));
    boxes
        .filter(|b| {
            let (short, long) = (b.width().min(b.height()), b.width().max(b.height()));
            short >= LEAST && long <= LONG * short
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A band 10 in high over 200 in, a window of 40 by 30 on it, one of 24 by 20 under it and one of 30
    /// in that stands 12 in over and 15 in under it.
    #[test]
    fn windows_on_under_and_across_a_band_are_found_beside_it() {
        let outline = [
            (0.0, 0.0),
            (100.0, 0.0),
            (100.0, -20.0),
            (124.0, -20.0),
            (124.0, 0.0),
            (150.0, 0.0),
            (150.0, -15.0),
            (180.0, -15.0),
            (180.0, 0.0),
            (200.0, 0.0),
            (200.0, 10.0),
            (180.0, 10.0),
            (180.0, 22.0),
            (150.0, 22.0),
            (150.0, 10.0),
            (60.0, 10.0),
            (60.0, 40.0),
            (20.0, 40.0),
            (20.0, 10.0),
            (0.0, 10.0),
        ];
        let gap = Polygon::simple(outline.map(|(x, y)| Point::new(x, y)).to_vec()).wound();
        assert_eq!(board(&gap), Some((0.0, 10.0)));
        let found = stand_on(&gap, (0.0, 10.0));
        let expected = [
            Rect::new(20.0, 10.0, 60.0, 40.0),
            Rect::new(100.0, -20.0, 124.0, 0.0),
            Rect::new(150.0, -15.0, 180.0, 22.0),
        ];
        assert_eq!(found, expected);
    }

    /// A band from 0 to 10 over 300 in; across it at its left, from -30 to 12, a lower roof with its fascia, whose hip
    /// comes down 1 in 1 from 140 in at its ridge to 174 in at -22. The siding over the band stands plumb beside the
    /// ridge.
    #[test]
    fn a_roof_across_a_band_is_no_window() {
        let outline = [
            (0.0, -30.0),
            (174.0, -30.0),
            (174.0, -22.0),
            (152.0, 0.0),
            (300.0, 0.0),
            (300.0, 10.0),
            (140.0, 10.0),
            (140.0, 12.0),
            (0.0, 12.0),
        ];
        let gap = Polygon::simple(outline.map(|(x, y)| Point::new(x, y)).to_vec()).wound();
        assert!(is_roof(&gap, Rect::new(0.0, -30.0, 140.0, 12.0)));
        // A window there, square to the band.
        let square = [
            (0.0, -30.0),
            (140.0, -30.0),
            (140.0, 0.0),
            (300.0, 0.0),
            (300.0, 10.0),
            (140.0, 10.0),
            (140.0, 12.0),
            (0.0, 12.0),
        ];
        let gap = Polygon::simple(square.map(|(x, y)| Point::new(x, y)).to_vec()).wound();
        assert!(!is_roof(&gap, Rect::new(0.0, -30.0, 140.0, 12.0)));
    }
}
