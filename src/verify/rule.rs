//! Gathers the cases of one rule.

use crate::layout::breach::Breach;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::{Allowed, Figure, Place, Subject, Violation};

/// The cases of one rule: how many were looked at, and those that break it.
#[derive(Debug)]
pub(super) struct Cases {
    rule: Rule,
    pub(super) checked: usize,
    violations: Vec<Violation>,
}

impl Cases {
    /// None yet.
    pub(super) fn new(rule: Rule) -> Self {
        Cases { rule, checked: 0, violations: Vec::new() }
    }

    /// One case: `broken` is asked only where it does not hold.
    pub(super) fn case(&mut self, holds: bool, broken: impl FnOnce() -> Found) {
        self.checked += 1;
        if !holds {
            self.breaks(broken());
        }
    }

    /// A violation of a case counted before.
    pub(super) fn breaks(&mut self, found: Found) {
        let Found { subject, other, at, measured, allowed, breach } = found;
        let rule = self.rule;
        self.violations.push(Violation { rule, subject, other, at, measured, allowed, breach });
    }

    /// The result.
    pub(super) fn done(self) -> RuleCheck {
        RuleCheck {
            rule: self.rule,
            checked: self.checked,
            violations: self.violations,
            unavoidable: Vec::new(),
        }
    }
}

/// A violation before its rule is known.
#[derive(Debug)]
pub(super) struct Found {
    subject: Subject,
    other: Option<Subject>,
    at: Option<Place>,
    measured: Option<Figure>,
    allowed: Option<Allowed>,
    breach: Breach,
}

/// What breaks a rule, and in which way.
pub(super) fn found(subject: Subject, breach: impl Into<Breach>) -> Found {
    let breach = breach.into();
    Found { subject, other: None, at: None, measured: None, allowed: None, breach }
}

/// What is known of a figure: nothing where there was nothing to measure.
fn known(figure: Figure) -> Option<Figure> {
    let finite = match figure {
        Figure::Inches(v)
        | Figure::SquareInches(v)
        | Figure::SquareFeet(v)
        | Figure::Degrees(v)
        | Figure::Slope(v)
        | Figure::Quantity(v) => v.is_finite(),
        Figure::Count(_) => true,
    };
    finite.then_some(figure)
}

impl Found {
    /// The other of two things that do not go together.
    pub(super) fn with(self, other: Subject) -> Self {
        Found { other: Some(other), ..self }
    }

    /// Where.
    pub(super) fn at(self, at: Option<Place>) -> Self {
        Found { at, ..self }
    }

    /// What the layout has or says.
    pub(super) fn measured(self, figure: Figure) -> Self {
        Found { measured: known(figure), ..self }
    }

    /// What it must be.
    pub(super) fn exactly(self, figure: Figure) -> Self {
        Found { allowed: known(figure).map(|figure| Allowed::Exactly { figure }), ..self }
    }

    /// What it must be at least.
    pub(super) fn at_least(self, figure: Figure) -> Self {
        Found { allowed: known(figure).map(|figure| Allowed::AtLeast { figure }), ..self }
    }

    /// What it may be at most.
    pub(super) fn at_most(self, figure: Figure) -> Self {
        Found { allowed: known(figure).map(|figure| Allowed::AtMost { figure }), ..self }
    }

    /// From what to what it may be.
    pub(super) fn between(self, least: Figure, most: Figure) -> Self {
        let both = known(least).zip(known(most));
        Found { allowed: both.map(|(least, most)| Allowed::Between { least, most }), ..self }
    }
}

/// A count of things as a figure.
pub(super) fn count(n: usize) -> Figure {
    Figure::Count(i64::try_from(n).unwrap_or(i64::MAX))
}

#[cfg(test)]
mod tests {
    use super::{Cases, Figure, found};
    use crate::layout::breach::count::CountBreach;
    use crate::layout::rule::Rule;
    use crate::layout::violation::Subject;

    #[test]
    fn two_hundred_faults_are_two_hundred() {
        let mut cases = Cases::new(Rule::PieceCounts);
        for n in 0..300 {
            cases.case(n % 3 == 0, || found(Subject::House, CountBreach::Panels));
        }
        let done = cases.done();
        assert_eq!((done.checked, done.violations.len()), (300, 200));
        assert!(done.violations.iter().all(|v| v.rule == Rule::PieceCounts));
    }

    #[test]
    fn what_could_not_be_measured_is_no_figure() {
        let v = found(Subject::House, CountBreach::Panels).measured(Figure::Inches(f64::INFINITY));
        assert!(v.measured.is_none());
        let v = v.between(Figure::Inches(f64::NAN), Figure::Inches(1.0));
        assert!(v.allowed.is_none());
    }
}
