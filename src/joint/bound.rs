//! No layout takes fewer boards than the lengths of its pieces and their saw cuts fill.

use super::ask::Ask;
use super::places::{gap, span};
use crate::model::seam::{Certificate, Dual, Exclusion, SeamRules};

fn sixteenths(x: f64) -> i64 {
    (x * 16.0).round() as i64
}

/// The length bound. A run is worth its cover, less its joints' gaps, and a saw cut a piece: least
/// at the fewest pieces or at the most that `shortest` allows.
pub(super) fn bound(asks: &[Ask], rules: &SeamRules) -> Certificate {
    let room = sixteenths(rules.stock()) + sixteenths(rules.kerf);
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
    let cover = ((to - from) * 16.0).floor() as i64;
    let (stock, kerf) = (sixteenths(rules.stock()), sixteenths(rules.kerf));
    // Rounded the safe way: more gap, shorter least piece, less length.
    let gap = (gap(rules) * 16.0).ceil() as i64;
    let shortest = ((rules.shortest * 16.0).floor() as i64).max(1);
    if cover <= stock {
        return cover + kerf;
    }
    let few = (cover + gap + stock + gap - 1) / (stock + gap);
    let many = ((cover + gap) / (shortest + gap)).max(few);
    let of = |n: i64| cover - (n - 1) * gap + n * kerf;
    of(few).min(of(many))
}
