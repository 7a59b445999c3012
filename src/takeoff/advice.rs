//! What whoever orders should know.

use super::lines::{siding_piece, siding_piece_of};
use super::panels::lots;
use crate::job::Job;
use crate::layout::laid::LaidHouse;
use crate::model::advice::Advice;

/// Facts for the report, the workbook and the notes.
pub(super) fn advice(layout: &LaidHouse) -> Vec<Advice> {
    let mut out = vec![one_lot(&layout.job)];
    let over: f64 = lots(layout).iter().map(|l| l.bought() - l.count() - l.spare).sum();
    let piece = siding_piece(layout);
    if over > 0.0 {
        out.push(Advice::WholeCartons { piece, over });
    }
    out.push(if layout.job.siding().receivers.has_pockets() {
        Advice::MatchingTrim { pocket: layout.job.pocket() }
    } else {
        Advice::BoardTrim { starter: layout.job.starter_thickness() }
    });
    let mut angles: Vec<f64> = layout.corners.iter().filter_map(|c| c.angle).collect();
    angles.sort_by(f64::total_cmp);
    for alike in angles.chunk_by(|a, b| a == b) {
        out.push(Advice::PostAngle { corners: alike.len(), angle: alike[0] });
    }
    out.extend([Advice::HiddenWalls, Advice::NotCounted]);
    out
}

/// One production lot for the house (`TakeoffFact::OneLot`).
fn one_lot(job: &Job) -> Advice {
    Advice::OneLot { piece: siding_piece_of(job), color: job.product.color.clone() }
}
