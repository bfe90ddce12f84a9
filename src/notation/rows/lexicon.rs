//! The words that work stitches, and how many each takes and leaves.

use super::charts::{ChartRows, Charts};
use super::colours::{Colours, Named, is_before, is_letter, is_lettered};
use crate::measure::SizeNames;
use crate::standards::abbreviations::{self, Kind, Stitches};
use std::collections::HashMap;
use std::sync::LazyLock;

/// How many stitches something takes from the left needle and leaves on the right.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Counts {
    /// The stitches it takes.
    pub takes: i64,
    /// The stitches it leaves; below nothing where it takes finished ones off.
    pub leaves: i64,
}

impl Counts {
    /// Returns so many taken and so many left.
    pub const fn new(takes: i64, leaves: i64) -> Self {
        Self { takes, leaves }
    }
}

/// The trade's words and those of one pattern.
#[derive(Clone, Debug, Default)]
pub struct Lexicon {
    own: Vec<(String, Counts)>,
    colours: Colours,
    sizes: Option<SizeNames>,
    apart: bool,
    charts: Charts,
}

/// The table's words with a fixed count, in small letters.
static STANDARD: LazyLock<HashMap<String, Counts>> = LazyLock::new(|| {
    let mut all = HashMap::new();
    for row in abbreviations::all().iter().filter(|row| matches!(row.kind, Kind::Stitch | Kind::ShortRow)) {
        if let (Some(Stitches::Fixed(takes)), Some(Stitches::Fixed(leaves))) = (row.consumed, row.produced) {
            for form in row.forms.iter().filter(|form| !form.contains(' ')) {
                all.insert(form.to_lowercase(), Counts::new(takes.into(), leaves.into()));
            }
        }
    }
    // Parts of a decrease: each finished stitch that is passed over another is one less.
    for (word, over) in [("psso", 1), ("p2sso", 2), ("p3sso", 3)] {
        all.insert(word.to_owned(), Counts::new(0, -over));
    }
    // These stand with a number behind them and are read with it.
    for word in ["k", "p", "sl", "w&t"] {
        all.remove(word);
    }
    all
});

impl Lexicon {
    /// Names the sizes of the pattern; without, a size goes by its number.
    pub fn name_sizes(&mut self, names: &SizeNames) {
        self.sizes = Some(names.clone());
    }

    /// Says that the stitch on the right needle after binding off is none of those that the next words count: after
    /// `BO 5` of 25 stitches on which ten were worked, the rest is `k9`, not `k10`.
    pub fn leave_bound_off(&mut self) {
        self.apart = true;
    }

    pub(in crate::notation) fn is_apart(&self) -> bool {
        self.apart
    }

    /// Adds a chart of the text, which rows may be worked from.
    pub fn add_chart(&mut self, chart: ChartRows) {
        self.charts.add(chart);
    }

    /// Says that the text has charts that could not be read, so that "the chart" may be one of them.
    pub fn has_unread_charts(&mut self) {
        self.charts.others = true;
    }

    pub(super) fn charts(&self) -> &Charts {
        &self.charts
    }

    /// Adds a name that rows may call a colour by, such as that of its shade, with the colour's label.
    ///
    /// Names are compared without capitals, single letters with them. The trade's own words, `MC`, `CC`, `CC2` and the
    /// capitals from `A` to `H`, are known without.
    pub fn name_colour(&mut self, name: &str, label: &str) {
        self.colours.add(name, label);
    }

