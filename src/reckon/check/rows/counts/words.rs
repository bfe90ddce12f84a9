//! The words for what does not come out, and for what to do.

use crate::entry::Entry;
use crate::notation::rows::{Fault, Side};

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

/// What is said of a row that a chart has not, by the chart's name.
fn no_chart_row(entry: &Entry, row: u32, last: u32, chart: usize) -> String {
    let name = entry.prose.charts.get(chart).and_then(|chart| chart.name.as_deref());
    let name = name.map_or_else(|| "the chart".to_owned(), |name| format!("chart `{name}`"));
    format!("{name} has no row {row}: its last is {last}")
}

/// What is wrong, with its figures.
pub(super) fn words(entry: &Entry, fault: Fault) -> String {
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

/// What to do.
pub(super) fn help(fault: Fault) -> String {
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
pub(super) fn bound_off(fits: &str, counted: bool) -> String {
    let which = if counted { "the first" } else { "none" };
    format!("{fits} the stitch on the right needle after binding off is {which} of the next ones")
}

/// How a row or a studio says it.
pub(super) fn count_so(counted: bool) -> String {
    let word = if counted { "counted" } else { "not counted" };
    format!(
        "say it in the row: `k to end`; if you always count so, `stitch after binding off: {word}` in `studio.yaml`"
    )
}
