//! Reads a text of rows, statement by statement.

mod cursor;
mod items;
mod label;
mod op;
mod stated;
mod until;

use super::lexicon::Lexicon;
use super::tree::{Again, Doing, Item, Label, Repeated, Rows, Span, Statement, Trouble, Written};
use crate::measure::RunStyle;
use cursor::{Bad, Cursor};
use items::Close;

/// Reads a text of rows.
///
/// Every line is a labelled row or a few sentences; a line that is indented goes on with the one above. Nothing is lost:
/// what cannot be read is a statement with its trouble. Places are bytes of `text`.
pub fn read(text: &str, lexicon: &Lexicon, style: RunStyle) -> Written {
    let mut cursor = start(text, lexicon, style);
    let mut statements = Vec::new();
    for line in lines(text) {
        (cursor.at, cursor.end) = (line.start, line.end);
        read_line(&mut cursor, &mut statements);
    }
    Written { statements, numbers: cursor.numbers }
}

/// Reads what a row does, without label or count: what an abbreviation stands for.
///
/// # Errors
/// What cannot be read, with its bytes.
pub fn read_items(text: &str, lexicon: &Lexicon, style: RunStyle) -> Result<Vec<Item>, (Trouble, Span)> {
    let mut cursor = start(text, lexicon, style);
    let mut all = Vec::new();
    items::items(&mut cursor, Close::Sentence, &mut all)?;
    cursor.sign('.');
    if cursor.is_done() { Ok(all) } else { Err((Trouble::Unread, cursor.at..text.len())) }
}

fn start<'a>(text: &'a str, lexicon: &'a Lexicon, style: RunStyle) -> Cursor<'a> {
    Cursor { text, at: 0, end: text.len(), lexicon, style, numbers: Vec::new(), depth: 0 }
}

/// The lines of a text, each with the indented ones below it.
fn lines(text: &str) -> Vec<Span> {
    let mut all: Vec<Span> = Vec::new();
    let mut at = 0;
    for line in text.split_inclusive('\n') {
        let end = at + line.trim_end().len();
        let goes_on = line.starts_with([' ', '\t']);
        match all.last_mut() {
            _ if line.trim().is_empty() => {}
            Some(last) if goes_on => last.end = end,
            _ => all.push(at..end),
        }
        at += line.len();
    }
    all
}

fn read_line(cursor: &mut Cursor<'_>, statements: &mut Vec<Statement>) {
    cursor.spaces();
    let line = cursor.at..cursor.end;
    match label::label(cursor) {
        Err(bad) => statements.push(troubled(Doing::Unsaid, bad, line)),
        Ok(Some(label)) => row(cursor, Some(label), line.start, statements),
        Ok(None) if is_heading(cursor) => {
            let name = line.end - 1;
            statements.push(Statement {
                doing: Doing::Heading,
                stated: None,
                change: None,
                trouble: None,
                at: line.start..name,
            });
            return;
        }
        Ok(None) => {}
    }
    while !cursor.is_done() {
        let before = cursor.at;
        if cursor.sign('.') || cursor.sign(';') || cursor.sign(',') || cursor.any(&["then", "and"]) {
            continue;
        }
        sentence(cursor, statements);
        if cursor.at == before {
            // Never stand still.
            cursor.at = cursor.end;
        }
    }
}

/// Whether a line is only a name with a colon.
fn is_heading(cursor: &mut Cursor<'_>) -> bool {
    let line = cursor.rest();
    line.strip_suffix(':').is_some_and(|name| {
        !name.is_empty()
            && name.chars().all(|c| c.is_alphabetic() || c.is_whitespace() || matches!(c, '-' | '\'' | '’'))
    })
}

fn troubled(doing: Doing, bad: Bad, at: Span) -> Statement {
    Statement { doing, stated: None, change: None, trouble: Some(bad), at }
}

