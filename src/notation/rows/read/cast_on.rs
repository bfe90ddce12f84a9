//! Stitches that are cast on or picked up as a beginning: `Cast on 48 (56, 64) sts`.

use super::super::statement::Doing;
use super::super::tree::Number;
use super::cursor::{Bad, Cursor};
use super::effect::{is_stitch, names_stitches, works_here};
use super::plain::tokens;
use crate::measure::SizeRun;

const PICK_UP: [&str; 5] = ["pick up and knit", "pick up and purl", "pick up and k", "pick up and p", "pick up"];
const CAST_ON: [&str; 2] = ["cast on", "co"];
pub(super) const STITCHES: [&str; 3] = ["sts", "st", "stitches"];

/// Moves past words that begin; returns whether they pick up.
fn begin(cursor: &mut Cursor<'_>) -> Option<bool> {
    cursor.any(&["loosely", "provisionally"]);
    if cursor.any(&CAST_ON) { Some(false) } else { cursor.any(&PICK_UP).then_some(true) }
}

fn sees_begin(cursor: &mut Cursor<'_>) -> bool {
    PICK_UP.iter().chain(&CAST_ON).any(|words| cursor.sees(words))
}

/// Reads "Cast on 48 (56, 64) sts" and the like, to the end of the sentence.
pub(super) fn cast_on(cursor: &mut Cursor<'_>) -> Result<Option<Doing>, Bad> {
    let led = match led(cursor) {
        Some(led) => led,
        None => return Ok(None),
    };
    let before = cursor.at;
    let Some(first) = first(cursor, led)? else {
        cursor.at = before;
        return Ok(None);
    };
    let (mut all, picks) = (first.number, first.picks);
    let mut sure = match each(cursor)? {
        Each::One => true,
        Each::Of(needles) => {
            all = times(&all, &needles);
            true
        }
        Each::Unsaid => false,
    };
    // Stitches that are cast on past a marker, or picked up along another edge, join the others; of more than that nobody can
    // be sure.
    loop {
        sure &= !along(cursor);
        let before = cursor.at;
        while cursor.sign(',')
            || cursor.sign(';')
            || cursor.any(&["pm", "place marker", "place a marker", "and", "then"])
        {}
        let begins = begin(cursor).is_some();
        let more = cursor.number()?;
        let counted = more.is_some() && cursor.any(&STITCHES);
        let edge = EDGES.iter().any(|words| cursor.sees(words));
        match more {
            // "20 sts, 14 sts and 32 sts" are edge after edge, which the piece itself shows.
            Some(more) if counted && (begins || picks && goes_on(cursor)) || edge => all = together(&all, &more),
            _ if begins && !counted => return Ok(None),
            _ => {
                cursor.at = before;
                break;
            }
        }
    }
    Ok(ends(cursor).then_some(match (sure, picks) {
        (false, _) => Doing::Unsaid,
        (true, true) => Doing::PickUp(all),
        (true, false) => Doing::CastOn(all),
    }))
}

/// Whether another number follows in a list, or it ends here.
fn goes_on(cursor: &mut Cursor<'_>) -> bool {
    cursor.is_stop() || cursor.peek() == Some(',') || cursor.sees("and") || super::stated::is_here(cursor)
}

/// Moves past needles, yarn, method and side, which stand before with commas; returns whether some did, and nothing where what
/// follows is another sentence.
fn led(cursor: &mut Cursor<'_>) -> Option<bool> {
    let leads = ["with", "using", "on", "rs facing", "ws facing", "beg", "beginning", "starting"];
    if !cursor.any(&leads) {
        return Some(false);
    }
    loop {
        let rest = cursor.rest();
        let comma = rest.find(',').filter(|comma| !rest.get(..*comma).unwrap_or_default().contains(". "))?;
        // "With RS facing, k across 40 held sts, pick up and knit 8 sts" is a row.
        let before = rest.get(..comma).unwrap_or_default().to_lowercase();
        let works =
            |word: &str| matches!(word, "k" | "p" | "knit" | "purl" | "work") || is_stitch(word, cursor.lexicon);
        if tokens(&before).next().is_some_and(works) {
            return None;
        }
        cursor.at += comma + 1;
        cursor.any(&["loosely", "provisionally"]);
        if sees_begin(cursor) {
            return Some(true);
        }
    }
}

/// What is cast on or picked up first.
struct First {
    number: Number,
    picks: bool,
}

/// Reads "CO 24 sts", "Cast 24 sts on to"; nothing where neither stands here, or where it is of a place in the row. Behind words
/// for needles or a method "CO 24" is enough.
fn first(cursor: &mut Cursor<'_>, led: bool) -> Result<Option<First>, Bad> {
    let picks = begin(cursor);
    if picks.is_none() && !cursor.eat("cast") {
        return Ok(None);
    }
    let Some(number) = cursor.number()? else { return Ok(None) };
    let counted = cursor.any(&STITCHES);
    let on = picks.is_some() || cursor.any(&["on to", "onto", "on"]);
    let bare = led && cursor.is_stop();
    if !on || !(counted || bare) || cursor.sees("at") || cursor.sees("for") {
        return Ok(None);
    }
    Ok(Some(First { number, picks: picks.unwrap_or(false) }))
}

