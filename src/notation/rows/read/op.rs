//! One stitch or one instruction.

use super::super::lexicon::Counts;
use super::super::tree::{How, Item, Trouble, Until};
use super::cursor::{Bad, Cursor};
use super::until::{times, until};

/// Words behind a stitch that say how it is worked and change no count.
const HOW: [&str; 44] = [
    "tbl",
    "wyif",
    "wyib",
    "wyf",
    "wyb",
    "kwise",
    "pwise",
    "knitwise",
    "purlwise",
    "sts",
    "st",
    "stitches",
    "stitch",
    "through the back loop",
    "through back loop",
    "through the back loops",
    "through back loops",
    "as if to knit",
    "as if to purl",
    "with yarn in front",
    "with yarn in back",
    "wrapping yarn twice",
    "wrapping twice",
    "and hold in front",
    "and hold in back",
    "hold in front",
    "hold in back",
    "hold to front",
    "hold to back",
    "hold at front",
    "hold at back",
    "tightly",
    "loosely",
    "in patt",
    "in pattern",
    "in rib",
    "as established",
    "as set",
    "together",
    "for underarm",
    "for the underarm",
    "for neck",
    "for thumb",
    "one at a time",
];

const NOTHING: Counts = Counts::new(0, 0);

/// Reads one instruction.
pub(super) fn op(cursor: &mut Cursor<'_>) -> Result<Item, Bad> {
    cursor.spaces();
    let start = cursor.at;
    if let Some((length, counts)) = cursor.lexicon.own_at(cursor.rest()) {
        cursor.at += length;
        return work(cursor, start, counts, false);
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
    if cursor.any(&["pm", "sm", "rm", "place marker", "slip marker", "remove marker", "place m", "slip m", "remove m"])
    {
        cursor.any(&["for bor", "for beg of rnd", "for beginning of round", "for end of rnd"]);
        return work(cursor, start, NOTHING, false);
    }
    if cursor.any(&["w&t", "wrap and turn", "wrap next st and turn", "turn work", "turn"]) {
        return Ok(Item::Turn { at: start..cursor.at });
    }
    if cursor.any(&["bo", "bind off", "cast off"]) {
        return bind_off(cursor, start);
    }
    if cursor.any(&["co", "cast on", "pick up and knit", "pick up and purl", "pu"]) {
        let number = cursor.number()?.ok_or((Trouble::Unread, start..cursor.at))?;
        let item = Item::Work { takes: 0, leaves: 1, times: number, binds: false, at: start..cursor.at };
        let item = finish(cursor, item);
        // Where they are picked up, or how they are cast on, is for the knitter alone.
        if cursor.any(&["along", "from", "around", "using", "with"]) {
            let rest = cursor.rest();
            cursor.at += rest.find([',', ';', '.', '[', '(']).unwrap_or(rest.len());
        }
        return in_next_rows(cursor, item);
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
    if cursor.any(&["place next", "put next", "slip next", "place", "put"]) {
        if let Some(number) = cursor.number()?
            && cursor.any(&["sts", "st"])
            && cursor.any(&["on a", "onto a", "on", "onto"])
            && cursor.any(&["hold", "holder", "st holder", "stitch holder", "waste yarn", "scrap yarn"])
        {
            return Ok(Item::Work { takes: 1, leaves: 0, times: number, binds: false, at: start..cursor.at });
        }
        return Err(unread(cursor, start));
    }
    if let Some(row) = same_as(cursor)? {
        return Ok(Item::SameAs { row, at: start..cursor.at });
    }
    if cursor.any(&["work", "patt", "pat", "cont", "continue", "rib"]) {
        return pattern(cursor, start);
    }
    if cursor.any(&["knit", "purl", "slip"]) {
        return plain(cursor, start);
    }
    Err(unread(cursor, start))
}

impl Cursor<'_> {
    /// Moves past a stitch's letters, if a number or no more of a word follows: the `k` of `k2` and of `k to end`.
    fn eat_prefix(&mut self, letters: &str) -> bool {
        self.spaces();
        let rest = self.rest();
        let begins = rest.get(..letters.len()).is_some_and(|start| start.eq_ignore_ascii_case(letters));
        let next = rest.get(letters.len()..).and_then(|after| after.chars().next());
        let found = begins && next.is_none_or(|c| c.is_ascii_digit() || !c.is_alphanumeric());
        // `k2togg` is a word nobody knows, not two stitches and something.
        let digits = rest.get(letters.len()..).unwrap_or_default().trim_start_matches(|c: char| c.is_ascii_digit());
        let stitch = ["", "tbl", "wyif", "wyib", "wyf", "wyb", "k", "p"];
        let word: String = digits.chars().take_while(|c| c.is_alphanumeric()).collect();
        let ends = next.is_none_or(|c| !c.is_ascii_digit()) || stitch.iter().any(|end| word.eq_ignore_ascii_case(end));
        if found && ends {
            self.at += letters.len();
        }
        found && ends
    }
}

/// Reads what follows `k`, `p` or `sl`: a number, how far, or nothing.
fn plain(cursor: &mut Cursor<'_>, start: usize) -> Result<Item, Bad> {
    cursor.any(&["next"]);
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
        cursor.skip_sentence();
        return Ok(Item::Even { until: Until::End, binds: false, at: start..cursor.at });
    }
    if cursor.is_stop() || super::stated::is_here(cursor) {
        return Ok(Item::Even { until: Until::End, binds: false, at: start..cursor.at });
    }
    // A letter alone between others is one stitch: "[k, p] to end".
    if matches!(cursor.peek(), Some(',' | ';' | ']' | ')' | '*')) {
        return Ok(Item::Work { takes: 1, leaves: 1, times: cursor.once(), binds: false, at: start..cursor.at });
    }
    Err(unread(cursor, start))
}

