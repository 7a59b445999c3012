//! What the independent check found.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::rule::Rule;
use super::violation::Violation;

/// Result of the check.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Verify {
    /// Rule by rule.
    pub rules: Vec<RuleCheck>,
}

/// One rule.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct RuleCheck {
    /// The rule.
    pub rule: Rule,
    /// How many cases were looked at.
    pub checked: usize,
    /// Every case that breaks it.
    pub violations: Vec<Violation>,
}

impl RuleCheck {
    /// Whether no case breaks it.
    pub fn passes(&self) -> bool {
        self.violations.is_empty()
    }
}

impl Verify {
    /// Every violation, rule by rule.
    pub fn violations(&self) -> impl Iterator<Item = &Violation> {
        self.rules.iter().flat_map(|r| &r.violations)
    }

    /// Whether every rule is kept.
    pub fn passes(&self) -> bool {
        self.rules.iter().all(RuleCheck::passes)
    }
}
