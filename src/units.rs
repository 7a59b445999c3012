//! Units of length and how lengths are read and written. Inches inside.

use serde::{Deserialize, Serialize};

/// A unit a drawing may be in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Unit {
    /// Inch, 25.4 mm exactly.
    // DrawingFact::Inch.
    Inch,
    /// Foot, 12 in.
    Foot,
    /// Millimeter.
    Mm,
    /// Centimeter.
    Cm,
    /// Meter.
    M,
}

/// Millimeters in an inch, exact by definition.
// DrawingFact::Inch.
pub const MM_PER_INCH: f64 = 25.4;

impl Unit {
    /// Every unit, for messages.
    pub const ALL: [Unit; 5] = [Unit::Inch, Unit::Foot, Unit::Mm, Unit::Cm, Unit::M];

    /// Inches in one of this unit.
    pub fn inches(self) -> f64 {
        match self {
            Unit::Inch => 1.0,
            Unit::Foot => 12.0,
            Unit::Mm => 1.0 / MM_PER_INCH,
            Unit::Cm => 10.0 / MM_PER_INCH,
            Unit::M => 1000.0 / MM_PER_INCH,
        }
    }

    /// Whether it is of the metric system.
    pub fn is_metric(self) -> bool {
        matches!(self, Unit::Mm | Unit::Cm | Unit::M)
    }

    /// The word a job file uses for it.
    pub fn word(self) -> &'static str {
        match self {
            Unit::Inch => "inch",
            Unit::Foot => "foot",
            Unit::Mm => "mm",
            Unit::Cm => "cm",
            Unit::M => "m",
        }
    }

    /// The unit that a job file uses this word for.
    pub fn named(word: &str) -> Option<Unit> {
        Unit::ALL.into_iter().find(|u| u.word() == word)
    }

    /// How lengths of a drawing in this unit are told.
    pub fn style(self) -> LengthStyle {
        match self {
            Unit::Inch | Unit::Foot => LengthStyle::Feet,
            Unit::Mm | Unit::Cm | Unit::M => LengthStyle::Mm,
        }
    }

    /// The unit of a `$INSUNITS` code (DXF reference); `None` for unitless and for units no house is
    /// drawn in.
    // DrawingFact::UnitCodes.
    pub fn from_insunits(code: i32) -> Option<Unit> {
        match code {
            1 => Some(Unit::Inch),
            2 => Some(Unit::Foot),
            4 => Some(Unit::Mm),
            5 => Some(Unit::Cm),
            6 => Some(Unit::M),
            _ => None,
        }
    }
}

/// A number with its noun: `1 item`, `3 items`.
pub fn counted(n: usize, one: &str) -> String {
    format!("{n} {one}{}", if n == 1 { "" } else { "s" })
}

/// Whole sixteenths nearest to a length in inches; half and over goes up (NAVEDTRA 14044).
// DrawingFact::RoundHalfUp.
pub fn sixteenths(inches: f64) -> i64 {
    (inches * 16.0 + 0.5).floor() as i64
}

/// Feet, inches and a reduced fraction to the nearest 1/16: `12'-6 1/2"`.
// DrawingFact::FeetInches, TakeoffFact::RoundedForSafety.
pub fn feet_inches(inches: f64) -> String {
    let n = sixteenths(inches.abs());
    let sign = if inches < 0.0 && n != 0 { "-" } else { "" };
    let rest = n % 192;
    // A fraction never follows the dash alone: 7'-0 3/4".
    let zero = if rest > 0 && rest < 16 { "0 " } else { "" };
    format!("{sign}{}'-{zero}{}\"", n / 192, whole_and_fraction(rest))
}

/// Inches and a reduced fraction to the nearest 1/16: `7 1/2"`.
pub fn inches_fraction(inches: f64) -> String {
    let n = sixteenths(inches.abs());
    let sign = if inches < 0.0 && n != 0 { "-" } else { "" };
    format!("{sign}{}\"", whole_and_fraction(n))
}

fn whole_and_fraction(n: i64) -> String {
    let (whole, part) = (n / 16, n % 16);
    if part == 0 {
        return whole.to_string();
    }
    let shift = part.trailing_zeros();
    let fraction = format!("{}/{}", part >> shift, 16 >> shift);
    if whole == 0 { fraction } else { format!("{whole} {fraction}") }
}

/// How tables and reports write lengths.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema,
)]
#[serde(rename_all = "lowercase")]
pub enum LengthStyle {
    /// Feet, inches and sixteenths; square feet.
    #[default]
    Feet,
    /// Millimeters; square meters.
    Mm,
}

/// Two steps of the grid of drawings, inches.
const GRID: f64 = 1.0 / 512.0;

/// Square feet in a square meter: 0.3048 m to the foot, exactly.
// DrawingFact::Inch.
pub const SQ_FT_PER_M2: f64 = 1.0 / (0.3048 * 0.3048);

