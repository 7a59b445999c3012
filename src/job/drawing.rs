//! How the drawing is read, and views where it does not settle them.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::length::{Length, length};
use crate::geom::vocabulary::Point;
use crate::model::turn::Turn;
use crate::units::{Unit, parse_length};

/// How the drawing is read.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct Reading {
    /// Unit of the drawing, over what its header says.
    pub unit: Option<Unit>,
    /// A known distance that sets the scale: `x1,y1 x2,y2 = 16'-0"`, points in drawing units.
    pub known: Option<String>,
    /// Pages of a PDF that are read, from 1. Default none: those that look like elevations.
    pub pages: Vec<usize>,
    /// Read layers that are off or frozen too.
    pub hidden_layers: bool,
    /// Ends nearer than this are joined and listed. Default 1/16 in: common practice, no source. Loops
    /// whose gaps are under 1/4 in are closed and listed as well.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub weld: f64,
    /// Width of casing outside the drawn edge of openings that the channel goes round; a
    /// `trim.surround` is added to it. Default 0:
    /// the drawn edge is taken as the channel's (common practice).
    // LayoutFact::DrawnEdge.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub casing: f64,
    /// Codes of findings that stop the program but shall only be reported: `opening-outside`,
    /// `opening-too-large`, `dimension-disagrees`.
    pub accept: Vec<String>,
}

impl Default for Reading {
    fn default() -> Self {
        Reading {
            unit: None,
            known: None,
            pages: Vec::new(),
            hidden_layers: false,
            weld: 1.0 / 16.0,
            casing: 0.0,
            accept: Vec::new(),
        }
    }
}

impl Reading {
    /// Inches in one drawing unit by the known distance; `None` where there is none or it cannot be
    /// read.
    pub fn known_scale(&self) -> Option<f64> {
        known_scale(self.known.as_ref()?)
    }

    /// Where the known distance begins, drawing units.
    pub fn known_from(&self) -> Option<Point> {
        let [x, y, ..] = known_points(self.known.as_ref()?.split_once('=')?.0)?;
        Some(Point::new(x, y))
    }
}

/// The two places of a known distance, drawing units.
fn known_points(text: &str) -> Option<[f64; 4]> {
    let words = text.split([',', ' ']).filter(|t| !t.is_empty());
    let numbers: Vec<f64> = words.map_while(|t| t.parse().ok()).collect();
    numbers.try_into().ok()
}

/// Inches in one drawing unit by a known distance as written; `None` where it cannot be read.
pub fn known_scale(text: &str) -> Option<f64> {
    let (points, length) = text.split_once('=')?;
    let [x1, y1, x2, y2] = known_points(points)?;
    let drawn = Point::new(x1, y1).distance(Point::new(x2, y2));
    let length = parse_length(length, Unit::Inch).filter(|l| *l > 0.0)?;
    Some(length / drawn).filter(|k| k.is_finite() && *k > 0.0)
}

/// One view of the drawing.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct View {
    /// Name of the elevation.
    pub name: String,
    /// `[left, bottom, right, top]` in the drawing's own units, y upward: of an SVG those of its `viewBox`, from
    /// its lower edge up; of a PDF points of the page, from its lower left corner.
    pub region: Option<[f64; 4]>,
    /// Layers it is drawn on; all where empty.
    pub layers: Vec<String>,
    /// The layer whose hatches or lines are the siding in that view, with `*` and `?`; nothing else is
    /// taken for siding there.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub siding_layer: Option<String>,
    /// How it is turned to stand upright, where it is drawn turned or mirrored: 90, 180 or 270 degrees
    /// counter-clockwise, `mirror` for left and right exchanged, `mirror 180` for both; 0 takes it as
    /// it is drawn, whatever its text says. Without a region or layers the view is the one that the
    /// drawing names so.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub turn: Option<Turn>,
    /// A distance in the view that is known, as `known` of the drawing, where it is drawn at a scale of its own.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub known: Option<String>,
    /// Leave the view out.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub skip: bool,
}

impl View {
    /// Whether it is of a view of that name, capitals or not.
    pub fn is_of(&self, view: &str) -> bool {
        self.name.trim().eq_ignore_ascii_case(view.trim())
    }

    /// Whether it says something of a view that the drawing shows by itself, rather than where a view
    /// is.
    pub fn is_remark(&self) -> bool {
        let says =
            self.turn.is_some() || self.known.is_some() || self.skip || self.siding_layer.is_some();
        self.region.is_none() && self.layers.is_empty() && says
    }
}
