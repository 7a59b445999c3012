//! What became of a wall's outline: which of its sides moved, and how far.

use std::slice::from_ref;

use super::shape::{Box4, TOLD, box_of, differs, plain, square_feet, turned, unlike};
use crate::geom::vocabulary::Xy;
use crate::model::change::{How, WallSide};

/// Which way a side of a ring runs, the wall on its left hand.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Way {
    Up,
    Down,
    Rightward,
    Leftward,
    /// Sloped, by whether it rises and whether it goes right.
    Sloped(bool, bool),
}

fn way(a: Xy, b: Xy) -> Way {
    let (run, rise) = (b[0] - a[0], b[1] - a[1]);
    match (run.abs() <= TOLD, rise.abs() <= TOLD) {
        (true, _) if rise > 0.0 => Way::Up,
        (true, _) => Way::Down,
        (_, true) if run > 0.0 => Way::Rightward,
        (_, true) => Way::Leftward,
        _ => Way::Sloped(rise > 0.0, run > 0.0),
    }
}

/// How an outline differs, side by side with the place of each; none where it is the same. Places of the old
/// one are those of the new elevation already.
pub(super) fn changes(old: &[Xy], new: &[Xy]) -> Vec<(How, Vec<Box4>)> {
    let (a, b) = (plain(old), plain(new));
    match side_by_side(&a, &b) {
        Some(sides) => sides,
        None => {
            let places = unlike(from_ref(&a), from_ref(&b), 1.0);
            if places.is_empty() {
                return Vec::new();
            }
            let (from, to) = (square_feet(&a), square_feet(&b));
            vec![(How::Reshaped { from, to, by: None }, places)]
        }
    }
}

/// Each side of the one against the same side of the other; `None` where they have none in common.
fn side_by_side(a: &[Xy], b: &[Xy]) -> Option<Vec<(How, Vec<Box4>)>> {
    let n = a.len();
    let side = |r: &[Xy], i: usize| (r[i], r[(i + 1) % n]);
    let turn = |k: usize| -> Vec<Xy> { (0..n).map(|i| b[(i + k) % n]).collect() };
    let alike = |b: &[Xy]| {
        (0..n).all(|i| {
            let ((p, q), (r, s)) = (side(a, i), side(b, i));
            way(p, q) == way(r, s)
        })
    };
    let nearest = turned(a, b)?;
    let b = if alike(&nearest) { nearest } else { (0..n).map(turn).find(|b| alike(b))? };
    let mut out: Vec<(How, Vec<Box4>)> = Vec::new();
    for i in 0..n {
        let ((p, q), (r, s)) = (side(a, i), side(&b, i));
        if let Some(how) = moved(p, q, r, s) {
            let place = box_of(&[p, q, r, s]);
            match out.iter_mut().find(|o| same_move(&o.0, &how)) {
                Some(one) => one.1.push(place),
                None => out.push((how, vec![place])),
            }
        }
    }
    Some(out)
}

fn moved(p: Xy, q: Xy, r: Xy, s: Xy) -> Option<How> {
    let side_moved = |side, by: f64| differs(by, 0.0).then_some(How::SideMoved { side, by });
    let (right, up) = ((r[0] + s[0] - p[0] - q[0]) / 2.0, (r[1] + s[1] - p[1] - q[1]) / 2.0);
    match way(r, s) {
        Way::Up => side_moved(WallSide::Right, right),
        Way::Down => side_moved(WallSide::Left, right),
        Way::Rightward => side_moved(WallSide::Foot, up),
        Way::Leftward => side_moved(WallSide::Top, up),
        Way::Sloped(..) => {
            let slope = |a: Xy, b: Xy| (b[1] - a[1]) / (b[0] - a[0]);
            let (from, to) = (slope(p, q), slope(r, s));
            // What the slope makes of its whole length is what is seen.
            let run = (s[0] - r[0]).abs();
            if differs((to - from) * run, 0.0) {
                let (from, to) = (12.0 * from.abs(), 12.0 * to.abs());
                return Some(How::Pitch { from, to });
            }
            let middle = f64::midpoint(r[0], s[0]);
            let was = p[1] + from * (middle - p[0]);
            side_moved(WallSide::Rake, f64::midpoint(r[1], s[1]) - was)
        }
    }
}

/// Whether two sides of a wall moved alike: told once.
fn same_move(a: &How, b: &How) -> bool {
    match (a, b) {
        (How::SideMoved { side, by }, How::SideMoved { side: other, by: too }) => {
            side == other && !differs(*by, *too)
        }
        (How::Pitch { from, to }, How::Pitch { from: other, to: too }) => {
            (from - other).abs() < 0.01 && (to - too).abs() < 0.01
        }
        _ => false,
    }
}
