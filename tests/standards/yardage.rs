//! Typical lengths of yarn.

use std::collections::BTreeSet;

use ballband::measure::{Count, System, YarnLength};
use ballband::standards::Band;
use ballband::standards::table::Table;
use ballband::standards::yardage::{CSV, Item, all, plausible, read};
use ballband::standards::yarn_weights::by_name;

use super::inches;

fn yards(min: i64, max: i64) -> Option<Band<YarnLength>> {
    Some(Band { min: YarnLength::from_yards(min)?, max: YarnLength::from_yards(max)? })
}

fn sts(text: &str) -> Count {
    Count::parse(text).unwrap()
}

#[test]
fn the_table_as_a_whole() {
    let rows = read(CSV).unwrap();
    assert_eq!(rows, all());
    assert_eq!(rows.len(), super::lines(CSV));
    let mut seen = BTreeSet::new();
    for row in &rows {
        super::check_sources(row.provenance, &row.sources);
        assert_eq!(by_name(&row.name).unwrap().number, row.category, "{row:?}");
        assert!(seen.insert((row.category, row.item)), "{row:?} is there twice");
    }
    for item in Item::ALL {
        let rows: Vec<_> = rows.iter().filter(|row| row.item == item).collect();
        assert_eq!(rows.iter().map(|row| row.category).collect::<Vec<_>>(), [1, 2, 3, 4, 5, 6]);
        // Heavier yarn is knitted coarser, without a gap, and takes less length.
        for pair in rows.windows(2) {
            assert_eq!(pair[0].stitches_per_inch.min, pair[1].stitches_per_inch.max, "{pair:?}");
            assert!(pair[0].length.min > pair[1].length.min && pair[0].length.max > pair[1].length.max, "{pair:?}");
        }
    }
}

#[test]
fn the_metres_in_the_table_are_the_yards() {
    let table = Table::read(CSV).unwrap();
    for row in table.rows() {
        for (yards, metres) in [("yards_min", "metres_min"), ("yards_max", "metres_max")] {
            let [yards, metres] = [yards, metres].map(|column| i64::from(row.whole(column).unwrap().unwrap()));
            let yards = YarnLength::from_yards(yards).unwrap().show(System::Metric);
            assert_eq!(yards, YarnLength::from_metres(metres).unwrap().show(System::Metric));
        }
    }
}

#[test]
fn a_band_for_a_gauge() {
    // 22 stitches over 4 in are 5.5 to the inch: category 3 alone.
    assert_eq!(plausible(Item::AdultSweater, sts("22")), yards(1000, 2000));
    // 20 are 5 to the inch, where 3 and 4 touch.
    assert_eq!(plausible(Item::Hat, sts("20")), yards(150, 300));
    assert_eq!(plausible(Item::Scarf, sts("20")), yards(200, 250));
    assert_eq!(plausible(Item::Scarf, sts("19.999")), yards(200, 200));
    assert_eq!(plausible(Item::Hat, sts("6")), yards(75, 125));
    assert_eq!(plausible(Item::Hat, sts("5.999")), None);
    assert_eq!(plausible(Item::Hat, sts("32")), yards(300, 375));
    assert_eq!(plausible(Item::Hat, sts("32.001")), None);
    assert_eq!(plausible(Item::Hat, Count::from_thousandths(i64::MAX)), None);
    assert_eq!(all().last().unwrap().stitches_per_inch, inches("1.5", "3"));
}
