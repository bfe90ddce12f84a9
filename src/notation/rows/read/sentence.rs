//! Reads a sentence or a labelled row, with the count behind it.

use super::super::statement::{Doing, Label, NextSide, Statement, Trouble};
use super::super::tree::{Item, Number, Span};
use super::cursor::{Bad, Cursor};
use super::descriptions::stops_short;
use super::items::Close;
use super::lead::lead;
use super::plain::tokens;
use super::side::next_side;
use super::special::special;
use super::until::stitches_left;
use super::{chart, items, label, stated};

/// The most leads of one sentence that are looked behind.
const MOST_LEADS: usize = 4;

/// The most statements behind which a label may still be one for each of the rows that it is as; nobody's text has as many.
const MOST_STATEMENTS: usize = 100_000;

/// A statement as it is begun: nothing is said of its count yet.
pub(super) fn begun(cursor: &Cursor<'_>, doing: Doing, at: Span) -> Statement {
    Statement {
        doing,
        only: cursor.only.clone(),
        stated: None,
        change: None,
        marks: false,
        next_side: NextSide::Other,
        trouble: None,
        at,
    }
}

pub(super) fn troubled(cursor: &Cursor<'_>, doing: Doing, bad: Bad, at: Span) -> Statement {
    Statement { trouble: Some(bad), ..begun(cursor, doing, at) }
}

/// Reads a sentence that has no label.
pub(super) fn sentence(cursor: &mut Cursor<'_>, statements: &mut Vec<Statement>) {
    cursor.any(&["now"]);
    let start = cursor.at;
    let mut read = special(cursor);
    let end = cursor.at;
    if matches!(read, Ok(None | Some(Doing::Aside))) {
        // "Beg with a knit row, work 4 rows" begins like an aside and is more than one.
        cursor.at = start;
        for _ in 0..MOST_LEADS {
            if !matches!(read, Ok(None | Some(Doing::Aside))) || !lead(cursor) {
                break;
            }
            let behind = cursor.at;
            match special(cursor) {
                Ok(Some(doing)) if doing != Doing::Aside => read = Ok(Some(doing)),
                _ => cursor.at = behind,
            }
        }
        if matches!(read, Ok(Some(Doing::Aside))) {
            cursor.at = end;
        }
    }
    match read {
        Ok(Some(doing)) => {
            let end = cursor.at;
            let statement = begun(cursor, doing, start..end);
            finish(cursor, statement, statements);
        }
        Ok(None) => row(cursor, None, start, statements),
        Err(bad) => {
            statements.push(troubled(cursor, Doing::Unsaid, bad, start..cursor.at));
            cursor.skip_sentence();
        }
    }
}

/// Reads the count behind a statement and keeps both.
fn finish(cursor: &mut Cursor<'_>, mut statement: Statement, statements: &mut Vec<Statement>) {
    let before = cursor.at;
    cursor.sign('.');
    let mut of_part = false;
    let read = std::iter::from_fn(|| stated::stated(cursor).transpose());
    for stated in read {
        match stated {
            Ok(stated) => {
                statement.stated = stated.count.or(statement.stated);
                statement.change = stated.change.or(statement.change);
                of_part |= stated.of_part;
            }
            Err(bad) => {
                statement.trouble = statement.trouble.or(Some(bad));
                break;
            }
        }
    }
    if statement.stated.is_none() && statement.doing == Doing::Aside {
        statement.stated = gathered(cursor, &statement.at);
    }
    let unsaid = match &statement.doing {
        Doing::Unsaid | Doing::Established => true,
        Doing::Row { items, .. } => matches!(items.as_slice(), [Item::Unsaid { .. }]),
        _ => false,
    };
    if statement.stated.is_none() && unsaid {
        statement.stated = left_at_last(cursor, &statement.at);
    }
    if statement.stated.is_none() && statement.change.is_none() && !of_part {
        cursor.at = before.max(statement.at.end);
    }
    statement.at.end = statement.at.end.max(cursor.at);
    let words = cursor.text.get(statement.at.clone()).unwrap_or_default();
    if !matches!(statement.doing, Doing::Row { .. }) {
        // Where it stops short, markers hang elsewhere from where the next round begins.
        statement.marks = speaks_of_markers(words) || stops_short(words);
        // Stitches are picked up from one side, and the row behind them is worked from the other.
        if !matches!(statement.doing, Doing::CastOn(_) | Doing::PickUp(_)) {
            statement.next_side = next_side(words);
        }
    }
    statements.push(statement);
}

/// How many stitches the yarn is drawn through at the end: "Cut yarn, thread through rem 8 sts".
fn gathered(cursor: &mut Cursor<'_>, at: &Span) -> Option<Number> {
    let words = cursor.text.get(at.clone())?;
    let draws = tokens(words)
        .any(|word| ["thread", "draw", "pull", "gather"].iter().any(|draws| word.eq_ignore_ascii_case(draws)));
    let rest = ["through rem ", "through remaining ", "through the rem ", "through the remaining ", "through all "]
        .iter()
        .find_map(|rest| Some(at.start + words.find(rest)? + rest.len()))
        .filter(|_| draws)?;
    let here = std::mem::replace(&mut cursor.at, rest);
    let number = cursor.number().ok().flatten().filter(|_| cursor.any(&["sts", "stitches"]));
    cursor.at = here;
    number
}

