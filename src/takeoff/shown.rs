//! What of siding shows on the walls, square feet: where two pieces lap, once.

use std::collections::BTreeSet;

use crate::geom::vocabulary::Xy;
use crate::layout::laid::LaidHouse;
use crate::layout::piece::Piece;

/// Square feet that pieces of these panels show; of a lap the piece further right shows none.
pub(super) fn shown(layout: &LaidHouse, panels: &BTreeSet<&str>) -> f64 {
    let mine = |p: &Piece| panels.contains(p.panel.as_str());
    let runs = layout.walls().flat_map(|(_, w)| w.courses.iter().flat_map(|c| &c.runs));
    let inches: f64 = runs
        .flat_map(|r| {
            let left = std::iter::once(None).chain(r.pieces.iter().map(Some));
            left.zip(&r.pieces)
        })
        .filter(|(_, p)| mine(p))
        .map(|(left, p)| face(p, f64::INFINITY) - left.map_or(0.0, |l| lap(l, p)))
        .sum();
    inches / 144.0
}

/// Area of a piece left of `x`, less its holes.
fn face(p: &Piece, x: f64) -> f64 {
    let holes: f64 = p.holes.iter().map(|r| left_of(r, x)).sum();
    left_of(&p.outline, x) + p.more.iter().map(|r| left_of(r, x)).sum::<f64>() - holes
}

/// Area that two neighbors of a run have in common: along a lap both are cut alike.
fn lap(left: &Piece, right: &Piece) -> f64 {
    let ends = left.outline.iter().map(|p| p[0]).fold(f64::NEG_INFINITY, f64::max);
    face(right, ends).max(0.0)
}

/// Area of a ring's part left of a plumb line.
fn left_of(ring: &[Xy], x: f64) -> f64 {
    let twice: f64 = (0..ring.len())
        .map(|i| {
            let (a, b) = (ring[i], ring[(i + 1) % ring.len()]);
            let inside = |p: Xy| p[0] <= x;
            let at = || {
                let y = a[1] + (x - a[0]) / (b[0] - a[0]) * (b[1] - a[1]);
                [x, y]
            };
            let (a, b) = match (inside(a), inside(b)) {
                (true, true) => (a, b),
                (true, false) => (a, at()),
                (false, true) => (at(), b),
                (false, false) => return 0.0,
            };
            // Seen from the line itself: what runs along it adds nothing.
            let from = if x.is_finite() { x } else { 0.0 };
            (a[0] - from) * b[1] - (b[0] - from) * a[1]
        })
        .sum();
    twice.abs() / 2.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn part_of_a_ring_left_of_a_line() {
        // A trapezium of 10 x 8 whose right side leans from (10, 0) to (6, 8): 64 in all, 32 left of 4,
        // and left of 8: 48 to x = 6, and 2 wide of the slope, 8 high falling to 4: 12.
        let ring = [[0.0, 0.0], [10.0, 0.0], [6.0, 8.0], [0.0, 8.0]];
        for (x, area) in
            [(f64::INFINITY, 64.0), (4.0, 32.0), (8.0, 60.0), (-1.0, 0.0), (10.0, 64.0)]
        {
            assert!((left_of(&ring, x) - area).abs() < 1e-9, "{x}: {}", left_of(&ring, x));
        }
    }
}
