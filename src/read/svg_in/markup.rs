//! The source's markup looked through before the XML parser has it: attributes are compared each with
//! each there, and entities written out, whatever their number.

use std::collections::{BTreeMap, BTreeSet};

use memchr::{memchr, memchr2, memmem};

use super::excess::{
    ALL_ATTRIBUTES, ATTRIBUTES, DECLARING, ENTITIES, ENTITY_LETTERS, NAMESPACES, REFERENCES,
    refused,
};
use super::lines::Lines;
use crate::finding::Refusal;
use crate::finding::drawing::SvgExcess;

/// What was counted so far.
#[derive(Default)]
struct Count<'a> {
    attributes: usize,
    /// Declarations of namespaces as they are written, each once.
    namespaces: BTreeSet<&'a [u8]>,
    declaring: usize,
    references: usize,
    letters: usize,
    /// Letters that an entity stands for.
    entities: BTreeMap<&'a [u8], usize>,
}

/// Refuses markup that would keep the parser busy beyond all measure.
pub(super) fn within(text: &str, lines: &Lines) -> Result<(), Refusal> {
    let bytes = text.as_bytes();
    let mut count = Count::default();
    let mut at = 0;
    while let Some(found) = memchr2(b'<', b'&', &bytes[at..]) {
        let here = at + found;
        let fault = |of, most| refused(of, most, Some(lines.at(here)));
        let rest = &bytes[here..];
        let length = if rest[0] == b'&' {
            count.reference(rest);
            1
        } else if let Some(length) = passage(rest) {
            length
        } else if rest.starts_with(b"<!") {
            let length = declared(rest);
            count.declare(&rest[..length]).map_err(|(of, most)| fault(of, most))?;
            length
        } else {
            count.tag(rest).map_err(|(of, most)| fault(of, most))?
        };
        count.in_all().map_err(|(of, most)| fault(of, most))?;
        at = here + length;
    }
    Ok(())
}

/// Length of a comment, a passage of plain characters, an instruction or an end tag; none for others.
fn passage(rest: &[u8]) -> Option<usize> {
    let ends: [(&[u8], &[u8]); 4] =
        [(b"<!--", b"-->"), (b"<![CDATA[", b"]]>"), (b"<?", b"?>"), (b"</", b">")];
    let (begin, end) = ends.into_iter().find(|(begin, _)| rest.starts_with(begin))?;
    let found = memmem::find(&rest[begin.len()..], end);
    Some(found.map_or(rest.len(), |i| begin.len() + i + end.len()))
}

/// Length of a document type with what it declares.
fn declared(rest: &[u8]) -> usize {
    let (mut at, mut inside) = (1, false);
    while let Some(b) = rest.get(at) {
        match b {
            b'"' | b'\'' => {
                let Some(end) = memchr(*b, &rest[at + 1..]) else { return rest.len() };
                at += end + 1;
            }
            b'[' => inside = true,
            b']' => inside = false,
            b'>' if !inside => return at + 1,
            _ => {}
        }
        at += 1;
    }
    rest.len()
}

type Excess = (SvgExcess, usize);

impl<'a> Count<'a> {
    /// A start tag; its length.
    fn tag(&mut self, rest: &'a [u8]) -> Result<usize, Excess> {
        let (mut at, mut attributes, mut declares) = (1, 0, false);
        let mut name = 1;
        while let Some(b) = rest.get(at) {
            match b {
                b'>' => break,
                b'=' => {
                    attributes += 1;
                    if attributes > ATTRIBUTES {
                        return Err((SvgExcess::Attributes, ATTRIBUTES));
                    }
                }
                b'"' | b'\'' => {
                    let value = &rest[at + 1..];
                    let end = memchr(*b, value).unwrap_or(value.len());
                    self.value(&value[..end]);
                    if rest[name..].starts_with(b"xmlns") {
                        declares = true;
                        self.namespaces.insert(&rest[name..at + 1 + end]);
                    }
                    at += end + 1;
                }
                b if b.is_ascii_whitespace() => name = at + 1,
                _ => {}
            }
            at += 1;
        }
        self.attributes += attributes;
        self.declaring += usize::from(declares);
        Ok((at + 1).min(rest.len()))
    }

    fn value(&mut self, value: &[u8]) {
        let mut at = 0;
        while let Some(found) = memchr(b'&', &value[at..]) {
            self.reference(&value[at + found..]);
            at += found + 1;
        }
    }

    /// A reference, to an entity or to a letter by its number.
    fn reference(&mut self, rest: &[u8]) {
        const LONGEST: usize = 256;
        let name = &rest[1..rest.len().min(LONGEST)];
        let Some(end) = memchr(b';', name) else { return };
        if let Some(letters) = self.entities.get(&name[..end]) {
            self.references += 1;
            self.letters = self.letters.saturating_add(*letters);
        }
    }

