//! Parts of walls with another cladding.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::around::WIDEST;
use super::fault::Fault;
use super::layers::wildcard;
use super::length::{Length, maybe_length};
use super::ranges;
use super::siding::kind::Siding;
use super::stock::Stock;
use super::{Job, Product};
use crate::finding::job_value::ValueFault;

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
    /// Whether its outlines are on this layer; case is folded and a bound reference's prefix
    /// (`name$0$`) taken off.
    pub fn is_on(&self, layer: &str) -> bool {
        let whole = layer.to_lowercase();
        let name = whole.rsplit('$').next().unwrap_or(&whole);
        self.layers
            .iter()
            .map(|p| p.to_lowercase())
            .any(|p| wildcard(&p, name) || wildcard(&p, &whole))
    }
}

impl Job {
    /// The zone whose outlines are on a layer, by its place in the job: the first that names it.
    pub fn zone_of(&self, layer: &str) -> Option<usize> {
        self.zone.iter().position(|z| z.is_on(layer))
    }

    /// The job of a zone that is laid out: its own siding, on the house's datum.
    pub fn for_zone(&self, zone: usize, datum: Option<f64>) -> Option<Job> {
        let zone = self.zone.get(zone)?;
        let (product, stocks) = (zone.product.clone()?, zone.stocks.clone());
        let mut out = Job { product, stocks, ..self.clone() };
        out.courses.datum = datum.or(self.courses.datum);
        Some(out)
    }

    /// Every kind of siding that is laid out.
    pub fn kinds(&self) -> impl Iterator<Item = Siding> {
        let own = self.zone.iter().filter_map(|z| z.product.as_ref());
        std::iter::once(&self.product).chain(own).map(|p| p.kind)
    }
}

/// Zones that say too little.
pub(super) fn faults(job: &Job) -> Vec<Fault> {
    let mut out = Vec::new();
    for (i, z) in job.zone.iter().enumerate() {
        out.extend(unclear(job, i, z));
        out.extend(z.regions.iter().enumerate().flat_map(|(k, r)| faults_of(r, i, k)));
        // Its siding is held to the same ranges.
        let alone = job.for_zone(i, None).map(|j| Job { zone: Vec::new(), ..j });
        // Settings that say nothing about this siding may be the house's own.
        let of_house = |f: &Fault| matches!(&f.fault, ValueFault::OfOtherSiding { key, .. } if !Fault::is_of_product(key));
        let of_product = |f: &Fault| !of_house(f) && f.keys.iter().any(|k| Fault::is_of_product(k));
        let faults = alone.iter().flat_map(ranges::faults).filter(of_product);
        out.extend(faults.map(|f| f.in_zone(i)));
    }
    out
}

/// What a zone leaves open: its name, its place, what covers it.
fn unclear(job: &Job, i: usize, z: &Zone) -> Vec<Fault> {
    let mut out = Vec::new();
    let mut fault = |key: &str, make: &dyn Fn(String) -> ValueFault| {
        let key = format!("zone.{i}.{key}");
        out.push(Fault::new([key.clone(), "zone".to_owned()], make(key)));
    };
    let nameless = z.name.trim().is_empty();
    let taken = job.zone[..i].iter().any(|o| o.name.eq_ignore_ascii_case(&z.name));
    if nameless {
        fault("name", &|key| ValueFault::NameEmpty { key });
    } else if taken {
        fault("name", &|key| ValueFault::NameTwice { key, name: z.name.clone() });
    }
    let nowhere = z.layers.is_empty() && z.regions.is_empty();
    if nowhere || z.layers.iter().any(|l| l.trim().is_empty()) {
        fault("layers", &|key| ValueFault::ZoneNowhere { key });
    }
    if !z.stocks.is_empty() && z.product.is_none() {
        let other = format!("zone.{i}.product");
        fault("stock", &|key| ValueFault::NeedsOther { key, other: other.clone() });
    }
    match (z.cladding.trim().is_empty(), z.product.is_some()) {
        (true, false) => fault("cladding", &|key| ValueFault::ZoneUnclad { key }),
        (false, true) => {
            let other = format!("zone.{i}.product");
            fault("cladding", &|key| ValueFault::OneTooMany { key, other: other.clone() });
        }
        _ => {}
    }
    out
}

/// A region that is none, or is farther out than any wall.
fn faults_of(r: &ZoneRegion, zone: usize, region: usize) -> Vec<Fault> {
    let key = |side: &str| format!("zone.{zone}.region.{region}.{side}");
    let sides = [("left", r.left), ("right", r.right), ("bottom", r.bottom), ("top", r.top)];
    let mut out: Vec<Fault> = sides
        .into_iter()
        .filter_map(|(side, v)| Fault::out_of_range(&key(side), v?, -WIDEST, WIDEST))
        .collect();
    let [left, bottom, right, top] = r.sides();
    out.extend(Fault::not_over((&key("right"), right), (&key("left"), left)));
    out.extend(Fault::not_over((&key("top"), top), (&key("bottom"), bottom)));
    if sides.iter().all(|(_, v)| v.is_none()) {
        let key = format!("zone.{zone}.region.{region}");
        let keys = [format!("zone.{zone}.region"), "zone".to_owned()];
        out.push(Fault::new(keys, ValueFault::ZoneRegionWhole { key }));
    }
    out
}
