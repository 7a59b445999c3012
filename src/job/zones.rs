//! Parts of walls with another cladding.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::around::WIDEST;
use super::layers::wildcard;
use super::length::{Length, maybe_length};
use super::product::Product;
use super::stock::Stock;
use crate::model::layer_name::own_name;

/// A part of the house with another cladding: closed outlines on layers of its own, over the walls'
/// outlines, or regions that the job gives.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct Zone {
    /// Its name on sheets and in tables.
    pub name: String,
    /// Layers its outlines are drawn on, with `*` and `?`.
    pub layers: Vec<String>,
    /// Regions it covers, where none is drawn.
    #[serde(rename = "region", skip_serializing_if = "Vec::is_empty")]
    pub regions: Vec<ZoneRegion>,
    /// What covers it, where that is not laid out here but measured by area alone: `shingle`,
    /// `board and batten`.
    pub cladding: String,
    /// Instead of `cladding`: lap siding of its own, laid out as a set of its own on the house's
    /// datum, with every key of `[product]`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schemars(with = "Product")]
    pub product: Option<Product>,
    /// The lengths its siding is stocked in, where it has a `product`, as `[[stock]]` has them.
    #[serde(rename = "stock", skip_serializing_if = "Vec::is_empty")]
    pub stocks: Vec<Stock>,
}

/// A rectangle of walls that a zone covers; a side left out is the walls' own end.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct ZoneRegion {
    /// Elevation it is on; left out, on all of them.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub elevation: Option<String>,
    /// Its left end, from the elevation's leftmost wall.
    #[serde(deserialize_with = "maybe_length", skip_serializing_if = "Option::is_none")]
    #[schemars(with = "Option<Length>")]
    pub left: Option<f64>,
    /// Its right end, likewise.
    #[serde(deserialize_with = "maybe_length", skip_serializing_if = "Option::is_none")]
    #[schemars(with = "Option<Length>")]
    pub right: Option<f64>,
    /// Its lower edge over the level line.
    #[serde(deserialize_with = "maybe_length", skip_serializing_if = "Option::is_none")]
    #[schemars(with = "Option<Length>")]
    pub bottom: Option<f64>,
    /// Its upper edge over the level line.
    #[serde(deserialize_with = "maybe_length", skip_serializing_if = "Option::is_none")]
    #[schemars(with = "Option<Length>")]
    pub top: Option<f64>,
}

impl ZoneRegion {
    /// Left, bottom, right and top, inches; a side left out lies farther out than any wall.
    pub fn sides(&self) -> [f64; 4] {
        let far = 2.0 * WIDEST;
        let low = |v: Option<f64>| v.unwrap_or(-far);
        let high = |v: Option<f64>| v.unwrap_or(far);
        [low(self.left), low(self.bottom), high(self.right), high(self.top)]
    }
}

impl Zone {
    /// Whether its outlines are on this layer; case is folded and a reference's prefix
    /// (`name$0$`, `name|`) taken off.
    pub fn is_on(&self, layer: &str) -> bool {
        let whole = layer.to_lowercase();
        let name = own_name(&whole);
        self.layers
            .iter()
            .map(|p| p.to_lowercase())
            .any(|p| wildcard(&p, name) || wildcard(&p, &whole))
    }
}
