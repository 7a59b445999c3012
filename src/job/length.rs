//! Lengths in a job file.

use std::collections::BTreeMap;
use std::fmt;

use schemars::JsonSchema;
use serde::de::{Error, MapAccess, SeqAccess, Visitor};
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
#[derive(JsonSchema)]
#[schemars(untagged)]
#[allow(dead_code, reason = "the schema names both forms")]
pub(super) enum Length {
    /// Inches.
    Number(f64),
    /// `12'-6 1/2"`, `12-6`, `3810mm`.
    #[schemars(extend("pattern" = PATTERN))]
    Text(String),
}

/// What is said of a value that is no length, whatever it is in its place.
const NO_LENGTH: &str =
    "not a length: write inches (150), or a text such as \"12'-6\\\"\" or \"3810mm\"";

/// Reads a length, so that a list, a table or a truth value in its place is told as what it is not.
struct Reader;

impl<'de> Visitor<'de> for Reader {
    type Value = f64;

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str("inches (150), or a text such as \"12'-6\\\"\" or \"3810mm\"")
    }

    fn visit_f64<E: Error>(self, v: f64) -> Result<f64, E> {
        if v.is_finite() { Ok(v) } else { Err(E::custom(NO_LENGTH)) }
    }

    fn visit_i64<E: Error>(self, v: i64) -> Result<f64, E> {
        Ok(v as f64)
    }

    fn visit_u64<E: Error>(self, v: u64) -> Result<f64, E> {
        Ok(v as f64)
    }

    fn visit_str<E: Error>(self, v: &str) -> Result<f64, E> {
        let read = parse_length(v, Unit::Inch).filter(|v| v.is_finite());
        read.ok_or_else(|| E::custom(NO_LENGTH))
    }

    fn visit_bool<E: Error>(self, _: bool) -> Result<f64, E> {
        Err(E::custom(NO_LENGTH))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, _: A) -> Result<f64, A::Error> {
        Err(A::Error::custom(NO_LENGTH))
    }

    fn visit_map<A: MapAccess<'de>>(self, _: A) -> Result<f64, A::Error> {
        Err(A::Error::custom(NO_LENGTH))
    }
}

pub(super) fn length<'de, D: Deserializer<'de>>(d: D) -> Result<f64, D::Error> {
    d.deserialize_any(Reader)
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
