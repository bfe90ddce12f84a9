//! Instructions as the trade writes them: what they say, and how many stitches they take and leave.
//!
//! Nothing here knows a file, an entry or a page.

pub mod chart;
