//! A seeded generator of numbers, the same on every machine.

/// The generator.
// Source: Steele, Lea, Flood, Fast splittable pseudorandom number generators, OOPSLA 2014 (SplitMix64).
#[derive(Clone, Copy, Debug)]
pub(crate) struct Random(u64);

impl Random {
    pub(crate) const fn new(seed: u64) -> Self {
        Self(seed)
    }

    /// 64 bits.
    pub(crate) const fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// A number below `end`, 0 for 0.
    pub(crate) const fn below(&mut self, end: u32) -> u32 {
        (((self.bits() >> 32) * end as u64) >> 32) as u32
    }

    /// A number from 0 up to below 1.
    #[expect(clippy::cast_precision_loss, reason = "53 bits are left")]
    pub(crate) const fn share(&mut self) -> f64 {
        (self.bits() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// A place in a list of so many, 0 for none.
    pub(crate) fn place(&mut self, of: usize) -> usize {
        self.below(u32::try_from(of).unwrap_or(u32::MAX)) as usize
    }
}
