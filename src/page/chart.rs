//! A chart of a text: all that is said beside its drawing.

use super::rows::{AbbreviationView, Glossary, PREFIX, Use};
use super::{Shown, words};
use crate::entry::value::Colour;
use crate::entry::{ChartBlock, Pattern, SwatchBlock, Width};
use crate::measure::{FabricLength, Percent};
use crate::notation::chart::colours::colours;
use crate::notation::chart::counts::{RowCount, counts};
use crate::notation::chart::floats::{Float, floats};
use crate::notation::chart::written::{Written, between, written};
use crate::notation::chart::{Chart, Side, Sign};
use crate::reckon::chart::{cell_height, float_length, gauge_of_charts, stitches_over};
use crate::standards::abbreviations;
use std::ops::Range;

/// A chart and what is said of it. No template sees it: a drawing leaves nothing to choose.
#[derive(Clone, Debug)]
pub struct ChartView<'a> {
    /// The chart.
    pub chart: &'a Chart,
    /// What stands above it: `Chart: reeds`.
    pub title: String,
    /// What the drawing shows, for a reader who cannot see it.
    pub description: String,
    /// The height of a cell that is 200 wide.
    pub cell_height: i64,
    /// The colour of each sign of the key; none where it has no label, or where its shade is not known.
    pub colours: Vec<Option<Colour>>,
    /// What each sign of the key means.
    pub key: Vec<Meant>,
    /// How the chart is read.
    pub reading: String,
    /// The rows in words, from the bottom up.
    pub rows: Vec<RowInWords>,
    /// The abbreviations of those.
    pub abbreviations: Vec<AbbreviationView>,
    /// What can be told of it as a whole: shares of colours, the longest float.
    pub facts: Vec<String>,
}

/// What a sign means.
#[derive(Clone, Debug)]
pub struct Meant {
    /// Its name: `k2tog`, `MC`.
    pub name: String,
    /// What it is; may be empty.
    pub words: String,
}

/// One row in words.
#[derive(Clone, Debug)]
pub struct RowInWords {
    /// What it is called: `Round 1`.
    pub label: String,
    /// What is worked.
    pub words: String,
    /// The abbreviations in that, as the chart counts them; none outside a pattern, whose page explains them.
    pub uses: Vec<Use>,
    /// Its stitches and its longest float; may be empty.
    pub beside: String,
}

/// Returns what is shown of a chart; `pattern` is the one it stands in, if it stands in one.
pub fn chart_view<'a>(shown: &Shown<'_>, block: &'a ChartBlock, pattern: Option<&Pattern>) -> ChartView<'a> {
    let chart = &block.chart;
    let gauge = pattern.and_then(gauge_of_charts);
    let rows = if chart.round { "rounds" } else { "rows" };
    // A cell without a stitch is a column all the same.
    let across = if chart.has_gaps() { "columns" } else { "stitches" };
    let size = format!("{} {across} across and {} {rows} up", chart.width, chart.rows.len());
    let length = |stitches: u32| float_length(gauge, stitches).map(|length| in_both(shown, length));
    let (counted, carried) = (counts(chart), floats(chart));
    let mut glossary = pattern.map(|pattern| Glossary::new(PREFIX, Some(pattern)));
    let mut uses = |words: &str| glossary.as_mut().map(|glossary| glossary.uses(words)).unwrap_or_default();
    let lines = written(chart).into_iter().zip(counted.iter().zip(&carried));
    let each = lines.map(|(Written { label, words }, (count, float))| RowInWords {
        label,
        uses: uses(&words),
        words,
        beside: beside(chart, count, float.as_ref(), &length),
    });
    let mut in_words = together(chart, each.collect());
    if let Some(Written { label, words }) = between(chart) {
        in_words.insert(1.min(in_words.len()), RowInWords { label, uses: uses(&words), words, beside: String::new() });
    }
    let title = block.name.as_ref().map_or_else(|| "Chart".to_owned(), |name| format!("Chart: {name}"));
    ChartView {
        chart,
        description: format!(
            "{size}, read from the bottom.{} Every row stands in words below.",
            boxed(chart).map(|words| format!(" {words}")).unwrap_or_default()
        ),
        title,
        cell_height: cell_height(gauge),
        colours: chart.key.iter().map(|sign| colour(shown, pattern, sign.colour.as_deref()?)).collect(),
        key: chart.key.iter().map(|sign| meant(shown, chart, pattern, sign)).collect(),
        reading: reading(chart),
        rows: in_words,
        abbreviations: glossary.map(|glossary| glossary.met).unwrap_or_default(),
        facts: facts(chart, &carried, &length),
    }
}

