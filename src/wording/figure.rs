//! Measured figures in words: plain numbers with their unit, fine enough to show what a check found.

use crate::layout::violation::{Allowed, Figure};
use crate::units::{LengthStyle, MM_PER_INCH};

/// Square centimeters in a square inch, exact by definition of the inch.
const SQ_CM_PER_SQ_IN: f64 = (MM_PER_INCH / 10.0) * (MM_PER_INCH / 10.0);

/// A number to so many decimals, without zeros at its end.
pub fn trimmed(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    let text =
        if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

/// A length: `12.25 in`, `311.15 mm`.
pub fn length(inches: f64, style: LengthStyle) -> String {
    let decimals = match style {
        LengthStyle::Feet => 3,
        LengthStyle::Mm => 1,
    };
    format!("{} {}", trimmed(style.number(inches), decimals), style.unit())
}

/// From one length to another: `12 to 24 in`.
pub fn span([from, to]: [f64; 2], style: LengthStyle) -> String {
    let unit = format!(" {}", style.unit());
    format!("{} to {}", length(from, style).trim_end_matches(&unit), length(to, style))
}

/// An angle: `45 degrees`.
pub fn degrees(angle: f64) -> String {
    format!("{} degrees", trimmed(angle, 2))
}

/// A figure with its unit.
pub fn figure(figure: Figure, style: LengthStyle) -> String {
    match figure {
        Figure::Inches(v) => length(v, style),
        Figure::SquareInches(v) => match style {
            LengthStyle::Feet => format!("{} sq in", trimmed(v, 3)),
            LengthStyle::Mm => format!("{} cm2", trimmed(v * SQ_CM_PER_SQ_IN, 2)),
        },
        Figure::SquareFeet(v) => format!("{} {}", trimmed(style.area(v), 3), style.area_unit()),
        Figure::Degrees(v) => degrees(v),
        Figure::Slope(v) => format!("{} sideways for one up", trimmed(v, 4)),
        Figure::Count(n) => n.to_string(),
        Figure::Quantity(v) => trimmed(v, 3),
    }
}

/// What was measured beside what is allowed: `3 in, must be 6 in or more`.
pub fn against(
    measured: Option<Figure>,
    allowed: Option<Allowed>,
    style: LengthStyle,
) -> Option<String> {
    let measured = measured.map(|m| figure(m, style));
    let allowed = allowed.map(|a| match a {
        Allowed::Exactly { figure: f } => format!("must be {}", figure(f, style)),
        Allowed::AtLeast { figure: f } => format!("must be {} or more", figure(f, style)),
        Allowed::AtMost { figure: f } => format!("must be {} or less", figure(f, style)),
        Allowed::Between { least, most } => {
            format!("must be from {} to {}", figure(least, style), figure(most, style))
        }
    });
    match (measured, allowed) {
        (Some(m), Some(a)) => Some(format!("{m}, {a}")),
        (one, other) => one.or(other),
    }
}

#[cfg(test)]
mod tests {
    use super::{Allowed, Figure, against, figure, span};
    use crate::units::LengthStyle::{Feet, Mm};

    #[test]
    fn figures_in_both_styles() {
        assert_eq!(figure(Figure::Inches(12.25), Feet), "12.25 in");
        assert_eq!(figure(Figure::Inches(12.25), Mm), "311.2 mm");
        // Drawn at 960 mm, and brought to the grid of 1/1024 in.
        assert_eq!(figure(Figure::Inches(38703.0 / 1024.0), Mm), "960 mm");
        assert_eq!(figure(Figure::Inches(-0.0001), Feet), "0 in");
        assert_eq!(figure(Figure::Inches(120.0), Feet), "120 in");
        assert_eq!(figure(Figure::SquareInches(1.0), Mm), "6.45 cm2");
        assert_eq!(figure(Figure::Count(100), Feet), "100");
        assert_eq!(span([0.5, 2.0], Feet), "0.5 to 2 in");
    }

    #[test]
    fn what_is_beside_what_may_be() {
        let least = Some(Allowed::AtLeast { figure: Figure::Inches(6.0) });
        let measured = Some(Figure::Inches(3.0));
        assert_eq!(against(measured, least, Feet).unwrap(), "3 in, must be 6 in or more");
        assert_eq!(against(None, least, Feet).unwrap(), "must be 6 in or more");
        assert_eq!(against(measured, None, Feet).unwrap(), "3 in");
        assert_eq!(against(None, None, Feet), None);
    }
}
