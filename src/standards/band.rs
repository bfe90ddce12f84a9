//! From a least to a greatest value.

use super::table::{BadTable, Row};
use crate::measure::{Count, FabricLength, Inch, YarnLength};

/// From a least to a greatest value, both within; one value alone is both.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Band<T> {
    /// The least value.
    pub min: T,
    /// The greatest value, never below the least.
    pub max: T,
}

/// How the text of a cell is read; the error says what the cell is not.
pub(super) type Cell<T> = fn(&str) -> Result<T, String>;

impl<T: Copy + Ord> Band<T> {
    /// Whether a value is within.
    #[must_use]
    pub fn holds(self, value: T) -> bool {
        self.min <= value && value <= self.max
    }

    /// The narrowest band that holds both.
    #[must_use]
    pub fn with(self, other: Self) -> Self {
        Self { min: self.min.min(other.min), max: self.max.max(other.max) }
    }

    /// The band in two columns; `None` where both are empty.
    pub(super) fn read(row: Row<'_>, [min, max]: [&str; 2], cell: Cell<T>) -> Result<Option<Self>, BadTable> {
        match (one(row, min, cell)?, one(row, max, cell)?) {
            (None, None) => Ok(None),
            (Some(least), Some(greatest)) if least <= greatest => Ok(Some(Self { min: least, max: greatest })),
            _ => Err(row.bad(format!("`{min}` and `{max}` are not a band"))),
        }
    }

    /// The band in two columns that must be filled.
    pub(super) fn needed(row: Row<'_>, columns: [&str; 2], cell: Cell<T>) -> Result<Self, BadTable> {
        Self::read(row, columns, cell)?.ok_or_else(|| row.bad(format!("`{}` is empty", columns.join("` and `"))))
    }

    /// The band in one column, `9` or `9-9.5`; `None` where it is empty.
    pub(super) fn in_one(row: Row<'_>, column: &str, cell: Cell<T>) -> Result<Option<Self>, BadTable> {
        let text = row.get(column)?;
        if text.is_empty() {
            return Ok(None);
        }
        let (min, max) = text.split_once('-').unwrap_or((text, text));
        let value = |text: &str| cell(text).map_err(|what| row.bad(format!("`{column}`: {what}")));
        match (value(min)?, value(max)?) {
            (min, max) if min <= max => Ok(Some(Self { min, max })),
            _ => Err(row.bad(format!("`{text}` in `{column}` is not a band"))),
        }
    }
}

/// The row whose band holds a length, or else the nearest one; of equally near ones the first, and the smaller sizes
/// stand first.
///
/// `None` for a length that is shorter or longer than any band by more than `slack`.
pub(super) fn nearest<'a, R>(
    rows: impl Iterator<Item = (&'a R, Band<FabricLength>)>,
    length: FabricLength,
    slack: FabricLength,
) -> Option<&'a R> {
    let mut whole: Option<Band<FabricLength>> = None;
    let outside = |band: Band<FabricLength>| {
        let below = i128::from(band.min.nanometres()) - i128::from(length.nanometres());
        let above = i128::from(length.nanometres()) - i128::from(band.max.nanometres());
        below.max(above).max(0)
    };
    let near = rows
        .inspect(|(_, band)| whole = Some(whole.map_or(*band, |whole| whole.with(*band))))
        .min_by_key(|(_, band)| outside(*band))?;
    (outside(whole?) <= i128::from(slack.nanometres())).then_some(near.0)
}

/// The value of a cell; `None` where it is empty.
pub(super) fn one<T>(row: Row<'_>, column: &str, cell: Cell<T>) -> Result<Option<T>, BadTable> {
    match row.get(column)? {
        "" => Ok(None),
        text => cell(text).map(Some).map_err(|what| row.bad(format!("`{column}`: {what}"))),
    }
}

/// Centimetres, exactly.
pub(super) fn centimetres(cell: &str) -> Result<FabricLength, String> {
    FabricLength::parse(&format!("{cell} cm"), Inch::default()).map_err(|misread| misread.to_string())
}

/// Inches or a gauge, as a number without its unit: how long the inch is depends on the studio.
pub(super) fn number(cell: &str) -> Result<Count, String> {
    // Ease may be below nothing, which no count a designer writes may be.
    let (above, negative) = cell.strip_prefix('-').map_or((cell, false), |above| (above, true));
    let count = Count::parse(above).map_err(|misread| misread.to_string())?;
    Ok(if negative { Count::from_thousandths(-count.thousandths()) } else { count })
}

/// Whole yards.
pub(super) fn yards(cell: &str) -> Result<YarnLength, String> {
    let length = cell.parse().ok().and_then(YarnLength::from_yards);
    length.ok_or_else(|| format!("`{cell}` is not a number of yards"))
}
