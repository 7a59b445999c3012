//! Pieces that stand over one another at one pitch.

use std::collections::BTreeMap;

use super::pieces::Piece;
use super::pitch::UNEVEN;

/// Pieces share at least this much from side to side, inches.
pub(super) const LEAST_OVER: f64 = 0.25;
/// A course may be drawn up to this share of the pitch off its place, where it meets a sill or a head
/// (common practice, no source).
const MOVED: f64 = 0.35;
/// Courses divided by hand are up to this share of the pitch wider or lower than the rest (common practice,
/// no source).
const STRETCHED: f64 = 0.2;
/// Where most lines stand off the pitch by no more than the first share of it, as those of a hatch do, none
/// stands off by more than the second (common practice, no source).
const EXACT: (f64, f64) = (0.002, 0.02);
/// Fewer lines than this do not show how exact they are.
const MANY: usize = 8;
/// Two lines of which each runs on past the other stand over one another by this share of the shorter one, or
/// by this length, inches, if they are of one wall: a row of shingles ends over a course beside its roof.
const TOUCH: (f64, f64) = (0.15, 12.0);
/// What stands this near to a course line, inches, is that line.
const EDGE: f64 = 0.1;
/// Most rounds in which courses divided by hand are added.
const MOST_ROUNDS: usize = 60;
/// Most pairs of pieces that are looked at.
const MOST_LOOKED_AT: usize = 60_000_000;

/// A piece with the one a course over it, and where they stand over one another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Link {
    pub(super) low: usize,
    pub(super) high: usize,
    pub(super) x0: f64,
    pub(super) x1: f64,
}

/// From side to side.
pub(super) type Span = (f64, f64);

/// Links of pieces at a pitch; `between` says whether a level line of another sort is drawn in a place.
pub(super) fn links(
    pieces: &[Piece],
    pitch: f64,
    between: impl Fn(Span, Span) -> bool,
) -> Vec<Link> {
    let Stands { pitch, off, exact } = stands(pieces, pitch);
    let mut out = Vec::new();
    let mut looked = 0;
    for (low, p) in pieces.iter().enumerate() {
        let mut found: Vec<(f64, usize)> = window(pieces, p.y + pitch - off, p.y + pitch + off)
            .filter(|high| p.over(&pieces[*high]) >= LEAST_OVER)
            .map(|high| ((pieces[high].y - p.y - pitch).abs(), high))
            .inspect(|_| looked += 1)
            .collect();
        if looked > MOST_LOOKED_AT {
            break;
        }
        found.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
        let mut free = vec![(p.x0, p.x1)];
        for (_, high) in found {
            let over = (pieces[high].x0, pieces[high].x1);
            for (x0, x1) in common(&free, over) {
                out.push(Link { low, high, x0, x1 });
            }
            free = without(&free, over);
        }
    }
    out.retain(|l| {
        let shorter = pieces[l.low].length().min(pieces[l.high].length());
        pieces[l.low].over(&pieces[l.high]) >= TOUCH.1.min(TOUCH.0 * shorter)
    });
    bridge(pieces, (pitch, exact), &mut out, &between);
    stretch(pieces, pitch, &mut out, &between);
    out
}

/// How the lines of a family stand.
struct Stands {
    /// From most lines to the next ones, inches.
    pitch: f64,
    /// How far any stand off it, inches.
    off: f64,
    /// Whether most stand as exactly as those of a hatch.
    exact: bool,
}

fn stands(pieces: &[Piece], pitch: f64) -> Stands {
    let reach = 2.0 * UNEVEN * pitch;
    let mut gaps: Vec<f64> = Vec::new();
    for p in pieces {
        let near = window(pieces, p.y + pitch - reach, p.y + pitch + reach);
        let alike = near.filter(|h| p.over(&pieces[*h]) > 0.5 * p.length());
        let found = alike.map(|h| pieces[h].y - p.y);
        gaps.extend(found.min_by(|a, b| (a - pitch).abs().total_cmp(&(b - pitch).abs())));
        if gaps.len() > 20_000 {
            break;
        }
    }
    gaps.sort_by(f64::total_cmp);
    let middle = gaps.get(gaps.len() / 2).copied().unwrap_or(pitch);
    let most_off = |from: f64| {
        let mut off: Vec<f64> = gaps.iter().map(|g| (g - from).abs()).collect();
        off.sort_by(f64::total_cmp);
        off.get(off.len() * 3 / 4).copied().unwrap_or(0.0)
    };
    if gaps.len() >= MANY && most_off(middle) <= EXACT.0 * pitch {
        return Stands { pitch: middle, off: EXACT.1 * pitch, exact: true };
    }
    let off = (4.0 * most_off(pitch)).clamp(UNEVEN * pitch, reach);
    Stands { pitch, off, exact: false }
}

