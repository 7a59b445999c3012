//! The careful crew: course by course from the bottom, left to right; the offcut of the last panel
//! begins the next run where stagger allows, else another from the pile that may, else a new panel
//! is opened (`LayoutFact::OffcutStartsNext`).

use super::part::Digest;
use super::placed::Placed;
use super::pool::Pool;
use super::shelf::Shelves;
use super::stagger::AllowedSpans;

/// Lays every part as a careful crew would.
pub(super) fn lay(digest: &Digest) -> Pool {
    let mut pool = Pool::new(digest);
    let mut offcut: Option<usize> = None;
    let mut allowed = AllowedSpans::default();
    for part in 0..digest.parts.len() {
        let how = next(digest, &mut pool, part, offcut, &mut allowed);
        offcut = Some(match how {
            Placed::One { panel } => panel,
            Placed::Seamed { last, .. } => last,
        });
        pool.place(digest, part, how);
    }
    pool
}

fn next(
    digest: &Digest,
    pool: &mut Pool,
    part: usize,
    offcut: Option<usize>,
    allowed: &mut AllowedSpans,
) -> Placed {
    let p = &digest.parts[part];
    let kerf = digest.rules.kerf;
    if p.one_piece {
        let panel = pool.any.tightest(p.cover + kerf).unwrap_or_else(|| pool.fresh(0).0);
        return Placed::One { panel };
    }
    for (w, way) in p.ways.iter().enumerate().take(p.lawful) {
        allowed.find(digest, &pool.placed, part, w);
        let stands = |a: i64| allowed.spans.iter().any(|s| s.0 <= a && a <= s.1);
        // The last offcut whole, if it may begin the run; else another one from the pile.
        let last_one = offcut.filter(|i| pool.panels[*i].left_hand.is_none());
        let last_one =
            last_one.map(|i| (pool.panels[i].free - kerf, i)).filter(|(a, _)| stands(*a));
        let whole = last_one.or_else(|| {
            let mut shelves = rising(&pool.no_left, way.least + kerf);
            let found = shelves.find(|free| stands(free - kerf))?;
            Some((found - kerf, pool.no_left.on(found)?))
        });
        let start = whole.or_else(|| allowed.spans.last().map(|s| (s.1, pool.fresh(0).0)));
        let Some((a, first)) = start else { continue };
        let ends = pool.no_right.tightest(way.sum - a + kerf).filter(|i| *i != first);
        let last = ends.unwrap_or_else(|| other(pool, first));
        return Placed::Seamed { way: w, a, first, last };
    }
    // No place keeps all rules: a crew goes on, off mounting blocks still; those courses are laid anew.
    let standing = p.open.iter().take(p.lawful).enumerate();
    let off_blocks = standing.filter_map(|(w, spans)| Some((w, spans.last()?.1))).next();
    let (way, a) = off_blocks.unwrap_or((0, p.ways.first().map_or(1, |w| w.most)));
    let (first, last) = pool.fresh(0);
    Placed::Seamed { way, a, first, last }
}

/// A panel not yet cut, other than `but`.
fn other(pool: &mut Pool, but: usize) -> usize {
    let (one, two) = pool.fresh(0);
    if one == but { two } else { one }
}

/// Rooms that panels have, from `room` up.
fn rising(shelves: &Shelves, room: i64) -> impl Iterator<Item = i64> + '_ {
    std::iter::successors(shelves.shelf(room), |s| shelves.shelf(s + 1))
}
