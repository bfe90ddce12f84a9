//! Checks that a writer's numbers and names agree, one file a check.
//!
//! A check looks at the joined entries, public or not, and tells what disagrees at the smallest guilty place. To add
//! one: a file here with its [`Code`](crate::finding::Code), a line in [`check`], and a case under `tests/cases`.

mod bare_url;
mod both_systems;
mod call;
mod chapters;
mod chart;
mod counts;
mod credit;
mod dates;
mod deadline;
mod ease_sign;
mod fibre;
mod gauges;
mod gifts;
mod held;
mod inch_mixed;
mod like_time;
mod needle_sizes;
mod needs_area;
mod needs_order;
mod needs_unknown;
mod order;
mod over;
mod pieces;
mod place;
mod progress;
mod rows;
mod run_length;
mod settings;
mod shade;
mod size;
mod skeins;
mod stage;
mod story;
mod surprises;
mod tape;
mod undisclosed;
mod unlinked;
mod untested;
mod weight;
mod yardage;

pub use chapters::code as code_of_chapter;
pub use rows::{Blocks, blocks as row_blocks};

use crate::catalogue::Catalogue;
use crate::entry::Entry;
use crate::entry::Placing;
use crate::finding::{Code, Finding};
use rayon::prelude::*;

/// The checks that a studio or a pattern may set: those whose findings are a matter of judgement.
static SETTABLE: [&Code; 90] = [
    &bare_url::BARE_URL,
    &both_systems::SYSTEMS_DISAGREE,
    &call::CALL_INCOMPLETE,
    &chapters::CHAPTERS_FEW,
    &chapters::CHAPTER_FIRST,
    &chapters::CHAPTER_HOURS,
    &chapters::CHAPTER_NAMELESS,
    &chapters::CHAPTER_ORDER,
    &chapters::CHAPTER_PAST_END,
    &chapters::CHAPTER_SHORT,
    &chapters::CHAPTER_UNREAD,
    &chart::alike::CHART_COLOURS_ALIKE,
    &chart::colours::CHART_COLOUR,
    &chart::counts::CHART_COUNT,
    &chart::float::FLOAT_LONG,
    &chart::share::CHART_SHARE,
    &chart::unused::CHART_KEY_UNUSED,
    &chart::wrong_side::CHART_WRONG_SIDE,
    &counts::LENGTH_UNLIKE,
    &counts::WIDTH_UNLIKE,
    &credit::CREDIT_MISSING,
    &dates::DATE_ORDER,
    &deadline::DEADLINE_PACE,
    &deadline::DEADLINE_PAST,
    &ease_sign::EASE_SIGN,
    &fibre::FIBRE_SHARE,
    &gauges::GAUGE_DISAGREES,
    &gauges::GAUGE_UNLIKELY,
    &gifts::GIFT_NAMED,
    &gifts::GIFTS_ALIKE,
    &gifts::HOUSEHOLD_UNLIKE,
    &held::HELD_TWICE,
    &held::TOGETHER_UNLIKE,
    &inch_mixed::INCH_MIXED,
    &needle_sizes::NEEDLE_SIZES,
    &needs_area::NEEDS_AREA,
    &needs_order::NEEDS_ORDER,
    &needs_unknown::NEEDS_UNKNOWN,
    &order::GIRTH_ORDER,
    &order::LENGTH_ORDER,
    &over::SAMPLE_OVER,
    &pieces::PIECES_UNKNOWN,
    &progress::PROGRESS_BACK,
    &progress::PROGRESS_BEYOND,
    &progress::PROGRESS_DONE,
    &progress::WORKED_OUTSIDE,
    &rows::ABBREVIATION_UNCOUNTED,
    &rows::ABBREVIATION_UNKNOWN,
    &rows::ABBREVIATION_UNUSED,
    &rows::BRACKETS_UNCLEAR,
    &rows::CABLE_NEEDLE,
    &rows::CHANGE_UNLIKE,
    &rows::COLOUR_UNKNOWN,
    &rows::COUNT_MISSED,
    &rows::COUNT_UNKNOWN,
    &rows::COUNT_UNLIKE,
    &rows::HELD_UNLIKE,
    &rows::MARKER_MISSING,
    &rows::MARKER_UNLIKE,
    &rows::NEEDLE_IDLE,
    &rows::NEEDLE_UNLISTED,
    &rows::PARTS_UNLIKE,
    &rows::REPEAT_LEFT_OVER,
    &rows::ROWS_AGAIN,
    &rows::ROW_LEFT_OVER,
    &rows::ROW_NUMBERS,
    &rows::ROW_RUN_LENGTH,
    &rows::ROW_SHORT,
    &rows::ROW_SIDES,
    &rows::ROW_UNKNOWN,
    &rows::ROW_UNREAD,
    &rows::SIZE_IDLE,
    &rows::STITCH_BOUND_OFF,
    &rows::TAIL_UNLIKE,
    &rows::TIMES_UNCLEAR,
    &rows::WORDS_CHARTLESS,
    &rows::WORDS_UNLIKE,
    &shade::UNKNOWN_SHADE,
    &size::UNKNOWN_SIZE,
    &skeins::SKEINS_OVER,
    &skeins::SKEINS_SHORT,
    &stage::STAGE_UNLIKE,
    &surprises::REVEAL_EARLY,
    &surprises::SURPRISE_NAMED,
    &tape::UNMEASURABLE,
    &undisclosed::UNDISCLOSED,
    &unlinked::UNLINKED,
    &untested::UNTESTED_CLAIM,
    &weight::WEIGHT_UNLIKE,
    &yardage::YARDAGE_UNLIKELY,
];

