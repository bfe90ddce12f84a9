//! Charts and swatches in a text: their YAML, read into typed values with findings.

mod codes;
mod keys;
mod place;

pub use codes::*;

use super::fenced::Fenced;
use super::field::{Field, Keys, Record, WRONG_TYPE};
use super::origin::Origin;
use super::read::{parse_yaml, place_notes};
use super::studio::Settings;
use super::value::{Covers, Fabric, Face};
use super::yaml::{Node, Notes, On, Trail, Yaml};
use crate::finding::{Code, Finding};
use crate::measure::FabricLength;
use crate::notation::chart::{Chart, Draft, Problem, Side, Trouble, build};
use crate::source::{FilePath, Place};
use keys::{ChartKeys, SwatchKeys};
use place::{place, row_place};
use std::ops::Range;

/// A chart of a text.
#[derive(Clone, Debug)]
pub struct ChartBlock {
    /// What it is called.
    pub name: Option<String>,
    /// The chart.
    pub chart: Chart,
    /// How many stitches every row is said to leave.
    pub stitches: Option<u32>,
    /// Whether it shows everything that is knitted in its colours.
    pub covers_everything: bool,
    /// The block.
    pub source: Fenced,
}

/// Which chart a swatch shows.
#[derive(Clone, Debug)]
pub enum SwatchOf {
    /// One of the same text, by its name.
    Named(String),
    /// Its own.
    Own(Box<ChartBlock>),
}

/// How wide a swatch is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Width {
    /// As wide as this.
    Over(FabricLength),
    /// So many repeats.
    Repeats(u32),
}

/// A swatch of a text.
#[derive(Clone, Debug)]
pub struct SwatchBlock {
    /// Which chart it shows.
    pub of: SwatchOf,
    /// How wide it is.
    pub width: Width,
    /// How often the chart stands one above the other.
    pub up: u32,
    /// The block.
    pub source: Fenced,
}

/// The widest fabric that is drawn: 2 m, in nanometres. A sofa's throw is narrower.
const WIDEST: i64 = 2_000_000_000;

/// The most repeats beside or above each other.
const MOST_REPEATS: u32 = 40;

impl ChartBlock {
    /// Returns where cells of a row stand in the file; the row is counted from 0 from the bottom, cells from the left.
    pub fn row(&self, row: usize, cells: &Range<usize>) -> Range<usize> {
        let has_marks = self.chart.key.iter().all(|sign| sign.character != '|');
        row_place(&self.source, row, cells, has_marks)
    }

    /// Returns where a sign of the key stands in the file.
    pub fn sign(&self, at: usize) -> Range<usize> {
        let name = self.chart.key.get(at).map(|sign| sign.character.to_string()).unwrap_or_default();
        place(&self.source, &["key", &name], On::Value)
    }

    /// Returns where the value of a key stands in the file.
    pub fn value(&self, key: &str) -> Range<usize> {
        place(&self.source, &[key], On::Value)
    }
}

impl SwatchBlock {
    /// Returns where the value of a key stands in the file.
    pub fn value(&self, key: &str) -> Range<usize> {
        place(&self.source, &[key], On::Value)
    }
}

/// Reads a `chart` block; nothing where it is wrong, and then the findings say why.
pub fn read_chart(
    file: &FilePath,
    source: Fenced,
    settings: &Settings,
    findings: &mut Vec<Finding>,
) -> Option<ChartBlock> {
    let yaml = yaml(file, &source, findings)?;
    let keys = keys(file, &source, &yaml, settings, findings, ChartKeys::read)?;
    finish(file, source, keys, findings)
}

/// Reads a `swatch` block; nothing where it is wrong, and then the findings say why.
pub fn read_swatch(
    file: &FilePath,
    source: Fenced,
    settings: &Settings,
    findings: &mut Vec<Finding>,
) -> Option<SwatchBlock> {
    let yaml = yaml(file, &source, findings)?;
    let (swatch, own) = keys(file, &source, &yaml, settings, findings, |node, notes| {
        let keys = Keys::of(node, SwatchKeys::NAME, SwatchKeys::FIELDS, notes)?;
        let swatch = SwatchKeys::read_known(&keys, notes)?;
        if swatch.chart.is_some() {
            keys.check_known(SwatchKeys::NAME, &[SwatchKeys::FIELDS], notes);
            return Some((swatch, None));
        }
        keys.check_known(SwatchKeys::NAME, &[SwatchKeys::FIELDS, ChartKeys::FIELDS], notes);
        let own = ChartKeys::read_known(&keys, notes)?;
        Some((swatch, Some(own)))
    })?;
    let mut wrong = |key: &str, message: String, help: &str| {
        let at = Place { file: file.clone(), span: place(&source, &[key], On::Value) };
        findings.push(Finding::new(&SWATCH_SIZE, at, message).help(help));
    };
    let width = match (swatch.over, swatch.repeats) {
        (Some(_), Some(_)) => {
            wrong("repeats", "the swatch says both `over` and `repeats`".to_owned(), "leave one of them out");
            return None;
        }
        (Some(over), None) => Width::Over(over),
        (None, repeats) => Width::Repeats(repeats.unwrap_or(3)),
    };
    let up = swatch.up.unwrap_or(1);
    let times = 1..=MOST_REPEATS;
    match width {
        Width::Over(over) if over <= FabricLength::ZERO || over.nanometres() > WIDEST => {
            wrong("over", format!("a swatch of {}", over.show_mm()), "write a width up to 2 m, such as `over: 20 cm`");
            return None;
        }
        Width::Repeats(repeats) if !times.contains(&repeats) => {
            wrong("repeats", format!("a swatch of {repeats} repeats"), "write a number from 1 to 40");
            return None;
        }
        _ if !times.contains(&up) => {
            wrong("up", format!("the chart {up} times one above the other"), "write a number from 1 to 40");
            return None;
        }
        _ => {}
    }
    let of = match (swatch.chart, own) {
        (Some(name), _) => SwatchOf::Named(name),
        (None, Some(own)) => SwatchOf::Own(Box::new(finish(file, source.clone(), own, findings)?)),
        (None, None) => return None,
    };
    Some(SwatchBlock { of, width, up, source })
}

