//! Lengths that the text of a dimension states.

use crate::units::{Unit, parse_length};

/// What drafters put round a figure.
const ROUND: [char; 8] = ['(', ')', '~', '±', '≈', '[', ']', ' '];

/// The length that a text states with its unit, inches: `8'-0"`, `2600 mm`.
fn with_unit(text: &str) -> Option<f64> {
    let marked = text.contains(['\'', '"', '′', '″', '’', '”']);
    let low = text.to_ascii_lowercase();
    let named = ["mm", "cm", "m", "ft", "in"].iter().any(|u| low.ends_with(u));
    (marked || named).then(|| parse_length(text, Unit::Inch)).flatten()
}

/// A bare figure, with point or comma, and its decimals.
fn bare(text: &str) -> Option<(f64, usize)> {
    let text = text.replace(',', ".");
    let plain = !text.is_empty() && text.chars().all(|c| c.is_ascii_digit() || c == '.');
    let value = text.parse().ok().filter(|_| plain)?;
    Some((value, text.split_once('.').map_or(0, |(_, d)| d.len())))
}

/// The length that a text proves a unit by, inches: one with its unit, or a bare metric figure, meters with
/// decimals or four figures of millimeters (ISO 129-1's and trade custom, from memory). Others may be of
/// any unit.
pub(super) fn sure(text: &str) -> Option<f64> {
    let text = text.trim_matches(ROUND);
    if let Some(length) = with_unit(text) {
        return Some(length);
    }
    let (value, decimals) = bare(text)?;
    let unit = match decimals {
        2 | 3 if value < 40.0 => Unit::M,
        0 if (1000.0..100_000.0).contains(&value) => Unit::Mm,
        _ => return None,
    };
    Some(value * unit.inches()).filter(|l| *l > 0.0)
}

/// The length that the picture of a dimension proves a unit by, inches, where `drawn` units are measured: a
/// bare figure of what is measured says nothing more than the drawing does.
pub(super) fn sure_of_picture(text: &str, drawn: f64) -> Option<f64> {
    let figure = bare(text.trim_matches(ROUND)).map(|(value, _)| value);
    let again = figure.is_some_and(|value| (value - drawn).abs() <= 0.01 * drawn);
    sure(text).filter(|_| !again)
}

/// The length that a text states, inches, where `drawn` is what it measures: a bare figure may be of the
/// drawing's `unit`, or metric; of these the nearest.
pub(super) fn nearest(text: &str, unit: Unit, drawn: f64) -> Option<f64> {
    let text = text.trim_matches(ROUND);
    let Some((value, decimals)) = bare(text).filter(|_| with_unit(text).is_none()) else {
        return parse_length(text, unit);
    };
    let metric: &[Unit] = match decimals {
        0 => &[Unit::Mm, Unit::Cm],
        1 => &[Unit::Cm, Unit::M],
        _ => &[Unit::M],
    };
    let of = |u: &Unit| value * u.inches();
    let own = of(&unit);
    let all = metric.iter().map(of);
    // A figure that fits in no unit is told in the drawing's own.
    let fits = |l: &f64| (l - drawn).abs() <= 0.01 * drawn;
    Some(
        all.filter(fits)
            .fold(own, |a, b| if (b - drawn).abs() < (a - drawn).abs() { b } else { a }),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(a: Option<f64>, b: f64) -> bool {
        a.is_some_and(|a| (a - b).abs() < 1e-9)
    }

    #[test]
    fn texts_prove_a_unit_by_their_own_or_by_metric_custom() {
        assert!(near(sure("8'-6\""), 102.0));
        assert!(near(sure("(2600 mm)"), 2600.0 / 25.4));
        assert!(near(sure("3.10"), 3100.0 / 25.4));
        assert!(near(sure("3,10"), 3100.0 / 25.4));
        assert!(near(sure("2600"), 2600.0 / 25.4));
        for text in ["96", "260", "12.5", "EQ", ""] {
            assert_eq!(sure(text), None, "{text}");
        }
    }

    #[test]
    fn the_picture_of_a_dimension_proves_a_unit_unless_it_says_what_is_drawn() {
        assert!(near(sure_of_picture("9'-2\"", 110.0), 110.0));
        // 280 units lettered 2800: centimeters, dimensioned in millimeters.
        assert!(near(sure_of_picture("2800", 280.0), 2800.0 / 25.4));
        for (text, drawn) in [("2800", 2800.0), ("12.50", 12.5), ("110", 110.0)] {
            assert_eq!(sure_of_picture(text, drawn), None, "{text}");
        }
    }

    #[test]
    fn a_bare_figure_is_read_in_the_unit_in_which_it_fits() {
        // 3.10 m and 2600 mm in drawings of inches; 20 ft as a bare 240.
        assert!(near(nearest("3.10", Unit::Inch, 122.047), 3100.0 / 25.4));
        assert!(near(nearest("2600", Unit::M, 102.36), 2600.0 / 25.4));
        assert!(near(nearest("240", Unit::Inch, 240.0), 240.0));
        // One that fits nowhere is the drawing's own.
        assert!(near(nearest("300", Unit::Inch, 240.0), 300.0));
    }
}
