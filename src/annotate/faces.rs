//! The faces a panel shows, as fine lines inside its course; hem and lock beside them.

use crate::geom::tol::CUT;
use crate::geom::vocabulary::Xy;
use crate::layout::Layout;
use crate::layout::course::LaidCourse;
use crate::layout::piece::Piece;

/// Heights over the butt line at which one face of a panel ends and the next begins.
pub(super) fn heights(layout: &Layout) -> Vec<f64> {
    let p = &layout.job.product;
    (1..p.faces).map(|i| f64::from(i) * p.face()).collect()
}

/// Where those lines show on a piece: outside what is cut off or out of it.
pub(super) fn lines(p: &Piece, k: &LaidCourse, heights: &[f64]) -> Vec<(Xy, Xy)> {
    let inside = heights.iter().map(|h| k.bottom + h).filter(|y| *y < k.top - CUT);
    inside
        .flat_map(|y| {
            let spans = across(p, y);
            spans.into_iter().map(move |(a, b)| ([a, y], [b, y]))
        })
        .filter(|(a, b)| b[0] - a[0] > CUT)
        .collect()
}

/// Spans of a piece at a height, left to right; just over it where an edge lies along it.
fn across(p: &Piece, y: f64) -> Vec<(f64, f64)> {
    let y = y + 1.0 / 4096.0;
    let rings = std::iter::once(&p.outline).chain(&p.holes).chain(&p.more);
    let mut at: Vec<f64> = rings
        .flat_map(|r| r.iter().zip(r.iter().cycle().skip(1)))
        .filter(|(a, b)| (a[1] > y) != (b[1] > y))
        .map(|(a, b)| a[0] + (y - a[1]) / (b[1] - a[1]) * (b[0] - a[0]))
        .collect();
    at.sort_by(f64::total_cmp);
    at.chunks_exact(2).map(|s| (s[0], s[1])).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_face_line_stops_at_a_notch() {
        let outline = vec![
            [0.0, 0.0],
            [100.0, 0.0],
            [100.0, 8.0],
            [60.0, 8.0],
            [60.0, 3.0],
            [40.0, 3.0],
            [40.0, 8.0],
            [0.0, 8.0],
        ];
        let p = Piece::plain(100.0, outline);
        let k =
            LaidCourse { index: 0, bottom: 0.0, top: 8.0, rip: None, avoid: vec![], runs: vec![] };
        let found = lines(&p, &k, &[4.0]);
        assert_eq!(found, [([0.0, 4.0], [40.0, 4.0]), ([60.0, 4.0], [100.0, 4.0])]);
    }
}
