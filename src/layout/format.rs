//! The name of the layout's file format.

use std::borrow::Cow;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::de::Error;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// What `layout.json` says it is.
pub const FORMAT: &str = "lapwright-layout/2";

/// The format a layout is in: always [`FORMAT`], in its file and nowhere else.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct LayoutFormat;

impl Serialize for LayoutFormat {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(FORMAT)
    }
}

impl<'de> Deserialize<'de> for LayoutFormat {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let name = Cow::<str>::deserialize(from)?;
        if name == FORMAT {
            Ok(LayoutFormat)
        } else {
            Err(D::Error::custom(format_args!("the format is {name:?}, not {FORMAT:?}")))
        }
    }
}

impl JsonSchema for LayoutFormat {
    fn schema_name() -> Cow<'static, str> {
        "LayoutFormat".into()
    }

    fn inline_schema() -> bool {
        true
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "string", "const": FORMAT })
    }
}
