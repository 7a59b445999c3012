//! Parts of walls with another cladding.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::Job;
use super::layers::wildcard;
use super::ranges::Fault;

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
}

/// Zones that say too little.
pub(super) fn faults(job: &Job) -> Vec<Fault> {
    let mut out = Vec::new();
    for (i, z) in job.zone.iter().enumerate() {
        let mut fault = |key: &str, wrong: bool, what: &str| {
            if wrong {
                let key = format!("zone.{i}.{key}");
                out.push(Fault {
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
        fault("cladding", z.cladding.trim().is_empty(), "is left out: say what covers the zone");
    }
    out
}
