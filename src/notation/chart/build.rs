//! Makes a chart of what was written, or says what is wrong with it.

use super::marks::{MarkedRow, repeats};
use super::{Chart, Side, Sign, Stretch, Worked};
use crate::finding::nearest;
use crate::standards::chart_symbols::{self, Stitch};
use std::collections::HashMap;
use std::fmt;
use std::ops::Range;

/// What a character was said to mean.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Means {
    /// The stitch's name.
    pub stitch: Option<String>,
    /// The colour's label.
    pub colour: Option<String>,
}

/// A chart as it was written.
#[derive(Clone, Debug)]
pub struct Draft {
    /// The rows from the bottom up, each from left to right; spaces count for nothing, and where the key has no `|` two of
    /// them stand round what is repeated in that row.
    pub rows: Vec<String>,
    /// What each character means.
    pub key: Vec<(String, Means)>,
    /// The first and the last column of the repeat, counted from 1 at the right, where knitters begin.
    pub repeat: Option<(u32, u32)>,
    /// Whether it is worked in the round.
    pub round: bool,
    /// The side that row 1 is worked from.
    pub begins: Side,
    /// How the rows between those of the chart are worked, where it shows only every other row.
    pub between: Option<String>,
}

impl Draft {
    /// Returns whether `|` in a row is an edge of what is repeated: it is unless the key says what it stands for.
    pub fn has_marks(&self) -> bool {
        self.key.iter().all(|(written, _)| written != "|")
    }
}

/// Where a draft is wrong.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Trouble {
    /// In a row, counted from 0 from the bottom, at some of its characters that are no spaces.
    Row(usize, Range<usize>),
    /// At a character of the key, by its place.
    Key(usize),
    /// At the repeat.
    Repeat,
    /// In the chart as a whole.
    Chart,
}

/// What is wrong.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Problem {
    /// There are no rows, or only empty ones.
    Empty,
    /// A row has another number of cells than the first.
    Width {
        /// The row's number.
        row: usize,
        /// Its cells.
        cells: usize,
        /// Those of the first.
        first: usize,
    },
    /// A character that the key does not explain.
    Unknown(char),
    /// A key that is not one character.
    NotOne(String),
    /// A name that is no stitch.
    NoStitch(String),
    /// So many neighbouring cells of a cable that spans another number.
    Cut {
        /// The cable.
        name: String,
        /// How many cells it spans.
        cells: u32,
        /// How many there are.
        run: usize,
    },
    /// A cable of which the repeat holds only a part.
    AcrossRepeat(String),
    /// A repeat that begins before the first column, ends after the last or ends before it begins.
    Repeat {
        /// The columns that the chart has.
        columns: usize,
    },
    /// A row with `|` that are not two, one at either end of what is repeated.
    Marks {
        /// The row's number.
        row: usize,
        /// How many there are.
        marks: usize,
    },
    /// A row that does not say what is repeated, where others do.
    Unmarked {
        /// The row's number.
        row: usize,
        /// That of one that does.
        marked: usize,
    },
    /// A row that repeats another number of cells than the others.
    RepeatWidth {
        /// The row's number.
        row: usize,
        /// The cells it repeats.
        cells: usize,
        /// Those that the others repeat.
        others: usize,
    },
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => write!(f, "the chart has no rows"),
            Self::Width { row, cells, first } => write!(f, "row {row} has {cells} cells, and row 1 has {first}"),
            Self::Unknown(sign) => write!(f, "the key does not say what `{sign}` is"),
            Self::NotOne(key) => write!(f, "`{key}` in the key is not one character"),
            Self::NoStitch(name) => write!(f, "`{name}` is not a stitch that charts have"),
            Self::Cut { name, cells, run } => write!(f, "`{name}` spans {cells} cells, and here are {run}"),
            Self::AcrossRepeat(name) => write!(f, "the edge of the repeat cuts through `{name}`"),
            Self::Repeat { columns } => write!(f, "the repeat is not within the {columns} columns of the chart"),
            Self::Marks { row, marks: 2 } => write!(f, "row {row} has nothing between its two `|`"),
            Self::Marks { row, marks } => write!(f, "row {row} has {marks} `|`, and a repeat has two edges"),
            Self::Unmarked { row, marked } => {
                write!(f, "row {row} does not say what is repeated, and row {marked} does")
            }
            Self::RepeatWidth { row, cells, others } => {
                write!(f, "row {row} repeats {cells} cells, and the others {others}")
            }
        }
    }
}

