//! Boards stand in no channel: they butt against casings, friezes and other trim with a gap to caulk
//! (`TrimFact::FiberCementJoints`). Corner boards stand where posts do, a starter piece where a strip
//! does.

use crate::model::receiver::{Field, Receiver};

/// The field of panels as a field of boards.
pub fn for_boards(mut field: Field) -> Field {
    for e in &mut field.edges {
        e.receiver = match e.receiver {
            Receiver::JChannel | Receiver::FinishTrim | Receiver::RakeChannel => Receiver::Trim,
            other => other,
        };
    }
    field
}
