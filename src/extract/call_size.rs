//! Sizes of windows and doors that a text states: a tag, or the name of a block.

use crate::units::Unit;

/// Widths and heights that openings have, inches: a vent to a pair of overhead doors (common practice, no
/// source).
const WIDE: std::ops::RangeInclusive<f64> = 12.0..=240.0;
const HIGH: std::ops::RangeInclusive<f64> = 12.0..=144.0;

/// A size as a text states it.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct CallSize {
    /// The part of the text that states it.
    pub(super) text: String,
    /// Width, inches.
    pub(super) width: f64,
    /// Height, inches.
    pub(super) height: f64,
    /// Four figures, which may be a number of something else as well.
    pub(super) figures: bool,
}

/// The size that a text states: width by height as `36x80`, `900 x 2100`, `2'-8" x 6'-8"`, or in feet and
/// inches as `3068` (`TakeoffFact::CallSizes`). Bare figures are of the drawing's measure. Names of files
/// and blocks may have `_` for the marks that these must not hold.
pub(super) fn of_text(text: &str, unit: Unit) -> Option<CallSize> {
    let letters: String = text.chars().take(MOST).collect();
    by_cross(&letters, unit).or_else(|| by_figures(&letters))
}

/// Most letters of a text that are looked at.
const MOST: usize = 120;

fn sized(text: &str, width: f64, height: f64, figures: bool) -> Option<CallSize> {
    let text = text.trim().to_owned();
    let fits = WIDE.contains(&width) && HIGH.contains(&height);
    fits.then_some(CallSize { text, width, height, figures })
}

/// `3068`, alone or as a word of a name, with two letters behind it at most.
fn by_figures(text: &str) -> Option<CallSize> {
    text.split(|c: char| !c.is_ascii_alphanumeric()).find_map(|word| {
        let figures: Vec<f64> = word.chars().map_while(|c| c.to_digit(10)).map(f64::from).collect();
        let [a, b, c, d] = figures[..] else { return None };
        let kind = &word[4..];
        let plain = kind.len() <= 2 && kind.chars().all(|c| c.is_ascii_alphabetic());
        sized(&word[..4], 12.0 * a + b, 12.0 * c + d, true).filter(|_| plain)
    })
}

/// Width and height with a cross between.
fn by_cross(text: &str, unit: Unit) -> Option<CallSize> {
    let crosses = text.char_indices().filter(|(_, c)| matches!(c, 'x' | 'X' | '×'));
    crosses.into_iter().find_map(|(at, c)| {
        let (left, right) = (&text[..at], &text[at + c.len_utf8()..]);
        let (from, width) = ending(left.trim_end())?;
        let blank = right.len() - right.trim_start().len();
        let (height, used) = length(right.trim_start())?;
        let (width, height) = (in_inches(&width, unit)?, in_inches(&height, unit)?);
        let until = at + c.len_utf8() + blank + used;
        sized(&text[from..until], width, height, false)
    })
}

/// A length as written.
struct Written {
    value: f64,
    /// Its unit, where it is told.
    unit: Option<Unit>,
}

fn in_inches(w: &Written, unit: Unit) -> Option<f64> {
    let bare = match unit {
        Unit::Inch | Unit::Foot => Unit::Inch,
        // A door of 900 is one in millimeters, one of 90 in centimeters.
        Unit::Mm | Unit::Cm | Unit::M if w.value >= 300.0 => Unit::Mm,
        _ => Unit::Cm,
    };
    // Four figures are millimeters, whatever the drawing is in.
    let bare = if w.value >= 400.0 { Unit::Mm } else { bare };
    Some(w.value * w.unit.unwrap_or(bare).inches()).filter(|l| l.is_finite())
}

/// The length that a text ends with, and where it begins: the longest that there is.
fn ending(text: &str) -> Option<(usize, Written)> {
    let starts = text.char_indices().filter(|(i, c)| {
        let before = text[..*i].chars().next_back();
        let inside = before.is_some_and(|b| b.is_ascii_alphanumeric() || ".'/_".contains(b));
        c.is_ascii_digit() && !inside
    });
    starts.into_iter().find_map(|(i, _)| {
        let (written, used) = length(&text[i..])?;
        (i + used == text.len()).then_some((i, written))
    })
}

/// A number at the beginning of a text, and its letters.
fn number(text: &str) -> Option<(f64, usize)> {
    let end = text.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(text.len());
    Some((text[..end].parse().ok()?, end))
}

