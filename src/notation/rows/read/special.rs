//! Sentences that are no list of stitches: a cast-on, stitches put aside, words for the knitter alone.

use super::super::statement::Doing;
use super::again::repeat;
use super::alike::alike;
use super::between::between;
use super::bind_all::bind_all;
use super::cast_on::cast_on;
use super::cursor::{Bad, Cursor};
use super::effect::{alters, names_stitches, works_here};
use super::evenly::evenly;
use super::facing::begins;
use super::over::over;
use super::plain::{plain, tokens};
use super::put_aside::put_aside;
use super::shape::shape;
use super::take_up::take_up;

const ASIDE: [&str; 46] = [
    "slide",
    "push",
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
    // "With Teal, knit 1 rnd" is what follows the colour.
    if begins(cursor) {
        let body = cursor.at;
        match behind_lead(cursor)? {
            Some(Doing::Aside) => {}
            Some(doing) => return Ok(Some(doing)),
            None => {
                cursor.at = body;
                let worked = ["k", "p", "knit", "purl", "work"].iter().any(|verb| cursor.sees(verb));
                cursor.at = start;
                if worked {
                    return Ok(None);
                }
            }
        }
        cursor.at = start;
    }
    behind_lead(cursor)
}

fn behind_lead(cursor: &mut Cursor<'_>) -> Result<Option<Doing>, Bad> {
    let start = cursor.at;
    if let Some(doing) = super::chart::sentence(cursor)? {
        return Ok(Some(doing));
    }
    if let Some(item) = evenly(cursor)? {
        // "At each end" alone may be of many rows.
        let words = cursor.text.get(start..cursor.at).unwrap_or_default().to_lowercase();
        let one = words.contains("evenly") || tokens(&words).any(|word| matches!(word, "row" | "rnd" | "round"));
        if one && !matches!(cursor.peek(), Some(',' | ';')) {
            return Ok(Some(Doing::Row { label: None, items: vec![item] }));
        }
    }
    cursor.at = start;
    for read in [take_up, shape] {
        if let Some(doing) = read(cursor)? {
            return Ok(Some(doing));
        }
        cursor.at = start;
    }
    if let Some(number) = over(cursor)? {
        return Ok(Some(Doing::Over(number)));
    }
    cursor.at = start;
    if cursor.any(&["resume", "return to", "go back to"]) {
        cursor.skip_sentence();
        let words = cursor.text.get(start..cursor.at).unwrap_or_default().to_lowercase();
        let round = tokens(&words).any(|word| matches!(word, "round" | "rnd" | "rounds" | "rnds"));
        if round && !works_here(&words, cursor.lexicon) {
            // Stitches that waited are worked again with the others.
            return Ok(Some(Doing::Unsaid));
        }
    }
    cursor.at = start;
    if is_picked_up_at_sides(cursor) {
        return Ok(Some(Doing::Unsaid));
    }
    cursor.at = start;
    for read in [alike, cast_on] {
        if let Some(doing) = read(cursor)? {
            return Ok(Some(doing));
        }
        cursor.at = start;
    }
    if let Some(repeated) = repeat(cursor)? {
        return Ok(Some(Doing::Repeat(repeated)));
    }
    cursor.at = start;
    if let Some(doing) = put_aside(cursor)? {
        return Ok(Some(doing));
    }
    cursor.at = start;
    if cursor.any(&["bo", "bind off", "cast off"]) {
        cursor.any(&["all", "rem", "remaining", "loosely", "in patt", "in pattern", "in rib", "knitwise", "purlwise"]);
        let none = super::op::so_many(cursor)?.is_none();
        if none && !cursor.sees("to") && !cursor.sees("until") {
            return Ok(Some(bind_all(cursor, start)));
        }
    }
    cursor.at = start;
    if forms(cursor) {
        return Ok(Some(Doing::Aside));
    }
    cursor.at = start;
    if between(cursor) {
        return Ok(Some(Doing::Aside));
    }
    if let Some(doing) = plain(cursor)? {
        return Ok(Some(doing));
    }
    cursor.at = start;
    if cursor.any(&ASIDE) {
        cursor.skip_sentence();
        // "With CC, k8" and "turn, p5" begin like asides and work stitches.
        let words = cursor.text.get(start..cursor.at).unwrap_or_default();
        if binds_all(words) {
            return Ok(Some(Doing::BindOff));
        }
        if !works_here(words, cursor.lexicon) {
            return Ok(Some(if takes_off(words) || may_shape(words) { Doing::Unsaid } else { Doing::Aside }));
        }
    }
    cursor.at = start;
    Ok(None)
}

/// Moves past "These 2 rows form rib" and "Last 4 rows set the pattern"; returns whether such a sentence stood here.
fn forms(cursor: &mut Cursor<'_>) -> bool {
    cursor.any(&["the"]);
    if !cursor.any(&["these", "last", "this", "rows", "rnds", "rounds", "all"]) {
        return false;
    }
    let start = cursor.at;
    cursor.skip_sentence();
    let words = cursor.text.get(start..cursor.at).unwrap_or_default().to_lowercase();
    let form = ["form", "forms", "set", "sets", "establish", "establishes", "complete", "completes", "make"];
    tokens(&words).any(|word| form.contains(&word)) && !works_here(&words, cursor.lexicon) && !alters(&words)
}

/// Moves past "Turn work 90 degrees and pick up and knit 3 sts …", as a garter tab begins; returns whether it stood here. What is
/// on the needle stays there, and whether it is among the stitches that are told the words do not say.
fn is_picked_up_at_sides(cursor: &mut Cursor<'_>) -> bool {
    let turned =
        cursor.any(&["turn work", "turn piece", "turn the work", "turn the piece", "rotate work", "rotate piece"])
            || cursor.any(&["rotate the work", "rotate the piece", "do not turn", "without turning", "turn", "rotate"]);
    let start = cursor.at;
    if turned {
        cursor.skip_sentence();
    }
    tokens(cursor.text.get(start..cursor.at).unwrap_or_default()).any(|word| word.eq_ignore_ascii_case("pick"))
}

/// Whether words that begin like an aside bind everything off: "Using the larger needle, bind off all sts".
fn binds_all(words: &str) -> bool {
    let words = words.to_lowercase();
    let binds = ["bind off", "cast off", "bo"].iter().find_map(|bind| {
        let at = words.find(bind)?;
        words.get(at + bind.len()..)
    });
    binds.is_some_and(|rest| matches!(tokens(rest).next(), Some("all" | "rem" | "remaining" | "loosely")))
}

/// Whether words that begin like an aside may change stitches; advice to the knitter does not.
fn may_shape(words: &str) -> bool {
    let advice = ["note", "you", "be", "being", "taking"];
    alters(words) && !tokens(words).next().is_some_and(|first| advice.contains(&first.to_lowercase().as_str()))
}

/// Whether words that begin like an aside take stitches off the needle or back to it: "Leave 10 sts on a holder".
fn takes_off(words: &str) -> bool {
    let words = words.to_lowercase();
    let off = ["hold", "holder", "held", "waste", "scrap", "unworked", "remove", "drop"];
    let advice = tokens(&words).next().is_some_and(|first| matches!(first, "note" | "you"));
    !advice && names_stitches(&words) && tokens(&words).any(|word| off.contains(&word))
}
