//! What can be wrong with the stitches of rows.

use crate::finding::{Code, Severity};

macro_rules! codes {
    ($($(#[doc = $doc:literal])+ $static:ident = $name:literal: $what:literal, $why:literal, $bad:literal, $good:literal;)*) => { $(
        $(#[doc = $doc])+
        pub static $static: Code =
            Code { name: $name, severity: Severity::Warning, what: $what, why: $why, bad: $bad, good: $good };
    )* };
}

codes! {
    /// Stitches that stay unworked at the end of a row.
    ROW_LEFT_OVER = "row-left-over":
        "A row takes fewer stitches than are on the needle.",
        "The knitter stands before the end of the row with stitches that nothing is said of.",
        "Cast on 96 sts.\nRow 1: [K6, k2tog] 11 times.",
        "Cast on 96 sts.\nRow 1: [K6, k2tog] 12 times.";
    /// A row that needs more stitches than there are.
    ROW_SHORT = "row-short":
        "A row takes more stitches than are on the needle.",
        "The knitter runs out of stitches before the row is done.",
        "Cast on 90 sts.\nRow 1: [K6, k2tog] 12 times.",
        "Cast on 96 sts.\nRow 1: [K6, k2tog] 12 times.";
    /// A repeat that does not divide the stitches there are for it.
    REPEAT_LEFT_OVER = "repeat-left-over":
        "The stitches that a repeat is worked over are no multiple of it.",
        "The last repeat breaks off in its middle.",
        "Cast on 50 sts.\nRow 1: *K2, p2; rep from * to end.",
        "Cast on 50 sts.\nRow 1: *K2, p2; rep from * to last 2 sts, k2.";
    /// "To last 3 sts" before something that takes four.
    TAIL_UNLIKE = "tail-unlike":
        "What follows `to last … sts` takes another number of stitches.",
        "The row ends with stitches too few or too many.",
        "Row 1: K2, k2tog, k to last 3 sts, ssk, k2.",
        "Row 1: K2, k2tog, k to last 4 sts, ssk, k2.";
    /// A count that is not that of the stitches.
    COUNT_UNLIKE = "count-unlike":
        "The count behind a row is not that of its stitches.",
        "A knitter who counts rips out a row that was right, or goes on with one that was not.",
        "Cast on 64 sts.\nRow 1: K3, m1L, k to last 3 sts, m1R, k3. [64 sts]",
        "Cast on 64 sts.\nRow 1: K3, m1L, k to last 3 sts, m1R, k3. [66 sts]";
    /// A part that begins with other stitches than there are.
    PARTS_UNLIKE = "parts-unlike":
        "A block of rows begins with another count than the block before it ended with.",
        "Something between the two is missing, or one of the counts is wrong.",
        "(first block) Cast on 50 sts.\n(second block) 52 sts.",
        "(first block) Cast on 50 sts.\n(second block) 50 sts.";
    /// A note on increases or decreases that is not true.
    CHANGE_UNLIKE = "change-unlike":
        "What a row is said to increase or decrease is not what it does.",
        "The knitter looks for an increase that is not there.",
        "Row 1: K1, m1, k to last st, m1, k1. (1 st inc'd)",
        "Row 1: K1, m1, k to last st, m1, k1. (2 sts inc'd)";
    /// "3 times" that may be meant of all or after the first.
    TIMES_UNCLEAR = "times-unclear":
        "`Rep … 3 times` fits only if the first time is among them.",
        "Half of the houses mean three times after the first.",
        "Cast on 48 sts.\nRow 1: *K2, p2; rep from * 12 times.",
        "Cast on 48 sts.\nRow 1: *K2, p2; rep from * 11 times more.";
    /// A row that fits only with the stitch left from binding off.
    STITCH_BOUND_OFF = "stitch-bound-off":
        "A row fits only if the stitch that is on the right needle after binding off is counted otherwise than the studio does.",
        "Houses differ, and a knitter of the other kind is one stitch out.",
        "Cast on 25 sts.\nRow 1: K10, BO 5, k9.",
        "Cast on 25 sts.\nRow 1: K10, BO 5, k to end.";
    /// Rows that do not fit when they are worked again.
    ROWS_AGAIN = "rows-again":
        "Rows that are repeated do not fit the stitches they have left.",
        "The first working comes out and a later one does not.",
        "Cast on 96 sts.\nRnd 1: *K6, k2tog; rep from * around.\nRepeat rnd 1 twice more.",
        "Cast on 96 sts.\nRnd 1: *K6, k2tog; rep from * around.\nRnd 2: *K5, k2tog; rep from * around.";
    /// Rows worked until so many stitches are left, which never come to just as many.
    COUNT_MISSED = "count-missed":
        "Rows are worked until so many stitches are left, and never come to just as many.",
        "The knitter passes the number and does not know when to stop.",
        "Cast on 40 sts.\nRow 1: K1, k2tog, k to last 3 sts, ssk, k1.\nRepeat row 1 until 9 sts rem.",
        "Cast on 40 sts.\nRow 1: K1, k2tog, k to last 3 sts, ssk, k1.\nRepeat row 1 until 8 sts rem.";
    /// Stitches that come back to the needle and are not those that were put aside.
    HELD_UNLIKE = "held-unlike":
        "Other stitches come back to the needle than were put aside, one group of them or several.",
        "A sleeve begins with stitches that the yoke did not leave for it.",
        "Row 9: K20, place next 40 sts on hold, k20.\nReturn 42 held sts to needle.",
        "Row 9: K20, place next 40 sts on hold, k20.\nReturn 40 held sts to needle.";
    /// A marker that does not hang where the words have it.
    MARKER_UNLIKE = "marker-unlike":
        "The stitches before a marker are not as many as the words work there, from where a marker was put.",
        "The knitter comes to the marker too early or too late, and the increases wander.",
        "Cast on 20 sts.\nRow 1: K10, pm, k10.\nRow 2: P to 3 sts before m, p2tog, sm, p to end.",
        "Cast on 20 sts.\nRow 1: K10, pm, k10.\nRow 2: P to 2 sts before m, p2tog, sm, p to end.";
    /// A marker that is not there.
    MARKER_MISSING = "marker-missing":
        "Words go to a marker, or slip one, and none is left on the needle.",
        "The knitter looks for a marker that nobody told her to put there.",
        "Cast on 20 sts.\nRow 1: K10, pm, k10.\nRow 2: P to m, sm, p to m, sm, p to end.",
        "Cast on 20 sts.\nRow 1: K5, pm, k10, pm, k5.\nRow 2: P to m, sm, p to m, sm, p to end.";
    /// Words that do not tell how many stitches there are afterwards.
    COUNT_UNKNOWN = "count-unknown":
        "The words do not tell how many stitches there are afterwards, so the rows that follow are not counted.",
        "A mistake in them would not be found.",
        "Row 1: Work lace of your own.\nRow 2: *K3, p2; rep from * to end.",
        "Row 1: Work lace of your own. [45 sts]\nRow 2: *K3, p2; rep from * to end.";
}
