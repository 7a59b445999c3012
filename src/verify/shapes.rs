//! How each piece is said to end and to be ripped, against what shows of it on the wall.

use super::named::{self, PieceOn};
use super::rule::{Cases, found};
use super::sweep::{Shapes, Slab};
use super::tolerance::same;
use crate::geom::tol::{LEVEL, SAME};
use crate::geom::vocabulary::Xy;
use crate::layout::breach::piece::{EndShape, PieceBreach, RunBreach};
use crate::layout::laid::LaidHouse;
use crate::layout::piece::EndCut;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::{Inches, Slope};
use crate::model::corner::Hand;
use crate::model::notch::Contour;
use crate::pitch;
use crate::real::Real;

/// Places on the wall that differ by less are one place, inches: outlines come from boolean
/// operations on the 1/1024 in grid.
const NEAR: f64 = 0.02;
/// Angles nearer than this are one angle, degrees: a tenth of the smallest mark on a miter saw.
const SAME_ANGLE: f64 = 0.1;

pub(super) fn check(layout: &LaidHouse) -> RuleCheck {
    let mut rule = Cases::new(Rule::PieceShapes);
    for on in named::pieces(layout) {
        let (c, p) = (on.run.course, on.piece);
        extent(&mut rule, on);
        ripped(&mut rule, on);
        let mut shape = Shapes::default();
        // Its ends: a hole has no part in them.
        shape.add([&p.outline]);
        let slabs = shape.slabs(c.bottom, c.top);
        for hand in [Hand::Left, Hand::Right] {
            end(&mut rule, on, hand);
            leaning(&mut rule, on, &slabs, hand);
        }
    }
    rule.done()
}

fn range(outline: &[Xy], axis: usize) -> (f64, f64) {
    outline
        .iter()
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), q| (a.min(q[axis]), b.max(q[axis])))
}

/// Length and course.
fn extent(rule: &mut Cases, on: PieceOn) {
    let (c, p) = (on.run.course, on.piece);
    let all: Vec<Xy> = p.more.iter().flatten().chain(&p.outline).copied().collect();
    let ((left, right), (low, high)) = (range(&all, 0), range(&all, 1));
    rule.case((left - p.x0).abs() < NEAR && (right - p.x1).abs() < NEAR, || {
        let shown = named::span(left, right);
        let breach = PieceBreach::Extent { said: [p.x0, p.x1], shown };
        found(on.subject(), breach).at(on.middle())
    });
    let over = high > c.top + NEAR;
    rule.case(low >= c.bottom - NEAR && !over, || {
        let v = found(on.subject(), PieceBreach::LeavesCourse).at(on.middle());
        let v = v.measured(Inches(if over { high } else { low }));
        v.between(Inches(c.bottom), Inches(c.top))
    });
}

/// A rip is as it shows, and a cut edge is told as one.
fn ripped(rule: &mut Cases, on: PieceOn) {
    let (c, p) = (on.run.course, on.piece);
    let (low, high) = range(&p.outline, 1);
    if let Some(rip) = &p.rip {
        let (from, to) = (low - c.bottom, high - c.bottom);
        let agrees = (from - rip.from).abs() < NEAR && (to - rip.to).abs() < NEAR;
        let some = rip.from > 0.0 || rip.to < c.top - c.bottom;
        rule.case(agrees && some && rip.to > rip.from, || {
            let shown = named::span(from, to);
            let breach = PieceBreach::Rip { said: [rip.from, rip.to], shown };
            found(on.subject(), breach).at(on.middle())
        });
    }
    for (y, edge, top) in [(low, c.bottom, false), (high, c.top, true)] {
        let level = level_at(&p.outline, y) && (y - edge).abs() > NEAR;
        rule.case(!level || p.rip.is_some(), || {
            let at = named::place(&on.run.elevation.name, [(p.x0 + p.x1) / 2.0, y]);
            let v = found(on.subject(), PieceBreach::RipMissing { top }).at(at);
            v.measured(Inches(y - c.bottom)).exactly(Inches(edge - c.bottom))
        });
    }
}

/// Whether a ring has a level side at this height.
fn level_at(ring: &[Xy], y: f64) -> bool {
    (0..ring.len()).any(|i| {
        let (a, b) = (ring[i], ring[(i + 1) % ring.len()]);
        (a[1] - y).abs() < NEAR / 4.0 && (b[1] - y).abs() < NEAR / 4.0 && (a[0] - b[0]).abs() > 1.0
    })
}

/// The sloped sides that bound a shape on one hand, taken together.
#[derive(Debug, Default)]
struct Lean {
    /// Move sideways, going up.
    dx: f64,
    /// Rise.
    dy: f64,
}

