//! What holds on every wall.

use crate::job::Job;
use crate::job::siding::system::CutEdgeRule;
use crate::model::fastening::UNDER_HEAD;
use crate::model::work::WorkRule;

/// The rules of a house's siding, in the order of the work.
pub(super) fn everywhere(job: &Job) -> Vec<WorkRule> {
    let gap = job.end_gap();
    if !job.siding().receivers.has_pockets() {
        return vec![
            WorkRule::BarrierAndFlashing,
            WorkRule::BoardTrimFirst,
            WorkRule::BoardsFromBottom { gap },
        ];
    }
    vec![
        WorkRule::BarrierAndFlashing,
        WorkRule::HangPosts { top_gap: job.trim_gaps().post_top, under_head: UNDER_HEAD },
        WorkRule::SpaceStarters { gap: job.trim_gaps().starter },
        WorkRule::FrameOpenings,
        WorkRule::PanelsFromBottom { gap },
        WorkRule::LapsFaceAway { foam: job.product.has_foam() },
        hold_cut_edges(job),
    ]
}

fn hold_cut_edges(job: &Job) -> WorkRule {
    let (lug_spacing, slot_spacing) = (job.courses.lug_spacing, job.courses.slot_spacing);
    match job.siding().cut_edge {
        CutEdgeRule::TrimNails => WorkRule::NailCutEdges { spacing: slot_spacing },
        _ => WorkRule::HoldCutEdges { lug_spacing, slot_spacing },
    }
}