/// How many stitches a sentence ends with, however it comes to them: "… in this manner until 8 sts rem", "… in the round over all 56 sts".
fn left_at_last(cursor: &mut Cursor<'_>, at: &Span) -> Option<Number> {
    let here = cursor.at;
    let words = cursor.text.get(at.clone()).unwrap_or_default();
    let behind = |said: &str| words.rfind(said).map(|found| at.start + found + said.len());
    let read = behind("until ").and_then(|until| {
        cursor.at = until;
        stitches_left(cursor).ok().flatten().filter(|_| cursor.is_stop())
    });
    let read = read.or_else(|| {
        cursor.at = behind(" to ")?;
        cursor.number().ok().flatten().filter(|_| cursor.any(&["sts", "stitches"]) && cursor.is_stop())
    });
    let read = read.or_else(|| {
        cursor.at = behind(" all ")?;
        cursor.number().ok().flatten().filter(|_| cursor.any(&["sts", "stitches"]) && cursor.is_stop())
    });
    cursor.at = here;
    read
}

/// Reads the items of a row, its label being read.
pub(super) fn row(cursor: &mut Cursor<'_>, label: Option<Label>, start: usize, statements: &mut Vec<Statement>) {
    let body = cursor.at;
    if let Some(label) = &label
        && statements.len() < MOST_STATEMENTS
        && let Ok(Some(rows)) = as_rows(cursor, label)
    {
        let end = cursor.at;
        // The last of them has the last number, which a count behind them is of.
        let same = |(at, row): (usize, &u32)| {
            let numbers = label.numbers.iter().skip(at).step_by(rows.len()).copied().collect();
            (Label { numbers, ..label.clone() }, vec![Item::SameAs { row: *row, at: body..end }])
        };
        several_rows(cursor, rows.iter().enumerate().map(same).collect(), start..end, statements);
        return;
    }
    cursor.at = body;
    while lead(cursor) {}
    cursor.depth = 0;
    let mut read = Vec::new();
    let mut trouble = items::items(cursor, Close::Sentence, &mut read).err();
    if read.is_empty() && trouble.is_none() && label.is_some() {
        trouble = Some((Trouble::Unread, start..body.max(cursor.at)));
    }
    if trouble.is_none()
        && let Some(rows) = label.as_ref().and_then(|label| chart::row_by_row(label, &read))
    {
        let end = cursor.at;
        several_rows(cursor, rows, start..end, statements);
        return;
    }
    if label.is_none() && chart::is_unsure(&read) {
        read = vec![Item::Unsaid { as_before: false, at: body..cursor.at }];
    }
    let several = label
        .as_ref()
        .and_then(|label| label.rows.as_ref())
        .is_some_and(|rows| rows.of(0) != 1 || !rows.values.is_one());
    let words = cursor.text.get(body..cursor.at).unwrap_or_default();
    if several && words.to_lowercase().contains("evenly") {
        // In each of them, or in all together: the words do not tell.
        read = vec![Item::Unsaid { as_before: false, at: body..cursor.at }];
    }
    let doing = Doing::Row { label, items: read };
    if let Some(bad) = &trouble {
        cursor.at = cursor.at.max(bad.1.end);
        cursor.skip_sentence();
    }
    finish(cursor, Statement { trouble, ..begun(cursor, doing, start..cursor.at) }, statements);
}

/// Keeps rows that are told together; a count behind them is that of the last.
fn several_rows(cursor: &mut Cursor<'_>, rows: Vec<(Label, Vec<Item>)>, at: Span, statements: &mut Vec<Statement>) {
    for (label, items) in rows {
        let doing = Doing::Row { label: Some(label), items };
        statements.push(begun(cursor, doing, at.clone()));
    }
    if let Some(last) = statements.pop() {
        finish(cursor, last, statements);
    }
}

/// Reads "as rows 1 and 2" for a label with as many numbers, or a multiple of them.
fn as_rows(cursor: &mut Cursor<'_>, label: &Label) -> Result<Option<Vec<u32>>, Bad> {
    let before = cursor.at;
    if cursor.any(&["rep", "repeat", "as for", "as", "work as for", "work as", "work"])
        && cursor.any(&["rows", "rnds", "rounds"])
    {
        let rows = label::list(cursor)?;
        let numbers = label.numbers.len();
        if cursor.is_stop() && !rows.is_empty() && numbers > 0 && numbers.is_multiple_of(rows.len()) {
            return Ok(Some(rows));
        }
    }
    cursor.at = before;
    Ok(None)
}

/// Returns whether words speak of other markers than that where a round begins.
pub fn speaks_of_markers(words: &str) -> bool {
    let lower = words.to_lowercase();
    let mut words = lower.split(|c: char| !c.is_alphanumeric());
    let several = lower.contains("markers");
    let round = ["bor", "beg", "join", "end of"].iter().any(|word| lower.contains(word));
    several || (words.any(|word| matches!(word, "pm" | "marker" | "rm" | "sm")) && !round)
}