/// A side bounds the shape where it does so half way up itself: one that comes out past another part of the
/// shape with its upper or its lower end alone does not.
fn lean(slabs: &[Slab], hand: usize) -> Lean {
    let mut sides: Vec<(Xy, Xy)> = Vec::new();
    for slab in slabs {
        let Some(side) = slab.outer.map(|o| o[hand]) else { continue };
        let middle = (side.low[1] + side.high[1]) / 2.0;
        let bounds = middle >= slab.low && middle <= slab.high;
        if bounds && sides.last() != Some(&(side.low, side.high)) {
            sides.push((side.low, side.high));
        }
    }
    let mut out = Lean::default();
    for (a, b) in sides {
        let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
        if dy > SAME && dx.abs() > LEVEL / 4.0 && dx.abs() > dy / 200.0 {
            (out.dx, out.dy) = (out.dx + dx, out.dy + dy);
        }
    }
    out
}

/// Number of an end: left, right.
fn side(hand: Hand) -> usize {
    usize::from(hand == Hand::Right)
}

fn end(rule: &mut Cases, on: PieceOn, hand: Hand) {
    let end = &on.piece.ends[side(hand)];
    let cut = end.cut;
    let (long_point, short_point) = (end.long_point, end.short_point);
    let said = EndShape { cut: Some(cut), angle: end.angle, long_point, short_point };
    let outermost = if hand == Hand::Left { 0.0 } else { on.piece.length };
    rule.case(same(long_point, outermost), || {
        let v = found(on.subject(), PieceBreach::LongPoint { hand }).at(on.end(side(hand)));
        v.measured(Inches(long_point)).exactly(Inches(outermost))
    });
    let broken = |shown: EndShape| {
        let breach = PieceBreach::End { hand, said, shown };
        found(on.subject(), breach).at(on.end(side(hand)))
    };
    let Some(contour) = &end.contour else {
        let whole = matches!(cut, EndCut::Factory | EndCut::Square);
        rule.case(whole && same(said.angle, 90.0) && end.set_back() == 0.0, || {
            let (cut, at) = (Some(EndCut::Square), outermost);
            broken(EndShape { cut, angle: 90.0, long_point: at, short_point: at })
        });
        return;
    };
    let (least, most) = range(&contour.points, 0);
    let slants = slants(contour);
    let at = |s: &(f64, f64)| pitch::angle(pitch::in_twelve(s.0, s.1));
    let longest = slants.iter().max_by(|a, b| a.0.hypotenuse(a.1).total_cmp(&b.0.hypotenuse(b.1)));
    let angle = longest.map_or(90.0, at);
    let alike = |s: &(f64, f64)| {
        (at(s) - angle).abs() < SAME_ANGLE && longest.is_some_and(|l| l.0.signum() == s.0.signum())
    };
    let kind = match cut {
        EndCut::Angled => slants.iter().all(alike) && !slants.is_empty(),
        // Points on a curve are marked, no angle is set.
        EndCut::Shaped => true,
        EndCut::Factory | EndCut::Square => false,
    };
    let angled = contour.spacing.is_some() || (angle - said.angle).abs() < SAME_ANGLE;
    let set = most - least;
    let innermost = if hand == Hand::Left { most } else { least };
    let deep_as_said =
        (set - end.set_back()).abs() < NEAR && (innermost - short_point).abs() < NEAR;
    rule.case(kind && angled && deep_as_said && end.set_back() > 0.0, || {
        // A contour without a point is nowhere: its end stays where it is said.
        let known = |at: f64, or: f64| if at.is_finite() { at } else { or };
        let long_point = known(most + least - innermost, said.long_point);
        let short_point = known(innermost, said.short_point);
        broken(EndShape { cut: None, angle, long_point, short_point })
    });
}

/// Slanted sides of a contour, sideways and up, low end first.
fn slants(contour: &Contour) -> Vec<(f64, f64)> {
    let sides = contour.points.windows(2);
    sides
        .map(|w| if w[0][1] < w[1][1] { (w[0], w[1]) } else { (w[1], w[0]) })
        .map(|(a, b)| (b[0] - a[0], b[1] - a[1]))
        .filter(|(dx, dy)| dx.abs() > LEVEL / 4.0 && *dy > LEVEL / 4.0)
        .collect()
}

/// The slope of a run that one piece covers, sideways for one up: only a run's own ends lean.
fn leaning(rule: &mut Cases, on: PieceOn, slabs: &[Slab], hand: Hand) {
    let r = on.run.run;
    let lean = lean(slabs, side(hand));
    if on.piece.ends[side(hand)].contour.is_none() || r.pieces.len() != 1 || lean.dy <= 0.0 {
        return;
    }
    let slope = r.ends[side(hand)].slope;
    let leans = lean.dx / lean.dy;
    rule.case((slope - leans).abs() < 0.01 * (1.0 + slope.abs()), || {
        let v = found(on.run.subject(), RunBreach::Slope { hand }).at(on.end(side(hand)));
        v.measured(Slope(slope)).exactly(Slope(leans))
    });
}
