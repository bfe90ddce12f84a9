//! Stitches that are cast on or picked up as a beginning: `Cast on 48 (56, 64) sts`.

use super::super::tree::Number;
use super::cursor::{Bad, Cursor};
use super::plain::tokens;
use super::put_aside::names_stitches;
use super::special::{is_stitch, works_here};
use crate::measure::SizeRun;

/// Reads "Cast on 48 (56, 64) sts" and the like, to the end of the sentence.
pub(super) fn cast_on(cursor: &mut Cursor<'_>) -> Result<Option<Number>, Bad> {
    const BEGIN: [&str; 7] =
        ["cast on", "co", "pick up and knit", "pick up and purl", "pick up and k", "pick up and p", "pick up"];
    if cursor.any(&["with", "using", "on", "rs facing", "ws facing"]) {
        // Needles, yarn, method and side stand before it, with commas.
        loop {
            let rest = cursor.rest();
            let comma = rest.find(',').filter(|comma| !rest.get(..*comma).unwrap_or_default().contains(". "));
            let Some(comma) = comma else { return Ok(None) };
            // "With RS facing, k across 40 held sts, pick up and knit 8 sts" is a row.
            let before = rest.get(..comma).unwrap_or_default().to_lowercase();
            let works =
                |word: &str| matches!(word, "k" | "p" | "knit" | "purl" | "work") || is_stitch(word, cursor.lexicon);
            if tokens(&before).next().is_some_and(works) {
                return Ok(None);
            }
            cursor.at += comma + 1;
            cursor.any(&["loosely", "provisionally"]);
            if BEGIN.iter().any(|words| cursor.sees(words)) {
                break;
            }
        }
    }
    cursor.any(&["loosely", "provisionally"]);
    if !cursor.any(&BEGIN) {
        return Ok(None);
    }
    let Some(number) = cursor.number()? else { return Ok(None) };
    if !cursor.any(&["sts", "st", "stitches"]) || cursor.sees("at") || cursor.sees("for") {
        return Ok(None);
    }
    // Stitches that are cast on past a marker, or picked up along another edge, join the others; of more than that nobody can
    // be sure.
    let mut all = number;
    loop {
        along(cursor);
        let before = cursor.at;
        while cursor.sign(',')
            || cursor.sign(';')
            || cursor.any(&["pm", "place marker", "place a marker", "and", "then"])
        {}
        let begins = cursor.any(&BEGIN);
        let more = cursor.number()?.filter(|_| cursor.any(&["sts", "st", "stitches"]));
        match more {
            Some(more) if begins || EDGES.iter().any(|words| cursor.sees(words)) => all = together(&all, &more),
            None if begins => return Ok(None),
            _ => {
                cursor.at = before;
                break;
            }
        }
    }
    // "CO 8 sts, k to end" is a row; "Cast on 8 sts, join" is a beginning.
    let start = cursor.at;
    cursor.skip_sentence();
    let rest = cursor.text.get(start..cursor.at).unwrap_or_default().to_lowercase();
    let after = rest.trim_start_matches([',', ';', ' ']);
    let works = after.get(..2).is_some_and(|two| two.starts_with(['k', 'p']) && !two.ends_with(char::is_alphabetic));
    let verb = after.split(' ').next().is_some_and(|word| matches!(word, "knit" | "purl" | "work" | "k" | "p"));
    let on = verb && ["to end", "to last", "across", "to m", "rem"].iter().any(|words| after.contains(words));
    if works
        || on
        || names_stitches(&rest)
        || BEGIN.iter().any(|words| after.contains(&format!("{words} ")) && works_here(after, cursor.lexicon))
    {
        return Ok(None);
    }
    Ok(Some(all))
}

/// Words between stitches that are picked up and the edge they come from.
const EDGES: [&str; 10] = ["evenly", "along", "across", "from", "down", "up", "around", "over", "at the", "in the"];

/// Moves past the edge that stitches are picked up from.
fn along(cursor: &mut Cursor<'_>) {
    if cursor.any(&EDGES) {
        let rest = cursor.rest();
        cursor.at += rest.find([',', ';', '.', '[', '(']).unwrap_or(rest.len());
        // "Along the left edge and 12 sts from the next".
        cursor.spaces();
    }
}

/// The sum of two numbers, size by size.
fn together(one: &Number, two: &Number) -> Number {
    let at = one.at.start..two.at.end;
    if one.values.is_one() && two.values.is_one() {
        return Number { values: SizeRun::one(one.of(0).saturating_add(two.of(0))), at };
    }
    let sizes = one.values.len().max(two.values.len());
    let values = (0..sizes).map(|size| Some(one.of(size).saturating_add(two.of(size)))).collect();
    Number { values: SizeRun::from_values(values), at }
}
