//! Numbers of an SVG's attributes, looked through before the resolver has them: it draws a path as far as
//! it can be read and takes a transform that cannot be for none, without a word. Grammar as the SVG
//! specification has it (SVG 2, W3C; from memory).

/// What is wrong with a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Fault<'a> {
    /// What stands where one is due.
    NoNumber(&'a str),
    /// It lies beyond the limit.
    TooFar,
}

/// Numbers read one by one.
struct Cursor<'a> {
    text: &'a str,
    at: usize,
    farthest: f64,
}

impl<'a> Cursor<'a> {
    fn of(text: &'a str, farthest: f64) -> Self {
        Cursor { text, at: 0, farthest }
    }

    fn peek(&self) -> Option<u8> {
        self.text.as_bytes().get(self.at).copied()
    }

    fn skip_blanks(&mut self) {
        while self.peek().is_some_and(|b| b.is_ascii_whitespace() || b == b',') {
            self.at += 1;
        }
    }

    fn digits(&mut self) -> usize {
        let from = self.at;
        while self.peek().is_some_and(|b| b.is_ascii_digit()) {
            self.at += 1;
        }
        self.at - from
    }

    /// What stands here, up to the next blank.
    fn fault(&self) -> Fault<'a> {
        let rest = &self.text[self.at.min(self.text.len())..];
        let end = rest.find(|c: char| c.is_whitespace() || c == ',').unwrap_or(rest.len());
        Fault::NoNumber(&rest[..end])
    }

    /// A number.
    fn number(&mut self) -> Result<(), Fault<'a>> {
        /// Digits of a number that is surely within the limit of coordinates, 1,000,000,000.
        const SURE: usize = 9;
        let from = self.at;
        if matches!(self.peek(), Some(b'-' | b'+')) {
            self.at += 1;
        }
        let whole = self.digits();
        let mut part = 0;
        if self.peek() == Some(b'.') {
            self.at += 1;
            part = self.digits();
        }
        if whole + part == 0 {
            self.at = from;
            return Err(self.fault());
        }
        let scaled = self.exponent();
        if (whole > SURE || scaled)
            && self.text[from..self.at].parse().is_ok_and(|n: f64| n.abs() > self.farthest)
        {
            return Err(Fault::TooFar);
        }
        Ok(())
    }

    /// A power of ten, where there is one: `e` may begin a unit too.
    fn exponent(&mut self) -> bool {
        let from = self.at;
        if matches!(self.peek(), Some(b'e' | b'E')) {
            self.at += 1;
            if matches!(self.peek(), Some(b'-' | b'+')) {
                self.at += 1;
            }
            if self.digits() > 0 {
                return true;
            }
        }
        self.at = from;
        false
    }

    /// Whether a number may begin here.
    fn begins(&self) -> bool {
        self.peek().is_some_and(|b| b.is_ascii_digit() || matches!(b, b'-' | b'+' | b'.'))
    }
}

/// How many numbers a command of path data takes at a time.
fn arity(command: u8) -> Option<usize> {
    Some(match command.to_ascii_lowercase() {
        b'z' => 0,
        b'h' | b'v' => 1,
        b'm' | b'l' | b't' => 2,
        b's' | b'q' => 4,
        b'c' => 6,
        b'a' => 7,
        _ => return None,
    })
}

/// Points of path data, commands counted out.
pub(super) fn path(text: &str, farthest: f64) -> Result<usize, Fault<'_>> {
    let mut c = Cursor::of(text, farthest);
    let mut points = 0;
    c.skip_blanks();
    if text.trim() == "none" {
        return Ok(0);
    }
    while let Some(command) = c.peek() {
        let Some(takes) = arity(command).filter(|_| points > 0 || matches!(command, b'm' | b'M'))
        else {
            return Err(c.fault());
        };
        c.at += 1;
        c.skip_blanks();
        let mut read = 0;
        while c.begins() && takes > 0 {
            // Flags of an arc need no blank behind them.
            if takes == 7 && matches!(read % 7, 3 | 4) {
                if !matches!(c.peek(), Some(b'0' | b'1')) {
                    return Err(c.fault());
                }
                c.at += 1;
            } else {
                c.number()?;
            }
            read += 1;
            c.skip_blanks();
        }
        if takes > 0 && (read == 0 || read % takes != 0) {
            return Err(c.fault());
        }
        points += (read / 2).max(1);
    }
    Ok(points)
}

/// Points of a polyline or polygon.
pub(super) fn points(text: &str, farthest: f64) -> Result<usize, Fault<'_>> {
    let count = list(text, farthest)?;
    if count % 2 == 1 { Err(Fault::NoNumber("")) } else { Ok(count / 2) }
}

/// Numbers with blanks or commas between them; how many.
pub(super) fn list(text: &str, farthest: f64) -> Result<usize, Fault<'_>> {
    let mut c = Cursor::of(text, farthest);
    let mut count = 0;
    c.skip_blanks();
    while c.peek().is_some() {
        c.number()?;
        count += 1;
        c.skip_blanks();
    }
    Ok(count)
}