/// Reads what follows "work" or "patt".
fn pattern(cursor: &mut Cursor<'_>, start: usize) -> Result<Item, Bad> {
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
    let words = cursor.text.get(start..cursor.at).unwrap_or_default().to_lowercase();
    let as_before = ["patt", "est", "set"].iter().any(|word| words.contains(word)) && !words.contains("chart");
    Ok(Item::Unsaid { as_before, at: start..cursor.at })
}

fn bind_off(cursor: &mut Cursor<'_>, start: usize) -> Result<Item, Bad> {
    finish_how(cursor);
    cursor.any(&["next"]);
    if let Some(number) = cursor.number()? {
        let item = Item::Work { takes: 1, leaves: 0, times: number, binds: true, at: start..cursor.at };
        let item = finish(cursor, item);
        return in_next_rows(cursor, item);
    }
    let until = until(cursor)?.unwrap_or(Until::End);
    finish_how(cursor);
    if until == Until::End {
        cursor.skip_sentence();
    }
    Ok(Item::Even { until, binds: true, at: start..cursor.at })
}

/// Reads "at beg of next 2 rows" behind what is cast on or bound off: so many rows, each worked to its end.
fn in_next_rows(cursor: &mut Cursor<'_>, item: Item) -> Result<Item, Bad> {
    let before = cursor.at;
    let start = item.at().start;
    cursor.any(&["at the", "at"]);
    if cursor.any(&["beg of", "beginning of", "start of", "end of"]) {
        cursor.any(&["the", "this"]);
        cursor.any(&["next", "foll", "following"]);
        let rows = cursor.number()?.unwrap_or_else(|| cursor.once());
        if cursor.any(&["rows", "row", "rnds", "rnd", "rounds", "round"]) {
            let at = start..cursor.at;
            let edges = Item::Repeat { items: vec![item], how: How::Times(rows), at: at.clone() };
            let rest = Item::Even { until: Until::End, binds: false, at: at.clone() };
            return Ok(Item::Repeat { items: vec![edges, rest], how: How::Times(cursor.once()), at });
        }
    }
    cursor.at = before;
    Ok(item)
}

