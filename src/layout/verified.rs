//! What the check found.

use schemars::JsonSchema;
use serde::Serialize;

/// Result of the check.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct Verify {
    /// Rule by rule.
    pub rules: Vec<RuleCheck>,
}

/// One rule.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct RuleCheck {
    /// In words.
    pub rule: String,
    /// How many cases were looked at.
    pub checked: usize,
    /// Each case that breaks it, in words with its place.
    pub violations: Vec<String>,
}
