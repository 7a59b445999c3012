//! Which lengths are cut from which stock: of plans with the fewest stock lengths one that keeps each on one
//! wall where it can, so that small pieces, jambs and sills, come from offcuts that lie at hand.

use std::collections::BTreeMap;

use crate::packing;

/// Most pieces of one stock that are exchanged one by one: of more, a house is laid in parts anyway.
const MOST: usize = 400;
/// Rounds of exchanges; each ends sooner where none helps.
const ROUNDS: usize = 12;

/// Pieces and the stock they are cut from; all in whole steps of [`packing`].
struct Cuts<'a> {
    takes: Vec<u64>,
    /// The wall of each.
    walls: &'a [usize],
    room: u64,
}

/// Indices of `lengths` by stock length, in the order of their first pieces: as few stock lengths as
/// [`packing::least`] finds, and of those as few that serve several walls as are found. `walls` holds the wall
/// of each piece. Lengths, stock and saw cut in one unit.
pub(super) fn plan(lengths: &[f64], walls: &[usize], stock: f64, kerf: f64) -> Vec<Vec<usize>> {
    let fewest = packing::least(lengths, stock, kerf);
    let room = packing::room(stock, kerf);
    let takes = lengths.iter().map(|l| packing::weight(*l, room, kerf)).collect();
    let cuts = Cuts { takes, walls, room };
    let apart = wall_by_wall(lengths, &cuts, (stock, kerf));
    let mut best = match apart.len() <= fewest.len() && cuts.shared(&apart) < cuts.shared(&fewest) {
        true => apart,
        false => fewest,
    };
    if lengths.len() <= MOST {
        for _ in 0..ROUNDS {
            if !cuts.exchange(&mut best) {
                break;
            }
        }
    }
    best.retain(|s| !s.is_empty());
    best.sort_by_key(|s| s.iter().min().copied());
    best
}

/// Each wall by itself, then what the stock lengths of several walls leave put together.
fn wall_by_wall(lengths: &[f64], cuts: &Cuts, (stock, kerf): (f64, f64)) -> Vec<Vec<usize>> {
    let mut by: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
    for (i, w) in cuts.walls.iter().enumerate() {
        by.entry(*w).or_default().push(i);
    }
    let each: Vec<Vec<usize>> = by
        .values()
        .flat_map(|of_wall| {
            let own: Vec<f64> = of_wall.iter().map(|i| lengths[*i]).collect();
            let plan = packing::least(&own, stock, kerf);
            plan.into_iter().map(|s| s.into_iter().map(|k| of_wall[k]).collect())
        })
        .collect();
    // What is cut from one stock length for one wall stays together, as if it were one piece.
    let filled: Vec<f64> =
        each.iter().map(|s| cuts.load(s) as f64 / packing::STEPS - kerf).collect();
    let together = packing::least(&filled, stock, kerf);
    together.iter().map(|s| s.iter().flat_map(|k| each[*k].iter().copied()).collect()).collect()
}

