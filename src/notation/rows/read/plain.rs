//! Rows that change no count: `Knit 4 rows`, `Work even until it measures 10 cm`.

use super::super::statement::Doing;
use super::cursor::{Bad, Cursor};

const PLAIN: [&str; 8] = ["knit", "purl", "work", "k", "p", "continue", "cont", "rib"];

/// Reads rows that change no count: "Knit 4 rows", "Work even until it measures 10 cm".
pub(super) fn plain(cursor: &mut Cursor<'_>) -> Result<Option<Doing>, Bad> {
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
