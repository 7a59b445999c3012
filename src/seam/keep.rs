//! What was promised of offcuts that wait, kept at last: where too many wait, panels are opened anew.

use super::part::Digest;
use super::placed::Placed;
use super::pool::Pool;

/// Opens panels anew until no more offcuts wait than may, and none travels too far.
pub(super) fn keep(digest: &Digest, pool: &mut Pool) {
    while let Some((panel, after)) = next(pool) {
        opened_anew(digest, pool, panel, after);
    }
}

/// A panel whose pieces on walls after one of the order are to come from another panel: the one that relieves
/// most ends of walls, the lowest number among equals.
fn next(pool: &Pool) -> Option<(usize, u32)> {
    let waits = pool.waits.as_ref()?;
    let far = pool.cut().find_map(|(i, p)| Some((i, waits.far(p)?)));
    if far.is_some() {
        return far;
    }
    let after = waits.crowded()?;
    let gain = |i: &usize| (waits.gain(&pool.panels[*i], after), usize::MAX - *i);
    let over = pool.cut().filter(|(_, p)| waits.gain(p, after) > 0);
    over.map(|(i, _)| i).max_by_key(gain).map(|i| (i, after))
}

/// Moves the pieces of a panel that are on later walls to a new panel of its kind.
fn opened_anew(digest: &Digest, pool: &mut Pool, panel: usize, after: u32) {
    let Some(waits) = &pool.waits else { return };
    let later: Vec<usize> =
        pool.panels[panel].parts().filter(|part| waits.wall(*part) > after).collect();
    let fresh = pool.fresh(pool.panels[panel].kind).0;
    let moved = |at: usize| if at == panel { fresh } else { at };
    let mut stood: Vec<(usize, Placed)> = Vec::new();
    for part in later {
        // A part with both ends in this panel is named twice.
        stood.extend(pool.take(digest, part).map(|how| (part, how)));
    }
    for (part, how) in stood {
        let how = match how {
            Placed::One { panel } => Placed::One { panel: moved(panel) },
            Placed::Seamed { way, a, first, last } => {
                Placed::Seamed { way, a, first: moved(first), last: moved(last) }
            }
        };
        pool.place(digest, part, how);
    }
}
