//! Shaping in pairs.

use ballband::reckon::shaping::{Every, Shaping, Unshapable, Worked, paired};
use proptest::prelude::*;

/// Kristen TenDyke: 38 to 60 stitches are 11 shaping rows; 15½ in at 7 rows are 108 rows.
#[test]
fn a_sleeve() {
    let round = paired(38, 60, 108, Worked::Round).unwrap();
    assert_eq!(round.times(), 11);
    // 108 = 9 × 11 + 9, so 9 of them are a row further apart: 2 × 9 + 9 × 10.
    let every = |rows, times| Every { rows, times };
    assert_eq!(round, Shaping { first: every(9, 2), then: every(10, 9), plain: 0 });
    // 108 = 8 × 11 + 20, so 10 are two rows further apart: 8 + 10 × 10.
    let flat = paired(38, 60, 108, Worked::Flat).unwrap();
    assert_eq!(flat, Shaping { first: every(8, 1), then: every(10, 10), plain: 0 });
    assert_eq!(paired(60, 38, 108, Worked::Flat), Ok(flat));
    assert_eq!(paired(38, 60, 109, Worked::Flat).unwrap().plain, 1);
}

#[test]
fn what_cannot_be_shaped() {
    assert_eq!(paired(39, 60, 108, Worked::Round), Err(Unshapable::OddDifference));
    assert_eq!(paired(38, 60, 10, Worked::Round), Err(Unshapable::TooFewRows { least: 11 }));
    assert_eq!(paired(38, 60, 21, Worked::Flat), Err(Unshapable::TooFewRows { least: 22 }));
    assert_eq!(paired(-2, 60, 100, Worked::Flat), Err(Unshapable::BelowNothing));
    assert_eq!(paired(2, 60, -1, Worked::Flat), Err(Unshapable::BelowNothing));
    assert_eq!(paired(0, 2, i64::MAX, Worked::Round), Err(Unshapable::TooLarge));
    let none = paired(60, 60, 40, Worked::Round).unwrap();
    assert_eq!((none.times(), none.plain), (0, 40));
}

proptest! {
    #[test]
    fn rows_and_stitches_come_out(from in 0..300_i64, to in 0..300_i64, rows in 0..400_i64, flat: bool) {
        let (worked, step) = if flat { (Worked::Flat, 2) } else { (Worked::Round, 1) };
        match paired(from, to, rows, worked) {
            Ok(shaping) => {
                prop_assert_eq!(2 * shaping.times(), (from - to).abs());
                let Shaping { first, then, plain } = shaping;
                prop_assert_eq!(first.rows * first.times + then.rows * then.times + plain, rows);
                if shaping.times() > 0 {
                    prop_assert!(plain < step && first.times > 0 && first.rows > 0);
                    prop_assert_eq!(then.rows, first.rows + step);
                    prop_assert_eq!(first.rows % step, 0);
                }
            }
            Err(Unshapable::OddDifference) => prop_assert_eq!((from - to).abs() % 2, 1),
            Err(Unshapable::TooFewRows { least }) => {
                prop_assert_eq!(least, (from - to).abs() / 2 * step);
                prop_assert!(rows < least);
            }
            Err(other) => prop_assert!(false, "{other:?}"),
        }
    }
}
