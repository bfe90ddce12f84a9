//! Words in brackets among stitches that are for the knitter alone: `k1 (centre st)`, `ssk (1 st from each side of gap)`.

use super::cursor::Cursor;
use super::plain::tokens;

/// The words that such brackets may hold; with any other they may be stitches that are misspelt.
const WORDS: &str = " centre center from each side of gap st sts stitch stitches first last next same marker m wrap wraps wrapped \
    left right needle edge the this that is are one two on before after both marked raglan seam underarm thumb neck front \
    back sleeve sleeves body heel instep toe gusset palm hand total there now new you will as with it its their for at in \
    crossing crosses leans leaning slanting counts count counted ";

/// Moves past such brackets; returns whether some stood here.
pub(super) fn aside(cursor: &mut Cursor<'_>) -> bool {
    let rest = cursor.rest();
    let Some(inner) = rest.strip_prefix('(') else { return false };
    let Some((inside, behind)) = inner.split_once(')') else { return false };
    let lower = inside.to_lowercase();
    let figure = |word: &str| word.chars().all(|c| c.is_ascii_digit());
    let known = tokens(&lower).all(|word| figure(word) || WORDS.split(' ').any(|known| known == word));
    // "(4 sts)" is a count, and "(…) in next st" is worked.
    let says = tokens(&lower).filter(|word| !figure(word) && !matches!(*word, "st" | "sts")).count() > 0;
    let over = behind.trim_start();
    let ends = over.is_empty() || over.starts_with([',', ';', '.', '[', '(', ')', ']', '*']);
    let found = known && says && ends && !lower.contains(['[', '(']);
    if found {
        cursor.at += rest.len() - behind.len();
    }
    found
}
