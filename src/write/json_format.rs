//! How JSON is laid out in its files: indented, and without negative zeros.

use std::io::{Result, Write};

use serde_json::ser::{Formatter, PrettyFormatter};

/// Two blanks of indent. A zero has no sign: whether a reckoned zero is negative depends on how the program was
/// compiled, and the same input shall give the same bytes.
#[derive(Default)]
pub(super) struct PlainFormatter(PrettyFormatter<'static>);

impl Formatter for PlainFormatter {
    fn write_f64<W: ?Sized + Write>(&mut self, writer: &mut W, value: f64) -> Result<()> {
        self.0.write_f64(writer, value + 0.0)
    }

    fn begin_array<W: ?Sized + Write>(&mut self, writer: &mut W) -> Result<()> {
        self.0.begin_array(writer)
    }

    fn end_array<W: ?Sized + Write>(&mut self, writer: &mut W) -> Result<()> {
        self.0.end_array(writer)
    }

    fn begin_array_value<W: ?Sized + Write>(&mut self, writer: &mut W, first: bool) -> Result<()> {
        self.0.begin_array_value(writer, first)
    }

    fn end_array_value<W: ?Sized + Write>(&mut self, writer: &mut W) -> Result<()> {
        self.0.end_array_value(writer)
    }

    fn begin_object<W: ?Sized + Write>(&mut self, writer: &mut W) -> Result<()> {
        self.0.begin_object(writer)
    }

    fn end_object<W: ?Sized + Write>(&mut self, writer: &mut W) -> Result<()> {
        self.0.end_object(writer)
    }

    fn begin_object_key<W: ?Sized + Write>(&mut self, writer: &mut W, first: bool) -> Result<()> {
        self.0.begin_object_key(writer, first)
    }

    fn begin_object_value<W: ?Sized + Write>(&mut self, writer: &mut W) -> Result<()> {
        self.0.begin_object_value(writer)
    }

    fn end_object_value<W: ?Sized + Write>(&mut self, writer: &mut W) -> Result<()> {
        self.0.end_object_value(writer)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_zero_has_no_sign_and_the_rest_is_as_usual() {
        let value = serde_json::json!({"a": [-0.0, 0.0, -1.5, []], "b": {"c": null, "d": {}}});
        let mut out = Vec::new();
        let mut writer =
            serde_json::Serializer::with_formatter(&mut out, PlainFormatter::default());
        serde::Serialize::serialize(&value, &mut writer).unwrap();
        let usual = serde_json::to_string_pretty(&value).unwrap();
        assert_eq!(String::from_utf8(out).unwrap(), usual.replace("-0.0", "0.0"));
    }
}
