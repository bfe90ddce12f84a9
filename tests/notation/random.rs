//! Random rows against a model of their own: a list of stitches on two needles, with nothing shared with the program.

use super::written;
use ballband::measure::RunStyle;
use ballband::notation::rows::{Doing, Lexicon, Needle, Reading, count, follow, read};
use std::time::{Duration, Instant};

/// Numbers that look random and are the same every time.
pub struct Dice(pub u64);

impl Dice {
    pub fn roll(&mut self, below: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % below
    }

    fn pick<'a, T>(&mut self, of: &'a [T]) -> &'a T {
        &of[self.roll(of.len() as u64) as usize]
    }
}

/// Words with what they take and leave, written down from their definitions.
const WORDS: [(&str, i64, i64); 20] = [
    ("k2tog", 2, 1),
    ("ssk", 2, 1),
    ("p2tog", 2, 1),
    ("k3tog", 3, 1),
    ("sk2p", 3, 1),
    ("cdd", 3, 1),
    ("yo", 0, 1),
    ("m1L", 0, 1),
    ("m1R", 0, 1),
    ("kfb", 1, 2),
    ("C4F", 4, 4),
    ("C6B", 6, 6),
    ("2/2 RC", 4, 4),
    ("1/2 LPC", 3, 3),
    ("T3F", 3, 3),
    ("MB", 1, 1),
    ("sl1yo", 1, 1),
    ("brk", 1, 1),
    ("yo twice", 0, 2),
    ("k1 tbl", 1, 1),
];

/// A piece of a row: its words, and what it takes and leaves in each of three sizes.
#[derive(Clone)]
struct Piece {
    text: String,
    takes: [i64; 3],
    leaves: [i64; 3],
}

fn piece(text: String, takes: i64, leaves: i64) -> Piece {
    Piece { text, takes: [takes; 3], leaves: [leaves; 3] }
}

fn run(dice: &mut Dice, least: i64) -> (String, [i64; 3]) {
    let one = least + dice.roll(8) as i64;
    if dice.roll(3) > 0 {
        return (one.to_string(), [one; 3]);
    }
    let (two, three) = (one + dice.roll(3) as i64, one + dice.roll(5) as i64);
    let text = match dice.roll(3) {
        0 => format!("{one} ({two}, {three})"),
        1 => format!("{one} [{two}: {three}]"),
        _ => format!("{one} ({two}) ({three})"),
    };
    (text, [one, two, three])
}

fn step(dice: &mut Dice, depth: u64) -> Piece {
    match dice.roll(if depth > 0 { 10 } else { 7 }) {
        0..=2 => {
            let (text, many) = run(dice, 1);
            let letter = dice.pick(&["k", "p", "K", "sl ", "knit ", "p "]);
            Piece { text: format!("{letter}{text}"), takes: many, leaves: many }
        }
        3..=5 => {
            let (word, takes, leaves) = *dice.pick(&WORDS);
            piece(word.to_owned(), takes, leaves)
        }
        6 => {
            let many = 2 + dice.roll(4) as i64;
            let list: Vec<&str> = (0..many).map(|at| if at % 2 == 0 { "k1" } else { "yo" }).collect();
            let place = dice.pick(&["in next st", "into next st", "all in same st"]);
            piece(format!("({}) {place}", list.join(", ")), 1, many)
        }
        _ => {
            let inside = list(dice, depth - 1);
            let (text, times) = match dice.roll(4) {
                0 => ("twice".to_owned(), [2; 3]),
                1 => ("three times".to_owned(), [3; 3]),
                _ => {
                    let (text, times) = run(dice, 1);
                    (format!("{text} times"), times)
                }
            };
            let (open, close) = *dice.pick(&[('(', ')'), ('[', ']')]);
            let over = |each: [i64; 3]| [each[0] * times[0], each[1] * times[1], each[2] * times[2]];
            Piece {
                text: format!("{open}{}{close} {text}", inside.text),
                takes: over(inside.takes),
                leaves: over(inside.leaves),
            }
        }
    }
}