impl LengthStyle {
    /// A length: `12'-6 1/2"`, `3823 mm`.
    pub fn length(self, inches: f64) -> String {
        match self {
            LengthStyle::Feet => feet_inches(inches),
            LengthStyle::Mm => format!("{} mm", (inches * MM_PER_INCH + 0.5).floor()),
        }
    }

    /// A short length, to a sixteenth or a millimeter, to a tenth of what is under 3 mm: `7 1/2"`, `191 mm`.
    pub fn short(self, inches: f64) -> String {
        match self {
            LengthStyle::Feet => inches_fraction(inches),
            LengthStyle::Mm if inches.abs() * MM_PER_INCH >= 3.0 => self.length(inches),
            LengthStyle::Mm => format!("{} mm", (inches * MM_PER_INCH * 10.0).round() / 10.0),
        }
    }

    /// Width by height: `3'-0" x 4'-0"`, `914 x 1219 mm`.
    pub fn size(self, width: f64, height: f64) -> String {
        match self {
            LengthStyle::Feet => format!("{} x {}", feet_inches(width), feet_inches(height)),
            LengthStyle::Mm => {
                let width = self.length(width);
                format!("{} x {}", width.trim_end_matches(" mm"), self.length(height))
            }
        }
    }

    /// A length to cut, rounded down so that the piece fits.
    // TakeoffFact::RoundedForSafety.
    pub fn cut(self, inches: f64) -> String {
        self.length(self.to_cut(inches))
    }

    /// The same in inches: down to a mark of the tape. What lacks no more of a mark than two steps of the
    /// grid that drawings are read on, 1/512 in, is that mark: a slope reckoned from points of the
    /// grid would else be cut 1/16 in shorter than its mirror image.
    pub fn to_cut(self, inches: f64) -> f64 {
        ((inches + GRID) * self.marks()).floor() / self.marks()
    }

    /// The nearest mark of the tape, in inches; half and over goes up (NAVEDTRA 14044).
    // DrawingFact::RoundHalfUp.
    pub fn to_mark(self, inches: f64) -> f64 {
        (inches * self.marks() + 0.5).floor() / self.marks()
    }

    /// Marks of a tape to the inch: sixteenths, or millimeters.
    fn marks(self) -> f64 {
        match self {
            LengthStyle::Feet => 16.0,
            LengthStyle::Mm => MM_PER_INCH,
        }
    }

    /// The unit of plain numbers.
    pub fn unit(self) -> &'static str {
        match self {
            LengthStyle::Feet => "in",
            LengthStyle::Mm => "mm",
        }
    }

    /// A length as a plain number in that unit: millimeters to a tenth, so that what was drawn at
    /// 960 mm and lies on the grid of 1/1024 in at 959.991 is 960 again; inches that are no 64ths to a
    /// thousandth, which is about as fine as the grid.
    pub fn number(self, inches: f64) -> f64 {
        match self {
            LengthStyle::Feet if (inches * 64.0).fract() == 0.0 => inches,
            LengthStyle::Feet => (inches * 1000.0).round() / 1000.0,
            LengthStyle::Mm => (inches * MM_PER_INCH * 10.0).round() / 10.0,
        }
    }

    /// The unit of areas.
    pub fn area_unit(self) -> &'static str {
        match self {
            LengthStyle::Feet => "sq ft",
            LengthStyle::Mm => "m2",
        }
    }

    /// Square feet as a plain number in that unit.
    pub fn area(self, square_feet: f64) -> f64 {
        match self {
            LengthStyle::Feet => square_feet,
            LengthStyle::Mm => square_feet / SQ_FT_PER_M2,
        }
    }
}

/// Reads a length: `12'-6 1/2"`, `12' 6 1/2`, `12-6`, `12ft 6in`, `150`, `150.5"`, `6 1/2`,
/// `3810mm`. A bare number is taken as `bare`; the result is inches. `None` if it is no length.
pub fn parse_length(text: &str, bare: Unit) -> Option<f64> {
    let t = text.trim().to_ascii_lowercase().replace(['′', '’'], "'").replace(['″', '”'], "\"");
    let (sign, t) = match t.strip_prefix('-') {
        Some(rest) => (-1.0, rest.trim().to_owned()),
        None => (1.0, t),
    };
    for (suffix, unit) in [("mm", Unit::Mm), ("cm", Unit::Cm), ("m", Unit::M)] {
        if let Some(n) = t.strip_suffix(suffix) {
            return Some(sign * plain(n)? * unit.inches());
        }
    }
    let t = t.replace("feet", "'").replace("ft", "'").replace("inches", "\"");
    let t = t.replace("inch", "\"").replace("in", "\"").replace("''", "\"");
    if let Some((feet, rest)) = t.split_once('\'') {
        let rest = rest.trim().trim_start_matches('-').trim();
        let inches = if rest.is_empty() { 0.0 } else { mixed(rest.trim_end_matches('"'))? };
        return Some(sign * (plain(feet)? * 12.0 + inches));
    }
    if let Some(n) = plain(&t) {
        return Some(sign * n * bare.inches());
    }
    let t = t.strip_suffix('"').unwrap_or(&t);
    // `6-1/2` is inches with a fraction; `12-6` and `12-6-1/2` begin with feet.
    if let Some(inches) = mixed(t) {
        return Some(sign * inches);
    }
    let (feet, inches) = t.split_once('-')?;
    Some(sign * (plain(feet)? * 12.0 + mixed(inches)?))
}

