//! Vinyl with foam bonded to its back: vinyl, but for what the foam changes.

use super::system::{
    FasteningRule, JointRule, PanelSize, ReceiverRule, SeamLap, SidingSystem, UsualSize,
};
use super::vinyl;

pub(super) const SYSTEM: SidingSystem = SidingSystem {
    // Siding association's manual, horizontal siding: vinyl laps, foam butts foam.
    joints: JointRule::Lapped(SeamLap::FoamMeetsFoam),
    // A deeper pocket, and a cut low on a face fills a channel by itself: common practice, no source.
    receivers: ReceiverRule::Pockets { depth: 1.125, channel_alone: 1.0 },
    fastening: FasteningRule {
        // Common practice, no source; the hem stands off by the foam.
        shortest: 2.5,
        stand_off: 0.75,
        ..vinyl::SYSTEM.fastening
    },
    // How far foam stops short of the vinyl: common practice, no source.
    usual: UsualSize::Panel(PanelSize { foam_set_back: 0.625, ..vinyl::PANEL }),
    ..vinyl::SYSTEM
};
