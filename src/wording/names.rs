//! The trade's names for sides, receivers, ends and cuts.

use crate::layout::piece::EndCut;
use crate::model::corner::Hand;
use crate::model::house::{EdgeKind, OpeningSide};
use crate::model::receiver::{BareBy, Receiver};

/// A side of a wall or an opening.
pub fn edge(kind: EdgeKind) -> &'static str {
    match kind {
        EdgeKind::Base => "base",
        EdgeKind::OutsideCorner => "outside corner",
        EdgeKind::InsideCorner => "inside corner",
        EdgeKind::Abutment => "abutment",
        EdgeKind::Eave => "eave",
        EdgeKind::Rake => "rake",
        EdgeKind::LowerRoof => "side over a lower roof",
        EdgeKind::BareTop => "top of an area without siding",
        EdgeKind::BareBottom => "bottom of an area without siding",
        EdgeKind::Jamb => "jamb",
        EdgeKind::Head => "head",
        EdgeKind::Sill => "sill",
    }
}

/// What takes the end of a panel.
pub fn receiver(receiver: Receiver) -> &'static str {
    match receiver {
        Receiver::Starter => "starter strip",
        Receiver::OutsidePost => "outside corner post",
        Receiver::InsidePost => "inside corner post",
        Receiver::JChannel => "J-channel",
        Receiver::FinishTrim => "undersill (finish) trim",
        Receiver::RakeChannel => "J-channel along the rake",
        Receiver::Trim => "trim to butt against",
        Receiver::TopFinish => "top finish",
    }
}

/// Why wall gets no siding.
pub fn bare(by: BareBy) -> &'static str {
    match by {
        BareBy::NearGrade => "too near to finished grade",
        BareBy::OverRoof => "in the clearance over lower roofs",
        BareBy::BehindRoof => "behind lower roofs",
        BareBy::Filler => "under filler boards",
        BareBy::StopsShort => "where the outline stops short of a roof line or the next wall",
    }
}

/// Left or right.
pub fn hand(hand: Hand) -> &'static str {
    match hand {
        Hand::Left => "left",
        Hand::Right => "right",
    }
}

/// A side of an opening.
pub fn opening_side(side: OpeningSide) -> &'static str {
    match side {
        OpeningSide::Left => "left jamb",
        OpeningSide::Right => "right jamb",
        OpeningSide::Sill => "sill",
        OpeningSide::Head => "head",
    }
}

/// How an end of a piece is cut.
pub fn end_cut(cut: EndCut) -> &'static str {
    match cut {
        EndCut::Factory => "factory end",
        EndCut::Square => "square cut",
        EndCut::Angled => "angled cut",
        EndCut::Shaped => "shaped cut",
    }
}
