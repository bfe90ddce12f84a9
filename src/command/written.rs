//! Gauges and multiples as they are written on the command line.

use crate::measure::{Count, FabricLength, Inch, Misread};
use crate::reckon::gauge::PerLength;
use crate::reckon::multiple::Multiple;
use crate::render::count::Across;

/// What a right gauge looks like.
const GAUGE: &str = "write a gauge like `22 sts / 10 cm`, or with its rows `22 sts, 30 rows / 10 cm`";

/// What a right multiple looks like.
const MULTIPLE: &str = "write a multiple like `6`, `6 + 2` or `8 - 1`";

/// Returns why a quantity cannot be read and what to write instead, in one sentence.
pub fn in_a_sentence(misread: &Misread) -> String {
    format!("{misread}; {}", misread.help())
}

/// Reads the stitches or the rows of a gauge: `22 sts / 10 cm`, `5½ sts / 1 in`, `22 sts, 30 rows / 10 cm`.
///
/// `over` may stand for the slash. A bare number is what is asked for, of two the first is of stitches; without a stretch
/// it is over 10 cm, as in front matter.
pub fn gauge(text: &str, across: Across, inch: Inch) -> Result<PerLength, String> {
    let text = text.replace(" over ", " / ");
    // The slash of a fraction has no length behind it, but for a length's own, which comes after the one wanted.
    let parts = text.match_indices('/').map(|(at, slash)| (text.get(..at), text.get(at + slash.len()..)));
    let length = |text: &str| FabricLength::parse(text, inch).ok();
    let (counts, over) = parts
        .filter_map(|(counts, over)| Some((counts?, length(over?)?)))
        .next()
        .unwrap_or((&text, FabricLength::TEN_CENTIMETRES));
    let mut found: Vec<(Option<Across>, Count)> = Vec::new();
    for part in counts.replace(" and ", ", ").replace(" x ", ", ").split(", ") {
        let word = part.trim().rsplit(|c: char| !c.is_alphabetic()).next().unwrap_or_default();
        let of = match word.to_lowercase().as_str() {
            "" => None,
            "st" | "sts" | "stitch" | "stitches" => Some(Across::Stitches),
            "row" | "rows" | "rnd" | "rnds" | "round" | "rounds" => Some(Across::Rows),
            _ => return Err(format!("`{}` is no gauge; {GAUGE}", text.trim())),
        };
        let count = Count::parse(part).map_err(|why| format!("`{}` is no gauge: {why}; {GAUGE}", text.trim()))?;
        found.push((of, count));
    }
    let named = found.iter().find(|(of, _)| *of == Some(across));
    let bare = match found.as_slice() {
        [(None, count)] => Some(*count),
        [(None, stitches), (None, rows)] => Some(if across == Across::Stitches { *stitches } else { *rows }),
        _ => None,
    };
    let Some(count) = named.map(|(_, count)| *count).or(bare) else {
        return Err(format!("the gauge `{}` says no {}; {GAUGE}", text.trim(), across.many()));
    };
    if count <= Count::ZERO || over <= FabricLength::ZERO {
        return Err(format!("`{}` is a gauge of nothing; {GAUGE}", text.trim()));
    }
    Ok(PerLength { count, over })
}

/// Reads a multiple without a parity: `6`, `6 + 2`, `8 - 1`, `6 plus 2`.
pub fn multiple(text: &str) -> Result<Multiple, String> {
    let plain = text.to_lowercase().replace("multiple of", "").replace("plus", "+").replace("minus", "-");
    let whole = |text: &str| text.trim().parse::<u32>().ok().map(i64::from);
    let read = || {
        let (of, plus) = match plain.split_once(['+', '-', '−', '–']) {
            None => (whole(&plain)?, 0),
            Some((of, plus)) if plain.contains('+') => (whole(of)?, whole(plus)?),
            Some((of, plus)) => (whole(of)?, -whole(plus)?),
        };
        (of > 0).then_some(Multiple { of, plus, parity: None })
    };
    read().ok_or_else(|| format!("`{}` is no multiple; {MULTIPLE}", text.trim()))
}
