//! Boards of wood, beveled or of even thickness, lapped at their heads.

use super::system::{
    BoardSize, Caution, ClearanceRule, CornerRule, CourseRule, CutEdgeRule, EndGapRule,
    FasteningRule, JointRule, NailHold, NailMaterial, NailedThrough, ReceiverRule, RipHalves,
    SidingSystem, SoldBy, TrimGapRule, UsualSize,
};
use super::vinyl;

pub(super) const SYSTEM: SidingSystem = SidingSystem {
    // Ends butt tight: common practice, no source.
    joints: JointRule::ButtOnStuds { gap: 0.0, backing: false },
    courses: CourseRule::HeadLapped,
    receivers: ReceiverRule::TrimBoards,
    // A board 3 1/2 in wide on either wall of an outside corner, a 1 in strip in an inside one, as
    // 1x4 and 5/4 stock dress: common practice, no source.
    corners: CornerRule { outside: 3.5, inside: 1.0 },
    // A gap to caulk: common practice, no source.
    end_gap: EndGapRule { usual: 0.125, cold: 0.125, ask_from: None },
    // To roofs 2 in (50 mm): Ontario Building Code, cladding that moisture harms
    // (`TrimFact::BoardRoofClearance`). On a ledge: common practice, no source
    // (`TrimFact::LedgeClearance`).
    clear: ClearanceRule { roof: 2.0, ledge: 0.25 },
    // Corner boards butt the soffit, stand even with the lowest boards, and lengths of the starter piece
    // butt one another and them: they neither hang nor grow. Common practice, no source.
    trim_gaps: TrimGapRule { post_top: 0.0, post_below: 0.0, starter: 0.0 },
    cut_edge: CutEdgeRule::FaceNails,
    rip_halves: RipHalves::WithinWidth,
    fastening: FasteningRule {
        through: NailedThrough::Studs,
        material: NailMaterial::CorrosionResistant,
        // California Redwood Association: 1 1/2 in through sheathing into studs, in all.
        holds: NailHold::SheathingAndFraming,
        // NAVEDTRA 14044.
        penetration: 1.5,
        shortest: 0.0,
        shank: vinyl::SHANK,
        // Nails through boards are stocked by the quarter inch: California Redwood Association.
        lengths_per_inch: 4.0,
        stand_off: 0.0,
    },
    // Wood moves little along its grain.
    movement: None,
    sold_by: SoldBy::Piece,
    usual: UsualSize::Board(BoardSize {
        // 16 ft: common practice, no source.
        length: 192.0,
        // NAVEDTRA 14044: an 8 in board with 6 in exposed, lapped 1 in at least.
        width: 8.0,
        head_lap: 1.0,
        covered: Some(2.0),
        // California Redwood Association.
        thickness: 0.5,
        // Common practice, no source.
        starter: 0.25,
    }),
    cautions: &[Caution::CuttingWood, Caution::LeadPaint],
};
