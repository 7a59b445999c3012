//! Which proof of the panel bound a layout has: of one length, of mixed lengths, or of boards.

use super::claims::Claims;
use super::dual::{PanelFrame, down, off_step, up};
use super::{certificate, joints, mixed};
use crate::layout::course::LaidRun;
use crate::layout::verified::RuleCheck;

pub(super) fn check(layout: &Claims) -> RuleCheck {
    if layout.job.siding().joints.is_on_studs() {
        return joints::bound(layout);
    }
    let runs: Vec<&LaidRun> =
        layout.walls().flat_map(|(_, w)| &w.courses).flat_map(|c| &c.runs).collect();
    let steps = layout.job.steps();
    let off_step = runs.iter().any(|r| off_step(r, steps));
    let shortest = up(layout.job.shortest(), steps) + i128::from(off_step);
    let frame = PanelFrame {
        steps,
        panel: down(layout.first_length(), steps),
        lap: up(layout.job.lap(), steps),
        kerf: up(layout.job.seams.kerf, steps),
        shortest,
        short_seams: layout.job.seams.seam_short_runs,
    };
    if layout.stocks.len() > 1 || layout.bound.certificate.mixed.is_some() {
        mixed::check(layout, &runs, frame)
    } else {
        certificate::check(layout, &runs, frame)
    }
}
