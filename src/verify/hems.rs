//! Nail hems: what stands over a course's top line is behind the next course, so nothing else may stand
//! there. Under the sill of an opening, a soffit or a band on that line, or nearer over it than a cut
//! edge's clearance, the hem is cut off and a piece shows no edge on the line.

use super::named::{self, PieceOn};
use super::rule::{Cases, found};
use super::tolerance::{HEM_CUT, NEAR};
use crate::geom::tol::SAME;
use crate::geom::vocabulary::Xy;
use crate::layout::breach::piece::PieceBreach;
use crate::layout::laid::LaidHouse;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::Inches;
use crate::layout::violation::Subject;
use crate::layout::wall::{LaidEdge, LaidWall};

pub(super) fn check(layout: &LaidHouse) -> RuleCheck {
    let mut rule = Cases::new(Rule::HemsClear);
    for on in named::pieces(layout) {
        let (c, w) = (on.run.course, on.run.wall);
        // A board has its head lap there, a panel its hem.
        if layout.job.product.over_face(c.top - c.bottom) <= 0.0 {
            continue;
        }
        let over = w.edges.iter().filter(|e| stands_over(e, c.top, layout));
        let blocked: Vec<&LaidEdge> = over.collect();
        for side in heads(on, c.top) {
            let worst = blocked
                .iter()
                .map(|e| (along(side, spans(e)), *e))
                .max_by(|a, b| a.0.total_cmp(&b.0))
                .filter(|(length, _)| *length > NEAR);
            rule.case(worst.is_none(), || {
                let (length, edge) = worst.map_or((0.0, None), |(l, e)| (l, Some(e)));
                let v = found(on.subject(), PieceBreach::HemInTheWay);
                let v = v.at(on.run.at((side.0 + side.1) / 2.0)).measured(Inches(length));
                let v = v.exactly(Inches(0.0));
                match edge {
                    Some(e) => v.with(whose(w, e)),
                    None => v,
                }
            });
        }
    }
    rule.done()
}

/// Whether a level side that the field lies under is on a course's top line, or over it by less than the
/// clearance: the field lies on the left hand.
fn stands_over(e: &LaidEdge, top: f64, layout: &LaidHouse) -> bool {
    let (low, high) = (e.from[1].min(e.to[1]), e.from[1].max(e.to[1]));
    let room = layout.job.courses.notch_clearance.max(HEM_CUT);
    let near = low >= top - SAME && high < top + room - SAME;
    e.to[0] < e.from[0] && high - low <= SAME && near
}

/// Where a piece's upper sides lie on the line, hem and all.
fn heads(on: PieceOn, top: f64) -> Vec<(f64, f64)> {
    let rings = std::iter::once(&on.piece.outline).chain(&on.piece.more);
    let sides = rings.flat_map(|ring| (0..ring.len()).map(move |i| pair(ring, i)));
    let on_line = |a: &Xy, b: &Xy| a[1] >= top - SAME && b[1] >= top - SAME;
    // Counter-clockwise an upper side runs to the left.
    sides.filter(|(a, b)| b[0] < a[0] && on_line(a, b)).map(|(a, b)| (b[0], a[0])).collect()
}

fn pair(ring: &[Xy], i: usize) -> (Xy, Xy) {
    (ring[i], ring[(i + 1) % ring.len()])
}

fn spans(e: &LaidEdge) -> (f64, f64) {
    (e.from[0].min(e.to[0]), e.from[0].max(e.to[0]))
}

/// Length that two spans share.
fn along(a: (f64, f64), b: (f64, f64)) -> f64 {
    a.1.min(b.1) - a.0.max(b.0)
}

/// The opening of a side, or the wall.
fn whose(w: &LaidWall, e: &LaidEdge) -> Subject {
    e.opening.as_ref().map_or_else(|| named::wall(&w.id), |o| named::opening(&w.id, o))
}
