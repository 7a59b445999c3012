//! What the job says of walls and openings in its own words: given outright, left out, taken as one.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::geom::vocabulary::{Point, Ring};
use crate::model::house::OpeningKind;

/// A wall that the job gives outright, where the drawing does not show it as one: it is read like a
/// closed outline on a wall layer. A wall drawn in its place gives way to it.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct GivenWall {
    /// Elevation it is in, by its name; left out, the one that shows that part of the drawing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub elevation: Option<String>,
    /// Its corners `[x, y]` in order, in the drawing's own units and from its own origin, as regions
    /// and the places beside findings are; two corners are those of a rectangle that lie opposite
    /// each other.
    pub outline: Vec<[f64; 2]>,
}

/// An opening that the job gives outright: where one is drawn in its place, that one gives way. It
/// belongs to the wall it lies in.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct GivenOpening {
    /// Elevation it is in, by its name; left out, the one that shows that part of the drawing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub elevation: Option<String>,
    /// What it is; left out, told by its place and size: a door stands at the foot of its wall and is
    /// 6 ft high or more, one wider than 7 ft is an overhead door, all else is a window.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub kind: Option<OpeningKind>,
    /// The corners `[x, y]` of the edge that the channel follows, as a wall's `outline` has them.
    pub outline: Vec<[f64; 2]>,
}

/// A given outline as points in the drawing's own units: two are a rectangle's opposite corners.
pub fn ring(outline: &[[f64; 2]]) -> Ring {
    match outline {
        [a, b] => {
            let (x, y) = ([a[0].min(b[0]), a[0].max(b[0])], [a[1].min(b[1]), a[1].max(b[1])]);
            [(x[0], y[0]), (x[1], y[0]), (x[1], y[1]), (x[0], y[1])].map(Point::from).to_vec()
        }
        all => all.iter().map(|p| Point::new(p[0], p[1])).collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_corners_are_a_rectangle_whichever_come_first() {
        let all = [(1.0, 2.0), (5.0, 2.0), (5.0, 9.0), (1.0, 9.0)].map(Point::from);
        for two in [[[1.0, 2.0], [5.0, 9.0]], [[5.0, 2.0], [1.0, 9.0]]] {
            assert_eq!(ring(&two), all);
        }
    }
}