fn window(pieces: &[Piece], low: f64, high: f64) -> std::ops::Range<usize> {
    let from = pieces.partition_point(|p| p.y < low);
    from..from + pieces[from..].partition_point(|p| p.y <= high)
}

/// What of `spans` lies in `over`.
fn common(spans: &[Span], over: Span) -> Vec<Span> {
    let cut = spans.iter().map(|s| (s.0.max(over.0), s.1.min(over.1)));
    cut.filter(|s| s.1 - s.0 >= LEAST_OVER).collect()
}

/// What of `spans` lies beside `over`.
pub(super) fn without(spans: &[Span], over: Span) -> Vec<Span> {
    let parts = spans.iter().flat_map(|s| [(s.0, s.1.min(over.0)), (s.0.max(over.1), s.1)]);
    parts.filter(|s| s.1 > s.0).collect()
}

/// Parts of pieces that nothing is linked to, over them or under them.
pub(super) fn open(pieces: &[Piece], links: &[Link], up: bool) -> BTreeMap<usize, Vec<Span>> {
    let mut out: BTreeMap<usize, Vec<Span>> = BTreeMap::new();
    for l in links {
        for i in [l.low, l.high] {
            out.entry(i).or_insert_with(|| vec![(pieces[i].x0, pieces[i].x1)]);
        }
        let at = if up { l.low } else { l.high };
        if let Some(spans) = out.get_mut(&at) {
            *spans = without(spans, (l.x0, l.x1));
        }
    }
    out.values_mut().for_each(|s| s.retain(|(a, b)| b - a >= 1.0 / 32.0));
    out
}

/// Links to courses drawn a little wider or lower than the rest, where nothing is drawn between: courses
/// divided by hand. Only two lines a board tell them from sills and heads.
fn stretch(
    pieces: &[Piece],
    pitch: f64,
    links: &mut Vec<Link>,
    between: &impl Fn(Span, Span) -> bool,
) {
    for _ in 0..MOST_ROUNDS {
        let mut more = Vec::new();
        for up in [true, false] {
            for (at, spans) in open(pieces, links, up) {
                if pieces[at].second.is_none() {
                    continue;
                }
                let y = pieces[at].y;
                let (near, far) = ((1.0 - STRETCHED) * pitch, (1.0 + STRETCHED) * pitch);
                let row = if up {
                    window(pieces, y + near, y + far)
                } else {
                    window(pieces, y - far, y - near)
                };
                for other in row.filter(|i| pieces[*i].second.is_some()) {
                    let over = (pieces[other].x0, pieces[other].x1);
                    let heights = (y.min(pieces[other].y) + EDGE, y.max(pieces[other].y) - EDGE);
                    for (x0, x1) in common(&spans, over) {
                        let alike =
                            x1 - x0 >= 0.9 * pieces[other].length().min(pieces[at].length());
                        if alike && !between((x0, x1), heights) {
                            let (low, high) = if up { (at, other) } else { (other, at) };
                            more.push(Link { low, high, x0, x1 });
                        }
                    }
                }
            }
        }
        more.sort_by(|a, b| (a.low, a.high).cmp(&(b.low, b.high)).then(a.x0.total_cmp(&b.x0)));
        more.dedup();
        if more.is_empty() {
            return;
        }
        links.extend(more);
    }
}

