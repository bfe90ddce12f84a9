//! A place in a text of rows, moved forward word by word.

use super::super::lexicon::Lexicon;
use super::super::statement::{Only, Trouble};
use super::super::tree::{Number, Span};
use crate::measure::{
    Count, RunStyle, SizeNames, SizeRun, numbers_in_brackets, ordinal_ending, read_run, without_ordinals,
};

/// What cannot be read, and where.
pub(super) type Bad = (Trouble, Span);

/// The deepest that repeats may stand in each other; nobody could follow more.
const DEEPEST: usize = 12;

/// How far a run of numbers or a bracket with a count is looked for, in bytes; nobody's are as long.
const FARTHEST: usize = 400;

/// The largest number that is read: more than the stitches of any knitting.
const LARGEST: i64 = 99_999;

/// A place in a text, with what was met on the way.
pub(super) struct Cursor<'a> {
    pub text: &'a str,
    pub at: usize,
    /// Where the text ends that is read at present.
    pub end: usize,
    pub lexicon: &'a Lexicon,
    pub style: RunStyle,
    pub numbers: Vec<Number>,
    pub depth: usize,
    /// For which sizes the words here are; all where nothing says so.
    pub only: Option<Only>,
    /// Words that stand for sizes and name none.
    pub unknown_sizes: Vec<Span>,
}

/// Whether a character belongs to a word.
fn of_word(c: char) -> bool {
    c.is_alphanumeric() || matches!(c, '&' | '\'' | '’')
}

