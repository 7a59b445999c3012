//! A tilt that all sides of a drawing, or of one view, have in common is undone as one turn: over a
//! whole sheet it moves lines by inches, though no side leans by more than noise.

use super::noise::{self, HAIR, Lie, MOST_TILT, STEP};
use super::sites::Sites;
use crate::geom::polygon::bounds;
use crate::geom::tol::SAME;
use crate::geom::vocabulary::{Affine, Point, Vec2};
use crate::model::linework::{Linework, Role};
use crate::normalize::motion::{EVERYWHERE, moved};

/// Share of the length of long sides that must have the tilt (of our own choosing, no source).
const AGREE: f64 = 0.75;
/// How many times its own uncertainty a tilt must be (of our own choosing, no source).
const SURE: f64 = 4.0;
/// Shorter sides tell nothing of a tilt, inches.
const LONG_ENOUGH: f64 = 12.0;
/// A view turned by more than noise: the most that is undone, degrees, the share of its sides that may stand
/// upright all the same, and as many sides as are looked at (of our own choosing, no source).
const MOST_TURN: f64 = 40.0;
const UPRIGHT: f64 = 0.05;
const MOST_SIDES: usize = 400;
/// Coordinates that are one but for rounding lie within this, inches.
const ONE: f64 = 1.0 / 2048.0;

/// Undoes the tilt of the whole drawing, then that of each part that still has one of its own. Gives
/// the greatest, radians.
pub(super) fn undone(lines: &mut Linework, sites: &Sites) -> Option<f64> {
    let all = points_of(lines, |_| true);
    let whole = upright(&all).map(|(tilt, map)| {
        moved(lines, EVERYWHERE, map, None);
        tilt
    });
    let mut greatest = whole;
    for (i, region) in sites.regions.iter().enumerate() {
        let own = points_of(lines, |s| sites.of.get(s) == Some(&Some(i)));
        let Some((tilt, map)) = upright(&own) else { continue };
        // Regions were found before the whole was turned: half an inch aside at most.
        moved(lines, *region, map, None);
        if greatest.is_none_or(|g: f64| g.abs() < tilt.abs()) {
            greatest = Some(tilt);
        }
    }
    greatest
}

/// Roles whose sides are level and plumb but for slopes of roofs: where a wall has few, frames, floor
/// lines and openings tell as well.
fn upright_when_drawn(role: Option<Role>) -> bool {
    role.is_some_and(|r| {
        r.is_outline() || matches!(r, Role::Frame | Role::Level | Role::InsideCorner | Role::Joint)
    })
}

/// Sides that show how part of the drawing lies.
fn points_of(lines: &Linework, part: impl Fn(usize) -> bool) -> Vec<(Point, Point)> {
    let strokes = lines.strokes.iter().enumerate();
    let strokes = strokes.filter(|(i, s)| upright_when_drawn(s.role) && part(*i));
    let mut out: Vec<(Point, Point)> = strokes.flat_map(|(_, s)| noise::sides_of(s)).collect();
    if out.is_empty() {
        for (_, _, ring) in super::net::siding_loops(lines) {
            out.extend(crate::geom::polygon::sides(&ring));
        }
    }
    out
}

/// The tilt these sides have in common, with the map that undoes it.
fn upright(sides: &[(Point, Point)]) -> Option<(f64, Affine)> {
    let lies: Vec<Lie> = sides.iter().map(|(a, b)| Lie::of(*a, *b)).collect();
    let tilt = common(&lies).or_else(|| turned(&lies))?;
    let all = bounds(sides.iter().flat_map(|(a, b)| [a, b]))?;
    // A turn that moves nothing by more than lengths are told apart is none.
    let reach = longest(&lies);
    if tilt.abs() * reach <= SAME {
        return None;
    }
    let map = Affine::rotate_about(-tilt, all.center());
    let places: Vec<Point> = sides.iter().map(|(a, _)| map * *a).collect();
    let off = Vec2::new(phase(places.iter().map(|p| p.x)), phase(places.iter().map(|p| p.y)));
    Some((tilt, Affine::translate(-off) * map))
}

fn longest(lies: &[Lie]) -> f64 {
    lies.iter().map(|l| l.length).fold(0.0, f64::max)
}

