//! Stitches that are put aside: `Place the next 20 sts on hold`.

use super::super::statement::{Doing, PutAside};
use super::cursor::{Bad, Cursor};
use super::effect::{names_stitches, works};
use super::op::{kind, which};
use super::part::part;
use super::plain::tokens;

/// Words of which one says that stitches wait, and are not only moved along.
const HOLDS: [&str; 14] = [
    "hold", "holder", "holders", "waste", "scrap", "thread", "pin", "pins", "safety", "spare", "yarn", "cord",
    "string", "extra",
];

/// Reads such a sentence; nothing where none stands here, or where it works stitches too.
pub(super) fn put_aside(cursor: &mut Cursor<'_>) -> Result<Option<Doing>, Bad> {
    if !cursor.any(&["place", "slip", "sl", "put", "transfer", "move", "leave", "leaving"]) {
        return Ok(None);
    }
    let begun = cursor.at;
    let rest = which(cursor);
    let all = rest || tokens(cursor.text.get(begun..cursor.at).unwrap_or_default()).any(|word| word == "all");
    let number = cursor.number()?;
    let rest = which(cursor) || rest;
    let of = kind(cursor);
    // "Leave sts on a holder" is of all there are, if no row left some unworked.
    let bare = number.is_none() && !all && of.is_none();
    if !cursor.any(&["sts", "st", "stitches"]) {
        return Ok(None);
    }
    let start = cursor.at;
    cursor.skip_sentence();
    let end = cursor.at;
    // Every byte stays where it is, as a place in these words is one in the text.
    let words = cursor.text.get(start..cursor.at).unwrap_or_default().to_ascii_lowercase();
    let ends = [",", ";", " and ", " then "].iter().filter_map(|end| words.find(end)).min().unwrap_or(words.len());
    let (to, more) = words.split_at(ends);
    let waits = tokens(to).any(|word| HOLDS.contains(&word));
    if bare && !waits {
        return Ok(None);
    }
    if number.is_none() && !all && !bare && waits {
        // How many a piece has, the words do not tell.
        return Ok(Some(Doing::Unsaid));
    }
    // Stitches that are left unworked are still on the needle, whatever else is said of them.
    if tokens(to).any(|word| word == "unworked")
        || works(more, cursor.lexicon)
        || !tokens(to).any(|word| matches!(word, "on" | "onto" | "to"))
    {
        return Ok(None);
    }
    if !waits {
        let moved = tokens(to).any(|word| matches!(word, "needle" | "needles" | "dpn" | "dpns" | "circular" | "cable"));
        return Ok(moved.then_some(Doing::Aside));
    }
    // What is said of other stitches afterwards is not read, except how many are left.
    let left = ["rem", "leaving", "left"].iter().any(|word| more.contains(word));
    if names_stitches(more) && !left {
        return Ok(Some(Doing::Unsaid));
    }
    // "On hold for left sleeve".
    let mut of = of;
    if let Some(at) = to.find(" for ") {
        cursor.at = start + at + " for ".len();
        of = part(cursor).or(of);
        cursor.at = end;
    }
    Ok(Some(Doing::PutAside(PutAside { number, rest, bare, of })))
}