/// Puts equal rounds that follow each other on one line, `Rounds 5 to 7`, and of flat work all rows of the second side if
/// they are alike: `Row 2 and every other WS row`.
fn together(chart: &Chart, rows: Vec<RowInWords>) -> Vec<RowInWords> {
    if chart.between.is_some() {
        return rows;
    }
    if !chart.round {
        return second_side(chart, rows);
    }
    let mut lines: Vec<(usize, usize, RowInWords)> = Vec::new();
    for (at, row) in rows.into_iter().enumerate() {
        match lines.last_mut() {
            Some((_, last, known)) if known.words == row.words && known.beside == row.beside => *last = at,
            _ => lines.push((at, at, row)),
        }
    }
    let line = |(first, last, row): (usize, usize, RowInWords)| match last.saturating_sub(first) {
        0 => row,
        more => {
            let join = if more == 1 { "and" } else { "to" };
            let label = format!("Rounds {} {join} {}", chart.number(first), chart.number(last));
            RowInWords { label, ..row }
        }
    };
    lines.into_iter().map(line).collect()
}

fn second_side(chart: &Chart, mut rows: Vec<RowInWords>) -> Vec<RowInWords> {
    let mut others = rows.iter().skip(1).step_by(2);
    let alike =
        others.next().is_some_and(|first| others.all(|row| row.words == first.words && row.beside == first.beside));
    if !alike || rows.len() < 4 {
        return rows;
    }
    if let Some(second) = rows.get_mut(1) {
        second.label = format!("Row 2 and every other {} row", chart.begins.other().letters());
    }
    let told = |at: &usize| at.is_multiple_of(2) || *at == 1;
    rows.into_iter().enumerate().filter(|(at, _)| told(at)).map(|(_, row)| row).collect()
}

/// Returns how many stitches wide a swatch is; nothing where its width cannot be told without a gauge.
pub fn swatch_stitches(block: &SwatchBlock, chart: &Chart, pattern: Option<&Pattern>) -> Option<u32> {
    match block.width {
        Width::Over(over) => stitches_over(pattern.and_then(gauge_of_charts), over),
        Width::Repeats(times) => {
            let repeat = chart.repeat.as_ref().map_or(chart.width, |repeat| repeat.len());
            let edges = u32::try_from(chart.width.saturating_sub(repeat)).ok()?;
            u32::try_from(repeat).ok()?.checked_mul(times)?.checked_add(edges)
        }
    }
}

/// Returns what is repeated: its columns, and the rows in which they are others.
fn boxed(chart: &Chart) -> Option<String> {
    let columns = |cells: &Range<usize>| {
        let (from, to) =
            (chart.width.saturating_sub(cells.end).saturating_add(1), chart.width.saturating_sub(cells.start));
        if from == to { format!("column {from}") } else { format!("columns {from} to {to}") }
    };
    let repeat = chart.repeat.as_ref()?;
    let mut moved: Vec<(&Range<usize>, Vec<String>)> = Vec::new();
    for (row, cells) in &chart.shifted {
        let number = chart.number(*row).to_string();
        match moved.iter_mut().find(|(known, _)| *known == cells) {
            Some((_, rows)) => rows.push(number),
            None => moved.push((cells, vec![number])),
        }
    }
    let (row, rows) = if chart.round { ("round", "rounds") } else { ("row", "rows") };
    let moved = moved.iter().map(|(cells, numbers)| {
        let word = if numbers.len() == 1 { row } else { rows };
        format!("; in {word} {} {}", words::list(numbers), columns(cells))
    });
    Some(format!(
        "A box marks what is repeated: {}, counted from the right{}.",
        columns(repeat),
        moved.collect::<String>()
    ))
}

fn reading(chart: &Chart) -> String {
    let mut words = if chart.round {
        "Read it from the bottom up, every round from right to left.".to_owned()
    } else {
        "Read it from the bottom up, each row from the side where its number stands.".to_owned()
    };
    match (chart.between.is_some(), chart.round) {
        (true, true) => words.push_str(" It shows every other round."),
        (true, false) => words.push_str(" It shows every other row."),
        (false, _) => {}
    }
    if chart.has_gaps() {
        words.push_str(" Pass over a square without a stitch as if it were not there.");
    }
    if !chart.shifted.is_empty() {
        words.push_str(
            " The box steps aside where the stitches of a repeat do: work what stands between its edges in that row.",
        );
    }
    words
}

fn colour(shown: &Shown<'_>, pattern: Option<&Pattern>, label: &str) -> Option<Colour> {
    let line = pattern?.yarn.iter().find(|line| line.colour.as_deref() == Some(label))?;
    let yarn = shown.catalogue.public_yarn(&line.yarn.as_ref()?.reference())?;
    yarn.shades.get(line.shade.as_ref()?).copied()
}

