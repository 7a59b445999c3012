//! No layout takes fewer boards than the lengths of its pieces and their saw cuts fill.

use super::ask::Ask;
use super::places::{gap, span};
use crate::geom::tol::ROUNDING;
use crate::model::seam::{Certificate, Dual, Exclusion, SeamRules};

/// Sixteenths, up and down.
fn up(x: f64) -> i64 {
    (x * 16.0 - ROUNDING).ceil() as i64
}

fn down(x: f64) -> i64 {
    (x * 16.0 + ROUNDING).floor() as i64
}

// Rounded the safe way: more board and more gap, less saw cut, shorter least piece, less length.

fn stock(rules: &SeamRules) -> i64 {
    up(rules.stock())
}

fn kerf(rules: &SeamRules) -> i64 {
    down(rules.kerf)
}

/// The length bound. A run is worth its cover, less its joints' gaps, and a saw cut a piece: least
/// at the fewest pieces or at the most that `shortest` allows.
pub(super) fn bound(asks: &[Ask], rules: &SeamRules) -> Certificate {
    let room = stock(rules) + kerf(rules);
    let sum: i64 = asks.iter().map(|a| least(span(a.run, rules), rules)).sum();
    Certificate {
        bound: usize::try_from((sum + room - 1) / room.max(1)).unwrap_or(0),
        function: Dual::Length,
        sum,
        scale: room,
        excludes: vec![Exclusion::JointsOnStuds, Exclusion::RippedHalves],
        ..Default::default()
    }
}

fn least((from, to): (f64, f64), rules: &SeamRules) -> i64 {
    let cover = down(to - from);
    let (stock, kerf) = (stock(rules), kerf(rules));
    let gap = up(gap(rules));
    let shortest = down(rules.shortest).max(1);
    if cover <= stock {
        return cover + kerf;
    }
    let few = (cover + gap + stock + gap - 1) / (stock + gap);
    let many = ((cover + gap) / (shortest + gap)).max(few);
    let of = |n: i64| cover - (n - 1) * gap + n * kerf;
    of(few).min(of(many))
}
