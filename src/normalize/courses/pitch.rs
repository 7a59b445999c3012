//! The pitches at which level lines stand over one another.

use super::pieces::Piece;

/// Pitches that drawn siding has, inches: boards of 3 in, hatches of 2 in, up to the widest boards
/// (common practice, no source).
pub(super) const PITCHES: std::ops::RangeInclusive<f64> = 1.9..=14.0;
/// Spacing of one family differs by no more than this share: a print was measured at 4 percent (common
/// practice, no source).
pub(super) const UNEVEN: f64 = 0.04;
/// Width of a bin, inches.
const BIN: f64 = 1.0 / 32.0;
/// Less than this length of lines at one pitch, inches, is no siding: 20 ft (common practice, no source).
const LEAST: f64 = 240.0;
/// A second pitch of one ink counts from this share of the first on.
const SHARE: f64 = 0.1;
/// Most pitches of one ink.
const MOST: usize = 4;
/// Most pairs of lines that are looked at.
const MOST_LOOKED_AT: usize = 60_000_000;

/// The second line of a board drawn with two: how far over the first it stands.
const PAIRS: std::ops::RangeInclusive<f64> = 0.1..=1.6;

/// The pitches of some pieces, the commonest first.
pub(super) fn pitches(pieces: &[Piece]) -> Vec<f64> {
    let mut bins = vec![0.0; (PITCHES.end() / BIN) as usize + 2];
    let mut sums = bins.clone();
    for (gap, length) in gaps(pieces, PITCHES) {
        let at = (gap / BIN).round() as usize;
        bins[at] += length;
        sums[at] += gap * length;
    }
    let mut out: Vec<f64> = Vec::new();
    let mut first = 0.0;
    while out.len() < MOST {
        let weight = |at: usize| {
            let reach = ((UNEVEN * at as f64).round() as usize).max(1);
            let (from, to) = (at.saturating_sub(reach), (at + reach + 1).min(bins.len()));
            (bins[from..to].iter().sum::<f64>(), bins[at], from, to)
        };
        let best = (1..bins.len()).map(|at| (at, weight(at))).max_by(|a, b| {
            a.1.0.total_cmp(&b.1.0).then(a.1.1.total_cmp(&b.1.1)).then(b.0.cmp(&a.0))
        });
        let Some((_, (length, _, from, to))) = best else { break };
        if length < LEAST.max(SHARE * first) {
            break;
        }
        first = f64::max(first, length);
        out.push(sums[from..to].iter().sum::<f64>() / length);
        bins[from..to].fill(0.0);
        sums[from..to].fill(0.0);
    }
    out
}

/// From each piece to the nearest one over it within `range` that stands over half of the shorter: the
/// gap, and over what length.
fn gaps(pieces: &[Piece], range: std::ops::RangeInclusive<f64>) -> Vec<(f64, f64)> {
    let mut looked = 0;
    let mut out = Vec::new();
    for (i, low) in pieces.iter().enumerate() {
        for high in &pieces[i + 1..] {
            looked += 1;
            let gap = high.y - low.y;
            if gap > *range.end() || looked > MOST_LOOKED_AT {
                break;
            }
            let over = low.over(high);
            if range.contains(&gap) && over > 0.5 * low.length().min(high.length()) {
                out.push((gap, over));
                break;
            }
        }
    }
    out
}

/// Boards drawn with two lines: the upper ones taken out, and returned. A second line counts where it is
/// as long as the first, and most have one.
pub(super) fn without_pairs(mut pieces: Vec<Piece>) -> (Vec<Piece>, Vec<Piece>) {
    let mut upper = vec![false; pieces.len()];
    let mut gaps: Vec<f64> = Vec::new();
    let mut found: Vec<(usize, usize, f64)> = Vec::new();
    for (i, low) in pieces.iter().enumerate() {
        let near = pieces[i + 1..].iter().take_while(|h| h.y - low.y <= *PAIRS.end());
        let twin = |h: &Piece| {
            PAIRS.contains(&(h.y - low.y))
                && (h.x0 - low.x0).abs() <= 0.5
                && (h.x1 - low.x1).abs() <= 0.5
        };
        if let Some(n) = near.into_iter().position(twin) {
            let gap = pieces[i + 1 + n].y - low.y;
            found.push((i, i + 1 + n, gap));
            gaps.push(gap);
        }
    }
    gaps.sort_by(f64::total_cmp);
    let Some(middle) = gaps.get(gaps.len() / 2).copied() else { return (pieces, Vec::new()) };
    let alike = |g: f64| (g - middle).abs() <= 0.15 * middle;
    let mut lower = Vec::new();
    for (low, high, gap) in found.into_iter().filter(|f| alike(f.2)) {
        if !upper[low] {
            upper[high] = true;
            lower.push((low, gap));
        }
    }
    // Two lines each of most boards, not a sill here and a frieze there.
    if lower.len() * 5 < pieces.len() {
        return (pieces, Vec::new());
    }
    lower.into_iter().for_each(|(i, gap)| pieces[i].second = Some(gap));
    let (out, rest): (Vec<_>, Vec<_>) = pieces.into_iter().zip(upper).partition(|(_, u)| !*u);
    let plain = |v: Vec<(Piece, bool)>| v.into_iter().map(|(p, _)| p).collect();
    (plain(out), plain(rest))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn piece(y: f64) -> Piece {
        Piece { y, x0: 0.0, x1: 120.0, strokes: Vec::new(), second: None }
    }

    #[test]
    fn a_pitch_is_found_among_uneven_lines_and_lines_at_odd_heights() {
        // 4 in, up to 1 percent off, with a sill, a head and a band's edges between.
        let mut lines: Vec<Piece> = (0..30)
            .map(|k| piece(4.0 * f64::from(k) + if k % 3 == 0 { 0.04 } else { 0.0 }))
            .chain([17.3, 53.1, 71.5].map(piece))
            .collect();
        lines.sort_by(|a, b| a.y.total_cmp(&b.y));
        let found = pitches(&lines);
        assert!((found[0] - 4.0).abs() < 0.02, "{found:?}");
        // Four lines at odd heights have none.
        assert_eq!(pitches(&[0.0, 7.0, 30.0, 41.0].map(piece)).len(), 0);
    }

    #[test]
    fn of_boards_drawn_with_two_lines_the_lower_ones_are_kept() {
        let lines: Vec<Piece> = (0..10)
            .flat_map(|k| [6.7 * f64::from(k), 6.7 * f64::from(k) + 0.75])
            .map(piece)
            .collect();
        let (kept, upper) = without_pairs(lines);
        assert_eq!((kept.len(), upper.len()), (10, 10));
        assert!((pitches(&kept)[0] - 6.7).abs() < 0.01);
    }
}
