//! Whole skeins.

use super::yarn;
use ballband::measure::{Count, Mass, Percent, PutUp, YarnLength};
use ballband::reckon::skeins;

/// 1,000 yd at 200 yd a skein is 5 skeins and not 6, and 1,000.1 yd is 6.
#[test]
fn an_exact_fit_is_not_rounded_up() {
    let put_up = PutUp { length: yarn("200 yd"), mass: Mass::from_grams(100).unwrap() };
    let whole =
        |needs: &str, margin| skeins(yarn(needs), Percent::from_hundredths(margin), put_up).map(|skeins| skeins.whole);
    assert_eq!(whole("1000 yd", 0), Some(5));
    assert_eq!(whole("1000.1 yd", 0), Some(6));
    assert_eq!(whole("1000 yd", 1000), Some(6));
    assert_eq!(whole("0 yd", 1000), Some(0));
    let exact = skeins(yarn("1000.1 yd"), Percent::ZERO, put_up).unwrap().exact;
    assert_eq!(exact, Count::from_thousandths(5001));
    let empty = PutUp { length: YarnLength::ZERO, ..put_up };
    assert_eq!(skeins(yarn("1 yd"), Percent::ZERO, empty), None);
}