/// The block as a document of its own, in bytes of its text.
fn origin(file: &FilePath, source: &Fenced) -> Origin {
    Origin { file: file.clone(), yaml: 0..source.text.len(), root: Box::new([]) }
}

/// Moves what was found in a block's text to where it stands in the file.
fn moved(source: &Fenced, found: Vec<Finding>) -> impl Iterator<Item = Finding> {
    found.into_iter().map(|mut finding| {
        finding.at.span = source.place(&finding.at.span);
        if let Some((place, _)) = &mut finding.also {
            place.span = source.place(&place.span);
        }
        finding
    })
}

fn yaml(file: &FilePath, source: &Fenced, findings: &mut Vec<Finding>) -> Option<Yaml> {
    let mut found = Vec::new();
    let yaml = parse_yaml(&origin(file, source), &source.text, &mut found);
    findings.extend(moved(source, found));
    let yaml = yaml?;
    if matches!(yaml, Yaml::Map(_) | Yaml::Null) {
        return Some(yaml);
    }
    let span = source.place(&(0..source.text.lines().next().map_or(0, str::len)));
    let message = format!("the block holds {}, not keys with their values", yaml.what());
    let finding = Finding::new(&WRONG_TYPE, Place { file: file.clone(), span }, message);
    findings.push(finding.help("write `key:` with what each character means, and `rows:` with a row a line"));
    None
}

fn keys<T>(
    file: &FilePath,
    source: &Fenced,
    yaml: &Yaml,
    settings: &Settings,
    findings: &mut Vec<Finding>,
    read: impl Fn(&Node<'_>, &mut Notes<'_>) -> Option<T>,
) -> Option<T> {
    let mut notes = Notes::new(settings);
    let keys = read(&Node { value: yaml, trail: Trail::Root }, &mut notes);
    let clean = notes.notes.is_empty();
    let found = place_notes(&origin(file, source), &source.text, yaml, notes);
    findings.extend(moved(source, found));
    // What was left out of a list or a map would be missing from the chart, and told of as missing.
    keys.filter(|_| clean)
}

fn finish(file: &FilePath, source: Fenced, keys: ChartKeys, findings: &mut Vec<Finding>) -> Option<ChartBlock> {
    let draft = Draft {
        rows: keys.rows.0,
        key: keys.key.0.into_iter().map(|(character, meaning)| (character, meaning.0)).collect(),
        repeat: keys.repeat.map(|repeat| (repeat.from, repeat.to)),
        round: keys.worked == Some(Fabric::Round),
        begins: if keys.begins == Some(Face::Wrong) { Side::Wrong } else { Side::Right },
        between: keys.other_rows,
    };
    let covers_everything = keys.covers == Some(Covers::Everything);
    match build(&draft) {
        Ok(chart) => Some(ChartBlock { name: keys.name, chart, stitches: keys.stitches, covers_everything, source }),
        Err(wrong) => {
            findings.extend(wrong.into_iter().map(|(trouble, problem)| {
                let span = match &trouble {
                    Trouble::Row(row, cells) => row_place(&source, *row, cells, draft.has_marks()),
                    Trouble::Key(at) => {
                        let name = draft.key.get(*at).map_or("", |(name, _)| name);
                        place(&source, &["key", name], On::Value)
                    }
                    Trouble::Repeat => place(&source, &["repeat"], On::Value),
                    Trouble::Chart => place(&source, &["rows"], On::Key),
                };
                Finding::new(code(&problem), Place { file: file.clone(), span }, problem.to_string())
                    .help(problem.help())
            }));
            None
        }
    }
}

fn code(problem: &Problem) -> &'static Code {
    match problem {
        Problem::Empty => &CHART_EMPTY,
        Problem::Width { .. } => &CHART_WIDTH,
        Problem::Unknown(_) => &CHART_CHARACTER,
        Problem::NotOne(_) | Problem::NoStitch(_) => &CHART_KEY,
        Problem::Cut { .. } | Problem::AcrossRepeat(_) => &CHART_CABLE,
        Problem::Repeat { .. } | Problem::Marks { .. } | Problem::Unmarked { .. } | Problem::RepeatWidth { .. } => {
            &CHART_REPEAT
        }
    }
}
