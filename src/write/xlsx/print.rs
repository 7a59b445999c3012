//! How a sheet prints: what a page holds, and the lines that a text takes.

/// Lines of text on a printed page: 16 in of 11 by 17 in, or as much of A3, hold as many rows of 15 points
/// that are printed at 7/11, letters of 11 points at 7.
const LINES: u32 = 120;
/// The same of a page that lies.
const LINES_LYING: u32 = 75;
/// Characters across, over which a page lies: letters of 11 points then print at 7 or more.
const ACROSS: f64 = 215.5;
/// What a column takes on a page beside its characters, 5 dots of 7 to a character (from the file format).
const BESIDE: f64 = 5.0 / 7.0;

/// Whether pages lie, and how many of them, one page wide, hold so many lines of columns of these characters.
pub(super) fn pages(columns: &[f64], lines: u32) -> (bool, u16) {
    let wide: f64 = columns.iter().map(|w| w + BESIDE).sum();
    let lies = wide > ACROSS;
    let a_page = if lies { LINES_LYING } else { LINES };
    (lies, u16::try_from(lines.div_ceil(a_page).max(1)).unwrap_or(0))
}

/// Lines that a text takes in a column so many characters wide: words are not parted.
pub(super) fn lines(words: &str, width: f64) -> u32 {
    let room = (width - 1.0).max(1.0) as usize;
    let (mut lines, mut at) = (1, 0);
    for word in words.split_whitespace() {
        let n = word.chars().count();
        if at > 0 && at + 1 + n > room {
            lines += 1;
            at = 0;
        }
        at += if at > 0 { n + 1 } else { n };
        while at > room {
            lines += 1;
            at -= room;
        }
    }
    // A row holds 409 points at most.
    lines.min(30)
}
