//! Set-backs: siding is reckoned from the bottom of a corner post's pocket, or from the edge of a corner
//! board, not from the drawn corner.

use super::corner_sides::{lies, set_back};
use super::named;
use super::rule::{Cases, found};
use super::tolerance::NEAR;
use crate::layout::breach::trim::CornerBreach;
use crate::layout::by_wall::ByWall;
use crate::layout::laid::LaidHouse;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::Inches;
use crate::layout::wall::{LaidEdge, LaidElevation, LaidWall};
use crate::model::corner::{Corner, CornerSide, Hand};
use crate::model::house::EdgeKind;

/// A side that leans by less is upright, inches: a corner's place is the middle of it.
const LEAN: f64 = 1.0 / 16.0;

pub(super) fn check(layout: &LaidHouse, at: &ByWall) -> RuleCheck {
    let mut rule = Cases::new(Rule::CornerSetBacks);
    for (e, w) in layout.walls() {
        let corner =
            |s: &&LaidEdge| matches!(s.kind, EdgeKind::OutsideCorner | EdgeKind::InsideCorner);
        for s in w.edges.iter().filter(corner) {
            side(&mut rule, layout, at, (e, w), s);
        }
        for on in at.sides(&w.id).iter().filter(|(_, k)| k.elevation == e.name) {
            pieces(&mut rule, layout, (e, w), *on);
        }
    }
    rule.done()
}

/// The limit of siding stands its set-back off the corner.
fn side(
    rule: &mut Cases,
    layout: &LaidHouse,
    at: &ByWall,
    (e, w): (&LaidElevation, &LaidWall),
    s: &LaidEdge,
) {
    let on = at.sides(&w.id).iter().find(|(c, k)| lies(layout, w, s, (c, k)));
    // A side of no corner is another rule's.
    let Some((c, k)) = on else { return };
    let (wanted, x) = (set_back(layout, c, k), (s.from[0] + s.to[0]) / 2.0);
    let off = if k.side == Hand::Left { x - k.x } else { k.x - x };
    // A side that leans is off by as much at most.
    let lean = (s.from[0] - s.to[0]).abs();
    rule.case((off - wanted).abs() < NEAR + lean, || {
        let place = named::place(&e.name, named::midway(s.from, s.to));
        let v = found(named::wall(&w.id), CornerBreach::SetBack).at(place);
        v.measured(Inches(off)).exactly(Inches(wanted)).with(named::corner(&c.id))
    });
}

/// No piece has a point nearer to the corner than set-back and end gap.
fn pieces(
    rule: &mut Cases,
    layout: &LaidHouse,
    (e, w): (&LaidElevation, &LaidWall),
    (c, k): (&Corner, &CornerSide),
) {
    let wanted = set_back(layout, c, k) + layout.job.end_gap();
    let off = |p: &[f64; 2]| if k.side == Hand::Left { p[0] - k.x } else { k.x - p[0] };
    let beside = |p: &[f64; 2]| p[1] > k.low + NEAR && p[1] < k.high - NEAR;
    let courses = w.courses.iter().filter(|c| c.bottom < k.high && c.top > k.low);
    for p in courses.flat_map(|c| &c.runs).flat_map(|r| &r.pieces) {
        let inside = |q: &[f64; 2]| beside(q) && off(q) > 0.0 && off(q) < wanted - NEAR - LEAN;
        let nearest = p.outline.iter().filter(|q| inside(q)).map(off).reduce(f64::min);
        rule.case(nearest.is_none(), || {
            let at = p.outline.iter().find(|q| inside(q)).copied();
            let v = found(named::piece(&p.mark), CornerBreach::PieceInPost);
            let v = v.at(at.and_then(|q| named::place(&e.name, q))).with(named::corner(&c.id));
            v.measured(Inches(nearest.unwrap_or(f64::NAN))).at_least(Inches(wanted))
        });
    }
}