    /// What a document type declares: each entity with the letters that it stands for. One may refer to
    /// those before it; the parser itself refuses more levels than a few.
    fn declare(&mut self, text: &'a [u8]) -> Result<(), Excess> {
        const KEY: &[u8] = b"<!ENTITY";
        let mut at = 0;
        while let Some(found) = memmem::find(&text[at..], KEY) {
            let from = at + found + KEY.len();
            let Some(quote) = memchr2(b'"', b'\'', &text[from..]).map(|i| from + i) else { break };
            let value = &text[quote + 1..];
            let value = &value[..memchr(text[quote], value).unwrap_or(value.len())];
            let name = text[from..quote].split(u8::is_ascii_whitespace).find(|w| !w.is_empty());
            if value.iter().filter(|b| **b == b'=').count() > ATTRIBUTES
                && longest_tag(value) > ATTRIBUTES
            {
                return Err((SvgExcess::Attributes, ATTRIBUTES));
            }
            let letters = self.letters_of(value);
            self.entities.entry(name.unwrap_or_default()).or_insert(letters);
            if self.entities.len() > ENTITIES {
                return Err((SvgExcess::Entities, ENTITY_LETTERS));
            }
            at = quote + 1 + value.len();
        }
        Ok(())
    }

    fn letters_of(&self, value: &[u8]) -> usize {
        let (mut letters, mut at) = (value.len(), 0);
        while let Some(found) = memchr(b'&', &value[at..]) {
            let name = &value[at + found + 1..];
            let name = &name[..memchr(b';', name).unwrap_or(0)];
            letters = letters.saturating_add(self.entities.get(name).copied().unwrap_or(0));
            at += found + 1;
        }
        letters
    }

    fn in_all(&self) -> Result<(), Excess> {
        if self.attributes > ALL_ATTRIBUTES {
            return Err((SvgExcess::AllAttributes, ALL_ATTRIBUTES));
        }
        if self.namespaces.len() > NAMESPACES || self.declaring > DECLARING {
            return Err((SvgExcess::Namespaces, NAMESPACES));
        }
        if self.letters > ENTITY_LETTERS || self.references > REFERENCES {
            return Err((SvgExcess::Entities, ENTITY_LETTERS));
        }
        Ok(())
    }
}

/// Most signs of equality in one tag of an entity's value.
fn longest_tag(value: &[u8]) -> usize {
    let tags = value.split(|b| *b == b'<');
    tags.map(|t| t.iter().filter(|b| **b == b'=').count()).max().unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(text: &str) -> Option<(SvgExcess, Option<usize>)> {
        let refusal = within(text, &Lines::of(text)).err()?;
        match refusal.0.kind {
            crate::finding::FindingKind::Drawing(
                crate::finding::drawing::DrawingFinding::SvgTooBig { of, line, .. },
            ) => Some((of, line)),
            _ => None,
        }
    }

    #[test]
    fn attributes_are_counted_by_element_and_not_within_values() {
        let many = |n: usize| (0..n).map(|i| format!(" a{i} = '='")).collect::<String>();
        assert_eq!(of(&format!("<svg{}>\n</svg>", many(200))), None);
        let text = format!("<!-- {} --><svg>\n<g\n{}/></svg>", many(300), many(201));
        assert_eq!(of(&text), Some((SvgExcess::Attributes, Some(2))));
    }

    #[test]
    fn entities_are_counted_out() {
        let head = |uses: &str| {
            let long = "x".repeat(1_000_000);
            format!("<!DOCTYPE svg [<!ENTITY a '{long}'><!ENTITY b \"&a;&a;\">]><svg>{uses}</svg>")
        };
        assert_eq!(of(&head("&b;<g t='&b;&lt;'/>&#32;")), None);
        let over = of(&head(&"<g t='&b;'/>".repeat(9)));
        assert_eq!(over, Some((SvgExcess::Entities, Some(1))));
    }

    #[test]
    fn namespaces_are_counted_once_each() {
        let one = "<g xmlns:a='urn:a'/>".repeat(1_000);
        assert_eq!(of(&format!("<svg>{one}</svg>")), None);
        let many: String = (0..101).map(|i| format!("<g xmlns:a{i}='urn:a'/>")).collect();
        assert!(matches!(of(&format!("<svg>{many}</svg>")), Some((SvgExcess::Namespaces, _))));
    }

    #[test]
    fn what_breaks_off_ends() {
        for text in
            ["<", "<a", "<a b", "<a b='", "<!", "<!DOCTYPE a [", "<!--", "<![CDATA[", "&", "&a"]
        {
            assert_eq!(of(text), None, "{text}");
        }
    }
}
