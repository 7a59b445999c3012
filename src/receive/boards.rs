//! Boards stand in no channel: they butt against casings, friezes and other trim with a gap to caulk
//! (`TrimFact::FiberCementJoints`). Corner boards stand where posts do, a starter piece under every first
//! board, cut or not: it stands in for the head of a board below (`TrimFact::FiberCementStarter`).

use crate::geom::tol::level;
use crate::model::house::EdgeKind;
use crate::model::receiver::{Field, FieldEdge, Receiver};

/// The field of panels as a field of boards.
pub fn for_boards(mut field: Field) -> Field {
    for e in &mut field.edges {
        if starts(e) {
            e.receiver = Receiver::Starter;
            continue;
        }
        e.receiver = match e.receiver {
            Receiver::JChannel | Receiver::FinishTrim | Receiver::RakeChannel => Receiver::Trim,
            other => other,
        };
    }
    field
}

/// Whether boards start from a side: a level one with siding over it, but an opening's.
fn starts(e: &FieldEdge) -> bool {
    let bottom = matches!(e.kind, EdgeKind::Base | EdgeKind::BareTop | EdgeKind::LowerRoof);
    bottom && e.opening.is_none() && level(e.to.y - e.from.y)
}
