//! Boards of fiber-cement, lapped at their heads: laid as wood is, but for its figures.

use super::system::{
    BoardSize, Caution, FasteningRule, JointRule, NailHold, SidingSystem, UsualSize,
};
use super::wood;

pub(super) const SYSTEM: SidingSystem = SidingSystem {
    // Journal of Light Construction on fiber-cement: its gap at trim, and flashing behind joints.
    joints: JointRule::ButtOnStuds { gap: 0.125, backing: true },
    fastening: FasteningRule {
        // IBC 1405.16 as summarized in a trade journal: 1 in into studs.
        holds: NailHold::Studs,
        penetration: 1.0,
        ..wood::SYSTEM.fastening
    },
    usual: UsualSize::Board(BoardSize {
        // 12 ft: common practice, no source.
        length: 144.0,
        // From memory.
        width: 8.25,
        // Journal of Light Construction on fiber-cement; IRC R703.10.2 (from memory).
        head_lap: 1.25,
        covered: None,
        // From memory.
        thickness: 0.3125,
        // Journal of Light Construction on fiber-cement.
        starter: 0.25,
    }),
    cautions: &[Caution::SilicaDust, Caution::LeadPaint],
    ..wood::SYSTEM
};
