//! Bounds of keys that stand in each table of a list.

use super::fault::Fault;

/// Bounds of a key in each table of a list.
#[derive(Clone, Copy, Debug)]
pub(super) struct Bounds {
    /// The key.
    pub key: &'static str,
    /// Least.
    pub least: f64,
    /// Greatest.
    pub most: f64,
}

impl Bounds {
    /// A value of the key under `table` that is out of them.
    pub(super) fn out(&self, table: &str, value: f64) -> Option<Fault> {
        Fault::out_of_range(&format!("{table}{}", self.key), value, self.least, self.most)
    }
}
