//! Openings that touch something as drawn touch it still: a side of the wall, stone, a band, another opening.

use super::shape::OpeningShape;
use super::wall::Wall;
use crate::geom::tol::{LEVEL, same};
use crate::geom::vocabulary::Point;
use crate::model::house::DrawnWall;

/// What is taped apart, or over one another, by as much closes again, inches: no siding shows on so little, and none
/// stands on the other side. Of our own choosing, no source.
const STRIP: f64 = 1.0;

/// The openings of a wall as taped, joined to what they touch; sides that an area without siding cuts go with it.
pub(super) fn joined(wall: &Wall, of: &DrawnWall) -> Vec<OpeningShape> {
    let mut out: Vec<OpeningShape> = Vec::new();
    for (d, t) in wall.drawn.openings.iter().zip(&wall.taped.openings) {
        let mut t = t.clone();
        for (k, p) in middles(d).into_iter().enumerate() {
            let to = wall.moved(p);
            let to = if k < 2 { to.x } else { to.y };
            let near = touches(of, d, p, k >= 2) && (to - *side(&mut t, k)).abs() <= STRIP;
            if near && k < 2 {
                // Beside a side that leans no hairline of siding is left.
                let ends = [d.sill, d.head].map(|y| wall.moved(Point::new(p.x, y)).x);
                let out = if k == 0 { f64::min } else { f64::max };
                *side(&mut t, k) = out(ends[0], ends[1]);
            } else if d.cut[k] || near {
                *side(&mut t, k) = to;
            }
        }
        for (other, o) in wall.drawn.openings.iter().zip(&out) {
            let beside = d.sill < other.head && other.sill < d.head;
            if beside && (d.left - other.right).abs() <= LEVEL && (t.left - o.right).abs() <= STRIP
            {
                t.left = o.right;
            }
            let over = d.left < other.right && other.left < d.right;
            if over && (d.sill - other.head).abs() <= LEVEL && (t.sill - o.head).abs() <= STRIP {
                t.sill = o.head;
            }
            if over && (d.head - other.sill).abs() <= LEVEL && (t.head - o.sill).abs() <= STRIP {
                t.head = o.sill;
            }
        }
        for (other, o) in wall.drawn.openings.iter().zip(&mut out) {
            if d.square && other.square && in_one_frame(d, other) {
                one_frame((d, &mut t), (other, o));
            }
        }
        if !d.square {
            (t.right, t.head) = (t.left + d.right - d.left, t.sill + d.head - d.sill);
        }
        out.push(t);
    }
    out
}

/// Whether an opening stands right over another, both as wide, with a bar between them at most, as a window in the
/// frame of the door under it.
fn in_one_frame(d: &OpeningShape, other: &OpeningShape) -> bool {
    let bar = if d.sill > other.sill { d.sill - other.head } else { other.sill - d.head };
    let alike = (d.left - other.left).abs() <= LEVEL && (d.right - other.right).abs() <= LEVEL;
    alike && (-LEVEL..=STRIP).contains(&bar)
}

/// Two openings in one frame have their jambs in line where they are taped so near to it: those of the one that was
/// taped as wide as drawn, or not at all, follow the other's.
fn one_frame(
    (d, t): (&OpeningShape, &mut OpeningShape),
    (other, o): (&OpeningShape, &mut OpeningShape),
) {
    if (t.left - o.left).abs() > STRIP || (t.right - o.right).abs() > STRIP {
        return;
    }
    let as_drawn = |d: &OpeningShape, t: &OpeningShape| same(t.right - t.left, d.right - d.left);
    if as_drawn(other, o) && !as_drawn(d, t) {
        (o.left, o.right) = (t.left, t.right);
    } else {
        (t.left, t.right) = (o.left, o.right);
    }
}

/// The middles of its sides: left, right, sill, head.
fn middles(d: &OpeningShape) -> [Point; 4] {
    let (x, y) = ((d.left + d.right) / 2.0, (d.sill + d.head) / 2.0);
    [(d.left, y), (d.right, y), (x, d.sill), (x, d.head)].map(Point::from)
}

fn side(o: &mut OpeningShape, k: usize) -> &mut f64 {
    match k {
        0 => &mut o.left,
        1 => &mut o.right,
        2 => &mut o.sill,
        _ => &mut o.head,
    }
}

/// Whether a side of the wall runs all along a side of an opening.
fn touches(of: &DrawnWall, d: &OpeningShape, middle: Point, level: bool) -> bool {
    let (from, to) = if level { (d.left, d.right) } else { (d.sill, d.head) };
    let turned = |p: Point| if level { p } else { Point::new(p.y, p.x) };
    let m = turned(middle);
    of.edges.iter().any(|e| {
        let (a, b) = (turned(e.from), turned(e.to));
        let on = (a.y - m.y).abs() <= LEVEL && (b.y - m.y).abs() <= LEVEL;
        on && a.x.min(b.x) <= from + LEVEL && a.x.max(b.x) >= to - LEVEL
    })
}
