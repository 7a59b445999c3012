//! Attributes and text as they are written for the resolver.

use usvg::roxmltree::Attribute;

/// Attributes that are never handed on: see `super::kept`.
pub(super) const SET_APART: [&str; 6] = ["marker", "clip", "mask", "filter", "on", "xmlns"];

pub(super) fn written<'a>(a: &Attribute<'a, '_>) -> &'a str {
    if a.name() == "space" { "xml:space" } else { a.name() }
}

/// Text as XML has it. Characters that no XML may hold are blanks.
pub(super) fn escaped(text: &str, out: &mut String) {
    let mut rest = text;
    let special = |b: u8| b < b' ' || matches!(b, b'&' | b'<' | b'>' | b'"');
    while let Some(at) = rest.bytes().position(special) {
        out.push_str(&rest[..at]);
        out.push_str(match rest.as_bytes()[at] {
            b'&' => "&amp;",
            b'<' => "&lt;",
            b'>' => "&gt;",
            b'"' => "&quot;",
            b'\n' => "\n",
            _ => " ",
        });
        rest = &rest[at + 1..];
    }
    out.push_str(rest);
}
