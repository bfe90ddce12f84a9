//! A reader of written rows that knows nothing of how they are written: the trade's rules only.

use ballband::notation::chart::Side;
use ballband::standards::chart_symbols::all;

/// A stitch as it is seen on the right side, and its colour.
pub type Seen = (String, Option<String>);

/// One row, in the order it is worked: what comes before the repeat, the repeat, and what comes after it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Row {
    pub before: Vec<Seen>,
    pub repeat: Vec<Seen>,
    pub after: Vec<Seen>,
    /// How many stitches it says are left at the last repeat.
    pub left: u32,
}

/// Reads a row; one that is knitted or purled throughout is taken as `all` stitches, all of them in the repeat.
pub fn row(words: &str, side: Side, all: usize) -> Row {
    let words = uncapital(words);
    let whole =
        words.strip_prefix("knit").map(|rest| ("k", rest)).or(words.strip_prefix("purl").map(|rest| ("p", rest)));
    if let Some((letter, rest)) = whole {
        let colour = rest.strip_prefix(" in ").map(str::to_owned);
        assert!(rest.is_empty() || colour.is_some(), "{words}");
        return Row { repeat: vec![(seen(letter, side), colour); all], ..Row::default() };
    }
    let Some((before, rest)) = words.split_once('*') else {
        return Row { repeat: steps(&words, side), ..Row::default() };
    };
    let (repeat, rest) = rest.split_once("; rep from * ").unwrap();
    let (until, after) = rest.split_once(", ").unwrap_or((rest, ""));
    let left = match until {
        "to end" | "around" => 0,
        "to last st" => 1,
        _ => until.strip_prefix("to last ").unwrap().strip_suffix(" sts").unwrap().parse().unwrap(),
    };
    Row {
        before: steps(before.trim_end_matches(", "), side),
        repeat: steps(repeat, side),
        after: steps(after, side),
        left,
    }
}

fn uncapital(words: &str) -> String {
    // A row that begins with a colour's stitch or a cable's figures has nothing to change.
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_lowercase().chain(letters).collect())
}

fn steps(words: &str, side: Side) -> Vec<Seen> {
    words.split(", ").filter(|step| !step.is_empty()).flat_map(|words| step(words, side)).collect()
}

fn step(words: &str, side: Side) -> Vec<Seen> {
    if let Some(rest) = words.strip_prefix('[') {
        let (inside, times) = rest.split_once("] ").unwrap();
        let times = if times == "twice" { 2 } else { times.strip_suffix(" times").unwrap().parse().unwrap() };
        return vec![one(inside, side); times];
    }
    // `k3 CC` and `p12`; `k2tog` and `p1 tbl` are stitches of their own.
    if let Some((letter, rest)) = words.split_at_checked(1).filter(|(letter, _)| matches!(*letter, "k" | "p")) {
        let (digits, colour) = rest.split_once(' ').map_or((rest, None), |(digits, colour)| (digits, Some(colour)));
        let is_colour = colour.is_none_or(|colour| colour.chars().all(char::is_uppercase));
        if let (Ok(times), true) = (digits.parse(), is_colour) {
            return vec![(seen(letter, side), colour.map(str::to_owned)); times];
        }
    }
    vec![one(words, side)]
}

/// One stitch, perhaps with a colour behind it: two capitals here.
fn one(words: &str, side: Side) -> Seen {
    match words.rsplit_once(' ') {
        Some((stitch, colour)) if matches!(colour, "MC" | "CC" | "DD") => (seen(stitch, side), Some(colour.to_owned())),
        _ => (seen(words, side), None),
    }
}

/// Returns the name of the stitch that is worked so on a side.
fn seen(word: &str, side: Side) -> String {
    let is = |row: &&ballband::standards::chart_symbols::Symbol| {
        let stitch = &row.stitch;
        !stitch.short.is_empty()
            && match side {
                Side::Right => stitch.short == word,
                Side::Wrong => stitch.ws_short.as_deref() == Some(word),
            }
    };
    all().iter().find(is).unwrap_or_else(|| panic!("no stitch is written `{word}`")).stitch.name.clone()
}