/// Reads a sentence that has no label.
fn sentence(cursor: &mut Cursor<'_>, statements: &mut Vec<Statement>) {
    let start = cursor.at;
    match special(cursor) {
        Ok(Some(doing)) => {
            let end = cursor.at;
            let statement = Statement { doing, stated: None, change: None, trouble: None, at: start..end };
            finish(cursor, statement, statements);
        }
        Ok(None) => {
            cursor.at = start;
            row(cursor, None, start, statements);
        }
        Err(bad) => {
            statements.push(troubled(Doing::Unsaid, bad, start..cursor.at));
            cursor.skip_sentence();
        }
    }
}

/// Reads the count behind a statement and keeps both.
fn finish(cursor: &mut Cursor<'_>, mut statement: Statement, statements: &mut Vec<Statement>) {
    let before = cursor.at;
    cursor.sign('.');
    let read = std::iter::from_fn(|| stated::stated(cursor).transpose());
    for stated in read {
        match stated {
            Ok(stated) => {
                statement.stated = stated.count.or(statement.stated);
                statement.change = stated.change.or(statement.change);
            }
            Err(bad) => {
                statement.trouble = statement.trouble.or(Some(bad));
                break;
            }
        }
    }
    if statement.stated.is_none() && statement.change.is_none() {
        cursor.at = before.max(statement.at.end);
    }
    statement.at.end = statement.at.end.max(cursor.at);
    statements.push(statement);
}

/// Reads the items of a row, its label being read.
fn row(cursor: &mut Cursor<'_>, label: Option<Label>, start: usize, statements: &mut Vec<Statement>) {
    let body = cursor.at;
    if let Some(label) = &label
        && let Ok(Some(rows)) = as_rows(cursor, label)
    {
        let end = cursor.at;
        for (number, row) in label.numbers.iter().zip(rows) {
            let label = Label { numbers: vec![*number], ..label.clone() };
            let items = vec![Item::SameAs { row, at: body..end }];
            let doing = Doing::Row { label: Some(label), items };
            statements.push(Statement { doing, stated: None, change: None, trouble: None, at: start..end });
        }
        // A count behind them is that of the last.
        if let Some(last) = statements.pop() {
            finish(cursor, last, statements);
        }
        return;
    }
    cursor.at = body;
    cursor.depth = 0;
    let mut read = Vec::new();
    let mut trouble = items::items(cursor, Close::Sentence, &mut read).err();
    if read.is_empty() && trouble.is_none() && label.is_some() {
        trouble = Some((Trouble::Unread, start..body.max(cursor.at)));
    }
    let doing = Doing::Row { label, items: read };
    if let Some(bad) = &trouble {
        cursor.at = cursor.at.max(bad.1.end);
        cursor.skip_sentence();
    }
    finish(cursor, Statement { doing, stated: None, change: None, trouble, at: start..cursor.at }, statements);
}

/// Reads "as rows 1 and 2" for a label with as many numbers, or a multiple of them.
fn as_rows(cursor: &mut Cursor<'_>, label: &Label) -> Result<Option<Vec<u32>>, Bad> {
    let before = cursor.at;
    if cursor.any(&["rep", "repeat", "as for", "as", "work as for", "work as", "work"])
        && cursor.any(&["rows", "rnds", "rounds"])
    {
        let rows = label::list(cursor)?;
        if cursor.is_stop() && !rows.is_empty() && label.numbers.len().is_multiple_of(rows.len()) {
            return Ok(Some(rows.iter().cycle().take(label.numbers.len()).copied().collect()));
        }
    }
    cursor.at = before;
    Ok(None)
}

