//! Plain stitches, so many or so far: `k2`, `p to last 3 sts`, `work in rib to end`.

use super::super::super::colours::is_trade;
use super::super::super::tree::{Item, Until};
use super::super::cursor::{Bad, Cursor};
use super::super::effect::alters;
use super::super::named::name;
use super::super::plain::{is_quiet, tokens};
use super::super::until::until;
use super::times::{finish, finish_how, repeated};
use super::unread;

impl Cursor<'_> {
    /// Moves past a stitch's letters, if a number or no more of a word follows: the `k` of `k2` and of `k to end`.
    pub(super) fn eat_prefix(&mut self, letters: &str) -> bool {
        self.spaces();
        let rest = self.rest();
        let begins = rest.get(..letters.len()).is_some_and(|start| start.eq_ignore_ascii_case(letters));
        let next = rest.get(letters.len()..).and_then(|after| after.chars().next());
        let found = begins && next.is_none_or(|c| c.is_ascii_digit() || !c.is_alphanumeric());
        // `k2togg` is a word nobody knows, not two stitches and something.
        let digits = rest.get(letters.len()..).unwrap_or_default().trim_start_matches(|c: char| c.is_ascii_digit());
        let stitch = ["", "tbl", "wyif", "wyib", "wyf", "wyb", "k", "p"];
        let word: String = digits.chars().take_while(|c| c.is_alphanumeric()).collect();
        // `k3MC` has its colour written in one.
        let ends = next.is_none_or(|c| !c.is_ascii_digit())
            || stitch.iter().any(|end| word.eq_ignore_ascii_case(end))
            || is_trade(&word);
        if found && ends {
            self.at += letters.len();
        }
        found && ends
    }
}

/// Reads what follows `k`, `p` or `sl`: a number, how far, or nothing.
pub(super) fn plain(cursor: &mut Cursor<'_>, start: usize) -> Result<Item, Bad> {
    cursor.any(&["next"]);
    // "Slip first st"
    let before = cursor.at;
    if cursor.any(&["first", "last", "following", "foll"]) && !cursor.sees("st") && !cursor.sees("stitch") {
        cursor.at = before;
    } else if cursor.at > before {
        cursor.any(&["st", "stitch"]);
        let item = Item::Work { takes: 1, leaves: 1, times: cursor.once(), binds: false, at: start..cursor.at };
        return Ok(finish(cursor, item));
    }
    if let Some(number) = cursor.number()? {
        let mut item = Item::Work { takes: 1, leaves: 1, times: number, binds: false, at: start..cursor.at };
        // `sl1k` and `k1tbl` are written in one.
        if !cursor.rest().starts_with(char::is_whitespace) {
            cursor.any(&["k", "p"]);
        }
        // "Knit 1 row" is a row, and "k2 tog" with a space one stitch.
        if cursor.any(&["row", "rows", "rnd", "rnds", "round", "rounds"]) {
            return Ok(Item::Even { until: Until::End, binds: false, at: start..cursor.at });
        }
        let slips = cursor.text.get(start..).is_some_and(|text| text.starts_with(['s', 'S']));
        if cursor.any(&["tog", "together"])
            && !slips
            && let Item::Work { takes, times, .. } = &mut item
            && let Some(number) = times.values.get(0).copied().filter(|_| times.values.is_one())
        {
            *takes = number;
            times.values = crate::measure::SizeRun::one(1);
        }
        finish_how(cursor);
        if cursor.any(&["from cn", "from cable needle"])
            && let Item::Work { takes, leaves, .. } = &mut item
        {
            // The stitches left the needle when they were slipped aside.
            (*takes, *leaves) = (0, 0);
        }
        if cursor.any(&["backwards", "back"])
            && let Item::Work { takes, leaves, .. } = &mut item
        {
            // Worked from the right needle onto the left one.
            (*takes, *leaves) = (-1, -1);
        }
        cursor.any(&["to cn", "onto cn", "on cn", "to cable needle", "onto cable needle"]);
        let item = finish(cursor, item);
        return repeated(cursor, item);
    }
    finish_how(cursor);
    if let Some(until) = until(cursor)? {
        finish_how(cursor);
        return Ok(Item::Even { until, binds: false, at: start..cursor.at });
    }
    if cursor.any(&["the", "every", "each", "all"]) || cursor.eat("even") {
        let body = cursor.at;
        cursor.skip_sentence();
        // "Knit the next 3 sts, k2tog" says more than that all are knitted.
        if !is_quiet(cursor.text.get(body..cursor.at).unwrap_or_default(), cursor.lexicon) {
            return Err(unread(cursor, start));
        }
        return Ok(Item::Even { until: Until::End, binds: false, at: start..cursor.at });
    }
    if cursor.is_stop() || super::super::stated::is_here(cursor) {
        return Ok(Item::Even { until: Until::End, binds: false, at: start..cursor.at });
    }
    // A letter alone between others is one stitch: "[k, p] to end".
    if matches!(cursor.peek(), Some(',' | ';' | ']' | ')' | '*')) {
        return Ok(Item::Work { takes: 1, leaves: 1, times: cursor.once(), binds: false, at: start..cursor.at });
    }
    Err(unread(cursor, start))
}

