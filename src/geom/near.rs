//! Segments by where they lie, so that what lies near a place is found without looking at all; boxes
//! that stand together.

use std::collections::{BTreeMap, BTreeSet};

use super::vocabulary::{Point, Rect};

/// Side of a cell, inches.
const CELL: f64 = 24.0;
/// A segment or a question that lies over more cells than this is held, or looked for, among all.
const MOST_CELLS: i64 = 64;

/// Segments, each with its place in the list they were given in.
#[derive(Clone, Debug, Default)]
pub struct Near {
    cells: BTreeMap<(i64, i64), Vec<usize>>,
    long: Vec<usize>,
    all: usize,
}

impl Near {
    /// Of segments given by their ends, inches.
    pub fn of(segments: impl Iterator<Item = (Point, Point)>) -> Self {
        let mut out = Near::default();
        for (i, (a, b)) in segments.enumerate() {
            match cells(Rect::from_points(a, b)) {
                Some(list) => {
                    list.for_each(|cell| out.cells.entry(cell).or_default().push(i));
                }
                None => out.long.push(i),
            }
            out.all = i + 1;
        }
        out
    }

    /// Places in the list, rising, of every segment whose box comes within `reach` of `over`, and of
    /// some that do not.
    pub fn within(&self, over: Rect, reach: f64) -> Vec<usize> {
        match cells(over.inflate(reach, reach)) {
            Some(list) => {
                let found = list.filter_map(|cell| self.cells.get(&cell)).flatten().copied();
                found
                    .chain(self.long.iter().copied())
                    .collect::<BTreeSet<_>>()
                    .into_iter()
                    .collect()
            }
            None => (0..self.all).collect(),
        }
    }
}

/// The cells a box lies over; `None` where they are many.
fn cells(b: Rect) -> Option<impl Iterator<Item = (i64, i64)>> {
    let at = |v: f64| (v / CELL).floor() as i64;
    let (x0, y0, x1, y1) = (at(b.x0), at(b.y0), at(b.x1), at(b.y1));
    let few = (x1 - x0 + 1).saturating_mul(y1 - y0 + 1) <= MOST_CELLS;
    few.then(|| (x0..=x1).flat_map(move |x| (y0..=y1).map(move |y| (x, y))))
}

/// Boxes joined until none comes near another, left to right: a box grows with each it takes in.
pub fn clusters(mut boxes: Vec<Rect>, apart: f64) -> Vec<Rect> {
    let near = |a: &Rect, b: &Rect| {
        b.x0 < a.x1 + apart && a.x0 < b.x1 + apart && b.y0 < a.y1 + apart && a.y0 < b.y1 + apart
    };
    loop {
        let before = boxes.len();
        boxes.sort_by(|a, b| a.x0.total_cmp(&b.x0).then(a.y0.total_cmp(&b.y0)));
        // Left to right, beside those that a later one may still come near.
        let (mut done, mut open): (Vec<Rect>, Vec<Rect>) = (Vec::new(), Vec::new());
        for mut b in boxes {
            let (past, still) = open.into_iter().partition(|o: &Rect| o.x1 + apart <= b.x0);
            done.extend::<Vec<Rect>>(past);
            open = still;
            while let Some(i) = open.iter().position(|o| near(o, &b)) {
                b = b.union(open.swap_remove(i));
            }
            open.push(b);
        }
        done.append(&mut open);
        boxes = done;
        if boxes.len() == before {
            boxes.sort_by(|a, b| a.x0.total_cmp(&b.x0).then(a.y0.total_cmp(&b.y0)));
            return boxes;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_near_is_missed() {
        let mut s = 7u64;
        let mut next = |n: u64| {
            s = s.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
            ((s >> 33) % n) as f64
        };
        let list: Vec<(Point, Point)> = (0..300)
            .map(|i| {
                let a = Point::new(next(4000) - 2000.0, next(400));
                let long = if i % 20 == 0 { 3000.0 } else { next(60) };
                (a, Point::new(a.x + long, a.y + next(30)))
            })
            .collect();
        let near = Near::of(list.iter().copied());
        for _ in 0..300 {
            let p = Point::new(next(4000) - 2000.0, next(400));
            let over = Rect::from_points(p, Point::new(p.x + next(200), p.y + next(50)));
            let found = near.within(over, 0.5);
            let grown = over.inflate(0.5, 0.5);
            for (i, (a, b)) in list.iter().enumerate() {
                let r = Rect::from_points(*a, *b);
                let meets =
                    r.x0 <= grown.x1 && grown.x0 <= r.x1 && r.y0 <= grown.y1 && grown.y0 <= r.y1;
                assert!(!meets || found.contains(&i));
            }
            assert!(found.windows(2).all(|w| w[0] < w[1]));
        }
    }
}
