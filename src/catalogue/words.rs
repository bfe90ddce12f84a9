//! Which words a text has, in a few bits: enough to tell that it cannot name a title.

use std::ops::Range;

/// How many bits there are, a multiple of 64. A text of some hundred words sets few of them.
const BITS: usize = 1 << 13;

/// The words of a text, large and small letters alike. It may be said to have a word that it has not, never the other way.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Words(Box<[u64]>);

impl Words {
    /// Returns the words of some texts.
    pub(super) fn of<'a>(texts: impl IntoIterator<Item = &'a str>) -> Self {
        let mut bits = vec![0; BITS / 64].into_boxed_slice();
        for plain in texts {
            for word in runs(plain) {
                let bit = bit(plain.get(word).unwrap_or_default());
                if let Some(bits) = bits.get_mut(bit / 64) {
                    *bits |= 1 << (bit % 64);
                }
            }
        }
        Self(bits)
    }

    /// Returns whether the text may have every word of a title.
    pub(super) fn may_name(&self, title: &str) -> bool {
        runs(title).all(|word| {
            let bit = bit(title.get(word).unwrap_or_default());
            self.0.get(bit / 64).is_some_and(|bits| bits & (1 << (bit % 64)) != 0)
        })
    }
}

/// Returns the runs of letters and digits in a text.
pub(super) fn runs(text: &str) -> impl Iterator<Item = Range<usize>> {
    let mut rest = text.char_indices();
    std::iter::from_fn(move || {
        let (start, _) = rest.by_ref().find(|(_, c)| c.is_alphanumeric())?;
        let end = rest.by_ref().find(|(_, c)| !c.is_alphanumeric()).map_or(text.len(), |(end, _)| end);
        Some(start..end)
    })
}

fn bit(word: &str) -> usize {
    let letters = word.chars().flat_map(char::to_lowercase);
    let mixed = letters.fold(0_u32, |all, c| (all.rotate_left(5) ^ u32::from(c)).wrapping_mul(0x9e37_79b9));
    usize::try_from(mixed >> 19).unwrap_or_default() % BITS
}
