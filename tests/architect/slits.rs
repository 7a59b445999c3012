//! A hatch boundary as one loop: holes are joined to the outer line by slits.

use super::shape::{Area, P};

/// The boundary of an area of one part as one loop, and whether it has slits. A slit is two lines on
/// one another, or `wide` apart.
pub(crate) fn one_loop(area: &Area, wide: f64, is_open: bool) -> (Vec<Vec<P>>, bool) {
    let mut rings = Vec::new();
    let mut any = false;
    for part in area.parts() {
        let mut all = part.rings();
        let mut outer = all.remove(0);
        // Lowest holes first, so that a slit down from each meets what is already joined.
        all.sort_by(|a, b| foot(a)[1].total_cmp(&foot(b)[1]));
        for hole in all {
            if let Some(joined) = joined(&outer, &hole, if is_open { wide } else { 0.0 }) {
                outer = joined;
                any = true;
            } else {
                rings.push(hole);
            }
        }
        rings.insert(0, outer);
    }
    (rings, any)
}

/// The lower left corner of a hole.
fn foot(ring: &[P]) -> P {
    ring.iter().copied().fold(ring[0], |a, b| if (b[1], b[0]) < (a[1], a[0]) { b } else { a })
}

/// A hole joined to the loop by a slit straight down from its foot to the nearest level side.
fn joined(outer: &[P], hole: &[P], wide: f64) -> Option<Vec<P>> {
    let from = foot(hole);
    let start = hole.iter().position(|p| *p == from)?;
    // Sides of the loop under the hole's foot, with room for the slit.
    let mut best: Option<(usize, f64)> = None;
    for (i, a) in outer.iter().enumerate() {
        let b = outer[(i + 1) % outer.len()];
        let (left, right) = (a[0].min(b[0]), a[0].max(b[0]));
        let is_level = (a[1] - b[1]).abs() < 1e-9;
        let spans = left < from[0] - 1e-6 && right > from[0] + wide + 1e-6;
        if is_level && spans && a[1] < from[1] && best.is_none_or(|(_, y)| a[1] > y) {
            best = Some((i, a[1]));
        }
    }
    let (side, y) = best?;
    // The loop runs with its inside on the left: along a foot to the right, so down the hole's left.
    let runs_right = outer[(side + 1) % outer.len()][0] > outer[side][0];
    let mut way: Vec<P> = (0..hole.len()).map(|k| hole[(start + k) % hole.len()]).collect();
    let second = way[1];
    let goes_up = second[0] == from[0];
    // A hole is gone round against the loop: up its left side first where the loop runs right.
    if goes_up != runs_right {
        way[1..].reverse();
    }
    let mut out: Vec<P> = outer[..=side].to_vec();
    if runs_right {
        out.push([from[0], y]);
        out.extend(&way);
        out.push([from[0] + wide, from[1]]);
        out.push([from[0] + wide, y]);
    } else {
        out.push([from[0] + wide, y]);
        out.push([from[0] + wide, from[1]]);
        out.extend(&way[1..]);
        out.push(from);
        out.push([from[0], y]);
    }
    out.extend(&outer[side + 1..]);
    Some(out)
}
