//! What may be wrong in the YAML of a chart or a swatch.

use crate::finding::{Code, Severity};

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
    what: "The repeat of a chart is not within its columns, or a row marks its own edges of it, with `|`, in a way that gives no box.",
    why: "The box round the repeat could not be drawn, and no row could be put in words.",
    bad: "repeat: { from: 3, to: 14 } in a chart of 12 columns, or rows: [·|o·, ·|o/|·]",
    good: "repeat: { from: 1, to: 12 }, or rows: [·|o/|·, ·|··|·]",
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
