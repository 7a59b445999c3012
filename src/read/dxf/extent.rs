//! How much a shape holds, and how far out it lies.

use crate::geom::vocabulary::{BezPath, PathEl, Point};
use crate::model::drawing::Shape;

/// Points that a shape is kept as: what else it holds is counted as points that take as much room.
pub(super) fn size(shape: &Shape) -> usize {
    /// A part of a path takes as much as two vertices, and is copied once more on its way.
    const OF_PATH: usize = 4;
    /// Letters that take as much as a vertex.
    const LETTERS: usize = 24;
    match shape {
        Shape::Polyline(p) => p.vertices.len(),
        Shape::Curve(c) => OF_PATH * c.elements().len(),
        Shape::Hatch(h) => {
            let loops: usize = h.loops.iter().map(|l| OF_PATH * l.elements().len() + 1).sum();
            let families: usize = h.families.iter().map(|f| 3 + f.dashes.len()).sum();
            loops + families + h.pattern.len() / LETTERS
        }
        Shape::Text(t) => 1 + t.content.len() / LETTERS,
        Shape::Dimension(d) => 1 + d.text.as_ref().map_or(0, String::len) / LETTERS,
        Shape::Point(_) => 1,
    }
}

/// Whether a shape lies farther out than any house.
pub(super) fn absurd(shape: &Shape, most: f64) -> bool {
    let wild = |p: Point| !p.is_finite() || p.x.abs().max(p.y.abs()) > most;
    match shape {
        Shape::Polyline(p) => p.vertices.iter().any(|v| wild(v.at) || !v.bulge.is_finite()),
        Shape::Curve(c) => wild_path(c, most),
        Shape::Hatch(h) => h.loops.iter().any(|l| wild_path(l, most)),
        Shape::Text(t) => wild(t.at) || t.height.abs() > most || t.height.is_nan(),
        Shape::Dimension(d) => wild(d.from) || wild(d.to) || wild(d.line),
        Shape::Point(p) => wild(*p),
    }
}

fn wild_path(path: &BezPath, most: f64) -> bool {
    let wild = |p: &Point| !p.is_finite() || p.x.abs().max(p.y.abs()) > most;
    path.elements().iter().any(|el| match el {
        PathEl::MoveTo(p) | PathEl::LineTo(p) => wild(p),
        PathEl::QuadTo(a, b) => wild(a) || wild(b),
        PathEl::CurveTo(a, b, c) => wild(a) || wild(b) || wild(c),
        PathEl::ClosePath => false,
    })
}
