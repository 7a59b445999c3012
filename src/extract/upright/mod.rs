//! Whether views stand upright. One that does not is refused by name: boards laid on it as it is drawn
//! would be wrong.

mod built;
mod written;

use super::outline::Outline;
use super::views::View;
use crate::finding::views::{Tells, ViewFinding};
use crate::finding::{Finding, Findings};
use crate::geom::polygon::bounds;
use crate::geom::vocabulary::Rect;
use crate::model::linework::Linework;
use crate::model::turn::Turn;

/// Tells of every view that is not drawn upright.
pub(super) fn check(lines: &Linework, shown: &[(&View, Vec<Outline>)], findings: &mut Findings) {
    for (view, walls) in shown {
        let Some(frame) = walls.iter().map(Outline::frame).reduce(|a, b| a.union(b)) else {
            continue;
        };
        let asked =
            |m: &crate::model::linework::Moved| m.view.is_some() && m.now.contains(frame.center());
        let accepted = lines.moved.iter().any(asked);
        let view_name = view.name.clone();
        let kind = match needed(lines, view, walls, frame) {
            Some((turn, tells)) => {
                ViewFinding::ViewTurned { view: view_name, turn, tells, accepted }
            }
            None if !accepted && heads_alone(lines, view, walls, frame) => {
                ViewFinding::ViewDoubted { view: view_name }
            }
            None => continue,
        };
        let at = bounds(walls.iter().flat_map(|o| &o.ring)).unwrap_or(frame).origin();
        findings.push(Finding::new(kind).at(lines.source(at)).on(&view.name));
    }
}

/// Whether nothing but heads and sills of windows tells how a view stands, and they say that it stands on its
/// head: sills in line under heads that are not.
fn heads_alone(lines: &Linework, view: &View, walls: &[Outline], frame: Rect) -> bool {
    let built = built::tops(lines, view, walls, frame);
    matches!(built[..], [built::Top { by: Tells::Heads, top: 2, .. }])
}

/// The turn a view needs, with what tells so; none for one that stands upright, as far as can be told.
fn needed(
    lines: &Linework,
    view: &View,
    walls: &[Outline],
    frame: Rect,
) -> Option<(Turn, Vec<Tells>)> {
    let text = written::reads(lines, view);
    let built = built::tops(lines, view, walls, frame);
    let of = |top: u8| built.iter().filter(|b| b.top == top).count();
    let firm = |top: u8| built.iter().any(|b| b.top == top && b.firm);
    let alone = |top: u8| built.iter().any(|b| b.top == top && b.alone);
    let top = match &text {
        // Text on its head beside a house that stands on its feet was turned by itself.
        Some(t) if t.turn.top() != 0 => {
            let top = t.turn.top();
            let lying = top != 2;
            // Upright text on its side is common, a view on its side is not.
            let stands = if lying {
                of(top) <= of(0) && (of(0) > 0 || !t.title)
            } else {
                of(0) > 1 && of(top) == 0
            };
            if stands { 0 } else { top }
        }
        // Text may have been left to read while the view was turned: the house itself must say so.
        _ => (1..4).find(|q| (of(*q) > 1 && firm(*q) || alone(*q)) && of(0) == 0).unwrap_or(0),
    };
    let mirror = text.as_ref().is_some_and(|t| t.turn.mirror);
    let turn = Turn::of_top(top, mirror);
    if turn.is_none() {
        return None;
    }
    let mut tells: Vec<Tells> = Vec::new();
    if let Some(t) = text.filter(|t| t.turn == turn || (mirror && t.turn.mirror)) {
        tells.push(if t.title { Tells::Title } else { Tells::Text });
        tells.extend((t.title && t.more).then_some(Tells::Text));
    }
    if top != 0 {
        tells.extend(built.iter().filter(|b| b.top == top).map(|b| b.by));
    }
    Some((turn, tells))
}
