//! The pictures that are made of a photo: widths and formats.

use super::Facts;
use xxhash_rust::xxh3::xxh3_128;

/// Changes whenever the same source would give other bytes, so that old results are not kept.
const RECIPE: u32 = 1;

/// The widths a photo is made in, in pixels, for a phone, a column and a large screen.
const WIDTHS: [u32; 3] = [480, 960, 1600];

/// The longest side a WebP file can have, in pixels.
const WEBP_SIDE: u32 = 16_383;

/// The formats made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Format {
    /// WebP, lossy; transparency is kept.
    Webp,
    /// JPEG; what was transparent becomes white.
    Jpeg,
}

impl Format {
    /// The usual ending of a file's name, without the dot.
    pub fn extension(self) -> &'static str {
        match self {
            Format::Webp => "webp",
            Format::Jpeg => "jpg",
        }
    }
}

/// One of the pictures made from a photo.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Variant {
    /// Pixels across.
    pub width: u32,
    /// Pixels down, in the photo's proportion, to the nearest pixel and at least one.
    pub height: u32,
    /// Its format.
    pub format: Format,
}

impl Variant {
    /// The digest of everything this picture's bytes depend on.
    ///
    /// Takes the [`digest`] of the source, so that a source is read through but once.
    pub fn digest(&self, source: u128) -> u128 {
        let mut all = Vec::with_capacity(32);
        all.extend_from_slice(&source.to_le_bytes());
        for number in [RECIPE, self.width, self.height, self.format as u32] {
            all.extend_from_slice(&number.to_le_bytes());
        }
        xxh3_128(&all)
    }
}

/// The digest of a source's bytes (XXH3, 128 bits; tells changes, is no defence).
pub fn digest(bytes: &[u8]) -> u128 {
    xxh3_128(bytes)
}

/// The pictures to make of a photo: three widths in two formats, the smallest first.
///
/// None is wider than the photo, and one narrower than the least width gives just its own. A strip
/// that would be taller than WebP allows, 16,383 pixels, is made narrower.
pub fn variants(facts: &Facts) -> Vec<Variant> {
    let tallest = u64::from(WEBP_SIDE) * u64::from(facts.width) / u64::from(facts.height.max(1));
    let widest = u32::try_from(tallest).unwrap_or(u32::MAX).min(facts.width).max(1);
    let mut widths: Vec<u32> = WIDTHS.into_iter().filter(|width| *width <= widest).collect();
    if widths.is_empty() {
        widths.push(widest);
    }
    widths
        .into_iter()
        .flat_map(|width| {
            let height = in_proportion(width, facts);
            [Format::Webp, Format::Jpeg].map(|format| Variant { width, height, format })
        })
        .collect()
}

fn in_proportion(width: u32, facts: &Facts) -> u32 {
    let whole = u64::from(facts.width.max(1));
    let height = (u64::from(facts.height) * u64::from(width) + whole / 2) / whole;
    u32::try_from(height).unwrap_or(u32::MAX).clamp(1, WEBP_SIDE)
}
