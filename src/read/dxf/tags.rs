//! The tag layer: pairs of group code and value with their place in the file, ASCII or binary.

use memchr::memchr2;

/// The 22 bytes that begin a binary DXF, as the format's reference gives them.
pub const BINARY_MAGIC: &[u8] = &[
    0x41, 0x75, 0x74, 0x6f, 0x43, 0x41, 0x44, 0x20, 0x42, 0x69, 0x6e, 0x61, 0x72, 0x79, 0x20, 0x44,
    0x58, 0x46, 0x0d, 0x0a, 0x1a, 0x00,
];

/// Group that begins an object embedded in an entity (DXF reference).
pub const EMBEDDED: i32 = 101;

/// One group pair.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tag<'a> {
    /// Group code.
    pub code: i32,
    /// Value: text as it stands, or the text form of a binary number in `number`.
    pub value: &'a [u8],
    /// Number of a binary value.
    pub number: Option<f64>,
    /// Line of the group code, from 1; byte offset in a binary file; 0 where lines are not counted.
    pub line: usize,
}

impl Tag<'_> {
    /// The value as a number; `None` if it is none or not finite.
    pub fn float(&self) -> Option<f64> {
        let n = match self.number {
            Some(n) => n,
            None => std::str::from_utf8(self.value).ok()?.trim().parse().ok()?,
        };
        n.is_finite().then_some(n)
    }

    /// The value as a whole number.
    pub fn int(&self) -> Option<i64> {
        let n = self.float()?;
        (n.abs() < 9e15).then_some(n as i64)
    }

    /// Whether the value is this word.
    pub fn is(&self, word: &str) -> bool {
        self.value.trim_ascii().eq_ignore_ascii_case(word.as_bytes())
    }
}

/// Reads group pairs one by one.
#[derive(Clone, Debug)]
pub struct Tags<'a> {
    bytes: &'a [u8],
    at: usize,
    line: usize,
    /// Whether lines are counted.
    numbered: bool,
    /// Binary: bytes of a group code (1 or 2).
    width: Option<usize>,
    /// Lines where a pair could not be read and was passed over.
    pub bad: Vec<usize>,
    /// Whether the bytes ended inside a pair.
    pub cut_off: bool,
}

impl<'a> Tags<'a> {
    /// Over the bytes of a file.
    pub fn new(bytes: &'a [u8]) -> Self {
        let mut tags = Tags { line: 1, ..Tags::unnumbered(bytes) };
        tags.numbered = true;
        if bytes.starts_with(BINARY_MAGIC) {
            tags.at = BINARY_MAGIC.len();
            // The first pair is 0 SECTION: one byte of code, then a letter, in R12 and before.
            let narrow = bytes.get(tags.at + 1).is_some_and(|b| *b != 0);
            tags.width = Some(if narrow { 1 } else { 2 });
        } else if bytes.starts_with(b"\xef\xbb\xbf") {
            tags.at = 3;
        }
        tags
    }

    /// Over the text of a DXF that stands in no file, so that its lines are nobody's.
    pub fn unnumbered(bytes: &'a [u8]) -> Self {
        let (numbered, width, bad, cut_off) = (false, None, Vec::new(), false);
        Tags { bytes, at: 0, line: 0, numbered, width, bad, cut_off }
    }

    /// Whether the file is binary.
    pub fn is_binary(&self) -> bool {
        self.width.is_some()
    }

