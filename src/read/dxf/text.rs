//! Strings of a DXF: code pages, escapes, and the inline codes of MTEXT.

use std::collections::BTreeSet;

use chardetng::EncodingDetector;
use encoding_rs::{Encoding, UTF_8, WINDOWS_1252};

/// How the strings of a file are decoded.
#[derive(Clone, Copy, Debug)]
pub(super) struct Decoder {
    /// The file's code page.
    pub page: &'static Encoding,
}

/// Bytes of one value that are decoded: what stands behind them is no name, and no note of an elevation.
pub(super) const MOST_BYTES: usize = 1 << 16;

impl Decoder {
    /// From `$DWGCODEPAGE` and `$ACADVER` (UTF-8 from AC1021 on), and from the bytes where the
    /// header names no code page, or the one that writers put when they know no better.
    pub(super) fn new(code_page: &str, version: &str, sniffed: Option<&'static Encoding>) -> Self {
        let utf8 = version >= "AC1021" && version.starts_with("AC");
        let stated = page(code_page);
        let page = match sniffed {
            _ if utf8 => UTF_8,
            Some(other) if stated.is_none_or(|p| p == WINDOWS_1252) => other,
            _ => stated.unwrap_or(WINDOWS_1252),
        };
        Decoder { page }
    }

    /// Decodes a value. Whatever the header says, bytes that are valid UTF-8 and not plain ASCII
    /// are UTF-8: other code pages hardly ever make valid sequences by chance.
    pub(super) fn text(self, bytes: &[u8]) -> String {
        let bytes = bytes[..bytes.len().min(MOST_BYTES)].trim_ascii();
        let decoded = match std::str::from_utf8(bytes) {
            Ok(t) => t.to_owned(),
            Err(_) if self.page == UTF_8 => {
                WINDOWS_1252.decode_without_bom_handling(bytes).0.into_owned()
            }
            Err(_) => self.page.decode_without_bom_handling(bytes).0.into_owned(),
        };
        if decoded.contains("\\U+") { unicode_escapes(&decoded) } else { decoded }
    }
}

/// Where the next byte beyond ASCII stands; asked of blocks first, which is many times faster.
fn beyond_ascii(bytes: &[u8], from: usize) -> Option<usize> {
    const BLOCK: usize = 1 << 12;
    let mut at = from;
    for block in bytes.get(from..)?.chunks(BLOCK) {
        if !block.is_ascii() {
            return block.iter().position(|b| *b >= 0x80).map(|i| at + i);
        }
        at += block.len();
    }
    None
}

/// How the text of a file looks encoded, where that is clear: lines with bytes beyond ASCII that are
/// no UTF-8 are shown to a detector. A few letters, often repeated, speak for nothing: the header is
/// then believed.
pub(super) fn sniffed(bytes: &[u8]) -> Option<&'static Encoding> {
    const MOST: usize = 1 << 16;
    const LEAST: usize = 6;
    let mut runs: BTreeSet<&[u8]> = BTreeSet::new();
    let mut detector = EncodingDetector::new();
    let (mut fed, mut at) = (0, 0);
    while fed < MOST {
        let Some(here) = beyond_ascii(bytes, at) else { break };
        let start = memchr::memrchr(b'\n', &bytes[..here]).map_or(0, |i| i + 1);
        let end = memchr::memchr(b'\n', &bytes[here..]).map_or(bytes.len(), |i| here + i + 1);
        let line = &bytes[start..end];
        if std::str::from_utf8(line).is_err() {
            detector.feed(line, false);
            fed += line.len();
            runs.extend(line.split(u8::is_ascii).filter(|r| !r.is_empty()));
        }
        at = end;
    }
    if runs.iter().map(|r| r.len()).sum::<usize>() < LEAST {
        return None;
    }
    detector.feed(b"\n", true);
    let (page, sure) = detector.guess_assess(None, false);
    sure.then_some(page)
}

fn page(name: &str) -> Option<&'static Encoding> {
    let digits: String = name.chars().filter(char::is_ascii_digit).collect();
    let label = match digits.as_str() {
        "932" => "shift_jis".to_owned(),
        "936" => "gbk".to_owned(),
        "949" => "euc-kr".to_owned(),
        "950" => "big5".to_owned(),
        d if d == "874" || (d.starts_with("125") && d.len() == 4) => format!("windows-{d}"),
        _ => return None,
    };
    Encoding::for_label(label.as_bytes())
}

