//! Lengths in a job file.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::{Deserialize, Deserializer};

use crate::units::{Unit, parse_length};

/// What [`parse_length`] reads, as a regular expression for the schema: metric; feet, with inches
/// or without; feet and inches with a dash; inches, with a fraction or without.
const PATTERN: &str = concat!(
    r"^\s*-?\s*(",
    r"(\d+\.?\d*|\.\d+)\s*([mM][mM]|[cC][mM]|[mM])",
    r"|(\d+\.?\d*|\.\d+)\s*('|′|’|[fF][tT]|[fF][eE][eE][tT])\s*-?\s*",
    r"(((\d+\.?\d*|\.\d+)([ -]\s*))?(\d+\.?\d*|\.\d+)(\s*/\s*\d+\.?\d*)?\s*",
    "(\"|″|”|''|[iI][nN]([cC][hH]([eE][sS])?)?)?)?",
    r"|((\d+\.?\d*|\.\d+)\s*-\s*)?((\d+\.?\d*|\.\d+)[ -]\s*)?",
    r"(\d+\.?\d*|\.\d+)(\s*/\s*\d+\.?\d*)?\s*",
    "(\"|″|”|''|[iI][nN]([cC][hH]([eE][sS])?)?)?",
    r")\s*$",
);

/// A length in a job file: inches, or a text with its unit.
#[derive(Deserialize, JsonSchema)]
#[serde(untagged)]
#[allow(dead_code, reason = "the schema names both forms; the fields are read by serde")]
pub(super) enum Length {
    /// Inches.
    Number(f64),
    /// `12'-6 1/2"`, `12-6`, `3810mm`.
    #[schemars(extend("pattern" = PATTERN))]
    Text(String),
}

pub(super) fn length<'de, D: Deserializer<'de>>(d: D) -> Result<f64, D::Error> {
    let value = match Length::deserialize(d)? {
        Length::Number(n) => Some(n),
        Length::Text(t) => parse_length(&t, Unit::Inch),
    };
    value.filter(|v| v.is_finite()).ok_or_else(|| {
        serde::de::Error::custom(
            "not a length: write inches (150), or a text such as \"12'-6\\\"\" or \"3810mm\"",
        )
    })
}

#[derive(Deserialize)]
#[serde(transparent)]
struct One(#[serde(deserialize_with = "length")] f64);

/// Lengths in a list.
pub(super) fn length_list<'de, D: Deserializer<'de>>(d: D) -> Result<Vec<f64>, D::Error> {
    Ok(Vec::<One>::deserialize(d)?.into_iter().map(|l| l.0).collect())
}

/// Lengths by name.
pub(super) fn lengths<'de, D: Deserializer<'de>>(d: D) -> Result<BTreeMap<String, f64>, D::Error> {
    Ok(BTreeMap::<String, One>::deserialize(d)?.into_iter().map(|(k, v)| (k, v.0)).collect())
}

/// One that is left out stands as null in the echo of a job.
pub(super) fn maybe_length<'de, D: Deserializer<'de>>(d: D) -> Result<Option<f64>, D::Error> {
    Ok(Option::<One>::deserialize(d)?.map(|l| l.0))
}
