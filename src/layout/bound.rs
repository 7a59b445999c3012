//! The panel count and its proof.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::model::seam::{Certificate, Conflict};

/// The panel count and the proof.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize, JsonSchema)]
pub struct Bound {
    /// Least possible.
    pub panels: usize,
    /// In this layout.
    pub best: usize,
    /// Whether they are the same; where two stock lengths are mixed, whether what is bought is the least.
    pub proven: bool,
    /// How the bound was found.
    pub method: String,
    /// What it leaves out.
    pub excludes: Vec<String>,
    /// In one sentence.
    pub words: String,
    /// The certificate, for the checker.
    pub certificate: Certificate,
    /// What the careful-crew method takes.
    pub crew: usize,
    /// What net area and ten percent would buy.
    pub by_area: usize,
    /// Where two stock lengths are mixed: what either alone, a crew and the rule of thumb would take, in
    /// words.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub beside: Option<String>,
    /// What the other short-run policy would take, when solved.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub other_policy: Option<usize>,
    /// Rules that could not be kept.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub conflicts: Vec<Conflict>,
}