/// `3/8` or `3_8` behind a dash or a blank, with its letters.
fn fraction(text: &str) -> Option<(f64, usize)> {
    let (top, a) = number(text.strip_prefix(['-', ' '])?)?;
    let (bottom, b) = number(text[1 + a..].strip_prefix(['/', '_'])?)?;
    (bottom > top && top > 0.0).then_some((top / bottom, 2 + a + b))
}

/// Inches with a fraction and a mark, and their letters.
fn inches(text: &str) -> Option<(f64, usize, bool)> {
    let (whole, mut used) = number(text)?;
    let mut value = whole;
    if let Some((part, more)) = fraction(&text[used..]) {
        (value, used) = (value + part, used + more);
    }
    let marked = text[used..].starts_with(['"', '_', '″', '”']);
    let mark = text[used..].chars().next().filter(|_| marked).map_or(0, char::len_utf8);
    Some((value, used + mark, marked || used > number(text)?.1))
}

/// A length at the beginning of a text, and its letters.
fn length(text: &str) -> Option<(Written, usize)> {
    let (first, end) = number(text)?;
    let rest = &text[end..];
    for (word, unit) in [("mm", Unit::Mm), ("cm", Unit::Cm), ("m", Unit::M)] {
        let after = rest.trim_start();
        let ends = |t: &str| !t.starts_with(|c: char| c.is_ascii_alphabetic());
        if let Some(behind) = after.strip_prefix(word).filter(|b| ends(b)) {
            return Some((Written { value: first, unit: Some(unit) }, text.len() - behind.len()));
        }
    }
    let feet = rest.strip_prefix(['\'', '′', '’']).or_else(|| {
        // A mark that became `_` is of feet where inches follow.
        rest.strip_prefix('_').filter(|r| r.trim_start_matches(['-', ' ']).len() < r.len()).filter(
            |r| {
                r.trim_start_matches(['-', ' ']).starts_with(|c: char| c.is_ascii_digit())
                    && !r.starts_with('-')
            },
        )
    });
    if let Some(behind) = feet {
        let gap = behind.trim_start_matches(['-', ' ']);
        let more = inches(gap).filter(|(v, ..)| *v < 12.0);
        let (value, used) = more.map_or((0.0, text.len() - behind.len()), |(v, used, _)| {
            (v, text.len() - gap.len() + used)
        });
        return Some((Written { value: 12.0 * first + value, unit: Some(Unit::Inch) }, used));
    }
    let (value, used, told) = inches(text)?;
    Some((Written { value, unit: told.then_some(Unit::Inch) }, used))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sizes_are_read_out_of_tags_and_names_of_blocks() {
        for (text, unit, width, height) in [
            ("36x80", Unit::Inch, 36.0, 80.0),
            ("WIN 36\" X 48\"", Unit::Inch, 36.0, 48.0),
            ("2'-8\" x 6'-8\"", Unit::Inch, 32.0, 80.0),
            ("3'x6'-8\"", Unit::Inch, 36.0, 80.0),
            ("Single - 32_ x 84_-211058-South", Unit::Inch, 32.0, 84.0),
            ("Awning - 28-3_8_ x 20-1_2_-1121774", Unit::Inch, 28.375, 20.5),
            ("Door - 3_ 0-1_8_ x 7_ 11-1_2_-4246", Unit::Inch, 36.125, 95.5),
            ("900x2100", Unit::Mm, 900.0 / 25.4, 2100.0 / 25.4),
            ("900 × 2100 mm", Unit::Inch, 900.0 / 25.4, 2100.0 / 25.4),
            ("90x210", Unit::Cm, 900.0 / 25.4, 2100.0 / 25.4),
            ("DOOR_3068", Unit::Inch, 36.0, 80.0),
            ("2840SH", Unit::Inch, 32.0, 48.0),
        ] {
            let size = of_text(text, unit).map(|s| (s.width, s.height));
            let near =
                size.is_some_and(|s| (s.0 - width).abs() < 1e-9 && (s.1 - height).abs() < 1e-9);
            assert!(near, "{text}: {size:?}");
        }
        for text in ["3_5x8", "2x4 TRIM", "ABC3180", "W-12", "142", "30681", "x", "EXIT"] {
            assert_eq!(of_text(text, Unit::Inch), None, "{text}");
        }
    }
}
