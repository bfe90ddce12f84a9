//! Charts and swatches in a text: their YAML, read into typed values with findings.

use super::fenced::Fenced;
use super::field::{Field, Keys, Record, WRONG_TYPE, record, wrong_type};
use super::origin::Origin;
use super::read::{parse_yaml, place_notes};
use super::schema::{Definitions, Schema};
use super::studio::Settings;
use super::value::{Covers, Fabric, Face, Map};
use super::yaml::{Node, Notes, On, Places, Step, Trail, Yaml};
use crate::finding::{Code, Finding, Severity};
use crate::measure::FabricLength;
use crate::notation::chart::{Chart, Draft, Means, Problem, Side, Trouble, build};
use crate::source::{FilePath, Place};
use crate::standards::chart_symbols;
use std::ops::Range;

/// A character in a chart that its key does not explain.
pub static CHART_CHARACTER: Code = Code {
    name: "chart-character",
    severity: Severity::Error,
    what: "A row of a chart holds a character that its key does not explain.",
    why: "The cell could not be drawn, named or counted.",
    bad: "key: { x: CC }\nrows: [xox]",
    good: "key: { x: CC, o: MC }\nrows: [xox]",
};

/// Rows of a chart that are not equally wide.
pub static CHART_WIDTH: Code = Code {
    name: "chart-width",
    severity: Severity::Error,
    what: "A row of a chart has more or fewer cells than the first.",
    why: "Cells would no longer stand above those they are knitted into.",
    bad: "rows: [xox, xo]",
    good: "key: { x: CC, o: MC, \"#\": no stitch }\nrows: [xox, \"xo#\"]",
};

/// A key of a chart that is not one character with a meaning.
pub static CHART_KEY: Code = Code {
    name: "chart-key",
    severity: Severity::Error,
    what: "A line of a chart's key is not one character, or names a stitch that charts do not have.",
    why: "A cell is one character, and only a known stitch can be drawn, put in words and counted.",
    bad: "key: { xx: CC, o: { stitch: k7tog } }",
    good: "key: { x: CC, o: { stitch: k2tog } }",
};

/// A cable that has not its number of cells, or is cut by the repeat.
pub static CHART_CABLE: Code = Code {
    name: "chart-cable",
    severity: Severity::Error,
    what: "A cable of a chart has more or fewer cells than it spans, or the repeat holds only a part of it.",
    why: "A cable is worked whole; half of one cannot be drawn or knitted.",
    bad: "key: { c: 2/2 LC, p: purl }\nrows: [pcccp]",
    good: "key: { c: 2/2 LC, p: purl }\nrows: [pccccp]",
};

/// A repeat that is not within its chart.
pub static CHART_REPEAT: Code = Code {
    name: "chart-repeat",
    severity: Severity::Error,
    what: "The repeat of a chart ends before it begins, or reaches beyond the chart's columns.",
    why: "The box round the repeat could not be drawn, and no row could be put in words.",
    bad: "repeat: { from: 3, to: 14 } in a chart of 12 columns",
    good: "repeat: { from: 1, to: 12 }",
};

/// A chart without rows.
pub static CHART_EMPTY: Code = Code {
    name: "chart-empty",
    severity: Severity::Error,
    what: "A chart has no rows.",
    why: "There is nothing to draw.",
    bad: "rows: []",
    good: "rows: [xox, oxo]",
};

/// A swatch of no size, of two, or of one beyond all measure.
pub static SWATCH_SIZE: Code = Code {
    name: "swatch-size",
    severity: Severity::Error,
    what: "A swatch says both `over` and `repeats`, or asks for none or more than can be seen.",
    why: "Only one of the two can be drawn, and a page with a wall of stitches never opens on a phone.",
    bad: "chart: reeds\nover: 20 cm\nrepeats: 3",
    good: "chart: reeds\nover: 20 cm",
};

record! {
    /// What stands in a `chart` block.
    pub struct ChartKeys: "a chart" {
        /// What it is called; a swatch names its chart by it.
        "name" => name: Option<String> = "reeds",
        /// Whether it is worked flat, as it is if nothing is said, or in the round.
        "worked" => worked: Option<Fabric>,
        /// The side that row 1 is worked from; the right one if nothing is said.
        "begins" => begins: Option<Face>,
        /// How the rows between are worked, where the chart shows only every other row.
        "other rows" => other_rows: Option<String> = "purl",
        /// What each character stands for.
        "key" => key: Map<Meaning> = "{ o: MC, x: CC }",
        /// The rows from the bottom up, the first one worked first; each from left to right, a character for a cell.
        "rows" => rows: ChartRows,
        /// The columns that are repeated, counted from the right.
        "repeat" => repeat: Option<RepeatKeys>,
        /// How many stitches every row leaves, where it is the same throughout.
        "stitches" => stitches: Option<u32> = "18",
        /// Whether it shows everything that is knitted in its colours, or a part; a part if nothing is said.
        "covers" => covers: Option<Covers>,
    }
}

record! {
    /// The columns of a chart that are repeated.
    pub struct RepeatKeys: "a repeat" {
        /// The first column, counted from the right, where a right-side row begins.
        "from" => from: u32 = "3",
        /// The last column.
        "to" => to: u32 = "14",
    }
}

