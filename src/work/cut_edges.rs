//! Undersill trim where a cut edge comes: at starts off the course line, under sills and at tops.

use std::collections::BTreeMap;

use super::trim_index::{TrimIndex, mark};
use crate::geom::tol::same;
use crate::layout::wall::{LaidEdge, LaidWall};
use crate::model::hold::{HeldPieces, Hold};
use crate::model::house::EdgeKind;
use crate::model::ids::PieceMark;
use crate::model::receiver::Receiver;
use crate::model::trim::{SillTrim, TrimKind, TrimPiece};
use crate::model::work::{CutStart, WorkStep};

fn is_bottom(e: &LaidEdge) -> bool {
    matches!(e.kind, EdgeKind::Base | EdgeKind::BareTop)
}

/// What a first course starts in; none for a wall without a level bottom.
pub(super) fn start(index: &TrimIndex, w: &LaidWall, snapped: Option<f64>) -> Option<WorkStep> {
    let marks = index.marks(w, &[TrimKind::Starter]);
    let mut heights: Vec<f64> =
        w.edges.iter().filter(|e| e.receiver == Receiver::Starter).map(|e| e.from[1]).collect();
    heights.sort_by(f64::total_cmp);
    heights.dedup_by(|a, b| same(*a, *b));
    let is_cut = w.edges.iter().any(|e| is_bottom(e) && e.receiver != Receiver::Starter);
    let cut = is_cut.then(|| CutStart {
        held_in: index.on_wall(w).filter(|t| holds_first_course(t, w)).map(mark).collect(),
    });
    if marks.is_empty() || heights.is_empty() {
        let (marks, heights) = (Vec::new(), Vec::new());
        return cut.is_some().then_some(WorkStep::Start { marks, heights, snapped: None, cut });
    }
    Some(WorkStep::Start { marks, heights, snapped, cut })
}

/// Whether undersill trim holds the cut bottom of a first course (`TrimFact::CutFirstCourse`).
fn holds_first_course(t: &TrimPiece, w: &LaidWall) -> bool {
    let along = |e: &LaidEdge| {
        let (low, high) = (e.from[0].min(e.to[0]), e.from[0].max(e.to[0]));
        let middle = (t.from[0] + t.to[0]) / 2.0;
        same(e.from[1], t.from[1]) && low <= middle && middle <= high
    };
    t.kind == TrimKind::FinishTrim
        && t.opening.is_none()
        && w.edges.iter().any(|e| is_bottom(e) && along(e))
}

/// Trim before the courses that meet sills and tops, and the pattern of a gable.
pub(super) fn steps(index: &TrimIndex, w: &LaidWall) -> Vec<WorkStep> {
    let finish = |t: &&TrimPiece| t.kind == TrimKind::FinishTrim && !holds_first_course(t, w);
    let mut out = Vec::new();
    let under_sill = |t: &TrimPiece| {
        let opening = t.opening.clone()?;
        Some(SillTrim { mark: mark(t), opening })
    };
    let trim: Vec<SillTrim> = index.on_wall(w).filter(finish).filter_map(under_sill).collect();
    if !trim.is_empty() {
        out.push(WorkStep::TrimUnderSills { trim });
    }
    let tops = index.on_wall(w).filter(finish).filter(|t| t.opening.is_none());
    let marks: Vec<_> = tops.map(mark).collect();
    if !marks.is_empty() {
        out.push(WorkStep::TrimAtTop { marks });
    }
    if w.edges.iter().any(|e| e.kind == EdgeKind::Rake) {
        out.push(WorkStep::GablePattern);
    }
    out
}

/// Pieces that keep no hem, or no lock, by how they are held.
pub(super) fn held(w: &LaidWall) -> Option<WorkStep> {
    let mut by: BTreeMap<Hold, Vec<PieceMark>> = BTreeMap::new();
    for p in w.courses.iter().flat_map(|c| &c.runs).flat_map(|r| &r.pieces) {
        for hold in &p.edge_work.holds {
            by.entry(*hold).or_default().push(p.mark.clone());
        }
    }
    let pieces: Vec<HeldPieces> =
        by.into_iter().map(|(hold, marks)| HeldPieces { hold, marks }).collect();
    (!pieces.is_empty()).then_some(WorkStep::HoldPieces { pieces })
}
