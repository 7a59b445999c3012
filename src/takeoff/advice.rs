//! What whoever orders should know.

use super::lines::{siding_piece, siding_piece_of};
use super::panels::lots;
use crate::job::Job;
use crate::layout::laid::LaidHouse;
use crate::model::advice::{Advice, Excluded};
use crate::model::house::OpeningKind;

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
    out.extend([Advice::HiddenWalls, Advice::Excluded { things: excluded(layout) }]);
    out
}

/// One production lot for the house (`TakeoffFact::OneLot`).
fn one_lot(job: &Job) -> Advice {
    Advice::OneLot { piece: siding_piece_of(job), color: job.product.color.clone() }
}

/// What is left out of this takeoff.
fn excluded(layout: &LaidHouse) -> Vec<Excluded> {
    let mut out = vec![
        Excluded::SoffitAndFascia,
        Excluded::Barrier,
        Excluded::Sealant,
        Excluded::BlocksNotDrawn,
        Excluded::Coil,
        Excluded::ShuttersAndVents,
        Excluded::RoofFlashing,
        Excluded::UprightJoints,
        Excluded::FixtureFlashing,
        Excluded::CopingsAndGutters,
    ];
    if layout.walls().any(|(_, w)| w.openings.iter().any(|o| o.kind == OpeningKind::OverheadDoor)) {
        out.push(Excluded::GarageDoorPans);
    }
    if layout.pieces().any(|(.., p)| p.edge_work.furring) {
        out.push(Excluded::Furring);
    }
    out
}
