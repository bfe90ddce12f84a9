//! One stitch or one instruction.

mod alone;
mod bind;
mod cable;
mod hold;
mod pick_up;
mod plain;
mod times;

pub(super) use bind::so_many;
pub(super) use hold::{kind, which};

use super::super::lexicon::Counts;
use super::super::statement::Trouble;
use super::super::tree::{Item, Mark, Until};
use super::colour;
use super::cursor::{Bad, Cursor};
use super::effect::{names_stitches, works};
use super::evenly::evenly;
use alone::over_these;
use bind::bind_off;
use cable::cable;
use hold::{from_hold, hold};
use pick_up::pick_up;
use plain::{pattern, plain, same_as, same_named};
use times::work;

const NOTHING: Counts = Counts::new(0, 0);

/// Reads one instruction.
pub(super) fn op(cursor: &mut Cursor<'_>) -> Result<Item, Bad> {
    cursor.spaces();
    let start = cursor.at;
    if let Some(item) = super::chart::item(cursor)? {
        return Ok(item);
    }
    if cursor.attempt(wrap)?.is_some() {
        return work(cursor, start, Counts::new(1, 1), false);
    }
    if cursor.any(&KNITS) {
        return Ok(Item::Even { until: Until::End, binds: false, at: start..cursor.at });
    }
    if let Some(item) = evenly(cursor)? {
        return Ok(item);
    }
    if let Some((length, counts)) = cursor.lexicon.own_at(cursor.rest()) {
        cursor.at += length;
        return work(cursor, start, counts, false);
    }
    for read in [hold, over_these, from_hold, colour::so_many] {
        if let Some(item) = read(cursor, start)? {
            return Ok(item);
        }
        cursor.at = start;
    }
    if let Some(crossed) = cable(cursor) {
        return work(cursor, start, Counts::new(crossed, crossed), false);
    }
    if cursor.any(&[
        "knit wrap together with wrapped st",
        "purl wrap together with wrapped st",
        "k wrap tog with st",
        "p wrap tog with st",
        "k wrapped st with its wrap",
        "p wrapped st with its wrap",
    ]) {
        return work(cursor, start, Counts::new(1, 1), false);
    }
    if let Some(item) = marker(cursor, start) {
        return Ok(item);
    }
    let long = cursor.long_word();
    if let Some(counts) = cursor.lexicon.find(long) {
        cursor.at += long.len();
        return work(cursor, start, counts, false);
    }
    let word = cursor.word();
    if let Some(counts) = cursor.lexicon.find(word) {
        cursor.at += word.len();
        return work(cursor, start, counts, false);
    }
    if ["k", "p", "sl"].iter().any(|letters| cursor.eat_prefix(letters)) {
        return plain(cursor, start);
    }
    if cursor.any(&["w&t", "wrap and turn", "wrap next st and turn", "turn work", "turn"]) {
        return Ok(Item::Turn { at: start..cursor.at });
    }
    if cursor.any(&["fasten off", "break yarn", "cut yarn", "break off yarn"]) {
        return work(cursor, start, NOTHING, false);
    }
    if joins(cursor) {
        return work(cursor, start, NOTHING, false);
    }
    if cursor.any(&["do not turn", "don't turn", "don’t turn", "slide", "push"]) {
        // As a cord is knitted: where the stitches lie is for the knitter alone.
        let rest = cursor.rest();
        cursor.at += rest.find([',', ';', '.', '[', '(', ']', ')', '*']).unwrap_or(rest.len());
        return work(cursor, start, NOTHING, false);
    }
    if let Some(changed) = cursor.attempt(in_next)? {
        return work(cursor, start, changed, false);
    }
    if cursor.any(&["bo", "bind off", "cast off"]) {
        return bind_off(cursor, start);
    }
    if let Some(item) = pick_up(cursor, start)? {
        return Ok(item);
    }
    if cursor.any(&["pass"]) {
        let number = cursor.number()?.unwrap_or_else(|| cursor.once());
        cursor.any(&["slipped", "slipped sts", "slipped st"]);
        cursor.any(&["sts", "st", "stitches", "stitch"]);
        if cursor.any(&["over first st", "over the first st", "over first", "over"]) {
            return Ok(Item::Work { takes: 0, leaves: -1, times: number, binds: false, at: start..cursor.at });
        }
        return Err(unread(cursor, start));
    }
    if let Some(row) = same_as(cursor)? {
        return Ok(Item::SameAs { row, at: start..cursor.at });
    }
    if let Some(item) = same_named(cursor) {
        return Ok(item);
    }
    if cursor.any(&["work", "patt", "pat", "cont", "continue", "rib"]) {
        return pattern(cursor, start);
    }
    if cursor.any(&["knit", "purl", "slip"]) {
        return plain(cursor, start);
    }
    Err(unread(cursor, start))
}