/// The angle that a whole view was turned by, beyond what is noise: half of its long sides, level and plumb
/// ones, have it, and next to none stands upright. Boards laid on such a view would all be cut askew.
fn turned(lies: &[Lie]) -> Option<f64> {
    let long = || lies.iter().filter(|l| l.length >= LONG_ENOUGH).take(MOST_SIDES);
    let sum = |of: &dyn Fn(&Lie) -> bool| long().filter(|l| of(l)).map(|l| l.length).sum::<f64>();
    let total = sum(&|_| true);
    if sum(&|l| l.angle.abs() <= MOST_TILT.to_radians()) > UPRIGHT * total {
        return None;
    }
    let agrees = |l: &Lie, with: f64| (l.angle - with).abs() * l.length <= STEP + HAIR;
    let (most, tilt) = long()
        .filter(|l| l.angle.abs() <= MOST_TURN.to_radians())
        .map(|l| (sum(&|other| agrees(other, l.angle)), l.angle))
        .max_by(|a, b| a.0.total_cmp(&b.0).then(b.1.total_cmp(&a.1)))?;
    let with: Vec<&Lie> = long().filter(|l| agrees(l, tilt)).collect();
    let both = with.iter().any(|l| l.level) && with.iter().any(|l| !l.level);
    (both && with.len() > 2 && 2.0 * most >= total).then_some(tilt)
}

/// The angle that most long sides lie off their axes by, level and plumb ones alike, where it is no
/// chance.
fn common(lies: &[Lie]) -> Option<f64> {
    let most = MOST_TILT.to_radians();
    let long = |l: &&Lie| l.length >= LONG_ENOUGH && l.angle.abs() <= most;
    let mut near: Vec<Lie> = lies.iter().filter(long).copied().collect();
    near.sort_by(|a, b| a.angle.total_cmp(&b.angle));
    let total: f64 = near.iter().map(|l| l.length).sum();
    let mut sum = 0.0;
    let middle = near.iter().find(|l| {
        sum += l.length;
        sum >= total / 2.0
    })?;
    let agrees = |l: &&Lie| (l.angle - middle.angle).abs() * l.length <= STEP + HAIR;
    let with: Vec<&Lie> = near.iter().filter(agrees).collect();
    let share: f64 = with.iter().map(|l| l.length).sum::<f64>() / total;
    let both = with.iter().any(|l| l.level) && with.iter().any(|l| !l.level);
    if share < AGREE || with.len() < 3 || !both {
        return None;
    }
    // Ends are off by as much on long sides as on short ones: each angle counts by its length squared.
    let weight: f64 = with.iter().map(|l| l.length * l.length).sum();
    let tilt = with.iter().map(|l| l.angle * l.length * l.length).sum::<f64>() / weight;
    let rest = with.iter().map(|l| ((l.angle - tilt) * l.length).powi(2)).sum::<f64>();
    // The tilt itself and the choice of who agrees are taken from the same few sides: two count no more.
    let unsure = (rest / (with.len() - 2) as f64 / weight).sqrt();
    (tilt.abs() > SURE * unsure).then_some(tilt)
}

/// How far most of the coordinates lie past the sixteenths of an inch, where most lie alike: a turn
/// leaves them anywhere, and rounding would then part what is drawn on one line.
fn phase(all: impl Iterator<Item = f64>) -> f64 {
    let step = STEP;
    let mut off: Vec<f64> = all.map(|v| v.rem_euclid(step)).collect();
    off.sort_by(f64::total_cmp);
    let n = off.len();
    off.extend_from_within(..);
    off[n..].iter_mut().for_each(|v| *v += step);
    let (mut best, mut from) = ((0, 0), 0);
    for to in 0..off.len() {
        while off[to] - off[from] > 2.0 * ONE {
            from += 1;
        }
        if to - from > best.1 - best.0 {
            best = (from, to);
        }
    }
    let count = best.1 - best.0 + 1;
    if n == 0 || 2 * count < n {
        return 0.0;
    }
    let mean = off[best.0..=best.1].iter().sum::<f64>() / count as f64;
    if mean > step / 2.0 { mean - step } else { mean }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ring(map: Affine) -> Vec<(Point, Point)> {
        let p = [(0., 0.), (480., 0.), (480., 96.), (240., 216.), (0., 96.)];
        let p = p.map(|(x, y)| map * Point::new(x, y));
        crate::geom::polygon::sides(&p).collect()
    }

    #[test]
    fn a_tilt_of_all_sides_is_found_and_undone() {
        for degrees in [0.01_f64, -0.05, 0.1, 0.5] {
            let map = Affine::translate((3000.0, 700.0)) * Affine::rotate(degrees.to_radians());
            let (tilt, back) = upright(&ring(map)).unwrap();
            assert!((tilt.to_degrees() - degrees).abs() < 1e-9, "{degrees}");
            for (a, _) in ring(back * map) {
                assert!((a.x * 16.0 - (a.x * 16.0).round()).abs() < 1e-6, "{a:?}");
            }
        }
        assert!(upright(&ring(Affine::IDENTITY)).is_none());
    }

    #[test]
    fn one_leaning_side_is_no_tilt() {
        let mut sides = ring(Affine::IDENTITY);
        sides[0].1.y += 0.2;
        sides[1].0.y += 0.2;
        assert!(upright(&sides).is_none());
    }
}
