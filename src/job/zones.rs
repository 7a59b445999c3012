//! Parts of walls with another cladding.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::around::WIDEST;
use super::layers::wildcard;
use super::length::{Length, maybe_length};
use super::ranges::{self, Fault};
use super::siding::kind::Siding;
use super::{Job, Product};

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
        let product = self.zone.get(zone)?.product.clone()?;
        let mut out = Job { product, ..self.clone() };
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
        let mut own = Vec::new();
        let mut fault = |key: &str, wrong: bool, what: &str| {
            if wrong {
                let key = format!("zone.{i}.{key}");
                own.push(Fault {
                    message: format!("`{key}` {what}"),
                    keys: vec![key, "zone".into()],
                });
            }
        };
        let taken = job.zone[..i].iter().any(|o| o.name.eq_ignore_ascii_case(&z.name));
        fault("name", z.name.trim().is_empty(), "is left out: every zone has a name");
        fault("name", taken && !z.name.trim().is_empty(), "is the name of two zones");
        let empty = z.layers.is_empty() && z.regions.is_empty();
        let blank = z.layers.iter().any(|l| l.trim().is_empty());
        let what = "names no layer that its outlines are drawn on, and there is no `region`";
        fault("layers", empty || blank, what);
        let named = !z.cladding.trim().is_empty();
        let what = "is left out: say what covers the zone, or give it a `product`";
        fault("cladding", !named && z.product.is_none(), what);
        fault("cladding", named && z.product.is_some(), "says nothing beside a `product`");
        out.extend(own);
        out.extend(z.regions.iter().enumerate().flat_map(|(k, r)| faults_of(r, i, k)));
        // Its siding is held to the same ranges.
        let alone = job.for_zone(i, None).map(|j| Job { zone: Vec::new(), ..j });
        let of_product = |f: &Fault| f.keys.iter().any(|k| k.starts_with("product."));
        let within = |k: &String| {
            if k.starts_with("product.") { format!("zone.{i}.{k}") } else { k.clone() }
        };
        let faults = alone.iter().flat_map(ranges::faults).filter(of_product);
        out.extend(faults.map(|f| Fault {
            message: f.message.replace("`product.", &format!("`zone.{i}.product.")),
            keys: f.keys.iter().map(within).collect(),
        }));
    }
    out
}

/// A region that is none, or is farther out than any wall.
fn faults_of(r: &ZoneRegion, zone: usize, region: usize) -> Vec<Fault> {
    let key = |side: &str| format!("zone.{zone}.region.{region}.{side}");
    let sides = [("left", r.left), ("right", r.right), ("bottom", r.bottom), ("top", r.top)];
    let far = |v: f64| !(-WIDEST..=WIDEST).contains(&v);
    let mut out: Vec<Fault> = sides
        .into_iter()
        .filter_map(|(side, v)| Some((key(side), v.filter(|v| far(*v))?)))
        .map(|(key, v)| Fault {
            message: format!("`{key}` is {v}; it must be between -{WIDEST} and {WIDEST}"),
            keys: vec![key],
        })
        .collect();
    let [left, bottom, right, top] = r.sides();
    for (high, low, apart) in [("right", "left", right > left), ("top", "bottom", top > bottom)] {
        if !apart {
            let message = format!("`{}` is not over `{}`", key(high), key(low));
            out.push(Fault { keys: vec![key(high), key(low)], message });
        }
    }
    if sides.iter().all(|(_, v)| v.is_none()) {
        let message = format!("`zone.{zone}.region.{region}` names no side: give one at least");
        out.push(Fault { keys: vec![format!("zone.{zone}.region"), "zone".into()], message });
    }
    out
}
