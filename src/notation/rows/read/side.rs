//! From which side the next row is worked, where a sentence says it: `ending with a WS row`, `RS facing for next row`.

use super::super::statement::{NextSide, Side};
use super::plain::tokens;

/// What comes before the row that is the last one.
const LAST: [&str; 10] =
    ["end", "ends", "ending", "ended", "finish", "finishing", "after", "following", "completing", "complete"];

/// What leaves it to the knitter from which side she goes on.
const MOVES: [&str; 16] = [
    "turn",
    "turning",
    "slide",
    "push",
    "join",
    "joining",
    "rejoin",
    "attach",
    "break",
    "cut",
    "fasten",
    "begin",
    "beginning",
    "start",
    "starting",
    "divide",
];

/// Reads what a sentence says of it.
pub(super) fn next_side(words: &str) -> NextSide {
    // Sides are written in capitals; "rs" in small letters is too short to be sure of.
    let all: Vec<&str> = tokens(words).collect();
    let side_at = |at: usize| match (all.get(at).copied(), all.get(at + 1).map(|word| word.to_lowercase())) {
        (Some("RS"), _) => Some(Side::Right),
        (Some("WS"), _) => Some(Side::Wrong),
        (Some(word), Some(side)) if side == "side" => match word.to_lowercase().as_str() {
            "right" => Some(Side::Right),
            "wrong" => Some(Side::Wrong),
            _ => None,
        },
        _ => None,
    };
    let is =
        |at: usize, wanted: &[&str]| all.get(at).is_some_and(|word| wanted.contains(&word.to_lowercase().as_str()));
    let named: Vec<(usize, Side)> = (0..all.len()).filter_map(|at| Some((at, side_at(at)?))).collect();
    let moved = (0..all.len()).any(|at| is(at, &MOVES));
    match named.as_slice() {
        [] if moved => NextSide::Unknown,
        [] => NextSide::Other,
        [(at, side)] => {
            let before = at.saturating_sub(4)..*at;
            let facing = is(at + 1, &["facing"]) || is(at + 2, &["facing"]);
            let row = is(at + 1, &["row"]) || is(at + 2, &["row"]);
            if facing {
                NextSide::Is(*side)
            } else if row && before.clone().any(|at| is(at, &LAST)) {
                NextSide::Is(side.other())
            } else if row && before.clone().any(|at| is(at, &["ready"])) {
                NextSide::Is(*side)
            } else {
                NextSide::Unknown
            }
        }
        _ => NextSide::Unknown,
    }
}
