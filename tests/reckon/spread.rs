//! Changes spread over a row.

use ballband::reckon::spread::{Change, Edges, spread};
use proptest::prelude::*;

fn gaps(stitches: i64, changes: i64, change: Change, edges: Edges) -> Option<Vec<i64>> {
    let gaps = spread(stitches, changes, change, edges)?;
    assert!(gaps.iter().all(|gap| gap.times > 0));
    assert!(gaps.windows(2).all(|pair| pair[0].stitches != pair[1].stitches));
    Some(gaps.iter().flat_map(|gap| (0..gap.times).map(|_| gap.stitches)).collect())
}

#[test]
fn published_increases() {
    let gaps = |stitches, changes, edges| gaps(stitches, changes, Change::Increase, edges).unwrap();
    // Wool Pack Yarn: 13, 13, 13, 12 in the round; after 6, 19, 32 and 45 if flat.
    assert_eq!(gaps(51, 4, Edges::Round), [13, 13, 13, 12]);
    assert_eq!(gaps(51, 4, Edges::Halves), [6, 13, 13, 13, 6]);
    assert_eq!(Edges::default(), Edges::Halves);
    // Wool Pack Yarn: 112 by 16 is 7, half of it 3½.
    assert_eq!(gaps(112, 16, Edges::Round), [7; 16]);
    let flat = gaps(112, 16, Edges::Halves);
    assert_eq!((flat[0], flat[1], flat[16]), (4, 7, 3));
    // Dummies: five gaps of 8. With halves at the edges it is 5, 10, 10, 10, 5.
    assert_eq!(gaps(40, 4, Edges::Wholes), [8; 5]);
    assert_eq!(gaps(40, 4, Edges::Halves), [5, 10, 10, 10, 5]);
}

/// E J Heywood, first size: p4, p2tog, (p8, p2tog) 6 times, p4 on 70 stitches leaves 63.
#[test]
fn published_decreases() {
    assert_eq!(gaps(70, 7, Change::Decrease, Edges::Halves), Some(vec![4, 8, 8, 8, 8, 8, 8, 4]));
    assert_eq!(gaps(8, 4, Change::Decrease, Edges::Round), Some(vec![0; 4]));
}

#[test]
fn what_does_not_fit_is_none() {
    for (stitches, changes, change, edges) in [
        (51, 0, Change::Increase, Edges::Round),
        (51, -1, Change::Increase, Edges::Round),
        (3, 4, Change::Increase, Edges::Round),
        (4, 4, Change::Increase, Edges::Wholes),
        (7, 4, Change::Increase, Edges::Halves),
        (7, 4, Change::Decrease, Edges::Round),
        (i64::MIN, 1, Change::Decrease, Edges::Round),
        (i64::MAX, i64::MAX, Change::Increase, Edges::Wholes),
        (i64::MAX, i64::MAX, Change::Decrease, Edges::Round),
    ] {
        assert_eq!(spread(stitches, changes, change, edges), None, "{changes} over {stitches}");
    }
    // A row beyond all knitting takes no room.
    assert_eq!(spread(i64::MAX, i64::MAX, Change::Increase, Edges::Round).map(|gaps| gaps.len()), Some(1));
}

proptest! {
    #[test]
    fn gaps_are_even_and_sum_to_the_row(
        stitches in 1..400_i64,
        changes in 1..200_i64,
        change in prop_oneof![Just(Change::Increase), Just(Change::Decrease)],
        edges in prop_oneof![Just(Edges::Round), Just(Edges::Halves), Just(Edges::Wholes)],
    ) {
        if let Some(mut gaps) = gaps(stitches, changes, change, edges) {
            let taken = if change == Change::Decrease { 2 * changes } else { 0 };
            prop_assert_eq!(gaps.iter().sum::<i64>() + taken, stitches);
            let edge = if edges == Edges::Halves { 1 } else { 0 };
            if edge == 1 {
                let (first, last) = (gaps.remove(0), gaps.pop().unwrap());
                prop_assert!(first == last || first == last + 1);
                gaps.push(first + last);
            }
            prop_assert_eq!(gaps.len() as i64, if edges == Edges::Wholes { changes + 1 } else { changes });
            prop_assert!(gaps.iter().max().unwrap() - gaps.iter().min().unwrap() <= 1);
            prop_assert!(gaps.is_sorted_by(|one, two| one >= two), "the larger come first");
        } else {
            prop_assert!(stitches < 2 * changes || (edges == Edges::Wholes && stitches <= changes));
        }
    }
}
