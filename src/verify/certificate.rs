//! The panel bound worked out again, from the runs alone and without any search: the same function,
//! evaluated in whole numbers of 1/16 in.

use super::Rule;
use crate::layout::Layout;
use crate::layout::course::LaidRun;
use crate::layout::verified::RuleCheck;
use crate::model::seam::Dual;

/// One panel with its kerf, sixteenths, and the rules that bound a run.
#[derive(Clone, Copy)]
pub(super) struct Frame {
    pub(super) panel: i128,
    pub(super) lap: i128,
    pub(super) kerf: i128,
    pub(super) shortest: i128,
    pub(super) short_seams: bool,
}

pub(super) fn sixteenths(x: f64) -> i128 {
    (x * 16.0).round() as i128
}

pub(super) fn check(layout: &Layout) -> [RuleCheck; 1] {
    if layout.job.siding().joints.is_on_studs() {
        return [super::joints::bound(layout)];
    }
    let mut rule = Rule::default();
    let all: Vec<&LaidRun> =
        layout.walls().flat_map(|(_, w)| &w.courses).flat_map(|c| &c.runs).collect();
    let off_grid = |r: &&&LaidRun| (r.x0 * 16.0).fract() != 0.0 || (r.x1 * 16.0).fract() != 0.0;
    let shortest =
        sixteenths(layout.job.seams.shortest) + i128::from(all.iter().any(|r| off_grid(&r)));
    let frame = Frame {
        panel: sixteenths(layout.job.product.length),
        lap: sixteenths(layout.job.lap()),
        kerf: sixteenths(layout.job.seams.kerf),
        shortest,
        short_seams: layout.job.seams.seam_short_runs,
    };
    let c = &layout.bound.certificate;
    if layout.job.product.second_length.is_some() || c.mixed.is_some() {
        return [super::mixed::check(layout, &all, frame)];
    }
    let feasible = dual_feasible(c.function, frame.panel + frame.kerf);
    rule.case(feasible, || format!("{:?} is no dual-feasible function of this panel", c.function));
    if !feasible {
        return [rule.done(NAME)];
    }
    let one = worth(c.function, frame.panel + frame.kerf, &frame).1;
    let sum: i128 = all
        .iter()
        .flat_map(|r| covers(r, &frame))
        .map(|cover| least(cover, c.function, &frame))
        .sum();
    let bound = (sum + one - 1) / one.max(1);
    rule.case(sum == i128::from(c.sum) && one == i128::from(c.scale), || {
        format!("the certificate says {} of {}, the runs give {sum} of {one}", c.sum, c.scale)
    });
    rule.case(bound == layout.bound.panels as i128, || {
        format!("the bound is {bound}, said to be {}", layout.bound.panels)
    });
    let told = (c.bound, c.panels, c.proven);
    // It counts a panel of which both halves serve as two.
    let panels = layout.panels.len() + layout.halved();
    let counted = (layout.bound.panels, panels, bound == panels as i128);
    rule.case(told == counted && layout.bound.proven == c.proven, || {
        format!("the certificate says {told:?}, the layout {counted:?}")
    });
    [rule.done(NAME)]
}

pub(super) const NAME: &str = "the panel bound follows from the runs";

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
pub(super) fn covers(r: &LaidRun, f: &Frame) -> Vec<i128> {
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
pub(super) fn worth(dual: Dual, w: i128, f: &Frame) -> (i128, i128) {
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

/// The least a run can be worth: over one piece, and over the two numbers of pieces that can occur.
fn least(cover: i128, dual: Dual, f: &Frame) -> i128 {
    let piece = |l: i128| worth(dual, l + f.kerf, f).0;
    let whole = worth(dual, f.panel + f.kerf, f).1;
    let mut best: Option<i128> = (cover <= f.panel).then(|| piece(cover));
    if cover > f.panel || f.short_seams {
        let first = ((cover - f.lap + f.panel - f.lap - 1) / (f.panel - f.lap)).max(2);
        for k in [first, first + 1] {
            let sum = cover + (k - 1) * f.lap - (k - 2) * f.panel;
            let (low, high) = (f.shortest.max(sum - f.panel), f.panel.min(sum - f.shortest));
            for a in low..=high {
                let v = (k - 2) * whole + piece(a) + piece(sum - a);
                best = Some(best.map_or(v, |b| b.min(v)));
            }
        }
    }
    best.unwrap_or(0)
}
