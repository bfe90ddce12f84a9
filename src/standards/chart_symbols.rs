//! The stitches that a chart's cells stand for: what they are on each side, and how many they take and leave.
//!
//! Names, shapes and counts are those of a redrawing of the council's published symbols; the short words of written
//! rows, and those of the other side, are common practice. Sources in `SOURCES.md`. A cable of other numbers than the
//! table's follows from its name.

use std::sync::LazyLock;

use super::abbreviations;
use super::provenance::Provenance;
use super::table::{BadTable, Row, Table};

/// The embedded table.
pub const CSV: &str = include_str!("chart_symbols.csv");

/// What a cell of a chart, or a few cells together, stands for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stitch {
    /// Its name: `k2tog`, `2/2 LC`, `no stitch`.
    pub name: String,
    /// What written rows call it where the right side faces the knitter; empty for no stitch.
    pub short: String,
    /// The same where the wrong side does; `None` where it is worked on right-side rows only.
    pub ws_short: Option<String>,
    /// What it is, where the right side faces the knitter.
    pub meaning: String,
    /// What it is where the wrong side does; `None` where it is worked on right-side rows only.
    pub ws_meaning: Option<String>,
    /// How many cells it spans.
    pub cells: u32,
    /// How many stitches it takes.
    pub consumed: u32,
    /// How many stitches it leaves.
    pub produced: u32,
    /// The crossing, if it is one.
    pub cable: Option<Cable>,
}

/// Two groups of stitches that change places.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cable {
    /// How many stitches cross in front.
    pub over: u32,
    /// How many cross behind.
    pub under: u32,
    /// How many stand in the middle, behind those in front.
    pub middle: u32,
    /// Whether those in front lean to the left.
    pub left: bool,
    /// Whether those behind, or in the middle, are purled.
    pub purled: bool,
}

/// A row of the table with what its count rests on.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Symbol {
    /// The stitch.
    pub stitch: Stitch,
    /// What its symbol looks like, in words.
    pub shape: String,
    /// Whether it was read or remembered.
    pub provenance: Provenance,
    /// What to bear in mind; may be empty.
    pub note: String,
    /// The ids of the sources in `SOURCES.md`.
    pub sources: Vec<String>,
}

static ALL: LazyLock<Vec<Symbol>> = LazyLock::new(|| read(CSV).unwrap_or_default());

/// All rows, in the order of the table.
#[must_use]
pub fn all() -> &'static [Symbol] {
    &ALL
}

/// The most stitches that cross each other; none is crossed in one go beyond.
const WIDEST: u32 = 24;

/// The stitch of a name, of its short word, or of another abbreviation of either; capitals do not matter.
///
/// A cable may have any numbers: `3/2 RPC`, `C6F` (three before three, leaning left), `C6B`, `T3F`, `T4B`. A stitch may be
/// told as it is worked on either side: `knit on RS, purl on WS`.
#[must_use]
pub fn find(written: &str) -> Option<Stitch> {
    one(written).or_else(|| of_two_sides(written))
}

/// The stitch of words for both sides, if the table has one that is so worked.
fn of_two_sides(written: &str) -> Option<Stitch> {
    const RIGHT: [&str; 4] = ["on the right side", "on right side", "on the rs", "on rs"];
    const WRONG: [&str; 4] = ["on the wrong side", "on wrong side", "on the ws", "on ws"];
    let lower = written.trim().to_lowercase();
    let (first, second) = [", and ", " and ", ",", ";", "/"].iter().find_map(|sign| lower.split_once(sign))?;
    let of = |sides: &[&str]| {
        let word = |part: &str| sides.iter().find_map(|side| Some(part.trim().strip_suffix(side)?.trim().to_owned()));
        one(&word(first).or_else(|| word(second))?)
    };
    let (right, wrong) = (of(&RIGHT)?, of(&WRONG)?);
    (right.ws_short.as_ref() == Some(&wrong.short)).then_some(right)
}

/// The stitch of one name.
fn one(written: &str) -> Option<Stitch> {
    let written = match written.trim() {
        // Other names of the centred double decrease (common practice).
        other if ["cdd", "s2kp"].iter().any(|name| other.eq_ignore_ascii_case(name)) => "s2kp2",
        other => other,
    };
    let is = |text: &str| text.eq_ignore_ascii_case(written);
    let named = |known: &&Symbol| is(&known.stitch.name) || (!known.stitch.short.is_empty() && is(&known.stitch.short));
    if let Some(symbol) = all().iter().find(named) {
        return Some(symbol.stitch.clone());
    }
    if let Some(cable) = cable(written) {
        return Some(cable);
    }
    // Another way to write the same abbreviation: `k1f&b` for `kfb`.
    let forms = &abbreviations::find(written)?.forms;
    let known = |symbol: &&Symbol| forms.iter().any(|form| *form == symbol.stitch.name || *form == symbol.stitch.short);
    all().iter().find(known).map(|symbol| symbol.stitch.clone())
}

/// The stitch whose sign charts commonly have for one without a sign of its own (common practice).
#[must_use]
pub fn instead(written: &str) -> Option<&'static str> {
    match written.trim().to_ascii_lowercase().as_str() {
        // Both lean left and take two.
        "skp" | "skpo" => Some("ssk"),
        "sl" | "sl1" | "sl 1" => Some("sl1 wyib"),
        _ => None,
    }
}

