//! Broken seam rules: a diamond round each seam, dashes between the two that stand too near, and the
//! mark that the report names.

use super::view::View;
use crate::annotate::canvas::{Canvas, Look, Mark};
use crate::annotate::elevation_index::AtElevation;
use crate::annotate::style::Ink;
use crate::geom::vocabulary::{Point, Vec2};
use crate::layout::wall::LaidElevation;
use crate::model::conflict::SeamAt;

/// Half of a diamond, paper inches.
const HALF: f64 = 0.06;

/// The middle of a seam's height on the wall.
pub(in crate::annotate) fn place(e: &LaidElevation, at: &SeamAt) -> Option<(f64, f64)> {
    let mut runs = e.walls.iter().flat_map(|w| &w.courses).flat_map(|c| &c.runs);
    let (low, high) = runs.find(|r| r.id == at.run)?.seam_height(at.x)?;
    Some((at.x, (low + high) / 2.0))
}

/// The corners of a diamond round a point.
pub(in crate::annotate) fn diamond(at: Point, half: f64) -> [Point; 4] {
    [(half, 0.0), (0.0, half), (-half, 0.0), (0.0, -half)].map(|d| at + Vec2::new(d.0, d.1))
}

/// Diamonds and dashes, which text keeps off.
pub(super) fn shapes(c: &mut Canvas, on: &AtElevation, e: &LaidElevation, v: &View) {
    for b in &on.breaks {
        let at: Vec<Point> =
            b.seams.iter().filter_map(|s| place(e, s)).map(|(x, y)| v.at(x, y)).collect();
        at.iter().for_each(|p| c.firm_ring(Ink::Fault, &diamond(*p, HALF)));
        at.windows(2).for_each(|p| c.firm(Ink::Doubt, p[0], p[1]));
    }
}

/// Their marks, each where its first seam shows. Returns how many found no room.
pub(super) fn marks(c: &mut Canvas, on: &AtElevation, e: &LaidElevation, v: &View) -> usize {
    let mut none = 0;
    for b in &on.breaks {
        let shown = b.seams.iter().filter_map(|s| place(e, s)).find(|(x, y)| v.holds(*x, *y));
        let Some((x, y)) = shown else { continue };
        let target = v.at(x, y);
        let wish = target + Vec2::new(0.2, 0.0);
        let m = Mark { text: &b.mark, target, wish, reach: 1.5, look: Look::Plain };
        let placed = c.mark_clear(m).or_else(|| c.mark(Mark { reach: 6.0, ..m }));
        none += usize::from(placed.is_none());
    }
    none
}
