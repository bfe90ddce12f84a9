//! Runs of sizes in words that are not read further: `Knit 20 (24, 28) rnds`, `measures 20.5 (24, 25) cm`.

use super::super::statement::{Doing, Statement};
use super::cursor::Cursor;
use crate::measure::numbers_in_brackets;

/// Keeps the runs of a statement that reading it has passed over.
pub(super) fn further(cursor: &mut Cursor<'_>, statement: &Statement) {
    if statement.trouble.is_some() || matches!(statement.doing, Doing::Heading { .. }) {
        return;
    }
    let here = (cursor.at, cursor.end, cursor.only.clone());
    cursor.only.clone_from(&statement.only);
    let label = match &statement.doing {
        Doing::Row { label: Some(label), .. } => label.at.end,
        _ => statement.at.start,
    };
    (cursor.at, cursor.end) = (label.max(statement.at.start), statement.at.end);
    let mut before = None;
    while let Some(c) = cursor.peek() {
        // The figures of `M1` and of a decimal belong to what stands before them.
        let begins =
            c.is_ascii_digit() && !before.is_some_and(|before: char| before.is_alphanumeric() || before == '.');
        let digits = |c: char| c.is_ascii_digit() || c == '.';
        let behind = cursor.rest().trim_start_matches(digits);
        let at = cursor.at;
        if begins
            && numbers_in_brackets(behind).is_some()
            && !cursor.numbers.iter().any(|number| number.at.contains(&at))
            && let Ok(Some(_)) = cursor.run()
        {
            before = None;
            continue;
        }
        before = Some(c);
        cursor.at = at + c.len_utf8();
    }
    (cursor.at, cursor.end, cursor.only) = here;
}