/// A length, with a unit or without, or lengths in a list; a word of style stands for none.
pub(super) fn lengths(text: &str, farthest: f64) -> Result<(), Fault<'_>> {
    let trimmed = text.trim();
    if matches!(trimmed, "auto" | "inherit" | "initial" | "unset" | "none") || trimmed.contains('(')
    {
        return Ok(());
    }
    let mut c = Cursor::of(text, farthest);
    c.skip_blanks();
    if c.peek().is_none() {
        return Err(Fault::NoNumber(""));
    }
    while c.peek().is_some() {
        let from = c.at;
        c.number()?;
        let unit = c.at;
        while c.peek().is_some_and(|b| b.is_ascii_alphabetic() || b == b'%') {
            c.at += 1;
        }
        if !UNITS.contains(&&text[unit..c.at]) {
            c.at = from;
            return Err(c.fault());
        }
        c.skip_blanks();
    }
    Ok(())
}

/// Units of lengths.
const UNITS: [&str; 12] = ["", "px", "in", "mm", "cm", "pt", "pc", "em", "ex", "rem", "Q", "%"];

/// Transforms, each with as many numbers as it takes.
pub(super) fn transform(text: &str, farthest: f64) -> Result<(), Fault<'_>> {
    let trimmed = text.trim();
    if trimmed.is_empty() || matches!(trimmed, "none" | "inherit") {
        return Ok(());
    }
    let mut c = Cursor::of(text, farthest);
    c.skip_blanks();
    while c.peek().is_some() {
        let from = c.at;
        while c.peek().is_some_and(|b| b.is_ascii_alphabetic()) {
            c.at += 1;
        }
        let takes: &[usize] = match &text[from..c.at] {
            "matrix" => &[6],
            "translate" | "scale" => &[1, 2],
            "rotate" => &[1, 3],
            "skewX" | "skewY" => &[1],
            _ => {
                c.at = from;
                return Err(c.fault());
            }
        };
        c.skip_blanks();
        if c.peek() != Some(b'(') {
            return Err(c.fault());
        }
        c.at += 1;
        c.skip_blanks();
        let mut read = 0;
        while c.peek().is_some_and(|b| b != b')') {
            c.number()?;
            read += 1;
            c.skip_blanks();
        }
        if c.peek().is_none() || !takes.contains(&read) {
            c.at = from;
            return Err(c.fault());
        }
        c.at += 1;
        c.skip_blanks();
    }
    Ok(())
}

/// The first number of a list, with its unit: where a text begins.
pub(super) fn first(text: &str) -> &str {
    let text = text.trim_start_matches(|c: char| c.is_whitespace() || c == ',');
    text.split(|c: char| c.is_whitespace() || c == ',').next().unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    const FAR: f64 = 1e9;

    #[test]
    fn path_data_as_programs_write_it() {
        for (text, count) in [
            ("M0 0H240V96H0Z", 5),
            (" m 1,2 3,4 z", 3),
            ("M.5.5-1-1", 2),
            ("M1e2-3E-4L+5,6", 2),
            ("M0 0a1 1 0 01.5.5", 4),
            ("M0,0 A 5 5 0 1,0 9,9 5 5 0 0 1 3 3", 8),
            ("", 0),
            ("none", 0),
        ] {
            assert_eq!(path(text, FAR), Ok(count), "{text}");
        }
        for (text, says) in [
            ("M0 0Lx6 5", "x6"),
            ("M0 0H24o", "o"),
            ("L5 5", "L5"),
            ("M0 0L5", ""),
            ("M0 0 L 1 2 3", ""),
            ("M1;2", ";2"),
            ("M0 0L NaN 5", "NaN"),
            ("M0 0L 1.2.3.4e 5", "e"),
        ] {
            assert_eq!(path(text, FAR), Err(Fault::NoNumber(says)), "{text}");
        }
        assert_eq!(path("M0 0H1e39", FAR), Err(Fault::TooFar));
        assert_eq!(path("M0 0H12345678901", FAR), Err(Fault::TooFar));
        assert_eq!(path("M0 0H1000000000", FAR), Ok(2));
    }

    #[test]
    fn lengths_have_units_and_transforms_their_numbers() {
        for good in ["5", "5mm", " 1.5in ", "100%", "auto", "1em 2em", "calc(1px + 2px)"] {
            assert_eq!(lengths(good, FAR), Ok(()), "{good}");
        }
        for bad in ["", "abc", "5 mmm", "1O"] {
            assert!(matches!(lengths(bad, FAR), Err(Fault::NoNumber(_))), "{bad}");
        }
        for good in
            ["translate(5)", "matrix(1 0,0 1 0 0) rotate(90, 1 2)", "", "none", "scale( 1,-1 )"]
        {
            assert_eq!(transform(good, FAR), Ok(()), "{good}");
        }
        for bad in
            ["translate(x)", "scale(1,2,3)", "moved(1)", "rotate(90", "matrix(1 0 0 1 0)", "5"]
        {
            assert!(matches!(transform(bad, FAR), Err(Fault::NoNumber(_))), "{bad}");
        }
        assert_eq!(points("1,2 3,4", FAR), Ok(2));
        assert_eq!(points("1,2 3", FAR), Err(Fault::NoNumber("")));
        assert_eq!(first(" 1.5,2 3"), "1.5");
    }
}
