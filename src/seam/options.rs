//! The ways to part a run.

use super::digest::Rules;

/// One way to part a run: `k` pieces, ends summing to `sum`, the first from `least` to `most`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Way {
    pub k: i64,
    pub sum: i64,
    pub least: i64,
    pub most: i64,
}

/// Whether one piece may cover `cover`, and the ways with seams: only the least number of pieces
/// and one more can occur, since end pieces are no longer than a panel and no shorter than the
/// shortest piece.
pub(super) fn ways(cover: i64, rules: &Rules) -> (bool, Vec<Way>) {
    let one = cover <= rules.panel;
    if one && !rules.seam_short {
        return (true, Vec::new());
    }
    let first = least_pieces(cover, rules.panel, rules.lap).max(2);
    let ways = (first..=first + 1).filter_map(|k| way(cover, k, rules)).collect();
    (one, ways)
}

/// Least pieces that cover a run: the panel and lap in any one unit. A run of one panel or less is
/// one piece.
pub(super) fn least_pieces(cover: i64, panel: i64, lap: i64) -> i64 {
    if cover <= panel { 1 } else { (cover - lap + (panel - lap) - 1) / (panel - lap) }
}

fn way(cover: i64, k: i64, rules: &Rules) -> Option<Way> {
    let sum = cover + (k - 1) * rules.lap - (k - 2) * rules.panel;
    let least = rules.shortest.max(sum - rules.panel);
    let most = rules.panel.min(sum - rules.shortest);
    (least <= most).then_some(Way { k, sum, least, most })
}

/// A parting of a run longer than a panel for which no lawful one exists: the least pieces with
/// equal ends.
pub(super) fn unlawful(cover: i64, rules: &Rules) -> Way {
    let k = least_pieces(cover, rules.panel, rules.lap).max(2);
    let sum = cover + (k - 1) * rules.lap - (k - 2) * rules.panel;
    let a = (sum / 2).clamp(1, rules.panel);
    Way { k, sum, least: a, most: a }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Sixteenths.
    fn pieces(run: f64) -> i64 {
        least_pieces((run * 16.0).round() as i64, 150 * 16, 16)
    }

    #[test]
    fn published_piece_counts() {
        // FACTS WY-01 to WY-04: 12 ft 6 in panels, 1 in lap, 1/4 in gaps (3/8 in the last).
        assert_eq!(pieces(299.5), 3);
        assert_eq!(pieces(149.5), 1);
        assert_eq!((pieces(479.5), pieces(719.5), pieces(335.5)), (4, 5, 3));
        assert_eq!(pieces(299.25), 3);
    }
}
