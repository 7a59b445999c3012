//! Trim of every sample is cut from at most one stock piece a kind over a lower bound that shares
//! nothing with the program: Martello and Toth's L2 (Knapsack Problems, 1990, chapter 8).

use std::collections::{BTreeMap, BTreeSet};

use lapwright::model::trim::TrimStock;

use crate::support::{laid, samples};

/// Least stock pieces for weights that fit a room, whole numbers: for each threshold, pieces that
/// leave less than it need a stock each, those over half one each too, and what the others take
/// beyond the room left beside these needs more.
fn l2(weights: &[i64], room: i64) -> i64 {
    let mut best = 0;
    for k in weights.iter().copied().filter(|k| 2 * k <= room).chain([0]) {
        let alone = weights.iter().filter(|w| **w > room - k).count() as i64;
        let half: Vec<i64> =
            weights.iter().copied().filter(|w| *w <= room - k && 2 * *w > room).collect();
        let small: i64 = weights.iter().filter(|w| **w >= k && 2 * **w <= room).sum();
        let beside: i64 = half.iter().map(|w| room - w).sum();
        let more = (small - beside).max(0);
        best = best.max(alone + half.len() as i64 + (more + room - 1) / room);
    }
    best
}

#[test]
fn l2_of_worked_cases() {
    // Three of six tenths need three; two of four tenths go beside two of them.
    assert_eq!(l2(&[6, 6, 6, 4, 4], 10), 3);
    // Length alone would say two; no two of these go together.
    assert_eq!(l2(&[6, 6, 6], 10), 3);
    assert_eq!(l2(&[5, 5, 5, 5], 10), 2);
    assert_eq!(l2(&[9, 9, 2, 2], 10), 3);
}

#[test]
fn trim_takes_at_most_one_stock_piece_a_kind_over_the_bound() {
    let mut kinds = 0;
    for (stem, _) in samples() {
        let l = laid(&stem);
        let whole = |x: f64| (x * 1024.0).round() as i64;
        let kerf = whole(l.job.seams.kerf);
        let mut by_kind: BTreeMap<usize, (Vec<i64>, BTreeSet<&str>)> = BTreeMap::new();
        for t in &l.trims {
            let kind = TrimStock::ALL.iter().position(|k| *k == t.kind.stock()).unwrap();
            let of = by_kind.entry(kind).or_default();
            of.0.push(whole(t.length) + kerf);
            of.1.insert(&t.stock);
        }
        for (kind, (weights, used)) in by_kind {
            let kind = TrimStock::ALL[kind];
            // Lengths are given to 1/16 in: a piece may be a step over.
            let room = whole(l.job.stock(kind)) + kerf + 1;
            let bound = l2(&weights, room);
            assert!(
                used.len() as i64 <= bound + 1 && used.len() as i64 >= bound,
                "{stem} {kind:?}: {} for {bound}",
                used.len()
            );
            kinds += 1;
        }
    }
    assert!(kinds > 20, "{kinds} kinds looked at");
}
