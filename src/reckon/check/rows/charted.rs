//! A chart and its rows in words are the same, stitch by stitch.

use super::counts::left_from_binding_off;
use super::{Blocks, place};
use crate::entry::{ChartBlock, Entry, Pattern};
use crate::finding::{Code, Finding, Severity, nearest};
use crate::notation::chart::counts::sum;
use crate::notation::compare::{Unlike, Words, compare, same};
use crate::notation::rows::{Doing, Item, Label, Reading, Side, Span, Statement, once, read_items};
use crate::source::Place;
use std::collections::BTreeMap;

/// Rows in words that are not those of the chart they stand for.
pub static WORDS_UNLIKE: Code = Code {
    name: "words-unlike",
    severity: Severity::Warning,
    what: "Rows under a heading that names a chart, `Chart lamps:`, are not worked as the chart shows.",
    why: "Whoever reads the words knits another piece than whoever reads the chart.",
    bad: "key: { o: knit, y: yo, d: k2tog } … rows: [oydo]\nChart lamps:\nRow 1: K1, yo, k2tog, k1.",
    good: "key: { o: knit, y: yo, d: k2tog } … rows: [oydo]\nChart lamps:\nRow 1: K1, k2tog, yo, k1.",
};

/// A heading of rows that names a chart which is not there.
pub static WORDS_CHARTLESS: Code = Code {
    name: "words-chartless",
    severity: Severity::Warning,
    what: "A heading in a `rows` block, `Chart lamps:`, names a chart that is not in the same text.",
    why: "The rows under it are held against no chart, so a mistake in either would not be found.",
    bad: "name: lamps … Chart lmaps:",
    good: "name: lamps … Chart lamps:",
};

/// Rows that stand for a chart.
struct Section<'a> {
    chart: &'a ChartBlock,
    block: usize,
    heading: Span,
    rows: BTreeMap<u32, &'a Statement>,
    others: Option<(u32, &'a Statement)>,
}

/// Holds the rows under a heading that names a chart of the text against it.
pub fn check(entry: &Entry, pattern: &Pattern, blocks: &Blocks, findings: &mut Vec<Finding>) {
    if entry.prose.charts.is_empty() {
        return;
    }
    for (block, written) in blocks.written.iter().enumerate() {
        let mut section: Option<Section<'_>> = None;
        for statement in &written.statements {
            match &statement.doing {
                Doing::Heading { .. } => {
                    close(section.take(), entry, pattern, blocks, findings);
                    let chart = headed(entry, block, statement, findings);
                    section = chart.map(|chart| Section {
                        chart,
                        block,
                        heading: statement.at.clone(),
                        rows: BTreeMap::new(),
                        others: None,
                    });
                }
                Doing::CastOn(_) | Doing::PickUp(_) => close(section.take(), entry, pattern, blocks, findings),
                Doing::Row { label: Some(label), .. } => {
                    if let Some(section) = &mut section {
                        section.add(label, statement);
                    }
                }
                _ => {}
            }
        }
        close(section, entry, pattern, blocks, findings);
    }
}

/// The chart that a heading names: `Chart lamps:`, `Chart lamps in words:`, or `Chart:` where there is one.
fn headed<'a>(
    entry: &'a Entry,
    block: usize,
    statement: &Statement,
    findings: &mut Vec<Finding>,
) -> Option<&'a ChartBlock> {
    let at = place(entry, block, &statement.at);
    let words = entry.prose.stretch(&at.span).trim();
    let (first, rest) = words.split_once(' ').unwrap_or((words, ""));
    if !first.eq_ignore_ascii_case("chart") {
        return None;
    }
    let lower = rest.to_lowercase();
    let length = ["in words", "written out"].iter().find_map(|ending| Some(lower.strip_suffix(ending)?.len()));
    let name = length.and_then(|length| rest.get(..length)).unwrap_or(rest).trim_end_matches([' ', ',']);
    let charts = &entry.prose.charts;
    if let ([only], "") = (charts.as_slice(), name) {
        return Some(only);
    }
    let is = |chart: &&ChartBlock| chart.name.as_ref().is_some_and(|own| own.eq_ignore_ascii_case(name));
    let found = charts.iter().find(is);
    let mut names = charts.iter().filter_map(|chart| chart.name.as_deref()).peekable();
    if found.is_none() && !name.is_empty() && names.peek().is_some() && entry.prose.unread_charts == 0 {
        let help = match nearest(name, names.clone()) {
            Some(near) => format!("did you mean `Chart {near}:`?"),
            None => format!("this text has {}", names.map(|name| format!("`{name}`")).collect::<Vec<_>>().join(", ")),
        };
        let message = format!("there is no chart `{name}` in this text");
        findings.push(Finding::new(&WORDS_CHARTLESS, at, message).help(help));
    }
    found
}

