//! Text in two bytes a letter, as some programs save it, read as what it says.

use std::borrow::Cow;

use encoding_rs::{Encoding, UTF_16BE, UTF_16LE};

/// Which of the two orders of bytes a file has, if it is in UTF-16, with a mark at its beginning or
/// without: plain letters then have a zero for every other byte.
pub(super) fn encoding(bytes: &[u8]) -> Option<&'static Encoding> {
    /// Letters looked at.
    const PLAIN: usize = 4;
    if bytes.starts_with(b"\xff\xfe") {
        return Some(UTF_16LE);
    }
    if bytes.starts_with(b"\xfe\xff") {
        return Some(UTF_16BE);
    }
    let head = bytes.get(..2 * PLAIN)?;
    let all = |zero: usize| head.chunks(2).all(|p| p[zero] == 0 && is_plain(p[1 - zero]));
    match (all(1), all(0)) {
        (true, _) => Some(UTF_16LE),
        (_, true) => Some(UTF_16BE),
        _ => None,
    }
}

fn is_plain(b: u8) -> bool {
    b.is_ascii_graphic() || b.is_ascii_whitespace()
}

/// Text in four bytes a letter.
pub(super) fn four_bytes(bytes: &[u8]) -> bool {
    let head = bytes.get(..8);
    bytes.starts_with(b"\xff\xfe\0\0")
        || bytes.starts_with(b"\0\0\xfe\xff")
        || head.is_some_and(|h| h.chunks(4).all(|c| is_plain(c[0]) && c[1..] == [0, 0, 0]))
        || head.is_some_and(|h| h.chunks(4).all(|c| is_plain(c[3]) && c[..3] == [0, 0, 0]))
}

/// The bytes as UTF-8, where they are in UTF-16; else as they are.
pub(super) fn narrowed(bytes: &[u8]) -> Cow<'_, [u8]> {
    match encoding(bytes) {
        Some(wide) => Cow::Owned(wide.decode_with_bom_removal(bytes).0.into_owned().into_bytes()),
        None => Cow::Borrowed(bytes),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn wide(text: &str, big: bool) -> Vec<u8> {
        let order = |u: u16| if big { u.to_be_bytes() } else { u.to_le_bytes() };
        text.encode_utf16().flat_map(order).collect()
    }

    #[test]
    fn both_orders_with_a_mark_and_without() {
        for text in ["  0\r\nSECTION\r\n", "<svg a='\u{7a93}'/>"] {
            for big in [false, true] {
                for mark in ["", "\u{feff}"] {
                    let bytes = wide(&format!("{mark}{text}"), big);
                    assert_eq!(&*narrowed(&bytes), text.as_bytes(), "{text} {big} {mark:?}");
                }
            }
        }
    }

    #[test]
    fn other_bytes_stay_as_they_are() {
        let binary = super::super::dxf::tags::BINARY_MAGIC;
        for bytes in [&b"0\nSECTION\n"[..], b"", b"0\0", binary, b"AC1032\0\0\0\0\0\0"] {
            assert!(encoding(bytes).is_none(), "{bytes:?}");
        }
        let four: Vec<u8> = "<svg".chars().flat_map(|c| (c as u32).to_le_bytes()).collect();
        assert!(four_bytes(&four) && encoding(&four).is_none());
    }
}
