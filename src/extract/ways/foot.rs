//! The foot of a wall whose lines run on below it: a level line on another shown layer, from side
//! to side, is the top of the foundation.

use crate::geom::boolean::intersection;
use crate::geom::polygon::{Polygon, bounds};
use crate::geom::tol::LEVEL;
use crate::geom::vocabulary::Ring;
use crate::model::linework::{Linework, Role};

/// How far over the lowest line the foundation's top may be, inches (common practice, no source).
const REACH: f64 = 18.0;

/// The wall's ring cut at the top of the foundation, and the layer that shows it.
pub(super) fn cut(lines: &Linework, ring: &Ring, own: &[usize]) -> Option<(Ring, f64, usize)> {
    let b = bounds(ring)?;
    let (y, layer) = lines
        .strokes
        .iter()
        .filter(|s| !own.contains(&s.layer))
        // Hidden layers hold other views that lie on this one, even where the job reads them.
        .filter(|s| lines.layers.get(s.layer).is_some_and(|l| l.layer.shown))
        .filter(|s| !matches!(s.role, Some(Role::Dimension | Role::Frame | Role::Texture)))
        .flat_map(|s| s.points.windows(2).map(move |w| (w[0], w[1], s.layer)))
        .filter(|(p, q, _)| p.y == q.y && p.y > b.y0 + LEVEL && p.y < b.y0 + REACH)
        // From side to side, and no farther: grade lines run on.
        .filter(|(p, q, _)| (p.x.min(q.x) - b.x0).abs() < 0.5 && (p.x.max(q.x) - b.x1).abs() < 0.5)
        .map(|(p, _, layer)| (p.y, layer))
        .max_by(|a, b| a.0.total_cmp(&b.0))?;
    let above = Polygon::rect(b.x0 - 1.0, y, b.x1 + 1.0, b.y1 + 1.0);
    let whole = [Polygon::simple(ring.clone()).wound()];
    match &intersection(&whole, &[above])[..] {
        [one] if one.holes.is_empty() => Some((one.outer.clone(), y, layer)),
        _ => None,
    }
}