    fn text_line(&mut self) -> Option<&'a [u8]> {
        let rest = self.bytes.get(self.at..).filter(|r| !r.is_empty())?;
        let end = memchr2(b'\n', b'\r', rest);
        let (text, skip) = match end {
            Some(n) if rest[n] == b'\r' && rest.get(n + 1) == Some(&b'\n') => (&rest[..n], n + 2),
            Some(n) => (&rest[..n], n + 1),
            None => (rest, rest.len()),
        };
        self.at += skip;
        self.line += usize::from(self.numbered);
        Some(text)
    }

    fn ascii(&mut self) -> Option<Tag<'a>> {
        loop {
            let line = self.line;
            let code = self.text_line()?;
            let trimmed = code.trim_ascii();
            match group_code(trimmed) {
                Some(code) => {
                    let Some(value) = self.text_line() else {
                        self.cut_off = true;
                        return None;
                    };
                    return Some(Tag { code, value, number: None, line });
                }
                None => {
                    // A line that is no group code: passed over, so that one bad pair does not
                    // lose the drawing. Blank lines at the end are no fault.
                    if !trimmed.is_empty() && self.bad.len() < 1000 {
                        self.bad.push(line);
                    }
                }
            }
        }
    }

    fn take(&mut self, n: usize) -> Option<&'a [u8]> {
        let part = self.bytes.get(self.at..self.at.checked_add(n)?);
        match part {
            Some(_) => self.at += n,
            None => self.cut_off(),
        }
        part
    }

    /// The bytes end inside a pair: what is left of them is none.
    fn cut_off(&mut self) {
        self.cut_off = true;
        self.at = self.bytes.len();
    }

    fn binary(&mut self, width: usize) -> Option<Tag<'a>> {
        if self.at >= self.bytes.len() {
            return None;
        }
        let line = self.at;
        let mut code = if width == 2 {
            let b = self.take(2)?;
            i32::from(i16::from_le_bytes([b[0], b[1]]))
        } else {
            i32::from(self.take(1)?[0])
        };
        if width == 1 && code == 255 {
            let b = self.take(2)?;
            code = i32::from(i16::from_le_bytes([b[0], b[1]]));
        }
        let number = |b: &[u8]| match b.len() {
            1 => f64::from(b[0]),
            2 => f64::from(i16::from_le_bytes([b[0], b[1]])),
            4 => f64::from(i32::from_le_bytes([b[0], b[1], b[2], b[3]])),
            _ => {
                let mut x = [0; 8];
                x.copy_from_slice(b);
                // Whole numbers of eight bytes are handles' kin; houses need none.
                f64::from_le_bytes(x)
            }
        };
        let size = match code {
            10..=59 | 110..=149 | 210..=239 | 460..=469 | 1010..=1059 => Some(8),
            60..=79 | 170..=179 | 270..=289 | 370..=389 | 400..=409 | 1060..=1070 => Some(2),
            90..=99 | 420..=429 | 440..=459 | 1071 => Some(4),
            160..=169 => Some(8),
            290..=299 => Some(1),
            _ => None,
        };
        if let Some(size) = size {
            let b = self.take(size)?;
            return Some(Tag { code, value: &[], number: Some(number(b)), line });
        }
        if (310..=319).contains(&code) || code == 1004 {
            let n = usize::from(self.take(1)?[0]);
            let value = self.take(n)?;
            return Some(Tag { code, value, number: None, line });
        }
        let rest = self.bytes.get(self.at..)?;
        let Some(end) = memchr::memchr(0, rest) else {
            self.cut_off();
            return None;
        };
        self.at += end + 1;
        Some(Tag { code, value: &rest[..end], number: None, line })
    }
}

/// A group code from its digits: there is one for every other line of a file.
fn group_code(text: &[u8]) -> Option<i32> {
    let (sign, digits) = match text.split_first()? {
        (b'-', rest) => (-1, rest),
        (b'+', rest) => (1, rest),
        _ => (1, text),
    };
    if digits.is_empty() || digits.len() > 9 || !digits.iter().all(u8::is_ascii_digit) {
        return None;
    }
    Some(sign * digits.iter().fold(0, |n, d| 10 * n + i32::from(d - b'0')))
}

impl<'a> Iterator for Tags<'a> {
    type Item = Tag<'a>;

    fn next(&mut self) -> Option<Tag<'a>> {
        match self.width {
            Some(width) => self.binary(width),
            None => self.ascii(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pairs_know_their_lines_with_any_line_ending() {
        for end in ["\n", "\r\n", "\r"] {
            let text = ["  0", "LINE", " 10", "1.5"].join(end);
            let tags: Vec<Tag> = Tags::new(text.as_bytes()).collect();
            assert_eq!(
                (tags[1].code, tags[1].float(), tags[1].line),
                (10, Some(1.5), 3),
                "{end:?}"
            );
        }
    }

    #[test]
    fn group_codes_are_whole_numbers() {
        for (text, code) in [("0", 0), ("-3", -3), ("+7", 7), ("1071", 1071), ("010", 10)] {
            assert_eq!(group_code(text.as_bytes()), Some(code), "{text}");
        }
        for text in ["", "-", "1.5", "1 0", "x", "9999999999", "\u{661}"] {
            assert_eq!(group_code(text.as_bytes()), None, "{text}");
        }
    }

    #[test]
    fn a_stray_line_is_passed_over_and_listed() {
        let mut tags = Tags::new(b"0\nLINE\nnonsense\n10\n2\n");
        assert_eq!(tags.by_ref().count(), 2);
        assert_eq!(tags.bad, [3]);
    }

    #[test]
    fn numbers_that_are_not_finite_are_none() {
        let tag = Tags::new(b"10\nNaN\n").next().unwrap();
        assert_eq!(tag.float(), None);
        assert_eq!(Tags::new(b"10\n1e999\n").next().unwrap().float(), None);
    }

    #[test]
    fn binary_codes_of_both_widths() {
        let mut old = BINARY_MAGIC.to_vec();
        old.extend(b"\0SECTION\0\x0a");
        old.extend(2.5f64.to_le_bytes());
        let tags: Vec<Tag> = Tags::new(&old).collect();
        assert!(tags[0].is("SECTION"));
        assert_eq!((tags[1].code, tags[1].float()), (10, Some(2.5)));
        let mut new = BINARY_MAGIC.to_vec();
        new.extend(b"\0\0SECTION\0\x46\0\x07\0");
        let tags: Vec<Tag> = Tags::new(&new).collect();
        assert_eq!((tags[1].code, tags[1].int()), (70, Some(7)));
    }
}
