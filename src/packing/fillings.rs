//! Stock piece after stock piece filled, with what fills it (Korf 2003): the largest piece first, and only
//! fillings that nothing more goes into.

use std::collections::BTreeMap;

/// Fillings kept of one branching, fullest first; with more the search proves nothing.
const WIDTH: usize = 64;
/// Bad states remembered.
const MEMORY: usize = 20_000;

pub(super) enum Outcome {
    Found(Vec<Vec<usize>>),
    Impossible,
    Unknown,
}

/// Pieces of one weight.
struct Kind {
    weight: u64,
    at: Vec<usize>,
}

struct Search {
    kinds: Vec<Kind>,
    room: u64,
    left: u32,
    cut_short: bool,
    /// Counts that lead nowhere, by a number made of them.
    dead: BTreeMap<u64, Vec<Vec<u16>>>,
    remembered: usize,
    chosen: Vec<Vec<u16>>,
}

/// Tries to get everything into `aim` stock pieces within a budget of steps.
pub(super) fn fill(weights: &[u64], room: u64, aim: usize, budget: u32) -> Outcome {
    let mut kinds: Vec<Kind> = Vec::new();
    for (i, w) in weights.iter().enumerate() {
        match kinds.last_mut() {
            Some(k) if k.weight == *w && k.at.len() < usize::from(u16::MAX) => k.at.push(i),
            _ => kinds.push(Kind { weight: *w, at: vec![i] }),
        }
    }
    let sum: u64 = weights.iter().sum();
    let Some(slack) = (room.saturating_mul(aim as u64)).checked_sub(sum) else {
        return Outcome::Impossible;
    };
    let counts: Vec<u16> = kinds.iter().map(|k| k.at.len() as u16).collect();
    let mut search = Search {
        kinds,
        room,
        left: budget,
        cut_short: false,
        dead: BTreeMap::new(),
        remembered: 0,
        chosen: Vec::new(),
    };
    if search.go(counts, slack) {
        return Outcome::Found(search.positions());
    }
    if search.cut_short { Outcome::Unknown } else { Outcome::Impossible }
}

/// A number for counts, by which few others have the same (FNV-1a).
fn number(counts: &[u16]) -> u64 {
    counts.iter().fold(0xcbf2_9ce4_8422_2325, |sum: u64, c| {
        (sum ^ u64::from(*c)).wrapping_mul(0x0100_0000_01b3)
    })
}

impl Search {
    /// Fills one stock after another; `slack` is the room that may yet stay empty.
    fn go(&mut self, counts: Vec<u16>, slack: u64) -> bool {
        let Some(first) = counts.iter().position(|c| *c > 0) else { return true };
        let key = number(&counts);
        if self.dead.get(&key).is_some_and(|dead| dead.contains(&counts)) {
            return false;
        }
        if self.left == 0 {
            self.cut_short = true;
            return false;
        }
        let mut one = vec![0u16; counts.len()];
        one[first] = 1;
        let mut found = Vec::new();
        let free = self.room - self.kinds[first].weight;
        self.fillings(&counts, first, free, slack, &mut one, &mut found);
        found.sort_by(|a: &(u64, Vec<u16>), b| a.0.cmp(&b.0).then_with(|| b.1.cmp(&a.1)));
        if found.len() > WIDTH {
            found.truncate(WIDTH);
            self.cut_short = true;
        }
        for (empty, filling) in found {
            let rest = counts.iter().zip(&filling).map(|(c, f)| c - f).collect();
            self.chosen.push(filling);
            if self.go(rest, slack - empty) {
                return true;
            }
            self.chosen.pop();
        }
        // Slack left over is the same for the same counts: what is dead stays dead.
        if self.remembered < MEMORY {
            self.remembered += 1;
            self.dead.entry(key).or_default().push(counts);
        }
        false
    }

    /// Every way to fill what is `free` with kinds from `from` on, so that nothing more goes in and
    /// no more than `slack` stays empty.
    fn fillings(
        &mut self,
        counts: &[u16],
        from: usize,
        free: u64,
        slack: u64,
        one: &mut Vec<u16>,
        found: &mut Vec<(u64, Vec<u16>)>,
    ) {
        // More than are kept, so that the fullest of many are kept.
        if found.len() >= 8 * WIDTH || self.left == 0 {
            self.cut_short = true;
            return;
        }
        self.left -= 1;
        // Weights fall: those that go in stand together at the end.
        let fits = self.kinds.partition_point(|k| k.weight > free);
        let next = (from.max(fits)..counts.len()).find(|k| counts[*k] > one[*k]);
        let Some(k) = next else {
            let full = (fits..counts.len()).all(|k| counts[k] == one[k]);
            if full && free <= slack {
                found.push((free, one.clone()));
            }
            return;
        };
        let most = (free / self.kinds[k].weight.max(1)).min(u64::from(counts[k] - one[k])) as u16;
        for n in (0..=most).rev() {
            one[k] += n;
            self.fillings(
                counts,
                k + 1,
                free - u64::from(n) * self.kinds[k].weight,
                slack,
                one,
                found,
            );
            one[k] -= n;
        }
    }

    /// Kinds back to positions.
    fn positions(&self) -> Vec<Vec<usize>> {
        let mut next = vec![0usize; self.kinds.len()];
        let mut out = Vec::new();
        for filling in &self.chosen {
            let mut stock = Vec::new();
            for (k, n) in filling.iter().enumerate() {
                let n = usize::from(*n);
                stock.extend(self.kinds[k].at.iter().skip(next[k]).take(n));
                next[k] += n;
            }
            out.push(stock);
        }
        out
    }
}
