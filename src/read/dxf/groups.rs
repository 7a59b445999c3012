//! The group pairs of one entity and what is asked of them.

use super::number::{NumberFault, fault_of};
use super::tags::Tag;
use super::text::Decoder;
use crate::geom::vocabulary::{Affine, Point};
use crate::model::drawing::Ink;

/// The group pairs of one entity.
#[derive(Clone, Copy, Debug)]
pub(super) struct Groups<'a, 't> {
    /// Type and values, the leading 0 pair first.
    pub tags: &'t [Tag<'a>],
    /// How strings are decoded.
    pub decoder: Decoder,
}

impl<'a> Groups<'a, '_> {
    pub(super) fn get(&self, code: i32) -> Option<&Tag<'a>> {
        self.tags.iter().find(|t| t.code == code)
    }

    /// The first value that should be a number and is none, or none that is held.
    pub(super) fn number_fault(&self) -> Option<NumberFault<'a>> {
        self.tags.iter().find_map(fault_of)
    }

    pub(super) fn float(&self, code: i32) -> Option<f64> {
        self.get(code)?.float()
    }

    pub(super) fn int(&self, code: i32) -> i64 {
        self.get(code).and_then(Tag::int).unwrap_or(0)
    }

    /// The entity's handle. One is copied wherever its entity is inserted, so what is longer than any
    /// handle, eight bytes in hexadecimal digits, is none.
    pub(super) fn handle(&self) -> Option<Box<str>> {
        const DIGITS: usize = 16;
        let text = std::str::from_utf8(self.get(5)?.value.trim_ascii()).ok()?;
        (text.len() <= DIGITS).then(|| Box::from(text))
    }

    /// Color and line weight as written: 256 and -1 say that they are the layer's (DXF reference).
    pub(super) fn ink(&self) -> Ink {
        let color = match (self.get(420).and_then(Tag::int), self.get(62).and_then(Tag::int)) {
            (Some(rgb), _) => (rgb as u32 & 0xff_ffff) | 0x100_0000,
            (None, Some(256) | None) => 0,
            (None, Some(index)) => 1 + (index as u32 & 0xffff),
        };
        let weight = self.get(370).and_then(Tag::int).filter(|w| *w >= 0);
        Ink { color, weight: weight.map_or(0, |w| 1 + (w.min(10_000) as i32)) }
    }

    pub(super) fn text(&self, code: i32) -> Option<String> {
        Some(self.decoder.text(self.get(code)?.value))
    }

    /// Bytes of the text that an entity says, in its parts.
    pub(super) fn bytes_of_text(&self) -> usize {
        self.tags.iter().filter(|t| matches!(t.code, 1 | 3)).map(|t| t.value.len()).sum()
    }

    /// A point from an x code; y is ten higher.
    pub(super) fn point(&self, code: i32) -> Option<Point> {
        Some(Point::new(self.float(code)?, self.float(code + 10)?))
    }

    /// From object coordinates to the world's plan of x and y, by the arbitrary axis rule.
    pub(super) fn ocs(&self, elevation: f64) -> Affine {
        let n = [210, 220, 230].map(|c| self.float(c));
        let [Some(x), Some(y), Some(z)] = n else { return Affine::IDENTITY };
        let length = (x * x + y * y + z * z).sqrt();
        if length < 1e-12 || (x == 0.0 && y == 0.0 && z > 0.0) {
            return Affine::IDENTITY;
        }
        let (x, y, z) = (x / length, y / length, z / length);
        let near_pole = x.abs() < 1.0 / 64.0 && y.abs() < 1.0 / 64.0;
        let ax = if near_pole { (z, 0.0, -x) } else { (-y, x, 0.0) };
        let l = (ax.0 * ax.0 + ax.1 * ax.1 + ax.2 * ax.2).sqrt();
        let ax = (ax.0 / l, ax.1 / l, ax.2 / l);
        let ay = (y * ax.2 - z * ax.1, z * ax.0 - x * ax.2, x * ax.1 - y * ax.0);
        Affine::new([ax.0, ax.1, ay.0, ay.1, x * elevation, y * elevation])
    }
}

/// The file that a block stands in, where it refers to another one: bits 4 and 8 of the flags, the
/// path in group 1 (DXF reference).
pub(super) fn file_of(block: &Groups) -> Option<String> {
    let refers = block.int(70) & (4 | 8) != 0;
    refers.then(|| block.text(1).filter(|p| !p.is_empty()).unwrap_or_default())
}
