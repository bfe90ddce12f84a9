//! `count`: a designer's sums of stitches and rows, for one size or for a run of them.

use super::need::find_pattern;
use super::proof::Format;
use super::written::{gauge, in_a_sentence, multiple};
use super::{Failure, Outcome, studio, terminal};
use crate::catalogue::View;
use crate::entry::value::Date;
use crate::entry::{Gauge, Pattern};
use crate::finding::any_error;
use crate::measure::{Count, FabricLength, Run, RunStyle, SizeRun, Value, read_run};
use crate::reckon::gauge::PerLength;
use crate::reckon::multiple::{Multiple, Parity};
use crate::reckon::shaping::{Unshapable, Worked, paired};
use crate::reckon::spread::{Change, Edges, fewest, spread};
use crate::render::count::{Across, Fitting, FittingSize, Frame, Shaped, ShapedSize, Spread, SpreadSize};
use clap::{Args, Subcommand, ValueEnum};
use std::path::Path;

/// Which sum is asked for.
#[derive(Debug, Subcommand)]
pub enum Asked {
    /// The stitches of a width, and the nearest that a stitch pattern allows.
    #[command(
        after_help = "Example:\n  ballband count stitches \"84 (94, 104) cm\" --gauge \"22 sts / 10 cm\" --multiple \"6 + 2\""
    )]
    Stitches(Measured),
    /// The rows of a length, and the nearest that a stitch pattern allows.
    #[command(
        after_help = "Example:\n  ballband count rows \"45 (46, 47) cm\" --gauge \"30 rows / 10 cm\" --multiple 4"
    )]
    Rows(Measured),
    /// Increases or decreases spread evenly over a row or round.
    #[command(after_help = "Example:\n  ballband count spread 8 --over \"96 (104, 112)\" --in-the-round")]
    Spread(Changes),
    /// Shaping at both sides, spread evenly over so many rounds or rows.
    #[command(after_help = "Example:\n  ballband count shape 38 60 --rows 80 --flat")]
    Shape(Sides),
}

/// A measurement to be counted.
#[derive(Debug, Args)]
pub struct Measured {
    /// How wide or long: one measurement, or one for each size.
    length: String,
    /// How many to how much fabric; that of `--pattern` if not given.
    #[arg(long)]
    gauge: Option<String>,
    /// Only counts in a multiple of so many, plus so many.
    #[arg(long)]
    multiple: Option<String>,
    /// Only counts that can be halved.
    #[arg(long, conflicts_with = "odd")]
    even: bool,
    /// Only counts that cannot be halved.
    #[arg(long)]
    odd: bool,
    #[command(flatten)]
    common: Common,
}

/// Changes to be spread.
#[derive(Debug, Args)]
pub struct Changes {
    /// How many there are.
    changes: String,
    /// The stitches before them.
    #[arg(long, value_name = "STITCHES")]
    over: String,
    /// Decreases; increases if not given.
    #[arg(long)]
    decrease: bool,
    /// In the round: the last change ends the round.
    #[arg(long, conflicts_with = "edges")]
    in_the_round: bool,
    /// What stands at the edges of flat fabric: half a gap, to be seamed, or a whole one.
    #[arg(long, value_enum, default_value_t = Ends::Halves)]
    edges: Ends,
    #[command(flatten)]
    common: Common,
}

/// What stands at the edges of flat fabric.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
enum Ends {
    /// Half a gap.
    Halves,
    /// A whole one.
    Wholes,
}

/// Stitches to be shaped.
#[derive(Debug, Args)]
pub struct Sides {
    /// The stitches to begin with.
    from: String,
    /// The stitches to come to.
    to: String,
    /// The rounds or rows there are.
    #[arg(long)]
    rows: String,
    /// Flat: on right-side rows only; in the round if not given.
    #[arg(long)]
    flat: bool,
    #[command(flatten)]
    common: Common,
}

/// What every sum takes.
#[derive(Debug, Args)]
struct Common {
    /// A pattern of the studio, for its gauge and the names of its sizes.
    #[arg(long, value_name = "KEY")]
    pattern: Option<String>,
    /// For people, or as JSON.
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
}

/// What is known beside what is asked.
struct Known {
    frame: Frame,
    style: RunStyle,
    /// The pattern with its title.
    pattern: Option<(String, Pattern)>,
}

/// Prints a sum. A studio is needed for `--pattern` only; where there is one, its inch is the inch.
pub fn count(named: Option<&Path>, asked: &Asked, today: Date) -> Result<Outcome, Failure> {
    let text = match asked {
        Asked::Stitches(asked) => fitting(&known(named, &asked.common, today)?, asked, Across::Stitches)?,
        Asked::Rows(asked) => fitting(&known(named, &asked.common, today)?, asked, Across::Rows)?,
        Asked::Spread(asked) => spread_out(&known(named, &asked.common, today)?, asked)?,
        Asked::Shape(asked) => shaped(&known(named, &asked.common, today)?, asked)?,
    };
    terminal::say(&text);
    Ok(Outcome::Done)
}

