//! Rows that are worked again by their name, and every so many rows.

use super::blocks::{end, told};
use super::random::Dice;
use super::written;
use ballband::measure::SizeRun;
use ballband::notation::rows::{Doing, Fault, Label, follow};

const BEGIN: &str = "Cast on 80 (90, 100) sts.\nDec rnd: K1, k2tog, k to last 3 sts, ssk, k1.\n";

/// The stitches behind the last statement that works any, whatever was told.
fn last(text: &str, sizes: usize) -> Vec<Option<i64>> {
    let block = written(text);
    let works = block.statements.iter().rposition(|statement| statement.doing != Doing::Aside).unwrap();
    follow(&[block], sizes).counts[0][works].clone()
}

fn label(row: &str) -> Label {
    match written(row).statements.remove(0).doing {
        Doing::Row { label: Some(label), .. } => label,
        other => panic!("{row}: {other:?}"),
    }
}

#[test]
fn a_row_is_worked_again_by_its_name() {
    let mut seen = 0;
    for line in include_str!("named.txt").lines().filter(|line| !line.starts_with('#')) {
        let (sentence, wanted) = line.split_once(" | ").unwrap();
        let text = format!("{BEGIN}{sentence}");
        let statements = written(&text).statements;
        let unread = statements.iter().any(|statement| statement.trouble.is_some());
        assert_eq!(unread, wanted.starts_with('!'), "{sentence}");
        let counts: Vec<Option<i64>> = wanted.split(' ').map(|count| count.parse().ok()).collect();
        assert_eq!(last(&text, 3), counts, "{sentence}");
        // A row that needs the count is told of once, behind words that lose it.
        let behind = told(&[&format!("{text}\nRnd 9: K to last 999 sts, k999.")], 3);
        match wanted.chars().next() {
            Some('?') => assert!(behind.len() == 1 && behind[0].1[0].1 == Fault::Unknown, "{sentence}: {behind:?}"),
            Some('!') => {}
            _ => assert!(matches!(behind[0].1[0].1, Fault::Short { .. }), "{sentence}: {behind:?}"),
        }
        seen += 1;
    }
    assert!(seen > 50, "{seen}");
}

#[test]
fn a_count_behind_it_is_held_against_it() {
    // 78 - 2 × 5, 88 - 2 × 6, 98 - 2 × 7.
    let text = format!("{BEGIN}Work dec rnd every 8th (7th, 6th) rnd 5 (6, 7) times more. [68 (76, 86) sts]");
    assert_eq!(told(&[&text], 3), [("68 (76, 86)".to_owned(), vec![(2, Fault::Stated { says: 86, is: 84 })])]);
    // One less in each size fits only with the first among them.
    let all = format!("{BEGIN}Work dec rnd every 8th (7th, 6th) rnd 5 (6, 7) times. [70 (78, 86) sts]");
    let in_all = |times| Fault::InAll { times };
    assert_eq!(told(&[&all], 3), [("5 (6, 7)".to_owned(), vec![(0, in_all(5)), (1, in_all(6)), (2, in_all(7))])]);
    // Not so with "more", and not where another spell is counted besides.
    let more = all.replace("times.", "times more.");
    assert!(matches!(told(&[&more], 3)[0].1[..], [(0, Fault::Stated { says: 70, is: 68 }), ..]));
    let then = format!("{BEGIN}Work dec rnd every 4th rnd 5 times, then every 2nd rnd 3 times. [64 (74, 84) sts]");
    assert_eq!(told(&[&then], 3)[0].1[0], (0, in_all(5)), "one of the five is the first");
}

#[test]
fn of_two_meanings_either_is_believed_and_no_other() {
    // The next and four more, or five more: 78 - 10 and 78 - 12.
    let text =
        |count: &str| format!("{BEGIN}Work dec rnd on next and every foll 4th rnd 5 times. [{count} sts]\nRnd 2: K.");
    assert_eq!(end(&[&text("68 (78, 88)")], 3), [Some(68), Some(78), Some(88)]);
    assert_eq!(end(&[&text("66 (76, 86)")], 3), [Some(66), Some(76), Some(86)]);
    let wrong = told(&[&text("68 (78, 90)")], 3);
    assert_eq!(wrong, [("68 (78, 90)".to_owned(), vec![(2, Fault::Stated { says: 90, is: 86 })])]);
    // Where the end is said besides, both come to it.
    let until = format!("{BEGIN}Work dec rnd on next and every foll 4th rnd 5 times, then every rnd until 40 sts rem.");
    assert_eq!(end(&[&until], 3), [Some(40); 3]);
    // In all, with or without the first.
    let total = format!("{BEGIN}Work dec rnd every 4th rnd 5 times in total. [70 (80, 90) sts]");
    assert_eq!(end(&[&total], 3), [Some(70), Some(80), Some(90)]);
}