fn list(dice: &mut Dice, depth: u64) -> Piece {
    let mut all = Piece { text: String::new(), takes: [0; 3], leaves: [0; 3] };
    for at in 0..1 + dice.roll(4) {
        let next = step(dice, depth);
        if at > 0 {
            all.text.push_str(", ");
        }
        all.text.push_str(&next.text);
        for size in 0..3 {
            all.takes[size] += next.takes[size];
            all.leaves[size] += next.leaves[size];
        }
    }
    all
}

/// A row that fits, with the stitches before and after in each size.
fn valid(dice: &mut Dice) -> (String, [i64; 3], [i64; 3]) {
    let head = list(dice, 2);
    let mut text = head.text.clone();
    let (mut before, mut after) = (head.takes, head.leaves);
    let middle = dice.roll(4);
    if middle > 0 {
        // What follows "to last n sts" must take the same in every size, or be given for each.
        let tail = list(dice, 1);
        let far = if tail.takes == [0; 3] {
            "to end".to_owned()
        } else if tail.takes[0] == tail.takes[1] && tail.takes[1] == tail.takes[2] {
            format!("to last {} sts", tail.takes[0])
        } else {
            format!("to last {} ({}, {}) sts", tail.takes[0], tail.takes[1], tail.takes[2])
        };
        let unit = list(dice, 1);
        let times = [1 + dice.roll(9) as i64, 1 + dice.roll(9) as i64, 1 + dice.roll(9) as i64];
        let takes = unit.takes.iter().all(|takes| *takes > 0);
        for size in 0..3 {
            let (takes, leaves) = if middle == 1 || !takes {
                (times[size], times[size])
            } else {
                (unit.takes[size] * times[size], unit.leaves[size] * times[size])
            };
            before[size] += takes + tail.takes[size];
            after[size] += leaves + tail.leaves[size];
        }
        let flexible = if middle == 1 || !takes {
            format!("{} {far}", dice.pick(&["k", "p", "knit", "work even"]))
        } else if middle == 2 {
            format!("*{}; rep from * {far}", unit.text)
        } else {
            format!("[{}] {far}", unit.text)
        };
        text = if far == "to end" && tail.text.is_empty() {
            format!("{text}, {flexible}")
        } else {
            format!("{text}, {flexible}, {}", tail.text)
        };
    }
    (text, before, after)
}

fn rows() -> usize {
    if cfg!(debug_assertions) { 20_000 } else { 1_000_000 }
}

#[test]
fn random_rows_count_as_their_model_says() {
    let mut dice = Dice(6);
    for at in 0..rows() {
        let (text, before, after) = valid(&mut dice);
        let written = read(&format!("Row 1: {text}."), &Lexicon::default(), RunStyle::default());
        let statement = &written.statements[0];
        assert_eq!(statement.trouble, None, "{at}: {text}");
        let Doing::Row { items, .. } = &statement.doing else { panic!("{text}") };
        for size in 0..3 {
            let outcome = count(items, Needle::of(before[size]), size, Reading::More);
            assert_eq!(outcome.faults, [], "{at}: {text} in size {size} on {}", before[size]);
            assert_eq!(outcome.after.total, Some(after[size]), "{at}: {text} in size {size} on {}", before[size]);
        }
    }
}