fn plain(t: &str) -> Option<f64> {
    let t = t.trim();
    let digits = !t.is_empty() && t.chars().all(|c| c.is_ascii_digit() || c == '.');
    if digits { t.parse().ok() } else { None }
}

/// A number, a fraction, or both with a space or dash between.
fn mixed(t: &str) -> Option<f64> {
    let t = t.trim();
    if let Some(n) = plain(t) {
        return Some(n);
    }
    let (whole, fraction) = match t.split_once([' ', '-']) {
        Some((w, f)) => (plain(w)?, f.trim()),
        None => (0.0, t),
    };
    let (top, bottom) = fraction.split_once('/')?;
    let bottom = plain(bottom).filter(|b| *b > 0.0)?;
    Some(whole + plain(top)? / bottom)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rounds_half_a_sixteenth_up() {
        // DrawingFact::RoundHalfUp (NAVEDTRA 14044): 0.12 in x 16 = 1.92, so 2/16 = 1/8.
        assert_eq!(inches_fraction(0.12), "1/8\"");
        assert_eq!(inches_fraction(1.0 / 32.0), "1/16\"");
    }

    #[test]
    fn writes_feet_and_inches_as_drafters_do() {
        // DrawingFact::FeetInches, Example::RafterOfSeven: 111.140 in is 9 ft 3 1/8 in.
        assert_eq!(feet_inches(150.5), "12'-6 1/2\"");
        assert_eq!(feet_inches(7.5), "0'-7 1/2\"");
        assert_eq!(feet_inches(84.75), "7'-0 3/4\"");
        assert_eq!(feet_inches(84.0), "7'-0\"");
        assert_eq!(feet_inches(111.140), "9'-3 1/8\"");
        assert_eq!(feet_inches(11.99), "1'-0\"");
        assert_eq!(feet_inches(-6.25), "-0'-6 1/4\"");
    }

    #[test]
    fn metric_is_exact_and_cuts_go_down() {
        // 12 ft 6 in is 3810 mm, one square 9.290304 m2 (TakeoffFact::Square).
        assert_eq!(LengthStyle::Mm.length(150.0), "3810 mm");
        // A 3040 window (TakeoffFact::CallSizes).
        assert_eq!(LengthStyle::Mm.size(36.0, 48.0), "914 x 1219 mm");
        assert_eq!(LengthStyle::Feet.size(36.0, 48.0), "3'-0\" x 4'-0\"");
        assert_eq!(LengthStyle::Mm.cut(150.03), "3810 mm");
        assert_eq!(LengthStyle::Feet.cut(150.06), "12'-6\"");
        // 1/1000 in off the grid's noise is no sixteenth less.
        assert_eq!(LengthStyle::Feet.cut(65.4998), "5'-5 1/2\"");
        assert_eq!(LengthStyle::Feet.cut(65.497), "5'-5 7/16\"");
        assert!((LengthStyle::Mm.area(100.0) - 9.290304).abs() < 1e-12);
    }

    #[test]
    fn reads_every_usual_spelling() {
        for t in ["12'-6 1/2\"", "12' 6 1/2\"", "12'6-1/2", "12ft 6.5in", "150.5", "12-6 1/2"] {
            assert_eq!(parse_length(t, Unit::Inch), Some(150.5), "{t}");
        }
        for t in
            ["12'-6\"", "12-6", "12-6\"", "12' 6", "12.5ft", "12.5'", "150 in", "381 cm", "3.81m"]
        {
            assert_eq!(parse_length(t, Unit::Inch), Some(150.0), "{t}");
        }
        for t in ["6-1/2", "6-1/2\"", "6 1/2\"", "6.5", "0-6 1/2", "0'-6 1/2\"", "13/2"] {
            assert_eq!(parse_length(t, Unit::Inch), Some(6.5), "{t}");
        }
        assert_eq!(parse_length("12-6-1/2\"", Unit::Inch), Some(150.5));
        assert_eq!(parse_length("-12-6", Unit::Inch), Some(-150.0));
        assert_eq!(parse_length("3810mm", Unit::Inch), Some(150.0));
        assert_eq!(parse_length("3810", Unit::Mm), Some(150.0));
        assert_eq!(parse_length("6 1/2", Unit::Inch), Some(6.5));
        for t in ["", "x", "12'x", "1/0", "--3", "nan", "inf", "1e9", "12-", "-", "1-2-3"] {
            assert_eq!(parse_length(t, Unit::Inch), None, "{t}");
        }
    }
}
