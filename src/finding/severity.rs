//! How much a finding matters, and who must act on it.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// How much a finding matters.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum Severity {
    /// Something assumed or mended, worth knowing.
    Info,
    /// The layout stands, but someone should look.
    Warning,
    /// The drawing or job cannot be used as it is.
    Error,
}

/// Who must act on a finding.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum Audience {
    /// Who drew the house: the answer stands in no file but theirs.
    Architect,
    /// Who prepares the job, runs the program and orders.
    Office,
    /// Who cuts and hangs the siding.
    Crew,
}
