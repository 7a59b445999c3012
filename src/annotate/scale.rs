//! Paper sizes and drawing scales.

use crate::units::LengthStyle;
use crate::units::{Unit, parse_length};

/// A paper by its name, landscape, inches (FACTS DR-34 to DR-36).
pub(super) fn paper(name: &str) -> (f64, f64) {
    let mm = |a: f64, b: f64| (a / 25.4, b / 25.4);
    let key: String = name.to_uppercase().chars().filter(|c| c.is_alphanumeric()).collect();
    match key.as_str() {
        "ARCHA" => (12.0, 9.0),
        "ARCHC" => (24.0, 18.0),
        "ARCHD" => (36.0, 24.0),
        "ANSIA" => (11.0, 8.5),
        "ANSIB" => (17.0, 11.0),
        "ANSIC" => (22.0, 17.0),
        "ANSID" => (34.0, 22.0),
        "A4" => mm(297.0, 210.0),
        "A3" => mm(420.0, 297.0),
        "A2" => mm(594.0, 420.0),
        "A1" => mm(841.0, 594.0),
        // ARCH B, the default; the job's check refuses names that are not listed.
        _ => (18.0, 12.0),
    }
}

/// A scale: how it is written, and house inches in one paper inch.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Scale {
    pub words: String,
    pub factor: f64,
}

/// Architectural scales, largest first (FACTS DR-32).
const FEET: [(&str, f64); 11] = [
    ("3\" = 1'-0\"", 4.0),
    ("1 1/2\" = 1'-0\"", 8.0),
    ("1\" = 1'-0\"", 12.0),
    ("3/4\" = 1'-0\"", 16.0),
    ("1/2\" = 1'-0\"", 24.0),
    ("3/8\" = 1'-0\"", 32.0),
    ("1/4\" = 1'-0\"", 48.0),
    ("3/16\" = 1'-0\"", 64.0),
    ("1/8\" = 1'-0\"", 96.0),
    ("3/32\" = 1'-0\"", 128.0),
    ("1/16\" = 1'-0\"", 192.0),
];
/// Metric scales, largest first (FACTS DR-33 and the rest of ISO 5455's series, from memory).
const METRIC: [f64; 8] = [5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0];

/// The largest scale at which `width` x `height` house inches fit a room of paper inches; the
/// job's own scale if it names one.
pub(super) fn fit(
    size: (f64, f64),
    room: (f64, f64),
    style: LengthStyle,
    fixed: Option<&str>,
) -> Scale {
    if let Some(s) = fixed.and_then(parse) {
        return s;
    }
    let fits = |f: f64| size.0 / f <= room.0 && size.1 / f <= room.1;
    match style {
        LengthStyle::Feet => FEET
            .iter()
            .find(|(_, f)| fits(*f))
            .map(|(w, f)| Scale { words: (*w).to_owned(), factor: *f })
            .unwrap_or_else(|| unnamed(size, room)),
        LengthStyle::Mm => METRIC
            .iter()
            .find(|f| fits(**f))
            .map(|f| Scale { words: format!("1:{f}"), factor: *f })
            .unwrap_or_else(|| unnamed(size, room)),
    }
}

fn unnamed(size: (f64, f64), room: (f64, f64)) -> Scale {
    let factor = (size.0 / room.0).max(size.1 / room.1).ceil();
    Scale { words: format!("1:{factor}"), factor }
}

/// Reads `1/4" = 1'-0"` or `1:50`.
pub(super) fn parse(text: &str) -> Option<Scale> {
    let positive = |v: f64| (v.is_finite() && v > 0.0).then_some(v);
    let factor = if let Some((a, b)) = text.split_once(':') {
        positive(b.trim().parse::<f64>().ok()? / a.trim().parse::<f64>().ok()?)?
    } else {
        let (a, b) = text.split_once('=')?;
        positive(parse_length(b, Unit::Inch)? / parse_length(a, Unit::Inch)?)?
    };
    Some(Scale { words: text.trim().to_owned(), factor })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_house_of_48_feet_goes_on_arch_b_at_a_quarter_inch() {
        let s = fit((576.0 + 96.0, 228.0 + 96.0), (16.8, 9.0), LengthStyle::Feet, None);
        assert_eq!(s.factor, 48.0);
        assert_eq!(parse("1/4\" = 1'-0\"").unwrap().factor, 48.0); // FACTS DR-32
        assert_eq!(parse("1:50").unwrap().factor, 50.0);
        assert!(parse("x").is_none());
    }
}
