//! Shaping in pairs over a length: a stitch at each side, as evenly as the rows allow.

/// On which rows shaping may fall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Worked {
    /// In the round: on any.
    Round,
    /// Flat: on right-side rows only, so that it falls on every second row or a multiple of that.
    Flat,
}

/// A shaping row worked again and again.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Every {
    /// The rows from one shaping row to the next, that row included.
    pub rows: i64,
    /// How often it is worked.
    pub times: i64,
}

/// How to come from one number of stitches to another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Shaping {
    /// The closer shaping, worked first; no times where there is nothing to shape.
    pub first: Every,
    /// The wider one after it, a row further apart, or two if flat; perhaps no times.
    pub then: Every,
    /// The rows that are left to work plain.
    pub plain: i64,
}

impl Shaping {
    /// Returns the number of shaping rows.
    pub fn times(self) -> i64 {
        // Both are parts of one whole that fitted.
        self.first.times.saturating_add(self.then.times)
    }
}

/// Why there is no such shaping.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unshapable {
    /// A number of stitches or of rows is below nothing.
    BelowNothing,
    /// The difference is odd, so pairs cannot make it.
    OddDifference,
    /// There are too few rows.
    TooFewRows {
        /// How many it takes at least.
        least: i64,
    },
    /// The numbers are beyond all measure.
    TooLarge,
}

/// Returns how to work from one number of stitches to another in so many rows, two stitches at a time, in whole
/// stitches and rows.
///
/// n = |from − to| ÷ 2 shaping rows; k is rows ÷ n rounded down, if flat to an even number. Every k rows, and as often
/// as the rows that are left allow every k + 1 rows, or k + 2 if flat. The sum never exceeds the rows: in the round it
/// meets them, flat it may leave one, or more where there is nothing to shape. 38 to 60 stitches are 11 shaping rows
/// (Kristen TenDyke).
///
/// # Errors
/// An odd difference, fewer rows than it takes, a number below nothing or beyond all measure.
pub fn paired(from: i64, to: i64, rows: i64, worked: Worked) -> Result<Shaping, Unshapable> {
    if from < 0 || to < 0 || rows < 0 {
        return Err(Unshapable::BelowNothing);
    }
    // Neither is below nothing, so the difference fits.
    let difference = (from - to).abs();
    if difference % 2 != 0 {
        return Err(Unshapable::OddDifference);
    }
    let times = difference / 2;
    let step = match worked {
        Worked::Round => 1,
        Worked::Flat => 2,
    };
    if times == 0 {
        return Ok(Shaping { first: Every::default(), then: Every::default(), plain: rows });
    }
    let least = times.checked_mul(step).ok_or(Unshapable::TooLarge)?;
    if rows < least {
        return Err(Unshapable::TooFewRows { least });
    }
    let every = rows / times / step * step;
    let left = rows - every * times;
    // The rows left are fewer than one step for each time.
    let wider = left / step;
    let first = Every { rows: every, times: times - wider };
    let then = Every { rows: every.checked_add(step).ok_or(Unshapable::TooLarge)?, times: wider };
    Ok(Shaping { first, then, plain: left - wider * step })
}
