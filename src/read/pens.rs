//! Names of pens: what stands in for layers where a print or a drawing program has none.

/// The name of a pen: `stroke 0.24 pt gray 77 %`, `stroke 0.5 #c80000`, `fill black`. A width, in the source's
/// own units, stands with the sign of its unit, if it has one; none makes a fill. Color is red, green, blue.
pub(super) fn name(width: Option<(f64, &str)>, color: [u8; 3]) -> String {
    let color = match color {
        [0, 0, 0] => "black".to_owned(),
        [255, 255, 255] => "white".to_owned(),
        [r, g, b] if r == g && g == b => format!("gray {:.0} %", f64::from(r) / 2.55),
        [r, g, b] => format!("#{r:02x}{g:02x}{b:02x}"),
    };
    match width {
        Some((width, unit)) => {
            format!("stroke {}{unit} {color}", (width * 100.0).round() / 100.0)
        }
        None => format!("fill {color}"),
    }
}
