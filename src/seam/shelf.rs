//! Panels ordered by room: a shelf of boards for each whole step, and a bit for each shelf
//! that is not bare, so that the next board with enough room is found in a few steps.

/// No board.
const NONE: u32 = u32::MAX;

/// An ordered set of panels by room.
#[derive(Clone, Debug, Default)]
pub(super) struct Shelves {
    heads: Vec<u32>,
    /// Bit `f` of `bits`: shelf `f` is not bare. Bit `w` of `over`: word `w` is not 0.
    bits: Vec<u64>,
    over: Vec<u64>,
    next: Vec<u32>,
    before: Vec<u32>,
}

impl Shelves {
    /// For rooms from 0 to `most`.
    #[inline]
    pub(super) fn new(most: i64) -> Self {
        let shelves = usize::try_from(most).unwrap_or(0) + 1;
        let words = shelves.div_ceil(64);
        Shelves {
            heads: vec![NONE; shelves],
            bits: vec![0; words],
            over: vec![0; words.div_ceil(64)],
            ..Default::default()
        }
    }

    /// Makes place for one more panel's number.
    #[inline]
    pub(super) fn grow(&mut self) {
        self.next.push(NONE);
        self.before.push(NONE);
    }

    #[inline]
    pub(super) fn insert(&mut self, room: i64, panel: usize) {
        // Overfull panels, which only a broken rule could make, lie on the lowest shelf.
        let f = room.max(0) as usize;
        let head = self.heads[f];
        self.next[panel] = head;
        self.before[panel] = NONE;
        if head != NONE {
            self.before[head as usize] = panel as u32;
        }
        self.heads[f] = panel as u32;
        self.bits[f / 64] |= 1 << (f % 64);
        self.over[f / 4096] |= 1 << (f / 64 % 64);
    }

    #[inline]
    pub(super) fn remove(&mut self, room: i64, panel: usize) {
        let f = room.max(0) as usize;
        let (before, next) = (self.before[panel], self.next[panel]);
        if next != NONE {
            self.before[next as usize] = before;
        }
        if before != NONE {
            self.next[before as usize] = next;
            return;
        }
        self.heads[f] = next;
        if next == NONE {
            self.bits[f / 64] &= !(1 << (f % 64));
            if self.bits[f / 64] == 0 {
                self.over[f / 4096] &= !(1 << (f / 64 % 64));
            }
        }
    }

    /// The lowest shelf at or over `room` that is not bare.
    #[inline]
    pub(super) fn shelf(&self, room: i64) -> Option<i64> {
        let f = room.max(0) as usize;
        if f >= self.heads.len() {
            return None;
        }
        let here = self.bits[f / 64] >> (f % 64);
        if here != 0 {
            return Some((f + here.trailing_zeros() as usize) as i64);
        }
        let mut word = f / 64 + 1;
        while word < self.bits.len() {
            let up = self.over[word / 64] >> (word % 64);
            if up == 0 {
                word = (word / 64 + 1) * 64;
                continue;
            }
            word += up.trailing_zeros() as usize;
            return Some((word * 64 + self.bits[word].trailing_zeros() as usize) as i64);
        }
        None
    }

    /// A panel of a shelf that is not bare.
    #[inline]
    pub(super) fn on(&self, shelf: i64) -> Option<usize> {
        let head = *self.heads.get(usize::try_from(shelf).ok()?)?;
        (head != NONE).then_some(head as usize)
    }

    /// The panel of least room that has `room`.
    #[inline]
    pub(super) fn tightest(&self, room: i64) -> Option<usize> {
        self.on(self.shelf(room)?)
    }

    /// Panels that have `room`, rising.
    #[inline]
    pub(super) fn rising(&self, room: i64) -> impl Iterator<Item = usize> + '_ {
        let shelves = std::iter::successors(self.shelf(room), |s| self.shelf(s + 1));
        shelves.flat_map(|s| self.all_on(s))
    }

    /// The highest shelf at or under `room` that is not bare.
    #[inline]
    pub(super) fn under(&self, room: i64) -> Option<i64> {
        if room < 0 {
            return None;
        }
        let f = (room as usize).min(self.heads.len() - 1);
        let here = self.bits[f / 64] << (63 - f % 64);
        if here != 0 {
            return Some((f - here.leading_zeros() as usize) as i64);
        }
        let word = (0..f / 64).rev().find(|w| self.bits[*w] != 0)?;
        Some((word * 64 + 63 - self.bits[word].leading_zeros() as usize) as i64)
    }

    /// All panels, from the emptiest.
    pub(super) fn falling(&self) -> impl Iterator<Item = usize> + '_ {
        let shelves = std::iter::successors(self.under(i64::MAX), |s| self.under(s - 1));
        shelves.flat_map(|s| self.all_on(s))
    }

    /// The panels of a shelf.
    #[inline]
    pub(super) fn all_on(&self, shelf: i64) -> impl Iterator<Item = usize> + '_ {
        std::iter::successors(self.on(shelf), |p| {
            let next = self.next[*p];
            (next != NONE).then_some(next as usize)
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn agrees_with_an_ordered_set() {
        let mut shelves = Shelves::new(9000);
        let mut set: BTreeSet<(i64, usize)> = BTreeSet::new();
        let mut rooms: Vec<Option<i64>> = vec![None; 40];
        rooms.iter().for_each(|_| shelves.grow());
        let mut s = 5u64;
        for _ in 0..4000 {
            s = s.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
            let (panel, room) = ((s >> 33) as usize % 40, (s >> 40) as i64 % 9001);
            if let Some(old) = rooms[panel].take() {
                shelves.remove(old, panel);
                set.remove(&(old, panel));
            } else {
                shelves.insert(room, panel);
                set.insert((room, panel));
                rooms[panel] = Some(room);
            }
            let want = set.range((room, 0)..).next().map(|k| k.0);
            assert_eq!(shelves.shelf(room), want);
            assert_eq!(shelves.under(room), set.range(..(room + 1, 0)).next_back().map(|k| k.0));
            let listed: BTreeSet<usize> = shelves.all_on(room).collect();
            assert_eq!(listed, set.range((room, 0)..(room + 1, 0)).map(|k| k.1).collect());
        }
    }
}
