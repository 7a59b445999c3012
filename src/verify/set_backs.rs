//! Set-backs: siding is reckoned from the bottom of a corner post's pocket, or from the edge of a corner
//! board, not from the drawn corner. Trim ends there too: none runs through a post or under a board.

use super::corner_sides::{lies, place_at, set_back};
use super::named;
use super::rule::{Cases, found};
use super::tolerance::NEAR;
use crate::geom::vocabulary::Xy;
use crate::layout::breach::trim::CornerBreach;
use crate::layout::by_wall::ByWall;
use crate::layout::laid::LaidHouse;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::Inches;
use crate::layout::wall::{LaidEdge, LaidElevation, LaidWall};
use crate::model::corner::{Corner, CornerSide, Hand};
use crate::model::house::EdgeKind;
use crate::model::trim::TrimKind;

/// A side that leans by less is upright, inches: a corner's place is the middle of it.
const LEAN: f64 = 1.0 / 16.0;

/// Trim that ends farther past a corner runs on along the wall, inches.
const PAST: f64 = 1.0;

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
            trims(&mut rule, layout, (e, w), *on);
        }
    }
    rule.done()
}

/// How far inside its corner a place of a wall stands.
fn off(w: &LaidWall, k: &CornerSide, p: Xy) -> f64 {
    let corner = place_at(w, k, p[1]);
    if k.side == Hand::Left { p[0] - corner } else { corner - p[0] }
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
    let middle = named::midway(s.from, s.to);
    let (wanted, off) = (set_back(layout, c, k), off(w, k, middle));
    // A side that leans by a hair is off by as much at most; one that leans more, its corner leans as much.
    let lean = (s.from[0] - s.to[0]).abs().min(LEAN);
    rule.case((off - wanted).abs() < NEAR + lean, || {
        let place = named::place(&e.name, middle);
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
    let off = |p: &[f64; 2]| off(w, k, *p);
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

/// Trim that panels stand in or hang on; boards and moldings may go over what stands in a corner.
fn takes_panels(kind: TrimKind) -> bool {
    use TrimKind::{
        FinishTrim, RakeChannel, RoofChannel, Starter, TopBase, TopFace, TopPanel, WallChannel,
    };
    let top = matches!(kind, TopBase | TopFace | TopPanel);
    top || matches!(kind, Starter | FinishTrim | WallChannel | RoofChannel | RakeChannel)
}

/// Whether the wall goes on over a side of a corner, or under it, at a height just past its end: what lies
/// there is no more the corner's.
fn goes_on_at(w: &LaidWall, k: &CornerSide, y: f64) -> bool {
    let x = place_at(w, k, y);
    let at = [if k.side == Hand::Left { x + PAST } else { x - PAST }, y];
    let next = w.outline.iter().cycle().skip(1);
    let crossed = w.outline.iter().zip(next).filter(|(a, b)| {
        let x = || a[0] + (b[0] - a[0]) * (at[1] - a[1]) / (b[1] - a[1]);
        (a[1] > at[1]) != (b[1] > at[1]) && x() > at[0]
    });
    crossed.count() % 2 == 1
}

/// No trim has a point nearer to the corner than the set-back.
fn trims(
    rule: &mut Cases,
    layout: &LaidHouse,
    (e, w): (&LaidElevation, &LaidWall),
    (c, k): (&Corner, &CornerSide),
) {
    let wanted = set_back(layout, c, k);
    let on = layout.trims.iter().filter(|t| t.wall == w.id && t.elevation == e.name);
    let high = if goes_on_at(w, k, k.high + PAST) { k.high - NEAR } else { k.high + NEAR };
    // A post that stands on a step of the wall has the trim of what goes on under it at its foot.
    let low = if goes_on_at(w, k, k.low - PAST) { k.low + NEAR } else { k.low - NEAR };
    for t in on.filter(|t| takes_panels(t.kind)) {
        let Some(ends) = beside((t.from, t.to), (low, high)) else { continue };
        let [one, other] = ends.map(|p| off(w, k, p));
        let (near, far) = (one.min(other), one.max(other));
        // What runs on past the corner lies over or under it, on the same wall.
        let through = near > -PAST && near < wanted - NEAR - LEAN && far > NEAR;
        rule.case(!through, || {
            let nearest = if one < other { ends[0] } else { ends[1] };
            let v = found(named::trim(&t.mark), CornerBreach::TrimInPost);
            let v = v.at(named::place(&e.name, nearest)).with(named::corner(&c.id));
            v.measured(Inches(near)).at_least(Inches(wanted))
        });
    }
}

/// The part of a length of trim between two heights.
fn beside((a, b): (Xy, Xy), (low, high): (f64, f64)) -> Option<[Xy; 2]> {
    let (bottom, top) = if a[1] < b[1] { (a, b) } else { (b, a) };
    if top[1] < low || bottom[1] > high {
        return None;
    }
    let rise = top[1] - bottom[1];
    let at = |y: f64| {
        let share = if rise > 0.0 { ((y - bottom[1]) / rise).clamp(0.0, 1.0) } else { 0.0 };
        [bottom[0] + (top[0] - bottom[0]) * share, bottom[1] + rise * share]
    };
    Some(if rise > 0.0 { [at(low), at(high)] } else { [a, b] })
}
