//! Values that should be numbers and are none: never read as 0 or 1.

use super::tags::Tag;

/// A value that cannot be read.
#[derive(Clone, Copy, Debug)]
pub(super) struct NumberFault<'a> {
    /// The pair it stands in.
    pub tag: Tag<'a>,
    /// It is a number, and larger than any that is held.
    pub too_far: bool,
}

/// Whether values of this code place, scale, turn or count what is drawn (group codes by their ranges, as
/// the format's reference gives them); colors and flags of look are none.
fn measures(code: i32) -> bool {
    matches!(code, 10..=59 | 70..=79 | 90..=99 | 210..=239)
}

/// What is wrong with a pair's value, if it should be a number.
pub(super) fn fault_of<'a>(tag: &Tag<'a>) -> Option<NumberFault<'a>> {
    if !measures(tag.code) || (tag.number.is_none() && plain(tag.value)) || tag.float().is_some() {
        return None;
    }
    // A number may be beyond what is held; a word for infinity is no number.
    let written = std::str::from_utf8(tag.value).ok().map(str::trim);
    let digits = written.filter(|t| t.contains(|c: char| c.is_ascii_digit()));
    let too_far = digits.is_some_and(|t| t.parse::<f64>().is_ok());
    Some(NumberFault { tag: *tag, too_far })
}

/// Whether a text is digits with a sign and a point at most, as nearly all are: asked of every value.
fn plain(text: &[u8]) -> bool {
    let text = text.trim_ascii();
    let text = text.strip_prefix(b"-").unwrap_or(text);
    let (mut digits, mut points) = (0, 0);
    for b in text {
        match b {
            b'0'..=b'9' => digits += 1,
            b'.' => points += 1,
            _ => return false,
        }
    }
    // Longer ones may be beyond what is held.
    (1..300).contains(&digits) && points < 2
}

#[cfg(test)]
mod tests {
    use super::super::tags::Tags;
    use super::*;

    fn fault(code: i32, value: &str) -> Option<bool> {
        let text = format!("{code}\n{value}\n");
        let tag = Tags::new(text.as_bytes()).next().unwrap();
        fault_of(&tag).map(|f| f.too_far)
    }

    #[test]
    fn words_are_told_from_numbers_and_from_those_beyond_all() {
        for good in ["0", " -12.50", "+3", "1e3", "1.5E-08", ".5", "7.", "000000"] {
            assert_eq!(fault(10, good), None, "{good}");
        }
        for bad in
            ["", "abc", "1,5", "1.2.3", "--1", "12x", "nan", "inf", "1.#QNAN", "0x10", "-", "."]
        {
            assert_eq!(fault(42, bad), Some(false), "{bad}");
        }
        assert_eq!(fault(10, "1e400"), Some(true));
        assert_eq!(fault(10, &"9".repeat(400)), Some(true));
    }

    #[test]
    fn names_handles_and_colors_are_asked_for_no_number() {
        for code in [1, 2, 5, 8, 62, 100, 330, 370, 1000] {
            assert_eq!(fault(code, "A-WALL"), None, "{code}");
        }
    }
}