#[test]
fn rows_worked_too_often_or_past_a_count_are_told() {
    // 6 stitches: K1, k2tog, ssk, k1 leaves 4, on which the row needs 6.
    let few =
        "Cast on 10 sts.\nDec row: K1, k2tog, k to last 3 sts, ssk, k1.\nWork dec row every alt row 4 times more.";
    assert_eq!(told(&[few], 1), [("dec row".to_owned(), vec![(0, Fault::Again { pass: 3, had: 4 })])]);
    let odd = format!("{BEGIN}Work dec rnd every 4th rnd until 41 (44, 51) sts rem.");
    let missed = |wanted| Fault::Missed { wanted, is: wanted - 1 };
    assert_eq!(told(&[&odd], 3), [("41 (44, 51)".to_owned(), vec![(0, missed(41)), (2, missed(51))])]);
}

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
fn a_name_is_the_same_however_it_is_spelt() {
    let key = |row: &str| label(&format!("{row}: K.")).name.map(|name| name.key().to_owned());
    for (one, two) in [
        ("Dec rnd", "DECREASE ROUND"),
        ("Inc row (RS)", "the increase row"),
        ("Next row (dec row)", "Dec row"),
        ("Next rnd (inc)", "Increase round"),
        ("Row 5 (RS, dec row)", "Dec row"),
        ("Set-up rnd", "Setup round"),
        ("RS, buttonhole row", "Buttonhole row"),
        ("Dec Rnd A", "decrease rnd a"),
    ] {
        assert!(key(one).is_some() && key(one) == key(two), "{one}: {:?}, {two}: {:?}", key(one), key(two));
    }
    for (one, two) in
        [("Dec rnd", "Dec row"), ("Dec Rnd A", "Dec Rnd"), ("Inc row 1", "Inc row 2"), ("Dec rnd", "Inc rnd")]
    {
        assert_ne!(key(one), key(two), "{one}, {two}");
    }
    for none in
        ["Next row", "Row 2", "All WS rows", "Next 4 rnds (RS)", "Every dec row", "Rows 1 and 2", "Short rows (RS)"]
    {
        assert_eq!(key(none), None, "{none}");
    }
}

#[test]
fn a_later_row_of_the_name_takes_its_place_and_a_heading_does_not_forget_it() {
    // 40 - 1 - 1, then 38 - 2 - 2 × 2.
    let text = "Cast on 40 sts.\nDec row: K2tog, k to end.\nRepeat dec row once more. [38 sts]\n\
                Dec row: [K2tog] twice, k to end.\nRepeat dec row twice more. [32 sts]";
    assert_eq!(end(&[text], 1), [Some(32)]);
    let sleeve = "Sleeve 1:\nCast on 60 sts.\nRow 1: Knit.\nWork decrease row every 4th row 3 times more. [54 sts]";
    assert_eq!(end(&[text, sleeve], 1), [Some(54)]);
    // A name is that of the size: 50 - 2, 52 - 4.
    let sizes = "Cast on 50 (52) sts.\nSize 1 only: Dec row: K2tog, k to end.\nSize 2 only: Dec row: [K2tog] twice, k to end.\n\
                 All sizes: Repeat dec row once more. [48 (48) sts]";
    assert_eq!(end(&[sizes], 2), [Some(48), Some(48)]);
}

#[test]
fn a_row_is_as_that_of_a_name() {
    // Seven plain and one that takes two, once and three (four, five) times more: 78 - 2 × 4, 88 - 2 × 5, 98 - 2 × 6.
    let text = format!("{BEGIN}Rnds 1-7: Knit.\nRnd 8: Work dec rnd.\nRepeat rnds 1-8 3 (4, 5) times more.");
    assert_eq!(end(&[&text], 3), [Some(70), Some(78), Some(86)]);
    for words in ["As dec rnd", "As for dec rnd", "Rep dec rnd", "Work as dec rnd. [76 (86, 96) sts]"] {
        assert_eq!(end(&[&format!("{BEGIN}Next rnd: {words}")], 3), [Some(76), Some(86), Some(96)], "{words}");
    }
    let circle = "Cast on 40 sts.\nDec rnd: Work dec rnd.";
    assert_eq!(told(&[circle], 1), [("dec rnd".to_owned(), vec![(0, Fault::NamedCircle)])]);
    assert_eq!(told(&[&format!("{BEGIN}Rnd 8: Work inc rnd.")], 1), [("inc rnd".to_owned(), vec![(0, Fault::NoName)])]);
}

