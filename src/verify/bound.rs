//! Which proof of the panel bound a layout has: of one length, of mixed lengths, or of boards.

use super::claims::Claims;
use super::dual::{PanelFrame, sixteenths};
use super::{certificate, joints, mixed};
use crate::layout::course::LaidRun;
use crate::layout::verified::RuleCheck;

pub(super) fn check(layout: &Claims) -> RuleCheck {
    if layout.job.siding().joints.is_on_studs() {
        return joints::bound(layout);
    }
    let runs: Vec<&LaidRun> =
        layout.walls().flat_map(|(_, w)| &w.courses).flat_map(|c| &c.runs).collect();
    let off_grid = |r: &&&LaidRun| (r.x0 * 16.0).fract() != 0.0 || (r.x1 * 16.0).fract() != 0.0;
    let shortest =
        sixteenths(layout.job.seams.shortest) + i128::from(runs.iter().any(|r| off_grid(&r)));
    let frame = PanelFrame {
        panel: sixteenths(layout.first_length()),
        lap: sixteenths(layout.job.lap()),
        kerf: sixteenths(layout.job.seams.kerf),
        shortest,
        short_seams: layout.job.seams.seam_short_runs,
    };
    if layout.stocks.len() > 1 || layout.bound.certificate.mixed.is_some() {
        mixed::check(layout, &runs, frame)
    } else {
        certificate::check(layout, &runs, frame)
    }
}
