//! Sentences that are no list of stitches: a cast-on, stitches put aside, words for the knitter alone.

use super::super::lexicon::Lexicon;
use super::super::statement::Doing;
use super::super::tree::Number;
use super::again::repeat;
use super::cursor::{Bad, Cursor};
use super::plain::plain;
use super::shape::shape;
use super::take_up::take_up;

const ASIDE: [&str; 44] = [
    "join",
    "change to",
    "switch to",
    "change",
    "cut",
    "break",
    "do not",
    "don't",
    "don’t",
    "begin",
    "start",
    "move",
    "note",
    "fasten",
    "graft",
    "sew",
    "weave",
    "block",
    "draw",
    "thread",
    "divide",
    "mark",
    "attach",
    "rejoin",
    "using",
    "with",
    "place a marker",
    "place marker",
    "place markers",
    "pm",
    "turn",
    "the",
    "this",
    "you",
    "now",
    "beg",
    "end",
    "ending",
    "remove",
    "be careful",
    "being careful",
    "taking care",
    "leave",
    "return",
];

/// Reads a sentence that is no row's list of stitches; nothing where it is one.
pub(super) fn special(cursor: &mut Cursor<'_>) -> Result<Option<Doing>, Bad> {
    let start = cursor.at;
    for read in [take_up, shape] {
        if let Some(doing) = read(cursor)? {
            return Ok(Some(doing));
        }
        cursor.at = start;
    }
    if let Some(number) = cast_on(cursor)? {
        return Ok(Some(Doing::CastOn(number)));
    }
    cursor.at = start;
    if let Some(repeated) = repeat(cursor)? {
        return Ok(Some(Doing::Repeat(repeated)));
    }
    cursor.at = start;
    if cursor.any(&["place", "slip", "put"]) {
        cursor.any(&["the", "next", "these", "rem", "remaining", "last", "first"]);
        if let Some(number) = cursor.number()?
            && cursor.any(&["sts", "st", "stitches"])
            && cursor.any(&["on", "onto", "on to"])
        {
            cursor.skip_sentence();
            return Ok(Some(Doing::PutAside(number)));
        }
    }
    cursor.at = start;
    if cursor.any(&["bo", "bind off", "cast off"]) {
        cursor.any(&["all", "rem", "remaining", "loosely", "in patt", "in pattern", "in rib", "knitwise", "purlwise"]);
        let none = super::op::so_many(cursor)?.is_none();
        if none && !cursor.sees("to") && !cursor.sees("until") {
            cursor.skip_sentence();
            return Ok(Some(Doing::BindOff));
        }
    }
    cursor.at = start;
    if let Some(doing) = plain(cursor)? {
        return Ok(Some(doing));
    }
    cursor.at = start;
    if cursor.any(&ASIDE) {
        cursor.skip_sentence();
        // "With CC, k8" and "turn, p5" begin like asides and work stitches.
        let words = cursor.text.get(start..cursor.at).unwrap_or_default();
        if !words.split(|c: char| !c.is_alphanumeric()).any(|word| is_stitch(word, cursor.lexicon)) {
            return Ok(Some(Doing::Aside));
        }
    }
    cursor.at = start;
    Ok(None)
}

/// Whether a word works a stitch: `k8`, `yo`, or one of the pattern's own.
fn is_stitch(word: &str, lexicon: &Lexicon) -> bool {
    let numbered = |letter: char| {
        let rest = word.strip_prefix([letter, letter.to_ascii_uppercase()]);
        rest.is_some_and(|rest| rest.starts_with(|c: char| c.is_ascii_digit()))
    };
    numbered('k') || numbered('p') || lexicon.find(word).is_some() || lexicon.own_at(word).is_some()
}

/// Reads "Cast on 48 (56, 64) sts" and the like, to the end of the sentence.
fn cast_on(cursor: &mut Cursor<'_>) -> Result<Option<Number>, Bad> {
    const BEGIN: [&str; 5] = ["cast on", "co", "pick up and knit", "pick up and purl", "pick up"];
    if cursor.any(&["with", "using", "on", "rs facing", "ws facing"]) {
        // Needles, yarn, method and side stand before it, with commas.
        loop {
            let rest = cursor.rest();
            let comma = rest.find(',').filter(|comma| !rest.get(..*comma).unwrap_or_default().contains(". "));
            let Some(comma) = comma else { return Ok(None) };
            cursor.at += comma + 1;
            if BEGIN.iter().any(|words| cursor.sees(words)) {
                break;
            }
        }
    }
    if !cursor.any(&BEGIN) {
        return Ok(None);
    }
    let Some(number) = cursor.number()? else { return Ok(None) };
    if !cursor.any(&["sts", "st", "stitches"]) || cursor.sees("at") || cursor.sees("for") {
        return Ok(None);
    }
    // "CO 8 sts, k to end" is a row; "Cast on 8 sts, join" is a beginning.
    let rest = cursor.rest();
    let after = rest.trim_start_matches([',', ';', ' ']);
    let works = after
        .get(..2)
        .is_some_and(|two| matches!(two.get(..1), Some("k" | "p")) && !two.ends_with(char::is_alphabetic));
    if works {
        return Ok(None);
    }
    cursor.skip_sentence();
    Ok(Some(number))
}
