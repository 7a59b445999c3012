//! Kinds of siding by their keys in a job file.

use std::borrow::Cow;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::de::Error;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::system::{Caution, SidingSystem};
use super::{fiber_cement, foam_backed, steel, vinyl, wood};
use crate::model::item::SidingPiece;

/// What the siding is: panels that lock, or boards that lap.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[non_exhaustive]
pub enum Siding {
    /// Panels, lapped end to end and locked into one another.
    Panel(PanelSiding),
    /// Boards, butted on studs and lapped at their heads.
    Board(BoardSiding),
}

/// Siding in panels.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum PanelSiding {
    /// Vinyl with foam bonded to its back.
    FoamBacked,
    /// Vinyl without foam.
    Vinyl,
    /// Coated sheet steel.
    Steel,
}

/// Siding in boards.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum BoardSiding {
    /// Wood, beveled or of even thickness.
    Wood,
    /// Fiber-cement.
    FiberCement,
}

/// Keys in the order of [`Siding::ALL`].
const KEYS: [&str; 5] = ["foam-backed", "vinyl", "steel", "wood", "fiber-cement"];

impl Siding {
    /// Every kind.
    pub const ALL: [Siding; 5] = [
        Siding::Panel(PanelSiding::FoamBacked),
        Siding::Panel(PanelSiding::Vinyl),
        Siding::Panel(PanelSiding::Steel),
        Siding::Board(BoardSiding::Wood),
        Siding::Board(BoardSiding::FiberCement),
    ];

    /// Its description.
    pub fn system(self) -> &'static SidingSystem {
        match self {
            Siding::Panel(PanelSiding::FoamBacked) => &foam_backed::SYSTEM,
            Siding::Panel(PanelSiding::Vinyl) => &vinyl::SYSTEM,
            Siding::Panel(PanelSiding::Steel) => &steel::SYSTEM,
            Siding::Board(BoardSiding::Wood) => &wood::SYSTEM,
            Siding::Board(BoardSiding::FiberCement) => &fiber_cement::SYSTEM,
        }
    }

    /// Its key in a job file.
    pub fn key(self) -> &'static str {
        let mut named = Siding::ALL.iter().zip(KEYS);
        named.find(|(s, _)| **s == self).map_or(KEYS[0], |(_, key)| key)
    }

    /// What one stock length of it is.
    pub fn piece(self) -> SidingPiece {
        match self {
            Siding::Panel(_) => SidingPiece::Panel,
            Siding::Board(_) => SidingPiece::Board,
        }
    }

    /// The kind of a key.
    pub fn of_key(key: &str) -> Option<Siding> {
        // As it was spelled before.
        let key = if key == "fibre-cement" { "fiber-cement" } else { key };
        Siding::ALL.into_iter().find(|s| s.key() == key)
    }
}

/// Foam-backed vinyl.
impl Default for Siding {
    fn default() -> Self {
        Siding::Panel(PanelSiding::FoamBacked)
    }
}

impl Serialize for Siding {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        s.serialize_str(self.key())
    }
}

impl<'de> Deserialize<'de> for Siding {
    fn deserialize<D: Deserializer<'de>>(d: D) -> Result<Self, D::Error> {
        let key = String::deserialize(d)?;
        Siding::of_key(&key).ok_or_else(|| D::Error::unknown_variant(&key, &KEYS))
    }
}

impl JsonSchema for Siding {
    fn schema_name() -> Cow<'static, str> {
        "Siding".into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({
            "description": "What the siding is: panels that lock, or boards that lap.",
            "type": "string",
            "enum": KEYS,
        })
    }
}

/// What any kind of siding can do to whoever cuts it or lives with it, each once.
pub fn every_caution() -> Vec<Caution> {
    let mut out = Vec::new();
    for caution in Siding::ALL.into_iter().flat_map(|s| s.system().cautions) {
        if !out.contains(caution) {
            out.push(*caution);
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_kind_has_its_own_key_and_is_found_by_it() {
        for siding in Siding::ALL {
            assert_eq!(Siding::of_key(siding.key()), Some(siding));
        }
        let keys: std::collections::BTreeSet<&str> = KEYS.into_iter().collect();
        assert_eq!(keys.len(), Siding::ALL.len());
        assert_eq!(Siding::of_key("brick"), None);
    }
}