record! {
    /// What a character stands for where it has both a stitch and a colour.
    pub struct MeaningKeys: "what a character of a chart means" {
        /// The stitch.
        "stitch" => stitch: Option<String> = "k2tog",
        /// The label of the colour in the pattern's list of yarns.
        "colour" => colour: Option<String> = "CC",
    }
}

record! {
    /// How much of a chart is shown as fabric.
    pub struct SwatchKeys: "a swatch" {
        /// The name of the chart, where it is not written out here.
        "chart" => chart: Option<String> = "reeds",
        /// How wide the fabric is.
        "over" => over: Option<FabricLength>,
        /// How often the repeat stands side by side; three times if neither this nor a width is given.
        "repeats" => repeats: Option<u32> = "3",
        /// How often the chart stands one above the other; once if nothing is said.
        "up" => up: Option<u32> = "2",
    }
}

/// What a character stands for: a stitch's name or a colour's label, or both.
#[derive(Clone, Debug)]
pub struct Meaning(pub Means);

impl Field for Meaning {
    const WHAT: &'static str = "a colour's label, a stitch's name, or `{ stitch: NAME, colour: LABEL }`";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        if let Yaml::Map(_) = node.value {
            let MeaningKeys { stitch, colour } = MeaningKeys::read(node, notes)?;
            return Some(Self(Means { stitch, colour }));
        }
        let text = String::read(node, notes)?;
        // What is no stitch is a colour, and whether the pattern has it is asked when its yarns are known.
        let is_stitch = chart_symbols::find(&text).is_some();
        let (stitch, colour) = if is_stitch { (Some(text), None) } else { (None, Some(text)) };
        Some(Self(Means { stitch, colour }))
    }

    fn schema(definitions: &mut Definitions) -> Schema {
        String::schema(definitions).or(MeaningKeys::schema(definitions))
    }
}

/// The rows of a chart: a text of several lines, or a list.
#[derive(Clone, Debug)]
pub struct ChartRows(pub Vec<String>);

impl Field for ChartRows {
    const WHAT: &'static str = "a row a line";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        match node.value {
            Yaml::List(items) => {
                let row = |(at, value)| String::read(&Node { value, trail: Trail::Item(&node.trail, at) }, notes);
                items.iter().enumerate().map(row).collect::<Option<Vec<String>>>().map(Self)
            }
            Yaml::Null | Yaml::Map(_) => {
                wrong_type(node, Self::WHAT, notes);
                None
            }
            _ => {
                let text = String::read(node, notes)?;
                Some(Self(text.lines().filter(|line| !line.trim().is_empty()).map(str::to_owned).collect()))
            }
        }
    }

    fn schema(_: &mut Definitions) -> Schema {
        Schema::of(&["string", "array"], "[xox, oxo]").else_write(Self::WHAT)
    }
}

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
        row_place(&self.source, row, cells)
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
                    Trouble::Row(row, cells) => row_place(&source, *row, cells),
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
        Problem::Repeat { .. } => &CHART_REPEAT,
    }
}

/// Returns where a key or a value stands in the file.
fn place(source: &Fenced, keys: &[&str], on: On) -> Range<usize> {
    let way: Vec<Step> = keys.iter().map(|key| Step::Key(Box::from(*key))).collect();
    let span = Places::of(&source.text).find(&way, on);
    let lines = source.text.get(span.clone()).and_then(|text| text.lines().next()).map_or(0, str::len);
    if span.is_empty() { source.opening() } else { source.place(&(span.start..span.start.saturating_add(lines))) }
}

/// Returns where cells of a row stand in the file.
fn row_place(source: &Fenced, row: usize, cells: &Range<usize>) -> Range<usize> {
    let places = Places::of(&source.text);
    let rows = [Step::Key(Box::from("rows"))];
    let item = [rows.to_vec(), vec![Step::Item(row)]].concat();
    let list = places.find(&rows, On::Value);
    let span = match places.find(&item, On::Value) {
        // In a text of several lines an item has no place, and the nearest thing that has one is the key.
        span if span != places.find(&rows, On::Key) && span.start >= list.start && span != list => span,
        _ => line_of_rows(&source.text, places.find(&rows, On::Key).end, row).unwrap_or(list),
    };
    let raw = source.text.get(span.clone()).unwrap_or_default();
    let quoted = usize::from(raw.starts_with(['"', '\'']));
    let seen = raw.char_indices().skip(quoted).filter(|(_, c)| !c.is_whitespace());
    let inside: Vec<Range<usize>> = seen.map(|(at, c)| at..at.saturating_add(c.len_utf8())).collect();
    let wanted = inside.get(cells.clone()).unwrap_or_default();
    match (wanted.first(), wanted.last()) {
        (Some(first), Some(last)) => source.place(&(span.start + first.start..span.start + last.end)),
        _ => source.place(&span),
    }
}

/// Returns the line of a row in a text of several lines, of which the key ends at a byte.
fn line_of_rows(text: &str, key: usize, row: usize) -> Option<Range<usize>> {
    let mut at = key;
    let mut lines = text.get(key..)?.split_inclusive('\n');
    at = at.saturating_add(lines.next()?.len());
    let mut filled = lines.filter_map(|line| {
        let start = at.saturating_add(line.len().saturating_sub(line.trim_start().len()));
        at = at.saturating_add(line.len());
        let length = line.trim().len();
        (length > 0).then(|| start..start.saturating_add(length))
    });
    filled.nth(row)
}
