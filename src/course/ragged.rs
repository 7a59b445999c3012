//! Feet of walls that are cut around something drawn in front of them: a chair, a plant, a person.

use crate::geom::vocabulary::Rect;
use crate::layout::wall::LaidEdge;
use crate::model::house::EdgeKind;
use crate::real::Real;

/// Longest slanted edge of such an outline, inches: a real lower roof's is longer. Of our own choosing.
const SHORT: f64 = 24.0;
/// How far apart its edges stand at most, inches: the arms and the back of a chair. Of our own choosing.
const NEAR: f64 = 6.0;
/// Slopes that differ by less are one, inches in 12.
const ALIKE: f64 = 0.25;
/// Least number of different slopes: a lower roof with a ridge has two, one with a kick has four. Of our own
/// choosing.
const SLOPES: usize = 5;

/// What is cut out at a foot.
pub(super) struct Ragged {
    /// Slanted edges.
    pub(super) edges: usize,
    /// What they reach over, elevation inches.
    pub(super) place: Rect,
}

/// Each place where short edges that face down have many slopes.
pub(super) fn feet(edges: &[LaidEdge]) -> Vec<Ragged> {
    let mut groups: Vec<(Rect, Vec<f64>)> = Vec::new();
    for e in edges.iter().filter(|e| e.kind == EdgeKind::LowerRoof) {
        let [x, y] = [e.to[0] - e.from[0], e.to[1] - e.from[1]];
        if x.hypotenuse(y) > SHORT || x == 0.0 || y == 0.0 {
            continue;
        }
        let place = Rect::new(e.from[0], e.from[1], e.to[0], e.to[1]).abs();
        let (mut place, mut slopes) = (place, vec![12.0 * y / x]);
        // Whatever it touches becomes one with it.
        while let Some(i) = groups.iter().position(|g| near(&g.0, &place)) {
            let other = groups.swap_remove(i);
            place = place.union(other.0);
            slopes.extend(other.1);
        }
        groups.push((place, slopes));
    }
    groups.sort_by(|a, b| a.0.x0.total_cmp(&b.0.x0).then(a.0.y0.total_cmp(&b.0.y0)));
    let ragged = groups.into_iter().filter(|(_, slopes)| different(slopes) >= SLOPES);
    ragged.map(|(place, slopes)| Ragged { edges: slopes.len(), place }).collect()
}

fn near(a: &Rect, b: &Rect) -> bool {
    let a = a.inflate(NEAR, NEAR);
    a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1
}

/// How many of the slopes differ.
fn different(slopes: &[f64]) -> usize {
    let mut sorted = slopes.to_vec();
    sorted.sort_by(f64::total_cmp);
    1 + sorted.windows(2).filter(|w| w[1] - w[0] > ALIKE).count()
}
