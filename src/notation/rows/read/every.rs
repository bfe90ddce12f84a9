//! When and how often something is worked again: `on next and every foll 4th row 5 times, then every alt row until 8 sts rem`.

use super::super::statement::{Again, Every, Spell};
use super::super::tree::Number;
use super::cursor::{Bad, Cursor};
use super::effect::works_here;
use super::place::{Place, place};
use super::until::{stitches_left, times};

/// The most spells of one sentence.
const MOST: usize = 12;

/// How one spell is joined to that before it.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Join {
    /// It is the first.
    None,
    /// By a comma or "and", so that what is said may be of both.
    And,
    /// By "then".
    Then,
}

/// Reads one spell after another; nothing where none stands here.
pub(super) fn spells(cursor: &mut Cursor<'_>) -> Result<Option<Vec<Spell>>, Bad> {
    let mut all: Vec<Spell> = Vec::new();
    // Whether the one before is a single row.
    let mut one = false;
    while let Some(read) = cursor.attempt(|cursor| {
        let join = join(cursor, all.is_empty());
        join.map_or(Ok(None), |join| spell(cursor, join, one))
    })? {
        let (spell, single) = read;
        one = single;
        let open = spell.again == Again::Unsaid;
        all.push(spell);
        if open || all.len() == MOST {
            break;
        }
    }
    Ok((!all.is_empty()).then_some(all))
}

/// Moves past the words between two spells; nothing where they do not go on.
fn join(cursor: &mut Cursor<'_>, first: bool) -> Option<Join> {
    if first {
        return Some(Join::None);
    }
    let comma = cursor.sign(',') || cursor.sign(';');
    if cursor.any(&["and then", "then"]) {
        return Some(Join::Then);
    }
    (cursor.eat("and") || comma).then_some(Join::And)
}

/// Reads one spell, and whether it is a single row.
fn spell(cursor: &mut Cursor<'_>, join: Join, after_one: bool) -> Result<Option<(Spell, bool)>, Bad> {
    if let Some((number, said)) = often(cursor)? {
        let place = cursor.attempt(|cursor| {
            cursor.sign(',');
            let place = place(cursor)?.filter(|place| place.times.is_none() && !place.one);
            // "3 times, then every 4th row 5 times" goes on with a spell of its own.
            let end = cursor.at;
            let goes_on = often(cursor)?.is_some() || until(cursor)?.is_some();
            cursor.at = end;
            Ok(place.filter(|_| !goes_on))
        })?;
        let every = place.map_or(Every::Row, |place| place.every);
        return Ok(Some((Spell { every, again: meant(number, said, join, after_one) }, false)));
    }
    let Some(Place { every, times, one }) = place(cursor)? else {
        return Ok(until(cursor)?.map(|again| (Spell { every: Every::Row, again }, false)));
    };
    let again = if let Some(times) = times {
        Again::More(times)
    } else if let Some((number, said)) = often_behind(cursor)? {
        return Ok(Some((Spell { every, again: meant(number, said, join, after_one) }, false)));
    } else if let Some(again) = until(cursor)? {
        again
    } else if one {
        Again::More(cursor.once())
    } else if cursor.is_stop() || super::stated::is_here(cursor) {
        Again::Unsaid
    } else {
        return Ok(None);
    };
    Ok(Some((Spell { every, again }, one)))
}

/// What is said of how often.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Said {
    Times,
    More,
    InAll,
}

/// Reads how often: `5 times`, `5 times more`, `a total of 5 times`.
fn often(cursor: &mut Cursor<'_>) -> Result<Option<(Number, Said)>, Bad> {
    cursor.attempt(|cursor| {
        let start = cursor.at;
        let more = cursor.any(&["another", "a further", "for another", "for a further"]);
        cursor.any(&["for a total of", "a total of", "a total", "for"]);
        let Some((number, again)) = times(cursor)? else { return Ok(None) };
        let words = cursor.text.get(start..cursor.at).unwrap_or_default().to_lowercase();
        let all = ["total", " all", "altogether"].iter().any(|word| words.contains(word));
        Ok(Some((
            number,
            if more || again {
                Said::More
            } else if all {
                Said::InAll
            } else {
                Said::Times
            },
        )))
    })
}

/// Reads how often behind in which rows: `every 8th rnd, 5 times`.
fn often_behind(cursor: &mut Cursor<'_>) -> Result<Option<(Number, Said)>, Bad> {
    cursor.attempt(|cursor| {
        cursor.sign(',');
        often(cursor)
    })
}

/// What so many times mean: on "next and every foll 4th row 5 times" the next row may be the first of them.
fn meant(number: Number, said: Said, join: Join, after_one: bool) -> Again {
    match (said, join) {
        (Said::More, _) | (_, Join::Then) => Again::More(number),
        (Said::InAll, Join::None) => Again::Either(number),
        (Said::Times, Join::None) => Again::Times(number),
        (_, Join::And) if after_one => Again::Either(number),
        (_, Join::And) => Again::More(number),
    }
}

/// Reads "until 8 sts rem", "until 60 sts", "until it is long enough".
fn until(cursor: &mut Cursor<'_>) -> Result<Option<Again>, Bad> {
    cursor.attempt(|cursor| {
        if !cursor.any(&["until", "to", "for"]) {
            return Ok(None);
        }
        let start = cursor.at;
        let mut number = stitches_left(cursor)?;
        if number.is_none() {
            number = cursor.number()?.filter(|_| cursor.any(&["sts", "st", "stitches", "stitch"]));
        }
        if let Some(number) = number {
            let joined = matches!(cursor.peek(), Some(',' | ';')) || cursor.sees("and") || cursor.sees("then");
            let ends = cursor.is_stop() || super::stated::is_here(cursor) || joined;
            return Ok(ends.then_some(Again::UntilStitches(number)));
        }
        cursor.skip_sentence();
        let words = cursor.text.get(start..cursor.at).unwrap_or_default();
        Ok((!words.trim().is_empty() && !works_here(words, cursor.lexicon)).then_some(Again::Unsaid))
    })
}
