//! What the last rows added, for words that go on as before: "work as established".

/// What the last two rows added, below nothing for fewer stitches; `None` where that is not known, or where there was none.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Pace {
    last: Option<i64>,
    before: Option<i64>,
}

impl Pace {
    /// A row was worked.
    pub(super) fn row(&mut self, change: Option<i64>) {
        *self = Self { last: change, before: self.last };
    }

    /// Plain rows were worked; their number is not always said.
    pub(super) fn plain(&mut self, rows: Option<i64>) {
        let before = if rows == Some(1) { self.last } else { Some(0) };
        *self = Self { last: Some(0), before };
    }

    /// From here on nobody knows.
    pub(super) fn lose(&mut self) {
        *self = Self::default();
    }

    /// Whether the last row added nothing.
    pub(super) fn was_plain(self) -> bool {
        self.last == Some(0)
    }

    /// Whether as many rows as one likes may be worked as these: a row that shapes and a plain one are a pair, and to go on as
    /// established may be to go on shaping.
    pub(super) fn is_even(self) -> bool {
        self.was_plain() && matches!(self.before, None | Some(0))
    }
}