#[test]
fn a_name_that_no_row_has_is_told() {
    for name in ["dec row", "inc rnd", "Dec Rnd A", "dec rnd 2", "the buttonhole row"] {
        let bare = name.trim_start_matches("the ");
        for how in ["3 times more", "every 4th rnd 5 times", "until 8 sts rem", "once more"] {
            let found = told(&[&format!("{BEGIN}Repeat {name} {how}.\nRnd 2: K999.")], 1);
            assert_eq!(found, [(bare.to_owned(), vec![(0, Fault::NoName)])], "{name} {how}");
        }
    }
    // These are no names.
    for sentence in [
        "Work chart row 3.",
        "Work lace rnd 3 twice.",
        "Work in pattern for 4 rows.",
        "Work next row as set.",
        "Work 1 WS row.",
        "Work across row.",
        "Work last RS row again.",
        "Work knit row once more.",
        "Work up to row 30.",
        "Work first row twice.",
        "Work short row 3.",
        "Work a row of crochet.",
        "Rnd 2: Work rib rnd.",
    ] {
        let found = told(&[&format!("{BEGIN}{sentence}")], 1);
        assert!(found.iter().all(|(_, sizes)| sizes[0].1 != Fault::NoName), "{sentence}: {found:?}");
    }
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
fn the_next_rows_are_so_many() {
    // 40 - 4, 44 - 5, 48 - 6 in rows that each take one.
    let some = "Cast on 40 (44, 48) sts.\nNext 4 (5, 6) rows: K2tog, k to end.";
    assert_eq!(end(&[some], 3), [Some(36), Some(39), Some(42)]);
    let noted = format!("{some} (1 st dec'd)\nRepeat last 4 rows once more. [32 (35, 38) sts]");
    assert_eq!(end(&[&noted], 3), [Some(32), Some(35), Some(38)]);
    assert_eq!(
        end(&[&some.replace("4 (5, 6)", "3").replace("end.", "end. (3 sts dec'd)")], 3),
        [Some(37), Some(41), Some(45)]
    );
    assert_eq!(told(&[&some.replace("end.", "end. (2 sts dec'd)")], 3).len(), 1);
    // Shoulders, said once or twice: 40 - 2 × 6.
    for row in ["BO 6 sts, work to end.", "BO 6 sts at beg of row, k to end.", "BO 6 sts at beg of next 2 rows."] {
        assert_eq!(end(&[&format!("Cast on 40 sts.\nNext 2 rows: {row} [28 sts]")], 1), [Some(28)], "{row}");
    }
    assert_eq!(end(&["Cast on 40 sts.\nFoll 3 rnds: Inc 1 st at each end."], 1), [Some(46)]);
    // Eight in each or in all?
    assert_eq!(last("Cast on 40 sts.\nNext 4 rows: Knit, increasing 8 sts evenly.", 1), [None]);
    // Too many to work.
    let begun = std::time::Instant::now();
    let many = (0..40).map(|_| "Next 99999 rows: K2tog, yo, k to end.\n").collect::<String>();
    told(&[&format!("Cast on 40 sts.\n{many}")], 1);
    assert!(begun.elapsed().as_secs() < 5, "{:?}", begun.elapsed());
    let short = written("Next 4 (5) rows: K.").numbers;
    assert_eq!(short.iter().map(|number| number.values.len()).collect::<Vec<_>>(), [2]);
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

#[test]
fn labels_may_be_short_or_end_with_a_dash() {
    for (row, numbers) in [
        ("R1: K2.", vec![1]),
        ("R 12 (RS): K2.", vec![12]),
        ("Row1: K2.", vec![1]),
        ("R1-R4: K2.", vec![1, 2, 3, 4]),
        ("Row 1 - K2.", vec![1]),
        ("Row 1 – K2, *p2; rep from * to end.", vec![1]),
        ("Rows 1 - 4: K2.", vec![1, 2, 3, 4]),
        ("Rows 1 - 4 — K2.", vec![1, 2, 3, 4]),
        ("Rnds 1 and 3 (RS) - K2.", vec![1, 3]),
        ("Short row 3 (WS) - P2, turn.", vec![3]),
    ] {
        assert_eq!(label(row).numbers, numbers, "{row}");
        assert_eq!(written(row).statements[0].trouble, None, "{row}");
    }
    let text =
        "Cast on 40 sts.\nR1 - K2tog, k to end.\nR 2: As R1.\nRepeat R1-2 twice more. [34 sts]\nR3: Rep R2. [33 sts]";
    assert_eq!(end(&[text], 1), [Some(33)]);
    // A dash elsewhere is none of a label.
    for row in ["K1 - k2.", "Rib 2 - k2.", "Repeat row 1 - 3 times more.", "Row by row - knit."] {
        let doing = written(row).statements.remove(0).doing;
        assert!(!matches!(doing, Doing::Row { label: Some(_), .. }), "{row}: {doing:?}");
    }
}

#[test]
fn a_heading_may_have_a_number_or_brackets() {
    for heading in [
        "Sleeves (make 2)",
        "Sleeve 1",
        "Part 1 – Cuff",
        "Part 2, body",
        "Sleeves 1 and 2",
        "Section 3 (RS facing)",
        "Front & back",
        "Body (all sizes)",
    ] {
        let text = format!("Cast on 20 sts.\nRow 1: Knit.\n{heading}:\nRow 1: K2tog, k to end. [19 sts]");
        assert_eq!(end(&[&text], 1), [Some(19)], "{heading}");
        assert!(matches!(written(&text).statements[2].doing, Doing::Heading { chart: false, .. }), "{heading}");
    }
    for line in [
        "K2, p2:",
        "Row 1:",
        "Front (k2, p2):",
        "Work 4 rows as foll:",
        "Cast on 40 sts as follows:",
        "K2tog 3:",
        "Size 4:",
    ] {
        let doing = written(line).statements.first().map(|statement| statement.doing.clone());
        assert!(!matches!(doing, Some(Doing::Heading { .. })), "{line}: {doing:?}");
    }
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
