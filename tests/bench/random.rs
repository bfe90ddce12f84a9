//! Chance that can be had again: a small generator of our own, so that a studio depends on its seed and on no crate's version.

/// A source of numbers that look random and are the same for the same seed.
#[derive(Clone, Debug)]
pub struct Random(u64);

impl Random {
    /// Returns the source of one entry, told by the studio's seed and the entry's number.
    pub fn new(seed: u64, entry: usize) -> Self {
        let mut random = Self(seed ^ (entry as u64).wrapping_mul(0xd134_2543_de82_ef95));
        random.next();
        random
    }

    /// Returns the next number (SplitMix64, after Steele, Lea and Flood, 2014).
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// Returns a number below `end`, or 0 if `end` is 0.
    pub fn below(&mut self, end: usize) -> usize {
        if end == 0 { 0 } else { (self.next() % end as u64) as usize }
    }

    /// Returns one of the words.
    pub fn one<'a>(&mut self, words: &[&'a str]) -> &'a str {
        words.get(self.below(words.len())).copied().unwrap_or_default()
    }
}
