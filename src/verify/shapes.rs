//! How each piece is said to end and to be ripped, against what shows of it on the wall.

use super::sweep::{Shapes, Slab};
use super::{Rule, same};
use crate::geom::tol::{LEVEL, SAME};
use crate::geom::vocabulary::Xy;
use crate::layout::Layout;
use crate::layout::course::{LaidCourse, LaidRun};
use crate::layout::piece::{EndCut, Piece, PieceEnd};
use crate::layout::verified::RuleCheck;
use crate::pitch;

/// Places on the wall that differ by less are one place, inches: outlines come from boolean
/// operations on the 1/1024 in grid.
const NEAR: f64 = 0.02;
/// Angles nearer than this are one angle, degrees: a tenth of the smallest mark on a mitre saw.
const SAME_ANGLE: f64 = 0.1;

pub(super) fn check(layout: &Layout) -> [RuleCheck; 1] {
    let mut rule = Rule::default();
    for (_, c, r, p) in layout.pieces() {
        extent(&mut rule, c, p);
        let mut shape = Shapes::default();
        shape.add(std::iter::once(&p.outline).chain(&p.holes));
        let slabs = shape.slabs(c.bottom, c.top);
        for (i, name) in ["left", "right"].into_iter().enumerate() {
            end(&mut rule, r, p, &slabs, i, name);
        }
    }
    [rule.done("ends, angles and rips agree with what shows on the wall")]
}

fn range(outline: &[Xy], axis: usize) -> (f64, f64) {
    outline
        .iter()
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), q| (a.min(q[axis]), b.max(q[axis])))
}

/// Length, course and rip.
fn extent(rule: &mut Rule, c: &LaidCourse, p: &Piece) {
    let all: Vec<Xy> = p.more.iter().flatten().chain(&p.outline).copied().collect();
    let ((left, right), (low, high)) = (range(&all, 0), range(&all, 1));
    rule.case((left - p.x0).abs() < NEAR && (right - p.x1).abs() < NEAR, || {
        format!(
            "piece {} shows {left:.3} to {right:.3}, said to be {:.3} to {:.3}",
            p.mark, p.x0, p.x1
        )
    });
    rule.case(low >= c.bottom - NEAR && high <= c.top + NEAR, || {
        format!("piece {} leaves its course", p.mark)
    });
    let (low, high) = range(&p.outline, 1);
    if let Some(rip) = &p.rip {
        let (from, to) = (low - c.bottom, high - c.bottom);
        let agrees = (from - rip.from).abs() < NEAR && (to - rip.to).abs() < NEAR;
        let some = rip.from > 0.0 || rip.to < c.top - c.bottom;
        rule.case(agrees && some && rip.to > rip.from, || {
            let told = format!("{:.3} to {:.3}", rip.from, rip.to);
            format!("piece {} is ripped {told}, shows {from:.3} to {to:.3}", p.mark)
        });
    }
    for (y, edge, what) in [(low, c.bottom, "foot"), (high, c.top, "top")] {
        let level = level_at(&p.outline, y) && (y - edge).abs() > NEAR;
        rule.case(!level || p.rip.is_some(), || {
            format!("piece {}: its {what} is cut at {:.3} and no rip is told", p.mark, y - c.bottom)
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

fn lean(slabs: &[Slab], hand: usize) -> Lean {
    let mut sides: Vec<(Xy, Xy)> = Vec::new();
    for side in slabs.iter().filter_map(|s| s.outer).map(|o| o[hand]) {
        if sides.last() != Some(&(side.low, side.high)) {
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

fn end(rule: &mut Rule, r: &LaidRun, p: &Piece, slabs: &[Slab], hand: usize, name: &str) {
    let (end, slope) = (&p.ends[hand], r.ends[hand].slope);
    let PieceEnd { cut, angle, contour, .. } = end;
    let (cut, angle, set) = (*cut, *angle, end.set_back());
    let outermost = if hand == 0 { 0.0 } else { p.length };
    rule.case(same(end.long_point, outermost), || {
        let at = end.long_point;
        format!("piece {}: its {name} end's long point is told at {at:.3}", p.mark)
    });
    let told = || format!("told as {cut:?} at {angle:.2} degrees with {set:.3}");
    let Some(contour) = contour else {
        let square =
            matches!(cut, EndCut::Factory | EndCut::Square) && same(angle, 90.0) && set == 0.0;
        rule.case(square, || format!("piece {}: its {name} end is square, {}", p.mark, told()));
        return;
    };
    let (least, most) = range(&contour.points, 0);
    // Slanted sides, low end first.
    let slants: Vec<(f64, f64)> = contour
        .points
        .windows(2)
        .map(|w| if w[0][1] < w[1][1] { (w[0], w[1]) } else { (w[1], w[0]) })
        .map(|(a, b)| (b[0] - a[0], b[1] - a[1]))
        .filter(|(dx, dy)| dx.abs() > LEVEL / 4.0 && *dy > LEVEL / 4.0)
        .collect();
    let at = |s: &(f64, f64)| pitch::angle(pitch::in_twelve(s.0, s.1));
    let longest = slants.iter().max_by(|a, b| a.0.hypot(a.1).total_cmp(&b.0.hypot(b.1)));
    let expected = longest.map_or(90.0, at);
    let alike = |s: &(f64, f64)| {
        (at(s) - expected).abs() < SAME_ANGLE
            && longest.is_some_and(|l| l.0.signum() == s.0.signum())
    };
    let kind = match cut {
        EndCut::Angled => slants.iter().all(alike) && !slants.is_empty(),
        // Points on a curve are marked, no angle is set.
        EndCut::Shaped => true,
        EndCut::Factory | EndCut::Square => false,
    };
    let angled = contour.spacing.is_some() || (expected - angle).abs() < SAME_ANGLE;
    let innermost = if hand == 0 { most } else { least };
    let deep_as_told =
        (most - least - set).abs() < NEAR && (innermost - end.short_point).abs() < NEAR;
    rule.case(kind && angled && deep_as_told && set > 0.0, || {
        let deep = most - least;
        format!(
            "piece {}: its {name} end is cut at {expected:.2} degrees with {deep:.3} from long \
             point to short, {}",
            p.mark,
            told()
        )
    });
    // Only a run's own ends lean.
    let last = if hand == 0 { r.pieces.first() } else { r.pieces.last() };
    let lean = lean(slabs, hand);
    if last.is_some_and(|q| std::ptr::eq(q, p)) && r.pieces.len() == 1 && lean.dy > 0.0 {
        // The slope of the run: sideways for one up.
        let leans = lean.dx / lean.dy;
        rule.case((slope - leans).abs() < 0.01 * (1.0 + slope.abs()), || {
            format!("run {}: its {name} end leans {leans:.4} for one up, told as {slope:.4}", r.id)
        });
    }
}