impl Problem {
    /// Returns what to do about it.
    pub fn help(&self) -> String {
        match self {
            Self::Empty => "write its rows under `rows`, the first one worked at the top of the list".to_owned(),
            Self::Width { .. } => {
                "add the missing cells; where the knitting has no stitch, a character that the key calls `no stitch`"
                    .to_owned()
            }
            Self::Unknown(_) => "add it to `key`, or write a character that stands there".to_owned(),
            Self::NotOne(_) => "a cell is one character; put it in quotes if YAML reads it otherwise".to_owned(),
            Self::NoStitch(name) => match (chart_symbols::instead(name), nearest(name, chart_symbols::names())) {
                (Some(sign), _) => format!("charts have the sign of `{sign}` for it: write that"),
                (None, Some(near)) => format!("did you mean `{near}`?"),
                (None, None) => "write a stitch such as `knit`, `yo`, `k2tog` or `2/2 LC`".to_owned(),
            },
            Self::Cut { cells, .. } => format!("write its character {cells} times for each crossing"),
            Self::AcrossRepeat(_) => "move the repeat so that the whole cable is inside it or outside".to_owned(),
            Self::Repeat { columns } => {
                format!("count columns from the right, where row 1 begins: from 1 to {columns}")
            }
            Self::Marks { .. } => {
                "write one `|` before the first cell that is repeated and one behind the last, or explain `|` in `key`"
                    .to_owned()
            }
            Self::Unmarked { .. } => "put a `|` at both edges of it, or give `repeat` for the rows without".to_owned(),
            Self::RepeatWidth { .. } => {
                "the box may move from row to row and stays as wide; `no stitch` fills a gap".to_owned()
            }
        }
    }
}

/// Makes a chart of a draft. In the round every row is worked from the right side, whatever `begins` says.
///
/// A name in the key that is no stitch is taken for a colour: which colours a pattern has is not known here.
///
/// # Errors
/// Everything that is wrong, each with where.
pub fn build(draft: &Draft) -> Result<Chart, Vec<(Trouble, Problem)>> {
    let mut wrong = Vec::new();
    let key = read_key(&draft.key, &mut wrong);
    let rows: Vec<MarkedRow> = draft.rows.iter().map(|row| MarkedRow::read(row, draft.has_marks())).collect();
    let width = rows.first().map_or(0, |row| row.cells.len());
    if width == 0 {
        wrong.push((Trouble::Chart, Problem::Empty));
    }
    let (repeat, shifted) = repeats(draft.repeat, &rows, width, &mut wrong);
    let by_character: HashMap<char, usize> =
        key.iter().enumerate().filter_map(|(at, sign)| Some((sign.as_ref()?.character, at))).collect();
    let mut worked = Vec::with_capacity(rows.len());
    // Each character is told of once; those of a key that is too long were told of there.
    let mut told: Vec<char> =
        draft.key.iter().filter(|(key, _)| key.chars().count() != 1).flat_map(|(key, _)| key.chars()).collect();
    for (at, MarkedRow { cells: row, .. }) in rows.iter().enumerate() {
        if row.len() != width {
            let problem = Problem::Width { row: at.saturating_add(1), cells: row.len(), first: width };
            wrong.push((Trouble::Row(at, 0..row.len()), problem));
        }
        let repeat = shifted.get(&at).or(repeat.as_ref());
        worked.push(read_row(at, row, &key, &by_character, repeat, &mut told, &mut wrong));
    }
    if !wrong.is_empty() {
        return Err(wrong);
    }
    let begins = if draft.round { Side::Right } else { draft.begins };
    let between = draft.between.clone();
    let key = key.into_iter().flatten().collect();
    Ok(Chart { key, rows: worked, width, repeat, shifted, round: draft.round, begins, between })
}

