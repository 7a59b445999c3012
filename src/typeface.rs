//! The one typeface of every sheet, vendored with its license under `src/typeface/`, so that text
//! is the same on every machine. `ttf-parser` is named here alone.

use std::sync::OnceLock;

/// Family name, as SVG text names it.
pub const FAMILY: &str = "Lapwright Sans";
/// Regular weight.
pub const REGULAR: &[u8] = include_bytes!("typeface/sans-Regular.ttf");
/// Bold weight.
pub const BOLD: &[u8] = include_bytes!("typeface/sans-Bold.ttf");

/// Height of capitals as a share of the font size, from the font's own table.
pub const CAPITALS: f64 = 0.714;
/// How far letters reach below the baseline, as a share of the font size.
pub const DESCENT: f64 = 0.293;

/// The parsed typeface, read once.
fn face(bold: bool) -> Option<&'static ttf_parser::Face<'static>> {
    static FACES: OnceLock<[Option<ttf_parser::Face<'static>>; 2]> = OnceLock::new();
    let faces = FACES.get_or_init(|| [REGULAR, BOLD].map(|b| ttf_parser::Face::parse(b, 0).ok()));
    faces[usize::from(bold)].as_ref()
}

/// Width of a line whose capitals are `height` high, in the unit of `height`. A character the font
/// lacks counts as one en.
pub fn width(text: &str, height: f64, bold: bool) -> f64 {
    let Some(face) = face(bold) else {
        return 0.6 * height * text.chars().count() as f64 / CAPITALS;
    };
    let plain = plain(bold);
    let each = |c: char| plain.get(c as usize).copied().unwrap_or_else(|| advance(face, c));
    text.chars().map(each).sum::<f64>() * height / CAPITALS
}

/// How far a character moves on, as a share of the font size.
fn advance(face: &ttf_parser::Face, c: char) -> f64 {
    let em = f64::from(face.units_per_em());
    face.glyph_index(c).and_then(|g| face.glyph_hor_advance(g)).map_or(0.5, |a| f64::from(a) / em)
}

/// The same of every plain character, looked up once: marks are tried in many places.
fn plain(bold: bool) -> &'static [f64] {
    static PLAIN: OnceLock<[Vec<f64>; 2]> = OnceLock::new();
    let of = |bold| {
        let all = |f| (0u8..128).map(|c| advance(f, char::from(c))).collect();
        face(bold).map(all).unwrap_or_default()
    };
    &PLAIN.get_or_init(|| [false, true].map(of))[usize::from(bold)]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bold_is_wider_and_width_grows_with_height() {
        let t = "F1-12-2";
        assert!(width(t, 1.0, true) > width(t, 1.0, false));
        assert!((width(t, 2.0, false) - 2.0 * width(t, 1.0, false)).abs() < 1e-9);
    }
}