    /// Returns the colour that a text begins with: its length, its label and whether it is the pattern's own. A word for a
    /// stitch is none, unless a word before it (`said`) says that it is a colour.
    pub(in crate::notation) fn colour_at<'a>(&'a self, text: &'a str, said: bool) -> Option<(usize, &'a str, bool)> {
        let found = self.colours.at(text, said)?;
        let word = text.split(|c: char| !c.is_alphanumeric()).next().unwrap_or_default();
        let stitch = !said && (self.own_at(text).is_some() || self.find(word).is_some());
        (!stitch).then_some(found)
    }

    /// Returns the colours that a text names.
    pub fn colours_in(&self, text: &str) -> Vec<Named> {
        self.colours_from(text, false)
    }

    /// Returns the colours that the words of a stitch name: those behind its first word.
    pub fn colours_behind(&self, text: &str) -> Vec<Named> {
        self.colours_from(text, true)
    }

    fn colours_from(&self, text: &str, begins_with_stitch: bool) -> Vec<Named> {
        let mut named: Vec<Named> = Vec::new();
        let (mut at, mut before, mut said, mut first) = (0, "", false, begins_with_stitch);
        while let Some(rest) = text.get(at..).filter(|rest| !rest.is_empty()) {
            let word = rest.get(..rest.find(|c: char| !c.is_alphanumeric()).unwrap_or(rest.len())).unwrap_or_default();
            if word.is_empty() {
                at += rest.chars().next().map_or(1, char::len_utf8);
                continue;
            }
            let found =
                self.colour_at(rest, said).filter(|_| (!first || said) && !(is_letter(word) && is_lettered(before)));
            at += match found {
                Some((length, label, own)) => {
                    named.push(Named { label: label.to_owned(), own, at: at..at + length, said });
                    length
                }
                None => word.len(),
            };
            said = is_before(word) || (said && matches!(word, "the" | "colour" | "color" | "yarn"));
            (before, first) = (word, false);
        }
        named
    }

    /// Returns a text without the colours that it names.
    pub(super) fn without_colours(&self, text: &str) -> String {
        let mut rest = text.to_owned();
        for named in self.colours_in(text).into_iter().rev() {
            rest.replace_range(named.at, " ");
        }
        rest
    }

    /// Returns the sizes of the pattern, where they are known.
    pub(super) fn sizes(&self) -> Option<&SizeNames> {
        self.sizes.as_ref()
    }

    /// Adds a word of the pattern's own, which then goes before the trade's.
    pub fn add(&mut self, word: &str, counts: Counts) {
        self.own.push((word.trim().to_lowercase(), counts));
    }

    /// Returns the pattern's own word that a text begins with: its length and its counts.
    pub(in crate::notation) fn own_at(&self, text: &str) -> Option<(usize, Counts)> {
        let begins = |word: &str| {
            let ends = text.get(word.len()..)?;
            let same = text.get(..word.len())?.eq_ignore_ascii_case(word);
            let whole = !ends.starts_with(|c: char| c.is_alphanumeric() || c == '&');
            (same && whole && !word.is_empty()).then_some(word.len())
        };
        let found = self.own.iter().filter_map(|(word, counts)| Some((begins(word)?, *counts)));
        found.max_by_key(|(length, _)| *length)
    }

    /// Returns what a whole word takes and leaves; nothing for a word that is none.
    ///
    /// Families go by their number: `k5tog` takes five and leaves one, `C8F` crosses eight, `m3` makes three.
    pub fn find(&self, word: &str) -> Option<Counts> {
        let word = word.to_lowercase();
        STANDARD.get(&word).copied().or_else(|| family(&word))
    }

    /// Returns every word that may be meant by a misspelt one.
    pub fn words(&self) -> Vec<&str> {
        // The order of a hash table cannot show: the nearest are sorted by name.
        let mut words: Vec<&str> = self.own.iter().map(|(word, _)| word.as_str()).collect();
        let standard = abbreviations::all().iter().filter(|row| matches!(row.kind, Kind::Stitch | Kind::ShortRow));
        words.extend(standard.flat_map(|row| row.forms.iter().map(String::as_str)));
        words
    }
}

fn family(word: &str) -> Option<Counts> {
    let start = word.find(|c: char| c.is_ascii_digit())?;
    let (letters, rest) = word.split_at_checked(start)?;
    let digits = rest.bytes().take_while(u8::is_ascii_digit).count();
    let (digits, end) = rest.split_at_checked(digits)?;
    let number: i64 = digits.parse().ok().filter(|number| (1..=99).contains(number))?;
    match (letters, end) {
        ("k" | "p" | "sl" | "brk" | "brp", "tog") if number > 1 => Some(Counts::new(number, 1)),
        ("c" | "t", "f" | "b" | "l" | "r") => Some(Counts::new(number, number)),
        ("m", "") | ("yo", "") => Some(Counts::new(0, number)),
        ("brk" | "brp", "") => Some(Counts::new(number, number)),
        _ => None,
    }
}
