//! Vinyl without foam.

use super::system::{
    Caution, ClearanceRule, CornerRule, CourseRule, CutEdgeRule, EndGapRule, FasteningRule,
    JointRule, MovementRule, NailHold, NailMaterial, NailedThrough, PanelSize, ReceiverRule,
    RipHalves, SeamLap, SidingSystem, SoldBy, TrimGapRule, UsualSize,
};

pub(super) const SYSTEM: SidingSystem = SidingSystem {
    // Siding association's manual, horizontal siding: half of a factory notch of 2 in.
    joints: JointRule::Lapped(SeamLap::HalfFactoryNotch(1.0)),
    courses: CourseRule::Locked,
    // The pocket: trade vocabulary, common practice, no source. Undersill trim under every sill:
    // siding association on windy places.
    receivers: ReceiverRule::Pockets { depth: 0.75, channel_alone: 0.0 },
    corners: POSTS,
    end_gap: END_GAP,
    clear: CLEAR,
    trim_gaps: GAPS,
    cut_edge: CutEdgeRule::Lugs,
    rip_halves: RipHalves::LockAndHem,
    fastening: FasteningRule {
        through: NailedThrough::Slots,
        material: NailMaterial::CorrosionResistant,
        // Siding association's manual, horizontal siding; IRC R703.
        holds: NailHold::SheathingAndFraming,
        penetration: 1.25,
        // A house-building handbook: 1 1/2 to 2 in.
        shortest: 1.5,
        shank: SHANK,
        lengths_per_inch: 2.0,
        stand_off: 0.0,
    },
    movement: Some(MOVEMENT),
    sold_by: SoldBy::Carton,
    usual: UsualSize::Panel(PANEL),
    cautions: &[Caution::CuttingVinyl, Caution::HeatSoftens],
};

/// Siding association's manual, horizontal siding: 1/4 in, 3/8 in below 40 F; from 20 ft on as the
/// manufacturer states.
pub(super) const END_GAP: EndGapRule =
    EndGapRule { usual: 0.25, cold: 0.375, ask_from: Some(240.0) };

/// Posts: siding association's manual, accessories (`TrimFact::PostTopGap`, `TrimFact::PostPastStarter`).
/// Starter: Journal of Light Construction on vinyl siding (`TrimFact::StarterGaps`).
pub(super) const GAPS: TrimGapRule =
    TrimGapRule { post_top: 0.25, post_below: 0.75, starter: 0.25 };

/// Bottoms of the pockets of usual corner posts: common practice, no source.
pub(super) const POSTS: CornerRule = CornerRule { outside: 2.0, inside: 1.0 };

/// To roofs: siding association on IRC R703 (`TrimFact::RoofClearance`). On a ledge the starter stands.
pub(super) const CLEAR: ClearanceRule = ClearanceRule { roof: 0.5, ledge: 0.0 };

/// Ceiling for rigid PVC: CAN/CGSB-41.24, ASTM D3679 (the latter from memory).
pub(super) const MOVEMENT: MovementRule = MovementRule { expansion: 4.5e-5 };

/// IRC R703.
pub(super) const SHANK: f64 = 0.12;

/// A double 4 of 12 ft 6 in, two squares to a carton: usage of the trade. Hem and lock: common
/// practice, no source.
pub(super) const PANEL: PanelSize = PanelSize {
    length: 150.0,
    faces: 2,
    face_height: 4.0,
    foam_set_back: 0.0,
    hem: 1.25,
    lock: 0.75,
    carton: 24,
};
