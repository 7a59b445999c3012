//! Which runs' joints must keep apart: those of one wall in near courses.

use super::ask::Ask;
use crate::model::seam::SeamRules;

/// Runs near each run.
pub(super) struct Near(Vec<Vec<usize>>);

impl Near {
    pub(super) fn of(asks: &[Ask], rules: &SeamRules) -> Self {
        let clear = i64::from(rules.clear_courses);
        let near = |a: &Ask, b: &Ask| {
            let apart = i64::from(a.course) - i64::from(b.course);
            a.wall == b.wall && apart != 0 && apart.abs() <= clear
        };
        let of = |a: &Ask| (0..asks.len()).filter(|j| near(a, &asks[*j])).collect();
        Near(asks.iter().map(of).collect())
    }

    pub(super) fn of_run(&self, run: usize) -> &[usize] {
        &self.0[run]
    }
}
