//! How a view is turned to stand upright.

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::de::{Error, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use crate::geom::vocabulary::{Affine, Point};

/// How a view is turned to stand upright: left and right exchanged first, where it is mirrored, then
/// turned counter-clockwise.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Turn {
    /// Left and right are exchanged.
    pub mirror: bool,
    /// Quarter turns counter-clockwise, 0 to 3.
    pub quarters: u8,
}

/// What a turn may be written as.
const WORDS: [&str; 8] =
    ["0", "90", "180", "270", "mirror", "mirror 90", "mirror 180", "mirror 270"];

impl Turn {
    /// As the job file writes it.
    pub fn word(self) -> &'static str {
        WORDS[usize::from(self.mirror) * 4 + usize::from(self.quarters % 4)]
    }

    /// The turn that is written so.
    pub fn named(word: &str) -> Option<Turn> {
        let word = word.trim().to_lowercase();
        let at = WORDS.iter().position(|w| *w == word)?;
        Some(Turn { mirror: at >= 4, quarters: (at % 4) as u8 })
    }

    /// The turn that sets a text upright; none for one that stands askew.
    pub fn of_text(angle: f64, mirrored: bool) -> Option<Turn> {
        /// Degrees off a quarter turn.
        const ASKEW: f64 = 10.0;
        let degrees = if mirrored { angle - 180.0 } else { -angle };
        let quarters = (degrees / 90.0).round();
        if !degrees.is_finite() || (degrees - quarters * 90.0).abs() > ASKEW {
            return None;
        }
        Some(Turn { mirror: mirrored, quarters: quarters.rem_euclid(4.0) as u8 })
    }

    /// The turn for what is drawn with its top so many quarter turns counter-clockwise from up.
    pub fn of_top(quarters: u8, mirror: bool) -> Turn {
        let quarters = if mirror { quarters } else { 4 - quarters % 4 };
        Turn { mirror, quarters: quarters % 4 }
    }

    /// Where the top of what needs this turn is drawn, quarter turns counter-clockwise from up.
    pub fn top(self) -> u8 {
        if self.mirror { self.quarters % 4 } else { (4 - self.quarters % 4) % 4 }
    }

    /// Whether nothing is turned.
    pub fn is_none(self) -> bool {
        self == Turn::default()
    }

    /// The turn about a place.
    pub fn about(self, center: Point) -> Affine {
        // Whole numbers: a quarter turn leaves no crumbs.
        let turned = [
            Affine::IDENTITY,
            Affine::new([0.0, 1.0, -1.0, 0.0, 0.0, 0.0]),
            Affine::new([-1.0, 0.0, 0.0, -1.0, 0.0, 0.0]),
            Affine::new([0.0, -1.0, 1.0, 0.0, 0.0, 0.0]),
        ][usize::from(self.quarters % 4)];
        let mirrored = if self.mirror {
            Affine::new([-1.0, 0.0, 0.0, 1.0, 0.0, 0.0])
        } else {
            Affine::IDENTITY
        };
        Affine::translate(center.to_vec2())
            * turned
            * mirrored
            * Affine::translate(-center.to_vec2())
    }
}

impl Serialize for Turn {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        if self.mirror {
            to.serialize_str(self.word())
        } else {
            to.serialize_u16(u16::from(self.quarters) * 90)
        }
    }
}

struct Reads;

impl Visitor<'_> for Reads {
    type Value = Turn;

    fn expecting(&self, f: &mut std::fmt::Formatter) -> std::fmt::Result {
        f.write_str("0, 90, 180, 270, \"mirror\", \"mirror 90\", \"mirror 180\" or \"mirror 270\"")
    }

    fn visit_i64<E: Error>(self, v: i64) -> Result<Turn, E> {
        self.visit_str(&v.to_string())
    }

    fn visit_u64<E: Error>(self, v: u64) -> Result<Turn, E> {
        self.visit_str(&v.to_string())
    }

    fn visit_str<E: Error>(self, v: &str) -> Result<Turn, E> {
        Turn::named(v).ok_or_else(|| E::invalid_value(serde::de::Unexpected::Str(v), &self))
    }
}

impl<'de> Deserialize<'de> for Turn {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        from.deserialize_any(Reads)
    }
}

impl JsonSchema for Turn {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Turn".into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({
            "description": "How a view is turned to stand upright: degrees counter-clockwise, after left and right are exchanged where it says mirror.",
            "enum": [0, 90, 180, 270, "0", "90", "180", "270", "mirror", "mirror 90", "mirror 180", "mirror 270"]
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_turn_is_counter_clockwise_after_the_mirror() {
        let to = |word: &str| Turn::named(word).unwrap().about(Point::ZERO) * Point::new(2.0, 1.0);
        assert_eq!(to("90"), Point::new(-1.0, 2.0));
        assert_eq!(to("mirror"), Point::new(-2.0, 1.0));
        assert_eq!(to("mirror 180"), Point::new(2.0, -1.0));
        assert!(Turn::named("45").is_none());
    }
}
