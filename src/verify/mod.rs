//! The layout checked by code that shares nothing with what made it: no stage is called, areas are
//! measured by exact level scans rather than by the boolean engine.

mod certificate;
mod coverage;
mod cutting;
mod heights;
mod notches;
mod scan;
mod seams;
mod shapes;
mod sweep;
mod trims;

use crate::model::layout::{Layout, RuleCheck, Verify};

/// Most violations told of one rule; the count goes on in the last line.
const MOST_TOLD: usize = 50;

/// Checks every rule.
pub fn check(layout: &Layout) -> Verify {
    let mut rules = Vec::new();
    rules.extend(coverage::check(layout));
    rules.extend(heights::check(layout));
    rules.extend(seams::check(layout));
    rules.extend(cutting::check(layout));
    rules.extend(shapes::check(layout));
    rules.extend(notches::check(layout));
    rules.extend(trims::check(layout));
    rules.extend(certificate::check(layout));
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
