//! Chance from a seed, the same on every machine.

/// A stream of chance.
pub(crate) struct Dice(u64);

impl Dice {
    /// The stream of a seed.
    pub(crate) fn new(seed: u64) -> Self {
        Dice(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) ^ 0x5851_f42d_4c95_7f2d)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// From 0 up to 1.
    pub(crate) fn unit(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// From `low` up to `high`.
    pub(crate) fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.unit()
    }

    /// One of `low..=high`.
    pub(crate) fn count(&mut self, low: usize, high: usize) -> usize {
        low + (self.next() % (high - low + 1) as u64) as usize
    }

    /// True so often of 1.
    pub(crate) fn odds(&mut self, of_one: f64) -> bool {
        self.unit() < of_one
    }

    /// One of these.
    pub(crate) fn pick<T: Copy>(&mut self, of: &[T]) -> T {
        of[self.count(0, of.len() - 1)]
    }
}