fn known(named: Option<&Path>, common: &Common, today: Date) -> Result<Known, Failure> {
    let Some(key) = &common.pattern else {
        let studio = studio::settings(named, today)?;
        let settings = studio.as_ref().map(|studio| studio.settings()).unwrap_or_default();
        let system = studio.and_then(|studio| studio.units).unwrap_or_default();
        let frame = Frame { names: None, system, inch: settings.inch };
        return Ok(Known { frame, style: settings.runs, pattern: None });
    };
    let disk = studio::find(named)?;
    let joined = crate::join(&disk, View::of_readers(today))
        .map_err(|error| format!("cannot read the studio in `{}`: {error}", disk.root().display()))?;
    if any_error(&joined.findings) {
        terminal::complain("the studio has errors, so a figure may be missing or wrong; `ballband proof` tells them");
    }
    let (entry, pattern) = find_pattern(&joined.catalogue, key)?;
    let studio = &joined.catalogue.studio;
    let settings = studio.settings();
    let frame = Frame { names: pattern.sizes.clone(), system: studio.units.unwrap_or_default(), inch: settings.inch };
    Ok(Known { frame, style: settings.runs, pattern: Some((entry.common.title.clone(), pattern.clone())) })
}

impl Known {
    /// Reads one value, or one for each size.
    fn run<T: Value>(&self, text: &str) -> Result<SizeRun<T>, Failure> {
        let run: Run<T> = read_run(text, self.style, self.frame.inch).map_err(|misread| in_a_sentence(&misread))?;
        if run.values.present().next().is_none() {
            return Err(Failure(format!("`{text}` is no value: a dash or a lone 0 stands for a size without one")));
        }
        Ok(run.values)
    }

    /// Reads whole numbers, one or one for each size.
    fn whole(&self, text: &str) -> Result<SizeRun<i64>, Failure> {
        let run: SizeRun<Count> = self.run(text)?;
        if let Some(part) = run.present().find(|count| count.whole().is_none()) {
            return Err(Failure(format!("`{}` is not a whole number", part.show())));
        }
        Ok(run.try_map(|count| count.whole()).unwrap_or_default())
    }

    /// Returns how many sizes a sum has by the lengths of its runs, and the frame for so many.
    fn sizes(&self, lengths: &[usize]) -> Result<(usize, Frame), Failure> {
        let sizes = lengths.iter().copied().max().unwrap_or(1);
        if let Some(other) = lengths.iter().find(|length| **length != 1 && **length != sizes) {
            return Err(Failure(format!("one run is of {other} sizes and another of {sizes}")));
        }
        let of = self.pattern.as_ref().map(|(title, pattern)| (title, pattern.size_count()));
        if let Some((title, count)) = of.filter(|(_, count)| sizes != 1 && sizes != *count) {
            let noun = if count == 1 { "size" } else { "sizes" };
            return Err(Failure(format!("{title} has {count} {noun}, and a run here is of {sizes}")));
        }
        // What is alike for every size is for none in particular.
        let names = self.frame.names.clone().filter(|_| sizes > 1);
        Ok((sizes, Frame { names, ..self.frame.clone() }))
    }
}

/// Says of which size a refusal is, where there are several.
fn in_size(frame: &Frame, sizes: usize, size: usize, why: String) -> Failure {
    Failure(if sizes > 1 { format!("size {}: {why}", frame.size(size)) } else { why })
}

/// Returns the gauge of a sum, and the title of the pattern whose it is.
fn gauge_of(known: &Known, asked: &Measured, across: Across) -> Result<(PerLength, Option<String>), Failure> {
    if let Some(written) = &asked.gauge {
        return Ok((gauge(written, across, known.frame.inch)?, None));
    }
    let example = match across {
        Across::Stitches => "add `--gauge \"22 sts / 10 cm\"`",
        Across::Rows => "add `--gauge \"30 rows / 10 cm\"`",
    };
    let Some((title, pattern)) = &known.pattern else {
        return Err(Failure(format!("a gauge is missing; {example}, or `--pattern KEY` for a pattern's")));
    };
    let of = |gauge: &Gauge| match across {
        Across::Stitches => Some(PerLength::stitches(gauge)),
        Across::Rows => PerLength::rows(gauge),
    };
    let found = pattern.gauge.first().and_then(of);
    let found = found.ok_or_else(|| format!("{title} states no gauge of {}; {example}", across.many()))?;
    Ok((found, Some(title.clone())))
}

