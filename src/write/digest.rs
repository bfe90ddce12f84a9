//! Fingerprints of bytes.

use std::fmt;
use std::str::FromStr;

use xxhash_rust::xxh3::xxh3_128;

/// A 128-bit fingerprint, written as 32 hexadecimal digits.
///
/// XXH3, which is fast and not cryptographic: it tells whether a file changed, and is not a
/// defence against somebody who chooses the bytes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Digest(u128);

/// A text that is not 32 hexadecimal digits.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BadDigest(pub String);

impl Digest {
    /// The fingerprint of some bytes.
    pub fn of(bytes: &[u8]) -> Digest {
        Digest(xxh3_128(bytes))
    }

    /// The fingerprint of several values in order; moving a byte from one to the next changes it.
    pub fn of_parts(parts: &[&[u8]]) -> Digest {
        let mut all = Vec::with_capacity(parts.len() * 16);
        for part in parts {
            all.extend_from_slice(&xxh3_128(part).to_le_bytes());
        }
        Digest::of(&all)
    }
}

impl From<u128> for Digest {
    fn from(value: u128) -> Digest {
        Digest(value)
    }
}

impl fmt::Display for Digest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:032x}", self.0)
    }
}

impl FromStr for Digest {
    type Err = BadDigest;

    fn from_str(text: &str) -> Result<Digest, BadDigest> {
        // `from_str_radix` alone would take a sign and fewer digits.
        if text.len() != 32 || !text.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f')) {
            return Err(BadDigest(text.to_owned()));
        }
        u128::from_str_radix(text, 16).map(Digest).map_err(|_| BadDigest(text.to_owned()))
    }
}

impl fmt::Display for BadDigest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "`{}` is not a fingerprint of 32 hexadecimal digits", self.0.escape_debug())
    }
}

impl std::error::Error for BadDigest {}
