//! The ways to part a run.

use super::rules::Rules;

/// One way to part a run: `k` pieces, ends summing to `sum`, the first from `least` to `most`; the
/// whole panels between are of kind `whole`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Way {
    pub k: i64,
    pub sum: i64,
    pub least: i64,
    pub most: i64,
    pub whole: usize,
}

impl Way {
    /// Distance between seams.
    pub(super) fn pitch(&self, rules: &Rules) -> i64 {
        rules.panel_of(self.whole) - rules.lap
    }
}

/// Whether one piece may cover `cover`, and the ways with seams. With one kind of panel only the
/// least number of pieces and one more can occur, since end pieces are no longer than a panel and no
/// shorter than the shortest piece.
///
/// With several kinds, end pieces come from any, and the whole panels of one run are all of one kind.
/// A run that the shortest kind does not cover may have a seam: so every layout with one kind alone is
/// one of these too.
pub(super) fn ways(cover: i64, rules: &Rules) -> (bool, Vec<Way>) {
    let one = cover <= rules.longest();
    if cover <= rules.shorter() && !rules.seam_short {
        return (true, Vec::new());
    }
    let mut out = Vec::new();
    for kind in rules.kinds() {
        if !rules.mixed() {
            let first = least_pieces(cover, rules.panel, rules.lap).max(2);
            out.extend((first..=first + 1).filter_map(|k| way(cover, k, kind, rules)));
            continue;
        }
        // Two pieces have no whole panel between them, of whatever kind.
        for k in 2 + i64::from(kind > 0).. {
            if ends(cover, k, kind, rules) < 2 * rules.shortest {
                break;
            }
            out.extend(way(cover, k, kind, rules));
        }
    }
    (one, out)
}

/// Least pieces that cover a run: the panel and lap in any one unit. A run of one panel or less is
/// one piece.
pub(super) fn least_pieces(cover: i64, panel: i64, lap: i64) -> i64 {
    if cover <= panel { 1 } else { (cover - lap + (panel - lap) - 1) / (panel - lap) }
}

/// What the end pieces sum to.
fn ends(cover: i64, k: i64, kind: usize, rules: &Rules) -> i64 {
    cover + (k - 1) * rules.lap - (k - 2) * rules.panel_of(kind)
}

fn way(cover: i64, k: i64, kind: usize, rules: &Rules) -> Option<Way> {
    let sum = ends(cover, k, kind, rules);
    let least = rules.shortest.max(sum - rules.longest());
    let most = rules.longest().min(sum - rules.shortest);
    (least <= most).then_some(Way { k, sum, least, most, whole: kind })
}

/// A parting of a run longer than a panel for which no lawful one exists, for each kind of panel: the
/// least pieces with equal ends.
pub(super) fn unlawful(cover: i64, rules: &Rules) -> Vec<Way> {
    let none = |kind: &usize| {
        cover > rules.panel_of(*kind) && ways(cover, &rules.alone(*kind)).1.is_empty()
    };
    let equal = |kind: usize| {
        let panel = rules.panel_of(kind);
        let k = least_pieces(cover, panel, rules.lap).max(2);
        let sum = ends(cover, k, kind, rules);
        let a = (sum / 2).clamp(1, panel);
        Way { k, sum, least: a, most: a, whole: kind }
    };
    rules.kinds().filter(none).map(equal).collect()
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
        // Example::RunOfTwentyFiveFeet to Example::RunOnColdDay: 12 ft 6 in panels, 1 in lap, 1/4 in
        // gaps (3/8 in the last).
        assert_eq!(pieces(299.5), 3);
        assert_eq!(pieces(149.5), 1);
        assert_eq!((pieces(479.5), pieces(719.5), pieces(335.5)), (4, 5, 3));
        assert_eq!(pieces(299.25), 3);
    }
}
