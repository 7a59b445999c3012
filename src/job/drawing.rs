//! How the drawing is read, and views where it does not settle them.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::length::{Length, length};
use crate::units::Unit;

/// How the drawing is read.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct Reading {
    /// Unit of the drawing, over what its header says.
    pub unit: Option<Unit>,
    /// A known distance that sets the scale: `x1,y1 x2,y2 = 16'-0"`, points in drawing units.
    pub known: Option<String>,
    /// Read layers that are off or frozen too.
    pub hidden_layers: bool,
    /// Ends nearer than this are joined and listed. Default 1/16 in: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub weld: f64,
    /// Width of casing outside the drawn edge of openings that the channel goes round. Default 0:
    /// the drawn edge is taken as the channel's (FACTS OT-25).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub casing: f64,
    /// Codes of findings that stop the program but shall only be reported: `opening-outside`,
    /// `dimension-disagrees`.
    pub accept: Vec<String>,
}

impl Default for Reading {
    fn default() -> Self {
        Reading {
            unit: None,
            known: None,
            hidden_layers: false,
            weld: 1.0 / 16.0,
            casing: 0.0,
            accept: Vec::new(),
        }
    }
}

/// One view of the drawing.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct View {
    /// Name of the elevation.
    pub name: String,
    /// `[left, bottom, right, top]` in drawing units.
    pub region: Option<[f64; 4]>,
    /// Layers it is drawn on; all where empty.
    pub layers: Vec<String>,
}
