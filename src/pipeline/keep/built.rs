//! What is built so far: what the rest takes, what of that lies on the site, and the least that it can take.

use std::collections::BTreeSet;

use super::asked::{Asked, Hung};
use super::found::Found;
use crate::layout::at_hand::{AtHand, BuiltSoFar, FactoryEnd};
use crate::model::seam::{SeamPlan, SeamProblem};
use crate::seam::at_hand::Room;

/// Offcuts on the site as room on panels, numbered from `first` on: where each would lie on a whole panel.
pub(super) fn offcuts(hung: &Hung, stock: f64, first: usize) -> Vec<Room> {
    let mut out = Vec::new();
    for s in hung.stock.iter().flatten().filter(|s| s.end != FactoryEnd::Both) {
        let (from, to) = match s.end {
            FactoryEnd::Left => (0.0, s.length),
            FactoryEnd::Right => (stock - s.length, stock),
            _ => ((stock - s.length) / 2.0, (stock + s.length) / 2.0),
        };
        for _ in 0..s.count {
            out.push(Room { panel: first + out.len(), from, to });
        }
    }
    out
}

/// The figures: `rest` is the problem of what does not hang, `laid` its plan by itself, `fresh` the panels that the
/// rest takes, `used` the offcuts.
pub(super) fn so_far(
    (hung, found): (&Hung, &Found),
    asked: &Asked,
    (rest, laid): (&SeamProblem, &SeamPlan),
    (fresh, used): (usize, usize),
) -> BuiltSoFar {
    let panels: BTreeSet<&str> = found.pieces.iter().map(|p| p.panel.as_str()).collect();
    let whole = |s: &&AtHand| s.end == FactoryEnd::Both;
    let on_site = hung.stock.iter().flatten().filter(whole).map(|s| s.count).sum();
    BuiltSoFar {
        hung: found.pieces.len(),
        hung_panels: panels.len(),
        more: fresh,
        at_least: at_least((hung, found), asked, (rest, laid)).min(fresh),
        stock: hung.stock.clone(),
        on_site,
        offcuts_used: used,
        order: fresh.saturating_sub(on_site),
    }
}

/// The fewest panels that the rest can take. By length: what it needs with laps, less all offcuts at hand, over a panel's
/// length. By the proof of the rest: each offcut at hand spares one panel at most.
fn at_least(
    (hung, found): (&Hung, &Found),
    asked: &Asked,
    (rest, laid): (&SeamProblem, &SeamPlan),
) -> usize {
    let rules = &asked.problem.rules;
    let stock = rules.stock();
    if stock <= rules.lap {
        return 0;
    }
    let need = |cover: f64| {
        let pieces = ((cover - rules.lap) / (stock - rules.lap)).ceil().max(1.0);
        cover + (pieces - 1.0) * rules.lap
    };
    let runs = rest.elevations.iter().flat_map(|e| &e.courses).flat_map(|c| &c.runs);
    let open: f64 = runs.map(|r| need(r.x1 - r.x0 - 2.0 * rules.gap)).sum();
    let cuts = found.runs.iter().flat_map(|r| &r.pieces);
    let loose: f64 = cuts.filter(|c| c.panel >= super::hung::LOOSE).map(|c| c.end - c.start).sum();
    let list = match &hung.stock {
        Some(list) => list.iter().filter(|s| s.end != FactoryEnd::Both).cloned().collect(),
        None => Vec::new(),
    };
    // Without a list what hanging panels have left serves too, one piece of room or two to a panel.
    if hung.stock.is_none() {
        return 0;
    }
    let offcuts: f64 = list.iter().map(|s: &AtHand| s.length * s.count as f64).sum();
    let count: usize = list.iter().map(|s| s.count).sum();
    let by_length = ((open + loose - offcuts) / stock - 1e-9).ceil().max(0.0) as usize;
    by_length.max(laid.certificate.bound.saturating_sub(count))
}
