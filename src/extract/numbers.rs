//! Numbers of the walls of a view: by place, from the left. They stay as they are when the job gives a wall
//! outright: that one takes the number of what gives way to it, or comes after all that are drawn.

use super::outline::Outline;
use crate::geom::vocabulary::{Rect, Vec2};

/// What a wall is numbered by.
#[derive(Clone, Debug)]
pub(super) struct Numbered {
    frame: Rect,
    /// Boxes of the drawn walls that give way to a given one; none of a drawn wall.
    given: Option<Vec<Rect>>,
}

impl Numbered {
    /// Of an outline in elevation inches; `origin` is the view's in the whole drawing.
    pub(super) fn of(o: &Outline, origin: Vec2) -> Self {
        let moved = |all: &Vec<Rect>| all.iter().map(|r| *r - origin).collect();
        Numbered { frame: o.frame(), given: o.given.as_ref().map(|g| moved(&g.replaced)) }
    }

    /// The places that it stands for among drawn walls.
    fn drawn(&self) -> &[Rect] {
        self.given.as_deref().unwrap_or(std::slice::from_ref(&self.frame))
    }
}

/// A number for each, from 1.
pub(super) fn numbers(walls: &[Numbered]) -> Vec<usize> {
    let mut places: Vec<(Rect, usize)> = walls
        .iter()
        .enumerate()
        .flat_map(|(i, w)| w.drawn().iter().map(move |r| (*r, i)))
        .collect();
    places.sort_by(|(a, _), (b, _)| a.x0.total_cmp(&b.x0).then(a.y0.total_cmp(&b.y0)));
    let mut next = places.len();
    let number = |(i, w): (usize, &Numbered)| match places.iter().position(|p| p.1 == i) {
        Some(at) if !w.drawn().is_empty() => at + 1,
        _ => {
            next += 1;
            next
        }
    };
    walls.iter().enumerate().map(number).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_given_wall_leaves_the_numbers_of_drawn_ones_as_they_are() {
        let at = |x: f64| Rect::new(x, 0.0, x + 8.0, 9.0);
        let drawn = |x| Numbered { frame: at(x), given: None };
        let given = |x, over: &[f64]| Numbered {
            frame: at(x),
            given: Some(over.iter().map(|x| at(*x)).collect()),
        };
        assert_eq!(numbers(&[drawn(0.0), drawn(10.0), drawn(20.0)]), [1, 2, 3]);
        // Over the second, over the first two, and beside all.
        assert_eq!(numbers(&[drawn(0.0), given(11.0, &[10.0]), drawn(20.0)]), [1, 2, 3]);
        assert_eq!(numbers(&[given(1.0, &[0.0, 10.0]), drawn(20.0)]), [1, 3]);
        assert_eq!(numbers(&[given(-10.0, &[]), drawn(0.0), drawn(10.0)]), [3, 1, 2]);
        assert_eq!(numbers(&[given(0.0, &[]), given(10.0, &[])]), [1, 2]);
    }
}
