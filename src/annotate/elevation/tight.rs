//! Tight places: a short run between two receivers, where a panel cannot be slid in sideways
//! (FACTS PR-12, common practice, no source).

use super::view::View;
use crate::annotate::canvas::{Canvas, Look, Mark};
use crate::model::layout::{Elevation, Run};

/// Courses of one wall whose runs lie between the same two receivers.
struct Stack {
    x: (f64, f64),
    y: (f64, f64),
}

/// Marks each stack of tight runs once. `least` is the shortest piece the job allows in a seamed
/// run: what is shorter is tight.
pub(super) fn places(c: &mut Canvas, e: &Elevation, v: &View, least: f64) {
    for w in &e.walls {
        let mut stacks: Vec<Stack> = Vec::new();
        for k in &w.courses {
            for r in k.runs.iter().filter(|r| tight(r, least)) {
                let same =
                    |s: &&mut Stack| s.x.0 < r.x1 && r.x0 < s.x.1 && (s.y.1 - k.bottom).abs() < 1.0;
                match stacks.iter_mut().find(same) {
                    Some(s) => s.y.1 = k.top,
                    None => stacks.push(Stack { x: (r.x0, r.x1), y: (k.bottom, k.top) }),
                }
            }
        }
        for s in stacks {
            let (x, y) = ((s.x.0 + s.x.1) / 2.0, (s.y.0 + s.y.1) / 2.0);
            if !v.holds(x, y) {
                continue;
            }
            // Off the middle, where the mark of the piece stands.
            let wide = s.x.1 - s.x.0;
            let spots = [0.12, 0.88, 0.25, 0.75].map(|k| v.at(s.x.0 + k * wide, y));
            let mark = |target| Mark {
                text: "tight",
                target,
                wish: target,
                reach: 1.0,
                look: Look::Dotted,
            };
            if !spots.iter().any(|t| c.mark_clear(mark(*t)).is_some()) {
                c.mark(mark(spots[0]));
            }
        }
    }
}

pub(super) fn any<'a>(mut runs: impl Iterator<Item = &'a Run>, least: f64) -> bool {
    runs.any(|r| tight(r, least))
}

/// Held plumb on both sides, and too short to be bowed in.
fn tight(r: &Run, least: f64) -> bool {
    r.x1 - r.x0 < least && r.left_slope == 0.0 && r.right_slope == 0.0
}
