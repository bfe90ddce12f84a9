//! Which category each name means.

/// Names in small letters and the category they mean; a name that stands here twice is ambiguous.
///
/// Every name in the table's columns is settled here, with the reason where two categories claim it.
pub(super) const NAMES: &[(&str, u8)] = &[
    ("lace", 0),
    ("2 ply", 0),
    // Only the thread: without "10 count" a thread may be anything.
    ("10 count crochet thread", 0),
    ("super fine", 1),
    ("superfine", 1),
    ("sock", 1),
    // The table lists fingering under Lace too, for its finest end; ball bands and shops mean category 1.
    ("fingering", 1),
    ("light fingering", 1),
    ("3 ply", 1),
    // UK 4 ply is listed under Super Fine outright and under Fine only for its heavier end. Two retailers call
    // it sport; most knitters mean sock yarn, and the gauge of 28 stitches agrees with them.
    ("4 ply", 1),
    // Claimed by Super Fine and Fine alike, in the same words: it cannot be settled.
    ("baby", 1),
    ("baby", 2),
    ("fine", 2),
    ("sport", 2),
    ("5 ply", 2),
    ("light", 3),
    ("dk", 3),
    ("double knitting", 3),
    ("double knit", 3),
    ("light worsted", 3),
    ("8 ply", 3),
    ("medium", 4),
    ("worsted", 4),
    ("afghan", 4),
    ("aran", 4),
    ("10 ply", 4),
    ("bulky", 5),
    ("chunky", 5),
    ("craft", 5),
    ("rug", 5),
    ("12 ply", 5),
    ("14 ply", 5),
    ("super bulky", 6),
    ("superbulky", 6),
    ("super chunky", 6),
    ("16 ply", 6),
    // Claimed by Super Bulky and Jumbo alike: it names how the fibre is prepared, not how thick it is.
    ("roving", 6),
    ("roving", 7),
    ("jumbo", 7),
];
