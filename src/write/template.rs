//! An empty drawing with the agreed layers, for an architect to draw in: R2000, inches.

use crate::model::drawing::{Dash, Drawing, Pen};
use crate::model::linework::Role;
use crate::units::LengthStyle;

/// A layer to be: its role and name.
type Agreed = (Role, &'static str);

/// The least an R2000 drawing must hold (from memory; a general-purpose reader's audit finds
/// nothing to mend in it, as the reference tests show).
const EMPTY: &str = include_str!("template.dxf");

/// The template with those of `layers` whose names are no patterns.
pub fn dxf(layers: &[Agreed]) -> Vec<u8> {
    let mut drawing = Drawing::default();
    for (role, name) in layers.iter().filter(|l| !l.1.contains('*') && l.1 != "DEFPOINTS") {
        drawing.layer(name, pen(*role));
    }
    let inches = super::overlay::Measure { inches: 1.0, style: LengthStyle::Feet };
    super::overlay::spliced(EMPTY.as_bytes(), &drawing, inches).unwrap_or_default()
}

/// Widths of the ISO 128 series (`DrawingFact::LineWidths`, from memory): heavy for walls, thin for
/// the rest.
fn pen(role: Role) -> Pen {
    let (width, dash) = match role {
        Role::Wall | Role::Grade => (0.5, Dash::Solid),
        Role::Window | Role::Door | Role::Roof | Role::Bare | Role::Band => (0.35, Dash::Solid),
        Role::Level => (0.18, Dash::DashDot),
        Role::Frame | Role::InsideCorner => (0.18, Dash::Dashed),
        _ => (0.18, Dash::Solid),
    };
    Pen { width, dash, ..Pen::default() }
}
