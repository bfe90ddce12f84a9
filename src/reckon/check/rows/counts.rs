//! Stitches that do not come out, in words.

use super::named::nameless;
use super::{Blocks, place};
use crate::entry::{Entry, Pattern};
use crate::finding::{Code, Finding, Severity};
use crate::notation::rows::{Fault, Followed, Side, Told};
use crate::reckon::check::place::in_sizes;
use crate::reckon::check::rows::{ROW_SIDES, ROW_UNKNOWN};
use crate::source::Place;

macro_rules! codes {
    ($($(#[doc = $doc:literal])+ $static:ident = $name:literal: $what:literal, $why:literal, $bad:literal, $good:literal;)*) => { $(
        $(#[doc = $doc])+
        pub static $static: Code =
            Code { name: $name, severity: Severity::Warning, what: $what, why: $why, bad: $bad, good: $good };
    )* };
}

codes! {
    /// Stitches that stay unworked at the end of a row.
    ROW_LEFT_OVER = "row-left-over":
        "A row takes fewer stitches than are on the needle.",
        "The knitter stands before the end of the row with stitches that nothing is said of.",
        "Cast on 96 sts.\nRow 1: [K6, k2tog] 11 times.",
        "Cast on 96 sts.\nRow 1: [K6, k2tog] 12 times.";
    /// A row that needs more stitches than there are.
    ROW_SHORT = "row-short":
        "A row takes more stitches than are on the needle.",
        "The knitter runs out of stitches before the row is done.",
        "Cast on 90 sts.\nRow 1: [K6, k2tog] 12 times.",
        "Cast on 96 sts.\nRow 1: [K6, k2tog] 12 times.";
    /// A repeat that does not divide the stitches there are for it.
    REPEAT_LEFT_OVER = "repeat-left-over":
        "The stitches that a repeat is worked over are no multiple of it.",
        "The last repeat breaks off in its middle.",
        "Cast on 50 sts.\nRow 1: *K2, p2; rep from * to end.",
        "Cast on 50 sts.\nRow 1: *K2, p2; rep from * to last 2 sts, k2.";
    /// "To last 3 sts" before something that takes four.
    TAIL_UNLIKE = "tail-unlike":
        "What follows `to last … sts` takes another number of stitches.",
        "The row ends with stitches too few or too many.",
        "Row 1: K2, k2tog, k to last 3 sts, ssk, k2.",
        "Row 1: K2, k2tog, k to last 4 sts, ssk, k2.";
    /// A count that is not that of the stitches.
    COUNT_UNLIKE = "count-unlike":
        "The count behind a row is not that of its stitches.",
        "A knitter who counts rips out a row that was right, or goes on with one that was not.",
        "Cast on 64 sts.\nRow 1: K3, m1L, k to last 3 sts, m1R, k3. [64 sts]",
        "Cast on 64 sts.\nRow 1: K3, m1L, k to last 3 sts, m1R, k3. [66 sts]";
    /// A part that begins with other stitches than there are.
    PARTS_UNLIKE = "parts-unlike":
        "A block of rows begins with another count than the block before it ended with.",
        "Something between the two is missing, or one of the counts is wrong.",
        "(first block) Cast on 50 sts.\n(second block) 52 sts.",
        "(first block) Cast on 50 sts.\n(second block) 50 sts.";
    /// A note on increases or decreases that is not true.
    CHANGE_UNLIKE = "change-unlike":
        "What a row is said to increase or decrease is not what it does.",
        "The knitter looks for an increase that is not there.",
        "Row 1: K1, m1, k to last st, m1, k1. (1 st inc'd)",
        "Row 1: K1, m1, k to last st, m1, k1. (2 sts inc'd)";
    /// "3 times" that may be meant of all or after the first.
    TIMES_UNCLEAR = "times-unclear":
        "`Rep … 3 times` fits only if the first time is among them.",
        "Half of the houses mean three times after the first.",
        "Cast on 48 sts.\nRow 1: *K2, p2; rep from * 12 times.",
        "Cast on 48 sts.\nRow 1: *K2, p2; rep from * 11 times more.";
    /// A row that fits only with the stitch left from binding off.
    STITCH_BOUND_OFF = "stitch-bound-off":
        "A row fits only if the stitch that is on the right needle after binding off is counted otherwise than the studio does.",
        "Houses differ, and a knitter of the other kind is one stitch out.",
        "Cast on 25 sts.\nRow 1: K10, BO 5, k9.",
        "Cast on 25 sts.\nRow 1: K10, BO 5, k to end.";
    /// Rows that do not fit when they are worked again.
    ROWS_AGAIN = "rows-again":
        "Rows that are repeated do not fit the stitches they have left.",
        "The first working comes out and a later one does not.",
        "Cast on 96 sts.\nRnd 1: *K6, k2tog; rep from * around.\nRepeat rnd 1 twice more.",
        "Cast on 96 sts.\nRnd 1: *K6, k2tog; rep from * around.\nRnd 2: *K5, k2tog; rep from * around.";
    /// Rows worked until so many stitches are left, which never come to just as many.
    COUNT_MISSED = "count-missed":
        "Rows are worked until so many stitches are left, and never come to just as many.",
        "The knitter passes the number and does not know when to stop.",
        "Cast on 40 sts.\nRow 1: K1, k2tog, k to last 3 sts, ssk, k1.\nRepeat row 1 until 9 sts rem.",
        "Cast on 40 sts.\nRow 1: K1, k2tog, k to last 3 sts, ssk, k1.\nRepeat row 1 until 8 sts rem.";
    /// Stitches that come back to the needle and are not those that were put aside.
    HELD_UNLIKE = "held-unlike":
        "Other stitches come back to the needle than were put aside, one group of them or several.",
        "A sleeve begins with stitches that the yoke did not leave for it.",
        "Row 9: K20, place next 40 sts on hold, k20.\nReturn 42 held sts to needle.",
        "Row 9: K20, place next 40 sts on hold, k20.\nReturn 40 held sts to needle.";
    /// A marker that does not hang where the words have it.
    MARKER_UNLIKE = "marker-unlike":
        "The stitches before a marker are not as many as the words work there, from where a marker was put.",
        "The knitter comes to the marker too early or too late, and the increases wander.",
        "Cast on 20 sts.\nRow 1: K10, pm, k10.\nRow 2: P to 3 sts before m, p2tog, sm, p to end.",
        "Cast on 20 sts.\nRow 1: K10, pm, k10.\nRow 2: P to 2 sts before m, p2tog, sm, p to end.";
    /// A marker that is not there.
    MARKER_MISSING = "marker-missing":
        "Words go to a marker, or slip one, and none is left on the needle.",
        "The knitter looks for a marker that nobody told her to put there.",
        "Cast on 20 sts.\nRow 1: K10, pm, k10.\nRow 2: P to m, sm, p to m, sm, p to end.",
        "Cast on 20 sts.\nRow 1: K5, pm, k10, pm, k5.\nRow 2: P to m, sm, p to m, sm, p to end.";
    /// Words that do not tell how many stitches there are afterwards.
    COUNT_UNKNOWN = "count-unknown":
        "The words do not tell how many stitches there are afterwards, so the rows that follow are not counted.",
        "A mistake in them would not be found.",
        "Row 1: Work lace of your own.\nRow 2: *K3, p2; rep from * to end.",
        "Row 1: Work lace of your own. [45 sts]\nRow 2: *K3, p2; rep from * to end.";
}

/// Words what does not come out.
pub fn check(entry: &Entry, pattern: &Pattern, blocks: &Blocks, followed: &Followed, findings: &mut Vec<Finding>) {
    findings.extend(followed.told.iter().filter_map(|told| match told.sizes.first()? {
        (_, Fault::NoName) => Some(nameless(entry, pattern, blocks, place(entry, told.block, &told.at), told)),
        _ => finding(entry, pattern, told),
    }));
}

fn stitches(number: i64) -> String {
    if number == 1 { "1 stitch".to_owned() } else { format!("{number} stitches") }
}

fn stay(number: i64) -> String {
    format!("{} {}", stitches(number), if number == 1 { "is" } else { "are" })
}

fn are(number: i64) -> String {
    if number == 1 { "is 1".to_owned() } else { format!("are {number}") }
}

/// "2 stitches more" or "4 stitches fewer".
fn changed(number: i64) -> String {
    let word = if number < 0 { "fewer" } else { "more" };
    format!("{} {word}", stitches(number.saturating_abs()))
}

fn finding(entry: &Entry, pattern: &Pattern, told: &Told) -> Option<Finding> {
    let (_, first) = told.sizes.first()?;
    // Sizes with the same figures are told of together.
    let mut groups: Vec<(String, Vec<usize>)> = Vec::new();
    for (size, fault) in &told.sizes {
        let words = words(entry, *fault);
        match groups.iter_mut().find(|(said, _)| *said == words) {
            Some((_, sizes)) => sizes.push(*size),
            None => groups.push((words, vec![*size])),
        }
    }
    let one = groups.len() == 1;
    let all = one && told.sizes.len() == pattern.size_count();
    let said: Vec<String> = groups
        .iter()
        .map(|(words, sizes)| if all { words.clone() } else { format!("{words}{}", in_sizes(pattern, sizes)) })
        .collect();
    let at = place(entry, told.block, &told.at);
    let of_chart = *first == Fault::Unknown && entry.prose.stretch(&at.span).to_lowercase().contains("chart");
    let help = if of_chart { UNKNOWN_CHART.to_owned() } else { help(*first) };
    Some(Finding::new(code(*first), at, said.join("; ")).help(help))
}

/// What to do where a chart is worked that nobody can count.
const UNKNOWN_CHART: &str = "name a chart of this text and its rows, `rows 1–8 of chart lamps`, or give the count in square brackets: `[84 sts]`";

/// What is said of a row that a chart has not, by the chart's name.
fn no_chart_row(entry: &Entry, row: u32, last: u32, chart: usize) -> String {
    let name = entry.prose.charts.get(chart).and_then(|chart| chart.name.as_deref());
    let name = name.map_or_else(|| "the chart".to_owned(), |name| format!("chart `{name}`"));
    format!("{name} has no row {row}: its last is {last}")
}

fn code(fault: Fault) -> &'static Code {
    match fault {
        Fault::LeftOver { .. } => &ROW_LEFT_OVER,
        Fault::Short { .. } => &ROW_SHORT,
        Fault::RepeatLeft { .. } | Fault::RepeatEmpty => &REPEAT_LEFT_OVER,
        Fault::InChart { what, .. } => code(what.alone()),
        Fault::Tail { .. } => &TAIL_UNLIKE,
        Fault::Stated { .. } => &COUNT_UNLIKE,
        Fault::Section { .. } => &PARTS_UNLIKE,
        Fault::Change { .. } => &CHANGE_UNLIKE,
        Fault::InAll { .. } => &TIMES_UNCLEAR,
        Fault::BoundOff { .. } => &STITCH_BOUND_OFF,
        Fault::Again { .. } => &ROWS_AGAIN,
        Fault::Missed { .. } => &COUNT_MISSED,
        Fault::NoRow { .. }
        | Fault::NoChartRow { .. }
        | Fault::NoName
        | Fault::Circle { .. }
        | Fault::NamedCircle
        | Fault::FewRows { .. } => &ROW_UNKNOWN,
        Fault::Held { .. } => &HELD_UNLIKE,
        Fault::MarkerAhead { .. } | Fault::MarkerPassed { .. } | Fault::MarkerNear { .. } => &MARKER_UNLIKE,
        Fault::NoMarker => &MARKER_MISSING,
        Fault::Side { .. } | Fault::Ends { .. } => &ROW_SIDES,
        Fault::Unknown => &COUNT_UNKNOWN,
    }
}

fn words(entry: &Entry, fault: Fault) -> String {
    match fault {
        Fault::LeftOver { left, had } => format!("{left} of {} left over", stitches(had)),
        Fault::Short { by, had } => {
            format!("{} missing: it takes {} and there {}", stitches(by), by.saturating_add(had), are(had))
        }
        Fault::RepeatLeft { left, of, room } => format!("repeats of {of} leave {left} of {} over", stitches(room)),
        Fault::RepeatEmpty => "the repeat takes no stitch, so it never comes to an end".to_owned(),
        Fault::Tail { says, takes } => format!("what follows takes {}, not {says}", stitches(takes)),
        Fault::Stated { says, is } => format!("{} are said and there are {is}", stitches(says)),
        Fault::Section { says, is } => format!("{} are said and the last block ended with {is}", stitches(says)),
        Fault::Change { says, is } => format!("{} are said and there are {}", changed(says), changed(is)),
        Fault::InAll { times } => format!("comes out only if the first working is one of the {times}"),
        Fault::BoundOff { counted } => bound_off("fits only if", counted),
        Fault::Again { pass, had } => format!("repeat {pass} does not fit the {} there are then", stitches(had)),
        Fault::Missed { wanted, is } => format!("{} are never left: it comes to {is}", stitches(wanted)),
        Fault::NoRow { row } => format!("there is no row {row}"),
        Fault::InChart { row, what } => format!("in row {row} of the chart {}", words(entry, what.alone())),
        Fault::NoChartRow { row, last, chart } => no_chart_row(entry, row, last, chart),
        Fault::NoName => "no row is called so".to_owned(),
        Fault::Circle { row } => format!("it is as row {row}, which is as this one again: none says what is worked"),
        Fault::NamedCircle => "it is as a row that is as this one again: none says what is worked".to_owned(),
        Fault::FewRows { says: 1, .. } => "the last row is named and there is none yet".to_owned(),
        Fault::FewRows { says, had } => {
            format!("the last {says} rows are named and there {}", are(i64::try_from(had).unwrap_or(i64::MAX)))
        }
        Fault::Held { says, had } => format!("{} come back and {had} were put aside", stitches(says)),
        Fault::MarkerAhead { left } => format!("{} still before the marker", stay(left)),
        Fault::MarkerPassed { by } => format!("the marker hangs {} before this", stitches(by)),
        Fault::MarkerNear { says, left } => {
            format!("{} to be left before the marker, and there {}", stitches(says), are(left))
        }
        Fault::NoMarker => "there is no marker left on the needle".to_owned(),
        Fault::Ends { side: Side::Right } => "these rows end with an RS row".to_owned(),
        Fault::Ends { side: Side::Wrong } => "these rows end with a WS row".to_owned(),
        Fault::Side { side: Side::Right, again: false } => "an RS row comes straight behind another".to_owned(),
        Fault::Side { side: Side::Wrong, again: false } => "a WS row comes straight behind another".to_owned(),
        Fault::Side { side: Side::Right, again: true } => {
            "worked again, an RS row comes from the wrong side".to_owned()
        }
        Fault::Side { side: Side::Wrong, again: true } => "worked again, a WS row comes from the right side".to_owned(),
        Fault::Unknown => "how many stitches there are after this cannot be told".to_owned(),
    }
}

fn help(fault: Fault) -> String {
    match fault {
        Fault::InChart { what, .. } => help(what.alone()),
        Fault::LeftOver { .. } => "hold the row against the count before it, or say how it ends: `k to end`".to_owned(),
        Fault::Short { .. } => "hold the row against the count before it".to_owned(),
        Fault::RepeatLeft { left, of, .. } => {
            format!("work {} before or behind the repeat, or have {left} fewer or {} more", stitches(left), of - left)
        }
        Fault::RepeatEmpty => "say how often it is worked: `3 times`".to_owned(),
        Fault::Tail { takes, .. } => format!("write `to last {takes} sts`, or change what follows"),
        Fault::Stated { .. } => {
            "mend the count or the row; the rows behind it are counted again from the next count".to_owned()
        }
        Fault::Section { .. } => "mend one of the two, or write what happens between them".to_owned(),
        Fault::Change { .. } => "mend the note or the row".to_owned(),
        Fault::InAll { times } => format!("write `{} times more`", times.saturating_sub(1)),
        Fault::BoundOff { counted } => count_so(counted),
        Fault::Again { .. } => "say how often it is really worked, or write the later rows out".to_owned(),
        Fault::Missed { is, .. } => format!("end with {}, or begin with others", stitches(is)),
        Fault::NoRow { .. } | Fault::NoChartRow { .. } | Fault::NoName | Fault::FewRows { .. } => {
            "name rows that are there".to_owned()
        }
        Fault::Circle { .. } | Fault::NamedCircle => "write out the stitches of one of them".to_owned(),
        Fault::Held { .. } => "mend one of the two".to_owned(),
        Fault::MarkerAhead { .. } | Fault::MarkerPassed { .. } | Fault::MarkerNear { .. } => {
            "hold the row against where `pm` puts the marker and what the rows since add before it".to_owned()
        }
        Fault::NoMarker => "write `pm` in the row that puts it there, or count the markers".to_owned(),
        Fault::Ends { .. } => "work one row more or fewer, or name the other side".to_owned(),
        Fault::Side { again: false, .. } => {
            "worked flat, right and wrong sides alternate; where the work is not turned, say so: `do not turn`"
                .to_owned()
        }
        Fault::Side { again: true, .. } => {
            "repeat an even number of rows, begin with another one, or leave out the side".to_owned()
        }
        Fault::Unknown => "give the count behind it in square brackets: `[84 sts]`".to_owned(),
    }
}

/// What a row rests on that goes by the stitch left from binding off.
fn bound_off(fits: &str, counted: bool) -> String {
    let which = if counted { "the first" } else { "none" };
    format!("{fits} the stitch on the right needle after binding off is {which} of the next ones")
}

fn count_so(counted: bool) -> String {
    let word = if counted { "counted" } else { "not counted" };
    format!(
        "say it in the row: `k to end`; if you always count so, `stitch after binding off: {word}` in `studio.yaml`"
    )
}

/// Words that a row is right only where the stitch left from binding off is counted so.
pub(super) fn left_from_binding_off(at: Place, counted: bool, fits: &str) -> Finding {
    Finding::new(&STITCH_BOUND_OFF, at, bound_off(fits, counted)).help(count_so(counted))
}
