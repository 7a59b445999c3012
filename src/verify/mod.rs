//! The layout checked by code that shares nothing with what made it: no stage is called, areas are
//! measured by exact level scans rather than by the boolean engine.

mod along;
mod certificate;
mod corners;
mod coverage;
mod cuts;
mod cutting;
mod decor;
mod field;
mod halves;
mod heights;
mod joints;
mod mixed;
mod notches;
mod posts;
mod rakes;
mod runs;
mod scan;
mod seams;
mod shapes;
mod sides;
mod sweep;
mod trim_sides;
mod trim_stock;
mod trims;
mod zones;

use crate::layout::Layout;
use crate::layout::by_wall::ByWall;
use crate::layout::verified::{RuleCheck, Verify};

/// Most violations told of one rule; the count goes on in the last line.
const MOST_TOLD: usize = 50;

/// How far a place or length may lie off where a rule has it, inches: what is laid is snapped to
/// 1/1024 piece by piece and pieces are reckoned to 1/16. This room's own, on purpose: no stage's
/// tolerance decides whether the stage kept its rule. Of our own choosing: no source.
const NEAR: f64 = 0.05;

/// Checks every rule.
pub fn check(layout: &Layout) -> Verify {
    let at = ByWall::of(layout);
    let mut rules = Vec::new();
    rules.extend(coverage::check(layout));
    rules.extend(field::check(layout, &at));
    rules.extend(heights::check(layout));
    rules.extend(sides::check(layout));
    rules.extend(runs::check(layout));
    rules.extend(seams::check(layout));
    rules.extend(joints::check(layout));
    rules.extend(cutting::check(layout));
    rules.extend(halves::check(layout));
    rules.extend(shapes::check(layout));
    rules.extend(notches::check(layout));
    rules.extend(cuts::check(layout));
    rules.extend(trims::check(layout, &at));
    rules.extend(trim_sides::check(layout));
    rules.extend(decor::check(layout, &at));
    rules.push(rakes::check(layout, &at));
    rules.push(posts::check(layout, &at));
    rules.extend(corners::check(layout, &at));
    rules.extend(trim_stock::check(layout));
    rules.extend(certificate::check(layout));
    rules.extend(zones::check(layout));
    for rule in &mut rules {
        let n = rule.violations.len();
        if n > MOST_TOLD {
            rule.violations.truncate(MOST_TOLD);
            rule.violations.push(format!("and {} more", n - MOST_TOLD));
        }
    }
    Verify { rules }
}

/// Gathers the cases of one rule.
#[derive(Debug, Default)]
struct Rule {
    checked: usize,
    violations: Vec<String>,
}

impl Rule {
    /// One case: `broken` is asked for words only where it does not hold.
    fn case(&mut self, holds: bool, broken: impl FnOnce() -> String) {
        self.checked += 1;
        if !holds {
            self.violations.push(broken());
        }
    }

    fn done(self, rule: &str) -> RuleCheck {
        RuleCheck { rule: rule.to_owned(), checked: self.checked, violations: self.violations }
    }
}

/// Lengths that differ by less are the same: 1/256 in.
const SAME: f64 = 1.0 / 256.0;

fn same(a: f64, b: f64) -> bool {
    (a - b).abs() <= SAME
}

/// Butt line of a course, counted from the datum: as high as the next, unless boards are evened.
fn butt(layout: &Layout, index: i32) -> f64 {
    let (exposure, evened) = (layout.job.product.exposure, &layout.story_pole.evened);
    let steps = |n: i32| f64::from(n) * exposure;
    let Some(top) = evened.last().filter(|_| index >= 0) else {
        return layout.datum + steps(index);
    };
    let over = index - (evened.len() as i32 - 1);
    if over > 0 { top + steps(over) } else { evened[index as usize] }
}

/// The course that holds a height, found by looking at one after another from a guess.
fn course_at(layout: &Layout, y: f64) -> i32 {
    let least = layout.job.product.limits().0.max(0.5);
    let mut i = ((y - layout.datum) / layout.job.product.exposure).floor() as i32;
    // Evened courses differ by less than a course in a course.
    let far =
        2 + (layout.story_pole.evened.len() as f64 * layout.job.product.exposure / least) as i32;
    for _ in 0..far {
        if butt(layout, i) > y {
            i -= 1;
        } else if butt(layout, i + 1) <= y {
            i += 1;
        } else {
            break;
        }
    }
    i
}

/// Whether a height is a course line.
fn on_course_line(layout: &Layout, y: f64) -> bool {
    let below = course_at(layout, y);
    let near = |i: i32| (y - butt(layout, i)).abs();
    near(below).min(near(below + 1)) <= crate::geom::tol::SAME + 1e-9
}