/// Reads what stands behind a stitch, and how often it is worked.
fn work(cursor: &mut Cursor<'_>, start: usize, counts: Counts, binds: bool) -> Result<Item, Bad> {
    let once = cursor.once();
    let item = Item::Work { takes: counts.takes, leaves: counts.leaves, times: once, binds, at: start..cursor.at };
    finish_how(cursor);
    if counts != NOTHING {
        super::items::into(cursor)?;
    }
    let item = finish(cursor, item);
    repeated(cursor, item)
}

/// Reads "3 times" behind a stitch.
fn repeated(cursor: &mut Cursor<'_>, item: Item) -> Result<Item, Bad> {
    let start = item.at().start;
    let Some((number, _)) = times(cursor)? else { return Ok(item) };
    match item {
        Item::Work { takes, leaves, times, binds, .. } if times.values.get(0) == Some(&1) && times.values.is_one() => {
            Ok(Item::Work { takes, leaves, times: number, binds, at: start..cursor.at })
        }
        other => Ok(Item::Repeat { items: vec![other], how: How::Times(number), at: start..cursor.at }),
    }
}

fn finish(cursor: &mut Cursor<'_>, item: Item) -> Item {
    finish_how(cursor);
    let end = cursor.at;
    match item {
        Item::Work { takes, leaves, times, binds, at } => Item::Work { takes, leaves, times, binds, at: at.start..end },
        other => other,
    }
}

/// Moves past the words that say how a stitch is worked, and in which colour.
fn finish_how(cursor: &mut Cursor<'_>) {
    loop {
        if cursor.any(&HOW) {
            continue;
        }
        if !colour(cursor) {
            return;
        }
    }
}

/// Moves past the label of a colour; returns whether one stood here.
pub(super) fn colour(cursor: &mut Cursor<'_>) -> bool {
    let before = cursor.at;
    cursor.any(&["in", "with", "using"]);
    let word = cursor.word();
    let found = matches!(word, "MC" | "CC" | "CC1" | "CC2" | "CC3" | "CC4" | "A" | "B" | "C" | "D");
    cursor.at = if found { cursor.at + word.len() } else { before };
    found
}

/// Reads the two or three numbers of a cable and its name: `2/2 LC`, `2/1/2 RPC`.
fn cable(cursor: &mut Cursor<'_>) -> Option<i64> {
    let before = cursor.at;
    let crossed = cable_here(cursor);
    if crossed.is_none() {
        cursor.at = before;
    }
    crossed
}

fn cable_here(cursor: &mut Cursor<'_>) -> Option<i64> {
    let mut sum = 0;
    let mut parts = 0;
    loop {
        let rest = cursor.rest();
        let digits = rest.bytes().take_while(u8::is_ascii_digit).count();
        if digits == 0 || digits > 2 {
            return None;
        }
        sum += rest.get(..digits)?.parse::<i64>().ok()?;
        parts += 1;
        cursor.at += digits;
        if cursor.peek() != Some('/') {
            break;
        }
        cursor.at += 1;
    }
    if parts < 2 {
        return None;
    }
    cursor.any(&["lc", "rc", "lpc", "rpc", "lt", "rt", "lpt", "rpt"]).then_some(sum)
}

/// Reads "as row 2"; nothing where that does not stand here.
fn same_as(cursor: &mut Cursor<'_>) -> Result<Option<u32>, Bad> {
    let before = cursor.at;
    if cursor.any(&["as for", "as", "same as", "work as for", "work as", "rep", "repeat", "work"])
        && cursor.any(&["row", "rnd", "round"])
        && let Some(number) = cursor.number()?
        && let Some(row) = number.values.get(0).filter(|_| number.values.is_one())
        && let Ok(row) = u32::try_from(*row)
        && (cursor.is_stop() || super::stated::is_here(cursor))
    {
        return Ok(Some(row));
    }
    cursor.at = before;
    Ok(None)
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
