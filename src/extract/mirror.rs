//! A house that is built the other way round from its drawing: names of sides, places, the axis.

use super::facing;
use super::outline::stroke_box;
use crate::geom::vocabulary::Rect;
use crate::job::Job;
use crate::model::linework::{Linework, Role};

/// The name of an elevation of the house that is built: mirrored, left is right and east is west.
pub(super) fn built_name(name: &str, job: &Job) -> String {
    if job.model.mirrored { facing::mirrored(name) } else { name.to_owned() }
}

/// Where a part of the drawing lies once the drawing was mirrored; as it is where it was not.
pub(super) fn mirrored_region(lines: &Linework, region: Rect) -> Rect {
    let flips = lines.moved.iter().filter(|m| m.view.is_none() && m.back.determinant() < 0.0);
    flips.fold(region, |r, m| m.back.inverse().transform_rect_bbox(r))
}

/// The axis that a drawing is mirrored at: the middle of what is drawn as walls, else of all.
pub fn axis(lines: &Linework) -> f64 {
    let boxes = |walls: bool| {
        let of = lines.strokes.iter().filter(move |s| !walls || s.role == Some(Role::Wall));
        of.map(stroke_box).reduce(|a, b| a.union(b))
    };
    // On whole inches, so that what lies on the grid stays on it.
    boxes(true).or_else(|| boxes(false)).map_or(0.0, |b| b.center().x.round())
}
