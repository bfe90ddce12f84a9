//! What stitches are of: `left sleeve`, `back`.

use super::cursor::Cursor;

/// The pieces of a garment that are knitted apart and joined.
const PARTS: [&str; 14] = [
    "sleeve", "body", "front", "back", "thumb", "underarm", "neck", "shoulder", "heel", "instep", "yoke", "hood",
    "foot", "gusset",
];

const WHICH: [&str; 6] = ["left", "right", "first", "second", "upper", "lower"];

/// Reads the name of a piece, in small letters and singular; nothing where none stands here.
pub(super) fn part(cursor: &mut Cursor<'_>) -> Option<String> {
    let before = cursor.at;
    cursor.any(&["the", "each"]);
    let mut words = Vec::new();
    let mut found = false;
    loop {
        let word = cursor.word();
        let lower = word.to_lowercase();
        let single = lower.strip_suffix('s').filter(|word| PARTS.contains(word)).unwrap_or(&lower);
        let is_part = PARTS.contains(&single);
        if !is_part && (found || !WHICH.contains(&single)) {
            break;
        }
        words.push(single.to_owned());
        found |= is_part;
        cursor.at += word.len();
    }
    if !found {
        cursor.at = before;
        return None;
    }
    Some(words.join(" "))
}