fn meant(shown: &Shown<'_>, chart: &Chart, pattern: Option<&Pattern>, sign: &Sign) -> Meant {
    let stitch = &sign.stitch;
    let plain = stitch.name == "knit";
    let line =
        sign.colour.as_ref().and_then(|label| pattern?.yarn.iter().find(|line| line.colour.as_ref() == Some(label)));
    // As on a ball band: the shade of a yarn that readers may not know of would tell which it is.
    let yarn = line.and_then(|line| line.yarn.as_ref()).map(|yarn| yarn.reference());
    let may = yarn.is_none_or(|yarn| shown.catalogue.public_yarn(&yarn).is_some());
    let shade = line.filter(|_| may).and_then(|line| line.shade.clone());
    let sides = if plain && sign.colour.is_some() { String::new() } else { in_words(chart, sign) };
    let parts: Vec<String> = [shade, Some(sides)].into_iter().flatten().filter(|part| !part.is_empty()).collect();
    let own = if stitch.cable.is_some() { &stitch.short } else { &stitch.name };
    let name = match (&sign.colour, plain) {
        (Some(colour), true) => colour.clone(),
        (Some(colour), false) => format!("{own} in {colour}"),
        (None, _) => own.clone(),
    };
    Meant { name, words: parts.join("; ") }
}

/// Returns what a stitch is on the side, or on both sides, that the chart is worked from.
fn in_words(chart: &Chart, sign: &Sign) -> String {
    let stitch = &sign.stitch;
    let explained = |word: &str| {
        let meaning = abbreviations::find(word).filter(|row| row.consumed.is_some()).map(|row| row.meaning.clone());
        meaning.filter(|meaning| meaning != word)
    };
    if sign.is_nothing() {
        return "there is nothing to work here".to_owned();
    }
    let own = if stitch.cable.is_some() { None } else { explained(&stitch.short) };
    let right = own.unwrap_or_else(|| stitch.meaning.clone());
    let right = if right == stitch.name { String::new() } else { right };
    // What is only ever worked on one side needs no word for the other.
    let behind = chart.is_worked_from(sign, Side::Wrong);
    let other = stitch.ws_short.as_ref().filter(|other| behind && **other != stitch.short);
    match other {
        None => right,
        Some(other) => {
            let meaning = match explained(other) {
                Some(words) if other.chars().count() > 1 => format!("{other} ({words})"),
                Some(words) => words,
                None => stitch.ws_meaning.clone().unwrap_or_else(|| other.clone()),
            };
            let wrong = format!("on the wrong side {meaning}");
            if right.is_empty() { wrong } else { format!("{right}; {wrong}") }
        }
    }
}

fn in_both(shown: &Shown<'_>, length: FabricLength) -> String {
    let inch = shown.catalogue.studio.settings().inch;
    let both = shown.both(|system| length.show_tenths(system, inch));
    format!("{} ({})", both.first, both.second)
}

fn beside(chart: &Chart, count: &RowCount, float: Option<&Float>, length: &dyn Fn(u32) -> Option<String>) -> String {
    let stitches = |count: u32| if count == 1 { "1 stitch".to_owned() } else { format!("{count} stitches") };
    let mut parts = vec![if chart.repeat.is_some() && count.all != count.repeat {
        format!("{}, {} of them in the repeat", stitches(count.all.produced), count.repeat.produced)
    } else {
        stitches(count.all.produced)
    }];
    if let Some(float) = float {
        parts.push(match length(float.stitches) {
            Some(length) => format!("longest float {}, {length}", float.stitches),
            None => format!("longest float {}", float.stitches),
        });
    }
    parts.join("; ")
}

fn facts(chart: &Chart, carried: &[Option<Float>], length: &dyn Fn(u32) -> Option<String>) -> Vec<String> {
    let mut facts = Vec::new();
    let shares: Vec<String> = colours(chart)
        .iter()
        .map(|one| format!("{} {} ({})", one.colour, one.stitches, in_percent(one.share)))
        .collect();
    if !shares.is_empty() {
        let of = if chart.repeat.is_some() { "the repeat" } else { "the chart" };
        facts.push(format!("Stitches in {of}: {}.", words::list(&shares)));
    }
    let longest = carried.iter().enumerate().filter_map(|(row, float)| Some((row, float.as_ref()?)));
    // The first of several equally long ones.
    let longest = longest.max_by(|a, b| a.1.stitches.cmp(&b.1.stitches).then(b.0.cmp(&a.0)));
    if let Some((row, float)) = longest {
        let row_word = if chart.round { "round" } else { "row" };
        let length = length(float.stitches).map(|length| format!(", {length}")).unwrap_or_default();
        let stitches = words::counted(usize::try_from(float.stitches).unwrap_or(usize::MAX), "stitch", "stitches");
        facts.push(format!(
            "Longest float: {stitches}{length}, of {} in {row_word} {}.",
            float.colour,
            chart.number(row)
        ));
    }
    facts
}

/// Returns hundredths of a percent to a tenth, so that shares add up as far as a reader can see.
fn in_percent(share: i64) -> String {
    let tenths = share.saturating_add(5) / 10;
    Percent::from_hundredths(tenths.saturating_mul(10)).show()
}