fn close(section: Option<Section<'_>>, entry: &Entry, pattern: &Pattern, blocks: &Blocks, findings: &mut Vec<Finding>) {
    let Some(section) = section.filter(|section| !section.rows.is_empty() || section.others.is_some()) else { return };
    section.numbers(entry, findings);
    let chart = &section.chart.chart;
    for row in 0..chart.rows.len() {
        let Some((statement, label)) = section.row(chart.number(row)) else { continue };
        if section.side(entry, row, label, findings) {
            // Read from the other end nothing would be alike.
            return;
        }
        if let Some(finding) = section.compared(entry, pattern, blocks, row, statement) {
            findings.push(finding);
        }
    }
    section.between(entry, pattern, blocks, findings);
}

impl<'a> Section<'a> {
    fn add(&mut self, label: &'a Label, statement: &'a Statement) {
        for number in &label.numbers {
            self.rows.entry(*number).or_insert(statement);
        }
        if let Some(number) = label.others {
            self.others = Some((number, statement));
        }
    }

    /// The words of a row by its number.
    fn row(&self, number: usize) -> Option<(&'a Statement, &'a Label)> {
        let number = u32::try_from(number).ok()?;
        let others = || self.others.filter(|(other, _)| other % 2 == number % 2).map(|(_, statement)| statement);
        let statement = self.rows.get(&number).copied().or_else(others)?;
        match &statement.doing {
            Doing::Row { label: Some(label), .. } => Some((statement, label)),
            _ => None,
        }
    }

