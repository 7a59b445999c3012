//! Where boards may be joined: on studs.

use super::ids::RunId;
use std::collections::BTreeMap;

/// Studs of one wall.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Studs {
    /// Center of the first, elevation inches.
    pub first: f64,
    /// Center to center.
    pub spacing: f64,
}

/// What the joints of a house keep, besides the rules of seams.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct JointRules {
    /// Least sideways distance of joints in near courses.
    pub apart: f64,
    /// Studs of the wall each run is on, by the run's name; runs of one wall have one number.
    pub studs: BTreeMap<RunId, (usize, Studs)>,
}
