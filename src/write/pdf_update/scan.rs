//! The written form of a PDF's objects: where one ends, and a dictionary taken apart and put together.
//! ISO 32000-1, 7.2 and 7.3.

/// Deepest nesting that is followed.
const DEEPEST: usize = 64;

/// Where the object that begins at `at` ends; a reference counts as one object.
pub(super) fn object_end(bytes: &[u8], at: usize) -> Option<usize> {
    end_at_depth(bytes, at, 0)
}

/// The place of the next byte that is neither blank nor of a comment.
pub(super) fn next(bytes: &[u8], mut at: usize) -> usize {
    while let Some(b) = bytes.get(at) {
        if is_blank(*b) {
            at += 1;
        } else if *b == b'%' {
            at += bytes[at..].iter().position(|b| matches!(b, b'\n' | b'\r')).unwrap_or(1);
            at = at.max(1);
            if !bytes.get(at).is_some_and(|b| is_blank(*b)) {
                return bytes.len();
            }
        } else {
            break;
        }
    }
    at
}

fn is_blank(b: u8) -> bool {
    matches!(b, 0 | b'\t' | b'\n' | 0x0c | b'\r' | b' ')
}

fn is_delimiter(b: u8) -> bool {
    matches!(b, b'(' | b')' | b'<' | b'>' | b'[' | b']' | b'{' | b'}' | b'/' | b'%')
}

fn word_end(bytes: &[u8], at: usize) -> usize {
    let rest = bytes.get(at..).unwrap_or_default();
    at + rest.iter().position(|b| is_blank(*b) || is_delimiter(*b)).unwrap_or(rest.len())
}

fn end_at_depth(bytes: &[u8], at: usize, depth: usize) -> Option<usize> {
    if depth > DEEPEST {
        return None;
    }
    match bytes.get(at)? {
        b'<' if bytes.get(at + 1) == Some(&b'<') => ended_by(bytes, at + 2, b">>", depth),
        b'<' => Some(at + bytes[at..].iter().position(|b| *b == b'>')? + 1),
        b'[' => ended_by(bytes, at + 1, b"]", depth),
        b'(' => text_end(bytes, at),
        b'/' => Some(word_end(bytes, at + 1)),
        _ => {
            let end = word_end(bytes, at);
            (end > at).then(|| reference_end(bytes, at, end).unwrap_or(end))
        }
    }
}

fn ended_by(bytes: &[u8], mut at: usize, mark: &[u8], depth: usize) -> Option<usize> {
    loop {
        at = next(bytes, at);
        if bytes.get(at..)?.starts_with(mark) {
            return Some(at + mark.len());
        }
        at = end_at_depth(bytes, at, depth + 1)?;
    }
}

fn text_end(bytes: &[u8], mut at: usize) -> Option<usize> {
    let mut open = 0;
    loop {
        match bytes.get(at)? {
            b'\\' => at += 1,
            b'(' => open += 1,
            b')' => open -= 1,
            _ => {}
        }
        at += 1;
        if open == 0 {
            return Some(at);
        }
    }
}

/// The end of `12 0 R`, of which the first number is known.
fn reference_end(bytes: &[u8], at: usize, end: usize) -> Option<usize> {
    let number =
        |from: usize, to: usize| to > from && bytes[from..to].iter().all(u8::is_ascii_digit);
    let second = next(bytes, end);
    let second_end = word_end(bytes, second);
    let mark = next(bytes, second_end);
    let mark_end = word_end(bytes, mark);
    let is_reference = number(at, end) && number(second, second_end);
    (is_reference && &bytes[mark..mark_end] == b"R").then_some(mark_end)
}

/// The entries of a dictionary, with or without its brackets: keys without their stroke, and values as
/// they are written.
pub(super) fn entries(dict: &[u8]) -> Option<Vec<(&[u8], &[u8])>> {
    let dict = dict.trim_ascii();
    let dict = dict.strip_prefix(b"<<").and_then(|d| d.strip_suffix(b">>")).unwrap_or(dict);
    let (mut out, mut at) = (Vec::new(), 0);
    loop {
        at = next(dict, at);
        if at >= dict.len() {
            return Some(out);
        }
        let key_end = object_end(dict, at)?;
        let key = dict.get(at..key_end)?.strip_prefix(b"/")?;
        let value = next(dict, key_end);
        let end = object_end(dict, value)?;
        out.push((key, &dict[value..end]));
        at = end;
    }
}

/// A dictionary with some of its entries given anew.
pub(super) fn with(dict: &[u8], new: &[(&str, Vec<u8>)]) -> Option<Vec<u8>> {
    let mut out = b"<<".to_vec();
    let mut put = |key: &[u8], value: &[u8]| {
        out.extend([b"\n/", key, b" ", value].concat());
    };
    let given = |key: &[u8]| new.iter().any(|(k, _)| k.as_bytes() == key);
    entries(dict)?.into_iter().filter(|(key, _)| !given(key)).for_each(|(k, v)| put(k, v));
    new.iter().for_each(|(k, v)| put(k.as_bytes(), v));
    out.extend(b"\n>>");
    Some(out)
}

/// The value of a key, as it is written.
pub(super) fn value<'a>(dict: &'a [u8], key: &str) -> Option<&'a [u8]> {
    entries(dict)?.into_iter().find(|(k, _)| *k == key.as_bytes()).map(|(_, v)| v)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_dictionary_is_taken_apart_and_put_together() {
        let dict = b"<< /A 12 0 R /B[1 2 (a\\)>>) <</C<3e>>>]%note\n/D/E /F 1.5/G(x(y)z)>>";
        let found = entries(dict).unwrap_or_default();
        let keys: Vec<&[u8]> = found.iter().map(|e| e.0).collect();
        assert_eq!(keys, [b"A", b"B", b"D", b"F", b"G"]);
        assert_eq!(found[0].1, b"12 0 R");
        assert_eq!(found[1].1, b"[1 2 (a\\)>>) <</C<3e>>>]");
        assert_eq!(found[4].1, b"(x(y)z)");
        let new = with(dict, &[("B", b"7".to_vec()), ("N", b"/M".to_vec())]).unwrap_or_default();
        assert_eq!(value(&new, "B"), Some(&b"7"[..]));
        assert_eq!(value(&new, "N"), Some(&b"/M"[..]));
        assert_eq!(value(&new, "F"), Some(&b"1.5"[..]));
    }

    #[test]
    fn what_does_not_end_has_no_end() {
        assert_eq!(object_end(b"<< /A (", 0), None);
        assert_eq!(object_end(b"[1 2", 0), None);
        assert_eq!(entries(b"<< /A >>"), None);
    }
}
