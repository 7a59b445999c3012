//! The views of a drawing, for a first job.

use super::given::outlines;
use super::{siding, views};
use crate::finding::Findings;
use crate::geom::vocabulary::{Affine, Rect};
use crate::job::Job;
use crate::job::first::ShownView;
use crate::model::linework::Linework;

/// The views of a drawing, elevations first: those with walls, and those that are left alone.
pub fn shown_views(lines: &Linework, job: &Job) -> Vec<ShownView> {
    let (named, mut none) = (siding::as_named(lines, job), Findings::default());
    let found = outlines(&named, job, &mut none);
    let views = views::views(&named, &found, job, &mut none);
    let with_walls = |v: &&views::View| found.iter().any(|o| v.holds(&named, o));
    let region = |r: Rect| {
        let back = Affine::scale(1.0 / lines.scale.inches) * lines.way_back(r.center());
        let drawn = back.transform_rect_bbox(r);
        [drawn.x0, drawn.y0, drawn.x1, drawn.y1]
    };
    let one = |v: &views::View| ShownView {
        name: v.name.clone(),
        region: region(v.region),
        other: v.left_alone(),
    };
    views.elevations.iter().filter(with_walls).chain(&views.left_alone).map(one).collect()
}
