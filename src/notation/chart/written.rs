//! The rows of a chart in words, for whoever reads words better than pictures.
//!
//! Each row is told as it is worked: from the right where the right side faces, from the left and with the stitches of the
//! other side where the wrong one does. Cells without a stitch are left out, since there is nothing to do in them.

use super::counts::sum;
use super::{Chart, Parts, Side, Worked};

/// One row in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Written {
    /// What it is called: `Row 1 (RS)`, `Round 1`.
    pub label: String,
    /// What is worked: `K1, *yo, ssk; rep from * to last st, k1`.
    pub words: String,
}

/// Returns the rows in words, from the bottom up.
pub fn written(chart: &Chart) -> Vec<Written> {
    let label = |row: usize| {
        let number = chart.number(row);
        if chart.round { format!("Round {number}") } else { format!("Row {number} ({})", chart.side(row).letters()) }
    };
    let one = |(at, row): (usize, &Vec<Worked>)| Written { label: label(at), words: words(chart, row, chart.side(at)) };
    chart.rows.iter().enumerate().map(one).collect()
}

/// Returns what the rows between are called, and how they are worked, where the chart shows only every other row.
pub fn between(chart: &Chart) -> Option<Written> {
    let words = capital(chart.between.as_deref()?);
    let label = match (chart.round, chart.begins) {
        (true, _) => "Round 2 and every other round".to_owned(),
        (false, begins) => format!("Row 2 and every other {} row", begins.other().letters()),
    };
    Some(Written { label, words })
}

fn words(chart: &Chart, row: &[Worked], side: Side) -> String {
    let whole = Pieces::of(chart, row, side);
    if let Some(all) = whole.to_end() {
        return capital(&all);
    }
    let Parts { left, repeat, right } = chart.parts(row);
    let (first, last) = if side == Side::Right { (right, left) } else { (left, right) };
    let steps = |stretch: &[Worked]| Pieces::of(chart, stretch, side).steps();
    let (before, again, after) = (steps(first), steps(repeat), steps(last));
    if chart.repeat.is_none() || again.is_empty() {
        return capital(&[before, again, after].concat().join(", "));
    }
    let tail = sum(chart, last).consumed;
    let until = match tail {
        0 if chart.round && last.is_empty() => "around".to_owned(),
        0 => "to end".to_owned(),
        1 => "to last st".to_owned(),
        tail => format!("to last {tail} sts"),
    };
    let mut all = before;
    all.push(format!("*{}; rep from * {until}", again.join(", ")));
    all.extend(after);
    capital(&all.join(", "))
}

/// Equal stitches beside each other, in the order they are worked.
struct Pieces<'a>(Vec<Piece<'a>>);

struct Piece<'a> {
    short: &'a str,
    colour: Option<&'a str>,
    times: u32,
}

impl<'a> Pieces<'a> {
    fn of(chart: &'a Chart, stretch: &[Worked], side: Side) -> Self {
        let mut pieces: Vec<Piece<'a>> = Vec::new();
        let mut add = |worked: &Worked| {
            let Some(sign) = chart.sign(*worked).filter(|sign| !sign.is_nothing()) else { return };
            let stitch = &sign.stitch;
            // What is worked on right-side rows only keeps its name; a check tells of it.
            let short =
                if side == Side::Right { &stitch.short } else { stitch.ws_short.as_ref().unwrap_or(&stitch.short) };
            let colour = sign.colour.as_deref();
            match pieces.last_mut() {
                Some(last) if last.short == short && last.colour == colour => last.times = last.times.saturating_add(1),
                _ => pieces.push(Piece { short, colour, times: 1 }),
            }
        };
        match side {
            Side::Right => stretch.iter().rev().for_each(&mut add),
            Side::Wrong => stretch.iter().for_each(&mut add),
        }
        Self(pieces)
    }

    /// Returns the words for a row of nothing but plain knitting or purling in one colour.
    fn to_end(&self) -> Option<String> {
        let [only] = self.0.as_slice() else { return None };
        let word = match only.short {
            "k" => "knit",
            "p" => "purl",
            _ => return None,
        };
        Some(only.colour.map_or_else(|| word.to_owned(), |colour| format!("{word} in {colour}")))
    }

    fn steps(&self) -> Vec<String> {
        self.0.iter().map(Piece::words).collect()
    }
}

impl Piece<'_> {
    fn words(&self) -> String {
        let colour = self.colour.map(|colour| format!(" {colour}")).unwrap_or_default();
        match (self.short, self.times) {
            ("k" | "p", times) => format!("{}{times}{colour}", self.short),
            (short, 1) => format!("{short}{colour}"),
            (short, 2) => format!("[{short}{colour}] twice"),
            (short, times) => format!("[{short}{colour}] {times} times"),
        }
    }
}

/// Writes the first letter as a capital, as a sentence begins.
fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
