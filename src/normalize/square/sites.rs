//! Parts of the drawing that are views of their own: what stands together is squared together.

use crate::geom::near::clusters;
use crate::geom::polygon::bounds;
use crate::geom::vocabulary::{Point, Rect};
use crate::job::Job;
use crate::model::linework::{Linework, Role, Stroke};

/// What stands nearer than this, inches, is one view: as `extract` has it.
const APART: f64 = 96.0;
/// With more outlines than this the drawing is taken as one part.
const MOST: usize = 20_000;

/// Parts of the drawing.
#[derive(Clone, Debug, Default)]
pub(super) struct Sites {
    pub(super) regions: Vec<Rect>,
    /// The part of each stroke.
    pub(super) of: Vec<Option<usize>>,
    /// The part of each hatch.
    pub(super) of_hatch: Vec<Option<usize>>,
}

/// The parts of a drawing: regions of the job, frames, else walls that stand together.
pub(super) fn sites(lines: &Linework, job: &Job) -> Sites {
    let boxes: Vec<Rect> =
        lines.strokes.iter().map(|s| bounds(&s.points).unwrap_or_default()).collect();
    let hatches: Vec<Rect> = lines.hatches.iter().map(|h| h.hatch.bounds()).collect();
    let regions = regions(lines, job, &boxes, &hatches);
    let of = within(&regions, &boxes);
    let of_hatch = within(&regions, &hatches);
    Sites { regions, of, of_hatch }
}

fn regions(lines: &Linework, job: &Job, boxes: &[Rect], hatches: &[Rect]) -> Vec<Rect> {
    let k = lines.scale.inches;
    let of_job = job.elevation.iter().filter_map(|v| v.region);
    let of_job: Vec<Rect> =
        of_job.map(|[a, b, c, d]| Rect::new(a * k, b * k, c * k, d * k).abs()).collect();
    if !of_job.is_empty() {
        return of_job;
    }
    let of = |role: Role| {
        let strokes = lines.strokes.iter().zip(boxes);
        strokes.filter(move |(s, _)| s.role == Some(role))
    };
    // Not welded yet: a frame may repeat its first corner in place of being closed.
    let round = |s: &Stroke| s.closed || s.points.len() > 3;
    let frames: Vec<Rect> = of(Role::Frame).filter(|(s, _)| round(s)).map(|(_, b)| *b).collect();
    if !frames.is_empty() {
        return frames;
    }
    let mut walls: Vec<Rect> = of(Role::Wall).map(|(_, b)| *b).collect();
    if walls.is_empty() {
        let siding = lines.hatches.iter().zip(hatches);
        walls = siding
            .filter(|(h, _)| h.role != Some(Role::Ignore) && h.hatch.level_spacing().is_some())
            .map(|(_, b)| *b)
            .collect();
    }
    if walls.len() > MOST {
        return walls.into_iter().reduce(|a, b| a.union(b)).into_iter().collect();
    }
    let around = |r: &Rect| r.inflate(APART / 2.0, APART);
    clusters(walls, APART).iter().map(around).collect()
}

/// The region that the middle of each box lies in, the first of them.
fn within(regions: &[Rect], boxes: &[Rect]) -> Vec<Option<usize>> {
    let mut across: Vec<(Point, usize)> =
        boxes.iter().enumerate().map(|(i, b)| (b.center(), i)).collect();
    across.sort_by(|a, b| a.0.x.total_cmp(&b.0.x));
    let mut of = vec![None; boxes.len()];
    for (site, r) in regions.iter().enumerate() {
        let from = across.partition_point(|(p, _)| p.x < r.x0);
        let to = across.partition_point(|(p, _)| p.x <= r.x1);
        for (p, i) in across.get(from..to).unwrap_or_default() {
            if r.contains(*p) && of[*i].is_none() {
                of[*i] = Some(site);
            }
        }
    }
    of
}
