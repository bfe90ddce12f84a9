//! Rows and shaping that are worked every so many rows, and the plain rows between.

use super::blocks::{end, told};
use super::random::Dice;
use super::written;
use ballband::measure::SizeRun;
use ballband::notation::rows::Fault;

#[test]
fn numbered_rows_and_the_last_one_are_worked_every_so_many_rows() {
    let begin = "Cast on 80 (90, 100) sts.\nRow 1: Knit.\nRow 2: Purl.\nRow 3: K1, k2tog, k to last 3 sts, ssk, k1.\n";
    for sentence in ["Rep row 3 every 4th row", "Repeat last row every 4th row", "Rep Row 3 on every foll 4th row"] {
        // 78 - 2 × 5, 88 - 2 × 6, 98 - 2 × 7.
        let text = format!("{begin}{sentence} 5 (6, 7) times more.");
        assert_eq!(end(&[&text], 3), [Some(68), Some(76), Some(84)], "{sentence}");
    }
    let then = format!("{begin}Rep row 3 every 4th row 5 times, then every alt row until 40 sts rem.");
    assert_eq!(end(&[&then], 3), [Some(40); 3]);
    // Row after row it is as before.
    assert_eq!(
        end(&[&format!("{begin}Rep row 3 5 times more, and row 2 once more. [68 (78, 88) sts]")], 3),
        [Some(68), Some(78), Some(88)]
    );
}

/// Two stitches each time, so many times one after another.
#[test]
fn shaping_at_both_ends_is_told_in_spells() {
    for (sentence, by) in [
        ("Dec 1 st each end of every 4th row 5 times, then every alt row 3 times.", [-16, -16, -16]),
        ("Dec 1 st at each end of every 4th (6th, 8th) row 5 (4, 3) times.", [-10, -8, -6]),
        ("Dec 1 st at each end of every 4th row 5 times more.", [-10; 3]),
        ("Dec 1 st at each end of next row, then every foll 4th row 5 times.", [-12; 3]),
        ("Dec 1 st at each end of next and foll 5 alt rows.", [-12; 3]),
        ("Dec 1 st at each end of next 3 RS rows, then on foll 5 4th rows.", [-16; 3]),
        ("Inc 1 st at both ends of 5th and every foll 6th row 5 times more.", [12; 3]),
        ("Inc 2 sts each side every RS row 5 times, keeping in pattern.", [20; 3]),
        ("Inc 1 st each side every 6th row until 90 (96, 108) sts, then every 8th row 3 times.", [16, 12, 14]),
    ] {
        let text = format!("Cast on 80 (90, 100) sts.\nRow 1: Knit.\n{sentence}");
        let wanted: Vec<_> = [80, 90, 100].into_iter().zip(by).map(|(had, by)| Some(had + by)).collect();
        assert_eq!(end(&[&text], 3), wanted, "{sentence}");
    }
    let either = "Cast on 60 sts.\nRow 1: Knit.\nDec 1 st at each end of next and every foll 4th row 5 times. [51 sts]";
    assert_eq!(told(&[either], 1), [("51".to_owned(), vec![(0, Fault::Stated { says: 51, is: 48 })])]);
    // Other words between are no reason to lose what is clear.
    let lenient =
        "Cast on 60 sts.\nRow 1: Knit.\nDec 1 st at each end, inside the edge sts, of every 4th row 5 times. [50 sts]";
    assert_eq!(end(&[lenient], 1), [Some(50)]);
}

#[test]
fn the_plain_rows_between_are_among_the_last_ones() {
    // 40 - 2 × (1 + 2) = 34; the last eight rows are three plain and a decrease, twice: 34 - 4.
    let text = "Cast on 40 sts.\nDec row: K1, k2tog, k to last 3 sts, ssk, k1.\nWork dec row every 4th row twice more. [34 sts]\n\
                Repeat last 8 rows once more. [30 sts]\nRep last 3 rows once more. [28 sts]";
    assert_eq!(end(&[text], 1), [Some(28)]);
    // The last nine hold the first too: 34 - 6.
    let nine = text
        .replace("last 8", "last 9")
        .replace("[30 sts]", "[28 sts]")
        .replace("[28 sts]\nRep last 3 rows once more. [28 sts]", "[28 sts]");
    assert_eq!(end(&[&nine], 1), [Some(28)]);
    // Rows apart by the tape are not told.
    let far = nine.replace("every 4th row", "every 3 cm");
    assert_eq!(
        told(&[&format!("{}\nRow 1: K999.", far.replace(" [28 sts]", ""))], 1),
        [("last 9 rows".to_owned(), vec![(0, Fault::Unknown)])]
    );
    let then = "Cast on 40 sts.\nDec row: K2tog, k to end.\nKnit 3 rows, then work dec row.\nRep last 4 rows twice more. [36 sts]";
    assert_eq!(end(&[then], 1), [Some(36)]);
    let ten = told(&[&nine.replace("last 9", "last 10")], 1);
    assert_eq!(ten, [("last 10 rows".to_owned(), vec![(0, Fault::FewRows { says: 10, had: 9 })])]);
}

