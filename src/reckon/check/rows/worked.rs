//! The rows of a pattern, read with its own abbreviations.

use crate::catalogue::Catalogue;
use crate::entry::heading::Heading;
use crate::entry::value::AfterBindingOff;
use crate::entry::{Abbreviation, Entry, Pattern};
use crate::measure::RunStyle;
use crate::notation::rows::{ChartRows, Counts, Lexicon, Written, is_even, net, read, read_items, speaks_of_markers};

/// The `rows` blocks of a pattern as they were read.
#[derive(Clone, Debug)]
pub struct Blocks {
    /// The blocks in order.
    pub written: Vec<Written>,
    /// The pattern's own abbreviations whose stitches cannot be told, by name and with the reason.
    pub uncounted: Vec<(String, String)>,
    /// The pattern's own words.
    pub lexicon: Lexicon,
    /// How the studio writes runs.
    pub style: RunStyle,
}

/// Reads the `rows` blocks of a pattern.
pub fn blocks(catalogue: &Catalogue, entry: &Entry, pattern: &Pattern) -> Blocks {
    let style = catalogue.studio.settings().runs;
    let mut lexicon = Lexicon::default();
    if catalogue.studio.after_binding_off == Some(AfterBindingOff::NotCounted) {
        lexicon.leave_bound_off();
    }
    if let Some(names) = &pattern.sizes {
        lexicon.name_sizes(names);
    }
    name_colours(&mut lexicon, entry, pattern);
    let mut uncounted = Vec::new();
    for (name, abbreviation) in &pattern.abbreviations.0 {
        // One that cannot be counted is known all the same: it is told of once, where it is declared.
        let counts = counts(abbreviation, &lexicon, style).unwrap_or_else(|reason| {
            uncounted.push((name.clone(), reason));
            Counts::new(1, 1)
        });
        lexicon.add(name, counts);
    }
    add_charts(&mut lexicon, entry, style);
    let mut written: Vec<Written> = Vec::with_capacity(entry.prose.rows.len());
    let mut before = None;
    for fenced in &entry.prose.rows {
        let mut block = read(&fenced.text, &lexicon, style);
        // Markers that her text between two blocks puts on the needle are not known.
        let between = before.map(|end| entry.prose.stretch(&(end..fenced.at.start)));
        block.marked = between.is_some_and(speaks_of_markers);
        block.piece = piece(entry, fenced.at.start);
        before = Some(fenced.at.end);
        written.push(block);
    }
    Blocks { written, uncounted, lexicon, style }
}

/// What the headings above a place say, from the outermost; nothing where there is none.
fn piece(entry: &Entry, at: usize) -> Option<String> {
    let mut open: Vec<&Heading> = Vec::new();
    for heading in entry.prose.headings.iter().take_while(|heading| heading.at.start < at) {
        open.retain(|above| above.level < heading.level);
        open.push(heading);
    }
    let words: Vec<&str> = open.iter().map(|heading| heading.words.as_str()).collect();
    (!words.is_empty()).then(|| words.join(" "))
}

/// Tells which colours rows may name: by their labels in the list of yarns and in the keys of charts, and by their shades.
fn name_colours(lexicon: &mut Lexicon, entry: &Entry, pattern: &Pattern) {
    let labels = pattern.yarn.iter().filter_map(|line| line.colour.as_deref());
    let charts = entry.prose.all_charts();
    let keys = charts.iter().flat_map(|block| &block.chart.key).filter_map(|sign| sign.colour.as_deref());
    for label in labels.chain(keys) {
        lexicon.name_colour(label, label);
    }
    for line in &pattern.yarn {
        if let (Some(shade), Some(label)) = (&line.shade, &line.colour) {
            lexicon.name_colour(shade, label);
        }
    }
}

/// Tells which charts rows may be worked from: those of the text.
fn add_charts(lexicon: &mut Lexicon, entry: &Entry, style: RunStyle) {
    if entry.prose.unread_charts > 0 {
        lexicon.has_unread_charts();
    }
    for (place, block) in entry.prose.charts.iter().enumerate() {
        let between = block.chart.between.as_deref();
        let even = between.is_some_and(|words| is_even(words, lexicon, style));
        lexicon.add_chart(ChartRows::of(block.name.as_deref(), place, &block.chart, even));
    }
}

/// Returns what an abbreviation takes and leaves, or why that cannot be told.
fn counts(abbreviation: &Abbreviation, lexicon: &Lexicon, style: RunStyle) -> Result<Counts, String> {
    let given = match (abbreviation.uses, abbreviation.makes) {
        (Some(uses), Some(makes)) => Some(Counts::new(uses.into(), makes.into())),
        (None, None) => None,
        _ => return Err("it has one of `uses` and `makes` without the other".to_owned()),
    };
    let Some(rows) = &abbreviation.rows else {
        return given.ok_or_else(|| "nothing says how many stitches it takes and leaves".to_owned());
    };
    let items = read_items(rows, lexicon, style)
        .map_err(|(_, at)| format!("`{}` in its rows cannot be read", rows.get(at).unwrap_or(rows).trim()))?;
    let counted = net(&items).ok_or("its rows do not tell how many stitches they take and leave")?;
    match given {
        Some(given) if given != counted => Err(format!(
            "its rows take {} and leave {}, not {} and {}",
            counted.takes, counted.leaves, given.takes, given.leaves
        )),
        _ => Ok(counted),
    }
}
