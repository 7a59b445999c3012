//! What a width holds that is worth most: each item once at most, widths and worths in one unit each.
//!
//! By every width (Bellman 1957). Whole numbers are exact in the worths.

/// The most that items are worth in each width, and which of them it takes.
pub(crate) struct Knapsack {
    /// The worth, for each width from 0 on.
    pub(crate) most: Vec<f64>,
    widths: Vec<usize>,
    /// For each item, and each width: whether the best of this item and those before it holds it.
    held: Vec<Vec<bool>>,
}

impl Knapsack {
    /// Of `items`, each a width and a worth, for widths up to `room`.
    pub(crate) fn of(items: &[(usize, f64)], room: usize) -> Self {
        let mut most = vec![0.0; room + 1];
        let mut held = Vec::with_capacity(items.len());
        let mut before = most.clone();
        for (width, worth) in items {
            let mut holds = vec![false; room + 1];
            if *width <= room {
                before.copy_from_slice(&most);
                let without = most[*width..].iter_mut().zip(&mut holds[*width..]);
                for ((best, holds), rest) in without.zip(&before) {
                    let with = rest + worth;
                    *holds = with > *best;
                    *best = if *holds { with } else { *best };
                }
            }
            held.push(holds);
        }
        Knapsack { most, widths: items.iter().map(|i| i.0).collect(), held }
    }

    /// The items that make a width worth most, the last first.
    pub(crate) fn items(&self, width: usize) -> Vec<usize> {
        let mut left = width;
        let mut out = Vec::new();
        for (i, holds) in self.held.iter().enumerate().rev() {
            if holds[left] {
                left -= self.widths[i];
                out.push(i);
            }
        }
        out
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn as_much_as_the_best_of_every_choice() {
        let mut s = 5u64;
        let mut next = |n: u64| {
            s = s.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
            ((s >> 33) % n) as usize
        };
        for _ in 0..60 {
            let items: Vec<(usize, f64)> = (0..8).map(|_| (next(30), next(50) as f64)).collect();
            let found = Knapsack::of(&items, 40);
            for room in 0..=40 {
                let of = |chosen: u32| {
                    let chosen =
                        items.iter().enumerate().filter(move |(i, _)| chosen >> i & 1 == 1);
                    chosen.fold((0, 0.0), |(w, v), (_, i)| (w + i.0, v + i.1))
                };
                let all = (0..256).map(of).filter(|(width, _)| *width <= room);
                assert_eq!(found.most[room], all.map(|c| c.1).fold(0.0, f64::max));
                let taken = found.items(room);
                let sum: f64 = taken.iter().map(|i| items[*i].1).sum();
                let width: usize = taken.iter().map(|i| items[*i].0).sum();
                assert!(sum == found.most[room] && width <= room, "{items:?} in {room}");
            }
        }
    }
}
