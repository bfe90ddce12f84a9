//! Reads a text of rows, line by line.

mod again;
mod cursor;
mod items;
mod label;
mod op;
mod plain;
mod sentence;
mod special;
mod stated;
mod until;

use super::lexicon::Lexicon;
use super::tree::{Doing, Item, Span, Statement, Trouble, Written};
use crate::measure::RunStyle;
use cursor::Cursor;
use items::Close;
use sentence::{row, sentence, troubled};

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
                doing: Doing::Heading { chart: names_chart(cursor.rest()) },
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

/// Whether a line is only a name with a colon. That of a chart may have figures: `Chart 2:`.
fn is_heading(cursor: &mut Cursor<'_>) -> bool {
    let line = cursor.rest();
    line.strip_suffix(':').is_some_and(|name| {
        let chart = names_chart(name);
        let of_name = |c: char| c.is_alphabetic() || c.is_whitespace() || matches!(c, '-' | '\'' | '’');
        !name.is_empty()
            && name.chars().all(|c| of_name(c) || (chart && (c.is_ascii_digit() || matches!(c, ',' | '.'))))
    })
}

fn names_chart(line: &str) -> bool {
    let first = line.split(|c: char| c.is_whitespace() || c == ':').next();
    first.is_some_and(|word| word.eq_ignore_ascii_case("chart"))
}
