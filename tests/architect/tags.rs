//! Code and value pairs of a DXF file, with handles and letters as its version has them.

use std::fmt::{Display, Write as _};

use super::habit::{Style, Version};
use super::shape::P;

/// Text of a file while it is written.
pub(super) struct Tags<'a> {
    pub(super) text: String,
    handle: u32,
    pub(super) style: &'a Style,
    pub(super) views: &'a [String],
    /// From drafting units to those of the file.
    scale: f64,
    /// Pattern names are counted, as they mean nothing.
    pub(super) patterns: usize,
}

/// A number with as many places as it needs.
fn number(v: f64) -> String {
    let text = format!("{v:.8}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" || text.is_empty() {
        "0.0".to_owned()
    } else if text.contains('.') {
        text.to_owned()
    } else {
        format!("{text}.0")
    }
}

impl<'a> Tags<'a> {
    pub(super) fn new(style: &'a Style, views: &'a [String], scale: f64) -> Self {
        Tags { text: String::new(), handle: 0x40, style, views, scale, patterns: 0 }
    }
}

impl Tags<'_> {
    pub(super) fn tag(&mut self, code: u16, value: impl Display) {
        let _ = write!(self.text, "{code:>3}\r\n{value}\r\n");
    }

    pub(super) fn real(&mut self, code: u16, value: f64) {
        let value = number(value);
        self.tag(code, value);
    }

    pub(super) fn length(&mut self, code: u16, value: f64) {
        self.real(code, value * self.scale);
    }

    pub(super) fn point(&mut self, code: u16, p: P) {
        self.length(code, p[0]);
        self.length(code + 10, p[1]);
    }

    pub(super) fn point3(&mut self, code: u16, p: P) {
        self.point(code, p);
        self.tag(code + 20, "0.0");
    }

    pub(super) fn is_new(&self) -> bool {
        self.style.version > Version::R12
    }

    pub(super) fn section(&mut self, name: &str) {
        self.tag(0, "SECTION");
        self.tag(2, name);
    }

    pub(super) fn own_handle(&mut self) {
        if self.is_new() {
            let h = format!("{:X}", self.handle);
            self.handle += 1;
            self.tag(5, h);
        }
    }

    /// For newer versions only.
    pub(super) fn class(&mut self, name: &str) {
        if self.is_new() {
            self.tag(100, name);
        }
    }

    pub(super) fn begin(&mut self, kind: &str, owner: &str, layer: &str, color: Option<i16>) {
        self.tag(0, kind);
        self.own_handle();
        if self.is_new() {
            self.tag(330, owner);
        }
        self.class("AcDbEntity");
        let layer = self.encoded(layer);
        self.tag(8, layer);
        if let Some(c) = color {
            self.tag(62, c);
        }
    }

    /// Letters as the version has them: UTF-8 since 2007, else escapes.
    pub(super) fn encoded(&self, text: &str) -> String {
        if self.style.version >= Version::R2007 {
            return text.to_owned();
        }
        let mut out = String::new();
        for c in text.chars() {
            if c.is_ascii() {
                out.push(c);
            } else {
                let _ = write!(out, "\\U+{:04X}", c as u32);
            }
        }
        out
    }
}