/// On how many needles so many stitches are cast on each.
enum Each {
    /// All are on one, or the words say nothing of it.
    One,
    Of(Number),
    /// The words do not tell.
    Unsaid,
}

fn each(cursor: &mut Cursor<'_>) -> Result<Each, Bad> {
    let before = cursor.at;
    if cursor.any(&["on each of", "onto each of", "on to each of"]) {
        cursor.any(&["the"]);
        if let Some(number) = cursor.number()?
            && cursor.any(&["double-pointed", "dpns", "needles", "needle"])
        {
            return Ok(Each::Of(number));
        }
        return Ok(Each::Unsaid);
    }
    cursor.at = before;
    Ok(if cursor.any(&["on each", "onto each", "on to each", "per", "each"]) { Each::Unsaid } else { Each::One })
}

/// Moves past the rest of the sentence; returns whether it works no stitch. "CO 8 sts, k to end" is a row; "Cast on 8 sts, join"
/// is a beginning.
fn ends(cursor: &mut Cursor<'_>) -> bool {
    let start = cursor.at;
    loop {
        cursor.skip_sentence();
        // "(12 sts on each needle)" says where they are.
        let rest = cursor.rest();
        let inside = rest.get(1..rest.find([')', ']']).unwrap_or(0)).unwrap_or_default();
        if !tokens(inside).any(|word| matches!(word, "each" | "per")) {
            break;
        }
        cursor.at += inside.len() + 2;
    }
    let rest = cursor.text.get(start..cursor.at).unwrap_or_default().to_lowercase();
    let mut after = rest.trim_start_matches([',', ';', ':', ' ']);
    for word in ["then ", "and "] {
        after = after.strip_prefix(word).unwrap_or(after);
    }
    let works = after.get(..2).is_some_and(|two| two.starts_with(['k', 'p']) && !two.ends_with(char::is_alphabetic));
    let verb = after.split(' ').next().is_some_and(|word| matches!(word, "knit" | "purl" | "work" | "k" | "p"));
    let on = verb && ["to end", "to last", "across", "to m", "rem"].iter().any(|words| after.contains(words));
    let divided = tokens(&rest).any(|word| matches!(word, "each" | "per")) && !works_here(&rest, cursor.lexicon);
    let begins = PICK_UP.iter().chain(&CAST_ON).any(|words| after.contains(&format!("{words} ")));
    !(works || on || (names_stitches(&rest) && !divided) || (begins && works_here(after, cursor.lexicon)))
}

/// Words between stitches that are picked up and the edge they come from.
pub(super) const EDGES: [&str; 10] =
    ["evenly", "along", "across", "from", "down", "up", "around", "over", "at the", "in the"];

/// Moves past the edge that stitches are picked up from; returns whether it is one of several that have as many.
fn along(cursor: &mut Cursor<'_>) -> bool {
    let start = cursor.at;
    if !cursor.any(&EDGES) {
        return false;
    }
    past_edge(cursor);
    let words = cursor.text.get(start..cursor.at).unwrap_or_default();
    // "One in each row" says how.
    tokens(words).any(|word| matches!(word, "both" | "each")) && !tokens(words).any(|word| matches!(word, "row" | "st"))
}

/// Moves past words for an edge, up to the next sign or to what more there is: "along the left edge and 12 sts from the next",
/// but not "between the front and back".
pub(super) fn past_edge(cursor: &mut Cursor<'_>) {
    let rest = cursor.rest();
    let end = rest.find([',', ';', '.', '[', '(']).unwrap_or(rest.len());
    let words = rest.get(..end).unwrap_or_default();
    let joins = |at: &usize| {
        let behind = words.get(at + " and ".len()..).unwrap_or_default();
        // "Along the side of the flap and k10".
        let stitch = behind.strip_prefix(['k', 'p', 'K', 'P']).unwrap_or(behind);
        stitch.starts_with(|c: char| c.is_ascii_digit())
            || ["pick up", "then ", "k to ", "p to ", "knit to ", "purl to "]
                .iter()
                .any(|verb| behind.starts_with(verb))
    };
    cursor.at += words.match_indices(" and ").map(|(at, _)| at).find(joins).unwrap_or(end);
    cursor.spaces();
}

/// The sum of two numbers, size by size.
fn together(one: &Number, two: &Number) -> Number {
    combined(one, two, i64::saturating_add)
}

/// The product of two numbers, size by size.
fn times(one: &Number, two: &Number) -> Number {
    combined(one, two, i64::saturating_mul)
}

fn combined(one: &Number, two: &Number, combine: fn(i64, i64) -> i64) -> Number {
    let at = one.at.start..two.at.end;
    if one.values.is_one() && two.values.is_one() {
        return Number { values: SizeRun::one(combine(one.of(0), two.of(0))), at };
    }
    let sizes = one.values.len().max(two.values.len());
    let values = (0..sizes).map(|size| Some(combine(one.of(size), two.of(size)))).collect();
    Number { values: SizeRun::from_values(values), at }
}
