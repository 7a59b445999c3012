//! How each piece is said to end and to be ripped, against what shows of it on the wall.

use super::sweep::{Shapes, Slab};
use super::{Rule, same};
use crate::geom::tol::{LEVEL, SAME};
use crate::model::layout::{Course, EndCut, Layout, Piece, RuleCheck, Run, Xy};
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
fn extent(rule: &mut Rule, c: &Course, p: &Piece) {
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
    /// Least and greatest x.
    reach: Option<(f64, f64)>,
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
            let (least, most) = out.reach.unwrap_or((a[0], a[0]));
            out.reach = Some((least.min(a[0]).min(b[0]), most.max(a[0]).max(b[0])));
        }
    }
    out
}

fn end(rule: &mut Rule, r: &Run, p: &Piece, slabs: &[Slab], hand: usize, name: &str) {
    let (cut, angle, set, slope) = if hand == 0 {
        (p.left_end, p.left_angle, p.left_set, r.left_slope)
    } else {
        (p.right_end, p.right_angle, p.right_set, r.right_slope)
    };
    // Only a run's own ends lean; a seam is square.
    let last = if hand == 0 { r.pieces.first() } else { r.pieces.last() };
    let at_receiver = last.is_some_and(|q| std::ptr::eq(q, p));
    let lean = if at_receiver { lean(slabs, hand) } else { Lean::default() };
    let told = || format!("told as {cut:?} at {angle:.2} degrees with {set:.3}");
    let Some((least, most)) = lean.reach else {
        let square = cut != EndCut::Angled && same(angle, 90.0) && set == 0.0;
        rule.case(square, || format!("piece {}: its {name} end is square, {}", p.mark, told()));
        return;
    };
    let deep = most - least;
    // An end that bows round a fixture has no one angle.
    let bowed = deep - lean.dx.abs() > NEAR;
    let expected = pitch::angle(pitch::in_twelve(lean.dx, lean.dy));
    let agrees = (bowed || (expected - angle).abs() < SAME_ANGLE) && (deep - set).abs() < NEAR;
    rule.case(cut == EndCut::Angled && agrees, || {
        let angle = if bowed { "round".to_owned() } else { format!("at {expected:.2} degrees") };
        format!(
            "piece {}: its {name} end is cut {angle} with {deep:.3} from long point to short, {}",
            p.mark,
            told()
        )
    });
    // The slope of the run: sideways for one up.
    let leans = lean.dx / lean.dy;
    rule.case((slope - leans).abs() < 0.01 * (1.0 + slope.abs()) || r.pieces.len() > 1, || {
        format!("run {}: its {name} end leans {leans:.4} for one up, told as {slope:.4}", r.id)
    });
}
