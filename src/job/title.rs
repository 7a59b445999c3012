//! What the title block says.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Fields of the title block, by ISO 7200 (from memory).
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct Title {
    /// Name of the project.
    pub project: String,
    /// Client, the legal owner.
    pub client: String,
    /// Site address.
    pub address: String,
    /// Identification number.
    pub number: String,
    /// Date of issue, as it shall be printed.
    pub date: String,
    /// Creator.
    pub drawn_by: String,
    /// Approver.
    pub approved_by: String,
    /// Revision.
    pub revision: String,
}
