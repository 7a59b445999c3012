//! Which panels are ruined: the emptier ones, and where offcuts may not travel as they like others that
//! serve the same walls, whose pieces can change places.

use super::pool::Pool;
use super::random::Random;

/// Share of panels, of 100, drawn from the emptiest ones; the others are the emptiest of [`DRAWN`].
const EMPTIEST: usize = 45;
const DRAWN: usize = 8;
/// Panels looked at for the emptiest of a wall.
const LOOKED_AT: usize = 64;
/// Share of further panels, of 100, that serve a wall of the first.
const SAME_WALL: usize = 75;

/// A panel, the likelier the more room it has.
pub(super) fn emptier(pool: &Pool, random: &mut Random) -> Option<usize> {
    if random.below(100) < EMPTIEST {
        // Low ranks are likelier than high ones.
        let mut rank = random.below(4) * random.below(4);
        let mut shelf = pool.any.under(i64::MAX);
        while let Some(s) = shelf {
            for panel in pool.any.all_on(s) {
                if rank == 0 {
                    return Some(panel);
                }
                rank -= 1;
            }
            shelf = pool.any.under(s - 1);
        }
    }
    let drawn = (0..DRAWN).map(|_| random.below(pool.panels.len()));
    drawn.filter(|i| !pool.panels[*i].empty()).max_by_key(|i| pool.panels[*i].free)
}

/// A panel to be ruined with another: where offcuts may not travel as they like, mostly one that serves one of
/// its walls.
pub(super) fn beside(pool: &Pool, random: &mut Random, first: Option<usize>) -> Option<usize> {
    let same_wall = pool.waits.as_ref().zip(first).filter(|_| random.below(100) < SAME_WALL);
    let Some((waits, first)) = same_wall else { return emptier(pool, random) };
    let parts = &pool.panels[first];
    let Some(part) = parts.parts().nth(random.below(parts.count().max(1))) else {
        return emptier(pool, random);
    };
    let here = |p: &usize| waits.serves(*p, waits.wall(part));
    if random.below(100) < EMPTIEST {
        let rank = random.below(4) * random.below(4);
        let mut last = None;
        let falling = pool.any.falling().take(LOOKED_AT).filter(here);
        for (i, panel) in falling.enumerate() {
            last = Some(panel);
            if i == rank {
                break;
            }
        }
        return last;
    }
    let drawn = (0..2 * DRAWN).map(|_| random.below(pool.panels.len()));
    drawn.filter(here).take(DRAWN).max_by_key(|i| pool.panels[*i].free)
}
