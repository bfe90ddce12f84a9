//! What in the rows cannot be read.

use super::{Blocks, place};
use crate::entry::{Entry, Pattern};
use crate::finding::{Code, Finding, Severity, nearest};
use crate::measure::Misread;
use crate::notation::rows::{Lexicon, Number, Statement, Trouble};

/// Words in a row that cannot be read.
pub static ROW_UNREAD: Code = Code {
    name: "row-unread",
    severity: Severity::Warning,
    what: "Words in a `rows` block are no stitches, repeats or counts that can be read.",
    why: "The row cannot be counted, nor what comes after it until a count is given.",
    bad: "Row 1: K2, then some lace, k2.",
    good: "Row 1: K2, [yo, k2tog] 3 times, k2.",
};

/// A word in a row that nobody knows.
pub static ABBREVIATION_UNKNOWN: Code = Code {
    name: "abbreviation-unknown",
    severity: Severity::Warning,
    what: "A word in a row is neither a common abbreviation nor one of the pattern's own.",
    why: "A knitter looks for it in vain, and the row cannot be counted.",
    bad: "Row 1: K2, k2tgo, k to end.",
    good: "Row 1: K2, k2tog, k to end.",
};

/// Brackets or a star without a "times".
pub static BRACKETS_UNCLEAR: Code = Code {
    name: "brackets-unclear",
    severity: Severity::Warning,
    what: "Behind brackets or a star nothing says how often the stitches are worked.",
    why: "Brackets may hold sizes, a repeat, stitches worked into one, or an aside.",
    bad: "Row 1: K2, (k1, p1), k2.",
    good: "Row 1: K2, (k1, p1) 3 times, k2.",
};

/// A size run in a row with too few or too many values.
pub static ROW_RUN_LENGTH: Code = Code {
    name: "row-run-length",
    severity: Severity::Warning,
    what: "A size run in a row has neither one value nor one for each size of the pattern.",
    why: "Whoever counts brackets to their size knits another size from there on.",
    bad: "sizes: S (M, L)\nRow 1: K4 (5), p2.",
    good: "sizes: S (M, L)\nRow 1: K4 (5, 6), p2.",
};

/// Finds what cannot be read, and runs of the wrong length.
pub fn check(entry: &Entry, pattern: &Pattern, blocks: &Blocks, findings: &mut Vec<Finding>) {
    let sizes = pattern.size_count();
    for (block, written) in blocks.written.iter().enumerate() {
        for statement in &written.statements {
            if let Some(trouble) = &statement.trouble {
                findings.push(unread(entry, pattern, block, statement, trouble));
            }
        }
        for number in written.numbers.iter().filter(|number| !number.values.serves(sizes)) {
            findings.push(run_length(entry, block, number, sizes));
        }
    }
}

fn unread(
    entry: &Entry,
    pattern: &Pattern,
    block: usize,
    statement: &Statement,
    (trouble, at): &(Trouble, crate::notation::rows::Span),
) -> Finding {
    let place = place(entry, block, at);
    let text = |span: std::ops::Range<usize>| entry.prose.stretch(&span).trim().to_owned();
    let written = text(place.span.clone());
    let shown: String = written.lines().next().unwrap_or_default().chars().take(40).collect();
    let start = place.span.start.saturating_sub(at.start) + statement.at.start;
    let before = text(start..place.span.start);
    let understood = if before.is_empty() {
        String::new()
    } else {
        format!("; what stands before it is understood up to `{}`", ending(before.trim_end_matches([',', ';', ' '])))
    };
    match trouble {
        Trouble::UnknownWord => {
            let mut lexicon = Lexicon::default();
            for (name, _) in &pattern.abbreviations.0 {
                lexicon.add(name, crate::notation::rows::Counts::default());
            }
            let message = format!("`{shown}` is no abbreviation that is known here");
            let help = match nearest(&written, lexicon.words()) {
                Some(near) => format!("did you mean `{near}`? One of your own is explained under `abbreviations`"),
                None => format!(
                    "explain it under `abbreviations`: `{shown}: {{ what: …, uses: 1, makes: 1 }}`, with the stitches it takes and leaves"
                ),
            };
            Finding::new(&ABBREVIATION_UNKNOWN, place, message).help(help)
        }
        Trouble::Unread => {
            let message = format!("`{shown}` cannot be read as stitches{understood}");
            let help = match colour_near(pattern, &written) {
                Some(near) => format!("did you mean the colour `{near}`?"),
                None => "part stitches with commas, and say of every number what it counts; words for the reader go outside the block".to_owned(),
            };
            Finding::new(&ROW_UNREAD, place, message).help(help)
        }
        Trouble::Unclear => {
            Finding::new(&BRACKETS_UNCLEAR, place, format!("nothing says how often `{shown}` is worked"))
                .help("write `3 times`, `to end`, `in next st` or `rep from * to end` behind it")
        }
        Trouble::Number(problem) => {
            let misread = Misread::new(0..0, (**problem).clone());
            Finding::new(&ROW_UNREAD, place, misread.to_string()).help(misread.help())
        }
    }
}

/// The colour of the pattern that "in Teel" is nearly.
fn colour_near<'a>(pattern: &'a Pattern, words: &str) -> Option<&'a str> {
    let (before, name) = words.split_once(' ')?;
    let names = pattern.yarn.iter().flat_map(|line| [line.colour.as_deref(), line.shade.as_deref()]).flatten();
    matches!(before.to_lowercase().as_str(), "in" | "with" | "using").then(|| nearest(name, names)).flatten()
}

/// The last words of a text: no more than can be seen at once, and no part of a word.
fn ending(text: &str) -> String {
    const MOST: usize = 24;
    let Some((cut, _)) = text.char_indices().rev().nth(MOST - 1).filter(|(cut, _)| *cut > 0) else {
        return text.to_owned();
    };
    let (before, last) = text.split_at_checked(cut).unwrap_or(("", text));
    // A word that is longer than that stays whole.
    let whole = before.ends_with(char::is_whitespace) || last.starts_with(char::is_whitespace);
    let from = if whole { Some(last) } else { last.split_once(char::is_whitespace).map(|(_, words)| words) };
    let from = from.or_else(|| text.rsplit(char::is_whitespace).next()).unwrap_or(text).trim_start();
    if from.len() == text.len() { text.to_owned() } else { format!("…{from}") }
}

fn run_length(entry: &Entry, block: usize, number: &Number, sizes: usize) -> Finding {
    let values = number.values.len();
    let has = if sizes == 1 { "one size".to_owned() } else { format!("{sizes} sizes") };
    let message = format!("a run of {values} values in a pattern of {has}");
    let help = "give one value for every size, a dash where a size has none, or one value for all";
    Finding::new(&ROW_RUN_LENGTH, place(entry, block, &number.at), message).help(help)
}
