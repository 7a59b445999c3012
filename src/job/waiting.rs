//! How many offcuts may lie about.

use std::fmt;

use schemars::JsonSchema;
use serde::de::{Error, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// Most offcuts that may wait at the end of a wall, or any number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WaitingLimit(Option<u32>);

impl WaitingLimit {
    /// Any number.
    pub const ANY: WaitingLimit = WaitingLimit(None);

    /// At most so many.
    pub const fn at_most(n: u32) -> Self {
        WaitingLimit(Some(n))
    }

    /// The most; none where any number may.
    pub fn most(self) -> Option<usize> {
        self.0.map(|n| n as usize)
    }
}

/// The word for any number.
const ANY: &str = "any";

/// Both forms, for the schema.
#[derive(JsonSchema)]
#[schemars(untagged)]
#[allow(dead_code, reason = "the schema names both forms")]
enum Form {
    /// At most so many.
    Number(u32),
    /// Any number: `any`.
    Any(AnyWord),
}

#[derive(JsonSchema)]
#[schemars(rename_all = "lowercase")]
#[allow(dead_code, reason = "the schema names it")]
enum AnyWord {
    Any,
}

impl JsonSchema for WaitingLimit {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "WaitingLimit".into()
    }

    fn inline_schema() -> bool {
        true
    }

    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        Form::json_schema(generator)
    }
}

impl Serialize for WaitingLimit {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self.0 {
            Some(n) => serializer.serialize_u32(n),
            None => serializer.serialize_str(ANY),
        }
    }
}

impl<'de> Deserialize<'de> for WaitingLimit {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(Reader)
    }
}

/// Reads either form.
struct Reader;

impl Visitor<'_> for Reader {
    type Value = WaitingLimit;

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str("a whole number of offcuts (8), or \"any\"")
    }

    fn visit_u64<E: Error>(self, n: u64) -> Result<WaitingLimit, E> {
        u32::try_from(n).map(WaitingLimit::at_most).map_err(|_| E::custom("too many to count"))
    }

    fn visit_i64<E: Error>(self, n: i64) -> Result<WaitingLimit, E> {
        let wrong = || E::custom("no number of offcuts: write 0 or more, or \"any\"");
        u64::try_from(n).map_err(|_| wrong()).and_then(|n| self.visit_u64(n))
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<WaitingLimit, E> {
        let wrong = || E::custom("no number of offcuts: write a whole number, or \"any\"");
        text.eq_ignore_ascii_case(ANY).then_some(WaitingLimit::ANY).ok_or_else(wrong)
    }
}
