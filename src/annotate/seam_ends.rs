//! Cut ends that meet a seam.

use crate::job::Product;
use crate::layout::course::LaidRun;
use crate::layout::piece::{EndCut, Piece};
use crate::wording::cuts::SeamEnds;

/// Which ends of a piece are cut and meet a seam, as one at a bare fixture does. Boards butt with square
/// ends: nothing laps at a joint.
pub(super) fn cut_at_seams(product: &Product, run: &LaidRun, p: &Piece) -> SeamEnds {
    let at = run.pieces.iter().position(|q| q.mark == p.mark);
    let Some(at) = at.filter(|_| product.system().joints.is_lapped()) else {
        return (false, false);
    };
    let left = at > 0 && p.ends[0].cut == EndCut::Square;
    (left, at + 1 < run.pieces.len() && p.ends[1].cut == EndCut::Square)
}
