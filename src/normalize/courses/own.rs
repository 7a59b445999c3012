//! Which drawn lines are courses: of a ring that is drawn in one go, one side may be and another not.

use std::collections::BTreeSet;

use super::pieces::Piece;

/// Levels are told apart by this much, inches.
const STEP: f64 = 1.0 / 64.0;

/// Courses, each by its stroke and its level.
#[derive(Clone, Debug, Default)]
pub(super) struct Own {
    courses: BTreeSet<(usize, i64)>,
    /// Strokes that are courses whole.
    whole: BTreeSet<usize>,
}

impl Own {
    /// Courses, and second lines of boards.
    pub(super) fn of<'a>(
        courses: impl Iterator<Item = &'a Piece>,
        seconds: &BTreeSet<usize>,
    ) -> Self {
        let mut out = Own { courses: BTreeSet::new(), whole: seconds.clone() };
        courses.for_each(|p| out.add(p, &p.strokes));
        out
    }

    /// Adds strokes at the level of a piece.
    pub(super) fn add(&mut self, piece: &Piece, strokes: &[usize]) {
        self.courses.extend(strokes.iter().map(|s| (*s, step(piece.y))));
    }

    /// Whether a stroke is a course at a level.
    pub(super) fn holds(&self, stroke: usize, y: f64) -> bool {
        let at = step(y);
        self.whole.contains(&stroke)
            || (at - 2..=at + 2).any(|k| self.courses.contains(&(stroke, k)))
    }
}

fn step(y: f64) -> i64 {
    (y / STEP).round() as i64
}