/// Links over a course line that was moved to a sill or a head, or that is left out. Where lines stand as
/// exactly as a hatch's, a part of one may be, beside the rest of it; where the whole of it is, there is a board.
fn bridge(
    pieces: &[Piece],
    (pitch, exact): (f64, bool),
    links: &mut Vec<Link>,
    between: &impl Fn(Span, Span) -> bool,
) {
    let (upper, lower) = (open(pieces, links, true), open(pieces, links, false));
    let off = UNEVEN * pitch;
    for (low, spans) in &upper {
        let p = &pieces[*low];
        for high in window(pieces, p.y + 2.0 * pitch - off, p.y + 2.0 * pitch + off) {
            let Some(under) = lower.get(&high) else { continue };
            for (x0, x1) in spans.iter().flat_map(|s| common(under, *s)) {
                let wide = x1 - x0;
                // The whole of what is open at both: no notch is bridged.
                let whole = |all: &[Span]| {
                    all.iter().any(|s| s.0 <= x0 && s.1 >= x1 && s.1 - s.0 <= 1.1 * wide)
                };
                let beside = || drawn_beside(pieces, (x0, x1), (p.y + pitch, EXACT.1 * pitch));
                if !whole(spans) || !whole(under) || (exact && !beside()) {
                    continue;
                }
                let inner = window(pieces, p.y + off, pieces[high].y - off);
                let crossing: Vec<usize> = inner
                    .filter(|i| pieces[*i].x0.max(x0) < pieces[*i].x1.min(x1) - 0.5 * wide)
                    .collect();
                match crossing[..] {
                    [] if !between((x0, x1), (p.y + off, pieces[high].y - off)) => {
                        links.push(Link { low: *low, high, x0, x1 });
                    }
                    [moved] => {
                        let m = &pieces[moved];
                        let near = (m.y - p.y - pitch).abs() <= MOVED * pitch;
                        if near && m.x0 <= x0 + 0.5 && m.x1 >= x1 - 0.5 {
                            links.push(Link { low: *low, high: moved, x0, x1 });
                            links.push(Link { low: moved, high, x0, x1 });
                        }
                    }
                    _ => {}
                }
            }
        }
    }
}

/// Whether a line at a level, but for so much, ends where a span begins, or begins where it ends.
fn drawn_beside(pieces: &[Piece], (x0, x1): Span, (y, off): (f64, f64)) -> bool {
    let mut row = window(pieces, y - off, y + off).map(|i| &pieces[i]);
    row.any(|q| (q.x1 - x0).abs() <= LEAST_OVER || (q.x0 - x1).abs() <= LEAST_OVER)
}

/// Links sorted into those that hang together.
pub(super) fn together(count: usize, links: &[Link]) -> Vec<Vec<Link>> {
    let mut root: Vec<usize> = (0..count).collect();
    fn find(root: &mut [usize], mut i: usize) -> usize {
        while root[i] != i {
            root[i] = root[root[i]];
            i = root[i];
        }
        i
    }
    for l in links {
        let (a, b) = (find(&mut root, l.low), find(&mut root, l.high));
        root[a.max(b)] = a.min(b);
    }
    let mut out: BTreeMap<usize, Vec<Link>> = BTreeMap::new();
    for l in links {
        out.entry(find(&mut root, l.low)).or_default().push(*l);
    }
    out.into_values().collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn piece(y: f64, x0: f64, x1: f64) -> Piece {
        Piece { y, x0, x1, strokes: Vec::new(), second: None }
    }

    #[test]
    fn a_line_moved_to_a_sill_and_one_left_out_are_bridged_and_a_band_is_not() {
        // Courses of 6 in; the third is moved by 1 in, the sixth is not drawn.
        let ys = [0.0, 6.0, 13.0, 18.0, 24.0, 36.0, 42.0];
        let pieces: Vec<Piece> = ys.map(|y| piece(y, 0.0, 100.0)).into();
        assert_eq!(together(7, &links(&pieces, 6.0, |_, _| false)).len(), 1);
        // Where a line of another sort stands between, the two fields stay two.
        let apart = links(&pieces, 6.0, |_, (low, _)| low > 20.0);
        assert_eq!(together(7, &apart).len(), 2);
    }

    #[test]
    fn an_opening_parts_a_course_and_leaves_what_is_open_over_it() {
        let pieces = [piece(0.0, 0.0, 100.0), piece(4.0, 0.0, 40.0), piece(4.0, 70.0, 100.0)];
        let found = links(&pieces, 4.0, |_, _| false);
        assert_eq!(found.len(), 2);
        assert_eq!(open(&pieces, &found, true)[&0], [(40.0, 70.0)]);
    }
}
