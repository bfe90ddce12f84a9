//! Fingerprints.

use ballband::write::Digest;
use proptest::prelude::*;

#[test]
fn a_digest_is_written_as_in_the_algorithms_own_tests() {
    // XXH3-128 of nothing, seed 0, as published with the algorithm.
    assert_eq!(Digest::of(b"").to_string(), "99aa06d3014798d86001c324468d497f");
}

#[test]
fn parts_do_not_run_into_each_other() {
    assert_ne!(Digest::of_parts(&[b"ab", b"c"]), Digest::of_parts(&[b"a", b"bc"]));
    assert_ne!(Digest::of_parts(&[b"", b"a"]), Digest::of_parts(&[b"a", b""]));
}

#[test]
fn other_texts_are_no_digests() {
    for bad in ["", "99aa", "+9aa06d3014798d86001c324468d497f", "99AA06D3014798D86001C324468D497F"] {
        assert!(bad.parse::<Digest>().is_err(), "{bad}");
    }
}

proptest! {
    #[test]
    fn a_digest_is_read_as_it_was_written(value: u128) {
        let digest = Digest::from(value);
        prop_assert_eq!(digest.to_string().parse::<Digest>(), Ok(digest));
    }
}
