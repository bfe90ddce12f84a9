//! Instructions: what they say and how many stitches they take and leave.

mod chart;