/// Cuts, doubles and swaps pieces of good rows; whatever comes of it is read without a panic, and every place is in the text.
#[test]
fn broken_rows_never_panic() {
    let mut dice = Dice(7);
    const SCRAPS: [&str; 24] = [
        "*",
        "**",
        "(",
        ")",
        "[",
        "]",
        "rep from *",
        "to last",
        "–",
        "½",
        "’",
        "é",
        "99999999999",
        "times",
        "turn",
        "\n",
        " sts",
        "BO",
        "before m",
        "Row 3:",
        "Repeat rows 1-9999",
        "as row 1",
        "0 (–, 4)",
        "Cast on 5 (6) sts.",
    ];
    for _ in 0..rows() / 4 {
        let mut text = format!("Row 1: {}.\nRow 2: {}.", valid(&mut dice).0, valid(&mut dice).0);
        for _ in 0..1 + dice.roll(6) {
            let places: Vec<usize> = text.char_indices().map(|(at, _)| at).collect();
            let (one, two) = (*dice.pick(&places), *dice.pick(&places));
            match dice.roll(3) {
                0 => {
                    let scrap = SCRAPS[dice.roll(SCRAPS.len() as u64) as usize];
                    text.insert_str(one, scrap)
                }
                1 => text.replace_range(one.min(two)..one.max(two), ""),
                _ => {
                    let scrap = text[one.min(two)..one.max(two)].to_owned();
                    text.insert_str(one, &scrap);
                }
            }
            if text.is_empty() {
                text.push('k');
            }
        }
        let written = read(&text, &Lexicon::default(), RunStyle::default());
        for statement in &written.statements {
            assert!(text.get(statement.at.clone()).is_some(), "{text}");
            if let Some((_, at)) = &statement.trouble {
                assert!(text.get(at.clone()).is_some_and(|guilty| !guilty.is_empty()), "{text} at {at:?}");
            }
        }
        for told in follow(&[written], 3).told {
            assert!(text.get(told.at.clone()).is_some(), "{text}");
        }
    }
}

#[test]
fn what_is_deep_or_large_is_refused_and_not_followed_for_ever() {
    let deep = format!("Row 1: {}k1{}", "[".repeat(100_000), "] twice".repeat(100_000));
    assert!(written(&deep).statements[0].trouble.is_some());
    let mut many = "k1".to_owned();
    for _ in 0..11 {
        many = format!("[{many}] 99999 times");
    }
    let block = written(&format!("Cast on 5 sts.\nRow 1: {many}.\nRepeat row 1 99999 times more."));
    assert!(!follow(&[block], 3).told.is_empty());
    let turns = "[".repeat(10) + "k1, turn" + &"] 400 times".repeat(10);
    let block = written(&format!("Cast on 5 sts.\nRow 1: {turns}.\nRepeat row 1 99999 times more."));
    assert_eq!(follow(&[block], 3).counts[0].len(), 3);
    // Each working adds stitches by markers, which cannot be multiplied.
    let long = written(
        "Cast on 9 sts.\nRnd 1: *K to m, m1; rep from * 400 times more, k to end.\nRepeat rnd 1 19999 times more.",
    );
    assert_eq!(follow(&[long], 3).counts[0][2], [None; 3]);
}

/// Five hundred rows, read and worked in five sizes. Without optimisation only work that has grown out of all measure is caught.
#[test]
fn five_hundred_rows_are_proofed_in_a_tenth_of_a_second() {
    let limit = Duration::from_millis(if cfg!(debug_assertions) { 5000 } else { 100 });
    let mut text = "Cast on 96 (104, 112, 120, 128) sts.\n".to_owned();
    for row in 1..=500 {
        text.push_str(&format!(
            "Row {row}: K2, *yo, k2tog, p2; rep from * to last 2 sts, k2. [96 (104, 112, 120, 128) sts]\n"
        ));
    }
    let mut best = Duration::MAX;
    for _ in 0..20 {
        let begun = Instant::now();
        let block = read(&text, &Lexicon::default(), RunStyle::default());
        let followed = follow(&[block], 5);
        best = best.min(begun.elapsed());
        assert_eq!(followed.told, []);
        assert_eq!(followed.counts[0].last().unwrap(), &vec![Some(96), Some(104), Some(112), Some(120), Some(128)]);
        if best < limit {
            return;
        }
    }
    panic!("the best of twenty took {best:?}");
}
