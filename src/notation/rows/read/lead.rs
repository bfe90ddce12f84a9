//! Words that lead to what is worked and work nothing: `Shape armholes:`, `Starting at the underarm,`, a title on a line of its own.

use super::colour::before_stitches;
use super::cursor::Cursor;
use super::descriptions::shapes;
use super::plain::tokens;
use super::put_aside::names_stitches;
use super::special::works;

/// Words that lead to work behind a comma.
const LEADS: [&str; 18] = [
    "starting",
    "start",
    "beginning",
    "begin",
    "beg",
    "working",
    "with",
    "using",
    "join",
    "rejoin",
    "attach",
    "change",
    "switch",
    "cut",
    "break",
    "now",
    "on",
    "from",
];

/// What may stand before a row that is no title: it works, or tells how far.
const NO_TITLE: [&str; 40] = [
    "knit", "purl", "k", "p", "work", "rib", "slip", "sl", "turn", "repeat", "rep", "cast", "co", "bind", "bo", "inc",
    "dec", "increase", "decrease", "make", "yarn", "place", "pm", "sm", "rm", "join", "cont", "continue", "pick", "to",
    "end", "from", "row", "rows", "rnd", "rnds", "round", "rounds", "wrap", "as",
];

/// Names of parts that are known as titles in whatever letters.
const TITLES: [&str; 28] = [
    "cuff",
    "cuffs",
    "leg",
    "heel",
    "gusset",
    "foot",
    "toe",
    "thumb",
    "hand",
    "palm",
    "brim",
    "crown",
    "body",
    "yoke",
    "sleeve",
    "sleeves",
    "back",
    "front",
    "neck",
    "neckband",
    "collar",
    "hood",
    "border",
    "edging",
    "hem",
    "finishing",
    "pocket",
    "flap",
];

/// Moves past words that lead to what is worked, with their comma; returns whether some stood here.
pub(super) fn lead(cursor: &mut Cursor<'_>) -> bool {
    let start = cursor.at;
    // "With MC, k8" says what the stitches are.
    if before_stitches(cursor).is_some() {
        cursor.at = start;
        return false;
    }
    if cursor.any(&LEADS) {
        let rest = cursor.rest();
        let end = rest
            .find([',', ';', '.', '(', '[', '*'])
            .filter(|end| rest.get(*end..).is_some_and(|rest| rest.starts_with(',')));
        let words = cursor.text.get(start..cursor.at + end.unwrap_or(0)).unwrap_or_default();
        // "With CC, k8" has one, and so has "Cut yarn, turn, k8"; "Starting with k2" has none.
        let words = behind_verb(words);
        if let Some(end) = end.filter(|_| !works(&words, cursor.lexicon) && !names_stitches(&words) && !shapes(&words))
        {
            cursor.at += end + 1;
            return true;
        }
    }
    cursor.at = start;
    false
}

/// The words behind the first, in small letters; the row that others begin with is not worked by them.
fn behind_verb(words: &str) -> String {
    let rest = words.split_once(char::is_whitespace).map_or(String::new(), |(_, rest)| rest.to_lowercase());
    let quiet = ["with a knit row", "with a purl row", "with a k row", "with a p row", "cast-on", "cast on"];
    quiet.iter().fold(rest, |rest, words| rest.replace(words, ""))
}

/// Moves past a title with its colon before what is worked in the same line: "Shape armholes: BO 4 sts"; returns whether one
/// stood here.
pub(super) fn lead_in(cursor: &mut Cursor<'_>) -> bool {
    let rest = cursor.rest();
    let Some((title, behind)) = rest.split_once(':') else { return false };
    let found = !behind.trim().is_empty() && is_title(title, cursor);
    if found {
        cursor.at += title.len() + 1;
    }
    found
}

/// Whether a line is a title though it has no colon: "THUMB GUSSET", "Shape neck".
pub(super) fn is_bare_title(cursor: &Cursor<'_>) -> bool {
    let line = cursor.rest().trim();
    let known = tokens(line).count() > 1 || TITLES.contains(&line.to_lowercase().as_str());
    let loud = line.chars().filter(|c| c.is_alphabetic()).all(char::is_uppercase) && line.chars().count() > 2;
    (known || loud) && is_title(line, cursor)
}

/// Whether words are a title: a few plain ones, the first with a capital, of which none works a stitch.
fn is_title(words: &str, cursor: &Cursor<'_>) -> bool {
    const MOST: usize = 5;
    let words = words.trim();
    let plain = |c: char| c.is_alphabetic() || matches!(c, ' ' | '-' | '\'' | '’' | '&');
    let lower = words.to_lowercase().replace("short-row", "").replace("short row", "");
    let few = (1..=MOST).contains(&tokens(words).count());
    let note = tokens(&lower).next().is_some_and(|first| matches!(first, "note" | "you"));
    let works = tokens(&lower).any(|word| {
        NO_TITLE.contains(&word) || cursor.lexicon.find(word).is_some() || cursor.lexicon.own_at(word).is_some()
    });
    few && !note && !works && words.chars().all(plain) && words.starts_with(char::is_uppercase)
}
