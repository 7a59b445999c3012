//! Lap siding roll-formed of coated sheet steel: hangs and locks as vinyl does, but hardly moves.

use super::system::{
    Caution, CourseRule, CutEdgeRule, EndGapRule, FasteningRule, JointRule, MovementRule, NailHold,
    NailMaterial, NailedThrough, PanelSize, ReceiverRule, RipHalves, SeamLap, SidingSystem, SoldBy,
    UsualSize,
};
use super::vinyl;

pub(super) const SYSTEM: SidingSystem = SidingSystem {
    // Customary, from memory.
    joints: JointRule::Lapped(SeamLap::Customary(1.25)),
    courses: CourseRule::Locked,
    // As for plain vinyl, whose accessories it shares in shape: common practice, no source.
    receivers: ReceiverRule::Pockets { depth: 0.75, channel_alone: 0.0 },
    // Posts as for vinyl: common practice, no source.
    corners: vinyl::POSTS,
    // From memory; the cold day is no different, since it hardly moves.
    end_gap: EndGapRule { usual: 0.125, cold: 0.125, ask_from: None },
    // As for vinyl: common practice, no source.
    clear: vinyl::CLEAR,
    // As vinyl's: common practice, no source.
    trim_gaps: vinyl::GAPS,
    // Sheet steel takes no lugs that hold; cut edges are nailed through undersill trim: common
    // practice, no source.
    cut_edge: CutEdgeRule::TrimNails,
    rip_halves: RipHalves::LockAndHem,
    fastening: FasteningRule {
        through: NailedThrough::Slots,
        // Copper and aluminum corrode with zinc-coated steel: common practice, no source.
        material: NailMaterial::GalvanizedSteel,
        // IRC Table R703.3(1), steel siding over wood sheathing, from memory: 0.113 in by 1 3/4 in.
        // Penetration: from memory.
        holds: NailHold::SheathingAndFraming,
        penetration: 1.0,
        shortest: 1.75,
        shank: 0.113,
        lengths_per_inch: 4.0,
        stand_off: 0.0,
    },
    // Handbooks for structural steel: 6.5e-6 to an inch and F (11.7e-6 to a K; EN 1993-1-1, 3.2.6,
    // has 12e-6).
    movement: Some(MovementRule { expansion: 6.5e-6 }),
    sold_by: SoldBy::Carton,
    // A double 4 of 12 ft 6 in, a square to a carton, hem and lock: common practice, no source.
    usual: UsualSize::Panel(PanelSize {
        length: 150.0,
        faces: 2,
        face_height: 4.0,
        foam_set_back: 0.0,
        hem: 1.25,
        lock: 0.75,
        carton: 12,
    }),
    cautions: &[
        Caution::SharpEdges,
        Caution::CuttingSteel,
        Caution::Corrosion,
        Caution::MetalConducts,
    ],
};