/// Plain rows that were worked since are among those between: the fourth row comes next behind three of them.
#[test]
fn plain_rows_worked_already_are_among_those_between() {
    // A decrease and three plain rows, twice, and a decrease: nine rows with three decreases, 40 - 3 and then 37 - 3.
    let text = "Cast on 40 sts.\nDec row (RS): K2tog, k to end.\nKnit 3 rows.\nWork dec row every 4th row twice more. [37 sts]\n\
                Rep last 9 rows once more. [34 sts]";
    let found = told(&[text], 1);
    // An odd number of rows with sides cannot be worked again: that alone is told.
    assert!(
        matches!(found.as_slice(), [(at, sizes)] if at == "last 9 rows" && matches!(sizes[0].1, Fault::Side { .. })),
        "{found:?}"
    );
    assert_eq!(end(&[&text.replace(" (RS)", "")], 1), [Some(34)]);
    let ten = told(&[&text.replace("last 9", "last 10")], 1);
    assert_eq!(ten[0].1, [(0, Fault::FewRows { says: 10, had: 9 })]);
    // After five of them nobody knows when it comes.
    let late = text.replace("Knit 3 rows", "Knit 5 rows").replace(" [34 sts]", "\nRow 1: K999.");
    assert_eq!(told(&[&late], 1), [("last 9 rows".to_owned(), vec![(0, Fault::Unknown)])]);
}

#[test]
fn a_side_goes_with_how_many_rows_are_between() {
    let begin = "Cast on 40 sts.\nDec row (RS): K2tog, k to end.\n";
    for sentence in [
        "Work dec row every 4th row 3 times more.",
        "Work dec row every RS row 3 times more.",
        "Work dec row on next RS row.",
        "Purl 1 row. Work dec row every alt row 3 times more.",
        "Purl 1 row. Work dec row on next row, then every 4th row 3 times more.",
        "Work dec row every 2 cm 3 times more.",
        "Work dec row on foll 3 alt rows, then on foll 5 4th rows.",
        "Work dec row every 4th row twice more, ending with a WS row. Work dec row every alt row twice more.",
    ] {
        assert_eq!(told(&[&format!("{begin}{sentence}")], 1), [], "{sentence}");
    }
    for sentence in
        ["Work dec row every 3rd row 3 times more.", "Work dec row twice more.", "Work dec row on next row."]
    {
        let found = told(&[&format!("{begin}{sentence}")], 1);
        assert!(
            matches!(found.as_slice(), [(_, sizes)] if matches!(sizes[0].1, Fault::Side { again: true, .. })),
            "{sentence}: {found:?}"
        );
    }
    // Several rows begin on the side that is said.
    let four = "Cast on 40 sts.\nNext 4 rows (RS): Knit.\nNext row (RS): Knit.";
    assert_eq!(told(&[four], 1), []);
    assert_eq!(told(&[&four.replace("Next 4", "Next 3")], 1).len(), 1);
}

/// Markers hang where they did behind plain rows, seen from the side that the row is worked from (common practice).
#[test]
fn markers_stay_behind_plain_rows() {
    // 10 before the marker and 12 behind it, on the right side; each working adds one before it.
    let begin = "Cast on 22 sts.\nRow 1 (RS): K10, pm, k12.\nInc row (WS): P to m, sm, m1p, p to end. [23 sts]\n";
    // Every 4th row is on the same side: 11 + 3 before the marker, on the right side.
    let right = format!("{begin}Work inc row every 4th row 3 times more.\nNext row (RS): K14, sm, k12.");
    assert_eq!(end(&[&right], 1), [Some(26)]);
    let wrong = told(&[&right.replace("K14, sm, k12", "K12, sm, k14")], 1);
    assert_eq!(wrong, [("sm".to_owned(), vec![(0, Fault::MarkerAhead { left: 2 })])]);
    // Where nobody knows how many rows are between, nobody knows the side either.
    let far = right.replace("every 4th row", "every 2 cm").replace("(RS): K14, sm, k12", ": K14, sm, k12");
    assert_eq!(told(&[&far], 1), []);
    // Without sides in the labels: a row, a plain one and the row again face the same way.
    let alone = "Cast on 22 sts.\nRow 1: K10, pm, k12.\nRow 2: Purl.\nInc row: K to m, m1, sm, k to end.\n\
                 Work inc row every alt row twice more.\nNext row: P12, sm, p13.";
    assert_eq!(end(&[alone], 1), [Some(25)]);
}

