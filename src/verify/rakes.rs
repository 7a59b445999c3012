//! Rake channels cut to the pitch: mitered where two rakes meet, plumb at the foot
//! (`TrimFact::RakeGap`).

use super::along::{bare, reach};
use super::corner_sides::is_upright;
use super::named;
use super::rule::{Cases, found};
use super::tolerance::NEAR;
use crate::geom::tol::LEVEL;
use crate::geom::vocabulary::Xy;
use crate::layout::breach::trim::TrimBreach;
use crate::layout::by_wall::ByWall;
use crate::layout::laid::LaidHouse;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::Degrees;
use crate::layout::wall::{LaidEdge, LaidWall};
use crate::model::house::EdgeKind;
use crate::model::trim::{TrimEnd, TrimKind, TrimPiece};
use crate::real::Real;

/// Angles nearer than this are one, degrees: pitches are drawn to the grid.
const SAME_ANGLE: f64 = 0.3;

pub(super) fn check(layout: &LaidHouse, at: &ByWall) -> RuleCheck {
    let mut rule = Cases::new(Rule::RakeChannelCuts);
    for (_, w) in layout.walls() {
        for t in at.trims(&w.id).iter().filter(|t| t.kind == TrimKind::RakeChannel) {
            for (p, end) in [(t.from, &t.ends[0]), (t.to, &t.ends[1])] {
                let Some(want) = cut(w, t, p) else { continue };
                let said = if let TrimEnd::Miter(a) = end { *a } else { 0.0 };
                rule.case((said - want).abs() < SAME_ANGLE, || {
                    let at = named::place(&t.elevation, p);
                    let v = found(named::trim(&t.mark), TrimBreach::RakeCut).at(at);
                    v.measured(Degrees(said)).exactly(Degrees(want))
                });
            }
        }
    }
    rule.done()
}

/// Steepness of a side, degrees from level, signed: up to the right is positive.
fn slope(a: Xy, b: Xy) -> f64 {
    let (a, b) = if a[0] <= b[0] { (a, b) } else { (b, a) };
    (b[1] - a[1]).angle_over(b[0] - a[0]).to_degrees()
}

/// Degrees off square that the end of a piece at `p` is cut; `None` where nothing says.
fn cut(w: &LaidWall, t: &TrimPiece, p: Xy) -> Option<f64> {
    let own = slope(t.from, t.to);
    let at = |e: &&LaidEdge| reach(e.from, p) < NEAR || reach(e.to, p) < NEAR;
    // The chords of a curve that the piece itself lies along are not what it meets.
    let own_side = |e: &&LaidEdge| bare(e.from, e.to, &[t]) < NEAR;
    let met = w.edges.iter().filter(|e| e.opening.is_none() && !own_side(e));
    let met: Vec<&LaidEdge> = met.filter(at).collect();
    let mut rakes = met.iter().filter(|e| e.kind == EdgeKind::Rake);
    let other = rakes.find(|e| (slope(e.from, e.to) - own).abs() > SAME_ANGLE);
    if let Some(o) = other {
        // Up and down again: half of both angles; steeper or flatter the same way: half of what they
        // differ by.
        return Some((own - slope(o.from, o.to)).abs() / 2.0);
    }
    met.iter().any(|e| stands(e)).then_some(own.abs())
}

/// Whether a side is plumb, or a corner or an end of the wall that leans a little.
fn stands(e: &LaidEdge) -> bool {
    is_upright(e.kind) || (e.from[0] - e.to[0]).abs() <= LEVEL
}
