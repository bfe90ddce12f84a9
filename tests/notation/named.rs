//! Rows that are worked again by their name.

use super::blocks::{end, told};
use super::labels::label;
use super::written;
use ballband::notation::rows::{Doing, Fault, follow};

const BEGIN: &str = "Cast on 80 (90, 100) sts.\nDec rnd: K1, k2tog, k to last 3 sts, ssk, k1.\n";

/// The stitches behind the last statement that works any, whatever was told.
pub fn last(text: &str, sizes: usize) -> Vec<Option<i64>> {
    let block = written(text);
    let works = block.statements.iter().rposition(|statement| statement.doing != Doing::Aside).unwrap();
    follow(&[block], sizes).counts[0][works].clone()
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
fn a_row_may_be_written_behind_the_sentence_that_goes_to_it() {
    // Five times two more: 40 + 10, and the row itself is none of its own.
    let inc = "Inc row: K1, m1, k to last st, m1, k1.";
    let text = format!("Cast on 40 sts.\nWork inc row every 4th row 5 times.\n{inc}\nNext row: K50.");
    assert_eq!(end(&[&text], 1), [Some(50)]);
    assert_eq!(end(&[&text.replace("5 times.", "5 times. [50 sts]")], 1), [Some(50)]);
    // It may be gone to again, and another may stand beside it: 50 - 3.
    let dec = "Dec row: K2tog, k to end.";
    let both = format!(
        "Cast on 40 sts.\nWork inc row every 4th row 5 times.\nWork dec row every 2nd row 3 times.\n{inc}\n{dec}\nNext row: K47."
    );
    assert_eq!(end(&[&both], 1), [Some(47)]);
    assert_eq!(end(&[&text.replace("Next row: K50", "Work inc row once.\nNext row: K52")], 1), [Some(52)]);
    // Behind other rows it is worked in its turn: 40 + 10 + 2.
    let later = text.replace(inc, &format!("Knit 3 rows.\n{inc}")).replace("K50", "K52");
    assert_eq!(end(&[&later], 1), [Some(52)]);
    // In another part it is another row.
    let apart = text.replace(inc, &format!("Sleeve:\n{inc}"));
    assert_eq!(told(&[&apart], 1)[0].1, [(0, Fault::NoName)]);
}
