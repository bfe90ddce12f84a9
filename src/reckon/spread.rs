//! Increases or decreases spread evenly over a row or round.

/// What is spread.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Change {
    /// One stitch more, made between two stitches; it takes none of those on the needle.
    Increase,
    /// Two stitches worked together; it takes both of them.
    Decrease,
}

/// How the row ends.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Edges {
    /// Not at all: in the round, the last change ends the round. As many gaps as changes.
    Round,
    /// Flat, with half a gap at each edge, so that two pieces seamed together are spaced alike all round. It is the
    /// usual one here: 51 stitches with 4 increases are made after 6, 19, 32 and 45 (Wool Pack Yarn).
    #[default]
    Halves,
    /// Flat, with a whole gap at each edge, one gap more than changes: 40 stitches with 4 increases are five gaps of 8
    /// (Dummies).
    Wholes,
}

/// Gaps of one size that follow each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Gap {
    /// The whole stitches worked plain in each.
    pub stitches: i64,
    /// How many such gaps; never nothing.
    pub times: i64,
}

/// Returns the gaps between changes in working order, equal neighbours together.
///
/// The plain stitches are divided by the number of gaps and the remainder goes one each to the first ones, so gaps
/// differ by at most one and the larger come first: 51 in the round with 4 increases are 13, 13, 13, 12 (Wool Pack
/// Yarn). For increases the gaps sum to the stitches. A decrease is counted with the two stitches it takes, so for
/// decreases the gaps sum to the stitches without two for each. With half gaps, the last of the gaps is halved, the
/// larger half first; both halves together differ from a gap by at most one.
///
/// Nothing where there is no change or fewer plain stitches than it takes: an increase needs a stitch in each gap, with
/// half gaps at both edges too; decreases may follow each other with a gap of nothing.
pub fn spread(stitches: i64, changes: i64, change: Change, edges: Edges) -> Option<Vec<Gap>> {
    if stitches < fewest(changes, change, edges)? {
        return None;
    }
    let gaps = gaps(changes, edges)?;
    let plain = match change {
        Change::Increase => stitches,
        Change::Decrease => stitches.checked_sub(changes.checked_mul(2)?)?,
    };
    let (small, larger) = (plain / gaps, plain % gaps);
    // The remainder is less than the number of gaps, so the last one is always a smaller one.
    let mut all = Vec::new();
    match edges {
        Edges::Round | Edges::Wholes => {
            push(&mut all, small + 1, larger);
            push(&mut all, small, gaps - larger);
        }
        Edges::Halves => {
            push(&mut all, small - small / 2, 1);
            push(&mut all, small + 1, larger);
            push(&mut all, small, gaps - 1 - larger);
            push(&mut all, small / 2, 1);
        }
    }
    Some(all)
}

/// Returns the fewest stitches that so many changes can be spread over; nothing where there is no change, or the number
/// does not fit.
pub fn fewest(changes: i64, change: Change, edges: Edges) -> Option<i64> {
    if changes < 1 {
        return None;
    }
    match change {
        // The gap that is halved is one of the smaller, so it has two stitches where every gap has.
        Change::Increase if edges == Edges::Halves => changes.checked_mul(2),
        Change::Increase => gaps(changes, edges),
        Change::Decrease => changes.checked_mul(2),
    }
}

/// Returns the number of gaps, two halves counted as one.
fn gaps(changes: i64, edges: Edges) -> Option<i64> {
    match edges {
        Edges::Round | Edges::Halves => Some(changes),
        Edges::Wholes => changes.checked_add(1),
    }
}

/// Adds gaps at the end, to the last ones if they are of the same size.
fn push(all: &mut Vec<Gap>, stitches: i64, times: i64) {
    match all.last_mut() {
        _ if times == 0 => {}
        Some(last) if last.stitches == stitches => last.times += times,
        _ => all.push(Gap { stitches, times }),
    }
}
