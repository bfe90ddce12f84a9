//! Colours that are named: behind a stitch, before what is worked in them, and where a yarn is joined or left.

use super::super::tree::Item;
use super::cursor::{Bad, Cursor};

/// Words by which a yarn comes to hand.
const JOIN: [&str; 7] = ["join", "rejoin", "attach", "change to", "switch to", "pick up", "join in"];

/// Words by which it is left.
const LEAVE: [&str; 5] = ["drop", "break", "break off", "cut", "fasten off"];

/// Yarn of which no colour is told.
const YARN: [&str; 9] = [
    "a second ball of yarn",
    "second ball of yarn",
    "another ball of yarn",
    "a new ball of yarn",
    "a second ball",
    "new yarn",
    "working yarn",
    "the yarn",
    "yarn",
];

/// Words before a colour.
const BEFORE: [&str; 3] = ["in", "with", "using"];

/// Words that say that several strands are one.
const TOGETHER: [&str; 5] = ["held together", "held tog", "held double", "together", "tog"];

/// Reads the name of a colour, with the word that may stand before it or in brackets; returns its label.
pub(super) fn colour(cursor: &mut Cursor<'_>) -> Option<String> {
    let before = cursor.at;
    let bracket = cursor.sign('(');
    let mut said = cursor.any(&BEFORE);
    if said {
        cursor.any(&["the"]);
    }
    if said || bracket {
        said |= cursor.any(&["colour", "color", "yarn"]);
    }
    cursor.spaces();
    let found = cursor.lexicon.colour_at(cursor.rest(), said);
    cursor.at = found.map_or(before, |(length, ..)| cursor.at + length);
    if bracket && found.is_some() && !cursor.sign(')') {
        cursor.at = before;
        return None;
    }
    found.map(|(_, label, _)| label.to_owned())
}

/// Reads the colour that what follows is worked in: `with MC`, `with A and B held together`, `join CC`, `break MC and join CC`.
/// None is known where several are held, or one is left.
pub(super) fn before_stitches(cursor: &mut Cursor<'_>) -> Option<Item> {
    cursor.spaces();
    let start = cursor.at;
    let joins = cursor.any(&JOIN);
    let leaves = !joins && cursor.any(&LEAVE);
    // An abbreviation of the pattern's own goes first.
    if (joins || leaves) && cursor.text.get(start..cursor.end).is_some_and(|rest| cursor.lexicon.own_at(rest).is_some())
    {
        cursor.at = start;
        return None;
    }
    if (joins || leaves) && cursor.any(&YARN) {
        return Some(Item::Colour { label: None, at: start..cursor.at });
    }
    // A letter alone among stitches is a colour only where the pattern has such a one: it may be its bobble.
    let said = joins || leaves || BEFORE.iter().any(|word| cursor.sees(word));
    cursor.spaces();
    let found = cursor.lexicon.colour_at(cursor.rest(), said);
    if !said && found.is_some_and(|(length, _, own)| !own && length == 1) {
        cursor.at = start;
        return None;
    }
    let Some(first) = colour(cursor) else {
        cursor.at = start;
        return None;
    };
    let mut label = Some(first).filter(|_| !leaves);
    loop {
        let before = cursor.at;
        if !((cursor.any(&["and"]) || cursor.sign('&')) && colour(cursor).is_some()) {
            cursor.at = before;
            break;
        }
        label = None;
    }
    if cursor.any(&TOGETHER) {
        label = None;
    }
    cursor.any(&["only", "alone"]);
    Some(Item::Colour { label, at: start..cursor.at })
}

/// Reads the colour that everything repeated is worked in: `[k1, yo] 3 times in MC`.
pub(super) fn of_all(cursor: &mut Cursor<'_>, mut inside: Vec<Item>) -> Vec<Item> {
    let start = cursor.at;
    if let Some(label) = colour(cursor) {
        let at = start..cursor.at;
        inside.insert(0, Item::Colour { label: Some(label), at: at.clone() });
        inside.push(Item::Colour { label: None, at });
    }
    inside
}

/// Reads "3 CC" among stitches: so many in that colour, however they are worked.
pub(super) fn so_many(cursor: &mut Cursor<'_>, start: usize) -> Result<Option<Item>, Bad> {
    if !cursor.peek().is_some_and(|c| c.is_ascii_digit()) {
        return Ok(None);
    }
    cursor.attempt(|cursor| {
        let Some(times) = cursor.number()? else { return Ok(None) };
        cursor.any(&["sts", "st"]);
        let ends = colour(cursor).is_some()
            && (cursor.is_stop() || matches!(cursor.peek(), Some(',' | ';' | ')' | ']' | '}' | '*')));
        let at = start..cursor.at;
        Ok(ends.then_some(Item::Work { takes: 1, leaves: 1, times, binds: false, at }))
    })
}