fn unicode_escapes(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(at) = rest.find("\\U+") {
        out.push_str(&rest[..at]);
        let hex = rest.get(at + 3..at + 7);
        let found = hex.and_then(|h| u32::from_str_radix(h, 16).ok()).and_then(char::from_u32);
        match found {
            Some(c) => {
                out.push(c);
                rest = &rest[at + 7..];
            }
            None => {
                out.push_str("\\U+");
                rest = &rest[at + 3..];
            }
        }
    }
    out.push_str(rest);
    out
}

/// `%%d`, `%%p`, `%%c` and kin in a TEXT (`DrawingFact::TextEscapes`).
pub(super) fn plain(text: &str) -> String {
    if !text.contains("%%") {
        return text.to_owned();
    }
    let mut out = String::with_capacity(text.len());
    let mut chars = text.chars().peekable();
    while let Some(c) = chars.next() {
        if c != '%' || chars.peek() != Some(&'%') {
            out.push(c);
            continue;
        }
        chars.next();
        match chars.next() {
            Some('d' | 'D') => out.push('°'),
            Some('p' | 'P') => out.push('±'),
            Some('c' | 'C') => out.push('⌀'),
            Some('%') => out.push('%'),
            // Under- and overline switches draw nothing themselves.
            Some('u' | 'U' | 'o' | 'O' | 'k' | 'K') | None => {}
            Some(other) => out.push(other),
        }
    }
    out
}

/// The lines of an MTEXT, inline codes resolved.
pub(super) fn lines(text: &str) -> Vec<String> {
    let mut out = vec![String::new()];
    let mut chars = text.chars();
    while let Some(c) = chars.next() {
        let Some(line) = out.last_mut() else { break };
        match c {
            '{' | '}' | '\r' => {}
            // Binary files hold line ends as they are.
            '\n' => out.push(String::new()),
            '\\' => match chars.next() {
                Some('P' | 'X') => out.push(String::new()),
                Some('~') => line.push(' '),
                Some(e @ ('\\' | '{' | '}')) => line.push(e),
                Some('L' | 'l' | 'O' | 'o' | 'K' | 'k' | 'N') | None => {}
                Some('S') => {
                    let stack: String = chars.by_ref().take_while(|c| *c != ';').collect();
                    line.push_str(&stack.replace(['^', '#'], "/"));
                }
                // Font, height, width, color, alignment and the like, up to a semicolon.
                Some('f' | 'F' | 'H' | 'W' | 'Q' | 'T' | 'C' | 'c' | 'A' | 'p') => {
                    for c in chars.by_ref() {
                        if c == ';' {
                            break;
                        }
                    }
                }
                Some(other) => line.push(other),
            },
            '^' => match chars.next() {
                Some('J') => out.push(String::new()),
                Some('I') => line.push(' '),
                Some(' ') => line.push('^'),
                _ => {}
            },
            c => line.push(c),
        }
    }
    out.iter().map(|l| plain(l)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_few_letters_do_not_outweigh_the_header() {
        // Three letters of a Western name, repeated, could be Cyrillic as well.
        let few = [&b"  8\n"[..], b"W\xc4\xdc\xd6\n", b"  8\n", b"V\xc4\xdc\xd6\n"].concat();
        assert_eq!(sniffed(&few), None);
        // Wall, window and elevation in Shift-JIS.
        let names = ["\u{5916}\u{58c1}", "\u{7a93}", "\u{7acb}\u{9762}\u{56f3}"];
        let mut many = Vec::new();
        for n in names {
            many.extend(b"  8\n");
            many.extend(encoding_rs::SHIFT_JIS.encode(n).0.iter());
            many.push(b'\n');
        }
        assert_eq!(sniffed(&many), Some(encoding_rs::SHIFT_JIS));
    }

    #[test]
    fn codes_of_text_and_mtext() {
        assert_eq!(plain("45%%d %%p1/8 %%c3 50%%%"), "45° ±1/8 ⌀3 50%");
        assert_eq!(lines("{\\fsans|b0;Sill}\\P\\H2.5;at 3'\\S1/2;"), ["Sill", "at 3'1/2"]);
        assert_eq!(lines("a\\\\b\\{c\\}"), ["a\\b{c}"]);
    }

    #[test]
    fn code_pages_are_told_apart_by_content() {
        let d = Decoder::new("ANSI_1252", "AC1015", None);
        assert_eq!(d.text(b"caf\xe9"), "café");
        assert_eq!(d.text("café".as_bytes()), "café");
        assert_eq!(d.text(b"\\U+00e9t\\U+00e9 \\U+zz"), "été \\U+zz");
        let j = Decoder::new("ANSI_932", "AC1009", None);
        assert_eq!(j.text(b"\x90\xb3\x96\xca"), "正面");
        assert_eq!(Decoder::new("", "AC1032", None).text(b"caf\xe9"), "café");
    }
}
