//! What became of all that is drawn on a layer with a role.

use super::linework::Role;
use super::unused::UnusedCount;
use crate::geom::vocabulary::Point;

/// What became of all that is drawn on one layer.
#[derive(Clone, Debug, PartialEq)]
pub struct LayerAccount {
    /// The layer.
    pub layer: String,
    /// Its role.
    pub role: Role,
    /// Entities of the source on it.
    pub entities: usize,
    /// Of them texts, dimensions, tags: they say something and are no shape.
    pub annotations: usize,
    /// Of them lines of no length, and parts and textures of other things.
    pub details: usize,
    /// Things drawn: a block, a loop, lines that belong together.
    pub drawn: usize,
    /// Of them used.
    pub used: usize,
    /// The rest by reasons.
    pub left: Vec<UnusedCount>,
    /// Where some of the rest stand, source coordinates.
    pub places: Vec<Point>,
}

impl LayerAccount {
    /// Things that are not used.
    pub fn unused(&self) -> usize {
        self.left.iter().map(|c| c.things).sum()
    }
}
