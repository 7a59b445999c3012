//! The careful crew: course by course from the bottom, left to right; the offcut of the last panel
//! begins the next run where stagger allows, else another from the pile that may, else a new panel
//! is opened (FACTS OT-10).

use super::construct::allowed;
use super::digest::Digest;
use super::pool::{Hand, Placed, Pool};

/// Lays every part as a careful crew would.
pub(super) fn lay(digest: &Digest) -> Pool {
    let mut pool = Pool::new(digest);
    let mut offcut: Option<usize> = None;
    for part in 0..digest.parts.len() {
        let how = next(digest, &mut pool, part, offcut);
        offcut = Some(match how {
            Placed::One { panel } => panel,
            Placed::Seamed { last, .. } => last,
        });
        pool.place(digest, part, how);
    }
    pool
}

fn next(digest: &Digest, pool: &mut Pool, part: usize, offcut: Option<usize>) -> Placed {
    let p = &digest.parts[part];
    let kerf = digest.rules.kerf;
    if p.one_piece {
        let panel = pool.tightest(Hand::Any, p.cover).unwrap_or_else(|| pool.fresh());
        return Placed::One { panel };
    }
    for way in &p.ways {
        let spans = allowed(digest, pool, part, *way);
        let stands = |a: i64| spans.iter().any(|s| s.0 <= a && a <= s.1);
        // The last offcut whole, if it may begin the run; else another one from the pile.
        let last_one = offcut.filter(|i| pool.panels[*i].left_hand.is_none());
        let last_one =
            last_one.map(|i| (pool.panels[i].free - kerf, i)).filter(|(a, _)| stands(*a));
        let whole = last_one.or_else(|| pool.open(Hand::Left, way.least).find(|(a, _)| stands(*a)));
        let start = whole.or_else(|| spans.last().map(|s| (s.1, pool.fresh())));
        let Some((a, first)) = start else { continue };
        let ends = pool.tightest(Hand::Right, way.sum - a).filter(|i| *i != first);
        let last = ends.unwrap_or_else(|| pool.fresh_but(first));
        return Placed::Seamed { way: *way, a, first, last };
    }
    // No place keeps the rules: a crew goes on and breaks the stagger.
    let way = p.ways.first().copied().unwrap_or_else(|| unlawful(digest, part));
    let first = pool.fresh();
    let last = pool.fresh_but(first);
    Placed::Seamed { way, a: way.most, first, last }
}

/// A parting of a run for which no lawful one exists.
fn unlawful(digest: &Digest, part: usize) -> super::digest::Option_ {
    let r = &digest.rules;
    let cover = digest.parts[part].cover;
    let k = super::options::least_pieces(cover, r.panel, r.lap).max(2);
    let sum = cover + (k - 1) * r.lap - (k - 2) * r.panel;
    let a = (sum / 2).clamp(1, r.panel);
    super::digest::Option_ { k, sum, least: a, most: a }
}