impl<'a> Cursor<'a> {
    /// The text from here to the end.
    pub fn rest(&self) -> &'a str {
        self.text.get(self.at..self.end).unwrap_or_default()
    }

    /// As much of it as is looked through again and again.
    fn near(&self) -> &'a str {
        let rest = self.rest();
        rest.get(..rest.floor_char_boundary(FARTHEST)).unwrap_or_default()
    }

    /// The character here.
    pub fn peek(&self) -> Option<char> {
        self.rest().chars().next()
    }

    /// Moves past spaces.
    pub fn spaces(&mut self) {
        let rest = self.rest();
        self.at += rest.len() - rest.trim_start().len();
    }

    /// Moves past a hyphen that joins two words, as in `sl1-k2tog-psso`; returns whether one stood here.
    pub fn hyphen(&mut self) -> bool {
        let before = self.text.get(..self.at).is_some_and(|before| before.ends_with(char::is_alphanumeric));
        let mut here = self.rest().chars();
        let found = before && here.next() == Some('-') && here.next().is_some_and(char::is_alphabetic);
        self.at += usize::from(found);
        found
    }

    /// Whether nothing is left.
    pub fn is_done(&mut self) -> bool {
        self.spaces();
        self.at >= self.end
    }

    /// Moves past a sign; returns whether it stood here.
    pub fn sign(&mut self, sign: char) -> bool {
        self.spaces();
        let found = self.peek() == Some(sign);
        if found {
            self.at += sign.len_utf8();
        }
        found
    }

    /// The word here; empty where there is none.
    pub fn word(&mut self) -> &'a str {
        self.spaces();
        let rest = self.rest();
        rest.get(..rest.find(|c| !of_word(c)).unwrap_or(rest.len())).unwrap_or_default()
    }

    /// The word here with hyphens inside: `k1-yo-k1`. Of one that is longer than any that is known, its beginning.
    pub fn long_word(&mut self) -> &'a str {
        const LONGEST: usize = 60;
        self.spaces();
        let rest = self.rest();
        let inside = rest.char_indices().take(LONGEST).take_while(|(_, c)| of_word(*c) || *c == '-').last();
        let end = inside.map_or(0, |(at, c)| at + c.len_utf8());
        rest.get(..end).unwrap_or_default().trim_end_matches('-')
    }

    /// Moves past a few words, capitals aside; returns whether they stood here.
    pub fn eat(&mut self, words: &str) -> bool {
        let before = self.at;
        for wanted in words.split(' ') {
            let word = self.word();
            if !word.eq_ignore_ascii_case(wanted) {
                self.at = before;
                return false;
            }
            self.at += word.len();
        }
        true
    }

    /// Moves past the first of several phrases that stands here; returns whether one did.
    pub fn any(&mut self, phrases: &[&str]) -> bool {
        // Most begin with another letter, which is quickly seen.
        let Some(first) = self.rest().trim_start().bytes().next() else { return false };
        let begins = |words: &str| words.bytes().next().is_some_and(|byte| byte.eq_ignore_ascii_case(&first));
        phrases.iter().any(|words| begins(words) && self.eat(words))
    }

    /// Whether a few words stand here.
    pub fn sees(&mut self, words: &str) -> bool {
        let before = self.at;
        let found = self.eat(words);
        self.at = before;
        found
    }

    /// Whether a sentence ends here: at a full stop that is no decimal point, or at the end.
    pub fn is_stop(&mut self) -> bool {
        self.spaces();
        let mut chars = self.rest().chars();
        match chars.next() {
            None => true,
            Some('.') => chars.next().is_none_or(|c| !c.is_ascii_digit()),
            Some(_) => false,
        }
    }

    /// Reads something that may not stand here; then nothing of it is taken, neither words nor numbers.
    pub fn attempt<T>(&mut self, read: impl FnOnce(&mut Self) -> Result<Option<T>, Bad>) -> Result<Option<T>, Bad> {
        let (before, kept) = (self.at, self.numbers.len());
        let read = read(self)?;
        if read.is_none() {
            self.at = before;
            self.numbers.truncate(kept);
        }
        Ok(read)
    }

    /// Moves past the rest of the sentence, up to its full stop or to a bracket that may hold a count.
    pub fn skip_sentence(&mut self) {
        while !self.is_stop() {
            let Some(c) = self.peek() else { return };
            let counted = matches!(c, '[' | '(') && self.sees_count();
            if counted {
                return;
            }
            self.at += c.len_utf8();
        }
    }

    /// Whether a bracket here speaks of stitches.
    fn sees_count(&self) -> bool {
        let rest = self.near();
        let inside = rest.get(1..rest.find([']', ')']).unwrap_or(rest.len())).unwrap_or_default();
        inside.trim_start().starts_with(|c: char| c.is_ascii_digit()) && inside.contains("st")
    }

    /// Goes one level down, for what can stand in itself.
    pub fn deeper(&mut self) -> Result<(), Bad> {
        self.depth += 1;
        if self.depth > DEEPEST { Err((Trouble::Unread, self.at..self.end)) } else { Ok(()) }
    }

    /// Reads a number or a size run; nothing where none stands here.
    pub fn number(&mut self) -> Result<Option<Number>, Bad> {
        self.spaces();
        self.number_of(self.rest())
    }

    /// Reads an ordinal number or a run of them, `8th (7th, 6th)`; nothing where none stands here.
    pub fn ordinal(&mut self) -> Result<Option<Number>, Bad> {
        self.spaces();
        let (start, rest) = (self.at, self.near());
        let plain = without_ordinals(rest);
        self.attempt(|cursor| {
            let number = cursor.number_of(&plain)?;
            cursor.at += ordinal_ending(rest, cursor.at - start);
            let length = cursor.at - start;
            Ok(number.filter(|_| rest.get(..length) != plain.get(..length)))
        })
    }

    /// Reads a run of sizes whose values may be no whole ones, for how many they are; nothing where none stands here.
    pub fn run(&mut self) -> Result<Option<Number>, Bad> {
        let rest = self.rest();
        let all: Vec<char> = rest.chars().collect();
        let digit = |at: Option<usize>| at.and_then(|at| all.get(at)).is_some_and(char::is_ascii_digit);
        let point = |at: usize| all.get(at) == Some(&'.') && digit(at.checked_sub(1)) && digit(Some(at + 1));
        let plain: String = all.iter().enumerate().map(|(at, c)| if point(at) { '0' } else { *c }).collect();
        self.attempt(|cursor| Ok(cursor.number_of(&plain)?.filter(|number| !number.values.is_one())))
    }

    /// Reads a number that what is to be read begins with, which keeps its places.
    fn number_of(&mut self, rest: &str) -> Result<Option<Number>, Bad> {
        let start = self.at;
        let long = self.long_word();
        let named = named_tens(long).map(|value| (value, long.len()));
        let word = self.word();
        if let Some((value, length)) = named.or_else(|| Some((named_number(word)?, word.len()))) {
            self.at += length;
            return Ok(Some(self.keep(SizeRun::one(value), start)));
        }
        let first = first_length(rest);
        if first == 0 {
            return Ok(None);
        }
        let mut length = first;
        let mut bracket = false;
        while let Some(more) = rest.get(length..).and_then(numbers_in_brackets) {
            length += more;
            bracket = true;
        }
        let dash = !rest.starts_with(|c: char| c.is_ascii_digit());
        if dash && !bracket {
            return Ok(None);
        }
        let written = rest.get(..length).unwrap_or_default();
        self.at += length;
        if !bracket {
            let value = written.parse::<i64>().ok().filter(|value| *value <= LARGEST);
            let value = value.ok_or((Trouble::Unread, start..self.at))?;
            return Ok(Some(self.keep(SizeRun::one(value), start)));
        }
        let bad = |at: Span, problem| (Trouble::Number(Box::new(problem)), start + at.start..start + at.end);
        let run = read_run::<Count>(written, self.style, crate::measure::Inch::default())
            .map_err(|misread| bad(misread.at, misread.problem))?;
        let whole = |count: &Count| count.whole().filter(|whole| (0..=LARGEST).contains(whole));
        let values = run.values.try_map(whole).ok_or((Trouble::Unread, start..self.at))?;
        Ok(Some(self.keep(values, start)))
    }

    fn keep(&mut self, values: SizeRun<i64>, start: usize) -> Number {
        let number = Number { values: self.spread(values), at: start..self.at };
        // Words that begin in two ways are read twice.
        if !self.numbers.iter().rev().take(16).any(|other| other.at == number.at) {
            self.numbers.push(number.clone());
        }
        number
    }

    /// A run for some of the sizes may have values for those alone: it is made one of all.
    fn spread(&self, values: SizeRun<i64>) -> SizeRun<i64> {
        let count = self.lexicon.sizes().map_or(1, SizeNames::len);
        let Some(only) = self.only.as_ref().filter(|_| !values.is_one() && values.len() != count) else {
            return values;
        };
        let worked: Vec<usize> = (0..count).filter(|size| only.works(*size)).collect();
        if worked.len() != values.len() {
            return values;
        }
        let of = |size: usize| worked.iter().position(|worked| *worked == size);
        SizeRun::from_values((0..count).map(|size| values.get(of(size)?).copied()).collect())
    }

    /// The number one, standing at an empty place.
    pub fn once(&self) -> Number {
        Number { values: SizeRun::one(1), at: self.at..self.at }
    }
}

