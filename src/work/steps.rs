//! A wall's work in order (`LayoutFact::OrderOfWork`): barrier and flashing, posts, starter,
//! channels, panels from the bottom up, undersill trim where cut edges come.

use std::collections::BTreeMap;

use super::trim_index::{TrimIndex, mark};
use super::{cut_edges, flashing};
use crate::job::Job;
use crate::layout::wall::{LaidElevation, LaidWall};
use crate::model::house::EdgeKind;
use crate::model::ids::TrimMark;
use crate::model::trim::TrimKind;
use crate::model::work::{Begins, CoursesBegin, FrameTrim, WallWork, WorkStep};

/// Channels that stand at no opening.
const CHANNELS: [TrimKind; 4] =
    [TrimKind::WallChannel, TrimKind::CornerChannel, TrimKind::RoofChannel, TrimKind::RakeChannel];
/// Trim that siding runs up to.
const BEFORE: [TrimKind; 5] =
    [TrimKind::CornerCover, TrimKind::Band, TrimKind::Filler, TrimKind::Frieze, TrimKind::TopBase];
/// Trim that closes the top.
const AFTER: [TrimKind; 3] = [TrimKind::TopPanel, TrimKind::TopFace, TrimKind::Crown];

/// A wall's own work, in order.
pub(super) fn steps(
    index: &TrimIndex,
    (e, w): (&LaidElevation, &LaidWall),
    work: &WallWork,
    (job, kick_out): (&Job, bool),
) -> Vec<WorkStep> {
    let boards = !job.siding().receivers.has_pockets();
    let mut out = vec![WorkStep::Barrier { flashing: flashing::flashed(w, kick_out) }];
    out.extend(corners(index, (e, w), boards));
    out.extend(cut_edges::start(index, w, (!boards).then_some(job.trim.starter_line)));
    let openings = frames(index, w);
    if !openings.is_empty() {
        out.push(WorkStep::Frames { openings });
    }
    let marks = index.marks(w, &CHANNELS);
    if !marks.is_empty() {
        out.push(WorkStep::Channels { marks });
    }
    let trim = index.by_kind(w, &BEFORE);
    if !trim.is_empty() {
        out.push(WorkStep::BeforeSiding { trim });
    }
    out.extend((0..work.restricted.len()).map(|place| WorkStep::RestrictedAccess { place }));
    out.extend(siding(w, work, boards));
    if !work.level_checks.is_empty() {
        out.push(WorkStep::CheckLevel);
    }
    if !boards {
        out.extend(cut_edges::steps(index, w));
        out.extend(cut_edges::held(w));
    }
    let trim = index.by_kind(w, &AFTER);
    if !trim.is_empty() {
        out.push(WorkStep::AfterSiding { trim });
    }
    out
}

/// Posts or boards of a wall's corners; none for a wall without a corner.
fn corners(
    index: &TrimIndex,
    (e, w): (&LaidElevation, &LaidWall),
    boards: bool,
) -> Option<WorkStep> {
    let corner = |k: EdgeKind| matches!(k, EdgeKind::OutsideCorner | EdgeKind::InsideCorner);
    w.edges.iter().any(|s| corner(s.kind)).then(|| WorkStep::Corners {
        boards,
        marks: index.marks(w, &[TrimKind::OutsidePost, TrimKind::InsidePost]),
        counted_elsewhere: index.counted_elsewhere(&e.name, w),
    })
}

/// Openings with the marks of their frames.
fn frames(index: &TrimIndex, w: &LaidWall) -> Vec<FrameTrim> {
    let mut by_opening: BTreeMap<&str, Vec<TrimMark>> = BTreeMap::new();
    for t in index.on_wall(w).filter(|t| t.kind != TrimKind::FinishTrim && !t.kind.behind()) {
        if let Some(o) = &t.opening {
            by_opening.entry(o).or_default().push(mark(t));
        }
    }
    let frame = |id: &str| {
        let marks = by_opening.get(id)?.clone();
        Some(FrameTrim { opening: id.into(), marks })
    };
    w.openings.iter().filter_map(|o| frame(&o.id)).collect()
}

/// Courses, and at which end their seamed runs begin.
fn siding(w: &LaidWall, work: &WallWork, boards: bool) -> Vec<WorkStep> {
    let (Some(first), Some(last)) = (w.courses.first(), w.courses.last()) else {
        return Vec::new();
    };
    let (from_course, to_course) = (first.index + 1, last.index + 1);
    let mut out = vec![WorkStep::Siding { boards, from_course, to_course }];
    let mut by_end: BTreeMap<Begins, Vec<i32>> = BTreeMap::new();
    for r in &work.runs {
        let list = by_end.entry(r.begins).or_default();
        if list.last() != Some(&r.course) {
            list.push(r.course);
        }
    }
    if !by_end.is_empty() {
        let begins =
            by_end.into_iter().map(|(begins, courses)| CoursesBegin { begins, courses }).collect();
        out.push(WorkStep::LapDirection { begins });
    }
    out
}
