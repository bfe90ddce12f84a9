//! Rows with the counts they must have, from data.

use super::row;
use ballband::notation::rows::{Fault, How, Item, Needle, Reading, Until, count, once};

const ROWS: &str = include_str!("rows.txt");
const FACTS: &str = include_str!("facts.txt");

fn lines(text: &str) -> impl Iterator<Item = Vec<&str>> {
    text.lines().filter(|line| !line.starts_with('#')).map(|line| line.split(" | ").collect())
}

fn numbers(text: &str) -> Vec<i64> {
    text.split(';').map(|number| number.trim().parse().unwrap()).collect()
}

/// A value of a size, where one value serves all.
fn of(values: &[i64], size: usize) -> i64 {
    if values.len() == 1 { values[0] } else { values[size] }
}

fn hold(text: &str, before: &[i64], after: &[i64]) {
    let (statement, items) = row(text);
    for size in 0..before.len().max(after.len()) {
        let outcome = count(&items, Needle::of(of(before, size)), size, Reading::More);
        assert_eq!(outcome.faults, [], "{text} in size {size}");
        assert_eq!(outcome.after.total, Some(of(after, size)), "{text} in size {size}");
        assert_eq!(outcome.change, Some(of(after, size) - of(before, size)), "{text}");
        if let Some(stated) = &statement.stated {
            assert_eq!(stated.of(size), of(after, size), "{text}");
        }
        if let Some(change) = &statement.change {
            let by = if change.less { -change.by.of(size) } else { change.by.of(size) };
            assert_eq!(Some(by), outcome.change, "{text}");
        }
        // One more or less never fits, but where stitches to the end take whatever there is.
        let takes_any = items.iter().any(takes_any);
        if !takes_any {
            let more = count(&items, Needle::of(of(before, size) + 1), size, Reading::More);
            let one = items.iter().any(|item| {
                matches!(item, Item::Repeat { how: How::Until(_), .. })
                    && once(&inside(item), size, Reading::More).is_some_and(|counts| counts.takes == 1)
            });
            assert!(one || !more.faults.is_empty(), "{text}");
        }
    }
}

/// Whether it goes as far as there are stitches, one by one.
fn takes_any(item: &Item) -> bool {
    match item {
        Item::Even { .. } => true,
        Item::Repeat { items, .. } => items.iter().any(takes_any),
        _ => false,
    }
}

fn inside(item: &Item) -> Vec<Item> {
    match item {
        Item::Repeat { items, .. } => items.clone(),
        other => vec![other.clone()],
    }
}

#[test]
fn every_example_row_has_the_counts_that_stand_beside_it() {
    let mut seen = 0;
    for line in lines(ROWS) {
        let [name, text, repeat, edges, tried] = line[..] else { panic!("{line:?}") };
        let (_, items) = row(text);
        let (before, after) = tried.split_once('>').unwrap();
        hold(text, &numbers(before), &numbers(after));
        // What stands around the repeat, and one repeat.
        let (takes, leaves) = edges.split_once('>').unwrap();
        let sizes = numbers(takes).len().max(numbers(leaves).len());
        for size in 0..sizes {
            let mut sum = (0, 0);
            for item in
                items.iter().filter(|item| !matches!(item, Item::Repeat { .. } | Item::Even { .. } | Item::Turn { .. }))
            {
                let counts = once(std::slice::from_ref(item), size, Reading::More).unwrap();
                sum = (sum.0 + counts.takes, sum.1 + counts.leaves);
            }
            assert_eq!(sum, (of(&numbers(takes), size), of(&numbers(leaves), size)), "{name}: {text}");
        }
        let mut repeats: Vec<&Item> = items.iter().filter(|item| matches!(item, Item::Repeat { .. })).collect();
        if repeat == "-" {
            assert!(repeats.is_empty(), "{name}");
        } else {
            let units: Vec<&str> = repeat.split('/').collect();
            // Where only one is given every repeat is like it.
            let wanted: Vec<&str> = if units.len() == 1 { vec![units[0]; repeats.len()] } else { units };
            assert_eq!(wanted.len(), repeats.len(), "{name}");
            for (unit, item) in wanted.iter().zip(repeats.drain(..)) {
                let (takes, leaves) = unit.split_once('>').unwrap();
                for size in 0..numbers(takes).len() {
                    let counts = once(&inside(item), size, Reading::More).unwrap();
                    assert_eq!((counts.takes, counts.leaves), (numbers(takes)[size], numbers(leaves)[size]), "{name}");
                }
            }
        }
        seen += 1;
    }
    assert_eq!(seen, 41);
}

#[test]
fn facts_of_the_trade_come_out() {
    let mut seen = 0;
    for line in lines(FACTS) {
        let [name, text, before, after] = line[..] else { panic!("{line:?}") };
        assert!(!name.is_empty());
        hold(text, &numbers(before), &numbers(after));
        seen += 1;
    }
    assert!(seen >= 15, "{seen}");
}

/// The faults that were seeded on purpose, each with its figures (ours, reckoned by hand).
#[test]
fn seeded_faults_are_told_with_their_figures() {
    let faults = |text: &str, had: i64, size: usize| -> Vec<Fault> {
        let (_, items) = row(text);
        let outcome = count(&items, Needle::of(had), size, Reading::More);
        outcome.faults.into_iter().map(|(fault, _)| fault).collect()
    };
    let row_09 = "K1, *k2tog, yo, k1, yo, ssk, k1; rep from * to end.";
    assert_eq!(faults("*K2, p2; rep from * to end.", 50, 0), [Fault::RepeatLeft { left: 2, of: 4, room: 50 }]);
    assert_eq!(faults(row_09, 46, 0), [Fault::RepeatLeft { left: 3, of: 6, room: 45 }]);
    assert_eq!(faults("K2, k2tog, k to last 3 sts, ssk, k2.", 80, 0), [Fault::Tail { says: 3, takes: 4 }]);
    assert_eq!(faults("[K6, k2tog] 11 times. [84 sts]", 96, 0), [Fault::LeftOver { left: 8, had: 96 }]);
    let wide = "*Yo, k2, cdd, k2; rep from * to last st, k1. [41 sts]";
    assert_eq!(faults(wide, 41, 0), [Fault::RepeatLeft { left: 5, of: 7, room: 40 }]);
    assert_eq!(faults("[K5 (6), k2tog] 12 (13) times.", 84, 0), []);
    assert_eq!(faults("[K5 (6), k2tog] 12 (13) times.", 102, 1), [Fault::Short { by: 2, had: 102 }]);
    let (statement, items) = row("K3, m1L, k to last 3 sts, m1R, k3. [64 sts]");
    assert_eq!(count(&items, Needle::of(64), 0, Reading::More).after.total, Some(66));
    assert_eq!(statement.stated.unwrap().of(0), 64);
}

#[test]
fn a_row_to_a_marker_is_known_by_its_change() {
    let (_, items) = row("K to 2 sts before m, ssk, sm, k2tog, k to end.");
    assert!(matches!(items[0], Item::Even { until: Until::Marker(_), .. }));
    let outcome = count(&items, Needle::UNKNOWN, 0, Reading::More);
    assert_eq!((outcome.after.total, outcome.change), (None, Some(-2)));
}
