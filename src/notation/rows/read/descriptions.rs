//! Words of a sentence that only describe: how far it goes, and where markers are put meanwhile.

use super::super::lexicon::Lexicon;
use super::effect::{alters, names_stitches, shapes, works_here};
use super::plain::{is_length, tokens};

/// Words of which one says that it is measured, or held against another piece.
const MEASURES: &str = " measure measures measuring long length reach reaches comes come matches match desired fits fit cm mm in inch inches \
    above below past thumb toe heel ankle knee elbow wrist shoulder underarm armhole waist hip knuckle finger fingertip edge tip \
    same short marker needed required you ";

/// Returns a sentence, in small letters, without what only describes: "until it comes above the thumb", "placing a marker after
/// 90 sts". Words among these that work or change stitches stay.
pub(super) fn without_descriptions(words: &str, lexicon: &Lexicon) -> String {
    let mut kept = words.to_owned();
    if let Some((measured, at)) = clause(&kept, " until ")
        && !works_here(measured, lexicon)
        && !names_stitches(measured)
        && !shapes(measured)
        && !alters(measured)
        && tokens(measured).any(|word| MEASURES.split(' ').any(|known| known == word) || is_length(word))
    {
        kept.replace_range(at, " ");
    }
    if let Some((placed, at)) = clause(&kept, ", placing ")
        && tokens(placed).any(|word| matches!(word, "m" | "marker" | "markers"))
        && !works_here(placed, lexicon)
    {
        kept.replace_range(at, " ");
    }
    for begins in [", ending ", ", end ", ", stopping ", " and ending "] {
        if let Some((ends, at)) = clause(&kept, begins)
            && stops_short(ends)
            && !works_here(ends, lexicon)
            && !alters(ends)
        {
            kept.replace_range(at, " ");
        }
    }
    kept
}

/// Whether words say that the last round ends before its end, or past it: "4 (5, 6) sts before BOR marker on last rnd".
pub(super) fn stops_short(words: &str) -> bool {
    ["sts before", "st before", "sts past", "sts after", "stitches before"].iter().any(|short| words.contains(short))
}

/// The words behind those that begin a clause, up to a comma outside brackets, and where they stand with their beginning.
fn clause<'a>(words: &'a str, begins: &str) -> Option<(&'a str, std::ops::Range<usize>)> {
    let start = words.find(begins)?;
    let body = words.get(start + begins.len()..)?;
    let mut depth = 0_i32;
    let parts = |c: char| {
        depth += i32::from(c == '(') - i32::from(c == ')');
        depth == 0 && matches!(c, ',' | ';')
    };
    let length = body.find(parts).unwrap_or(body.len());
    Some((body.get(..length)?, start..start + begins.len() + length))
}
