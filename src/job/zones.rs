//! Parts of walls with another cladding.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::layers::wildcard;
use super::ranges::{self, Fault};
use super::{Job, Kind, Product};

/// A part of the house with another cladding: closed outlines on layers of its own, over the walls'
/// outlines.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct Zone {
    /// Its name on sheets and in tables.
    pub name: String,
    /// Layers its outlines are drawn on, with `*` and `?`.
    pub layers: Vec<String>,
    /// What covers it, where that is not laid out here but measured by area alone: `shingle`,
    /// `board and batten`.
    pub cladding: String,
    /// Instead of `cladding`: lap siding of its own, laid out as a set of its own on the house's
    /// datum, with every key of `[product]`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schemars(with = "Product")]
    pub product: Option<Product>,
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
    pub fn kinds(&self) -> impl Iterator<Item = Kind> {
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
        let empty = z.layers.is_empty() || z.layers.iter().any(|l| l.trim().is_empty());
        fault("layers", empty, "names no layer that its outlines are drawn on");
        let named = !z.cladding.trim().is_empty();
        let what = "is left out: say what covers the zone, or give it a `product`";
        fault("cladding", !named && z.product.is_none(), what);
        fault("cladding", named && z.product.is_some(), "says nothing beside a `product`");
        out.extend(own);
        // Its siding is held to the same ranges.
        let alone = job.for_zone(i, None).map(|j| Job { zone: Vec::new(), ..j });
        let of_product = |f: &Fault| f.keys.first().is_some_and(|k| k.starts_with("product."));
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
