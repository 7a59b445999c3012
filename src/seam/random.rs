//! A small fixed generator (xorshift64*, S. Vigna 2014): the same numbers on every machine.

#[derive(Clone, Debug)]
pub(super) struct Random(u64);

impl Random {
    pub(super) fn new(seed: u64) -> Self {
        // The state must not be 0; the constant spreads small seeds (splitmix64).
        Random(seed.wrapping_add(0x9e37_79b9_7f4a_7c15).wrapping_mul(0xbf58_476d_1ce4_e5b9) | 1)
    }

    pub(super) fn next(&mut self) -> u64 {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        self.0.wrapping_mul(0x2545_f491_4f6c_dd1d)
    }

    /// A whole number below `n` (0 for `n` = 0).
    pub(super) fn below(&mut self, n: usize) -> usize {
        if n == 0 { 0 } else { (((self.next() >> 32) * n as u64) >> 32) as usize }
    }
}