/// The names that [`find`] knows, for near misses.
pub fn names() -> impl Iterator<Item = &'static str> {
    all()
        .iter()
        .flat_map(|symbol| [symbol.stitch.name.as_str(), symbol.stitch.short.as_str()])
        .filter(|name| !name.is_empty())
}

/// The cable of a name.
fn cable(written: &str) -> Option<Stitch> {
    let upper = written.to_ascii_uppercase();
    let (crossing, short) = match slashed(&upper) {
        Some(crossing) => (crossing, None),
        // Rows keep the word that she writes elsewhere too.
        None => (lettered(&upper)?, Some(upper)),
    };
    let cells = crossing.over.checked_add(crossing.under)?.checked_add(crossing.middle)?;
    if crossing.over == 0 || crossing.under == 0 || cells > WIDEST {
        return None;
    }
    let stitch = crossed(&crossing);
    Some(Stitch { short: short.unwrap_or_else(|| stitch.name.clone()), ..stitch })
}

/// `2/2 LC`, `2/1 RPC`, `2/1/2 RPC`.
fn slashed(upper: &str) -> Option<Cable> {
    let (numbers, kind) = upper.split_once(' ')?;
    let (left, purled) = match kind.trim() {
        "LC" | "LT" => (true, false),
        "RC" | "RT" => (false, false),
        "LPC" => (true, true),
        "RPC" => (false, true),
        _ => return None,
    };
    let numbers: Option<Vec<u32>> = numbers.split('/').map(whole).collect();
    match *numbers?.as_slice() {
        [over, under] => Some(Cable { over, under, middle: 0, left, purled }),
        [over, middle, under] => Some(Cable { over, under, middle, left, purled }),
        _ => None,
    }
}

/// `C4F`, `C4B`: so many in all, half of them held. `T3F`, `T4B`: those behind are purled, one of three and half of four.
/// Held in front the cross leans left, behind it leans right (common practice).
fn lettered(upper: &str) -> Option<Cable> {
    let (rest, left) = match (upper.strip_suffix(['F', 'L']), upper.strip_suffix(['B', 'R'])) {
        (Some(rest), _) => (rest, true),
        (_, Some(rest)) => (rest, false),
        _ => return None,
    };
    let (count, purled) = match (rest.strip_prefix('C'), rest.strip_prefix('T')) {
        (Some(count), _) => (whole(count)?, false),
        (_, Some(count)) => (whole(count)?, true),
        _ => return None,
    };
    let even = count % 2 == 0;
    let under = if even { count / 2 } else { 1 };
    (even || (purled && count == 3)).then(|| Cable {
        over: count.saturating_sub(under),
        under,
        middle: 0,
        left,
        purled,
    })
}

fn whole(digits: &str) -> Option<u32> {
    (!digits.is_empty() && digits.bytes().all(|byte| byte.is_ascii_digit())).then(|| digits.parse().ok()).flatten()
}

fn crossed(cable: &Cable) -> Stitch {
    let Cable { over, under, middle, left, purled } = *cable;
    let way = if left { "L" } else { "R" };
    let kind = if purled { "PC" } else { "C" };
    let between = if middle > 0 { format!("{middle}/") } else { String::new() };
    let name = format!("{over}/{between}{under} {way}{kind}");
    // Those held in front are worked after those behind; those held behind after those in front.
    let behind = if purled { format!("p{under}") } else { format!("k{under}") };
    let meaning = match (middle, left) {
        (0, true) => format!("hold {over} in front, {behind}, then k{over} from the cable needle"),
        (0, false) => format!("hold {under} behind, k{over}, then {behind} from the cable needle"),
        (_, left) => format!(
            "cross {over} over {under} to the {}, the {middle} between them {}",
            if left { "left" } else { "right" },
            if purled { "purled" } else { "knitted" }
        ),
    };
    let cells = over.saturating_add(under).saturating_add(middle);
    Stitch {
        short: name.clone(),
        name,
        ws_short: None,
        meaning,
        ws_meaning: None,
        cells,
        consumed: cells,
        produced: cells,
        cable: Some(*cable),
    }
}

/// Reads the table.
///
/// # Errors
/// The first row that cannot be read. The tests insist that the embedded table has none.
pub fn read(csv: &str) -> Result<Vec<Symbol>, BadTable> {
    Table::read(csv)?.rows().map(row).collect()
}

fn row(row: Row<'_>) -> Result<Symbol, BadTable> {
    let name = row.filled("stitch")?.to_owned();
    let number = |column: &str| row.whole(column)?.ok_or_else(|| row.bad(format!("`{column}` is empty")));
    // No stitch is nothing on both sides.
    let ws_short = if name == "no stitch" { Some(String::new()) } else { row.some("ws_short")? };
    Ok(Symbol {
        stitch: Stitch {
            cable: slashed(&name),
            short: row.get("short")?.to_owned(),
            ws_short,
            meaning: row.filled("rs_meaning")?.to_owned(),
            ws_meaning: row.some("ws_meaning")?,
            cells: number("chart_cells")?,
            consumed: number("stitches_consumed")?,
            produced: number("stitches_produced")?,
            name,
        },
        shape: row.filled("shape")?.to_owned(),
        provenance: Provenance::of(row)?,
        note: row.get("note")?.to_owned(),
        sources: row.sources()?,
    })
}