/// Runs every check over every entry; each finding weighs what the pattern or the studio says.
pub fn check(catalogue: &Catalogue, placing: &Placing<'_>) -> Vec<Finding> {
    let mut findings: Vec<Finding> =
        catalogue.entries.par_iter().flat_map_iter(|entry| check_one(catalogue, entry, placing)).collect();
    findings.extend(check_studio(catalogue, placing));
    findings
}

/// Runs the checks of the studio's own file.
pub fn check_studio(catalogue: &Catalogue, placing: &Placing<'_>) -> Vec<Finding> {
    let mut findings = Vec::new();
    settings::check_studio(catalogue, placing, &SETTABLE, &mut findings);
    findings
}

/// Runs every check over one entry.
pub fn check_one(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>) -> Vec<Finding> {
    let mut findings = Vec::new();
    bare_url::check(catalogue, entry, placing, &mut findings);
    both_systems::check(entry, placing, &mut findings);
    call::check(catalogue, entry, placing, &mut findings);
    chapters::check(entry, placing, &mut findings);
    chart::check(catalogue, entry, placing, &mut findings);
    counts::check(catalogue, entry, placing, &mut findings);
    credit::check(entry, placing, &mut findings);
    dates::check(entry, placing, &mut findings);
    deadline::check(catalogue, entry, placing, &mut findings);
    ease_sign::check(entry, placing, &mut findings);
    fibre::check(entry, placing, &mut findings);
    gauges::check(entry, placing, &mut findings);
    gifts::check(catalogue, entry, placing, &mut findings);
    held::check(catalogue, entry, placing, &mut findings);
    inch_mixed::check(catalogue, entry, placing, &mut findings);
    needle_sizes::check(entry, placing, &mut findings);
    needs_area::check(catalogue, entry, placing, &mut findings);
    needs_order::check(catalogue, entry, placing, &mut findings);
    needs_unknown::check(catalogue, entry, placing, &mut findings);
    order::check(catalogue, entry, placing, &mut findings);
    over::check(catalogue, entry, placing, &mut findings);
    pieces::check(entry, placing, &mut findings);
    progress::check(catalogue, entry, placing, &mut findings);
    rows::check(catalogue, entry, placing, &mut findings);
    run_length::check(entry, placing, &mut findings);
    shade::check(catalogue, entry, placing, &mut findings);
    size::check(catalogue, entry, placing, &mut findings);
    skeins::check(catalogue, entry, placing, &mut findings);
    stage::check(catalogue, entry, placing, &mut findings);
    story::check(catalogue, entry, placing, &mut findings);
    surprises::check(catalogue, entry, placing, &mut findings);
    tape::check(catalogue, entry, placing, &mut findings);
    undisclosed::check(catalogue, entry, placing, &mut findings);
    unlinked::check(catalogue, entry, placing, &mut findings);
    untested::check(entry, placing, &mut findings);
    weight::check(catalogue, entry, placing, &mut findings);
    yardage::check(catalogue, entry, placing, &mut findings);
    let mut findings = settings::weigh(catalogue, entry, findings, &SETTABLE);
    settings::check(entry, placing, &SETTABLE, &mut findings);
    findings
}