/// Reads what follows "work" or "patt".
pub(super) fn pattern(cursor: &mut Cursor<'_>, start: usize) -> Result<Item, Bad> {
    if let Some(number) = cursor.number()? {
        let item = Item::Work { takes: 1, leaves: 1, times: number, binds: false, at: start..cursor.at };
        return Ok(finish(cursor, item));
    }
    let even = cursor.eat("even");
    while cursor.any(&[
        "in",
        "as",
        "patt",
        "pattern",
        "est",
        "established",
        "set",
        "rib",
        "st",
        "stitch",
        "stockinette",
        "garter",
        "seed",
        "moss",
        "straight",
        "reverse",
        "rev",
        "k1",
        "p1",
        "k2",
        "p2",
    ]) {}
    if let Some(until) = until(cursor)? {
        return Ok(Item::Even { until, binds: false, at: start..cursor.at });
    }
    if even {
        return Ok(Item::Even { until: Until::End, binds: false, at: start..cursor.at });
    }
    cursor.skip_sentence();
    let words = cursor.lexicon.without_colours(cursor.text.get(start..cursor.at).unwrap_or_default()).to_lowercase();
    let quiet = is_quiet(&words, cursor.lexicon);
    let as_before = ["patt", "est", "set"].iter().any(|word| words.contains(word)) && quiet;
    // "Work the sts as they appear" is one stitch of one.
    let as_seen = ["as they appear", "as they face you", "as you see them", "as they present themselves"];
    if as_seen.iter().any(|seen| words.contains(seen)) && !alters(&words) {
        return Ok(Item::Even { until: Until::End, binds: false, at: start..cursor.at });
    }
    // "Work in k2, p2 rib" is so many stitches again; "in pattern" is whatever the pattern is.
    let plain = ["rib", "ribbing", "stockinette", "garter", "seed", "moss"];
    let named = tokens(&words).any(|word| plain.contains(&word)) || words.contains("st st");
    if named && quiet && !as_before {
        return Ok(Item::Even { until: Until::End, binds: false, at: start..cursor.at });
    }
    Ok(Item::Unsaid { as_before, at: start..cursor.at })
}

/// Words before a row that this one is as.
const AS: [&str; 8] = ["as for", "as", "same as", "work as for", "work as", "rep", "repeat", "work"];

/// Reads "as dec row" and "work dec rnd"; nothing where that does not stand here.
pub(super) fn same_named(cursor: &mut Cursor<'_>) -> Option<Item> {
    let before = cursor.at;
    if cursor.any(&AS)
        && let Some((name, at)) = name(cursor)
        && !name.is_plain()
        && (cursor.is_stop() || super::super::stated::is_here(cursor))
    {
        return Some(Item::SameNamed { name, at });
    }
    cursor.at = before;
    None
}

/// Reads "as row 2"; nothing where that does not stand here.
pub(super) fn same_as(cursor: &mut Cursor<'_>) -> Result<Option<u32>, Bad> {
    let before = cursor.at;
    if cursor.any(&AS)
        && cursor.any(&["row", "rnd", "round"])
        && let Some(number) = cursor.number()?
        && let Some(row) = number.values.get(0).filter(|_| number.values.is_one())
        && let Ok(row) = u32::try_from(*row)
        && (cursor.is_stop() || super::super::stated::is_here(cursor))
    {
        return Ok(Some(row));
    }
    cursor.at = before;
    Ok(None)
}