fn named_number(word: &str) -> Option<i64> {
    let names = [
        "one",
        "two",
        "three",
        "four",
        "five",
        "six",
        "seven",
        "eight",
        "nine",
        "ten",
        "eleven",
        "twelve",
        "thirteen",
        "fourteen",
        "fifteen",
        "sixteen",
        "seventeen",
        "eighteen",
        "nineteen",
        "twenty",
    ];
    let at = names.iter().position(|name| word.eq_ignore_ascii_case(name))?;
    i64::try_from(at + 1).ok()
}

/// The number that a word from twenty to ninety-nine is.
fn named_tens(word: &str) -> Option<i64> {
    const TENS: [&str; 8] = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];
    let lower = word.to_ascii_lowercase();
    let (ten, one) = lower.split_once('-').unwrap_or((&lower, ""));
    let tens = TENS.iter().position(|name| *name == ten).and_then(|at| i64::try_from(at + 2).ok())?;
    let ones = if one.is_empty() { 0 } else { named_number(one).filter(|ones| *ones < 10)? };
    Some(tens * 10 + ones)
}

/// How long the number is that a text begins with, a dash for a size without one included.
fn first_length(text: &str) -> usize {
    let digits = text.bytes().take_while(u8::is_ascii_digit).count();
    match text.chars().next() {
        Some(c @ ('-' | '–' | '—')) => c.len_utf8(),
        _ => digits,
    }
}
