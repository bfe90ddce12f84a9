//! Where stitches do not come out.

use super::statement::Side;

/// Where stitches do not come out, with the figures of one size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// Stitches stay unworked at the end of a row.
    LeftOver {
        /// How many.
        left: i64,
        /// How many there were before the row.
        had: i64,
    },
    /// A row needs more stitches than there are.
    Short {
        /// How many more.
        by: i64,
        /// How many there were before the row.
        had: i64,
    },
    /// The stitches for a repeat are no multiple of it.
    RepeatLeft {
        /// How many are over.
        left: i64,
        /// The stitches of one repeat.
        of: i64,
        /// The stitches there are for repeats.
        room: i64,
    },
    /// A repeat takes no stitch, so it never comes to an end.
    RepeatEmpty,
    /// What follows "to last 3 sts" takes another number.
    Tail {
        /// What the words say.
        says: i64,
        /// What follows takes.
        takes: i64,
    },
    /// The stitches are not as many as is said.
    Stated {
        /// What is said.
        says: i64,
        /// What there are.
        is: i64,
    },
    /// A part begins with other stitches than the last one ended with.
    Section {
        /// What is said.
        says: i64,
        /// What there are.
        is: i64,
    },
    /// A row adds or takes away another number than is said.
    Change {
        /// What is said, below nothing for a decrease.
        says: i64,
        /// What it does.
        is: i64,
    },
    /// A repeat fits only if its times are meant in all.
    InAll {
        /// How many times.
        times: i64,
    },
    /// A row fits only if the stitch that is on the right needle after binding off is counted otherwise than the studio does.
    BoundOff {
        /// Whether it fits if that stitch is the first of the next ones.
        counted: bool,
    },
    /// A row does not fit when it is worked again.
    Again {
        /// Which time, 1 for the first repeat.
        pass: i64,
        /// The stitches before the row.
        had: i64,
    },
    /// Rows worked until so many stitches are left never come to just as many.
    Missed {
        /// How many are wanted.
        wanted: i64,
        /// The nearest there are.
        is: i64,
    },
    /// No row has the number.
    NoRow {
        /// The number.
        row: u32,
    },
    /// A later row of a chart that a sentence works does not come out.
    InChart {
        /// Its number in the chart.
        row: u32,
        /// What is wrong in it.
        what: Misfit,
    },
    /// A chart of the text has no row of the number.
    NoChartRow {
        /// The number.
        row: u32,
        /// The number of the chart's last row.
        last: u32,
        /// The chart, by its place in the text, counted from 0.
        chart: usize,
    },
    /// No row has the name.
    NoName,
    /// A row is as another, and that one, perhaps by way of more, is as the first.
    Circle {
        /// The number of the row that it is to be as.
        row: u32,
    },
    /// A row is as that of a name, and that one, perhaps by way of more, is as the first.
    NamedCircle,
    /// More of the last rows are to be worked again than there are.
    FewRows {
        /// How many.
        says: u32,
        /// How many rows there are since the stitches were cast on.
        had: usize,
    },
    /// Other stitches come back than were put aside.
    Held {
        /// How many come back.
        says: i64,
        /// The nearest that were put aside.
        had: i64,
    },
    /// Stitches stay before a marker where it is slipped or taken away.
    MarkerAhead {
        /// How many.
        left: i64,
    },
    /// The stitches before a marker are worked, and more.
    MarkerPassed {
        /// How many more.
        by: i64,
    },
    /// There are fewer stitches up to a marker than are to be left before it.
    MarkerNear {
        /// How many are to be left.
        says: i64,
        /// How many there are.
        left: i64,
    },
    /// There is no marker on the needle.
    NoMarker,
    /// A row is said to be on the side of the row before it.
    Side {
        /// The side.
        side: Side,
        /// Whether it comes there as rows are worked again.
        again: bool,
    },
    /// So many rows end on another side than is said.
    Ends {
        /// The side they end on.
        side: Side,
    },
    /// How many stitches there are cannot be told from here on.
    Unknown,
}

/// How a row that is worked over all stitches does not come out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Misfit {
    /// As [`Fault::LeftOver`].
    LeftOver {
        /// How many stitches stay unworked.
        left: i64,
        /// How many there were before the row.
        had: i64,
    },
    /// As [`Fault::Short`].
    Short {
        /// How many stitches are missing.
        by: i64,
        /// How many there were before the row.
        had: i64,
    },
    /// As [`Fault::RepeatLeft`].
    RepeatLeft {
        /// How many stitches are over.
        left: i64,
        /// The stitches of one repeat.
        of: i64,
        /// The stitches there are for repeats.
        room: i64,
    },
}

impl Misfit {
    /// Returns the fault of a row that stands alone.
    pub fn alone(self) -> Fault {
        match self {
            Self::LeftOver { left, had } => Fault::LeftOver { left, had },
            Self::Short { by, had } => Fault::Short { by, had },
            Self::RepeatLeft { left, of, room } => Fault::RepeatLeft { left, of, room },
        }
    }
}

impl Fault {
    /// Returns the same of a row of a chart that a sentence works among others.
    #[must_use]
    pub fn in_chart(self, row: u32) -> Self {
        let what = match self {
            Self::LeftOver { left, had } => Misfit::LeftOver { left, had },
            Self::Short { by, had } => Misfit::Short { by, had },
            Self::RepeatLeft { left, of, room } => Misfit::RepeatLeft { left, of, room },
            other => return other,
        };
        Self::InChart { row, what }
    }
}