/// Reads the key; what is wrong leaves a gap.
fn read_key(key: &[(String, Means)], wrong: &mut Vec<(Trouble, Problem)>) -> Vec<Option<Sign>> {
    let mut signs = Vec::with_capacity(key.len());
    for (at, (written, means)) in key.iter().enumerate() {
        let mut characters = written.chars();
        let character = match (characters.next(), characters.next()) {
            (Some(only), None) if !only.is_whitespace() => only,
            _ => {
                wrong.push((Trouble::Key(at), Problem::NotOne(written.clone())));
                signs.push(None);
                continue;
            }
        };
        let stitch = match &means.stitch {
            None => chart_symbols::find("knit"),
            Some(name) => chart_symbols::find(name),
        };
        if let (None, Some(name)) = (&stitch, &means.stitch) {
            wrong.push((Trouble::Key(at), Problem::NoStitch(name.clone())));
        }
        // A character whose meaning is wrong is still known, so that its cells are no further mistakes.
        let stitch = stitch.unwrap_or_else(unread);
        signs.push(Some(Sign { character, stitch, colour: means.colour.clone() }));
    }
    signs
}

/// What stands in for a stitch that could not be read, until the whole chart is given up.
fn unread() -> Stitch {
    Stitch {
        name: String::new(),
        short: String::new(),
        ws_short: None,
        meaning: String::new(),
        ws_meaning: None,
        cells: 1,
        consumed: 1,
        produced: 1,
        cable: None,
    }
}

fn read_row(
    at: usize,
    row: &[char],
    key: &[Option<Sign>],
    by_character: &HashMap<char, usize>,
    repeat: Option<&Range<usize>>,
    told: &mut Vec<char>,
    wrong: &mut Vec<(Trouble, Problem)>,
) -> Vec<Worked> {
    let mut worked = Vec::with_capacity(row.len());
    let mut rest = row;
    let mut cell = 0_usize;
    while let Some(character) = rest.first() {
        let run = rest.iter().take_while(|other| *other == character).count();
        let end = cell.saturating_add(run);
        let sign = by_character.get(character).copied();
        match sign.and_then(|sign| Some((sign, key.get(sign)?.as_ref()?))) {
            None if told.contains(character) => {}
            None => {
                told.push(*character);
                wrong.push((Trouble::Row(at, cell..end), Problem::Unknown(*character)));
            }
            Some((sign, Sign { stitch, .. })) => {
                let span = usize::try_from(stitch.cells).unwrap_or(1).max(1);
                if run % span != 0 {
                    let problem = Problem::Cut { name: stitch.name.clone(), cells: stitch.cells, run };
                    wrong.push((Trouble::Row(at, cell..end), problem));
                }
                for first in (cell..end).step_by(span) {
                    let inside = |edge: usize| edge > first && edge < first.saturating_add(span);
                    if repeat.is_some_and(|repeat| inside(repeat.start) || inside(repeat.end)) {
                        let problem = Problem::AcrossRepeat(stitch.name.clone());
                        wrong.push((Trouble::Row(at, first..first.saturating_add(span).min(end)), problem));
                    }
                    let stretch = match repeat {
                        Some(repeat) if first < repeat.start => Stretch::Left,
                        Some(repeat) if first >= repeat.end => Stretch::Right,
                        _ => Stretch::Repeat,
                    };
                    worked.push(Worked { sign, cell: first, stretch });
                }
            }
        }
        rest = rest.get(run..).unwrap_or_default();
        cell = end;
    }
    worked
}
