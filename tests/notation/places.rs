//! Words of the grammar mixed with letters of many lengths: every place that is told lies in the text, and no line loses its end.

use super::random::Dice;
use ballband::measure::RunStyle;
use ballband::notation::rows::{Doing, Item, Lexicon, Span, Trouble, Written, read};

/// Words of rows, and characters whose small letters have another length than they have (the Kelvin sign, the dotted capital I), or
/// that are no letters.
const WORDS: [&str; 98] = [
    "bac\u{212a}",
    "the nec\u{212a} sts",
    "k1, place next 4 sts on hold for the bac\u{212a}",
    "for",
    "sleeves",
    "then",
    "\u{212a}",
    "İ",
    "ẞ",
    "é",
    "ß",
    "—",
    "–",
    "“",
    "𝄞",
    "\u{301}",
    "½",
    "１",
    "k",
    "k2",
    "k2tog",
    "p1",
    "yo",
    "pm",
    "sm",
    "*",
    "rep",
    "from",
    "to",
    "end",
    "last",
    "3",
    "4",
    "12",
    "sts",
    "st",
    "sts.",
    "(",
    ")",
    "[",
    "]",
    "{",
    "}",
    ",",
    ";",
    ":",
    ".",
    "place",
    "next",
    "on",
    "hold",
    "for",
    "left",
    "sleeve",
    "body",
    "waste yarn",
    "return",
    "held",
    "needle",
    "cast on",
    "pick up and knit",
    "row",
    "Row 1",
    "Row 1:",
    "Rows 1-4:",
    "Row 2 and all WS rows:",
    "RS",
    "(WS)",
    "repeat",
    "rows",
    "every",
    "4th",
    "3 times",
    "more",
    "until",
    "rem",
    "work",
    "dec row",
    "dec row:",
    "inc 1 st",
    "at each end",
    "evenly",
    "increasing",
    "as",
    "size 1",
    "sizes 1 and 2",
    "only:",
    "all other sizes:",
    "starting",
    "with MC",
    "in CC",
    "turn",
    "BO",
    "over",
    "using",
    "[4 sts]",
    "(6, 7)",
    "8 (9, 10)",
];

fn text(dice: &mut Dice) -> String {
    let mut text = String::new();
    for _ in 0..1 + dice.roll(16) {
        text.push_str(WORDS[dice.roll(WORDS.len() as u64) as usize]);
        text.push_str(["", " ", " ", " ", " ", "\n", "\n  "][dice.roll(7) as usize]);
    }
    text
}

/// Every place of an item and of what is in it.
fn places(items: &[Item], all: &mut Vec<Span>) {
    for item in items {
        all.push(item.at().clone());
        if let Item::Repeat { items, .. } | Item::Into { items, .. } = item {
            places(items, all);
        }
    }
}

fn all_places(written: &Written) -> Vec<Span> {
    let mut all: Vec<Span> = written.numbers.iter().map(|number| number.at.clone()).collect();
    all.extend(written.unknown_sizes.iter().cloned());
    for statement in &written.statements {
        all.push(statement.at.clone());
        all.extend(statement.stated.iter().map(|number| number.at.clone()));
        all.extend(statement.change.iter().map(|change| change.by.at.clone()));
        all.extend(statement.only.iter().map(|only| only.at.clone()));
        if let Some((trouble, at)) = &statement.trouble {
            all.push(at.clone());
            assert!(!matches!(trouble, Trouble::UnknownWord) || !at.is_empty(), "{statement:?}");
        }
        match &statement.doing {
            Doing::Row { items, label } => {
                places(items, &mut all);
                all.extend(label.iter().map(|label| label.at.clone()));
            }
            Doing::CastOn(number) | Doing::Over(number) => all.push(number.at.clone()),
            Doing::Repeat(repeated) => all.push(repeated.at.clone()),
            Doing::TakeUp(taken) => all.push(taken.at.clone()),
            _ => {}
        }
    }
    all
}

/// What no statement holds: the signs and words between sentences, what leads to one, and for which sizes it is.
fn between(text: &str, written: &Written) -> Vec<String> {
    let mut at = 0;
    let mut all = Vec::new();
    for statement in &written.statements {
        if statement.at.start > at {
            all.push(text[at..statement.at.start].to_owned());
        }
        at = at.max(statement.at.end);
    }
    all.push(text[at..].to_owned());
    all
}

#[test]
fn every_place_is_in_the_text_and_no_word_is_lost() {
    let mut dice = Dice(20_261_126);
    let lexicon = Lexicon::default();
    for _ in 0..if cfg!(debug_assertions) { 20_000 } else { 500_000 } {
        let text = text(&mut dice);
        let written = read(&text, &lexicon, RunStyle::default());
        for at in all_places(&written) {
            assert!(text.get(at.clone()).is_some(), "{at:?} in {text:?}: {written:#?}");
        }
        let mut before = 0;
        for statement in &written.statements {
            assert!(statement.at.start >= before, "{text:?}: {written:#?}");
            before = statement.at.start;
        }
        for between in between(&text, &written) {
            let words = between.trim_matches(|c: char| c.is_whitespace() || matches!(c, '.' | ',' | ';'));
            let parted = words.split(|c: char| !c.is_alphanumeric()).all(|word| ["", "and", "then"].contains(&word));
            let leads = words.ends_with(':') || words.ends_with("only") || words.contains("size");
            assert!(parted || leads, "{between:?} is lost in {text:?}: {written:#?}");
        }
    }
}

/// The Kelvin sign is three bytes, and its small letter one.
#[test]
fn letters_whose_small_ones_are_shorter_lose_nothing() {
    let text = "Row 1: K2, place next 4 sts on hold for bac\u{212a}, k8 (x).";
    let written = read(text, &Lexicon::default(), RunStyle::default());
    let [statement] = written.statements.as_slice() else { panic!("{written:#?}") };
    assert_eq!(statement.trouble.as_ref().map(|(_, at)| &text[at.clone()]), Some("x"));
    let text = "Place next 4 sts on hold \u{212a}\u{212a} for left sleeve.";
    let written = read(text, &Lexicon::default(), RunStyle::default());
    let Doing::PutAside(put) = &written.statements[0].doing else { panic!("{written:#?}") };
    assert_eq!(put.of.as_deref(), Some("left sleeve"));
}
