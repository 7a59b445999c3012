//! What holds cut edges: lugs or nails where an edge stands in undersill trim and nowhere else; and where a
//! piece keeps no hem, or no lock over a roof or a head, how it is held is told
//! (`TrimFact::UndersillLugs`, `TrimFact::RakeGap`).

use super::named;
use super::rule::{Cases, count, found};
use super::tolerance::{CUT, NEAR, SAME};
use crate::geom::vocabulary::Xy;
use crate::job::siding::system::CutEdgeRule;
use crate::layout::breach::piece::PieceBreach;
use crate::layout::by_wall::ByWall;
use crate::layout::laid::LaidHouse;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::wall::LaidWall;
use crate::model::hold::Hold;
use crate::model::house::EdgeKind;
use crate::model::trim::{TrimKind, TrimPiece};
use crate::real::Real;

pub(super) fn check(layout: &LaidHouse, at: &ByWall) -> RuleCheck {
    let mut rule = Cases::new(Rule::CutEdgesHeld);
    if layout.job.siding().cut_edge == CutEdgeRule::FaceNails {
        return rule.done();
    }
    for on in named::pieces(layout) {
        let (c, p, w) = (on.run.course, on.piece, on.run.wall);
        let trims: Vec<&TrimPiece> =
            at.trims(&w.id).iter().copied().filter(|t| t.kind == TrimKind::FinishTrim).collect();
        let sides = sides(&p.outline);
        let work = &p.edge_work;
        let fastened = work.lugs + work.trim_nails;
        let cut =
            |s: &&(Xy, Xy)| !(level(s) && same_height(s, if upper(s) { c.top } else { c.bottom }));
        let in_trim = |s: &(Xy, Xy)| trims.iter().any(|t| stands_in(layout, s, t));
        let any = sides.iter().any(in_trim);
        rule.case(fastened == 0 || any, || {
            let v = found(on.subject(), PieceBreach::LugsInNoTrim).at(on.middle());
            v.measured(count(fastened as usize)).exactly(count(0))
        });
        let hem = sides.iter().filter(|s| upper(s)).any(|s| !cut(&s));
        let told = |h: &[Hold]| work.holds.iter().any(|x| h.contains(x));
        let at_top = fastened > 0 || work.slots > 0 || told(&[Hold::FaceNail, Hold::ChannelOver]);
        rule.case(hem || at_top, || {
            found(on.subject(), PieceBreach::NotHeld { top: true }).at(on.middle())
        });
        let feet = || sides.iter().filter(|s| !upper(s));
        let over = |kind: EdgeKind| feet().filter(cut).any(|s| borders(layout, w, s, kind));
        // A nick that no saw makes leaves the lock.
        let bitten = |s: &&(Xy, Xy)| s.0[1].max(s.1[1]) > c.bottom + NEAR;
        let on_roof = feet().filter(bitten).any(|s| borders(layout, w, s, EdgeKind::LowerRoof));
        rule.case(!on_roof || told(&[Hold::RoofChannel]), || {
            found(on.subject(), PieceBreach::NotHeld { top: false }).at(on.middle())
        });
        let locked = feet().any(|s| !cut(&s));
        let held = told(&[Hold::RoofChannel, Hold::HeadChannel]) || fastened > 0;
        rule.case(locked || !over(EdgeKind::Head) || held, || {
            found(on.subject(), PieceBreach::NotHeld { top: false }).at(on.middle())
        });
    }
    rule.done()
}

/// Sides of a ring that are not plumb to whoever cuts it.
fn sides(ring: &[Xy]) -> Vec<(Xy, Xy)> {
    let all = (0..ring.len()).map(|i| (ring[i], ring[(i + 1) % ring.len()]));
    all.filter(|(a, b)| (a[0] - b[0]).abs() > CUT).collect()
}

/// Counter-clockwise an upper side runs to the left.
fn upper(s: &(Xy, Xy)) -> bool {
    s.1[0] < s.0[0]
}

fn level(s: &(Xy, Xy)) -> bool {
    (s.0[1] - s.1[1]).abs() <= SAME
}

fn same_height(s: &(Xy, Xy), y: f64) -> bool {
    (s.0[1] - y).abs() <= SAME
}

/// Whether some of a side stands in a piece of undersill trim: under it, or over it at a foot, by the
/// clearance of a cut edge and the channel's pocket at most.
fn stands_in(layout: &LaidHouse, s: &(Xy, Xy), t: &TrimPiece) -> bool {
    let reach = layout.job.courses.notch_clearance.max(0.0625) + layout.job.pocket() + NEAR;
    let (low, high) = (t.from[0].min(t.to[0]), t.from[0].max(t.to[0]));
    let (left, right) = (s.0[0].min(s.1[0]).max(low), s.0[0].max(s.1[0]).min(high));
    if right - left <= SAME {
        return false;
    }
    let at = |a: Xy, b: Xy, x: f64| a[1] + (x - a[0]) / (b[0] - a[0]) * (b[1] - a[1]);
    let x = (left + right) / 2.0;
    let off = at(t.from, t.to, x) - at(s.0, s.1, x);
    let off = if upper(s) { off } else { -off };
    off >= -NEAR && off <= reach
}

/// Whether the middle of a foot lies over a side of a kind by no more than is kept clear.
fn borders(layout: &LaidHouse, w: &LaidWall, s: &(Xy, Xy), kind: EdgeKind) -> bool {
    let room = layout.job.courses.notch_clearance.max(layout.job.end_gap()) + SAME;
    let m = named::midway(s.0, s.1);
    w.edges.iter().filter(|e| e.kind == kind).any(|e| {
        let (dx, dy) = (e.to[0] - e.from[0], e.to[1] - e.from[1]);
        let whole = dx * dx + dy * dy;
        let t = if whole > 0.0 {
            ((m[0] - e.from[0]) * dx + (m[1] - e.from[1]) * dy) / whole
        } else {
            0.0
        };
        let t = t.clamp(0.0, 1.0);
        (m[0] - e.from[0] - t * dx).hypotenuse(m[1] - e.from[1] - t * dy) <= room
    })
}
