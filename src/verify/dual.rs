//! Dual-feasible functions of a panel's share, evaluated in whole numbers of 1/16 in.

use crate::layout::course::LaidRun;
use crate::model::seam::Dual;

/// One panel with its kerf, sixteenths, and the rules that bound a run.
#[derive(Clone, Copy)]
pub(super) struct PanelFrame {
    pub(super) panel: i128,
    pub(super) lap: i128,
    pub(super) kerf: i128,
    pub(super) shortest: i128,
    pub(super) short_seams: bool,
}

pub(super) fn sixteenths(x: f64) -> i128 {
    (x * 16.0).round() as i128
}

/// A whole number for a violation; one that no count can be is the greatest.
pub(super) fn whole(n: i128) -> i64 {
    i64::try_from(n).unwrap_or(i64::MAX)
}

/// Whether the pieces of a panel never sum to more than one under it, whatever they are: true of
/// these functions within these bounds (Fekete and Schepers 2001).
pub(super) fn dual_feasible(dual: Dual, room: i128) -> bool {
    match dual {
        Dual::Length => true,
        // More steps than sixteenths could overflow, and tell nothing.
        Dual::Rounded(k) => k >= 1 && i128::from(k) <= room,
        Dual::Clipped(e) | Dual::Counted(e) => e >= 1 && 2 * i128::from(e) <= room,
    }
}

/// What the parts of a run cover: outward to whole sixteenths, cut at fixed seams.
pub(super) fn covers(r: &LaidRun, f: &PanelFrame) -> Vec<i128> {
    let gap = sixteenths(r.gap);
    let (mut at, end) = ((r.x0 * 16.0).floor() as i128 + gap, (r.x1 * 16.0).ceil() as i128 - gap);
    let mut out = Vec::new();
    for s in &r.fixed {
        // A fixed seam is the middle of its lap.
        let right = sixteenths(*s + 1.0 / 64.0) + f.lap / 2;
        out.push(right - at);
        at = right - f.lap;
    }
    out.push(end - at);
    out.retain(|c| *c > 0);
    out
}

/// Value of a piece charged one kerf, and of a whole panel.
pub(super) fn worth(dual: Dual, w: i128, f: &PanelFrame) -> (i128, i128) {
    let room = f.panel + f.kerf;
    match dual {
        Dual::Length => (w, room),
        Dual::Rounded(k) => {
            let k = i128::from(k);
            let whole = (k + 1) * w / room;
            (if whole * room == (k + 1) * w { k * w } else { whole * room }, k * room)
        }
        Dual::Clipped(e) => {
            let e = i128::from(e);
            (
                if w > room - e {
                    room
                } else if w >= e {
                    w
                } else {
                    0
                },
                room,
            )
        }
        Dual::Counted(e) => {
            let e = i128::from(e);
            let most = room / e;
            (if 2 * w > room { most - (room - w) / e } else { i128::from(w >= e) }, most)
        }
    }
}
