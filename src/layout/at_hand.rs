//! Panels and offcuts that lie on the site.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Lengths of one sort that lie on the site: a line of `stock.csv`.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct AtHand {
    /// Length, inches.
    pub length: f64,
    /// How many.
    pub count: usize,
    /// Which of its ends is as it left the works, seen from the front.
    pub end: FactoryEnd,
}

/// Which end of an offcut is as it left the works.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum FactoryEnd {
    /// Neither: it serves where no seam is.
    #[default]
    None,
    /// The left one: it ends a run.
    Left,
    /// The right one: it begins a run.
    Right,
    /// Both: a whole panel.
    Both,
}

/// What is built so far, and what the rest takes.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct BuiltSoFar {
    /// Pieces that hang.
    pub hung: usize,
    /// Panels that they are cut from.
    pub hung_panels: usize,
    /// Panels that the rest takes, offcuts at hand not counted.
    pub more: usize,
    /// No layout of what is left takes fewer, whatever is cut from the offcuts at hand.
    pub at_least: usize,
    /// What lies on the site; none where no list was given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stock: Option<Vec<AtHand>>,
    /// Whole panels on the site.
    pub on_site: usize,
    /// Offcuts on the site that pieces are cut from.
    pub offcuts_used: usize,
    /// Panels to order: what the rest takes beyond those on the site, spare ones left out.
    pub order: usize,
}
