//! Corners of the house.

use crate::language::{Said, said};
use crate::model::corner::{CornerKind, Pairing};

/// Heading of the list.
pub const HEADING: &str = "CORNERS (name, kind, heights, wall around it)";

/// How its walls were brought together.
pub fn pairing(by: Pairing) -> &'static str {
    match by {
        Pairing::Tag => "by its tag",
        Pairing::Wrap => "by the order of elevations",
        Pairing::WrapAlone => "by the order of elevations, heights differ",
        Pairing::Height => "by height",
        Pairing::Neighbor => "neighbors on one elevation, at an angle",
        Pairing::Job => "given by the job",
        Pairing::Bare => "no siding around it",
        Pairing::Open => "RETURN: CONFIRM WIDTH",
    }
}

/// Which way it turns.
pub fn kind(kind: CornerKind) -> Said {
    match kind {
        CornerKind::Outside => said("outside", "exterior"),
        CornerKind::Inside => said("inside", "interior"),
    }
}