impl Cuts<'_> {
    fn load(&self, pieces: &[usize]) -> u64 {
        pieces.iter().map(|i| self.takes[*i]).sum()
    }

    /// Walls that pieces go to, over the first.
    fn more_walls(&self, pieces: &[usize]) -> usize {
        let mut walls: Vec<usize> = pieces.iter().map(|i| self.walls[*i]).collect();
        walls.sort_unstable();
        walls.dedup();
        walls.len().saturating_sub(1)
    }

    /// The same of a whole plan.
    fn shared(&self, plan: &[Vec<usize>]) -> usize {
        plan.iter().map(|s| self.more_walls(s)).sum()
    }

    /// Moves a piece to another stock length, or two against one another, wherever that leaves fewer walls to
    /// share. Whether any was.
    fn exchange(&self, plan: &mut [Vec<usize>]) -> bool {
        let mut any = false;
        for a in 0..plan.len() {
            for b in 0..plan.len() {
                // From a stock length that is shared.
                while a != b && self.more_walls(&plan[a]) > 0 && self.better(plan, (a, b)) {
                    any = true;
                }
            }
        }
        any
    }

    fn better(&self, plan: &mut [Vec<usize>], (a, b): (usize, usize)) -> bool {
        let before = self.more_walls(&plan[a]) + self.more_walls(&plan[b]);
        let loads = (self.load(&plan[a]), self.load(&plan[b]));
        for x in 0..plan[a].len() {
            let p = plan[a][x];
            // Nothing in turn, then each of the other's pieces.
            for y in std::iter::once(None).chain((0..plan[b].len()).map(Some)) {
                let back = y.map_or(0, |y| self.takes[plan[b][y]]);
                let fits = loads.1 - back + self.takes[p] <= self.room
                    && loads.0 - self.takes[p] + back <= self.room;
                if !fits || y.is_some_and(|y| self.walls[plan[b][y]] == self.walls[p]) {
                    continue;
                }
                let (mut from, mut to) = (plan[a].clone(), plan[b].clone());
                match y {
                    Some(y) => std::mem::swap(&mut from[x], &mut to[y]),
                    None => to.push(from.remove(x)),
                }
                if self.more_walls(&from) + self.more_walls(&to) < before {
                    (plan[a], plan[b]) = (from, to);
                    return true;
                }
            }
        }
        false
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Stock lengths that serve several walls.
    fn shared(plan: &[Vec<usize>], walls: &[usize]) -> usize {
        let several = |s: &&Vec<usize>| s.iter().any(|i| walls[*i] != walls[s[0]]);
        plan.iter().filter(several).count()
    }

    #[test]
    fn jambs_of_one_wall_come_from_its_own_stock_where_the_count_stays() {
        // Stock of 100 without saw cuts. Longest first, all walls as one, gives 60 + 40 whichever wall the 40
        // is of; each wall has one 60 and one 40, so each can keep to itself.
        let lengths = [60.0, 60.0, 60.0, 40.0, 40.0, 40.0];
        let walls = [0, 1, 2, 2, 0, 1];
        let made = plan(&lengths, &walls, 100.0, 0.0);
        assert_eq!((made.len(), shared(&made, &walls)), (3, 0));
        // In the order of their first pieces, so that stock is opened wall by wall.
        assert_eq!(made.iter().map(|s| walls[s[0]]).collect::<Vec<_>>(), [0, 1, 2]);
    }

    #[test]
    fn no_stock_length_more_is_bought_to_keep_walls_apart() {
        // Four pieces of 50 on four walls: two stock lengths of 100, four if none were shared.
        let made = plan(&[50.0; 4], &[0, 1, 2, 3], 100.0, 0.0);
        assert_eq!(made.len(), 2);
    }

    #[test]
    fn every_piece_is_cut_once_and_every_stock_length_holds_its_own() {
        // Lengths by a fixed recurrence, on five walls in turn, an eighth lost to each saw cut.
        let mut n: u64 = 7;
        for _ in 0..40 {
            let mut lengths = Vec::new();
            for _ in 0..60 {
                n = n
                    .wrapping_mul(6_364_136_223_846_793_005)
                    .wrapping_add(1_442_695_040_888_963_407);
                lengths.push(4.0 + (n >> 33) as f64 % 140.0);
            }
            let walls: Vec<usize> = (0..60).map(|i| i / 12).collect();
            let made = plan(&lengths, &walls, 150.0, 0.125);
            let mut all: Vec<usize> = made.iter().flatten().copied().collect();
            all.sort_unstable();
            assert_eq!(all, (0..60).collect::<Vec<_>>());
            let fewest = packing::least(&lengths, 150.0, 0.125);
            assert_eq!(made.len(), fewest.len());
            assert!(shared(&made, &walls) <= shared(&fewest, &walls));
            for s in &made {
                let cut = s.iter().map(|i| lengths[*i]).sum::<f64>() + 0.125 * (s.len() - 1) as f64;
                assert!(cut <= 150.0 + 1e-2, "{cut}");
            }
        }
    }
}