/// Moves past "join in the round" and "rejoin yarn", up to the next sign; returns whether such words stood here.
fn joins(cursor: &mut Cursor<'_>) -> bool {
    let start = cursor.at;
    if cursor.any(&["join", "rejoin", "attach"]) {
        let rest = cursor.rest();
        let words = rest.get(..rest.find([',', ';', '.', '[', '(', ']', ')', '*']).unwrap_or(rest.len())).unwrap_or("");
        if !works(&words.to_lowercase(), cursor.lexicon) && !names_stitches(&words.to_lowercase()) {
            cursor.at += words.len();
            return true;
        }
    }
    cursor.at = start;
    false
}

/// Each stitch as the last row has it, in words of its own.
const KNITS: [&str; 6] = [
    "knit the knits and purl the purls",
    "k the knits and p the purls",
    "k the k sts and p the p sts",
    "knit the knit sts and purl the purl sts",
    "knit the knit stitches and purl the purl stitches",
    "knit all knit sts and purl all purl sts",
];

/// Reads "inc in next st" and "inc 1 st in next st": an increase made of one stitch.
fn in_next(cursor: &mut Cursor<'_>) -> Result<Option<Counts>, Bad> {
    if !cursor.any(&["inc", "increase"]) {
        return Ok(None);
    }
    let one = cursor.number()?;
    cursor.any(&["st", "stitch"]);
    let single = one.is_none_or(|one| one.values.is_one() && one.of(0) == 1);
    let found = single && cursor.any(&["in", "into"]);
    cursor.any(&["the"]);
    let next = cursor.any(&["next", "first", "last", "following", "foll"]) && cursor.any(&["st", "stitch"]);
    Ok((found && next).then_some(Counts::new(1, 2)))
}

/// Moves past a wrap that is worked with its stitch: "knit wrap tog with st".
fn wrap(cursor: &mut Cursor<'_>) -> Result<Option<()>, Bad> {
    cursor.any(&["pick up", "lift"]);
    let verb = cursor.any(&["knit", "purl", "k", "p", "work"]);
    cursor.any(&["the", "its"]);
    // "Knit wrapped st together with its wrap"
    if verb && cursor.any(&["wrapped st", "wrapped stitch", "st", "stitch"]) {
        cursor.any(&["tog", "together"]);
        let with = cursor.any(&["with its", "with the", "with"]) && cursor.any(&["wrap", "wraps"]);
        return Ok(with.then_some(()));
    }
    if !cursor.any(&["wrap", "wraps"]) {
        return Ok(None);
    }
    let also =
        cursor.any(&["and knit it", "and purl it", "and knit", "and purl", "and k it", "and p it", "and work it"]);
    cursor.any(&["tog", "together"]);
    let with = cursor.any(&["with"]);
    cursor.any(&["the", "its", "their"]);
    cursor.any(&["wrapped", "next"]);
    Ok(((verb || also) && with && cursor.any(&["st", "stitch", "it"])).then_some(()))
}

/// Reads what is done with a marker.
fn marker(cursor: &mut Cursor<'_>, start: usize) -> Option<Item> {
    const WORDS: [(&[&str], Mark); 4] = [
        (&["pm", "place marker", "place m", "place a marker"], Mark::Place),
        (&["sl bor m", "sl bor", "slip bor marker", "slip bor m"], Mark::Slip),
        (&["sm", "slm", "sl m", "sl marker", "slip marker", "slip m"], Mark::Slip),
        (&["rm", "remove marker", "remove m", "rem m"], Mark::Remove),
    ];
    let mark = WORDS.iter().find(|(words, _)| cursor.any(words)).map(|(_, mark)| *mark)?;
    // "Sl marker B": which one, its letter says.
    let letter = cursor.word();
    if letter.len() == 1 && letter.starts_with(|c: char| c.is_ascii_uppercase()) {
        cursor.at += letter.len();
    }
    // Where the round begins there is a marker that nobody counts.
    let round =
        cursor.any(&["for bor", "for beg of rnd", "for beginning of round", "for end of rnd", "for beg of round"]);
    if !round && cursor.any(&["for"]) {
        // What it stands for is for the knitter alone: "pm for side".
        let rest = cursor.rest();
        cursor.at += rest.find([',', ';', '.', '[', '(', ']', ')', '*']).unwrap_or(rest.len());
    }
    let at = start..cursor.at;
    if round {
        let once = cursor.once();
        return Some(Item::Work { takes: 0, leaves: 0, times: once, binds: false, at });
    }
    Some(Item::Mark { mark, at })
}

/// What cannot be read here: a word nobody knows, or words up to the next comma.
pub(super) fn unread(cursor: &mut Cursor<'_>, start: usize) -> Bad {
    cursor.at = start;
    let word = cursor.word();
    let end = start + cursor.rest().find([',', ';', '.', ']', ')', '\n']).unwrap_or(cursor.rest().len());
    let alone = start + word.len() == end
        || cursor.text.get(start + word.len()..end).is_some_and(|rest| rest.trim().is_empty());
    if alone && !word.is_empty() && word.chars().count() <= 12 {
        return (Trouble::UnknownWord, start..start + word.len());
    }
    let least = cursor.rest().chars().next().map_or(0, char::len_utf8);
    (Trouble::Unread, start..end.max(start + least))
}
