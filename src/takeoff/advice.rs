//! What whoever orders should know.

use super::lines::siding_piece;
use super::panels::lots;
use crate::job::Job;
use crate::layout::Layout;
use crate::model::advice::Advice;
use crate::model::item::SidingPiece;

/// Facts for the report, the workbook and the notes.
pub(super) fn advice(layout: &Layout) -> Vec<Advice> {
    let mut out = vec![one_lot(&layout.job)];
    let over: f64 = lots(layout).iter().map(|l| l.bought() - l.count() - l.spare).sum();
    let piece = siding_piece(layout);
    if over > 0.0 {
        out.push(Advice::WholeCartons { piece, over });
    }
    out.push(match piece {
        SidingPiece::Board => Advice::BoardTrim { starter: layout.job.boards.starter() },
        SidingPiece::Panel => Advice::MatchingTrim { pocket: layout.job.pocket() },
    });
    out.extend([Advice::HiddenWalls, Advice::NotCounted]);
    out
}

/// One production lot for the house (FACTS SD-15).
pub fn one_lot(job: &Job) -> Advice {
    Advice::OneLot {
        piece: SidingPiece::of_boards(job.product.kind.is_board()),
        color: job.product.colour.clone(),
    }
}