const PLAIN: [&str; 8] = ["knit", "purl", "work", "k", "p", "continue", "cont", "rib"];
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
fn special(cursor: &mut Cursor<'_>) -> Result<Option<Doing>, Bad> {
    let start = cursor.at;
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
        let none = cursor.number()?.is_none();
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
fn cast_on(cursor: &mut Cursor<'_>) -> Result<Option<crate::notation::rows::Number>, Bad> {
    if cursor.any(&["with", "using"]) {
        // Needles, yarn and method stand before the comma.
        let rest = cursor.rest();
        let comma = rest.find(',').filter(|comma| !rest.get(..*comma).unwrap_or_default().contains(". "));
        let Some(comma) = comma else { return Ok(None) };
        cursor.at += comma + 1;
    }
    if !cursor.any(&["cast on", "co", "pick up and knit", "pick up and purl", "pick up"]) {
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

/// Reads "Repeat rows 1-8 3 times more", "Rep last 2 rows until 8 sts rem".
fn repeat(cursor: &mut Cursor<'_>) -> Result<Option<Repeated>, Bad> {
    let again = cursor.any(&["rep", "repeat"]);
    if !again && !cursor.eat("work") {
        return Ok(None);
    }
    let start = cursor.at;
    let rows = match label::last(cursor)? {
        Some(last) => Rows::Last(last),
        None => {
            if !cursor.any(&["rows", "rnds", "rounds", "row", "rnd", "round"]) {
                return Ok(None);
            }
            let rows = label::list(cursor)?;
            if rows.is_empty() {
                return Ok(None);
            }
            Rows::Numbered(rows)
        }
    };
    let named = cursor.text.get(start..cursor.at).unwrap_or_default();
    let at = cursor.at - named.trim_start().len()..start + named.trim_end().len();
    cursor.sign(',');
    cursor.any(&["another", "a further", "a total of"]);
    if let Some((number, more)) = until::times(cursor)? {
        let again = if more { Again::More(number) } else { Again::Times(number) };
        let stated = stated::is_here(cursor);
        if !stated && !cursor.is_stop() && !matches!(cursor.peek(), Some(',' | ';')) {
            cursor.skip_sentence();
        }
        return Ok(Some(Repeated { rows, again, at }));
    }
    if cursor.any(&["until", "to"]) {
        let before = cursor.at;
        if let Some(number) = cursor.number()?
            && cursor.any(&["sts", "st", "stitches"])
            && cursor.any(&["rem", "remain", "are left", "left", "on needles", "on the needles"])
        {
            return Ok(Some(Repeated { rows, again: Again::UntilStitches(number), at }));
        }
        cursor.at = before;
        cursor.skip_sentence();
        return Ok(Some(Repeated { rows, again: Again::Unsaid, at }));
    }
    if cursor.any(&["for"]) {
        cursor.skip_sentence();
        return Ok(Some(Repeated { rows, again: Again::Unsaid, at }));
    }
    if cursor.is_stop() || stated::is_here(cursor) {
        let number = cursor.once();
        return Ok(Some(Repeated { rows, again: Again::More(number), at }));
    }
    Ok(None)
}

/// Reads rows that change no count: "Knit 4 rows", "Work even until it measures 10 cm".
fn plain(cursor: &mut Cursor<'_>) -> Result<Option<Doing>, Bad> {
    if !cursor.any(&PLAIN) {
        return Ok(None);
    }
    let body = cursor.at;
    cursor.skip_sentence();
    let end = cursor.at;
    let words = cursor.text.get(body..end).unwrap_or_default().to_lowercase();
    let has =
        |wanted: &[&str]| words.split(|c: char| !c.is_alphanumeric() && c != '\'').any(|word| wanted.contains(&word));
    // A list of stitches is a row.
    let rows = has(&["row", "rows", "rnd", "rnds", "round", "rounds"]);
    let long = has(&["until", "measures"]) && !has(&["rem", "remain"]);
    let even = has(&["even", "straight"]);
    if words.contains("to end") || words.contains("to last") || !(rows || long || even) {
        return Ok(None);
    }
    if has(&[
        "dec",
        "inc",
        "decrease",
        "increase",
        "decreasing",
        "increasing",
        "dec'd",
        "inc'd",
        "chart",
        "m1",
        "k2tog",
    ]) {
        return Ok(Some(Doing::Unsaid));
    }
    if has(&["established", "set", "est"]) {
        return Ok(Some(Doing::Established));
    }
    Ok(Some(Doing::Plain))
}
