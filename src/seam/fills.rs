//! Cut panels that may give an end piece: the tightest of the house and of the wall, and rooms that a piece might
//! fill.

use super::pool::Pool;
use super::shelf::Shelves;
use super::waits::Waits;

/// Panels tried for an exact fill of each hand.
pub(super) const TRIES: usize = 8;
/// Panels looked at for one that serves the wall: few walls have so few of their own among so many.
pub(super) const SEEN: usize = 32;

/// Which panels serve the wall of a part, where offcuts may not travel as they like.
pub(super) struct OwnWall<'a>(Option<(&'a Waits, u32)>);

impl<'a> OwnWall<'a> {
    #[inline]
    pub(super) fn of(pool: &'a Pool, part: usize) -> Self {
        OwnWall(pool.waits.as_ref().map(|w| (w, w.wall(part))))
    }

    /// Whether a panel is no worse than any other that has the room: all are where offcuts travel freely.
    #[inline]
    fn has(&self, panel: usize) -> bool {
        self.0.is_none_or(|(waits, wall)| waits.serves(panel, wall))
    }
}

/// The tightest panel of the house that has the room, and that of the wall where it is another, each with its
/// cost. `least` of what a panel and all with more room than it can cost ends the search for the second, once it
/// is `most` over the cost of the first: chance could not make it the better one.
#[inline]
pub(super) fn tightest(
    house: &Shelves,
    own: &OwnWall,
    room: i64,
    (cost, least, most): (&impl Fn(usize) -> i64, &impl Fn(usize) -> i64, i64),
) -> [Option<(i64, usize)>; 2] {
    let Some(one) = house.tightest(room) else { return [None, None] };
    let first = (cost(one), one);
    if own.has(one) {
        return [Some(first), None];
    }
    let near = house.rising(room).take(SEEN).take_while(|p| least(*p) < first.0 + most);
    [Some(first), near.filter(|p| own.has(*p)).map(|p| (cost(p), p)).next()]
}

/// Calls `take` with some rooms between `low` and `high` that panels have, upward from `at`, then
/// from `low`: of panels of the house, and as many of panels of the wall.
pub(super) fn fills(
    shelves: &Shelves,
    ((low, high), at): ((i64, i64), i64),
    own: &OwnWall,
    mut take: impl FnMut(i64),
) {
    let (mut of_house, mut of_wall, mut seen) = (TRIES, TRIES, SEEN);
    for (from, to) in [(at, high), (low, at - 1)] {
        let mut shelf = shelves.shelf(from);
        while let Some(s) = shelf.filter(|s| *s <= to) {
            let here = of_wall > 0 && shelves.all_on(s).take(TRIES).any(|p| own.has(p));
            if of_house > 0 || here {
                take(s);
            }
            of_house -= usize::from(of_house > 0);
            of_wall -= usize::from(here);
            seen -= 1;
            if of_house == 0 && of_wall == 0 || seen == 0 {
                return;
            }
            shelf = shelves.shelf(s + 1);
        }
    }
}
