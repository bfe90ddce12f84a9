//! Words that lead to what is worked and work nothing: `Shape armholes:`, `Starting at the underarm,`, a title on a line of its own.

use super::super::lexicon::Lexicon;
use super::colour::before_stitches;
use super::cursor::Cursor;
use super::effect::{alters, names_stitches, works};
use super::plain::{is_quiet, tokens};

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

/// Words of which one is in a title that stands without a colon, whatever its letters.
const TITLES: &str = " cuff cuffs leg legs heel heels gusset foot toe toes thumb hand hands palm brim crown body yoke sleeve sleeves back front \
    fronts neck neckband neckline collar hood border edging hem finishing pocket pockets flap flaps section shaping armhole armholes \
    shoulder shoulders cap band bands strap straps button buttonband shape divide division ears ear tail bag instep ankle wrist underarm \
    bodice skirt waist bust hip hips button-band square motif panel lining ";

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
        let words = cursor.text.get(cursor.at..cursor.at + end.unwrap_or(0)).unwrap_or_default();
        // What is not known to leave the stitches alone is read, not moved past: "Working inc at each end, k to end".
        if let Some(end) = end.filter(|_| only_leads(words, cursor.lexicon)) {
            cursor.at += end + 1;
            return true;
        }
    }
    cursor.at = start;
    false
}

/// Words that such clauses hold besides those of plain sentences: places, needles, yarns, methods.
const PLACES: &str = " facing centre center seam seams seamline size dpn dpns circ circular circulars tail color colours contrast contrasting \
    waste new second strand strands double raglan line corner corners tip point tab loop magic method german twisted provisional \
    long crochet hook sides edges right-hand left-hand leaving side's single two both one separate spare free next other opposite \
    inner outer lower upper garment stretchy elastic favourite preferred usual alternate row-end bobbin ball skein ";

/// Whether the words of a clause only lead to what is worked.
fn only_leads(words: &str, lexicon: &Lexicon) -> bool {
    let quiet =
        ["with a knit row", "with a purl row", "with a k row", "with a p row", "cast-on", "cast on", "bind-off"];
    let words = quiet.iter().fold(words.to_lowercase(), |words, quiet| words.replace(quiet, " "));
    let known = |word: &str| PLACES.split(' ').any(|known| known == word) || is_quiet(word, lexicon);
    !works(&words, lexicon) && !names_stitches(&words) && !alters(&words) && tokens(&words).all(known)
}

/// Moves past a title with its colon before what is worked in the same line: "Shape armholes: BO 4 sts"; returns whether one
/// stood here.
pub(super) fn lead_in(cursor: &mut Cursor<'_>) -> bool {
    let start = cursor.at;
    let coloured = before_stitches(cursor).is_some();
    cursor.at = start;
    let rest = cursor.rest();
    let Some((title, behind)) = rest.split_once(':').filter(|_| !coloured) else { return false };
    let found = !behind.trim().is_empty() && is_title(title, cursor);
    if found {
        cursor.at += title.len() + 1;
    }
    found
}

/// Whether a line is a title though it has no colon: "THUMB GUSSET", "Shape neck".
pub(super) fn is_bare_title(cursor: &Cursor<'_>) -> bool {
    let line = cursor.rest().trim();
    let lower = line.to_lowercase();
    let known = tokens(&lower).any(|word| TITLES.split(' ').any(|title| title == word));
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
    few && !note && !works && !alters(&lower) && words.chars().all(plain) && words.starts_with(char::is_uppercase)
}
