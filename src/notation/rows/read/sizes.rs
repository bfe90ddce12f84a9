//! For which sizes something is: `Sizes 1 and 2 only:`, `Size XL only:`, `All other sizes:`, `All sizes:`.

use super::super::statement::{Only, Statement};
use super::super::tree::Span;
use super::cursor::Cursor;
use std::collections::BTreeSet;

/// The most sizes of a pattern that has not said which it has.
const MOST: usize = 99;

/// What stands before a row or a sentence of the sizes that work it.
pub(super) enum Scope {
    /// All do.
    All,
    /// So many do, and these words name sizes that the pattern has not.
    Some(Only, Vec<Span>),
}

/// The sizes that the sentences just before are for, which the others are told from.
#[derive(Default)]
pub(super) struct Before {
    sizes: BTreeSet<usize>,
    /// How many statements were looked at.
    seen: usize,
}

impl Before {
    /// Takes in the statements that were read since, and returns the sizes.
    pub(super) fn sizes(&mut self, statements: &[Statement]) -> Vec<usize> {
        for statement in statements.get(self.seen..).unwrap_or_default() {
            match statement.only.as_ref().filter(|only| !only.except) {
                Some(only) => self.sizes.extend(&only.sizes),
                None => self.sizes.clear(),
            }
        }
        self.seen = statements.len();
        self.sizes.iter().copied().collect()
    }
}

/// Reads for which sizes what follows is; nothing where that is not said here. `before` returns the sizes that what
/// stands just before is for, which the others are told from.
pub(super) fn scope(cursor: &mut Cursor<'_>, before: impl FnOnce() -> Vec<usize>) -> Option<Scope> {
    let start = cursor.at;
    let scope = read(cursor, before);
    if scope.is_none() {
        cursor.at = start;
    }
    scope
}

fn read(cursor: &mut Cursor<'_>, before: impl FnOnce() -> Vec<usize>) -> Option<Scope> {
    cursor.spaces();
    let start = cursor.at;
    let says_for = cursor.eat("for");
    cursor.eat("the");
    let ended = |cursor: &mut Cursor<'_>| {
        let only = cursor.eat("only");
        let colon = cursor.sign(':');
        let comma = !colon && (only || says_for) && cursor.sign(',');
        only || colon || comma
    };
    if cursor.any(&["all other sizes", "other sizes", "remaining sizes", "rem sizes", "all remaining sizes"]) {
        let at = start..cursor.at;
        let only = Only { sizes: before(), except: true, at };
        return (ended(cursor) && !only.sizes.is_empty()).then_some(Scope::Some(only, Vec::new()));
    }
    if cursor.any(&["all sizes", "every size"]) {
        return ended(cursor).then_some(Scope::All);
    }
    if !cursor.any(&["sizes", "size"]) {
        return if says_for { None } else { label(cursor) };
    }
    let list = list(cursor)?;
    let at = start..cursor.at;
    if ended(cursor) {
        return Some(Scope::Some(Only { sizes: list.sizes, except: false, at }, list.unknown));
    }
    // What was taken for the name of a size may have been the row: "For sizes M and L, knit".
    cursor.at = list.known;
    let at = start..cursor.at;
    let only = Only { sizes: list.sizes, except: false, at };
    (!only.sizes.is_empty() && ended(cursor)).then_some(Scope::Some(only, Vec::new()))
}

/// Reads the names of sizes alone before a colon, where the pattern names its own so: `S:`, `M, L:`.
fn label(cursor: &mut Cursor<'_>) -> Option<Scope> {
    cursor.lexicon.sizes()?;
    let start = cursor.at;
    let rest = cursor.rest();
    // A number is that of a row.
    if !rest.starts_with(char::is_uppercase) || !rest.chars().take(24).any(|c| c == ':') {
        return None;
    }
    let list = list(cursor).filter(|list| list.unknown.is_empty() && !list.sizes.is_empty())?;
    let at = start..cursor.at;
    cursor.sign(':').then(|| Scope::Some(Only { sizes: list.sizes, except: false, at }, Vec::new()))
}

/// Sizes as they are named one after another.
struct List {
    sizes: Vec<usize>,
    unknown: Vec<Span>,
    /// Where the last of them ended before the first that is none.
    known: usize,
}

/// Reads sizes by name, or by number from 1: `1 and 2`, `M (L, XL)`, `3-5`.
fn list(cursor: &mut Cursor<'_>) -> Option<List> {
    let mut list = List { sizes: Vec::new(), unknown: Vec::new(), known: cursor.at };
    // Where the last of them ended, its brackets included.
    let mut end = cursor.at;
    loop {
        while cursor.any(&["and", "or"]) || ['(', '[', '{', ',', ';', '&'].iter().any(|sign| cursor.sign(*sign)) {}
        match one(cursor) {
            None => break,
            Some(Err(at)) => list.unknown.push(at),
            Some(Ok(first)) => {
                let before = cursor.at;
                let dash = cursor.sign('-') || cursor.sign('–') || cursor.sign('—') || cursor.eat("to");
                match dash.then(|| one(cursor)).flatten() {
                    Some(Ok(last)) if last >= first => list.sizes.extend(first..=last),
                    _ => {
                        cursor.at = before;
                        list.sizes.push(first);
                    }
                }
            }
        }
        while [')', ']', '}'].iter().any(|sign| cursor.sign(*sign)) {}
        end = cursor.at;
        if list.unknown.is_empty() {
            list.known = end;
        }
    }
    cursor.at = end;
    list.sizes.sort_unstable();
    list.sizes.dedup();
    (!list.sizes.is_empty() || !list.unknown.is_empty()).then_some(list)
}

/// Reads one size, or words in the place of one; nothing where neither stands here.
fn one(cursor: &mut Cursor<'_>) -> Option<Result<usize, Span>> {
    cursor.spaces();
    let start = cursor.at;
    let rest = cursor.rest();
    let names = cursor.lexicon.sizes();
    // The longest name that stands here.
    let ends = rest.char_indices().map(|(at, c)| at + c.len_utf8()).take(24);
    let whole = |end: &usize| !rest.get(*end..).is_some_and(|after| after.starts_with(char::is_alphanumeric));
    let named = ends.filter(whole).filter_map(|end| {
        let name = rest.get(..end)?;
        let plain = !name.ends_with(|c: char| !c.is_alphanumeric() && c != '"' && c != '″');
        Some((end, names?.find(name).filter(|_| plain)?))
    });
    if let Some((end, size)) = named.last() {
        cursor.at += end;
        return Some(Ok(size));
    }
    let word = cursor.word();
    if word.is_empty() || word.eq_ignore_ascii_case("only") {
        return None;
    }
    cursor.at += word.len();
    let number = word.parse::<usize>().ok().and_then(|number| number.checked_sub(1));
    let count = names.map_or(MOST, crate::measure::SizeNames::len);
    match number.filter(|size| *size < count) {
        Some(size) => Some(Ok(size)),
        None => Some(Err(start..cursor.at)),
    }
}
