//! Drawn siding out of loose lines: level lines at one pitch, as exploded hatches and prints leave them,
//! become areas such as hatches are, with outline, pitch and the level of a line.

mod blank;
mod boxed;
mod cap;
mod crossed;
mod drawn_lines;
mod family;
mod judge;
mod of_ink;
mod own;
mod patch;
mod pieces;
mod pitch;
mod run_ons;
mod sloped;
mod stone_rows;
mod told;
mod trace;

use self::drawn_lines::DrawnLines;
use self::patch::{Patch, merged};
use self::pieces::by_key;
pub(in crate::normalize) use self::pieces::{may_be_course, of_notes};
use crate::finding::Findings;
use crate::geom::vocabulary::{BezPath, Point, Rect};
use crate::job::Job;
use crate::model::hatch::{Hatch, LineFamily};
use crate::model::linework::{HatchArea, Linework, Role, Stroke};

/// Most level lines that are looked at.
const MOST: usize = 400_000;

/// Adds the areas of drawn courses to the hatches.
pub(super) fn find(lines: &mut Linework, job: &Job, findings: &mut Findings) {
    let regions = regions(lines, job);
    if has_outlines(lines, &regions) {
        return;
    }
    let seen = |b: Rect| regions.is_empty() || regions.iter().any(|r| r.contains(b.center()));
    let by_key = by_key(lines, seen, MOST);
    let drawn = DrawnLines::of(lines, seen);
    let found = by_key.into_iter().flat_map(|(key, pieces)| of_ink::patches(key, pieces, &drawn));
    let (kept, refused) = judge::judged(merged(found.collect()), lines, (&drawn, &seen));
    told::tell(lines, &kept, &refused, findings);
    for patch in kept {
        let area = area(lines, &patch);
        lines.hatches.push(area);
    }
}

/// Whether the drawing has walls as closed outlines on agreed layers: then drawn courses are texture.
fn has_outlines(lines: &Linework, regions: &[Rect]) -> bool {
    let seen = |s: &Stroke| regions.is_empty() || s.meets_any(regions);
    let is_outline =
        |s: &Stroke| s.role == Some(Role::Wall) && s.closed && s.points.len() >= 3 && seen(s);
    lines.strokes.iter().any(is_outline)
}

/// Regions of the job's views, inches; none where a view is not limited to one.
pub(super) fn regions(lines: &Linework, job: &Job) -> Vec<Rect> {
    let k = lines.scale.inches;
    let of = |v: &crate::job::drawing::View| {
        v.region.map(|[a, b, c, d]| {
            Rect::from_points(Point::new(a * k, b * k), Point::new(c * k, d * k))
        })
    };
    job.views().map(of).collect::<Option<Vec<_>>>().unwrap_or_default()
}

/// A patch as a hatch: outline, pitch and a point of one line.
fn area(lines: &Linework, patch: &Patch) -> HatchArea {
    let first = lines.strokes.get(patch.stroke);
    let family = LineFamily {
        angle: 0.0,
        base: patch.level,
        offset: (0.0, patch.pitch),
        dashes: Vec::new(),
    };
    let ring = |r: &Vec<Point>| {
        let mut path = BezPath::new();
        for (i, p) in r.iter().enumerate() {
            if i == 0 { path.move_to(*p) } else { path.line_to(*p) }
        }
        path.close_path();
        path
    };
    let loops = patch.areas.iter().flat_map(|p| p.rings().map(ring).collect::<Vec<_>>()).collect();
    HatchArea {
        hatch: Hatch { loops, families: vec![family], ..Hatch::default() },
        role: first.and_then(|s| s.role),
        layer: patch.key.0,
        group: None,
        outlined: false,
        course_lines: patch.lines,
        no_siding: None,
        origin: first.map(|s| s.origin.clone()).unwrap_or_default(),
    }
}
