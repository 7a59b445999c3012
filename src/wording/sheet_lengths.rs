//! Lengths as sheets write them.

use crate::language::{Language, Said, said};
use crate::units::{LengthStyle, MM_PER_INCH, feet_inches, inches_fraction, sixteenths};

/// A length of a dimension: `12'-6 1/2"`, or whole millimeters without the unit, which a note on
/// the sheet names once.
pub fn length(style: LengthStyle, inches: f64) -> String {
    match style {
        LengthStyle::Feet => feet_inches(inches),
        LengthStyle::Mm => format!("{}", whole_mm(inches)),
    }
}

/// A short length: `7 1/2"`, `191`.
pub fn short(style: LengthStyle, inches: f64) -> String {
    match style {
        LengthStyle::Feet => inches_fraction(inches),
        LengthStyle::Mm => format!("{}", whole_mm(inches)),
    }
}

/// A length to cut, rounded down so that the piece fits (`TakeoffFact::RoundedForSafety`).
pub fn cut(style: LengthStyle, inches: f64) -> String {
    // Sheets say the unit once for all.
    style.cut(inches).trim_end_matches(" mm").to_owned()
}

/// A length that is not parted at the end of a line: `5 1/2"` stands together.
pub fn hard(length: &str) -> String {
    length.replace(' ', "\u{a0}")
}

/// An area to a tenth, with its unit.
pub fn area(lang: Language, square_feet: f64, style: LengthStyle) -> String {
    match style {
        LengthStyle::Feet => say!(lang, "{square_feet:.1} sq ft", "{square_feet:.1} pies cuad."),
        LengthStyle::Mm => format!("{:.1} {}", style.area(square_feet), style.area_unit()),
    }
}

fn whole_mm(inches: f64) -> i64 {
    (inches * MM_PER_INCH + 0.5).floor() as i64
}

/// The parts between places of a string of dimensions, each the difference of places rounded from
/// the string's start, so that the parts sum to the whole exactly.
pub fn string(style: LengthStyle, places: &[f64]) -> Vec<String> {
    let Some(start) = places.first() else { return Vec::new() };
    let rounded = |x: f64| match style {
        LengthStyle::Feet => sixteenths(x - start) as f64 / 16.0,
        LengthStyle::Mm => whole_mm(x - start) as f64 / MM_PER_INCH,
    };
    places.windows(2).map(|p| length(style, rounded(p[1]) - rounded(p[0]))).collect()
}

/// What a sheet says of its lengths.
pub fn unit_note(style: LengthStyle) -> Said {
    match style {
        LengthStyle::Feet => said(
            "Lengths in feet and inches, to 1/16 in.",
            "Medidas en pies y pulgadas, a 1/16 de pulg.",
        ),
        LengthStyle::Mm => said("Lengths in millimeters.", "Medidas en milímetros."),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn parts_of_a_string_sum_to_the_whole_where_each_alone_would_not() {
        // Three thirds of a foot less 1/32 in: each alone rounds up and the sum is 1/16 too much.
        let third = 4.0 + 1.0 / 32.0;
        let places = [0.0, third, 2.0 * third];
        assert_eq!(string(LengthStyle::Feet, &places), ["0'-4 1/16\"", "0'-4\""]);
        assert_eq!(length(LengthStyle::Feet, 2.0 * third), "0'-8 1/16\"");
        assert_eq!(string(LengthStyle::Mm, &[0.0, 36.0, 72.0, 108.0]), ["914", "915", "914"]);
        assert_eq!(length(LengthStyle::Mm, 108.0), "2743");
    }
}