fn fitting(known: &Known, asked: &Measured, across: Across) -> Result<String, Failure> {
    let lengths: SizeRun<FabricLength> = known.run(&asked.length)?;
    let (gauge, of) = gauge_of(known, asked, across)?;
    let plain = asked.multiple.as_deref().map_or(Ok(Multiple::ANY), multiple)?;
    let parity = match (asked.even, asked.odd) {
        (true, _) => Some(Parity::Even),
        (_, true) => Some(Parity::Odd),
        _ => None,
    };
    let multiple = Multiple { parity, ..plain };
    if multiple.around(Count::ZERO).is_none() {
        let parity = if asked.even { "even" } else { "odd" };
        return Err(Failure(format!("no count of `{}` is {parity}", asked.multiple.as_deref().unwrap_or_default())));
    }
    let (sizes, frame) = known.sizes(&[lengths.len()])?;
    let one = |size: usize| -> Result<Option<FittingSize>, Failure> {
        let Some(wanted) = lengths.get(size).copied() else { return Ok(None) };
        let found = gauge.count_for(wanted).zip(gauge.whole_for(wanted, multiple));
        let (exact, near) = found.ok_or_else(|| {
            let why = if wanted <= FabricLength::ZERO {
                "a measurement must be more than nothing"
            } else {
                "the measurement is beyond all counting"
            };
            in_size(&frame, sizes, size, why.to_owned())
        })?;
        Ok(Some(FittingSize { wanted, exact, near }))
    };
    let counted = (0..sizes).map(one).collect::<Result<Vec<_>, _>>()?;
    let fitting = Fitting { frame: frame.clone(), across, gauge, of, multiple, sizes: counted };
    Ok(match asked.common.format {
        Format::Text => fitting.to_text(),
        Format::Json => fitting.to_json(),
    })
}

fn spread_out(known: &Known, asked: &Changes) -> Result<String, Failure> {
    let (changes, over) = (known.whole(&asked.changes)?, known.whole(&asked.over)?);
    let change = if asked.decrease { Change::Decrease } else { Change::Increase };
    let edges = match (asked.in_the_round, asked.edges) {
        (true, _) => Edges::Round,
        (false, Ends::Halves) => Edges::Halves,
        (false, Ends::Wholes) => Edges::Wholes,
    };
    let (sizes, frame) = known.sizes(&[changes.len(), over.len()])?;
    let one = |size: usize| -> Result<Option<SpreadSize>, Failure> {
        let (Some(changes), Some(stitches)) = (changes.get(size).copied(), over.get(size).copied()) else {
            return Ok(None);
        };
        let gaps = spread(stitches, changes, change, edges).ok_or_else(|| {
            let noun = match change {
                Change::Increase => "increases",
                Change::Decrease => "decreases",
            };
            let why = match fewest(changes, change, edges) {
                Some(least) => format!("{changes} {noun} take at least {least} stitches, and there are {stitches}"),
                None => format!("{changes} {noun} cannot be spread"),
            };
            in_size(&frame, sizes, size, why)
        })?;
        Ok(Some(SpreadSize { stitches, changes, gaps }))
    };
    let counted = (0..sizes).map(one).collect::<Result<Vec<_>, _>>()?;
    let spread = Spread { frame: frame.clone(), change, edges, sizes: counted };
    Ok(match asked.common.format {
        Format::Text => spread.to_text(),
        Format::Json => spread.to_json(),
    })
}

fn shaped(known: &Known, asked: &Sides) -> Result<String, Failure> {
    let [from, to, rows] = [&asked.from, &asked.to, &asked.rows].map(|text| known.whole(text));
    let (from, to, rows) = (from?, to?, rows?);
    let worked = if asked.flat { Worked::Flat } else { Worked::Round };
    let (sizes, frame) = known.sizes(&[from.len(), to.len(), rows.len()])?;
    let one = |size: usize| -> Result<Option<ShapedSize>, Failure> {
        let (Some(from), Some(to), Some(rows)) =
            (from.get(size).copied(), to.get(size).copied(), rows.get(size).copied())
        else {
            return Ok(None);
        };
        let shaping = paired(from, to, rows, worked)
            .map_err(|why| in_size(&frame, sizes, size, unshapable(why, from, to, rows, worked)))?;
        Ok(Some(ShapedSize { from, to, rows, shaping }))
    };
    let counted = (0..sizes).map(one).collect::<Result<Vec<_>, _>>()?;
    let shaped = Shaped { frame: frame.clone(), worked, sizes: counted };
    Ok(match asked.common.format {
        Format::Text => shaped.to_text(),
        Format::Json => shaped.to_json(),
    })
}

/// Returns why there is no such shaping.
fn unshapable(why: Unshapable, from: i64, to: i64, rows: i64, worked: Worked) -> String {
    let apart = from.abs_diff(to);
    match why {
        Unshapable::OddDifference => format!(
            "{from} and {to} stitches are {apart} apart, and shaping at both sides takes an even number: make one of them one more or one less"
        ),
        Unshapable::TooFewRows { least } => match worked {
            Worked::Round => {
                format!("{apart} stitches, two at a time, take at least {least} rounds, and there are {rows}")
            }
            Worked::Flat => format!(
                "{apart} stitches, two at a time and on right-side rows only, take at least {least} rows, and there are {rows}"
            ),
        },
        Unshapable::BelowNothing => "stitches and rows cannot be less than nothing".to_owned(),
        Unshapable::TooLarge => "the numbers are beyond all counting".to_owned(),
    }
}
