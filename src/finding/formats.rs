//! Of DWG and PDF: why one is not read, and what was seen in it.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Why a DWG is not read.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", tag = "fault")]
pub enum DwgFault {
    /// It is of a version that is not read.
    Version {
        /// As the file states it: `AC1014`.
        version: String,
    },
    /// It asks for a password.
    Locked,
    /// Its parts do not fit together, or some are missing.
    Broken,
}

/// Why a PDF is not read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum PdfFault {
    /// It is locked.
    Locked,
    /// Its parts do not fit together, or some are missing.
    Broken,
}

/// Why no pages of a PDF are taken.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", tag = "why")]
pub enum PdfPagesWhy {
    /// A page is named that there is not.
    Beyond {
        /// Which.
        page: usize,
    },
    /// There are more than are looked through.
    TooMany {
        /// The most.
        most: usize,
    },
    /// A page asks for more than is read.
    TooMuch {
        /// Which.
        page: usize,
    },
    /// No page has lines to measure.
    NothingDrawn,
    /// Several have, and none has a title of an elevation.
    NoTitle,
}

/// What was seen on a page of a PDF.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct PdfPageSeen {
    /// Which, from 1.
    pub page: usize,
    /// Strokes and fills on it.
    pub strokes: usize,
    /// Pictures on it.
    pub pictures: usize,
    /// Texts on it.
    pub texts: usize,
}
