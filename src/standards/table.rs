//! A reader for comma-separated values after RFC 4180.

use std::fmt;

/// A table with named columns.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Table {
    header: Vec<String>,
    rows: Vec<Vec<String>>,
}

/// One row of a table, by column name.
#[derive(Clone, Copy, Debug)]
pub struct Row<'a> {
    header: &'a [String],
    cells: &'a [String],
    number: usize,
}

/// Why a table cannot be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BadTable {
    /// The row, counted from 1; 0 is the header.
    pub row: usize,
    /// What is wrong.
    pub what: String,
}

impl fmt::Display for BadTable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "row {}: {}", self.row, self.what)
    }
}

impl std::error::Error for BadTable {}

impl Table {
    /// Reads a table whose first record names the columns.
    ///
    /// Fields may be quoted; a quoted field may hold commas, line ends and doubled quotes.
    ///
    /// # Errors
    /// A quote that is not closed or stands inside a plain field, a record that is longer or shorter than
    /// the header, a column named twice.
    pub fn read(text: &str) -> Result<Self, BadTable> {
        let mut records = records(text)?.into_iter();
        let header = records.next().unwrap_or_default();
        for (index, name) in header.iter().enumerate() {
            if header.iter().take(index).any(|other| other == name) {
                return Err(BadTable { row: 0, what: format!("the column `{name}` is there twice") });
            }
        }
        let rows: Vec<Vec<String>> = records.collect();
        for (index, row) in rows.iter().enumerate() {
            if row.len() != header.len() {
                let what = format!("{} fields, but the header has {}", row.len(), header.len());
                return Err(BadTable { row: index + 1, what });
            }
        }
        Ok(Self { header, rows })
    }

    /// The rows in order.
    pub fn rows(&self) -> impl Iterator<Item = Row<'_>> {
        let rows = self.rows.iter().enumerate();
        rows.map(|(index, cells)| Row { header: &self.header, cells, number: index + 1 })
    }
}

impl<'a> Row<'a> {
    /// The cell of a column, which may be empty.
    ///
    /// # Errors
    /// There is no such column.
    pub fn get(self, column: &str) -> Result<&'a str, BadTable> {
        let place = self.header.iter().position(|name| name == column);
        place
            .and_then(|place| self.cells.get(place))
            .map(String::as_str)
            .ok_or_else(|| self.bad(format!("no column `{column}`")))
    }

    /// The cell of a column as a whole number; `None` where it is empty.
    ///
    /// # Errors
    /// There is no such column, or the cell is no whole number.
    pub fn whole(self, column: &str) -> Result<Option<u32>, BadTable> {
        let cell = self.get(column)?;
        if cell.is_empty() {
            return Ok(None);
        }
        cell.parse().map(Some).map_err(|_| self.bad(format!("`{cell}` in `{column}` is not a whole number")))
    }

    /// The cell of a column, which must not be empty.
    ///
    /// # Errors
    /// There is no such column, or the cell is empty.
    pub fn filled(self, column: &str) -> Result<&'a str, BadTable> {
        match self.get(column)? {
            "" => Err(self.bad(format!("`{column}` is empty"))),
            cell => Ok(cell),
        }
    }

    /// The text of a column; `None` where it is empty.
    ///
    /// # Errors
    /// There is no such column.
    pub fn some(self, column: &str) -> Result<Option<String>, BadTable> {
        Ok(Some(self.get(column)?).filter(|cell| !cell.is_empty()).map(str::to_owned))
    }

    /// The ids of the sources of the row; never none.
    ///
    /// # Errors
    /// There is no such column, or it is empty.
    pub fn sources(self) -> Result<Vec<String>, BadTable> {
        Ok(self.filled("source")?.split_whitespace().map(str::to_owned).collect())
    }

    /// A fault of this row.
    #[must_use]
    pub fn bad(self, what: String) -> BadTable {
        BadTable { row: self.number, what }
    }
}

/// Names in the order they first follow each other, each once: rows of one name stand together.
pub(super) fn each_once<'a>(names: impl Iterator<Item = &'a str>) -> Vec<&'a str> {
    let mut names: Vec<&str> = names.collect();
    names.dedup();
    names
}

/// The records of a text, each a list of fields. A last line end begins no record.
fn records(text: &str) -> Result<Vec<Vec<String>>, BadTable> {
    let mut records: Vec<Vec<String>> = Vec::new();
    let mut record: Vec<String> = Vec::new();
    let mut field = String::new();
    // Whether the field at hand began with a quote, and whether that quote is still open.
    let (mut quoted, mut open) = (false, false);
    let mut chars = text.chars().peekable();
    while let Some(c) = chars.next() {
        if open {
            match c {
                '"' if chars.peek() == Some(&'"') => {
                    chars.next();
                    field.push('"');
                }
                '"' => open = false,
                _ => field.push(c),
            }
            continue;
        }
        match c {
            '"' if field.is_empty() && !quoted => {
                quoted = true;
                open = true;
            }
            ',' => {
                record.push(std::mem::take(&mut field));
                quoted = false;
            }
            '\r' if chars.peek() == Some(&'\n') => {}
            '\n' => {
                record.push(std::mem::take(&mut field));
                quoted = false;
                records.push(std::mem::take(&mut record));
            }
            _ if quoted || c == '"' => {
                return Err(BadTable { row: records.len(), what: format!("`{c}` beside a quote") });
            }
            _ => field.push(c),
        }
    }
    if open {
        return Err(BadTable { row: records.len(), what: "a quote is not closed".to_owned() });
    }
    if quoted || !field.is_empty() || !record.is_empty() {
        record.push(field);
        records.push(record);
    }
    Ok(records)
}
