//! Colors and line weights as a DXF writes them.

use opendwg::Color;

use super::pairs::Pairs;

/// Line weights by their index, hundredths of a millimeter (DXF reference, group 370).
// DrawingFact::LineWeightIndex.
const WEIGHTS: [i64; 24] = [
    0, 5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100, 106, 120, 140, 158, 200,
    211,
];

/// Group 370: what it weighs, or by what (layer -1, block -2, the default -3).
pub(super) fn weight(pairs: &mut Pairs, index: u8) {
    let value = match index {
        29 => -1,
        30 => -2,
        index => WEIGHTS.get(usize::from(index)).copied().unwrap_or(-3),
    };
    pairs.int(370, value);
}

/// Group 62, negative where a layer is off, and 420 for a true color.
pub(super) fn color(pairs: &mut Pairs, color: &Color, off: bool) {
    let sign = if off { -1 } else { 1 };
    // A true color has an index beside it, for readers that know no other; white stands for any.
    const WHITE: i64 = 7;
    match color {
        Color::ByBlock => pairs.int(62, 0),
        Color::ByLayer => pairs.int(62, if off { -WHITE } else { 256 }),
        Color::Index(index) => pairs.int(62, sign * i64::from(*index)),
        Color::Rgb { r, g, b } => {
            pairs.int(62, sign * WHITE);
            pairs.int(420, i64::from(u32::from_be_bytes([0, *r, *g, *b])));
        }
        Color::Book { rgb, .. } => {
            pairs.int(62, sign * WHITE);
            pairs.int(420, i64::from(rgb & 0x00ff_ffff));
        }
        _ => pairs.int(62, sign * WHITE),
    }
}
