//! Words that go back to a row by its name: `Repeat dec rnd every 8th (7th, 6th) rnd 5 times more`.

use super::super::name::RowName;
use super::super::statement::{Again, Every, Repeated, Rows, Spell};
use super::super::tree::Span;
use super::cursor::{Bad, Cursor};
use super::effect::{alters, names_stitches, works_here};
use super::every::spells;
use super::plain::{is_quiet, tokens};
use super::stated;

/// The most words that a name has before the word row.
const MOST: usize = 5;

/// Words that no name holds, since they say what is done or which rows are meant.
const NO_NAME: &str = " a an any in of on to as for at and or with until from up through thru past after before by over along \
    across around between only just even every each all next following foll these those more another further additional extra \
    whole entire full single half short first second third fourth fifth final one two three four five six seven eight nine ten \
    chart pattern patt right wrong both side ";

/// What stands before the row itself where a sentence begins with how the rest is worked.
const LEADS: [&str; 8] = ["continue", "continuing", "cont", "work", "working", "keeping", "maintaining", "knit"];

/// Reads a name of a row, with its place; nothing where none stands here.
pub(super) fn name(cursor: &mut Cursor<'_>) -> Option<(RowName, Span)> {
    let before = cursor.at;
    let found = read_name(cursor);
    if found.is_none() {
        cursor.at = before;
    }
    found
}

fn read_name(cursor: &mut Cursor<'_>) -> Option<(RowName, Span)> {
    cursor.any(&["the", "this", "that"]);
    cursor.any(&["last", "same", "above", "previous"]);
    cursor.spaces();
    let start = cursor.at;
    for _ in 0..=MOST {
        if cursor.any(&["row", "rnd", "round"]) {
            let end = cursor.at;
            cursor.at = suffix(cursor).unwrap_or(end);
            let at = start..cursor.at;
            return RowName::of(cursor.text.get(at.clone())?).map(|name| (name, at));
        }
        let word = cursor.long_word();
        let lower = word.to_lowercase();
        let is_word = word.starts_with(char::is_alphabetic) && !word.contains(|c: char| c.is_ascii_digit());
        if !is_word || NO_NAME.split(' ').any(|known| known == lower) {
            return None;
        }
        cursor.at += word.len();
    }
    None
}

/// Where the letter or number ends that stands behind a name: `Dec Rnd A`, `Inc row 1`; nothing where none does.
fn suffix(cursor: &mut Cursor<'_>) -> Option<usize> {
    let word = cursor.word();
    let letter = word.len() == 1 && word.starts_with(|c: char| c.is_ascii_uppercase());
    let figures = !word.is_empty() && word.len() <= 2 && word.chars().all(|c| c.is_ascii_digit());
    if !(letter || figures) {
        return None;
    }
    cursor.at += word.len();
    let end = cursor.at;
    cursor.spaces();
    // "3 times" and "3 (4, 5) times" are how often.
    let counts = figures && (cursor.any(&["more", "times", "time"]) || matches!(cursor.peek(), Some('(' | '[' | '{')));
    (!counts).then_some(end)
}

/// Reads a sentence that works a row of a name again, from behind its verb.
pub(super) fn named(cursor: &mut Cursor<'_>) -> Result<Option<Repeated>, Bad> {
    cursor.attempt(|cursor| {
        let Some((name, at)) = name(cursor) else { return Ok(None) };
        let spells = match spells_here(cursor)? {
            None if cursor.is_stop() || stated::is_here(cursor) || goes_on(cursor) => {
                vec![Spell { every: Every::Row, again: Again::More(cursor.once()) }]
            }
            None => return Ok(None),
            Some(spells) => spells,
        };
        Ok(is_whole(cursor).then_some(Repeated { rows: Rows::Named(name), spells, at }))
    })
}

/// Whether a comma stands here and something else is worked then.
fn goes_on(cursor: &mut Cursor<'_>) -> bool {
    let before = cursor.at;
    let comma = cursor.sign(',') || cursor.sign(';');
    let then = comma && cursor.any(&["then", "and", "and then"]);
    cursor.at = before;
    then
}

/// Reads when a row that is named otherwise is worked again, where that is every so many rows.
pub(super) fn spaced(cursor: &mut Cursor<'_>) -> Result<Option<Vec<Spell>>, Bad> {
    cursor.attempt(|cursor| {
        let spells = spells_here(cursor)?.filter(|spells| spells.iter().any(|spell| spell.every != Every::Row));
        Ok(spells.filter(|_| is_whole(cursor)))
    })
}

fn spells_here(cursor: &mut Cursor<'_>) -> Result<Option<Vec<Spell>>, Bad> {
    cursor.attempt(|cursor| {
        cursor.sign(',');
        spells(cursor)
    })
}

/// Moves past "Continue in St st, working" where the sentence goes on with a row that is worked again; returns whether it does.
pub(super) fn led(cursor: &mut Cursor<'_>) -> bool {
    let start = cursor.at;
    if !cursor.any(&LEADS) {
        return false;
    }
    let body = cursor.at;
    let rest = cursor.rest();
    let sentence = rest.get(..rest.find(['.', ':', '\n', '[']).unwrap_or(rest.len())).unwrap_or_default();
    for (comma, _) in sentence.match_indices(',') {
        cursor.at = body + comma + 1;
        cursor.any(&["and", "while", "but"]);
        if cursor.any(&["working", "repeating", "rep", "repeat", "work"]) {
            let lead = sentence.get(..comma).unwrap_or_default();
            // "Knit 3 rnds, repeat dec rnd" works rows of its own first.
            let of_rows = ["row", "rnd", "round", "until", "for", "measure"];
            if is_quiet(lead, cursor.lexicon)
                && !tokens(lead).any(|word| of_rows.iter().any(|begin| word.starts_with(begin)))
            {
                return true;
            }
            break;
        }
    }
    cursor.at = start;
    false
}

/// Moves past what is said besides; returns whether it changes no stitch. Behind a comma something else may follow, which is read
/// on its own.
pub(super) fn is_whole(cursor: &mut Cursor<'_>) -> bool {
    if cursor.is_stop() || stated::is_here(cursor) {
        return true;
    }
    const BESIDES: [&str; 12] =
        ["or", "ending", "end", "with", "working", "keeping", "maintaining", "while", "using", "in", "as", "slipping"];
    let start = cursor.at;
    let apart = matches!(cursor.peek(), Some(',' | ';'));
    let rest = cursor.rest();
    let first = tokens(rest).next().unwrap_or_default().to_lowercase();
    if apart && !BESIDES.contains(&first.as_str()) {
        return true;
    }
    cursor.skip_sentence();
    let words = cursor.text.get(start..cursor.at).unwrap_or_default();
    // "Twice between markers" is of some of the stitches.
    let of_some = tokens(words).any(|word| matches!(word, "m" | "marker" | "markers" | "each" | "side"));
    let is_plain = is_quiet(&words.replace("between", ""), cursor.lexicon);
    let leaves = is_plain || !works_here(words, cursor.lexicon) && !alters(words) && !names_stitches(words);
    !of_some && leaves
}
