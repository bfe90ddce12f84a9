//! Reads a text of rows, line by line.

mod again;
mod alike;
mod aside;
mod between;
mod bind_all;
mod cast_on;
mod chart;
mod colour;
mod cursor;
mod descriptions;
mod effect;
mod evenly;
mod every;
mod facing;
mod heading;
mod items;
mod label;
mod label_end;
mod lead;
mod named;
mod op;
mod open;
mod over;
mod part;
mod place;
mod plain;
mod put_aside;
mod runs;
mod sentence;
mod shape;
mod side;
mod sizes;
mod special;
mod stated;
mod take_up;
mod until;

use super::lexicon::Lexicon;
use super::statement::{Doing, Only, Statement, Trouble, Written};
use super::tree::{Item, Span};
use crate::measure::RunStyle;
use cursor::Cursor;
use heading::{is_heading, names_chart};
use items::Close;
use lead::{is_bare_title, lead_in};
pub use sentence::speaks_of_markers;
use sentence::{begun, row, sentence, troubled};
use sizes::{Before, Scope, scope};

/// Reads a text of rows.
///
/// Every line is a labelled row or a few sentences; a line that is indented goes on with the one above. Nothing is lost:
/// what cannot be read is a statement with its trouble. Places are bytes of `text`.
pub fn read(text: &str, lexicon: &Lexicon, style: RunStyle) -> Written {
    let mut cursor = start(text, lexicon, style);
    let mut statements = Vec::new();
    // What a line alone says of the sizes holds until another says so.
    let mut standing: Option<Only> = None;
    let mut before = Before::default();
    for (line, _) in lines(text) {
        (cursor.at, cursor.end) = (line.start, line.end);
        cursor.only.clone_from(&standing);
        if let Some(said) = for_sizes(&mut cursor, &statements, &mut before) {
            if said.is_none() || cursor.is_done() {
                standing = said;
            }
            if cursor.is_done() {
                continue;
            }
        }
        let behind = statements.len();
        read_line(&mut cursor, &mut statements, &mut before);
        for statement in statements.get(behind..).unwrap_or_default() {
            runs::further(&mut cursor, statement);
        }
        if matches!(statements.last(), Some(Statement { doing: Doing::Heading { .. }, .. })) {
            standing = None;
        }
    }
    Written {
        statements,
        numbers: cursor.numbers,
        unknown_sizes: cursor.unknown_sizes,
        apart: lexicon.is_apart(),
        marked: false,
        piece: None,
    }
}

/// Reads for which sizes what follows is, and keeps it; nothing where that is not said here.
fn for_sizes(cursor: &mut Cursor<'_>, statements: &[Statement], before: &mut Before) -> Option<Option<Only>> {
    match scope(cursor, || before.sizes(statements))? {
        Scope::All => cursor.only = None,
        Scope::Some(only, unknown) => {
            cursor.unknown_sizes.extend(unknown);
            cursor.only = Some(only);
        }
    }
    Some(cursor.only.clone())
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

/// Returns whether words for a row, such as `purl`, work as many stitches as there are, whichever they are.
pub fn is_even(words: &str, lexicon: &Lexicon, style: RunStyle) -> bool {
    let one = |item: &Item| matches!(item, Item::Even { binds: false, .. });
    let items = read_items(words, lexicon, style).unwrap_or_default();
    let lower = words.to_lowercase();
    let works = plain::tokens(&lower).any(|word| matches!(word, "knit" | "purl" | "work" | "plain" | "even"));
    matches!(items.as_slice(), [only] if one(only)) || works && plain::is_quiet(words, lexicon)
}

fn start<'a>(text: &'a str, lexicon: &'a Lexicon, style: RunStyle) -> Cursor<'a> {
    Cursor {
        text,
        at: 0,
        end: text.len(),
        lexicon,
        style,
        numbers: Vec::new(),
        depth: 0,
        only: None,
        unknown_sizes: Vec::new(),
    }
}

/// Returns the lines of a text, each with the indented ones below it, and whether an empty one stands above it.
pub fn lines(text: &str) -> Vec<(Span, bool)> {
    let mut all: Vec<(Span, bool)> = Vec::new();
    let mut at = 0;
    let mut apart = false;
    for line in text.split_inclusive('\n') {
        let end = at + line.trim_end().len();
        let goes_on = line.starts_with([' ', '\t']);
        match all.last_mut() {
            _ if line.trim().is_empty() => apart = !all.is_empty(),
            Some((last, _)) if goes_on => last.end = end,
            _ => {
                all.push((at..end, apart));
                apart = false;
            }
        }
        at += line.len();
    }
    all
}

fn read_line(cursor: &mut Cursor<'_>, statements: &mut Vec<Statement>, before: &mut Before) {
    cursor.spaces();
    let line = cursor.at..cursor.end;
    match label::label(cursor) {
        Err(bad) => statements.push(troubled(cursor, Doing::Unsaid, bad, line)),
        Ok(Some(label)) => {
            label_sizes(cursor, &label.at, statements, before);
            row(cursor, Some(label), line.start, statements);
        }
        Ok(None) if is_heading(cursor) => {
            let doing = Doing::Heading {
                chart: names_chart(cursor.rest()),
                name: cursor.rest().trim_end_matches(':').to_owned(),
            };
            statements.push(Statement { only: None, ..begun(cursor, doing, line.start..line.end - 1) });
            return;
        }
        Ok(None) if is_bare_title(cursor) => {
            let doing = Doing::Heading { chart: false, name: cursor.rest().to_owned() };
            statements.push(Statement { only: None, ..begun(cursor, doing, line) });
            return;
        }
        Ok(None) => {
            let start = cursor.at;
            if lead_in(cursor) {
                statements.push(begun(cursor, Doing::Aside, start..cursor.at));
            }
        }
    }
    while !cursor.is_done() {
        let start = cursor.at;
        if cursor.sign('.') || cursor.sign(';') || cursor.sign(',') || cursor.any(&["then", "and"]) {
            continue;
        }
        if for_sizes(cursor, statements, before).is_some() {
            continue;
        }
        sentence(cursor, statements);
        if cursor.at == start {
            // Never stand still.
            cursor.at = cursor.end;
        }
    }
}

/// Reads the sizes that a label names: `Row 5 (sizes 3 and 4 only)`.
fn label_sizes(cursor: &mut Cursor<'_>, label: &Span, statements: &[Statement], before: &mut Before) {
    let words = cursor.text.get(label.clone()).unwrap_or_default();
    let Some(at) = words.to_ascii_lowercase().find("size") else { return };
    let here = (cursor.at, cursor.end);
    (cursor.at, cursor.end) = (label.start + at, label.end);
    for_sizes(cursor, statements, before);
    (cursor.at, cursor.end) = here;
}
