//! Dual-feasible functions of a panel's share, evaluated in whole numbers of 1/16 in.

use crate::layout::course::LaidRun;
use crate::model::seam::Dual;

/// One panel with its kerf, in steps, and the rules that bound a run.
#[derive(Clone, Copy)]
pub(super) struct PanelFrame {
    /// Steps of an inch.
    pub(super) steps: i64,
    pub(super) panel: i128,
    pub(super) lap: i128,
    pub(super) kerf: i128,
    pub(super) shortest: i128,
    pub(super) short_seams: bool,
}

/// What arithmetic leaves of a step.
const ROUNDING: f64 = 1e-6;

/// The step at or under a length.
pub(super) fn down(x: f64, steps: i64) -> i128 {
    (x * steps as f64 + ROUNDING).floor() as i128
}

/// The step at or over a length.
pub(super) fn up(x: f64, steps: i64) -> i128 {
    (x * steps as f64 - ROUNDING).ceil() as i128
}

/// Where a run's panels begin and end, outward to whole steps.
pub(super) fn ends(r: &LaidRun, steps: i64) -> (i128, i128) {
    (down(r.x0 + r.gap, steps), up(r.x1 - r.gap, steps))
}

/// Whether they begin and end between steps.
pub(super) fn off_step(r: &LaidRun, steps: i64) -> bool {
    let inward = (up(r.x0 + r.gap, steps), down(r.x1 - r.gap, steps));
    ends(r, steps) != inward
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
        // More parts than steps could overflow, and tell nothing.
        Dual::Rounded(k) => k >= 1 && i128::from(k) <= room,
        Dual::Clipped(e) | Dual::Counted(e) => e >= 1 && 2 * i128::from(e) <= room,
    }
}

/// What the parts of a run cover: outward to whole steps, cut at fixed seams.
pub(super) fn covers(r: &LaidRun, f: &PanelFrame) -> Vec<i128> {
    let (mut at, end) = ends(r, f.steps);
    let mut out = Vec::new();
    for s in &r.fixed {
        // A fixed seam is the middle of its lap.
        // That of an odd lap lies half a step under one.
        let right = down(*s + 0.75 / f.steps as f64, f.steps) + f.lap / 2;
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
