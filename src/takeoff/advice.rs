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
    let mut angles: Vec<f64> = layout.corners.iter().filter_map(|c| c.angle).collect();
    angles.sort_by(f64::total_cmp);
    for alike in angles.chunk_by(|a, b| a == b) {
        out.push(Advice::PostAngle { corners: alike.len(), angle: alike[0] });
    }
    out.extend([Advice::HiddenWalls, Advice::Excluded { things: excluded(layout) }]);
    out
}

/// One production lot for the house (`TakeoffFact::OneLot`).
fn one_lot(job: &Job) -> Advice {
    Advice::OneLot { piece: siding_piece_of(job), color: job.product.color.clone() }
}

/// What is left out of this takeoff.
fn excluded(layout: &LaidHouse) -> Vec<Excluded> {
    let rules = &layout.job.estimate;
    let soffit = rules.soffit_depth > 0.0 || rules.rake_soffit_depth > 0.0;
    let wraps = [rules.wrap_fascia, rules.wrap_frieze, rules.wrap_band, rules.wrap_surround];
    let coil = wraps.into_iter().any(|girth| girth > 0.0);
    let furred = || layout.pieces().any(|(.., p)| p.edge_work.furring);
    let garage = || {
        let mut openings = layout.walls().flat_map(|(_, w)| &w.openings);
        openings.any(|o| o.kind == OpeningKind::OverheadDoor)
    };
    let all = [
        (Excluded::SoffitAndFascia, !(soffit && rules.fascia > 0.0)),
        (Excluded::Barrier, !rules.barrier),
        (Excluded::Sealant, !rules.sealant),
        (Excluded::Furring, !rules.furring && furred()),
        (Excluded::BlocksNotDrawn, rules.blocks == 0),
        (Excluded::Coil, !coil),
        (Excluded::ShuttersAndVents, rules.shutters == 0 && rules.vents == 0),
        (Excluded::RoofFlashing, true),
        (Excluded::UprightJoints, true),
        (Excluded::GarageDoorPans, garage()),
        (Excluded::FixtureFlashing, true),
        (Excluded::CopingsAndGutters, true),
    ];
    all.into_iter().filter(|(_, left_out)| *left_out).map(|(thing, _)| thing).collect()
}
