//! What the independent check found.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::rule::Rule;
use super::violation::Violation;

/// Result of the check.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(from = "Written", into = "Written")]
pub struct Verify {
    /// Rule by rule.
    pub rules: Vec<RuleCheck>,
}

/// The check as `layout.json` has it: verdict and places follow from the rules.
#[derive(Serialize, Deserialize, JsonSchema)]
#[schemars(rename = "Verify")]
struct Written {
    /// Whether every rule is kept.
    #[serde(default)]
    verdict: Verdict,
    /// How many cases break a rule.
    #[serde(default)]
    places: usize,
    /// Rule by rule.
    rules: Vec<RuleCheck>,
}

/// What the check says of a layout.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum Verdict {
    /// Every rule is kept, but for what no layout keeps.
    #[default]
    #[serde(rename = "rules-kept")]
    RulesKept,
    /// A rule is broken. Written as it stands on every sheet, so that whoever looks for it finds it.
    #[serde(rename = "CHECK FAILED")]
    CheckFailed,
}

impl From<Verify> for Written {
    fn from(v: Verify) -> Self {
        Written { verdict: v.verdict(), places: v.places(), rules: v.rules }
    }
}

impl From<Written> for Verify {
    fn from(w: Written) -> Self {
        Verify { rules: w.rules }
    }
}

/// One rule.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct RuleCheck {
    /// The rule.
    pub rule: Rule,
    /// How many cases were looked at.
    pub checked: usize,
    /// Every case that breaks it, but those of which the check proves that no layout avoids them.
    pub violations: Vec<Violation>,
    /// Cases that break it where the check proves that no layout of these courses keeps it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub unavoidable: Vec<Violation>,
}

impl RuleCheck {
    /// Whether no case breaks it, but for what no layout keeps.
    pub fn passes(&self) -> bool {
        self.violations.is_empty()
    }
}

impl Verify {
    /// Every violation, rule by rule.
    pub fn violations(&self) -> impl Iterator<Item = &Violation> {
        self.rules.iter().flat_map(|r| &r.violations)
    }

    /// The same with their numbers, from 1, as sheets, overlay and cover name them.
    pub fn numbered(&self) -> impl Iterator<Item = (usize, &Violation)> {
        (1..).zip(self.violations())
    }

    /// Cases that break a rule where no layout keeps it.
    pub fn unavoidable(&self) -> impl Iterator<Item = &Violation> {
        self.rules.iter().flat_map(|r| &r.unavoidable)
    }

    /// How many cases break a rule.
    pub fn places(&self) -> usize {
        self.rules.iter().map(|r| r.violations.len()).sum()
    }

    /// Whether every rule is kept, but for what no layout keeps.
    pub fn passes(&self) -> bool {
        self.rules.iter().all(RuleCheck::passes)
    }

    /// The same as it is written.
    pub fn verdict(&self) -> Verdict {
        if self.passes() { Verdict::RulesKept } else { Verdict::CheckFailed }
    }
}
