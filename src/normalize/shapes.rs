//! The lines of one item, curves flattened.

use crate::geom::flatten::{SAGITTA, path_points};
use crate::geom::vocabulary::{BezPath, Point, Rect};
use crate::model::drawing::{Item, Shape};
use crate::model::linework::{Role, Stroke};

/// Chords are cut for the smallest unit a house is drawn in, a millimeter, and the largest, a
/// meter, alike: by the size of the thing, never coarser than this share of it.
const CHORD_SHARE: f64 = 1.0 / 4096.0;

/// The lines of an item: a hatch's are those round it.
pub(super) fn strokes(item: &Item, role: Option<Role>) -> Vec<Stroke> {
    let of_path =
        |path: &BezPath| path_points(path, (path_size(path) * CHORD_SHARE).clamp(1e-6, SAGITTA));
    let lines: Vec<(Vec<Point>, bool)> = match &item.shape {
        Shape::Polyline(p) => {
            let size = extent(p.vertices.iter().map(|v| v.at));
            vec![(p.points((size * CHORD_SHARE).clamp(1e-6, SAGITTA)), p.closed)]
        }
        Shape::Curve(path) => of_path(path),
        Shape::Hatch(h) => h.loops.first().map(of_path).unwrap_or_default(),
        Shape::Point(p) => vec![(vec![*p], false)],
        Shape::Text(_) | Shape::Dimension(_) => Vec::new(),
    };
    let one = |(i, (points, closed)): (usize, (Vec<Point>, bool))| Stroke {
        points,
        closed,
        role,
        layer: item.layer,
        group: item.group,
        part_of: None,
        ink: item.ink,
        // Parts of one entity are one.
        entities: usize::from(i == 0),
        origin: item.origin.clone(),
    };
    lines.into_iter().enumerate().map(one).collect()
}

fn extent(points: impl Iterator<Item = Point>) -> f64 {
    let boxes = points.map(|p| Rect::from_points(p, p));
    boxes.reduce(|a, b| a.union(b)).map_or(1.0, |r| r.width().max(r.height()))
}

fn path_size(path: &BezPath) -> f64 {
    use crate::geom::vocabulary::CurveShape;
    let r = path.bounding_box();
    r.width().max(r.height())
}