    /// What is done in a row, in that which it is like.
    fn items(&self, statement: &'a Statement, depth: u32) -> Option<&'a [Item]> {
        let Doing::Row { items, .. } = &statement.doing else { return None };
        if statement.trouble.is_some() || depth > 8 {
            return None;
        }
        match items.as_slice() {
            [Item::SameAs { row, .. }] => {
                let (other, _) = self.row(usize::try_from(*row).ok()?)?;
                self.items(other, depth + 1)
            }
            items => Some(items),
        }
    }

    fn name(&self) -> String {
        self.chart.name.as_ref().map_or_else(|| "the chart".to_owned(), |name| format!("chart `{name}`"))
    }

    /// Finds rows that only one of the two has.
    fn numbers(&self, entry: &Entry, findings: &mut Vec<Finding>) {
        let chart = &self.chart.chart;
        let count = chart.rows.len();
        let missing: Vec<String> = (0..count)
            .map(|row| chart.number(row))
            .filter(|number| self.row(*number).is_none())
            .map(|number| number.to_string())
            .collect();
        if !missing.is_empty() {
            let rows = if missing.len() == 1 { "row" } else { "rows" };
            let message = format!("the words have no {rows} {} of {}", missing.join(", "), self.name());
            let also = Place { file: entry.origin.file.clone(), span: self.chart.value("rows") };
            let finding = Finding::new(&WORDS_UNLIKE, place(entry, self.block, &self.heading), message);
            findings.push(finding.help("write every row of the chart").also(also, "the chart"));
        }
        let last = chart.number(count.saturating_sub(1)).saturating_add(usize::from(chart.between.is_some()));
        let beyond = self.rows.iter().find(|(number, _)| usize::try_from(**number).is_ok_and(|number| number > last));
        if let Some((number, statement)) = beyond {
            let message = format!("{} has no row {number}", self.name());
            let finding = Finding::new(&WORDS_UNLIKE, place(entry, self.block, &statement.at), message);
            findings.push(finding.help("begin what is no longer the chart with a heading of its own: `Yoke:`"));
        }
    }

    /// Finds a row that is on another side in words than in the chart.
    fn side(&self, entry: &Entry, row: usize, label: &Label, findings: &mut Vec<Finding>) -> bool {
        let chart = &self.chart.chart;
        let side = chart.side(row);
        let letters = match label.side {
            Some(Side::Right) => "RS",
            Some(Side::Wrong) => "WS",
            None => side.letters(),
        };
        let number = chart.number(row);
        let message = if chart.round && !label.round {
            format!("row {number} is worked flat, and {} is worked in the round", self.name())
        } else if !chart.round && label.round {
            format!("round {number} is worked in the round, and {} is worked flat", self.name())
        } else if !chart.round && letters != side.letters() {
            format!("row {number} is {letters}, and in {} it is {}", self.name(), side.letters())
        } else {
            return false;
        };
        let finding = Finding::new(&WORDS_UNLIKE, place(entry, self.block, &label.at), message);
        findings.push(finding.help("change the label, or `round` and `begins` of the chart"));
        true
    }

    fn compared(
        &self,
        entry: &Entry,
        pattern: &Pattern,
        blocks: &Blocks,
        row: usize,
        statement: &'a Statement,
    ) -> Option<Finding> {
        let words = self.words(entry, blocks, self.items(statement, 0)?);
        let unlike = (0..pattern.size_count())
            .filter(|size| statement.is_for(*size))
            .find_map(|size| compare(&self.chart.chart, row, words, size))?;
        let number = self.chart.chart.number(row);
        let which = if self.chart.chart.round { "round" } else { "row" };
        let name = self.name();
        let (message, at) = match unlike {
            Unlike::Repeat { chart, words, at } => {
                (format!("{which} {number} repeats {words} stitches, and {name} repeats {chart}"), at)
            }
            Unlike::Stitch { bound_off: Some(counted), at, .. } => {
                let at = place(entry, self.block, &at);
                return Some(left_from_binding_off(at, counted, &format!("{which} {number} is {name} only if")));
            }
            Unlike::Stitch { number: stitch, chart, words, at, .. } => {
                let message = match (chart, words) {
                    (Some(chart), Some(words)) => {
                        format!("stitch {stitch} of {which} {number} is `{words}`, and `{chart}` in {name}")
                    }
                    (Some(chart), None) => {
                        format!("{which} {number} ends before its stitch {stitch}, which is `{chart}` in {name}")
                    }
                    (None, words) => {
                        format!("{which} {number} goes on with `{}` where {name} has ended", words.unwrap_or_default())
                    }
                };
                (message, at)
            }
        };
        let cells = 0..self.chart.chart.width;
        let also = Place { file: entry.origin.file.clone(), span: self.chart.row(row, &cells) };
        let help = "mend whichever of the two is wrong; stitches are counted as they are worked, two repeats of them";
        Some(
            Finding::new(&WORDS_UNLIKE, place(entry, self.block, &at), message)
                .help(if self.chart.chart.repeat.is_some() { help } else { "mend whichever of the two is wrong" })
                .also(also, "the row in the chart"),
        )
    }

    fn words(&self, entry: &'a Entry, blocks: &'a Blocks, items: &'a [Item]) -> Words<'a> {
        let text = entry.prose.rows.get(self.block).map_or("", |block| block.text.as_str());
        Words { items, text, lexicon: &blocks.lexicon }
    }

    /// Holds the rows between those that the chart shows against what it says of them.
    fn between(&self, entry: &Entry, pattern: &Pattern, blocks: &Blocks, findings: &mut Vec<Finding>) {
        let chart = &self.chart.chart;
        let Some(text) = &chart.between else { return };
        let Ok(items) = read_items(text, &blocks.lexicon, blocks.style) else { return };
        let said = Words { items: &items, text, lexicon: &blocks.lexicon };
        let mut told: Option<Span> = None;
        for row in 0..chart.rows.len() {
            let Some((statement, _)) = self.row(chart.number(row).saturating_add(1)) else { continue };
            let Some(items) = self.items(statement, 0) else { continue };
            let whole = chart.rows.get(row).map_or(0, |row| i64::from(sum(chart, row).produced));
            let size = 0..pattern.size_count();
            let fixed = |size: usize| once(items, size, Reading::More).map_or(whole, |counts| counts.takes);
            let words = self.words(entry, blocks, items);
            let unlike = size.map(|size| same(words, said, fixed(size), size)).any(|same| same == Some(false));
            if unlike && told.as_ref() != Some(&statement.at) {
                told = Some(statement.at.clone());
                let message = format!("this row is not worked as the other rows of {}: `{text}`", self.name());
                let also = Place { file: entry.origin.file.clone(), span: self.chart.value("other rows") };
                let finding = Finding::new(&WORDS_UNLIKE, place(entry, self.block, &statement.at), message);
                findings.push(finding.help("mend whichever of the two is wrong").also(also, "what the chart says"));
            }
        }
    }
}