#[test]
fn every_so_many_rows_is_a_run_of_sizes() {
    let numbers = written("Repeat dec rnd every 8th (7th) rnd 5 (6, 7) times more.").numbers;
    let runs: Vec<SizeRun<i64>> = numbers.into_iter().map(|number| number.values).collect();
    assert_eq!(
        runs,
        [SizeRun::from_values(vec![Some(8), Some(7)]), SizeRun::from_values(vec![Some(5), Some(6), Some(7)])]
    );
    // Spells beyond count, one after another, come to an end.
    let spells = vec!["every 9999th row 99999 times"; 500].join(", then ");
    let begun = std::time::Instant::now();
    told(&[&format!("Cast on 40 sts.\nRow A: K2tog, yo, k to end.\nRepeat row A {spells}.")], 1);
    assert!(begun.elapsed().as_secs() < 5, "{:?}", begun.elapsed());
}

/// Random spells in three sizes against a list of rows of their own, of which the last ones are then worked again.
#[test]
fn random_spells_are_worked_as_a_list_of_rows() {
    let mut dice = Dice(7);
    let run = |values: [i64; 3], ending: fn(i64) -> String| {
        let [one, two, three] = values.map(|value| format!("{value}{}", ending(value)));
        if values[0] == values[1] && values[1] == values[2] { one } else { format!("{one} ({two}, {three})") }
    };
    let ordinal = |number: i64| match number {
        1 => "st".to_owned(),
        2 => "nd".to_owned(),
        3 => "rd".to_owned(),
        _ => "th".to_owned(),
    };
    for _ in 0..300 {
        // Each row is a decrease or plain, one list for each size.
        let mut rows: [Vec<bool>; 3] = [vec![true], vec![true], vec![true]];
        let mut spells = Vec::new();
        for _ in 0..=dice.roll(3) {
            let alike = dice.roll(2) == 0;
            let mut three = |least: u64, below: u64| {
                let first = least + dice.roll(below);
                [0; 3].map(|_: i64| if alike { first as i64 } else { (least + dice.roll(below)) as i64 })
            };
            let (every, times) = (three(1, 9), three(0, 6));
            for size in 0..3 {
                for _ in 0..times[size] {
                    rows[size].extend(std::iter::repeat_n(false, every[size] as usize - 1));
                    rows[size].push(true);
                }
            }
            let rows =
                if every == [1; 3] { "every rnd".to_owned() } else { format!("every {} rnd", run(every, ordinal)) };
            spells.push(format!("{rows} {} times", run(times, |_| String::new())));
        }
        let least = rows.iter().map(Vec::len).min().unwrap();
        let last = 1 + dice.roll(least as u64) as usize;
        let counts = |rows: &[Vec<bool>; 3]| {
            let left = |size: usize| 400 + 10 * size as i64 - 2 * rows[size].iter().filter(|dec| **dec).count() as i64;
            [left(0), left(1), left(2)]
        };
        let after = counts(&rows);
        let again = rows.clone().map(|rows| rows[rows.len() - last..].to_vec());
        for (rows, again) in rows.iter_mut().zip(again) {
            rows.extend(again);
        }
        let text = format!(
            "Cast on 400 (410, 420) sts.\nDec rnd: K1, k2tog, k to last 3 sts, ssk, k1.\nWork dec rnd {} more.\n\
             {} sts.\nRepeat last {last} rnds once more.",
            spells.join(", then "),
            run(after, |_| String::new()),
        );
        assert_eq!(end(&[&text], 3), counts(&rows).map(Some), "{text}");
    }
}

/// The row as it is written, then three more of every ninth and of every eleventh: 40 - 4.
#[test]
fn places_are_counted_in_words() {
    for place in ["ninth", "eleventh", "tenth"] {
        let text = format!(
            "Cast on 40 sts.\nDec row: K2tog, k to end.\nWork dec row every {place} row 3 times more. [36 sts]\nNext row: K36."
        );
        assert_eq!(end(&[&text], 1), [Some(36)], "{place}");
        assert_eq!(told(&[&text.replace("[36 sts]", "[35 sts]")], 1).len(), 1, "{place}");
    }
}
